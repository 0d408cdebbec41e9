package build

import "math"

// A page asks the chart what is near a row, and the answer may change with a row that is not
// on the page. Where few rows have changed, it can be told which answers may be others now:
// all others need not be asked for again.

// manyMoved is how many rows may have changed for that to be worth it.
const manyMoved = 300

// nearby are the rows that what has changed is twin to, is like or has an end of, and what
// those are twins to in turn.
type nearby struct {
	all  bool            // that too much has changed to tell
	rows map[int]bool    // places
	of   map[string]bool // keys of their sizes
	keys map[string]bool // of the sizes that rows have changed in, as they were and as they are
}

// nearby finds them. A row that is gone is no twin of its twins any more, so they have
// changed too; rows that have not name the same twins as before. So what was bound to what
// has changed is bound to it still.
func (a *again) nearby() nearby {
	n := nearby{all: a.reordered || len(a.moved) > manyMoved, rows: map[int]bool{}, of: map[string]bool{}, keys: map[string]bool{}}
	if n.all {
		return n
	}
	var take func(name rowName)
	take = func(name rowName) {
		at, is := a.now.at(name)
		if !is || n.rows[at] {
			return
		}
		row := a.now.rows[at]
		n.rows[at], n.of[row.key] = true, true
		for _, twin := range row.twins {
			take(twin)
		}
	}
	for _, row := range a.moved {
		n.keys[row.key] = true
		take(row.name)
		for _, like := range row.likes {
			take(like)
		}
	}
	return n
}

// stands reports whether the answer to a question about a row must be what it was in the
// build before.
func (a *again) stands(question string, at int, reach float64) bool {
	if a.near.all {
		return false
	}
	row := a.now.rows[at]
	switch question {
	case "size":
		return !a.near.keys[row.key]
	case "conversions", "same figures", "near sizes":
		if a.near.rows[at] || a.near.of[row.key] {
			return false
		}
	default:
		return false
	}
	for _, other := range a.moved {
		if other.ends == row.ends && math.Abs(other.breadth-row.breadth) <= reach {
			return false
		}
	}
	return true
}
