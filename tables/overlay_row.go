package tables

import (
	"regexp"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
)

// overlayRules are what an overlay may not do besides what no file of the chart may; each has
// a golden case of the same name in testdata/overlay.
var overlayRules = []Rule{
	{"overlay-nowhere", "an overlay speaks of a row that is not in the chart", diag.Error},
	{"overlay-retired", "an overlay speaks of a row that has been retired", diag.Error},
	{"overlay-column", "a column of an overlay means something else in the chart or in another overlay", diag.Error},
	{"overlay-twice", "two overlays say the same of one row", diag.Error},
	{"unknown-word", "a value is none of its column's words", diag.Error},
}

// ownRow reads what an overlay says of one row.
func (l *overlayLoader) ownRow(r *reader, f field, columns map[string]*OwnColumn, name string) {
	path := name + "/" + f.key.Value
	row := l.ownTarget(r, f, path)
	known := make([]string, 0, len(columns))
	for _, c := range l.overlay.Columns {
		if columns[c.ID] == c {
			known = append(known, c.ID)
		}
	}
	got, ok := r.fields(f.value, path, known, func(key string) string {
		if row != nil && columnOf(row.Table, key) != nil {
			return "the figures of the chart are corrected in the chart; declare a column of your own for what you add"
		}
		return ""
	})
	if !ok {
		return
	}
	if f.value.Style&yaml.FlowStyle != 0 {
		r.fail(f.value, path, "one-line", "the row is written in braces", "give each key a line of its own")
	}
	if len(got) == 0 && len(f.value.Content) == 0 {
		r.fail(f.value, path, "empty-value", "nothing is said of the row", "leave the row out")
	}
	for _, id := range known {
		value, there := got[id]
		if !there {
			continue
		}
		text, ok := r.ownValue(value.value, columns[id], path+"."+id)
		if ok && row != nil {
			l.put(r, value.key, row, OwnValue{Column: columns[id], Text: text, Pos: r.pos(value.value)}, path+"."+id)
		}
	}
}

// ownTarget finds the row that is meant; nil after a problem.
func (l *overlayLoader) ownTarget(r *reader, f field, path string) *Row {
	id, ok := r.id(f.key, path)
	if !ok {
		return nil
	}
	row := l.set.Find(id)
	if row != nil {
		return row
	}
	if gone := l.set.retired(id); gone != nil {
		hints := []string{"it was withdrawn: " + gone.Why, "take it out; what is yours alone goes into a table of your own"}
		switch len(gone.To) {
		case 0:
		case 1:
			hints = []string{"it went to " + gone.To[0] + ": " + gone.Why, "see whether your part is that one, and write its id"}
		default:
			hints = []string{"it was split into " + strings.Join(gone.To, ", ") + ": " + gone.Why, "see which of them your part is, and write its id"}
		}
		p := r.fail(f.key, path, "overlay-retired", numbered("the row %q is no longer in the chart", id), hints...)
		p.Notes = []diag.Note{{Text: "retired at", Pos: gone.Pos}}
		return nil
	}
	var ids []string
	for other := range l.set.rows() {
		ids = append(ids, other.ID)
	}
	hints := diag.Nearest(id, ids)
	if hints == nil {
		hints = []string{"a size the chart does not have goes into a table of your own"}
	}
	r.fail(f.key, path, "overlay-nowhere", numbered("no row %q is in the chart", id), hints...)
	return nil
}

// put keeps a value, unless the chart or another overlay has the place.
func (l *overlayLoader) put(r *reader, key *node, row *Row, v OwnValue, path string) {
	if theirs := columnOf(row.Table, v.Column.ID); theirs != nil {
		at := v.Column.ID + " " + row.Table.ID
		if l.told == nil {
			l.told = map[string]bool{}
		}
		if !l.told[at] {
			l.told[at] = true
			p := r.failAt(v.Column.Pos, path, "overlay-column", numbered("the column %q means something else in the table %q of the chart", v.Column.ID, row.Table.ID), "give the column a name of your own")
			p.Notes = []diag.Note{{Text: "declared by the chart at", Pos: theirs.Pos}}
		}
		return
	}
	for _, before := range l.overlay.rows[row.Ref()] {
		if before.Column == v.Column {
			p := r.fail(key, path, "overlay-twice", numbered("%q of this row is said already", v.Column.ID), "take one of the two out")
			p.Notes = []diag.Note{{Text: "said before at", Pos: before.Pos}}
			return
		}
	}
	l.overlay.rows[row.Ref()] = append(l.overlay.rows[row.Ref()], v)
}

// columnOf finds a column of a table.
func columnOf(t *Table, id string) *Column {
	for i := range t.Columns {
		if t.Columns[i].ID == id {
			return &t.Columns[i]
		}
	}
	return nil
}

// ownNumber is a plain decimal, as everywhere in the chart.
var ownNumber = regexp.MustCompile("^" + plainDecimal + "$")

func (r *reader) ownValue(n *node, c *OwnColumn, path string) (string, bool) {
	switch c.Kind {
	case OwnChoice:
		return word(r, n, path, "unknown-word", "word", c.Words)
	case OwnNumber:
		text, ok := r.text(n, path)
		if ok && !ownNumber.MatchString(text) {
			r.fail(n, path, "bad-number", numbered("%q is not a plain number", text), numberHints(text)...)
			return "", false
		}
		return text, ok
	}
	return r.text(n, path)
}
