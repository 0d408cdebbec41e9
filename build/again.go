package build

import (
	"bytes"
	"fmt"
	"slices"
	"sync"

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
	tables   map[string]*tableThen
	rows     []*rowThen // in the chart's order
	editions int        // numbers given so far
	sizes    []int      // by place, the number of a row's physical size
}

// tableThen is a table: the text before its rows, and where those stand in the chart.
type tableThen struct {
	head  []byte
	first int
	rows  []*rowThen
	byID  func() map[string]int
}

// find is the place of a row in the table; most stand where they stood.
func (t *tableThen) find(id string, near int) (int, bool) {
	if near < len(t.rows) && t.rows[near].name.id == id {
		return near, true
	}
	n, is := t.byID()[id]
	return n, is
}

// at is the place of a row in the chart.
func (c *chartThen) at(name rowName) (int, bool) {
	t := c.tables[name.table]
	if t == nil {
		return 0, false
	}
	n, is := t.find(name.id, len(t.rows))
	return t.first + n, is
}

// rowThen is a row: all that its file says of it, and what others must know of it when it
// has gone. It stays the same as long as nothing of the row changes.
type rowThen struct {
	name    rowName
	edition int // the row's number, and never another's
	text    []byte
	twins   []rowName
	likes   []rowName // of a conversion joint
	held    string    // by what, and between which faces it is measured, end by end
	ends    int
	breadth float64
	key     string // of its size
}

// again is a chart beside that of the build before.
type again struct {
	set       *tables.Set
	then, now *chartThen
	place     map[*tables.Row]int
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
	a := &again{set: set, then: then, place: make(map[*tables.Row]int, len(then.rows)), is: allOf(-1, len(then.rows))}
	a.now = &chartThen{tables: map[string]*tableThen{}, rows: make([]*rowThen, 0, len(then.rows)), editions: then.editions}
	var texts [][]byte
	for _, t := range set.Tables {
		for _, row := range t.Rows {
			a.place[row] = len(a.place)
		}
		a.was = append(a.was, a.unchanged(t, then.tables[t.ID])...)
		texts = append(texts, t.RowTexts()...)
	}
	last := -1
	for _, t := range set.Tables {
		now := &tableThen{head: t.Head(), first: len(a.now.rows)}
		for _, row := range t.Rows {
			at := len(a.now.rows)
			was := a.was[at]
			switch {
			case was >= 0 && slices.ContainsFunc(row.Ends, func(end tables.End) bool { return end.Like != nil && a.was[a.place[end.Like]] < 0 }):
				a.was[at] = -1 // as the row that an end is like has
				fallthrough
			case was < 0:
				made := rowAgain(row, texts[at])
				made.edition = a.now.editions
				a.now.editions++
				a.now.rows, a.moved = append(a.now.rows, made), append(a.moved, made)
			default:
				a.now.rows = append(a.now.rows, then.rows[was])
				a.is[was] = at
				a.reordered = a.reordered || was < last
				last = was
			}
		}
		now.rows = a.now.rows[now.first:]
		now.byID = sync.OnceValue(func() map[string]int {
			byID := make(map[string]int, len(now.rows))
			for n, row := range now.rows {
				byID[row.name.id] = n
			}
			return byID
		})
		a.now.tables[t.ID] = now
	}
	a.at = allOf(-1, a.now.editions)
	for at, row := range a.now.rows {
		a.at[row.edition] = at
	}
	for at, is := range a.is {
		if is < 0 {
			a.moved = append(a.moved, then.rows[at])
		}
	}
	a.near = a.nearby()
	a.now.sizes = a.sizes()
	return a
}

// sizes are the numbers of the rows' physical sizes ([tables.Set.Sizes]), by place; -1 of a
// row that is no joint. They hang on twins and holds alone.
func (a *again) sizes() []int {
	if a.then.sizes != nil && !a.reordered && len(a.then.rows) == len(a.now.rows) && !slices.ContainsFunc(a.moved, a.resized) {
		return a.then.sizes
	}
	return sizeNumbers(a.set, func(row *tables.Row) int { return a.place[row] }, len(a.now.rows))
}

// resized reports whether a row that has moved is not in the place it had, with the same
// twins and holds.
func (a *again) resized(row *rowThen) bool {
	was, then := a.then.at(row.name)
	is, now := a.now.at(row.name)
	if !then || !now || was != is {
		return true
	}
	before, after := a.then.rows[was], a.now.rows[is]
	return before.held != after.held || !slices.Equal(before.twins, after.twins)
}

// sizeNumbers numbers the physical sizes of a chart, and gives each row's.
func sizeNumbers(set *tables.Set, place func(*tables.Row) int, rows int) []int {
	of := allOf(-1, rows)
	for n, size := range set.Sizes() {
		for _, row := range size {
			of[place(row)] = n
		}
	}
	return of
}

// unchanged lists the places then of the rows of a table; -1 for those of which the file says
// something else now.
func (a *again) unchanged(t *tables.Table, then *tableThen) []int {
	list := allOf(-1, len(t.Rows))
	if then == nil || !bytes.Equal(then.head, t.Head()) {
		return list
	}
	near := 0
	for n, text := range t.RowTexts() {
		row := t.Rows[n]
		at, known := then.find(row.ID, near)
		if !known {
			continue
		}
		near = at + 1
		if was := then.rows[at]; bytes.Equal(text, was.text) && slices.EqualFunc(row.Twins, was.twins, isNamed) {
			list[n] = then.first + at
		}
	}
	return list
}

// allOf is a list of so many times the same.
func allOf(n, times int) []int {
	list := make([]int, times)
	for i := range list {
		list[i] = n
	}
	return list
}

func isNamed(row *tables.Row, name rowName) bool {
	return row.ID == name.id && row.Table.ID == name.table
}

// rowAgain is what the next build will ask of a row. Its text is its own: the file that it
// stands in is not to stay with it.
func rowAgain(row *tables.Row, text []byte) *rowThen {
	r := &rowThen{name: nameOf(row), text: bytes.Clone(text), key: sizeKey(row), ends: len(row.Ends), breadth: tables.Breadth(row)}
	r.twins = namesOf(row.Twins)
	for _, end := range row.Ends {
		r.held += fmt.Sprint(end.Hold.State, " ", end.Hold.Text, " ", end.Across.Faces, ";")
		if end.Like != nil {
			r.likes = append(r.likes, nameOf(end.Like))
		}
	}
	return r
}
