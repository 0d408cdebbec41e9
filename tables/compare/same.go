package compare

import (
	"slices"

	"capspan/tables"
)

// Nearly every row of two issues says the same, and of a large chart only looking is cheap:
// words are made of what differs. A property test holds that what is the same here has no
// part that changed.

// sayTheSame reports two rows of which nothing can be told.
func (d *Diff) sayTheSame(older, newer *tables.Row) bool {
	if older.Basis != newer.Basis || older.At != newer.At || older.Note != newer.Note || !slices.Equal(older.Also, newer.Also) ||
		!sameSources(older.Sources, newer.Sources) || len(older.Values) != len(newer.Values) ||
		len(older.Ends) != len(newer.Ends) || len(older.Twins) != len(newer.Twins) {
		return false
	}
	for n, twin := range older.Twins {
		if d.NowCalled(twin.ID) != newer.Twins[n].ID {
			return false
		}
	}
	for n := range older.Ends {
		e, f := older.Ends[n].Like, newer.Ends[n].Like
		if (e == nil) != (f == nil) || e != nil && d.NowCalled(e.ID) != f.ID {
			return false
		}
	}
	for id, v := range older.Values {
		if w, there := newer.Values[id]; !there || !sameValue(&v, &w) {
			return false
		}
	}
	return true
}

// sameValue reports two cells with the same figure, believed for the same reasons.
func sameValue(v, w *tables.Value) bool {
	if !sameFigure(v, w) || v.Faces != w.Faces || v.FacesBasis != w.FacesBasis || v.Basis != w.Basis || v.At != w.At ||
		v.Measured != nil || w.Measured != nil || !sameSources(v.Sources, w.Sources) || len(v.Others) != len(w.Others) {
		return false
	}
	for n := range v.Others {
		if !sameValue(&v.Others[n], &w.Others[n]) {
			return false
		}
	}
	return true
}

// sameFigure reports two values that print alike.
func sameFigure(v, w *tables.Value) bool {
	return v.State == w.State && v.Text == w.Text && v.Quantity.Equal(w.Quantity) && v.To.Equal(w.To) || figure(*v) == figure(*w)
}

func sameSources(a, b []*tables.Source) bool {
	return slices.EqualFunc(a, b, func(s, t *tables.Source) bool { return s.ID == t.ID })
}
