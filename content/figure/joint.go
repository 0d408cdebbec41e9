package figure

import "html/template"

// The sheet of a joint: the cross on the left, its cap figures on the right, the
// across below, and words about the faces at the foot.
const (
	sheetWidth = 360.0
	edge       = 10.0
	capColumn  = 112.0 // right of the cross, for the figures of a cap
	spanColumn = 54.0  // left of a conversion joint, for its upright across
	capBand    = 48.0  // above a conversion joint, for its upright caps
)

// Joint draws the cross and caps of one row in plan, dimensioned in both units. Its
// ids begin with the prefix.
func (w Words) Joint(prefix string, d JointDrawing) template.HTML {
	p := plan(w, d, sheetWidth, capColumn)
	p.dimension()
	p.notes()
	return p.canvas.svg(sheet{prefix, "drawing", p.title(), p.description(), sheetWidth, p.foot, ""})
}

// jointPlan is a joint laid out on its sheet.
type jointPlan struct {
	JointDrawing
	*canvas
	level, upright           arm
	alike, schematic         bool
	scale                    float64
	centre                   point
	left, top, right, bottom float64 // the drawn joint
	foot                     float64 // the height used so far
}

// plan lays out the cross, its scale and its place, and draws the parts, keeping a
// column free on the right.
func plan(w Words, d JointDrawing, width, column float64) *jointPlan {
	p := newPlan(w, d)
	leftRoom, topRoom := edge, edge
	if !p.alike {
		leftRoom, topRoom = edge+spanColumn, capBand
	}
	halfWide, halfHigh := p.halves()
	room := width - leftRoom - column
	scale := room / 2 / max(halfWide, halfHigh)
	p.place(scale, point{leftRoom + room/2, topRoom + halfHigh*scale})
	return p
}

// newPlan works out the two ends of a joint.
func newPlan(w Words, d JointDrawing) *jointPlan {
	level := End{}
	if len(d.Ends) > 0 {
		level = d.Ends[0]
	}
	upright := level
	if len(d.Ends) > 1 {
		upright = d.Ends[1]
	}
	p := &jointPlan{JointDrawing: d, canvas: &canvas{language: language(w)}, alike: level == upright}
	p.level = newArm(level, 0, upright.Cap.MM)
	p.upright = newArm(upright, 1, level.Cap.MM)
	p.schematic = p.level.schematic || p.upright.schematic
	return p
}

// halves are the lengths from the centre to the outermost part, to the side and up.
func (p *jointPlan) halves() (wide, high float64) {
	return max(p.level.reach, p.upright.half), max(p.upright.reach, p.level.half)
}

// place draws the parts at a scale round a centre.
func (p *jointPlan) place(scale float64, centre point) {
	wide, high := p.halves()
	p.scale, p.centre = scale, centre
	p.left, p.right = centre.x-wide*scale, centre.x+wide*scale
	p.top, p.bottom = centre.y-high*scale, centre.y+high*scale
	p.foot = p.bottom
	p.parts()
}

// parts draws cross, caps and centre lines. One unit more than the part shows on
// each side of a centre line, as ISO 128 wants.
func (p *jointPlan) parts() {
	p.curve(tag{class: "b"}, crossOutline(p.centre, p.level, p.upright, p.scale))
	bore := 0.2 * min(p.level.cap, p.upright.cap) * p.scale
	p.circle(tag{class: "l"}, p.centre, bore)
	for _, side := range p.sides(p.level) {
		side.draw()
	}
	for _, side := range p.sides(p.upright) {
		side.draw()
	}
	over := p.canvas.lettered(6)
	p.line(tag{class: "c"}, point{p.left - over, p.centre.y}, point{p.right + over, p.centre.y})
	p.line(tag{class: "c"}, point{p.centre.x, p.top - over}, point{p.centre.x, p.bottom + over})
}

// sides are the two caps of one arm: left and right, or top and bottom.
func (p *jointPlan) sides(a arm) [2]placed {
	var both [2]placed
	for i, sign := range []float64{-1, 1} {
		at := func(u, v float64) point {
			return point{p.centre.x + sign*u*p.scale, p.centre.y + v*p.scale}
		}
		if a.end == 1 {
			at = func(u, v float64) point {
				return point{p.centre.x + v*p.scale, p.centre.y + sign*u*p.scale}
			}
		}
		both[i] = placed{a, p.canvas, at, p.scale}
	}
	return both
}

// notes writes the words under the drawing.
func (p *jointPlan) notes() {
	var lines [][2]string // class and words
	if p.alike {
		lines = append(lines, [2]string{"mt", p.faces(p.level.Faces)})
	} else {
		lines = append(lines, [2]string{"mt", p.say("level-end", "is", p.faces(p.level.Faces))},
			[2]string{"mt", p.say("upright-end", "is", p.faces(p.upright.Faces))})
	}
	if p.schematic {
		lines = append(lines, [2]string{"s", p.say("not-to-scale")})
	}
	for _, line := range lines {
		p.foot += lineSpace
		p.text(line[0], "start", point{edge, p.foot}, line[1])
	}
	p.foot += edge
}

// span is the across of an end as it stands on its dimension line.
func (p *jointPlan) span(a arm) Dimension {
	return Dimension{MM: a.Across.MM, Text: p.figure(a.Across), Converted: a.Across.Converted}
}

func (p *jointPlan) title() string {
	return p.say("joint-title", "name", p.Name)
}

// description says in words everything the drawing shows.
func (p *jointPlan) description() string {
	if p.schematic {
		return p.say("joint-schematic", "ends", p.inWords())
	}
	return p.say("joint-to-scale", "ends", p.inWords())
}

// inWords says how each end is held, its figures and its faces.
func (p *jointPlan) inWords() string {
	describe := func(a arm) string {
		hold, seen, across, faces := p.hold(a.Hold), p.seen(a.Hold), p.inBoth(a.Across), p.faces(a.Faces)
		if a.Hold == wing {
			return p.say("end-wing", "hold", hold, "seen", seen, "across", across, "faces", faces)
		}
		return p.say("end", "hold", hold, "seen", seen, "cap", p.inBoth(a.Cap), "across", across, "faces", faces)
	}
	if p.alike {
		return p.say("both-ends", "is", describe(p.level))
	}
	return p.say("level-end", "is", describe(p.level)) + " " + p.say("upright-end", "is", describe(p.upright))
}

// inBoth says a figure in both units.
func (l language) inBoth(d Dimension) string {
	if d.Converted == "" {
		return l.figure(d)
	}
	return l.say("in-both", "figure", d.Text, "converted", d.Converted)
}
