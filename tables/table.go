package tables

import (
	"regexp"
	"slices"
	"strings"
	"time"

	"capspan/build/diag"
	"go.yaml.in/yaml/v4"
)

// The keys of a table file, each list in the order in which Format writes them.
var (
	headKeys   = []string{"table", "title", "about", "version", "date", "unit", "cautions", "columns", rowsKey}
	columnKeys = []string{"label", "kind", "unit", "range", "least", "greatest", "method", "match", "below"}
	rowFirst   = []string{"id", "also"} // then the columns
	rowLast    = []string{"ends", "basis", "source", "at", "twins", "note"}
)

var versionShape = regexp.MustCompile(`^(0|[1-9][0-9]{0,5})\.(0|[1-9][0-9]{0,5})\.(0|[1-9][0-9]{0,5})$`)

// links are what a row says of other rows: resolved when all tables are read.
type links struct {
	likes []*node
	twins []calledTwin
}

// readTable reads one file; name is the file's without .yaml.
func (l *loader) readTable(r *reader, root *node, name string) *Table {
	t := &Table{ID: name, Pos: diag.Pos{File: r.file, Line: 1, Col: 1}, source: r.source}
	got, ok := r.fields(root, name, headKeys, nil)
	if !ok {
		return t
	}
	r.need(root, name, got, "table", "title", "about", "version", "date", "columns", rowsKey)
	if f, there := got["table"]; there {
		if id, ok := r.id(f.value, name+".table"); ok && id != name {
			r.fail(f.value, name+".table", "table-name", numbered("the table is called %q, its file %q", id, name+".yaml"), "both must be the same")
		}
	}
	if strings.EqualFold(name, packageName) {
		r.fail(root, name, "table-name", numbered("no table may be called %q: the open data has a file of that name", name))
	}
	t.Title = r.optional(got, "title", name+".title")
	t.About = r.optional(got, "about", name+".about")
	t.Version.Number = r.shaped(got, "version", name, "bad-version", "three whole numbers such as 1.2.0", versionShape.MatchString)
	t.Version.Date = r.shaped(got, "date", name, "bad-date", "a day such as 2026-11-25", isDay)
	if f, there := got["version"]; there {
		t.Version.NumberPos = r.pos(f.value)
	}
	if f, there := got["date"]; there {
		t.Version.DatePos = r.pos(f.value)
	}
	if f, there := got["unit"]; there {
		t.Unit, _ = word(r, f.value, name+".unit", "unknown-unit", "unit", units)
	}
	if f, there := got["cautions"]; there {
		t.Cautions = r.texts(f.value, name+".cautions")
	}
	if f, there := got["columns"]; there {
		t.Columns = r.columns(f.value, t)
	}
	if f, there := got[rowsKey]; there {
		last := root.Content[len(root.Content)-1] == f.value && f.value.Style&yaml.FlowStyle == 0
		for i, n := range r.rowNodes(f.value, name+"."+rowsKey) {
			if last && i == 0 {
				r.first = r.pos(n)
			}
			if row := l.readRow(r, n, t, i); row != nil {
				t.Rows = append(t.Rows, row)
			}
		}
	}
	return t
}

func isDay(text string) bool {
	_, err := time.Parse(time.DateOnly, text)
	return err == nil
}

// shaped reads a text that must have a certain form.
func (r *reader) shaped(got map[string]field, key, path, rule, form string, good func(string) bool) string {
	f, there := got[key]
	if !there {
		return ""
	}
	text, ok := r.text(f.value, path+"."+key)
	if ok && !good(text) {
		r.fail(f.value, path+"."+key, rule, numbered("%q is not %s", text, form))
		return ""
	}
	return text
}

// columns reads the declarations of a head, one line for each column.
func (r *reader) columns(n *node, t *Table) []Column {
	path := t.ID + ".columns"
	if n.Kind != yaml.MappingNode {
		r.fields(n, path, nil, nil) // says what is wrong
		return nil
	}
	var ids []string
	for i := 0; i+1 < len(n.Content); i += 2 {
		ids = append(ids, n.Content[i].Value)
	}
	got, ok := r.fields(n, path, ids, nil)
	if !ok {
		return nil
	}
	if len(ids) == 0 {
		r.fail(n, path, "empty-value", "no column is declared")
	}
	var out []Column
	for i, id := range slices.Compact(ids) {
		f, there := got[id]
		if !there || slices.Contains(ids[:i], id) {
			continue
		}
		if c, ok := r.column(f, t, path+"."+id); ok {
			out = append(out, c)
		}
	}
	r.jointColumns(n, path, out, ids)
	r.matchedColumns(n, path, out)
	return out
}

func (r *reader) column(f field, t *Table, path string) (Column, bool) {
	c := Column{Unit: t.Unit, Pos: r.pos(f.key)}
	var ok bool
	if c.ID, ok = r.id(f.key, path); !ok {
		return c, false
	}
	if slices.Contains(rowFirst, c.ID) || slices.Contains(rowLast, c.ID) {
		r.fail(f.key, path, "bad-column", numbered("%q is a key of every row and cannot be a column", c.ID))
		return c, false
	}
	got, ok := r.fields(f.value, path, columnKeys, nil)
	if !ok || !r.inline(f.value, path) || !r.need(f.value, path, got, "label", "kind") {
		return c, false
	}
	c.Label = r.optional(got, "label", path)
	if c.Kind, ok = word(r, got["kind"].value, path+".kind", "bad-column", "kind of column", kinds); !ok {
		return c, false
	}
	if u, there := got["unit"]; there {
		c.Unit, ok = word(r, u.value, path+".unit", "unknown-unit", "unit", units)
	}
	if f, there := got["range"]; there {
		_, known := word(r, f.value, path+".range", "bad-column", "value of range", []string{"true"})
		c.Range, ok = true, ok && known
	}
	if m, there := got["method"]; there {
		c.Method, _ = r.id(m.value, path+".method")
	}
	measured := unitsOf(c.Kind)
	if !slices.Contains(measured, c.Unit) {
		if _, there := got["unit"]; there && ok && len(measured) > 0 {
			r.fail(f.value, path, "bad-column", numbered("a %s is not measured in %s", c.Kind, c.Unit), "known: "+joined(measured))
			return c, false
		}
		c.Unit = NoUnit
	}
	switch {
	case !ok:
		return c, false
	case len(measured) > 0 && c.Unit == NoUnit:
		r.fail(f.value, path, "bad-column", numbered("a %s has no unit", c.Kind), "write unit: "+string(measured[len(measured)-1])+", here or for the table")
		return c, false
	case c.Range && (!c.Kind.numeric() || jointColumn(c)):
		r.fail(got["range"].key, path, "bad-column", numbered("the column %q cannot hold ranges", c.ID), "only numbers can be ranges, and hold, cap and across are matched as single figures")
		return c, false
	case !c.Kind.numeric() && (got["least"].value != nil || got["greatest"].value != nil):
		r.fail(f.value, path, "bad-column", numbered("a column of kind %q has no least and greatest value", c.Kind))
	case c.Kind.numeric():
		if !r.need(f.value, path, got, "least", "greatest") {
			return c, false
		}
		least, okLeast := r.limit(got["least"].value, path+".least", c)
		greatest, okGreatest := r.limit(got["greatest"].value, path+".greatest", c)
		if !okLeast || !okGreatest {
			return c, false
		}
		if least.Cmp(greatest) >= 0 {
			r.fail(got["greatest"].value, path, "bad-column", numbered("the greatest value %s is not above the least, %s", greatest, least))
			return c, false
		}
		c.Least, c.Greatest = least, greatest
	}
	return c, r.matched(got, &c, path)
}

// limit reads a least or greatest value.
func (r *reader) limit(n *node, path string, c Column) (Quantity, bool) {
	text, ok := r.text(n, path)
	if !ok {
		return Quantity{}, false
	}
	return r.number(n, text, path, c.Kind, c.Unit)
}

// jointColumns checks that hold, cap and across come together and as what they are;
// the identification reads them by these names.
func (r *reader) jointColumns(n *node, path string, columns []Column, ids []string) {
	want := map[string]Kind{holdColumn: Holds, capColumn: Length, acrossColumn: Length}
	joint := false
	for _, c := range columns {
		kind, special := want[c.ID]
		joint = joint || special || c.Kind == Holds
		switch {
		case special && c.Kind != kind:
			r.list.Add(diag.Problem{Pos: c.Pos, Path: path + "." + c.ID, Rule: "bad-column", Fact: numbered("the column %q is of kind %q, not %q", c.ID, kind, c.Kind)})
		case !special && c.Kind == Holds:
			r.list.Add(diag.Problem{Pos: c.Pos, Path: path + "." + c.ID, Rule: "bad-column", Fact: "a column of kind \"hold\" is called \"hold\""})
		}
	}
	for _, id := range []string{holdColumn, capColumn, acrossColumn} {
		if joint && !slices.Contains(ids, id) {
			r.fail(n, path, "bad-column", numbered("a joint table lacks the column %q", id), "hold, cap and across come together")
		}
	}
}
