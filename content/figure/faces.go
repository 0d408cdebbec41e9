package figure

import "html/template"

// facesWidth is narrower than a joint's sheet: no figures stand beside the cross.
const facesWidth = 290.0

// Faces draws where the caliper goes: a joint of a habitual shape with the hold, the
// faces in red, and their name in words. It carries no figure of any row.
func (w Words) Faces(prefix, hold, faces string) template.HTML {
	end := End{Hold: hold, Faces: faces, Cap: Dimension{MM: 27}, Across: Dimension{MM: 82}}
	if faces == grooveInner || faces == grooveOuter {
		end.Across.MM = 56 // the grooves lie near the open ends of the caps
	}
	p := plan(w, JointDrawing{Ends: []End{end}}, facesWidth, edge)
	for _, side := range p.sides(p.level) {
		side.mark()
	}
	half := p.level.face * p.scale
	y := p.bottom + dimGap
	p.canvas.level(facesStyle, 0, p.centre.x-half, p.centre.x+half, y, p.centre.y+p.level.cap/2*p.scale, Dimension{})
	p.foot = y + 4
	p.notes()
	title := p.say("measure-title", "faces", p.faces(faces))
	desc := p.say("measure-about", "hold", p.hold(hold), "seen", p.seen(hold), "faces", p.faces(faces))
	return p.canvas.svg(sheet{prefix, "drawing", title, desc, facesWidth, p.foot, ""})
}
