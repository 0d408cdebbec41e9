package build

import (
	"slices"

	"capspan/tables"
)

// alikeRows gathers rows of one table that say the same of every figure: the digits and why
// they are believed, from whichever source. Groups stand in the order of their first rows.
func alikeRows(rows []*tables.Row) [][]*tables.Row {
	var groups [][]*tables.Row
	for _, row := range rows {
		n := slices.IndexFunc(groups, func(group []*tables.Row) bool { return alikeWritten(group[0], row) })
		if n < 0 {
			groups = append(groups, []*tables.Row{row})
			continue
		}
		groups[n] = append(groups[n], row)
	}
	return groups
}

func alikeWritten(a, b *tables.Row) bool {
	if a.Table != b.Table || a.Basis != b.Basis || len(a.Values) != len(b.Values) {
		return false
	}
	for id, v := range a.Values {
		if w, is := b.Values[id]; !is || !alikeValues(v, w) {
			return false
		}
	}
	return slices.EqualFunc(a.Ends, b.Ends, func(e, f tables.End) bool { return e.Like == f.Like })
}

// alikeValues compares what is shown of two values, but for their sources. Those that
// readers measured are each shown for themselves.
func alikeValues(v, w tables.Value) bool {
	return v.State == w.State && v.Quantity.Text == w.Quantity.Text && v.Quantity.Unit == w.Quantity.Unit && v.To.Text == w.To.Text &&
		v.Text == w.Text && v.Faces == w.Faces && v.FacesBasis == w.FacesBasis && v.Basis == w.Basis &&
		v.Measured == w.Measured && slices.EqualFunc(v.Others, w.Others, alikeValues)
}

// sameSources reports whether two rows that are alike rest on the same places of the same
// sources, value by value.
func sameSources(a, b *tables.Row) bool {
	for id, v := range a.Values {
		if !sameSource(v, b.Values[id]) {
			return false
		}
	}
	return a.At == b.At && slices.Equal(a.Sources, b.Sources)
}

func sameSource(v, w tables.Value) bool {
	return v.At == w.At && slices.Equal(v.Sources, w.Sources) && slices.EqualFunc(v.Others, w.Others, sameSource)
}

// sameEnds reports whether the figures of two rows are the same digits: what is near one is
// near the other.
func sameEnds(a, b *tables.Row) bool {
	same := func(v, w tables.Value) bool {
		return v.State == w.State && v.Quantity.Text == w.Quantity.Text && v.Quantity.Unit == w.Quantity.Unit
	}
	return slices.EqualFunc(a.Ends, b.Ends, func(e, f tables.End) bool {
		return same(e.Cap, f.Cap) && same(e.Across, f.Across) && e.Across.Faces == f.Across.Faces
	})
}
