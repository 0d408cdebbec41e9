package figure

import (
	"math"
	"strconv"
)

// The micrometer's sheet.
const (
	sleeveLeft    = 18.0
	sleeveLine    = 92.0 // height of the sleeve's long line
	sleeveHalf    = 46.0
	thimbleRadius = 74.0
	thimbleLong   = 96.0
)

// micrometer draws the sleeve and thimble of a micrometer, whose range of 25 mm or 1 in
// begins at a whole number of ranges.
func (c *canvas) micrometer(g graduation, n int) sheet {
	span := 2500 // steps in a range
	if g.unit == "in" {
		span = 1000
	}
	base := max(0, n-1) / span * span
	rest := n - base // a full range stays on its own sleeve
	turns, steps := rest/g.lines, rest%g.lines
	scale := 220 / (float64(span) * g.step)
	edgeX := sleeveLeft + float64(rest)*g.step*scale

	c.poly(tag{class: "b"}, false, point{edgeX, sleeveLine - sleeveHalf}, point{4, sleeveLine - sleeveHalf},
		point{4, sleeveLine + sleeveHalf}, point{edgeX, sleeveLine + sleeveHalf})
	c.line(tag{class: "l", part: "reference"}, point{4, sleeveLine}, point{edgeX, sleeveLine})
	c.sleeve(g, base, rest, scale)
	c.thimble(g, steps, edgeX)

	sleeve := c.local(g.short(float64(base+turns*g.lines) * g.step))
	thimble, reading := c.local(g.words(steps)), c.local(g.words(n))
	foot := sleeveLine + thimbleRadius + 28
	c.text("", "start", point{4, foot}, c.say("micrometer-sleeve", "sleeve", sleeve))
	c.text("", "start", point{4, foot + 18}, c.say("micrometer-thimble", "line", steps, "thimble", thimble))
	c.text("", "start", point{4, foot + 36}, c.say("reads", "reading", sleeve+" + "+thimble+" = "+reading))
	size := c.say("micrometer-range", "from", c.local(g.short(float64(base)*g.step)), "to", c.local(g.short(float64(base+span)*g.step)))
	c.text("s", "start", point{4, foot + 54}, c.say("micrometer-for", "range", size))
	return sheet{title: c.say("micrometer-title", "reading", reading),
		desc:   c.say("micrometer-about", "sleeve", sleeve, "line", steps, "thimble", thimble, "reading", reading, "range", size),
		height: foot + 62}
}

// sleeve draws the lines of the sleeve up to the thimble: whole millimetres above the
// long line and halves below, or fortieths of an inch above.
func (c *canvas) sleeve(g graduation, base, rest int, scale float64) {
	var lines [][2]point
	for i := 0; i*g.lines <= rest; i++ {
		at := sleeveLeft + float64(i)*g.line()*scale
		long, direction, number := 11.0, -1.0, ""
		switch {
		case g.unit == "mm" && i%2 == 1:
			direction = 1
		case g.unit == "mm" && i%10 == 0:
			long, number = 17, strconv.Itoa(int(math.Round(float64(base+i*g.lines)*g.step)))
		case g.unit == "in" && i%4 == 0:
			long, number = 17, strconv.Itoa(i/4%10)
			if i%40 == 0 {
				number = strconv.Itoa(int(math.Round(float64(base+i*g.lines)*g.step))) + inchSign
			}
		}
		lines = append(lines, [2]point{{at, sleeveLine}, {at, sleeveLine + direction*long}})
		if edge := sleeveLeft + float64(rest)*g.step*scale; number != "" && at+textWidth(number)/2 < edge-2 {
			c.text("", "middle", point{at, sleeveLine - 22}, number)
		}
	}
	c.strokes(tag{class: "h", part: "sleeve"}, lines...)
}

// thimble draws the round thimble with the lines one can see from the front.
func (c *canvas) thimble(g graduation, steps int, edgeX float64) {
	neck := 34.0
	c.poly(tag{class: "b", part: "thimble"}, true, point{edgeX, sleeveLine - sleeveHalf - 6}, point{edgeX + neck, sleeveLine - thimbleRadius},
		point{edgeX + thimbleLong, sleeveLine - thimbleRadius}, point{edgeX + thimbleLong, sleeveLine + thimbleRadius},
		point{edgeX + neck, sleeveLine + thimbleRadius}, point{edgeX, sleeveLine + sleeveHalf + 6})
	var lines [][2]point
	for k := range g.lines {
		turn := math.Remainder(float64(k-steps), float64(g.lines)) / float64(g.lines) * 2 * math.Pi
		if math.Abs(turn) > 1.05 {
			continue // round the side
		}
		// Closing turns the near side upwards, so a larger number stands higher.
		y := sleeveLine - (sleeveHalf+6)*math.Sin(turn)
		long := 14.0
		if k%5 == 0 {
			long = 22
		}
		lines = append(lines, [2]point{{edgeX, y}, {edgeX + long, y}})
		if k%5 == 0 && math.Abs(turn) < 0.9 {
			c.text("", "start", point{edgeX + 28, y + 4.5}, strconv.Itoa(k))
		}
	}
	c.strokes(tag{class: "h", part: "thimble-line"}, lines...)
}
