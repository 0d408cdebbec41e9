package tables

import (
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
	s.sized.once.Do(func() { s.sized.list = s.sizes() })
	return s.sized.list
}

func (s *Set) sizes() [][]*Row {
	var joints []*Row
	last := -1
	for row := range s.rows() {
		last = max(last, row.at)
		if len(row.Ends) > 0 {
			joints = append(joints, row)
		}
	}
	group := make([]*[]*Row, last+1) // by the place of a row
	unclear := make([]bool, last+1)
	for _, row := range joints {
		group[row.at] = &[]*Row{row}
		unclear[row.at] = ambiguous(row)
	}
	merge := func(a, b *Row) {
		into, from := group[a.at], group[b.at]
		if into == from || clash(*into, *from) {
			return
		}
		*into = append(*into, *from...)
		for _, row := range *from {
			group[row.at] = into
		}
	}
	for _, known := range []bool{true, false} {
		for _, row := range joints {
			if !known && unclear[row.at] {
				continue
			}
			for _, twin := range row.Twins {
				if twin.at > last || group[twin.at] == nil || (known && (openHold(row) || openHold(twin))) || (!known && unclear[twin.at]) {
					continue
				}
				merge(row, twin)
			}
		}
	}
	var out [][]*Row
	for _, row := range joints {
		rows := *group[row.at]
		if slices.MinFunc(rows, byPlace) == row {
			slices.SortFunc(rows, byPlace)
			out = append(out, rows)
		}
	}
	return out
}

func byPlace(a, b *Row) int { return a.at - b.at }

// openHold reports whether the hold of an end is unknown.
func openHold(row *Row) bool {
	for i := range row.Ends {
		if row.Ends[i].Hold.State != Given {
			return true
		}
	}
	return false
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
	return endsAgree(a, b, holdsAgree)
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

// away is how far two joints are from each other; infinite when their figures cannot
// be set side by side.
func away(a, b *Row) float64 {
	end := func(e, f *End) float64 {
		if e.Cap.State != f.Cap.State || e.Across.State != f.Across.State {
			return math.Inf(1)
		}
		return math.Hypot(e.Cap.Quantity.Float()-f.Cap.Quantity.Float(), e.Across.Quantity.Float()-f.Across.Quantity.Float())
	}
	if len(a.Ends) == 1 {
		return end(&a.Ends[0], &b.Ends[0])
	}
	return min(end(&a.Ends[0], &b.Ends[0])+end(&a.Ends[1], &b.Ends[1]), end(&a.Ends[0], &b.Ends[1])+end(&a.Ends[1], &b.Ends[0]))
}
