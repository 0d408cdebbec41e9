package tables

import (
	"cmp"
	"iter"
	"slices"

	"capspan/build/diag"
)

// A size that many makers list is many rows, of which each names all the others. So twins
// are looked up in sorted lists, and no list of all pairs is made.

// calledTwin is an id that a row names as its twin, and where.
type calledTwin struct {
	id        string
	line, col int
}

func (r *reader) posOf(t calledTwin) diag.Pos {
	return diag.Pos{File: r.file, Line: t.line, Col: t.col}
}

// readTwins reads the ids; those of a row that cannot be part of the chart are not judged.
func (link *links) readTwins(r *reader, items []*node, path string, judged bool) {
	if !judged {
		return
	}
	link.twins = make([]calledTwin, 0, len(items))
	for _, n := range items {
		if id, ok := r.text(n, path); ok {
			link.twins = append(link.twins, calledTwin{id, n.Line, n.Column})
		}
	}
}

// namedTwin is a row that another names as its twin, and where.
type namedTwin struct {
	row *Row
	pos diag.Pos
}

// findNamed looks a row up among those that are named.
func findNamed(named []namedTwin, row *Row) bool {
	_, there := slices.BinarySearchFunc(named, row, func(n namedTwin, r *Row) int { return n.row.at - r.at })
	return there
}

// resolveNamed finds the rows that a row names as its twins, and puts them in the chart's
// order.
func (l *loader) resolveNamed(row *Row) {
	twins, reader := l.links[row.at].twins, l.readers[row.Table]
	if len(twins) == 0 {
		return
	}
	named := make([]namedTwin, 0, len(twins))
	path := row.Ref() + ".twins"
	for _, called := range twins {
		id, pos := called.id, reader.posOf(called)
		twin := l.target(id)
		switch {
		case twin == nil:
			reader.failAt(pos, path, "twin-nowhere", numbered("the row %q is not in the chart", id), l.nearRows(id)...)
		case twin == row:
			reader.failAt(pos, path, "twin-nowhere", numbered("%q names itself as its twin", id))
		case len(row.Ends) > 0 && len(twin.Ends) > 0 && !CouldBeTwins(row, twin):
			p := reader.failAt(pos, path, "impossible-twins", apart(row, twin))
			p.Notes = []diag.Note{{Text: numbered("%q is at", twin.ID), Pos: twin.Pos}}
		default:
			named = append(named, namedTwin{twin, pos})
		}
	}
	// Named twice, the last place counts.
	slices.SortFunc(named, func(a, b namedTwin) int { return cmp.Or(a.row.at-b.row.at, b.pos.Compare(a.pos)) })
	named = slices.CompactFunc(named, func(a, b namedTwin) bool { return a.row == b.row })
	row.Twins = make([]*Row, 0, len(named))
	for _, n := range named {
		row.Twins = append(row.Twins, n.row)
	}
	l.named[row.at] = named
}

// nameBack makes twins of each other what only one of them calls so, and says that.
func (l *loader) nameBack(rows iter.Seq[*Row]) {
	var late []*Row
	for row := range rows {
		for _, n := range l.named[row.at] {
			twin := n.row
			if findNamed(l.named[twin.at], row) {
				continue
			}
			twin.Twins = append(twin.Twins, row)
			late = append(late, twin)
			l.list.Add(diag.Problem{Pos: n.pos, Path: row.Ref() + ".twins", Rule: "one-sided-twins",
				Fact:  numbered("%q names %q as its twin, but not the other way round", row.ID, twin.ID),
				Hints: []string{"add twins: [" + row.ID + "] there"}, Notes: []diag.Note{{Text: numbered("%q is at", twin.ID), Pos: twin.Pos}}})
		}
	}
	for _, row := range late {
		slices.SortFunc(row.Twins, func(a, b *Row) int { return a.at - b.at })
	}
}
