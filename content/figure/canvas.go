package figure

import (
	"fmt"
	"html"
	"html/template"
	"math"
	"strconv"
	"strings"
)

// point is a place on the sheet, in the drawing's units, y downwards.
type point struct{ x, y float64 }

// canvas gathers the elements of one drawing. Text is kept apart and written last, so
// that no line crosses over a figure.
type canvas struct {
	language
	shapes, texts strings.Builder
	lettering     float64 // factor for text, arrows and their gaps; zero means 1
}

// lettered scales a measure of the lettering, which is in units of a screen, to the
// drawing's own units.
func (c *canvas) lettered(measure float64) float64 {
	if c.lettering == 0 {
		return measure
	}
	return measure * c.lettering
}

// num writes a coordinate with at most two decimals. A hundredth of a unit cannot be
// seen, and the last digits of a float would differ from machine to machine.
func num(f float64) string {
	var digits [24]byte
	return string(appendNum(digits[:0], f))
}

func appendNum(to []byte, f float64) []byte {
	r := math.Round(f*100) / 100
	if r == 0 {
		r = 0 // no "-0"
	}
	return strconv.AppendFloat(to, r, 'f', -1, 64)
}

// tag is the class of an element and, when it stands for a quantity, which one.
type tag struct {
	class, part string
	end         int
}

func (t tag) String() string {
	s := `class="` + t.class + `"`
	if t.class == "k" || t.class == "mt" {
		s += ` fill="currentColor" stroke="none"` // solid also without a style sheet, and not a stroke too large
	}
	if t.part == "" {
		return s
	}
	return s + ` data-part="` + t.part + `" data-end="` + strconv.Itoa(t.end) + `"`
}

// poly draws straight lines through the points.
func (c *canvas) poly(t tag, closed bool, points ...point) {
	c.shapes.WriteString("<path " + t.String() + ` d="`)
	for i, p := range points {
		c.to("ML"[min(i, 1)], p)
	}
	if closed {
		c.shapes.WriteString("Z")
	}
	c.shapes.WriteString(`"/>`)
}

// to writes a letter of path data and the point it goes to.
func (c *canvas) to(letter byte, p point) {
	var text [64]byte
	data := appendNum(append(text[:0], letter), p.x)
	c.shapes.Write(appendNum(append(data, ' '), p.y))
}

// strokes draws separate straight lines as one element, such as the lines of a scale.
func (c *canvas) strokes(t tag, lines ...[2]point) {
	if len(lines) == 0 {
		return
	}
	c.shapes.WriteString("<path " + t.String() + ` d="`)
	for _, l := range lines {
		c.to('M', l[0])
		c.to('L', l[1])
	}
	c.shapes.WriteString(`"/>`)
}

func (c *canvas) line(t tag, from, to point) { c.poly(t, false, from, to) }

func (c *canvas) circle(t tag, centre point, radius float64) {
	fmt.Fprintf(&c.shapes, `<circle %s cx="%s" cy="%s" r="%s"/>`, t, num(centre.x), num(centre.y), num(radius))
}

// curve draws path data made by its caller.
func (c *canvas) curve(t tag, data string) {
	fmt.Fprintf(&c.shapes, `<path %s d="%s"/>`, t, data)
}

// text writes words at the foot of their line; anchor is start, middle or end.
func (c *canvas) text(class, anchor string, at point, words string) {
	c.write(class, anchor, at, "", words)
}

// upright writes words that read from the right, as ISO 129 puts them on an upright
// dimension line.
func (c *canvas) upright(class string, at point, words string) {
	turn := fmt.Sprintf(` transform="rotate(-90 %s %s)"`, num(at.x), num(at.y))
	c.write(class, "middle", at, turn, words)
}

func (c *canvas) write(class, anchor string, at point, turn, words string) {
	if words == "" {
		return
	}
	if class != "" {
		class = ` class="` + class + `"`
	}
	if anchor == "start" {
		anchor = ""
	} else {
		anchor = ` text-anchor="` + anchor + `"`
	}
	for _, piece := range []string{"<text", class, ` x="`, num(at.x), `" y="`, num(at.y), `"`, anchor, turn, ">", escape(words), "</text>"} {
		c.texts.WriteString(piece)
	}
}

// sheet is what surrounds the elements.
type sheet struct {
	prefix, class, title, desc string // no title: a picture that is passed over
	width, height              float64
	unit                       string // of width and height; empty for the units of a screen
}

// svg closes the drawing. All words in it went through escape. The ids of its title and description are made from the
// prefix, which the caller keeps different on one page.
func (c *canvas) svg(s sheet) template.HTML {
	id := identifier(s.prefix)
	w, h := num(s.width), num(s.height)
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" class="%s" viewBox="0 0 %s %s" width="%s%s" height="%s%s"`,
		s.class, w, h, w, s.unit, h, s.unit)
	if s.title == "" {
		b.WriteString(` aria-hidden="true" fill="none" stroke="currentColor">`)
	} else {
		fmt.Fprintf(&b, ` role="img" aria-labelledby="%s-title %s-desc" fill="none" stroke="currentColor">`, id, id)
		fmt.Fprintf(&b, `<title id="%s-title">%s</title><desc id="%s-desc">%s</desc>`,
			id, escape(s.title), id, escape(s.desc))
	}
	b.WriteString(c.shapes.String())
	if c.texts.Len() > 0 {
		fmt.Fprintf(&b, `<g fill="currentColor" stroke="none" font-size="%s">%s</g>`, num(c.lettered(textSize)), c.texts.String())
	}
	b.WriteString("</svg>")
	return template.HTML(b.String())
}

// escape makes words fit to stand in SVG. Control characters may not stand in XML even
// when escaped (XML 1.0, 2.2), so they become spaces, as does what is not UTF-8.
func escape(words string) string {
	words = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0xFFFE || r == 0xFFFF {
			return ' '
		}
		return r
	}, strings.ToValidUTF8(words, " "))
	return html.EscapeString(words)
}

// identifier keeps what may stand in an id and in a list of ids.
func identifier(prefix string) string {
	return strings.Map(func(r rune) rune {
		switch {
		case 'a' <= r && r <= 'z', 'A' <= r && r <= 'Z', '0' <= r && r <= '9', r == '-', r == '_', r == '.':
			return r
		}
		return '-'
	}, prefix)
}
