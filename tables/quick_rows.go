package tables

import (
	"iter"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"
)

// Nearly all of a table's file is its rows, and the loader looks at one after the other. So
// where they stand last in the file, nodes are made of one row at a time, in the place of
// those of the row before: the nodes of a whole file take forty times its room, and to
// fetch that from memory takes longer than to read the file.

// rowsKey is the key of a table's rows.
const rowsKey = "rows"

// quickRows are the rows of a table that is read row by row.
type quickRows struct {
	q      *quickReader
	list   *node // has nothing in it; nil of a file in which no list of rows was found
	indent int
	first  int // node of a row; those before it are the head's
	depth  int // that a row may have
	stuck  bool
}

// below begins the list, the last of the file.
func (rows *quickRows) below() *node {
	q := rows.q
	q.next()
	if q.ended || q.indent == 0 || !strings.HasPrefix(q.line, "- ") {
		panic(gaveUp{})
	}
	rows.indent, rows.list = q.indent, q.make(yaml.SequenceNode, 0)
	rows.first = q.made
	return rows.list
}

// all goes through the rows; the nodes of one last until the next.
func (rows *quickRows) all(yield func(int, *node) bool) {
	q := rows.q
	var n *node
	next := func() {
		if q.made = rows.first; q.indent != rows.indent {
			panic(gaveUp{})
		}
		if n = q.item(rows.indent); tooDeep(n, rows.depth) != nil {
			panic(gaveUp{})
		}
	}
	for i := 0; !q.ended; i++ {
		if rows.stuck = !q.try(next); rows.stuck || !yield(i, n) {
			return
		}
	}
}

// quickTable reads a table row by row. It reports whether that came to an end; if not, what
// was read and said of it is worth nothing.
func (p *part) quickTable(name string) bool {
	q := quickReaderOf(p.reader.source, 0)
	if q == nil {
		return false
	}
	rows := &quickRows{q: q, depth: p.lim.depth - 2} // it stands in the list, and that in the whole
	q.rows = rows
	if !q.try(func() { p.root = q.whole() }) || tooDeep(p.root, p.lim.depth) != nil {
		return false
	}
	p.reader.rows = rows
	p.table = p.readTable(p.reader, p.root, name)
	p.reader.rows = nil
	return q.ended && !rows.stuck
}

// rowNodes are the nodes of a table's rows, read now where they were not before.
func (r *reader) rowNodes(n *node, path string) iter.Seq2[int, *node] {
	if r.rows != nil && r.rows.list == n {
		return r.rows.all
	}
	return slices.All(r.items(n, path, true))
}
