package figure

import "strings"

// A digit of the display, in the drawing's units.
const (
	digitWide  = 24.0
	digitHigh  = 48.0
	digitPitch = 36.0
	segment    = 6.0 // thickness
)

// segments says which of the seven bars of a digit are dark, clockwise from the top and
// the middle one last.
var segments = map[rune]string{
	'0': "abcdef", '1': "bc", '2': "abdeg", '3': "abcdg", '4': "bcfg",
	'5': "acdfg", '6': "acdefg", '7': "abc", '8': "abcdefg", '9': "abcdfg",
}

// digital draws the display of a digital caliper.
func (c *canvas) digital(g graduation, n int) sheet {
	figure := strings.TrimSuffix(g.words(n), " "+g.unit)
	c.box(tag{class: "b"}, 4, 6, 336, 142)
	c.box(tag{class: "l", part: "display"}, 20, 18, 320, 92)
	c.text("", "start", point{284, 79}, g.unit)
	right := 274.0 // of the last digit
	digits := []rune(strings.ReplaceAll(figure, ".", ""))
	dot := len(digits) - g.decimals - 1
	for i, r := range digits {
		left := right - digitWide - digitPitch*float64(len(digits)-1-i)
		c.digit(segments[r], point{left, 31})
		if i == dot {
			x := left + digitWide + (digitPitch-digitWide)/2
			c.box(tag{class: "k", part: "point"}, x-2.5, 31+digitHigh-5, x+2.5, 31+digitHigh)
		}
	}
	for _, button := range []struct {
		x     float64
		words string
	}{{60, c.say("button-on")}, {170, c.say("button-zero")}, {280, c.say("button-unit")}} {
		c.circle(tag{class: "l"}, point{button.x, 108}, 7)
		c.text("s", "middle", point{button.x, 134}, button.words)
	}
	reading := c.local(g.words(n))
	c.text("", "start", point{4, 164}, c.say("reads", "reading", reading))
	return sheet{title: c.say("digital-title", "reading", reading),
		desc:   c.say("digital-about", "reading", reading),
		height: 174}
}

// digit draws the dark bars of one digit.
func (c *canvas) digit(dark string, at point) {
	half := segment / 2
	across := func(y float64) []point {
		left, right := at.x+half+1, at.x+digitWide-half-1
		return []point{{left, y}, {left + half, y - half}, {right - half, y - half}, {right, y}, {right - half, y + half}, {left + half, y + half}}
	}
	down := func(x, top float64) []point {
		bottom := top + digitHigh/2 - half
		top += 1
		bottom -= 1
		return []point{{x, top}, {x + half, top + half}, {x + half, bottom - half}, {x, bottom}, {x - half, bottom - half}, {x - half, top + half}}
	}
	left, right := at.x+half, at.x+digitWide-half
	upper, lower := at.y+half, at.y+digitHigh/2
	for _, bar := range dark {
		var outline []point
		switch bar {
		case 'a':
			outline = across(at.y + half)
		case 'b':
			outline = down(right, upper)
		case 'c':
			outline = down(right, lower)
		case 'd':
			outline = across(at.y + digitHigh - half)
		case 'e':
			outline = down(left, lower)
		case 'f':
			outline = down(left, upper)
		case 'g':
			outline = across(at.y + digitHigh/2)
		}
		c.poly(tag{class: "k", part: "segment"}, true, outline...)
	}
}
