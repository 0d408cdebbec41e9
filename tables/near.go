package tables

import (
	"cmp"
	"math"
	"slices"
	"sync"
)

// What is near a row is asked once for each row's page, so no question looks at the whole
// chart: joints stand in the order of how far across they are, and what is further off
// than that can count is not looked at.

// neighbours is the chart in that order, made when it is first asked for.
type neighbours struct {
	once   sync.Once
	sorted [3][]*Row       // joints by their number of ends, then by breadth
	wide   [3][]float64    // their breadths
	by     map[*Row]int    // the place in that list
	like   map[*Row][]*Row // the conversion joints that name a row, in the chart's order
}

// breadth is the sum of a joint's distances across, in mm. Two joints are at least as far
// from each other as their breadths are, whichever end is set beside which.
func breadth(row *Row) float64 {
	sum := 0.0
	for i := range row.Ends {
		sum += row.Ends[i].Across.Quantity.Float()
	}
	return sum
}

// rounding is more than sums of floats can be wrong by, mm.
const rounding = 1e-6

func (s *Set) neighbours() *neighbours {
	n := &s.beside
	n.once.Do(func() {
		n.by, n.like = map[*Row]int{}, map[*Row][]*Row{}
		for row := range s.rows() {
			if len(row.Ends) > 0 {
				n.sorted[len(row.Ends)] = append(n.sorted[len(row.Ends)], row)
			}
			for i := range row.Ends {
				named := n.like[row.Ends[i].Like]
				if like := row.Ends[i].Like; like != nil && (len(named) == 0 || named[len(named)-1] != row) {
					n.like[like] = append(named, row)
				}
			}
		}
		for ends, list := range n.sorted {
			slices.SortStableFunc(list, func(a, b *Row) int { return cmp.Compare(breadth(a), breadth(b)) })
			for i, row := range list {
				n.by[row] = i
				n.wide[ends] = append(n.wide[ends], breadth(row))
			}
		}
	})
	return n
}

// within goes through the joints with as many ends as the row, outwards from it and not
// itself, as long as their breadth is no further than the limit, which may fall meanwhile.
func (n *neighbours) within(row *Row, limit func() float64, visit func(*Row)) {
	list, all, at := n.sorted[len(row.Ends)], n.wide[len(row.Ends)], n.by[row]
	wide, down, up := all[at], at-1, at+1
	off := func(i int) float64 {
		if i < 0 || i >= len(list) {
			return math.Inf(1)
		}
		return math.Abs(all[i] - wide)
	}
	for {
		next, far := down, off(down)
		if above := off(up); above < far {
			next, far = up, above
		}
		if math.IsInf(far, 1) || far > limit()+rounding {
			return
		}
		visit(list[next])
		if next == down {
			down--
		} else {
			up++
		}
	}
}

// SameFigures lists the joints with the same caps and distance across, to a caliper,
// under another hold: another joint that a reading alone cannot exclude.
func (s *Set) SameFigures(row *Row) []*Row {
	if len(row.Ends) == 0 {
		return nil
	}
	var out []*Row
	most := float64(len(row.Ends)) * float64(acrossApart) / nanos
	s.neighbours().within(row, func() float64 { return most }, func(other *Row) {
		same := endsAgree(row, other, func(e, f *End) bool { return figuresAgree(e, f, false) })
		if same && !sameHold(row, other) && !slices.Contains(row.Twins, other) {
			out = append(out, other)
		}
	})
	slices.SortFunc(out, func(a, b *Row) int { return a.at - b.at })
	return out
}

// Near lists the n joints a tired reader could take the row for, nearest first: of a
// hold that agrees or is unknown, by the distance in millimetres of caps and across
// together. Twins are not among them; they are the same.
func (s *Set) Near(row *Row, n int) []*Row {
	return s.NearOthers(row, n, func(other *Row) any { return other })
}

// NearOthers is [Set.Near] where joints are shown in groups: it lists the nearest joint of
// each of the n nearest groups. The caller says which group a joint is in; nil passes it over.
func (s *Set) NearOthers(row *Row, n int, group func(*Row) any) []*Row {
	if len(row.Ends) == 0 || n < 1 {
		return nil
	}
	type near struct {
		row   *Row
		group any
		mm    float64
	}
	var found []near // the n nearest so far
	limit := func() float64 {
		if len(found) < n {
			return math.MaxFloat64
		}
		return found[n-1].mm
	}
	order := func(a, b near) int { return cmp.Or(cmp.Compare(a.mm, b.mm), a.row.at-b.row.at) }
	size := s.sizeOf(row)
	s.neighbours().within(row, limit, func(other *Row) {
		mm := away(row, other)
		if math.IsInf(mm, 1) || mm > limit() || !sameHold(row, other) || slices.Contains(size, other) || slices.Contains(row.Twins, other) {
			return
		}
		one := near{other, group(other), mm}
		if one.group == nil {
			return
		}
		if i := slices.IndexFunc(found, func(f near) bool { return f.group == one.group }); i >= 0 {
			if order(found[i], one) < 0 {
				return
			}
			found = slices.Delete(found, i, i+1)
		}
		at, _ := slices.BinarySearchFunc(found, one, order)
		found = slices.Insert(found, at, one)
		found = found[:min(n, len(found))]
	})
	var out []*Row
	for _, f := range found {
		out = append(out, f.row)
	}
	return out
}

// sizeOf is the row's group of [Set.Sizes], found by following its twins: cheaper
// for one row than grouping the chart.
func (s *Set) sizeOf(row *Row) []*Row {
	out := []*Row{row}
	for i := 0; i < len(out); i++ {
		for _, twin := range out[i].Twins {
			if !slices.Contains(out, twin) && sameHold(row, twin) && !ambiguous(twin) {
				out = append(out, twin)
			}
		}
	}
	return out
}

// Conversions lists the conversion joints that have an end like the row, or like one
// of its twins: what can join it to another size. For a conversion joint it is empty.
func (s *Set) Conversions(row *Row) []*Row {
	var out []*Row
	like := s.neighbours().like
	for _, same := range s.sizeOf(row) {
		out = append(out, like[same]...)
	}
	slices.SortFunc(out, func(a, b *Row) int { return a.at - b.at })
	return slices.Compact(out)
}
