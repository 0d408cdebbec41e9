package build

import (
	"sync"

	"capspan/tables"
)

// The facts of a large chart for the page of corrections. A table's file and its rows are
// too much for one correction: each row is a record in a drawer, with the lines of the file
// round it, and a table's facts say where its drawers are. The directory names those of
// every table, at an address that stays.

const (
	factsDirectory = "contribute/correct/index.json" // below the language's folder
	// correctRowsScript opens the drawers; the site of a small chart is without it.
	correctRowsScript = "correct-rows.js"
	// linesAround is how many lines before and behind a change a patch shows.
	linesAround = 3
)

// factsIndex is that directory; static/parts/correct/rows.ts reads it, and the rest of this.
type factsIndex struct {
	Format  int               `json:"format"`
	Sources string            `json:"sources"` // address of the registry's facts
	Tables  map[string]string `json:"tables"`  // addresses of those of tables, by id
}

// tableInDrawers are the facts of a table without its text and its rows.
type tableInDrawers struct {
	File    string        `json:"file"`
	Table   string        `json:"table"`
	Title   string        `json:"title"`
	Columns []columnFacts `json:"columns"`
	Rows    drawers       `json:"rows"`
}

// rowInDrawer is a row's record: its facts, and some lines of the file with what stands
// before them counted.
type rowInDrawer struct {
	rowFacts
	Text   string `json:"text"`
	Before int    `json:"before"` // lines
}

// inDrawers writes the rows of a table. One that has no cell of its own has no record, for
// nothing of it can be corrected.
func (s *site) inDrawers(facts tableFacts, t *tables.Table) tableInDrawers {
	starts := []int{0}
	for n, char := range []byte(facts.Text) {
		if char == '\n' {
			starts = append(starts, n+1)
		}
	}
	starts = append(starts, len(facts.Text))
	around := func(first, last int) (before int, text string) {
		before = min(max(0, first-1-linesAround), len(starts)-1)
		return before, facts.Text[starts[before]:starts[max(before, min(len(starts)-1, last+linesAround))]]
	}
	others := func(n int) beside { // all lines of the file that a record may have
		first, next := t.Rows[n].Pos.Line, len(starts)
		if n+1 < len(t.Rows) {
			next = t.Rows[n+1].Pos.Line
		}
		_, text := around(first, next)
		return beside{first, text}
	}
	again, lines := s.again.inEnglish(), sync.OnceValue(func() []string { return tables.Lines(facts.Text) })
	records := eachRow(again, "facts of "+t.ID, t.Rows, others, func(row *tables.Row) []record {
		told := rowFactsOf(lines(), t, row)
		first, last, ok := told.lines()
		if !ok {
			return nil
		}
		before, text := around(first, last)
		return []record{recordOf(row.ID, rowInDrawer{told, text, before})}
	})
	rows := s.drawersIn(correctFolder+"rows/", "facts of "+t.ID).addAll("rows", sortRecords(again, "facts sorted of "+t.ID, t.Rows, records), drawerSize)
	return tableInDrawers{facts.File, facts.Table, facts.Title, facts.Columns, rows}
}

// addFactsDirectory writes the directory of what stands at these paths, and returns its own
// instead.
func (s *site) addFactsDirectory(paths map[string]string) map[string]string {
	index := factsIndex{Format: 2, Tables: map[string]string{}}
	for id, path := range paths {
		if id == "" {
			index.Sources = s.atRoot(path)
		} else {
			index.Tables[id] = s.atRoot(path)
		}
	}
	s.add(factsDirectory, mustJSON(index), Pages)
	return map[string]string{"": s.folder + factsDirectory}
}
