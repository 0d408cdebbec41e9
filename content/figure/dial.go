package figure

import (
	"math"
	"strconv"
	"strings"
)

// inchSign marks the whole inches on a scale, where there is no room for "in".
const inchSign = "″"

// The dial caliper's sheet.
const (
	dialRadius = 76.0
	dialEdge   = 226.0 // the slider's reading edge over the bar
	barLine    = 64.0  // the bar's lower side, where its lines stand
)

var dialCentre = point{170, 190}

// dial draws a dial caliper: the bar with its lines up to the slider's edge, and the
// dial with its hand. The bar has one line for each turn of the hand.
func (c *canvas) dial(g graduation, n int) sheet {
	turn, steps := n/g.lines, n%g.lines
	c.dialBar(g, n)
	c.circle(tag{class: "b", part: "dial"}, dialCentre, dialRadius+30)
	at := func(step, radius float64) point {
		sin, cos := math.Sincos(2 * math.Pi * step / float64(g.lines))
		return point{dialCentre.x + radius*sin, dialCentre.y - radius*cos}
	}
	var long, short [][2]point
	for i := range g.lines {
		line := [2]point{at(float64(i), dialRadius), at(float64(i), dialRadius-7)}
		if i%5 == 0 {
			line[1] = at(float64(i), dialRadius-13)
			long = append(long, line)
		} else {
			short = append(short, line)
		}
		if i%10 == 0 {
			where := at(float64(i), dialRadius+14)
			c.text("", "middle", point{where.x, where.y + 4.5}, strconv.Itoa(g.lastDigits(i)))
		}
	}
	c.strokes(tag{class: "l", part: "graduation"}, long...)
	c.strokes(tag{class: "h", part: "graduation"}, short...)
	hand := float64(steps)
	quarter := float64(g.lines) / 4
	tip, tail := at(hand, dialRadius-3), at(hand, -22)
	left, right := at(hand-quarter, 4), at(hand+quarter, 4)
	c.poly(tag{class: "k", part: "hand"}, true, tip, left, tail, right)
	c.circle(tag{class: "b", part: "pivot"}, dialCentre, 7)

	bar, shown := c.local(g.short(float64(turn)*g.line())), c.local(g.words(steps))
	round, reading := c.local(g.short(g.line())), c.local(g.words(n))
	foot := dialCentre.y + dialRadius + 52
	c.text("", "start", point{4, foot}, c.say("dial-bar", "bar", bar))
	c.text("", "start", point{4, foot + 18}, c.say("dial-hand", "line", g.lastDigits(steps), "hand", shown))
	c.text("", "start", point{4, foot + 36}, c.say("reads", "reading", bar+" + "+shown+" = "+reading))
	c.text("s", "start", point{4, foot + 54}, c.say("dial-turn", "turn", round))
	return sheet{title: c.say("dial-title", "reading", reading),
		desc:   c.say("dial-about", "bar", bar, "hand", shown, "turn", round, "reading", reading),
		height: foot + 62}
}

// lastDigits is a number of steps as an instrument's scale writes it: hundredths of a
// millimetre or thousandths of an inch.
func (g graduation) lastDigits(steps int) int {
	return int(math.Round(float64(steps) * g.step * math.Pow10(g.decimals)))
}

// dialBar draws the bar of the caliper and the slider over it.
func (c *canvas) dialBar(g graduation, n int) {
	scale := 7.0 // units to a millimetre or to four hundredths of an inch
	if g.unit == "in" {
		scale = 190
	}
	value := float64(n) * g.step
	x := func(length float64) float64 { return dialEdge + (length-value)*scale }
	left := max(8, x(0)-14) // the bar begins a little before its zero
	c.box(tag{class: "b"}, left, 22, dialEdge, barLine)
	var long, short [][2]point
	for i := 0; float64(i)*g.line() <= value+g.step/2; i++ {
		at := x(float64(i) * g.line())
		if at < 12 {
			continue
		}
		mark, words := g.mainMark(i)
		if mark {
			long = append(long, [2]point{{at, barLine}, {at, barLine - 18}})
		} else {
			short = append(short, [2]point{{at, barLine}, {at, barLine - 11}})
		}
		if words != "" && at > 20 && at < dialEdge-10 {
			c.text(g.mainClass(i), "middle", point{at, barLine - 24}, words)
		}
	}
	c.strokes(tag{class: "l", part: "bar"}, long...)
	c.strokes(tag{class: "h", part: "bar"}, short...)
	c.box(tag{class: "b", part: "slider"}, dialEdge, 14, 332, barLine+8)
	c.text("s", "middle", point{(dialEdge + 332) / 2, 46}, c.say("dial-slider"))
}

// mainMark says whether line i of a main scale is a long one, and what is written at
// it: every ten millimetres, or the whole inches with their sign and the tenths without.
func (g graduation) mainMark(i int) (long bool, words string) {
	each, tenth := 10, int(math.Round(10/g.line()))
	if g.unit == "in" {
		each, tenth = 1, int(math.Round(0.1/g.line()))
	}
	if i%tenth != 0 {
		return false, ""
	}
	number := i / tenth * each
	if g.unit == "in" {
		if number%10 == 0 {
			return true, strconv.Itoa(number/10) + inchSign
		}
		return tenth > 1, strconv.Itoa(number % 10)
	}
	return true, strconv.Itoa(number)
}

// mainClass is the class of the number at line i of a main scale: tenths of an inch are
// written lighter than inches.
func (g graduation) mainClass(i int) string {
	if _, words := g.mainMark(i); g.unit == "mm" || strings.HasSuffix(words, inchSign) {
		return ""
	}
	return "s"
}
