package figure

import (
	"html/template"
	"strconv"
)

// MMPerInch is the inch in millimetres, exact by definition (1959). It serves drawings
// and rounded words; figures of the chart are converted as exact numbers.
const MMPerInch = 25.4

// The check ruler, in millimetres.
const (
	rulerWidth  = 118.0
	rulerHeight = 43.0
	rulerLeft   = 6.0
	rulerLine   = 20.0 // height of the line both scales stand on
	barThick    = 2.0
)

// Ruler draws a check ruler at true size, one unit one millimetre: a scale of 100 mm
// and one of 4 in from the same zero, and beside each a solid bar of that length. The
// bars carry data-part "bar-mm" and "bar-in", for a test that measures the print.
func (w Words) Ruler(prefix string) template.HTML {
	c := &canvas{language: language(w), lettering: millimetreLettering}
	bar := func(part string, length, top float64) {
		c.poly(tag{class: "k", part: part}, true, point{rulerLeft, top}, point{rulerLeft + length, top},
			point{rulerLeft + length, top + barThick}, point{rulerLeft, top + barThick})
	}
	bar("bar-mm", 100, 6.5)
	bar("bar-in", 4*MMPerInch, 33.5)
	c.text("", "start", point{rulerLeft, 5}, c.say("ruler-mm"))
	c.text("", "start", point{rulerLeft, rulerHeight - 3}, c.say("ruler-in"))

	c.line(tag{class: "l"}, point{rulerLeft, rulerLine}, point{rulerLeft + 4*MMPerInch, rulerLine})
	// Lines of one length are one element, the longest first.
	c.scale("scale-mm", 100, 1, -1, []division{{10, 6}, {5, 4.5}, {1, 3}})
	c.scale("scale-in", 64, MMPerInch/16, 1, []division{{16, 7}, {8, 5.5}, {4, 4.5}, {2, 3.5}, {1, 2.5}})
	for mm := 0; mm <= 100; mm += 10 {
		c.text("", "middle", point{rulerLeft + float64(mm), rulerLine - 7}, strconv.Itoa(mm))
	}
	for in := range 5 {
		c.text("", "middle", point{rulerLeft + float64(in)*MMPerInch, rulerLine + 10.5}, strconv.Itoa(in))
	}
	c.text("s", "start", point{rulerLeft + 105, rulerLine - 7}, "mm")
	c.text("s", "start", point{rulerLeft + 105, rulerLine + 10.5}, "in")
	return c.svg(sheet{prefix, "drawing drawing--true", c.say("ruler-title"), c.say("ruler-about"), rulerWidth, rulerHeight, "mm"})
}

// division is one kind of line on a scale: every so many steps, how long.
type division struct {
	every int
	long  float64
}

// scale draws the lines of a ruler's scale from 0 to count steps, upwards or downwards.
func (c *canvas) scale(part string, count int, step, direction float64, divisions []division) {
	for i, d := range divisions {
		var lines [][2]point
		for n := 0; n <= count; n += d.every {
			if i > 0 && n%divisions[i-1].every == 0 {
				continue // a longer line stands there
			}
			x := rulerLeft + float64(n)*step
			lines = append(lines, [2]point{{x, rulerLine}, {x, rulerLine + direction*d.long}})
		}
		c.strokes(tag{class: "h", part: part}, lines...)
	}
}
