package tables

import (
	"slices"

	"go.yaml.in/yaml/v4"
)

// readRow reads one entry; without an id it cannot be part of the chart, but its
// values are checked all the same.
func (l *loader) readRow(r *reader, n *node, t *Table, index int) *Row {
	id := peek(n, "id")
	if id == "" {
		id = numbered("row %d", index+1)
	}
	path := t.ID + "/" + id
	got, ok := r.fields(n, path, r.rowKeys(t), nil)
	if !ok {
		return nil
	}
	if n.Style&yaml.FlowStyle != 0 {
		r.fail(n, path, "one-line", "the row is written in braces", "give each key a line of its own")
	}
	row := &Row{Table: t, Values: make(map[string]Value, len(t.Columns)), Pos: r.pos(n)}
	if r.need(n, path, got, "id") {
		row.ID, ok = r.id(got["id"].value, path)
		row.Pos = r.pos(got["id"].value)
	} else {
		ok = false
	}
	joint := t.Joint()
	for _, column := range t.Columns {
		f, there := got[column.ID]
		_, conversion := got["ends"]
		measure := joint && slices.Contains([]string{holdColumn, capColumn, acrossColumn}, column.ID)
		switch {
		case there && conversion && measure:
			r.fail(f.key, path+"."+column.ID, "bad-ends", numbered("a row with ends has %q from the rows it names", column.ID), "leave out ends, or this line")
		case there:
			row.Values[column.ID] = l.readValue(r, f.value, path+"."+column.ID, column, joint)
		case !(conversion && measure):
			r.fail(n, path, "missing-key", numbered("the column %q is missing", column.ID), "write "+column.ID+": {is: unknown} when it is not known")
			row.Values[column.ID] = Value{State: Unknown, Pos: r.pos(n)}
		}
	}
	link := &links{}
	l.readOwn(r, n, path, got, row, link)
	if f, there := got["also"]; there {
		row.Also = r.texts(f.value, path+".also")
	}
	if f, there := got["twins"]; there {
		link.readTwins(r, r.items(f.value, path+".twins", false), path+".twins", ok)
	}
	row.Note = r.optional(got, "note", path+".note")
	r.joint(row, got, path)
	r.forget(got)
	if !ok {
		return nil
	}
	l.links = append(l.links, link)
	return row
}

// readOwn reads what a conversion joint says of itself: its ends and its basis.
func (l *loader) readOwn(r *reader, n *node, path string, got map[string]field, row *Row, link *links) {
	ends, conversion := got["ends"]
	if !conversion {
		for _, key := range []string{"basis", "source", "at"} {
			if f, there := got[key]; there {
				r.fail(f.key, path, "unknown-key", numbered("%q of a row with values of its own", key), "write it inside the braces of each value")
			}
		}
		return
	}
	if !row.Table.Joint() {
		r.fail(ends.key, path, "bad-ends", "a row of this table has no ends", "ends belong to a table with hold, cap and across")
		return
	}
	items := r.items(ends.value, path+".ends", false)
	if len(items) != 2 && len(items) != 0 {
		r.fail(ends.value, path+".ends", "bad-ends", numbered("a joint has two ends, not %d", len(items)))
	}
	for _, item := range items {
		end, ok := r.fields(item, path+".ends", []string{"like"}, nil)
		if ok && r.inline(item, path+".ends") && r.need(item, path+".ends", end, "like") {
			like := *end["like"].value // it outlasts the nodes of the file
			link.likes = append(link.likes, &like)
		}
	}
	e := l.evidence(r, n, path, got, true)
	row.Basis, row.Sources, row.At = e.basis, e.sources, e.at
}

// joint makes the one end of a plain joint and finds the row's basis.
func (r *reader) joint(row *Row, got map[string]field, path string) {
	if _, conversion := got["ends"]; conversion {
		return
	}
	for _, c := range row.Table.Columns {
		v, there := row.Values[c.ID]
		numeric := c.Kind.numeric() || !row.Table.Joint()
		if there && v.State == Given && numeric && (row.Basis == "" || v.Basis.Weaker(row.Basis)) {
			row.Basis = v.Basis
		}
	}
	if row.Basis == "" {
		row.Basis = Memory // nothing is known of it
	}
	if !row.Table.Joint() {
		return
	}
	of := func(column string) Value {
		if v, there := row.Values[column]; there {
			return v
		}
		return Value{State: Unknown, Pos: row.Pos} // the table does not declare it, which was reported
	}
	end := End{Hold: of(holdColumn), Cap: of(capColumn), Across: of(acrossColumn)}
	if !goTogether(end.Hold.Hold(), end.Across.Faces) {
		r.failAt(end.Across.Pos, path+"."+acrossColumn, "wrong-faces",
			numbered("the faces %q do not go with the hold %q", end.Across.Faces, end.Hold.Hold()), "measure "+joined(facesOf[end.Hold.Hold()]))
	}
	row.Ends = []End{end}
}

// peek reads a plain value without judging it.
func peek(n *node, key string) string {
	for i := 0; n.Kind == yaml.MappingNode && i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key && n.Content[i+1].Kind == yaml.ScalarNode && len(n.Content[i+1].Value) <= longestID {
			return n.Content[i+1].Value
		}
	}
	return ""
}

func columnIDs(t *Table) []string {
	ids := make([]string, len(t.Columns))
	for i, c := range t.Columns {
		ids[i] = c.ID
	}
	return ids
}
