package tables

import (
	"cmp"
	"math"
	"slices"
	"strings"
)

// Find returns the row of that id, or of that ref (table/id), letter case ignored;
// nil when it is not in the chart.
func (s *Set) Find(id string) *Row {
	table, rest, isRef := strings.Cut(id, "/")
	if !isRef {
		rest = id
	}
	row := s.byID[strings.ToLower(rest)]
	if row == nil || (isRef && !strings.EqualFold(row.Table.ID, table)) {
		return nil
	}
	return row
}

// Sizes groups the joints into physical sizes: rows that name each other as twins,
// directly or through others, are one. Groups stand in the order of their first row,
// rows in the chart's order; a row without twins is a group of its own, rows that
// are no joints are in none.
//
// A row of unknown hold may be twin to rows of different holds; it then joins none
// of them, since 1350 and 1355 must not become one size through it.
func (s *Set) Sizes() [][]*Row {
	group := map[*Row]*[]*Row{}
	var joints []*Row
	for row := range s.rows() {
		if len(row.Ends) > 0 {
			joints = append(joints, row)
			group[row] = &[]*Row{row}
		}
	}
	merge := func(a, b *Row) {
		into, from := group[a], group[b]
		if into == from || clash(*into, *from) {
			return
		}
		*into = append(*into, *from...)
		for _, row := range *from {
			group[row] = into
		}
	}
	for _, known := range []bool{true, false} {
		for _, row := range joints {
			if !known && ambiguous(row) {
				continue
			}
			for _, twin := range row.Twins {
				if group[twin] == nil || (known && (openHold(row) || openHold(twin))) || (!known && ambiguous(twin)) {
					continue
				}
				merge(row, twin)
			}
		}
	}
	order := s.order()
	var out [][]*Row
	for _, row := range joints {
		rows := *group[row]
		slices.SortFunc(rows, func(a, b *Row) int { return order[a] - order[b] })
		if rows[0] == row {
			out = append(out, rows)
		}
	}
	return out
}

// openHold reports whether the hold of an end is unknown.
func openHold(row *Row) bool {
	return slices.ContainsFunc(row.Ends, func(e End) bool { return e.Hold.State != Given })
}

// clash reports whether two groups are known to be held differently.
func clash(a, b []*Row) bool {
	for _, x := range a {
		for _, y := range b {
			if !sameHold(x, y) {
				return true
			}
		}
	}
	return false
}

func sameHold(a, b *Row) bool {
	return endsAgree(a, b, func(e, f End) bool { return holdsAgree(e, f) })
}

// ambiguous reports a row whose twins are held differently.
func ambiguous(row *Row) bool {
	for i, a := range row.Twins {
		for _, b := range row.Twins[i+1:] {
			if !sameHold(a, b) {
				return true
			}
		}
	}
	return false
}

// SameFigures lists the joints with the same caps and distance across, to a caliper,
// under another hold: another joint that a reading alone cannot exclude.
func (s *Set) SameFigures(row *Row) []*Row {
	var out []*Row
	for other := range s.rows() {
		same := endsAgree(row, other, func(e, f End) bool { return figuresAgree(e, f, false) })
		if other != row && same && !sameHold(row, other) && !slices.Contains(row.Twins, other) {
			out = append(out, other)
		}
	}
	return out
}

// Near lists the n joints a tired reader could take the row for, nearest first: of a
// hold that agrees or is unknown, by the distance in millimetres of caps and across
// together. Twins are not among them; they are the same.
func (s *Set) Near(row *Row, n int) []*Row {
	type near struct {
		row *Row
		mm  float64
	}
	var found []near
	size := s.sizeOf(row)
	for other := range s.rows() {
		if other == row || slices.Contains(size, other) || slices.Contains(row.Twins, other) || !sameHold(row, other) {
			continue
		}
		if mm := away(row, other); !math.IsInf(mm, 1) {
			found = append(found, near{other, mm})
		}
	}
	slices.SortStableFunc(found, func(a, b near) int { return cmp.Compare(a.mm, b.mm) })
	var out []*Row
	for _, f := range found[:min(n, len(found))] {
		out = append(out, f.row)
	}
	return out
}

// away is how far two joints are from each other; infinite when their figures cannot
// be set side by side.
func away(a, b *Row) float64 {
	end := func(e, f End) float64 {
		if e.Cap.State != f.Cap.State || e.Across.State != f.Across.State {
			return math.Inf(1)
		}
		return math.Hypot(e.Cap.Quantity.Float()-f.Cap.Quantity.Float(), e.Across.Quantity.Float()-f.Across.Quantity.Float())
	}
	if len(a.Ends) == 1 {
		return end(a.Ends[0], b.Ends[0])
	}
	return min(end(a.Ends[0], b.Ends[0])+end(a.Ends[1], b.Ends[1]), end(a.Ends[0], b.Ends[1])+end(a.Ends[1], b.Ends[0]))
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
	size := s.sizeOf(row)
	var out []*Row
	for other := range s.rows() {
		if slices.ContainsFunc(other.Ends, func(e End) bool { return e.Like != nil && slices.Contains(size, e.Like) }) {
			out = append(out, other)
		}
	}
	return out
}
