package figure

import (
	"math"
	"strconv"
)

// The vernier caliper's sheet: the scales meet on vernierLine; below stands the place
// where two lines meet, enlarged.
const (
	vernierLine = 66.0
	vernierZero = 36.0 // of the sliding scale, on the sheet
	detailLine  = 222.0
	detailPitch = 34.0 // of the main scale's divisions, enlarged
)

// vernierScale is the sliding scale of a graduation: it has as many divisions as a
// main division has steps, each a step shorter than one or two main divisions.
type vernierScale struct {
	graduation
	division float64 // length of one
	pitch    float64 // the sheet's units to one main division
	numbered int     // every so many lines carry a number
}

func newVernier(g graduation) vernierScale {
	v := vernierScale{graduation: g, division: g.line() - g.step, pitch: 5.8, numbered: 5}
	switch {
	case g.unit == "in":
		v.pitch = 12
	case g.lines == 20: // 20 divisions in 39 mm, the long form
		v.division, v.pitch, v.numbered = 2*g.line()-g.step, 7.2, 2
	}
	return v
}

// vernier draws a vernier caliper.
func (c *canvas) vernier(g graduation, n int) sheet {
	v := newVernier(g)
	whole, line := n/g.lines, n%g.lines
	value := float64(n) * g.step
	x := func(length float64) float64 { return vernierZero + (length-value)/g.line()*v.pitch }
	meets := x(value + float64(line)*v.division)

	c.line(tag{class: "b"}, point{4, 18}, point{336, 18})
	c.line(tag{class: "b"}, point{4, vernierLine}, point{336, vernierLine})
	end := x(value+float64(g.lines)*v.division) + 11
	c.poly(tag{class: "b"}, false, point{vernierZero - 9, vernierLine}, point{vernierZero - 9, 112}, point{end, 112}, point{end, vernierLine})
	c.mainScale(v, value, x)
	c.slidingScale(v, value, x)
	c.line(tag{class: "m", part: "meets"}, point{meets, vernierLine - 26}, point{meets, vernierLine + 26})

	main, step, reading := c.local(g.short(float64(whole)*g.line())), c.local(g.short(g.step)), c.local(g.words(n))
	zero, about := c.say("vernier-past", "main", main), c.say("vernier-past-about", "main", main)
	if line == 0 {
		zero, about = c.say("vernier-at", "main", main), c.say("vernier-at-about", "main", main)
	}
	c.leader(point{vernierZero, 112}, point{vernierZero, 128}, zero)
	c.text("mt", "start", point{4, 160}, c.say("vernier-line", "line", line))
	c.vernierDetail(v, n)
	c.text("", "start", point{4, 290}, main+" + "+strconv.Itoa(line)+" × "+step+" = "+reading)
	return sheet{title: c.say("vernier-title", "reading", reading),
		desc:   about + " " + c.say("vernier-about", "line", line, "main", main, "step", step, "reading", reading),
		height: 300}
}

// mainScale draws the lines of the bar that the sheet shows.
func (c *canvas) mainScale(v vernierScale, value float64, x func(float64) float64) {
	first := max(0, int(math.Floor((value-vernierZero/v.pitch*v.line())/v.line())))
	var long, middle, short [][2]point
	for i := first; x(float64(i)*v.line()) < 333; i++ {
		at := x(float64(i) * v.line())
		if at < 7 {
			continue
		}
		mark, words := v.mainMark(i)
		switch {
		case mark:
			long = append(long, [2]point{{at, vernierLine}, {at, vernierLine - 24}})
		case v.unit == "mm" && i%5 == 0 || v.unit == "in" && i%2 == 0:
			middle = append(middle, [2]point{{at, vernierLine}, {at, vernierLine - 19}})
		default:
			short = append(short, [2]point{{at, vernierLine}, {at, vernierLine - 13}})
		}
		if half := textWidth(words) / 2; words != "" && at-half > 4 && at+half < 336 {
			c.text(v.mainClass(i), "middle", point{at, vernierLine - 30}, words)
		}
	}
	c.strokes(tag{class: "l", part: "main"}, long...)
	c.strokes(tag{class: "h", part: "main"}, middle...)
	c.strokes(tag{class: "h", part: "main"}, short...)
}

// slidingScale draws the vernier's own lines, from its zero.
func (c *canvas) slidingScale(v vernierScale, value float64, x func(float64) float64) {
	var long, short [][2]point
	for k := range v.lines + 1 {
		at := x(value + float64(k)*v.division)
		if k%v.numbered != 0 {
			short = append(short, [2]point{{at, vernierLine}, {at, vernierLine + 13}})
			continue
		}
		long = append(long, [2]point{{at, vernierLine}, {at, vernierLine + 21}})
		number := k
		if v.unit == "mm" {
			number = k / v.numbered // tenths of a millimetre
		}
		c.text("", "middle", point{at, vernierLine + 36}, strconv.Itoa(number))
	}
	c.strokes(tag{class: "l", part: "sliding"}, long...)
	c.strokes(tag{class: "h", part: "sliding"}, short...)
}

// vernierDetail draws the lines round the meeting one, enlarged: to each side they part
// by a step more.
func (c *canvas) vernierDetail(v vernierScale, n int) {
	line := n % v.lines
	centre := instrumentWidth / 2
	c.box(tag{class: "l"}, 4, detailLine-46, 336, detailLine+46)
	c.line(tag{class: "b"}, point{4, detailLine}, point{336, detailLine})
	var main, sliding [][2]point
	for i := -4; i <= 4; i++ {
		at := centre + float64(i)*detailPitch
		if i != 0 {
			main = append(main, [2]point{{at, detailLine}, {at, detailLine - 24}})
		}
		k := line + i
		at = centre + float64(i)*v.division/v.line()*detailPitch
		if k < 0 || k > v.lines || at < 8 || at > 332 {
			continue
		}
		if i != 0 {
			sliding = append(sliding, [2]point{{at, detailLine}, {at, detailLine + 24}})
		}
		c.text("s", "middle", point{at, detailLine + 39}, strconv.Itoa(k))
	}
	c.strokes(tag{class: "l", part: "detail-main"}, main...)
	c.strokes(tag{class: "l", part: "detail-sliding"}, sliding...)
	c.line(tag{class: "m", part: "detail-meets"}, point{centre, detailLine - 27}, point{centre, detailLine + 27})
	c.text("s", "start", point{10, detailLine - 32}, c.say("vernier-enlarged"))
}

// leader runs from a thing to its words, with an arrowhead at the thing.
func (c *canvas) leader(at, from point, words string) {
	long := at.distance(from)
	c.line(tag{class: "h"}, from, at)
	c.arrow("k", at, (at.x-from.x)/long, (at.y-from.y)/long)
	c.text("", "start", point{from.x - 4, from.y + 12}, words)
}

func (p point) distance(q point) float64 { return math.Hypot(p.x-q.x, p.y-q.y) }
