package tables

import (
	"cmp"
	"math"
	"math/big"
	"slices"
)

// What a caliper in ordinary hands cannot tell apart: caps are read against a
// ground cylinder, a distance across against two faces, so the second is coarser.
// Both are well above the limits of error of DIN 862 for a digital caliper, 0.02 and
// 0.03 mm, because wear and dirt add to them.
const (
	capApart    nano = 0.05 * nanos // mm
	acrossApart nano = 0.15 * nanos // mm
)

// SameSize reports whether a caliper cannot tell two joints apart: holds and faces
// alike or unknown, caps within 0.05 mm and distances across within 0.15 mm, end by
// end in either order.
func SameSize(a, b *Row) bool {
	return endsAgree(a, b, func(e, f *End) bool {
		return holdsAgree(e, f) && figuresAgree(e, f, false)
	})
}

// CouldBeTwins is [SameSize], or figures whose printed digits leave room for being
// the same: 54.8 and 55 may both be 54.8.
func CouldBeTwins(a, b *Row) bool {
	return endsAgree(a, b, func(e, f *End) bool {
		return holdsAgree(e, f) && figuresAgree(e, f, true)
	})
}

func endsAgree(a, b *Row, agree func(e, f *End) bool) bool {
	switch {
	case len(a.Ends) != len(b.Ends) || len(a.Ends) == 0:
		return false
	case len(a.Ends) == 1:
		return agree(&a.Ends[0], &b.Ends[0])
	}
	return (agree(&a.Ends[0], &b.Ends[0]) && agree(&a.Ends[1], &b.Ends[1])) ||
		(agree(&a.Ends[0], &b.Ends[1]) && agree(&a.Ends[1], &b.Ends[0]))
}

func holdsAgree(e, f *End) bool {
	open := e.Hold.State != Given || f.Hold.State != Given || e.Hold.Hold() == f.Hold.Hold()
	facesOpen := e.Across.Faces == UnknownFaces || f.Across.Faces == UnknownFaces || e.Across.Faces == f.Across.Faces
	return open && facesOpen
}

func figuresAgree(e, f *End, printed bool) bool {
	return figureAgrees(&e.Cap, &f.Cap, capApart, printed) && figureAgrees(&e.Across, &f.Across, acrossApart, printed) &&
		(e.Cap.State == Given || e.Across.State == Given)
}

// figureAgrees compares exactly: what is missing on both sides says nothing, on one
// side it is a difference.
func figureAgrees(v, w *Value, apart nano, printed bool) bool {
	if v.State != Given || w.State != Given {
		return v.State == w.State
	}
	a, b := &v.Quantity, &w.Quantity
	if !a.nano.exact() || !b.nano.exact() {
		return fractionsAgree(v, w, apart, printed)
	}
	d := max(a.nano-b.nano, b.nano-a.nano)
	if d <= apart || !printed {
		return d <= apart
	}
	half, other := a.halfNano(), b.halfNano()
	if !half.exact() || !other.exact() {
		return fractionsAgree(v, w, apart, printed)
	}
	return d <= half+other
}

// fractionsAgree is figureAgrees for numbers that are no whole billionths.
func fractionsAgree(v, w *Value, apart nano, printed bool) bool {
	d := difference(v, w)
	if d.Cmp(big.NewRat(int64(apart), nanos)) <= 0 {
		return true
	}
	return printed && d.Cmp(new(big.Rat).Add(v.Quantity.halfStep(), w.Quantity.halfStep())) <= 0
}

func difference(v, w *Value) *big.Rat {
	d := new(big.Rat).Sub(v.Quantity.si(), w.Quantity.si())
	return d.Abs(d)
}

// apart says by what two rows that are called twins differ.
func apart(a, b *Row) string {
	if len(a.Ends) != len(b.Ends) {
		return numbered("%q and %q have not the same number of different ends", a.ID, b.ID)
	}
	if len(a.Ends) == 2 {
		return numbered("%q and %q differ in an end", a.ID, b.ID)
	}
	e, f := &a.Ends[0], &b.Ends[0]
	switch {
	case !holdsAgree(e, f) && e.Hold.Hold() != f.Hold.Hold():
		return numbered("%q is held by %s, %q by %s", a.ID, e.Hold.Text, b.ID, f.Hold.Text)
	case !holdsAgree(e, f):
		return numbered("%q is measured at %s, %q at %s", a.ID, e.Across.Faces, b.ID, f.Across.Faces)
	case !figureAgrees(&e.Cap, &f.Cap, capApart, true):
		return numbered("the caps of %q and %q differ by %s mm", a.ID, b.ID, gap(&e.Cap, &f.Cap))
	}
	return numbered("%q and %q differ by %s mm across", a.ID, b.ID, gap(&e.Across, &f.Across))
}

func gap(v, w *Value) string {
	if v.State != Given || w.State != Given {
		return "an unknown number of"
	}
	return difference(v, w).FloatString(2)
}

// mostUnnamed bounds the warnings about one row: a file of nothing but copies would
// else give millions.
const mostUnnamed = 20

// span is how far across a joint is and how wide its caps are, in mm; only to look near by, the
// comparison is exact.
type span struct {
	across, cap float64
	at          int // the row's place in the chart
}

// spans are those of a chart's joints, the narrowest first.
type spans []span

func spansOf(rows []*Row) spans {
	var out spans
	for _, row := range rows {
		if len(row.Ends) > 0 {
			out = append(out, spanOf(row))
		}
	}
	slices.SortFunc(out, span.compare)
	return out
}

func spanOf(row *Row) span { return span{reach(row, acrossOf), reach(row, capOf), row.at} }

func (a span) compare(b span) int { return cmp.Or(cmp.Compare(a.across, b.across), a.at-b.at) }

// again is the list when some rows are others.
func (s spans) again(rows []*Row, changed map[int]bool) spans {
	out := make(spans, 0, len(s)+len(changed))
	for _, one := range s {
		if !changed[one.at] {
			out = append(out, one)
		}
	}
	for at := range changed {
		if len(rows[at].Ends) > 0 {
			one := spanOf(rows[at])
			place, _ := slices.BinarySearchFunc(out, one, span.compare)
			out = slices.Insert(out, place, one)
		}
	}
	return out
}

// unnamed lists the pairs a caliper cannot tell apart that do not name each other, in the
// chart's order. Each row is compared only with its neighbours: a large chart is not compared
// pair by pair. With changed, which are mostUnnamed at most, it is the pairs of those rows.
func (s spans) unnamed(rows []*Row, changed map[int]bool) [][2]*Row {
	const acrossNear, capNear = 0.16, 0.06 // mm: the limits, and room for rounding
	var pairs [][2]*Row
	alike := func(a, b span) bool {
		first, second := rows[min(a.at, b.at)], rows[max(a.at, b.at)]
		if math.Abs(a.cap-b.cap) > capNear || !SameSize(first, second) || slices.Contains(first.Twins, second) {
			return false
		}
		pairs = append(pairs, [2]*Row{first, second})
		return true
	}
	for i, a := range s {
		if changed != nil && !changed[a.at] {
			continue
		}
		found := 0
		for _, b := range s[i+1:] {
			if b.across-a.across > acrossNear || found == mostUnnamed {
				break
			}
			if alike(a, b) {
				found++
			}
		}
		for j := i - 1; changed != nil && j >= 0 && a.across-s[j].across <= acrossNear; j-- {
			if !changed[s[j].at] { // else it has found this one
				alike(s[j], a)
			}
		}
	}
	slices.SortFunc(pairs, func(p, q [2]*Row) int { return cmp.Or(p[0].at-q[0].at, p[1].at-q[1].at) })
	return pairs
}

func acrossOf(e *End) *Value { return &e.Across }
func capOf(e *End) *Value    { return &e.Cap }

// reach is the greater of a figure's values at a joint's ends, in millimetres.
func reach(row *Row, figure func(*End) *Value) float64 {
	most := 0.0
	for i := range row.Ends {
		most = max(most, figure(&row.Ends[i]).Quantity.Float())
	}
	return most
}
