package figure

import "html/template"

// Measures of the true drawings, in millimetres.
const (
	millimetreLettering = 3.5 / textSize // letters of 3.5 mm, a size of ISO 3098
	lifeEdge            = 5.0
	lifeLeast           = 124.0 // room for the words under a small joint
	// lifeLongest is the longest joint drawn whole. One sheet serves A4 (210 x 297 mm) and
	// Letter (215.9 x 279.4 mm), so 190 x 259 mm are free, less 85 mm for ruler and words.
	// Of a longer joint a quarter is drawn.
	lifeLongest = 130.0
	lifeBeyond  = 12.0 // what a quarter shows beyond the centre
)

// LifeSize draws a joint one to one: one unit of the drawing is one millimetre, and its
// width and height say so, so that a joint can be laid on a print at 100 %. It is at
// most 160 mm wide and 185 mm high. A joint too long for the sheet is drawn as a
// quarter, from its centre to two of its caps. When neither the cap nor the across of
// an end is known there is nothing true to draw, and LifeSize returns "".
func (w Words) LifeSize(prefix string, d JointDrawing) template.HTML {
	p := newPlan(w, d)
	for _, a := range []arm{p.level, p.upright} {
		if !a.Cap.known() && !a.Across.known() {
			return ""
		}
	}
	p.canvas.lettering = millimetreLettering
	wide, high := p.halves()
	width := max(2*(wide+lifeEdge), lifeLeast)
	centre := point{width / 2, lifeEdge + high}
	if p.quarter() {
		centre = point{lifeBeyond, lifeBeyond}
		width = max(lifeBeyond+wide+lifeEdge, lifeLeast)
	}
	p.place(1, centre)
	for _, a := range []arm{p.level, p.upright} {
		for _, side := range p.sides(a) {
			side.mark()
		}
	}
	p.lifeSpan()
	p.lifeNotes()
	desc := p.say("life-about", "ends", p.inWords(), "truth", p.lifeTruth())
	if p.quarter() {
		desc += " " + p.say("life-quarter-about")
	}
	return p.canvas.svg(sheet{prefix, "drawing drawing--true", p.say("life-title", "name", d.Name), desc, width, p.foot, "mm"})
}

// quarter reports whether the joint is too long to be drawn whole.
func (p *jointPlan) quarter() bool {
	wide, high := p.halves()
	return 2*max(wide, high) > lifeLongest
}

// lifeSpan dimensions the across of the level end below the joint. On a quarter the
// line runs a little past the centre and has no arrowhead there, as ISO 129 dimensions
// a symmetrical part that is drawn in half.
func (p *jointPlan) lifeSpan() {
	a := p.level
	y, from := p.bottom+8, p.centre.y+a.cap/2
	right := p.centre.x + a.face
	p.foot = y + 4
	if !a.Across.known() {
		return
	}
	if !p.quarter() {
		p.canvas.level(facesStyle, 0, p.centre.x-a.face, right, y, from, a.Across)
		return
	}
	p.line(tag{class: "h"}, point{right, from + 0.5}, point{right, y + 1})
	p.line(tag{"m", "across", 0}, point{p.centre.x - lifeBeyond/2, y}, point{right, y})
	p.canvas.arrow("mt", point{right, y}, 1, 0)
	p.text("mt", "middle", point{(p.centre.x + right) / 2, y - 1}, p.say("life-in-all", "across", a.Across.Text))
	p.text("s", "middle", point{(p.centre.x + right) / 2, y + 4}, a.Across.bracketed())
	p.symmetry()
}

// symmetry puts two short strokes across each centre line where the drawing stops
// (ISO 128: the other part is alike).
func (p *jointPlan) symmetry() {
	var lines [][2]point
	for _, d := range []float64{4, 5.5} {
		lines = append(lines,
			[2]point{{p.centre.x - d - 4, p.centre.y - 3}, {p.centre.x - d - 4, p.centre.y + 3}},
			[2]point{{p.centre.x - 3, p.centre.y - d - 4}, {p.centre.x + 3, p.centre.y - d - 4}})
	}
	p.strokes(tag{class: "h", part: "symmetry"}, lines...)
}

// lifeTruth says which lengths of the drawing are the chart's.
func (p *jointPlan) lifeTruth() string {
	caps, across := true, true
	for _, a := range []arm{p.level, p.upright} {
		caps = caps && a.Cap.known() && a.Hold != wing
		across = across && a.Across.known()
	}
	switch {
	case !caps && !across:
		return p.say("true-figures")
	case !caps:
		return p.say("true-across")
	case !across:
		return p.say("true-cap")
	}
	return p.say("true-both")
}

// lifeNotes writes what is true on this drawing.
func (p *jointPlan) lifeNotes() {
	write := func(class, words string) {
		p.foot += 5
		p.text(class, "start", point{lifeEdge, p.foot}, words)
	}
	describe := func(a arm, named func(words string) string) {
		switch {
		case a.Hold == wing:
			write("", named(p.say("no-round-cap")))
		case !a.Cap.known():
			write("", named(p.say("life-no-cap")))
		default:
			write("", named(p.say("life-cap", "figure", a.Cap.Text+" "+a.Cap.bracketed())))
		}
		if a.Across.known() {
			write("mt", p.say("life-across", "figure", a.Across.Text+" "+a.Across.bracketed()))
		} else {
			write("mt", p.say("life-no-across"))
		}
		write("mt", p.faces(a.Faces))
	}
	if p.alike {
		describe(p.level, func(words string) string { return words })
	} else {
		describe(p.level, func(words string) string { return p.say("level-end", "is", words) })
		describe(p.upright, func(words string) string { return p.say("upright-end", "is", words) })
	}
	write("s", p.lifeTruth())
	if p.quarter() {
		write("s", p.say("life-quarter"))
	}
	p.foot += 2
}
