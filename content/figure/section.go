package figure

import (
	"html/template"
	"strings"
)

// The section's sheet. Lengths along the arm run to the right from the cross, and
// radii down from the axis.
const (
	sectionWidth  = 340.0
	sectionAxis   = 146.0
	sectionOpen   = 100.0 // open end of the cap
	sectionClosed = 212.0 // closed end
	sectionCap    = 50.0  // radius of the cap
	sectionBore   = 40.0  // radius inside it, where the rollers run
	sectionPin    = 30.0  // radius of the trunnion
	sectionEar    = 84.0  // radius of the yoke ear
)

// section is one end cut along its axis.
type section struct {
	*canvas
	above, below []callout
}

// at is a place on the sheet.
func (section) at(u, v float64) point { return point{u, sectionAxis + v} }

// ring is a rectangle between two lengths and two radii, on one side of the axis.
func (s section) ring(side, u1, u2, v1, v2 float64) []point {
	return []point{s.at(u1, side*v1), s.at(u2, side*v1), s.at(u2, side*v2), s.at(u1, side*v2)}
}

// Section draws the section through one end: trunnion, needle rollers, bearing cap, yoke
// ear and what holds the cap, each named at the end of a leader. Shapes are habitual and
// carry no figure.
func (w Words) Section(prefix, hold string) template.HTML {
	s := &section{canvas: &canvas{language: language(w)}}
	if hold == wing {
		s.wingBlock()
	} else {
		s.yoke(hold)
		s.cup(hold)
	}
	s.inside()
	s.retainer(hold)
	s.line(tag{class: "c"}, s.at(4, 0), s.at(254, 0))
	s.callouts(sectionAxis-sectionEar-18, -1, sectionWidth, s.above...)
	foot := s.callouts(sectionAxis+sectionEar+30, 1, sectionWidth, s.below...)
	s.text("s", "start", point{4, foot + 22}, s.say("section-scale"))
	var named []string
	for _, call := range append(s.above, s.below...) {
		named = append(named, call.words)
	}
	title := s.say("section-title", "hold", strings.ToLower(s.hold(hold)))
	desc := s.say("section-about", "seen", s.seen(hold), "parts", strings.Join(named, ", "))
	return s.svg(sheet{prefix, "drawing", title, desc, sectionWidth, foot + 30, ""})
}

// nameAbove and nameBelow name the part at a place; which says whose name it is.
func (s *section) nameAbove(u, v float64, which string) {
	s.above = append(s.above, callout{s.at(u, v), s.say("part-" + which)})
}

func (s *section) nameBelow(u, v float64, which string) {
	s.below = append(s.below, callout{s.at(u, v), s.say("part-" + which)})
}

// inside draws the trunnion with the rollers round it and the seal at the cap's mouth.
// Pins and rollers are not hatched when cut lengthwise (ISO 128-3).
func (s *section) inside() {
	end := sectionClosed - 14
	s.poly(tag{class: "b", part: "trunnion"}, false, s.at(14, -46), s.at(56, -46), s.at(76, -sectionPin), s.at(end-2, -sectionPin),
		s.at(end-2, sectionPin), s.at(76, sectionPin), s.at(56, 46), s.at(14, 46))
	s.curve(tag{class: "h"}, "M14 "+num(sectionAxis-46)+"C24 "+num(sectionAxis-20)+" 4 "+num(sectionAxis+20)+" 14 "+num(sectionAxis+46))
	for _, side := range []float64{-1, 1} {
		s.poly(tag{class: "l", part: "rollers"}, true, s.ring(side, sectionOpen+16, end-4, sectionPin, sectionBore)...)
		s.poly(tag{class: "k", part: "seal"}, true, s.ring(side, sectionOpen+2, sectionOpen+11, sectionPin, sectionBore)...)
	}
	s.nameBelow(40, 18, "trunnion")
	s.nameBelow(sectionOpen+6, 35, "seal")
	s.nameBelow(sectionOpen+40, 35, "rollers")
	s.nameBelow(sectionClosed-6, 16, "cap")
}

// cup draws the bearing cap, with a groove where a clip or plastic sits in it.
func (s *section) cup(hold string) {
	var upper []point // along the outside, from the open end
	for _, groove := range capGrooves(hold) {
		upper = append(upper, s.at(groove[0], -sectionCap), s.at(groove[0], -sectionCap+5),
			s.at(groove[1], -sectionCap+5), s.at(groove[1], -sectionCap))
	}
	outline := append([]point{s.at(sectionOpen, -sectionCap)}, upper...)
	outline = append(outline, s.at(sectionClosed-5, -sectionCap), s.at(sectionClosed, -sectionCap+5),
		s.at(sectionClosed, sectionCap-5), s.at(sectionClosed-5, sectionCap))
	for i := len(upper) - 1; i >= 0; i-- { // the other side is alike
		outline = append(outline, point{upper[i].x, 2*sectionAxis - upper[i].y})
	}
	inner := sectionClosed - 14
	outline = append(outline, s.at(sectionOpen, sectionCap), s.at(sectionOpen, sectionBore),
		s.at(inner, sectionBore), s.at(inner, -sectionBore), s.at(sectionOpen, -sectionBore))
	s.cut("cap", falling, outline...)
}

// capGrooves are the grooves round a cap, from and to.
func capGrooves(hold string) [][2]float64 {
	switch hold {
	case insideClip:
		return [][2]float64{{sectionOpen + 9, sectionOpen + 19}}
	case injected:
		return [][2]float64{{150, 162}}
	}
	return nil
}

// yoke draws the yoke ear as a hold needs it. A half-round yoke has its half bore below.
func (s *section) yoke(hold string) {
	in, out := 124.0, sectionClosed
	switch hold {
	case outsideClip:
		out = sectionClosed + 26
	case staked:
		out = sectionClosed + 10
	case strap:
		s.cut("ear", rising, s.at(in, sectionEar), s.at(out+14, sectionEar), s.at(out+14, sectionCap-14), s.at(out, sectionCap-14),
			s.at(out, sectionCap), s.at(in, sectionCap))
		s.nameBelow(176, 68, "half-bore")
		return
	}
	for _, side := range []float64{-1, 1} {
		inner := []point{s.at(in, side*sectionCap)} // along the bore, from the cross outwards
		switch hold {
		case outsideClip:
			inner = append(inner, s.at(sectionClosed+1, side*sectionCap), s.at(sectionClosed+1, side*(sectionCap+8)),
				s.at(sectionClosed+11, side*(sectionCap+8)), s.at(sectionClosed+11, side*sectionCap))
		case injected:
			inner = append(inner, s.at(150, side*sectionCap), s.at(150, side*(sectionCap+5)), s.at(162, side*(sectionCap+5)), s.at(162, side*sectionCap))
		}
		inner = append(inner, s.at(out, side*sectionCap), s.at(out, side*sectionEar), s.at(in, side*sectionEar))
		s.cut("ear", rising, inner...)
	}
	s.nameAbove(in+14, -70, "ear")
}

// retainer draws what keeps the cap in place.
func (s *section) retainer(hold string) {
	closed := sectionClosed
	switch hold {
	case outsideClip:
		s.bothSides("clip", closed+1, closed+10, sectionCap-10, sectionCap+7)
		s.nameAbove(closed+6, -sectionCap-1, "ring")
	case insideClip:
		s.bothSides("clip", sectionOpen+9, sectionOpen+18, sectionCap-5, sectionCap+16)
		s.nameAbove(sectionOpen+13, -sectionCap-8, "clip")
	case plate:
		s.cut("plate", falling, s.at(closed, -sectionEar), s.at(closed+16, -sectionEar), s.at(closed+16, sectionEar), s.at(closed, sectionEar))
		for _, side := range []float64{-1, 1} {
			s.poly(tag{class: "b", part: "bolt"}, true, s.ring(side, closed-34, closed+16, 64, 74)...)
			s.poly(tag{class: "k", part: "bolt"}, true, s.ring(side, closed+16, closed+28, 59, 79)...)
		}
		s.nameAbove(closed+8, -sectionEar+5, "plate")
		s.nameAbove(closed+22, -69, "bolt")
	case strap:
		s.poly(tag{class: "k", part: "strap"}, true, s.ring(-1, 148, 184, sectionCap, sectionCap+8)...)
		s.nameAbove(166, -sectionCap-4, "strap")
		s.nameBelow(closed+7, sectionCap-6, "tab")
	case injected:
		s.bothSides("plastic", 150, 162, sectionCap-5, sectionCap+5)
		s.poly(tag{class: "b", part: "injection-hole"}, true, s.ring(-1, 153, 159, sectionCap+5, sectionEar)...)
		s.nameAbove(156, -sectionCap, "plastic")
	case staked:
		for _, side := range []float64{-1, 1} {
			s.poly(tag{class: "k", part: "stake"}, true, s.at(closed, side*(sectionCap-12)), s.at(closed+10, side*(sectionCap-5)),
				s.at(closed+10, side*(sectionCap+6)), s.at(closed, side*(sectionCap+1)))
		}
		s.nameAbove(closed+5, -sectionCap+2, "peened")
	}
}

// bothSides draws a solid ring: thin parts are cut in black (ISO 128-3).
func (s *section) bothSides(part string, u1, u2, v1, v2 float64) {
	for _, side := range []float64{-1, 1} {
		s.poly(tag{class: "k", part: part}, true, s.ring(side, u1, u2, v1, v2)...)
	}
}

// wingBlock draws a wing bearing, where cap and wings are one piece. It is bolted to
// the face of the yoke behind it, with a key that goes into the yoke.
func (s *section) wingBlock() {
	inner := sectionClosed - 14
	s.cut("cap", falling, s.at(sectionOpen, -sectionEar), s.at(190, -sectionEar), s.at(sectionClosed, -sectionCap),
		s.at(sectionClosed, sectionCap), s.at(190, sectionEar), s.at(sectionOpen, sectionEar), s.at(sectionOpen, sectionBore),
		s.at(inner, sectionBore), s.at(inner, -sectionBore), s.at(sectionOpen, -sectionBore))
	for _, side := range []float64{-1, 1} {
		hole := s.at(150, side*63)
		s.circle(tag{class: "b", part: "hole"}, hole, 10)
		s.strokes(tag{class: "h"}, [2]point{{hole.x - 15, hole.y}, {hole.x + 15, hole.y}}, [2]point{{hole.x, hole.y - 15}, {hole.x, hole.y + 15}})
	}
	s.nameAbove(118, -70, "wing")
	s.nameAbove(150, -66, "hole")
}
