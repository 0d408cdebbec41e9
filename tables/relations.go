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
	row := s.byName(rest)
	if row == nil || (isRef && !strings.EqualFold(row.Table.ID, table)) {
		return nil
	}
	return row
}

// byName finds a row by its id alone.
func (s *Set) byName(id string) *Row {
	if at, there := s.byID[strings.ToLower(id)]; there {
		return s.all[at]
	}
	return nil
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
	g := s.grouped()
	out := make([][]*Row, g.sizes)
	for n, rows := range g.rows {
		if rows != nil {
			out[g.number[n]] = rows
		}
	}
	return out
}

// SizeNumbers tells of each joint the place of its size in [Set.Sizes].
func (s *Set) SizeNumbers() func(*Row) int {
	g := s.grouped()
	return func(row *Row) int { return g.number[g.of[row.at]] }
}

// groups are the sizes while joints are put together.
type groups struct {
	of     []int    // by a row's place in the chart: its group; -1 for what is no joint of the set
	rows   [][]*Row // nil of a group that went into another
	number []int    // of the size that the group is
	sizes  int
}

func (s *Set) grouped() groups {
	var joints []*Row
	most := 0
	for row := range s.rows() {
		if len(row.Ends) > 0 {
			joints = append(joints, row)
			most = max(most, row.at)
			for _, twin := range row.Twins {
				most = max(most, twin.at) // of a sample, it may be left out
			}
		}
	}
	none := []int{-1}
	g := groups{of: slices.Repeat(none, most+1), rows: make([][]*Row, len(joints)), number: slices.Repeat(none, len(joints))}
	unclear := make([]bool, most+1)
	for n, row := range joints {
		g.of[row.at], g.rows[n] = n, joints[n:n+1:n+1]
		unclear[row.at] = ambiguous(row)
	}
	merge := func(into, from int) {
		if into == from || clash(g.rows[into], g.rows[from]) {
			return
		}
		for _, row := range g.rows[from] {
			g.of[row.at] = into
		}
		g.rows[into], g.rows[from] = append(g.rows[into], g.rows[from]...), nil
	}
	for _, known := range []bool{true, false} {
		for _, row := range joints {
			if !known && unclear[row.at] {
				continue
			}
			for _, twin := range row.Twins {
				if g.of[twin.at] < 0 || (known && (openHold(row) || openHold(twin))) || (!known && unclear[twin.at]) {
					continue
				}
				merge(g.of[row.at], g.of[twin.at])
			}
		}
	}
	for _, row := range joints {
		if of := g.of[row.at]; g.number[of] < 0 { // the first of its size
			slices.SortFunc(g.rows[of], func(a, b *Row) int { return a.at - b.at })
			g.number[of] = g.sizes
			g.sizes++
		}
	}
	return g
}

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
