package compare

import (
	"cmp"
	"math"
	"slices"

	"capspan/tables"
)

// Pair is two joints, by the ids of today, or of before when one is gone.
type Pair struct {
	A     string `json:"a"`
	B     string `json:"b"`
	Twins bool   `json:"twins"` // they name each other: nobody takes them for two
}

// Move is a figure of a conversion joint that followed the row its end is like.
type Move struct {
	Row  string `json:"row"`
	Like string `json:"like"`
	What string `json:"what"` // hold, cap, across or faces
	Old  Said   `json:"old"`
	New  Said   `json:"new"`
}

// Shifts is what a change does beyond the lines it was made in.
type Shifts struct {
	Together    []Pair `json:"together"` // a caliper can no longer tell them apart
	Apart       []Pair `json:"apart"`    // now it can
	Conversions []Move `json:"conversions"`
}

// Shifts compares what the charts' joints are to a caliper. Only pairs with a joint
// whose figures changed can have come together or gone apart.
func (d *Diff) Shifts() Shifts {
	s := Shifts{Together: []Pair{}, Apart: []Pair{}, Conversions: d.moves()}
	was, is := d.close(d.older, d.moved(d.older, d.newer, true)), d.close(d.newer, d.moved(d.newer, d.older, false))
	for _, p := range is {
		if !slices.ContainsFunc(was, p.same) {
			s.Together = append(s.Together, p)
		}
	}
	for _, p := range was {
		if !slices.ContainsFunc(is, p.same) && exact(d.newer, p.A) != nil && exact(d.newer, p.B) != nil {
			s.Apart = append(s.Apart, p)
		}
	}
	return s
}

func (p Pair) same(q Pair) bool { return p.A == q.A && p.B == q.B }

// moved are the joints of a set whose ends are not the same, or not there, in the other.
func (d *Diff) moved(set, other *tables.Set, before bool) map[*tables.Row]bool {
	back := map[string]string{}
	for old, now := range d.renamed {
		back[now] = old
	}
	out := map[*tables.Row]bool{}
	for _, t := range set.Tables {
		for _, row := range t.Rows {
			id := row.ID
			switch name := back[id]; {
			case before:
				id = d.NowCalled(id)
			case name != "":
				id = name
			}
			twin := exact(other, id)
			if len(row.Ends) > 0 && (twin == nil || !sameEnds(row, twin)) {
				out[row] = true
			}
		}
	}
	return out
}

func sameEnds(a, b *tables.Row) bool {
	return slices.EqualFunc(a.Ends, b.Ends, func(e, f tables.End) bool {
		return sameFigure(&e.Hold, &f.Hold) && sameFigure(&e.Cap, &f.Cap) &&
			sameFigure(&e.Across, &f.Across) && e.Across.Faces == f.Across.Faces
	})
}

// close lists the pairs a caliper cannot tell apart that have a moved joint. Joints are
// sorted by their greater distance across, so that each is compared with few others.
func (d *Diff) close(set *tables.Set, moved map[*tables.Row]bool) []Pair {
	type entry struct {
		row    *tables.Row
		across float64 // mm; only to look near by, the comparison is exact
	}
	const near = 0.16 // mm: the limit of tables.SameSize, and room for rounding
	var where []float64
	for row := range moved {
		where = append(where, reach(row))
	}
	slices.Sort(where)
	var entries []entry
	for _, t := range set.Tables {
		for _, row := range t.Rows {
			if len(row.Ends) == 0 {
				continue
			}
			across := reach(row)
			if at, _ := slices.BinarySearch(where, across-2*near); at < len(where) && where[at] <= across+2*near {
				entries = append(entries, entry{row, across})
			}
		}
	}
	slices.SortStableFunc(entries, func(a, b entry) int { return cmp.Compare(a.across, b.across) })
	var out []Pair
	for i, a := range entries {
		for _, b := range entries[i+1:] {
			if b.across-a.across > near || len(out) == mostPairs {
				break
			}
			if (moved[a.row] || moved[b.row]) && tables.SameSize(a.row, b.row) {
				out = append(out, d.pair(set, a.row, b.row))
			}
		}
	}
	slices.SortFunc(out, func(p, q Pair) int { return cmp.Or(cmp.Compare(p.A, q.A), cmp.Compare(p.B, q.B)) })
	return out
}

// mostPairs bounds a file of nothing but copies.
const mostPairs = 2000

func (d *Diff) pair(set *tables.Set, a, b *tables.Row) Pair {
	p := Pair{A: a.ID, B: b.ID, Twins: slices.Contains(a.Twins, b) || slices.Contains(b.Twins, a)}
	if set == d.older {
		p.A, p.B = d.NowCalled(p.A), d.NowCalled(p.B)
	}
	if p.A > p.B {
		p.A, p.B = p.B, p.A
	}
	return p
}

func reach(row *tables.Row) float64 {
	most := 0.0
	for _, e := range row.Ends {
		most = math.Max(most, e.Across.Quantity.Float())
	}
	return most
}

// moves lists what conversion joints took over from the rows they name.
func (d *Diff) moves() []Move {
	out := []Move{}
	for _, t := range d.older.Tables {
		for _, row := range t.Rows {
			if len(row.Ends) != 2 {
				continue
			}
			now := exact(d.newer, d.NowCalled(row.ID))
			if now == nil || len(now.Ends) != 2 || sameEnds(row, now) {
				continue
			}
			for n, e := range row.Ends {
				f := now.Ends[n]
				move := func(what string, old, new Said) {
					if old != new {
						out = append(out, Move{now.ID, f.Like.ID, what, old, new})
					}
				}
				move("hold", figure(e.Hold), figure(f.Hold))
				move("cap", figure(e.Cap), figure(f.Cap))
				move("across", figure(e.Across), figure(f.Across))
				move("faces", Said{Text: string(e.Across.Faces)}, Said{Text: string(f.Across.Faces)})
			}
		}
	}
	return out
}
