package figure

import "html/template"

// Size of the small picture.
const (
	iconWidth  = 84.0
	iconHeight = 52.0
)

// Hold draws the small picture of how an end is held: one cap pair seen from the side,
// with what one can see. Any word that is not a hold gives the picture of "not sure".
func (w Words) Hold(prefix, hold string) template.HTML {
	return holdIcon(hold).svg(sheet{prefix, "drawing drawing--icon", language(w).hold(hold), language(w).seen(hold), iconWidth, iconHeight, ""})
}

// HoldIcon is the same picture for a place whose own words say what it shows: readers
// of the screen pass it over.
func HoldIcon(hold string) template.HTML {
	return holdIcon(hold).svg(sheet{class: "drawing drawing--icon", width: iconWidth, height: iconHeight})
}

func holdIcon(hold string) *canvas {
	c := &canvas{}
	middle := point{iconWidth / 2, iconHeight / 2}
	c.line(tag{class: "c"}, point{1, middle.y}, point{iconWidth - 1, middle.y})
	switch hold {
	case outsideClip, insideClip, plate, strap, injected, staked:
		c.pair(middle, hold)
	case wing:
		c.wingPair(middle)
	default:
		c.questioned(middle)
	}
	return c
}

// pair draws the two caps of an end with their hold, as wide as the picture allows.
func (c *canvas) pair(middle point, hold string) {
	e := End{Hold: hold, Faces: overCaps, Cap: Dimension{MM: 27}, Across: Dimension{MM: 62}}
	if hold == insideClip {
		e.Faces, e.Across.MM = grooveInner, 34
	}
	a := newArm(e, 0, 12)
	scale := min((iconWidth/2-4)/a.reach, (iconHeight/2-4)/a.half)
	t := trunnion / 2 * a.cap * scale
	x := a.inner * scale
	c.poly(tag{class: "l"}, true, point{middle.x - x, middle.y - t}, point{middle.x + x, middle.y - t},
		point{middle.x + x, middle.y + t}, point{middle.x - x, middle.y + t})
	for _, sign := range []float64{-1, 1} {
		at := func(u, v float64) point { return point{middle.x + sign*u*scale, middle.y + v*scale} }
		placed{a, c, at, scale}.draw()
	}
}

// wingPair draws one wing bearing from the front, since the wings and holes are what
// one sees first.
func (c *canvas) wingPair(middle point) {
	w, h := 30.0, 13.0
	c.poly(tag{class: "b"}, true,
		point{middle.x - w, middle.y - 6}, point{middle.x - 14, middle.y - h}, point{middle.x + 14, middle.y - h},
		point{middle.x + w, middle.y - 6}, point{middle.x + w, middle.y + h}, point{middle.x - w, middle.y + h})
	for _, sign := range []float64{-1, 1} {
		hole := point{middle.x + sign*21, middle.y + 3}
		c.circle(tag{class: "l", part: "hole"}, hole, 4)
		c.line(tag{class: "h"}, point{hole.x, hole.y - 7}, point{hole.x, hole.y + 7})
	}
	c.line(tag{class: "l"}, point{middle.x - 9, middle.y - h}, point{middle.x - 9, middle.y + h})
	c.line(tag{class: "l"}, point{middle.x + 9, middle.y - h}, point{middle.x + 9, middle.y + h})
}

// questioned draws a cap pair in thin line with a question mark.
func (c *canvas) questioned(middle point) {
	for _, sign := range []float64{-1, 1} {
		near, far := middle.x+sign*19, middle.x+sign*37
		c.poly(tag{class: "h"}, true, point{near, middle.y - 15}, point{far, middle.y - 15}, point{far, middle.y + 15}, point{near, middle.y + 15})
	}
	x, y := middle.x, middle.y
	c.curve(tag{class: "l", part: "question"},
		"M"+num(x-6)+" "+num(y-6)+"A6 6 0 1 1 "+num(x+2)+" "+num(y-0.5)+"Q"+num(x)+" "+num(y+1)+" "+num(x)+" "+num(y+5))
	c.circle(tag{class: "k"}, point{x, y + 9.5}, 1.5)
}
