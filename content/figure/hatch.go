package figure

import (
	"math"
	"sort"
)

// Hatching of a cut face: thin lines at 45 degrees (ISO 128-3). Neighbouring parts lean
// the other way.
const (
	rising  = 1.0
	falling = -1.0

	hatchGap = 7.0 // between two lines, measured along the level
)

// hatch fills an outline with hatching. The lines of one drawing lie on one grid, so a
// part cut into several faces is hatched alike in all of them.
func (c *canvas) hatch(lean, gap float64, outline ...point) {
	// A line of the grid is where x + lean*y is a multiple of the gap.
	level := func(p point) float64 { return p.x + lean*p.y }
	least, most := math.Inf(1), math.Inf(-1)
	for _, p := range outline {
		least, most = min(least, level(p)), max(most, level(p))
	}
	var lines [][2]point
	for k := math.Floor(least/gap) + 1; k*gap < most; k++ {
		var cuts []point
		for i, p := range outline {
			q := outline[(i+1)%len(outline)]
			from, to := level(p)-k*gap, level(q)-k*gap
			if (from < 0) == (to < 0) {
				continue
			}
			share := from / (from - to)
			cuts = append(cuts, point{p.x + share*(q.x-p.x), p.y + share*(q.y-p.y)})
		}
		sort.Slice(cuts, func(i, j int) bool { return cuts[i].x < cuts[j].x })
		for i := 0; i+1 < len(cuts); i += 2 {
			lines = append(lines, [2]point{cuts[i], cuts[i+1]})
		}
	}
	c.strokes(tag{class: "h", part: "hatching"}, lines...)
}

// cut draws the face of a part that the section cuts.
func (c *canvas) cut(part string, lean float64, outline ...point) {
	c.poly(tag{class: "b", part: part}, true, outline...)
	c.hatch(lean, hatchGap, outline...)
}

// callout names a part: its words stand off the part, and a leader ends in a dot on it.
type callout struct {
	at    point
	words string
}

// callouts writes words in rows above (direction -1) or below (1) the drawing, and
// their leaders. The leftmost part has the row farthest off, so that no leader runs
// through the words of another. It returns the height of the farthest row.
func (c *canvas) callouts(nearest, direction, width float64, all ...callout) float64 {
	sort.SliceStable(all, func(i, j int) bool { return all[i].at.x < all[j].at.x })
	for i, call := range all {
		foot := nearest + direction*lineSpace*float64(len(all)-1-i)
		start := max(4, min(call.at.x-3, width-10-textWidth(call.words)))
		from := point{start + 3, foot + 4}
		if direction > 0 {
			from.y = foot - 12
		}
		c.line(tag{class: "h", part: "leader"}, from, call.at)
		c.circle(tag{class: "k", part: "leader-end"}, call.at, 2)
		c.text("", "start", point{start, foot}, call.words)
	}
	return nearest + direction*lineSpace*float64(len(all)-1)
}
