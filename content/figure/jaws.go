package figure

import "html/template"

// The sheet of a caliper on a joint.
const (
	jawsWidth  = 312.0
	jawsRoom   = 196.0 // for the joint
	jawsCentre = 138.0
	jawWide    = 15.0
	beamHigh   = 20.0
)

// grip is how a caliper takes hold of a pair of faces.
type grip struct {
	outwards bool   // inside jaws, which press away from each other
	how      string // the key of its words
}

func gripOf(faces string) grip {
	switch faces {
	case grooveInner:
		return grip{false, "jaws-groove-inner"}
	case grooveOuter:
		return grip{true, "jaws-groove-outer"}
	case underPlates:
		return grip{true, "jaws-under-plates"}
	case holeCentres:
		return grip{true, "jaws-hole-centres"}
	case wingOuter:
		return grip{false, "jaws-wing-outer"}
	}
	return grip{false, "jaws-over-caps"}
}

// Jaws draws a caliper on the faces of a joint: the picture of [Faces] with the jaws
// where they touch. Clips are off, as they must be. It carries no figure.
func (w Words) Jaws(prefix, hold, faces string) template.HTML {
	end := End{Hold: hold, Faces: faces, Cap: Dimension{MM: 27}, Across: Dimension{MM: 82}}
	switch hold {
	case plate, wing, injected: // these stay on the cap
	default:
		end.Hold = ""
	}
	if faces == grooveInner || faces == grooveOuter {
		end.Across.MM = 56
	}
	p := newPlan(w, JointDrawing{Ends: []End{end}})
	wide, high := p.halves()
	scale := jawsRoom / 2 / wide
	p.place(scale, point{jawsCentre, edge + high*scale})
	g := gripOf(faces)
	beam := p.bottom + 16
	p.box(tag{class: "l", part: "beam"}, 24, beam, jawsWidth-6, beam+beamHigh)
	for _, side := range []float64{-1, 1} {
		p.jaw(g, side, beam)
	}
	for _, side := range p.sides(p.level) {
		side.mark()
	}
	p.foot = beam + beamHigh + 10
	p.notes()
	how := p.say(g.how)
	p.text("", "start", point{edge, p.foot + 6}, how)
	desc := p.say("jaws-about", "hold", p.hold(hold), "faces", p.faces(faces), "how", capital(how))
	return p.canvas.svg(sheet{prefix, "drawing", p.say("jaws-title", "faces", p.faces(faces)), desc, jawsWidth, p.foot + 16, ""})
}

// jaw draws one jaw from the beam up to its face; side is -1 for the fixed jaw on the
// left and 1 for the sliding one.
func (p *jointPlan) jaw(g grip, side, beam float64) {
	a := p.level
	face := p.centre.x + side*a.face*p.scale
	away := side // from the face, where the metal of the jaw is
	if g.outwards {
		away = -side
	}
	below := func(share float64) float64 { return p.centre.y + share*a.cap*p.scale }
	tip, shoulder, thin := below(-0.3), below(0.62), jawWide
	switch {
	case a.Faces == grooveInner || a.Faces == grooveOuter:
		tip, thin = below(0.5-grooveDeep), 0.7*a.groove*p.scale
	case a.Faces == underPlates:
		tip = below(0.55)
	case a.Faces == holeCentres:
		across := 2 * a.outer * p.scale
		face += side * wingHoleRadius * across
		tip, shoulder, thin = p.centre.y+(wingHole-0.015)*across, p.centre.y+wingHalf*across+6, wingHoleRadius*across
	case a.Faces == wingOuter:
		shoulder = p.centre.y + a.half*p.scale + 6
	}
	// The head holds the jaw on the beam; it lies on the jaw's side of the face.
	head := jawWide + 20
	p.poly(tag{"b", "jaw", int((side + 1) / 2)}, true,
		point{face, tip}, point{face, beam + beamHigh + 5}, point{face + away*head, beam + beamHigh + 5}, point{face + away*head, beam - 5},
		point{face + away*jawWide, beam - 5}, point{face + away*jawWide, shoulder}, point{face + away*thin, shoulder - 4}, point{face + away*thin, tip})
}
