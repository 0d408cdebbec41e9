package tables

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// Exports writes the open data of a chart again and again: of a row that says what it said,
// the text is taken from before, and a file in which nothing has changed is given as the very
// bytes it was given as. One writing at a time, and of the chart as it is written, not of one
// that is spoken. Nil remembers nothing.
type Exports struct {
	tables map[string]*exported // by id
	chart  struct {
		text  []byte
		about string // all of it but the rows
	}
}

// exported is what was written of a table last.
type exported struct {
	csv, own, chart *pieces // in its CSV, its JSON and that of the whole chart
	fields          []csvField
	about           string // its JSON but for the rows
	sources         []*Source
}

// of is what is known of a table.
func (e *Exports) of(t *Table) *exported {
	if e == nil {
		return &exported{}
	}
	if e.tables == nil {
		e.tables = map[string]*exported{}
	}
	if e.tables[t.ID] == nil {
		e.tables[t.ID] = &exported{}
	}
	return e.tables[t.ID]
}

// JSON writes one table, with the sources it names.
func (e *Exports) JSON(t *Table) ([]byte, error) {
	before, doc := e.of(t), headOf(t)
	same := before.own.same(t.Rows)
	if same == nil {
		before.sources = sourcesOf(t)
	}
	for _, s := range before.sources {
		doc.Sources = append(doc.Sources, sourceOf(s))
	}
	var about bytes.Buffer
	if err := encode(&about, doc); err != nil {
		return nil, err
	}
	if same != nil && before.about == about.String() {
		before.own = same
		return same.text, nil
	}
	head, tail, _ := strings.Cut(about.String(), noRows(1))
	b := append(make([]byte, 0, before.own.size(4*len(t.source))+about.Len()), head...)
	b, made := before.own.writeRows(b, t, 1)
	made.text = append(b, tail...)
	before.own, before.about = made, about.String()
	return made.text, nil
}

// sourcesOf are those a table names, in the order in which it does.
func sourcesOf(t *Table) []*Source {
	var out []*Source
	seen := map[*Source]bool{}
	for _, row := range t.Rows {
		row.eachSource(func(s *Source) {
			if !seen[s] {
				seen[s] = true
				out = append(out, s)
			}
		})
	}
	return out
}

// Chart writes the whole chart: tables, registry, retired ids, and the version's name.
func (e *Exports) Chart(s *Set) ([]byte, error) {
	e.forget(s)
	version := s.Version()
	doc := chartJSON{Version: version.Name(), Date: version.Date, Tables: []tableJSON{}, Sources: []sourceJSON{}, Retired: []retiredJSON{}}
	size := 0
	for _, t := range s.Tables {
		doc.Tables = append(doc.Tables, headOf(t))
		size += 5 * len(t.source)
	}
	doc.besides(s)
	var about bytes.Buffer
	if err := encode(&about, doc); err != nil {
		return nil, err
	}
	made := make([]*pieces, len(s.Tables))
	text := e.sameChart(s, about.String(), made)
	if text == nil {
		if e != nil && e.chart.text != nil {
			size = len(e.chart.text)
		}
		text = make([]byte, 0, size+about.Len())
		head, rest := "", about.String()
		for n, t := range s.Tables {
			head, rest, _ = strings.Cut(rest, noRows(3))
			text, made[n] = e.of(t).chart.writeRows(append(text, head...), t, 3)
		}
		text = append(text, rest...)
	}
	for n, t := range s.Tables {
		made[n].text = text
		e.of(t).chart = made[n]
	}
	if e != nil {
		e.chart.text, e.chart.about = text, about.String()
	}
	return text, nil
}

// sameChart gives the text of a chart of which nothing is new, and the pieces of its tables;
// nil for any other.
func (e *Exports) sameChart(s *Set, about string, made []*pieces) []byte {
	if e == nil || e.chart.text == nil || e.chart.about != about {
		return nil
	}
	for n, t := range s.Tables {
		if made[n] = e.of(t).chart.same(t.Rows); made[n] == nil {
			return nil
		}
	}
	return e.chart.text
}

// forget lets go of tables that are no longer in the chart.
func (e *Exports) forget(s *Set) {
	if e == nil {
		return
	}
	maps.DeleteFunc(e.tables, func(id string, _ *exported) bool {
		return !slices.ContainsFunc(s.Tables, func(t *Table) bool { return t.ID == id })
	})
}

// noRows is how a table without rows says so, in a document of that depth. Nothing else in
// one reads like it: a line ends in no text, and no other key of that depth is called so.
func noRows(depth int) string { return "\n" + indents[:2*depth] + `"rows": []` }

// writeRows appends the rows of a table in a document of that depth, the key included.
func (before *pieces) writeRows(b []byte, t *Table, depth int) ([]byte, *pieces) {
	none := noRows(depth)
	if len(t.Rows) == 0 {
		return append(b, none...), &pieces{}
	}
	w := newRowWriter(t, true, depth+1)
	b = append(b, strings.TrimSuffix(none, "]")...)
	b, made := before.write(b, t.Rows, 1, func(b []byte, row *Row) []byte {
		w.b = b
		w.line()
		w.row(row)
		return w.b
	})
	return fmt.Appendf(b, "\n%s]", indents[:2*depth]), made
}
