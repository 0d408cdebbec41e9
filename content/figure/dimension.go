package figure

// Measures of the lettering, in the drawing's units. A drawing is as wide as a small
// phone, where one unit is about one pixel.
const (
	textSize  = 13.0
	lineSpace = 16.0
	textRise  = 4.0 // from a dimension line to the foot of the figure above it
	arrowLong = 9.0
	arrowHalf = 2.2
	dimGap    = 16.0 // from the part to its dimension line
	overshoot = 4.0  // of an extension line past its dimension line
	startGap  = 2.0  // between the part and its extension line
)

// style is how a dimension is drawn: in red between the faces, thin elsewhere.
type style struct{ line, arrow, text, part string }

var (
	plainStyle = style{"h", "k", "", "diameter"}
	facesStyle = style{"m", "mt", "mt", "across"}
)

// arrow puts a head at tip that points along (dx, dy), a unit vector.
func (c *canvas) arrow(class string, tip point, dx, dy float64) {
	long, half := c.lettered(arrowLong), c.lettered(arrowHalf)
	c.poly(tag{class: class}, true, tip,
		point{tip.x - long*dx - half*dy, tip.y - long*dy + half*dx},
		point{tip.x - long*dx + half*dy, tip.y - long*dy - half*dx})
}

// level draws a dimension from left to right at height y. The part's edges are at
// fromY, where the extension lines begin.
func (c *canvas) level(s style, end int, left, right, y, fromY float64, label Dimension) {
	away := 1.0
	if fromY > y {
		away = -1
	}
	for _, x := range []float64{left, right} {
		c.line(tag{class: "h"}, point{x, fromY + away*c.lettered(startGap)}, point{x, y + away*c.lettered(overshoot)})
	}
	c.line(tag{s.line, s.part, end}, point{left, y}, point{right, y})
	c.arrow(s.arrow, point{left, y}, -1, 0)
	c.arrow(s.arrow, point{right, y}, 1, 0)
	middle := (left + right) / 2
	c.text(s.text, "middle", point{middle, y - c.lettered(textRise)}, label.Text)
	c.text("s", "middle", point{middle, y + c.lettered(lineSpace-2)}, label.bracketed())
}

// standing draws a dimension from top to bottom at x, read from the right.
func (c *canvas) standing(s style, end int, top, bottom, x, fromX float64, label Dimension) {
	away := 1.0
	if fromX > x {
		away = -1
	}
	for _, y := range []float64{top, bottom} {
		c.line(tag{class: "h"}, point{fromX + away*c.lettered(startGap), y}, point{x + away*c.lettered(overshoot), y})
	}
	c.line(tag{s.line, s.part, end}, point{x, top}, point{x, bottom})
	c.arrow(s.arrow, point{x, top}, 0, -1)
	c.arrow(s.arrow, point{x, bottom}, 0, 1)
	middle := (top + bottom) / 2
	c.upright(s.text, point{x - c.lettered(textRise), middle}, label.Text)
	c.upright("s", point{x + c.lettered(lineSpace-2), middle}, label.bracketed())
}

// bracketed is the converted figure, which never stands without its mark.
func (d Dimension) bracketed() string {
	if d.Converted == "" {
		return ""
	}
	return "(≈ " + d.Converted + ")"
}

// textWidth estimates how wide words come out, semi-bold, in the widest of the usual
// system fonts.
func textWidth(words string) float64 {
	return 0.56 * textSize * float64(len([]rune(words)))
}
