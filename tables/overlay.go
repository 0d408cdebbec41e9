package tables

import (
	"errors"
	"io/fs"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
)

// overlayFolder is where a keeper's overlays stand in the folder of the keeper.
const overlayFolder = "overlay/"

// Overlay is what a keeper adds to rows of the chart: part numbers, stock, prices, notes. It
// names rows and copies none, so a newer chart flows through under it. It is the keeper's own
// word: no basis is asked for, and it is no part of the chart nor of its hash.
type Overlay struct {
	Columns []*OwnColumn // in the order of the files and of their heads

	rows map[string][]OwnValue // by the row's ref: a chart that speaks another language has rows of its own
}

// OwnKind is what a column of an overlay holds.
type OwnKind string

const (
	OwnNumber OwnKind = "number" // digits as they are written
	OwnText   OwnKind = "text"
	OwnChoice OwnKind = "choice" // one of the column's words
)

var ownKinds = []OwnKind{OwnNumber, OwnText, OwnChoice}

// OwnColumn is declared in the head of an overlay.
type OwnColumn struct {
	ID    string
	Label string
	Kind  OwnKind
	Unit  string   // of numbers, in the keeper's words; may be empty
	Words []string // of a choice
	Find  bool     // rows are found by what stands in it, as by a name
	Pos   diag.Pos
}

// same reports whether two declarations say the same.
func (c *OwnColumn) same(o *OwnColumn) bool {
	return c.Label == o.Label && c.Kind == o.Kind && c.Unit == o.Unit && c.Find == o.Find && slices.Equal(c.Words, o.Words)
}

// OwnValue is what an overlay says of a row in one column.
type OwnValue struct {
	Column *OwnColumn
	Text   string
	Pos    diag.Pos
}

// String is the value with its unit: "4 pieces".
func (v OwnValue) String() string {
	if v.Column.Unit == "" {
		return v.Text
	}
	return v.Text + " " + v.Column.Unit
}

// Of lists what the overlays say of a row, in the order of the columns. A nil overlay says
// nothing.
func (o *Overlay) Of(row *Row) []OwnValue {
	if o == nil {
		return nil
	}
	var list []OwnValue
	for _, column := range o.Columns {
		for _, v := range o.rows[row.Ref()] {
			if v.Column == column {
				list = append(list, v)
			}
		}
	}
	return list
}

// Rows is how many rows the overlays speak of.
func (o *Overlay) Rows() int {
	if o == nil {
		return 0
	}
	return len(o.rows)
}

// LoadOverlay reads every *.yaml at the root of fsys and holds it to the chart. A folder that
// is not there is an overlay that says nothing, as nil.
func LoadOverlay(fsys fs.FS, set *Set) (*Overlay, diag.List) { return loadOverlay(fsys, set, shipped) }

func loadOverlay(fsys fs.FS, set *Set, lim limits) (*Overlay, diag.List) {
	l := &overlayLoader{loader: loader{set: set, lim: lim, folder: overlayFolder}, overlay: &Overlay{rows: map[string][]OwnValue{}}}
	names, err := yamlFiles(fsys, overlayFolder, &l.list)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, diag.List{{Pos: diag.Pos{File: overlayFolder}, Rule: "unreadable", Fact: cause(err)}}
	}
	for _, name := range names {
		if r, root := l.open(fsys, name); root != nil {
			l.readOverlay(r, root, strings.TrimSuffix(name, ".yaml"))
		}
	}
	l.list.Sort()
	if len(l.overlay.rows) == 0 {
		l.overlay = nil
	}
	return l.overlay, l.list
}

// overlayLoader holds what one LoadOverlay gathers.
type overlayLoader struct {
	loader
	overlay *Overlay
	told    map[string]bool // columns that were found to mean something else, by column and table
}

var (
	overlayKeys   = []string{"overlay", "columns", "rows"}
	ownColumnKeys = []string{"label", "kind", "unit", "words", "find"}
)

// readOverlay reads one file; name is the file's without .yaml.
func (l *overlayLoader) readOverlay(r *reader, root *node, name string) {
	got, ok := r.fields(root, name, overlayKeys, nil)
	if !ok || !r.need(root, name, got, overlayKeys...) {
		return
	}
	if id, ok := r.id(got["overlay"].value, name+".overlay"); ok && id != name {
		r.fail(got["overlay"].value, name+".overlay", "table-name", numbered("the overlay is called %q, its file %q", id, name+".yaml"), "both must be the same")
	}
	columns := l.ownColumns(r, got["columns"].value, name+".columns")
	rows := got["rows"].value
	if fields, ok := r.fields(rows, name+".rows", keysOf(rows), nil); ok {
		if len(fields) == 0 {
			r.fail(rows, name+".rows", "empty-value", "no row is named", "write the id of a row of the chart and, below it, what you add")
		}
		for _, id := range keysOf(rows) {
			if f, there := fields[id]; there {
				l.ownRow(r, f, columns, name)
				delete(fields, id) // a key that stands twice was told
			}
		}
	}
}

// keysOf lists the keys of a mapping as they stand; of anything else none.
func keysOf(n *node) []string {
	var keys []string
	for i := 0; n.Kind == yaml.MappingNode && i+1 < len(n.Content); i += 2 {
		keys = append(keys, n.Content[i].Value)
	}
	return keys
}

// ownColumns reads the declarations of a head, by id.
func (l *overlayLoader) ownColumns(r *reader, n *node, path string) map[string]*OwnColumn {
	ids := keysOf(n)
	got, ok := r.fields(n, path, ids, nil)
	if !ok {
		return nil
	}
	if len(got) == 0 {
		r.fail(n, path, "empty-value", "no column is declared")
	}
	columns := map[string]*OwnColumn{}
	for _, id := range ids {
		f, there := got[id]
		if _, twice := columns[id]; !there || twice {
			continue
		}
		if c := l.ownColumn(r, f, path+"."+id); c != nil {
			columns[id] = l.declared(r, f, c, path+"."+id)
		}
	}
	return columns
}

// ownColumn reads one declaration; nil when it makes no sense.
func (l *overlayLoader) ownColumn(r *reader, f field, path string) *OwnColumn {
	c := &OwnColumn{Pos: r.pos(f.key)}
	var ok bool
	if c.ID, ok = r.id(f.key, path); !ok {
		return nil
	}
	if c.ID != "note" && (slices.Contains(rowFirst, c.ID) || slices.Contains(rowLast, c.ID)) {
		r.fail(f.key, path, "overlay-column", numbered("%q is a key of every row of the chart", c.ID), "give the column a name of your own")
		return nil
	}
	got, ok := r.fields(f.value, path, ownColumnKeys, nil)
	if !ok || !r.inline(f.value, path) || !r.need(f.value, path, got, "label", "kind") {
		return nil
	}
	c.Label, c.Unit = r.optional(got, "label", path), r.optional(got, "unit", path)
	if c.Kind, ok = word(r, got["kind"].value, path+".kind", "bad-column", "kind of column", ownKinds); !ok {
		return nil
	}
	if w, there := got["words"]; there {
		c.Words = r.texts(w.value, path+".words")
	}
	if w, there := got["find"]; there {
		_, ok = word(r, w.value, path+".find", "bad-column", "value of find", []string{"true"})
		c.Find = ok
	}
	switch {
	case c.Kind == OwnChoice && len(c.Words) == 0:
		r.fail(f.value, path, "bad-column", "a choice says between which words", "write words: [yes, no]")
		return nil
	case c.Kind != OwnChoice && len(c.Words) > 0:
		r.fail(got["words"].key, path, "bad-column", numbered("a column of kind %q has no words", c.Kind))
		return nil
	case c.Kind != OwnNumber && c.Unit != "":
		r.fail(got["unit"].key, path, "bad-column", numbered("a column of kind %q has no unit", c.Kind))
		return nil
	}
	return c
}

// declared takes a column among those of all overlays: one of the same name in another file
// must be the same.
func (l *overlayLoader) declared(r *reader, f field, c *OwnColumn, path string) *OwnColumn {
	for _, before := range l.overlay.Columns {
		if before.ID != c.ID {
			continue
		}
		if !before.same(c) {
			p := r.fail(f.key, path, "overlay-column", numbered("the column %q means something else in another overlay", c.ID), "declare both alike, or give one another name")
			p.Notes = []diag.Note{{Text: "declared before at", Pos: before.Pos}}
		}
		return before
	}
	l.overlay.Columns = append(l.overlay.Columns, c)
	return c
}
