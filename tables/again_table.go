package tables

import (
	"bytes"
	"slices"

	"capspan/build/diag"
)

// A table in which a row is edited has the same lines but for a few. Each row of a table of
// which nothing is wrong stands on lines of its own, and what is read of it is said there and
// in the head alone; so a row with the same lines below the same head is the same row, at most
// at another place. Lines that are others are read as quickParse reads them: what it leaves
// to the YAML library, and a head that is another, have the whole file read.

// edited is the table with another text below the same head, or nil.
func (p *part) edited(l *loader, text []byte) *part {
	if p.places == nil {
		return nil
	}
	head := p.places.starts[0]
	if len(text) < head.at || !bytes.Equal(text[:head.at], p.table.source[:head.at]) {
		return nil
	}
	now := &places{indent: p.places.indent}
	if now.find(text, head); len(now.starts) == 0 {
		return nil
	}
	table := *p.table
	table.source, table.Rows = text, make([]*Row, 0, len(now.starts))
	out := &part{loader: *l, root: p.root, table: &table}
	out.list, out.links = nil, make([]*links, 0, len(now.starts))
	out.reader = &reader{file: p.reader.file, source: text, lim: l.lim, list: &out.list, first: p.reader.first}
	old := oldRows{part: p}
	for n, start := range now.starts {
		lines := now.text(text, n)
		if from := old.find(lines); from >= 0 {
			row, link := p.moved(from, start.line-p.places.starts[from].line)
			table.Rows, out.links = append(table.Rows, row), append(out.links, link)
		} else if !out.readLines(lines, start.line, n) {
			return nil
		}
	}
	return out
}

// readLines reads one row, the n-th, from its lines; false when they are not as plain as that.
func (p *part) readLines(lines []byte, line, n int) bool {
	indent := p.reader.first.Col - 3
	list, ok := quickly(lines, line-1, func(q *quickReader) *node {
		if q.indent != indent {
			panic(gaveUp{})
		}
		return q.list(indent)
	})
	if !ok || len(list.Content) != 1 || tooDeep(list, p.lim.depth-1) != nil {
		return false
	}
	if row := p.readRow(p.reader, list.Content[0], p.table, n); row != nil {
		p.table.Rows = append(p.table.Rows, row)
	}
	return true
}

// oldRows finds the rows of a table by their lines.
type oldRows struct {
	part *part
	next int            // the one behind the one found last
	by   map[string]int // made when a row is not where it was
}

// find gives the place of a row; negative when none has these lines.
func (o *oldRows) find(lines []byte) int {
	places, text := o.part.places, o.part.table.source
	if o.next < len(places.starts) && bytes.Equal(lines, places.text(text, o.next)) {
		o.next++
		return o.next - 1
	}
	if o.by == nil {
		o.by = make(map[string]int, len(places.starts))
		for n := range places.starts {
			o.by[string(places.text(text, n))] = n
		}
	}
	if n, there := o.by[string(lines)]; there {
		o.next = n + 1
		return n
	}
	o.next++ // as if that one had been edited
	return -1
}

// moved is a row, and what it says of others, so many lines further down.
func (p *part) moved(n, by int) (*Row, *links) {
	row, link := p.table.Rows[n], p.links[n]
	if by == 0 {
		return row, link
	}
	out := *row
	out.Pos.Line += by
	out.Values = make(map[string]Value, len(row.Values))
	for id, v := range row.Values {
		out.Values[id] = v.moved(by)
	}
	if len(row.Ends) == 1 {
		out.Ends = []End{{Hold: out.Values[holdColumn], Cap: out.Values[capColumn], Across: out.Values[acrossColumn]}}
	}
	said := links{twins: slices.Clone(link.twins)}
	for i := range said.twins {
		said.twins[i].line += by
	}
	for _, like := range link.likes {
		one := *like
		one.Line += by
		said.likes = append(said.likes, &one)
	}
	return &out, &said
}

func (v Value) moved(by int) Value {
	further := func(pos *diag.Pos) {
		if pos.Line > 0 { // a place that is not told stays untold
			pos.Line += by
		}
	}
	further(&v.Pos)
	further(&v.Braces)
	v.Others = slices.Clone(v.Others)
	for i := range v.Others {
		v.Others[i] = v.Others[i].moved(by)
	}
	if v.Measured != nil {
		list := slices.Clone(v.Measured.List)
		for i := range list {
			further(&list[i].Pos)
		}
		v.Measured = &Measurements{List: list}
	}
	return v
}
