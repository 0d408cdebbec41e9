package figure

import (
	"fmt"
	"math"
)

// arm is one end of a cross worked out for drawing: lengths in millimetres from the
// centre of the cross. u runs along the arm, v across it.
type arm struct {
	End
	end          int     // 0 level, 1 upright
	cap          float64 // diameter
	face         float64 // centre to the face measured from: half the across
	inner, outer float64 // the cap's open and closed end
	groove       float64 // width of the clip groove; zero without one
	reach, half  float64 // outermost drawn point along and across the arm
	schematic    bool    // the cap or the across is a guess made for drawing
}

// Proportions to the cap's diameter of what no table holds. They only have to look
// like the part.
const (
	capLength      = 0.68
	leastCap       = 0.2 // of length, when two fat caps leave no room
	lip            = 0.07
	grooveWide     = 0.09
	grooveDeep     = 0.06
	clipStands     = 0.13 // how far a C clip stands out of its groove
	ringThick      = 0.11
	ringStands     = 0.05
	plateThick     = 0.17
	plateHalf      = 0.86
	boltHead       = 0.11
	strapHalf      = 0.9
	trunnion       = 0.58
	stake          = 0.18
	wingHalf       = 0.26 // of the across, as the next four
	wingInner      = 0.27
	wingHole       = 0.17
	wingHoleU      = 0.36
	wingHoleRadius = 0.042
)

// newArm works out one end. otherCap tells how thick the caps of the other end are,
// since two neighbouring caps may not run into each other.
func newArm(e End, end int, otherCap float64) arm {
	a := arm{End: e, end: end, cap: e.Cap.MM, face: e.Across.MM / 2}
	a.schematic = !e.Cap.known() || !e.Across.known()
	switch { // 27 x 82 is the shape of the commonest light joint
	case !e.Cap.known() && !e.Across.known():
		a.cap, a.face = 27, 41
	case !e.Cap.known():
		a.cap = e.Across.MM * 27 / 82
	case !e.Across.known():
		a.face = e.Cap.MM * 41 / 27
	}
	if otherCap <= 0 {
		otherCap = a.cap
	}
	if a.Hold == wing {
		return a.wings()
	}
	if a.Hold == insideClip || a.Faces == grooveInner || a.Faces == grooveOuter {
		a.groove = grooveWide * a.cap
	}
	length := capLength * a.cap
	switch a.Faces {
	case grooveInner:
		a.inner = a.face - lip*a.cap
		a.outer = a.inner + length
	case grooveOuter:
		a.inner = a.face - a.groove - lip*a.cap
		a.outer = a.inner + length
	default:
		a.outer = a.face
		a.inner = a.outer - max(min(length, a.face-otherCap*0.52), leastCap*a.cap)
	}
	a.reach, a.half = a.outer, a.cap/2
	switch a.Hold {
	case outsideClip:
		a.reach += ringThick * a.cap
		a.half += ringStands * a.cap
	case plate:
		a.reach += (plateThick + boltHead) * a.cap
		a.half = plateHalf * a.cap
	case strap:
		a.reach += ringThick * a.cap
		a.half = strapHalf * a.cap
	case staked:
		a.reach += 0.5 * stake * a.cap
		a.half += stake * a.cap
	}
	if a.groove > 0 {
		a.half = max(a.half, (0.5-grooveDeep+clipStands)*a.cap)
	}
	return a
}

// wings is the end of a wing joint, whose shape follows from its across alone.
func (a arm) wings() arm {
	across := 2 * a.face
	if a.Faces == holeCentres { // the outer faces lie beyond the holes
		across = 2 * a.face / (2 * wingHoleU)
	}
	a.schematic = true
	a.cap = across * 27 / 82
	a.inner, a.outer, a.reach, a.half = wingInner*across, across/2, across/2, wingHalf*across
	return a
}

// placed draws one cap of an arm: at turns (u, v) into a place on the sheet.
type placed struct {
	arm
	*canvas
	at    func(u, v float64) point
	scale float64
}

func (p placed) tag(class, part string) tag { return tag{class, part, p.end} }

// box draws a rectangle from u1 to u2 and v1 to v2.
func (p placed) box(t tag, u1, u2, v1, v2 float64) {
	p.poly(t, true, p.at(u1, v1), p.at(u2, v1), p.at(u2, v2), p.at(u1, v2))
}

// draw draws the cap with what holds it.
func (p placed) draw() {
	if p.Hold == wing {
		p.drawWing()
		return
	}
	p.drawCap()
	d := p.cap
	for _, side := range []float64{-1, 1} {
		switch p.Hold {
		case insideClip:
			start := p.inner + lip*d
			p.box(p.tag("k", "clip"), start, start+0.8*p.groove, side*(0.5-grooveDeep)*d, side*(0.5-grooveDeep+clipStands)*d)
		case plate:
			p.box(p.tag("k", "bolt"), p.outer+plateThick*d, p.reach, side*0.57*d, side*0.75*d)
		case strap: // the locating tab, and the bolt of the strap
			p.box(p.tag("k", "tab"), p.outer, p.reach, side*0.3*d, side*0.62*d)
			middle := (p.inner + p.outer) / 2
			p.circle(p.tag("k", "bolt"), p.at(middle, side*0.74*d), 0.08*d*p.scale)
		case staked:
			p.drawStake(side)
		}
	}
	switch p.Hold {
	case outsideClip:
		h := (0.5 + ringStands) * d
		p.box(p.tag("k", "clip"), p.outer+0.04*d, p.reach, -h, h)
	case plate:
		p.box(p.tag("b", "plate"), p.outer, p.outer+plateThick*d, -p.half, p.half)
	case strap:
		third := (p.outer - p.inner) / 3
		p.box(p.tag("l", "strap"), p.inner+third, p.outer-third, -p.half, p.half)
	case injected: // the band of plastic, hatched
		third := (p.outer - p.inner) / 3
		from, to := p.inner+third, p.outer-third
		for i := range 7 {
			v := (float64(i)/7 - 0.5) * d
			p.line(p.tag("h", ""), p.at(from, v), p.at(to, v+d/7))
		}
		p.line(p.tag("l", "band"), p.at(from, -d/2), p.at(from, d/2))
		p.line(p.tag("l", "band"), p.at(to, -d/2), p.at(to, d/2))
	}
}

// drawStake draws the ear in section beside the cap, with the lip of metal peened over
// the cap's edge.
func (p placed) drawStake(side float64) {
	d := p.cap
	near, far := side*d/2, side*(0.5+stake)*d
	back, front := p.outer-0.45*d, p.outer+0.5*stake*d
	p.box(p.tag("l", "ear"), back, front, near, far)
	step := (front - back) / 4
	for i := range 4 {
		u := back + float64(i)*step
		p.line(p.tag("h", ""), p.at(u, near), p.at(u+step, far))
	}
	p.poly(p.tag("k", "stake"), true, p.at(p.outer, side*0.36*d), p.at(front, side*0.4*d), p.at(front, near), p.at(p.outer, near))
}

// drawCap draws the outline with its chamfers at the closed end and its clip groove.
func (p placed) drawCap() {
	d, r := p.cap, p.cap/2
	chamfer := 0.05 * d
	profile := [][2]float64{{p.inner, r}}
	if p.groove > 0 {
		from, low := p.inner+lip*d, r-grooveDeep*d
		profile = append(profile, [2]float64{from, r}, [2]float64{from, low},
			[2]float64{from + p.groove, low}, [2]float64{from + p.groove, r})
		for _, u := range []float64{from, from + p.groove} {
			p.line(p.tag("l", ""), p.at(u, -low), p.at(u, low))
		}
	}
	profile = append(profile, [2]float64{p.outer - chamfer, r}, [2]float64{p.outer, r - chamfer})
	var outline []point
	for _, q := range profile {
		outline = append(outline, p.at(q[0], q[1]))
	}
	for i := len(profile) - 1; i >= 0; i-- {
		outline = append(outline, p.at(profile[i][0], -profile[i][1]))
	}
	p.poly(p.tag("b", "cap"), true, outline...)
}

// drawWing draws one wing bearing: an outer face round the centre of the cross, a flat
// back, and two bolt holes.
func (p placed) drawWing() {
	across := 2 * p.outer
	outline := []point{p.at(p.inner, -p.half)}
	limit := math.Asin(p.half / p.outer)
	const steps = 16
	for i := range steps + 1 {
		angle := limit * (2*float64(i)/steps - 1)
		outline = append(outline, p.at(p.outer*math.Cos(angle), p.outer*math.Sin(angle)))
	}
	p.poly(p.tag("b", "wing"), true, append(outline, p.at(p.inner, p.half))...)
	for _, side := range []float64{-1, 1} {
		u, v, r := wingHoleU*across, side*wingHole*across, wingHoleRadius*across
		p.circle(p.tag("l", "hole"), p.at(u, v), r*p.scale)
		p.line(p.tag("h", ""), p.at(u-1.7*r, v), p.at(u+1.7*r, v))
		p.line(p.tag("h", ""), p.at(u, v-1.7*r), p.at(u, v+1.7*r))
	}
}

// mark draws the face to measure from in red, a little past the part so that it shows
// beside a bold edge.
func (p placed) mark() {
	half := 0.58 * p.cap
	switch p.Faces {
	case holeCentres:
		half = wingHole * 2 * p.outer
	case wingOuter:
		half = 0.3 * p.half
	}
	p.line(p.tag("m", "faces"), p.at(p.face, -half), p.at(p.face, half))
}

// crossOutline is the body of the cross: four trunnions that meet in fillets.
func crossOutline(centre point, level, upright arm, scale float64) string {
	x, y := level.inner*scale, upright.inner*scale
	tx, ty := trunnion/2*upright.cap*scale, trunnion/2*level.cap*scale
	r := max(0, min(0.3*min(level.cap, upright.cap)*scale, x-tx, y-ty))
	at := func(dx, dy float64) string { return num(centre.x+dx) + " " + num(centre.y+dy) }
	bend := func(dx, dy float64) string { return fmt.Sprintf("A%s %s 0 0 1 %s", num(r), num(r), at(dx, dy)) }
	return "M" + at(x, ty) + "L" + at(x, -ty) +
		"L" + at(tx+r, -ty) + bend(tx, -ty-r) + "L" + at(tx, -y) + "L" + at(-tx, -y) +
		"L" + at(-tx, -ty-r) + bend(-tx-r, -ty) + "L" + at(-x, -ty) + "L" + at(-x, ty) +
		"L" + at(-tx-r, ty) + bend(-tx, ty+r) + "L" + at(-tx, y) + "L" + at(tx, y) +
		"L" + at(tx, ty+r) + bend(tx+r, ty) + "Z"
}
