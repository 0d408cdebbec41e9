package build

import (
	"bytes"
	"slices"

	"capspan/tables"
)

// Under serve a chart is built again and again, and most of its rows are what they were. So
// the rows of a build are set beside those of the one before, once. Whoever makes something
// of rows then takes what was made before of those that have not changed: of a row
// (again_rows.go), of a drawer of rows (again_drawers.go), of a page (depend.go).

// rowName is a row's table and its id.
type rowName struct{ table, id string }

func nameOf(row *tables.Row) rowName { return rowName{row.Table.ID, row.ID} }

// chartThen is what a build leaves of its chart for the next one.
type chartThen struct {
	heads    map[string][]byte // of tables
	rows     map[rowName]*rowThen
	editions int // numbers given so far
}

// rowThen is a row: all that its file says of it, and what others must know of it when it
// has gone.
type rowThen struct {
	at      int // in the chart's order
	edition int // the row's number as long as nothing of it changes, and never another's
	text    []byte
	twins   []rowName
	likes   []rowName // of a conversion joint
	ends    int
	breadth float64
	key     string // of its size
}

// again is a chart beside that of the build before.
type again struct {
	set       *tables.Set
	then, now *chartThen
	place     map[*tables.Row]int
	rows      []*rowThen // by the place of a row, what the next build will know of it
	was       []int      // by the place of a row, its place then; -1 of one that is new or has changed
	is        []int      // by the place of a row then, its place now; -1 of one that has changed or gone
	at        []int      // by edition, the place of the row; -1 of one that has changed or gone
	reordered bool       // rows that have not changed stand in another order
	moved     []*rowThen // what has changed: as it was, and as it is
	near      nearby
}

// compare sets a large chart beside the one that the memory has; nil without a memory, and
// for a chart that is held whole.
func (m *Memory) compare(set *tables.Set) *again {
	if m == nil || m.blank || jointRows(set) <= largeRows {
		return nil
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.again == nil {
		m.again = newAgain(set, &chartThen{})
	} else if m.again.set != set {
		m.again = newAgain(set, m.again.now)
	}
	return m.again
}

func newAgain(set *tables.Set, then *chartThen) *again {
	a := &again{set: set, then: then, place: make(map[*tables.Row]int, len(then.rows)), is: make([]int, len(then.rows))}
	a.now = &chartThen{heads: map[string][]byte{}, rows: make(map[rowName]*rowThen, len(then.rows)), editions: then.editions}
	for n := range a.is {
		a.is[n] = -1
	}
	var rows []*tables.Row
	var texts [][]byte
	var before []*rowThen // nil for one that has changed
	for _, t := range set.Tables {
		head, known := then.heads[t.ID]
		a.now.heads[t.ID] = t.Head()
		known = known && bytes.Equal(head, a.now.heads[t.ID])
		for n, text := range t.RowTexts() {
			row := t.Rows[n]
			was := then.rows[nameOf(row)]
			if !known || was == nil || !bytes.Equal(text, was.text) || !slices.EqualFunc(row.Twins, was.twins, isNamed) {
				was = nil
			}
			a.place[row] = len(rows)
			rows, texts, before = append(rows, row), append(texts, text), append(before, was)
		}
	}
	last := -1
	for n, row := range rows {
		made := &rowThen{}
		if was := before[n]; was != nil && !slices.ContainsFunc(row.Ends, func(end tables.End) bool { return end.Like != nil && before[a.place[end.Like]] == nil }) {
			*made = *was
			a.was, a.is[was.at] = append(a.was, was.at), n
			a.reordered = a.reordered || was.at < last
			last = was.at
		} else {
			*made = rowAgain(row)
			made.edition = a.now.editions
			a.now.editions++
			a.was, a.moved = append(a.was, -1), append(a.moved, made)
		}
		made.at, made.text = n, texts[n]
		a.rows = append(a.rows, made)
		a.now.rows[nameOf(row)] = made
	}
	for _, was := range then.rows {
		if a.is[was.at] < 0 {
			a.moved = append(a.moved, was)
		}
	}
	a.at = make([]int, a.now.editions)
	for n := range a.at {
		a.at[n] = -1
	}
	for n, row := range a.rows {
		a.at[row.edition] = n
	}
	a.near = a.nearby(rows)
	return a
}

func isNamed(row *tables.Row, name rowName) bool {
	return row.ID == name.id && row.Table.ID == name.table
}

// rowAgain is what the next build will ask of a row.
func rowAgain(row *tables.Row) rowThen {
	r := rowThen{key: sizeKey(row), ends: len(row.Ends), breadth: tables.Breadth(row)}
	for _, twin := range row.Twins {
		r.twins = append(r.twins, nameOf(twin))
	}
	for _, end := range row.Ends {
		if end.Like != nil {
			r.likes = append(r.likes, nameOf(end.Like))
		}
	}
	return r
}
