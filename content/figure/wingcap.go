package figure

import "html/template"

// The sheet of the wing caps.
const (
	wingWidth  = 340.0
	wingAcross = 226.0 // outer faces, on the sheet
	keyWide    = 0.11  // of the across
)

// wingFigures are the four lengths that tell a wing bearing.
var wingFigures = []named{
	{"A", "wing-holes"},
	{"B", "wing-key"},
	{"C", "wing-centres"},
	{"D", "wing-outer"},
}

// WingCap draws a joint with wing bearings and the four lengths to measure, lettered
// and named in words, without figures.
func (w Words) WingCap(prefix string) template.HTML {
	p := newPlan(w, JointDrawing{Ends: []End{{Hold: wing, Faces: wingOuter, Across: Dimension{MM: wingAcross}}}})
	half := wingAcross / 2
	p.place(1, point{wingWidth / 2, edge + half})
	for _, a := range []arm{p.level, p.upright} {
		for _, side := range p.sides(a) {
			side.box(side.tag("l", "key"), side.inner+4, 0.9*side.outer, -keyWide/2*wingAcross, keyWide/2*wingAcross)
		}
	}
	hole, pitch, key := wingHoleU*wingAcross, wingHole*wingAcross, keyWide/2*wingAcross
	x, y := p.centre.x, p.centre.y

	c := p.canvas
	right := p.right + 16
	c.standing(letter("A"), 0, y-pitch, y+pitch, right, x+hole, Dimension{})
	c.text("mt", "start", point{right + 7, y + 4.5}, "A")
	left := p.left - 16
	c.standing(letter("B"), 0, y-key, y+key, left, x-0.9*half, Dimension{})
	c.text("mt", "end", point{left - 7, y + 4.5}, "B")
	c.level(letter("C"), 0, x-hole, x+hole, p.bottom+26, y+pitch, Dimension{Text: "C"})
	c.level(letter("D"), 0, x-half, x+half, p.bottom+52, y, Dimension{Text: "D"})
	foot, said := c.legend(p.bottom+80, wingFigures)
	return c.svg(sheet{prefix, "drawing", c.say("wing-title"), c.say("wing-about", "figures", said), wingWidth, foot, ""})
}
