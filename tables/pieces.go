package tables

// What is written of a chart row by row is written again and again under a [Reader]'s watch,
// and nearly every row says what it said. So the text written last is kept with the places of
// its rows, and of a row that says the same the old text is taken.

// pieces is a text with one piece for each row, separated alike.
type pieces struct {
	text  []byte
	first int   // where the first piece begins
	ends  []int // where each ends
	rows  []*Row
}

// separator is how many bytes stand between two pieces: a comma, or nothing.
type separator int

func (p *pieces) start(n int, between separator) int {
	if n == 0 {
		return p.first
	}
	return p.ends[n-1] + int(between)
}

// saysTheSame reports whether the same is written of two rows. Rows that no Reader read, and
// those with measurements, whose worth is reckoned elsewhere, are like no other.
func saysTheSame(a, b *Row) bool {
	if a.reading != b.reading || a.reading == 0 || a.measured || len(a.Twins) != len(b.Twins) || len(a.Ends) != len(b.Ends) {
		return false
	}
	for i, twin := range a.Twins {
		if twin.ID != b.Twins[i].ID {
			return false
		}
	}
	for i := range a.Ends {
		like, other := a.Ends[i].Like, b.Ends[i].Like
		if like == nil && other == nil {
			continue
		}
		if like == nil || other == nil || like.reading != other.reading || like.reading == 0 || like.measured {
			return false
		}
	}
	return true
}

// write appends the pieces of rows to a text, those it has from before and, by one, those it
// has not, and gives where they stand. The text of what it gives is to be set when the whole
// of it is written. Before it, nothing may be known: nil.
func (before *pieces) write(b []byte, rows []*Row, between separator, one func([]byte, *Row) []byte) ([]byte, *pieces) {
	out := &pieces{first: len(b), ends: make([]int, 0, len(rows)), rows: rows}
	next, where := 0, map[uint64]int(nil)
	for n := 0; n < len(rows); {
		if n > 0 && between > 0 {
			b = append(b, ',')
		}
		from := before.find(rows[n], next, &where)
		if from < 0 {
			b = one(b, rows[n])
			out.ends = append(out.ends, len(b))
			n++
			next++
			continue
		}
		next = from
		start, shift := before.start(from, between), len(b)-before.start(from, between)
		for n < len(rows) && next < len(before.rows) && saysTheSame(before.rows[next], rows[n]) {
			out.ends = append(out.ends, before.ends[next]+shift)
			n++
			next++
		}
		b = append(b, before.text[start:before.ends[next-1]]...)
	}
	return b, out
}

// find gives the place of a row that says the same, at the one expected or anywhere; negative
// when there is none.
func (before *pieces) find(row *Row, expected int, where *map[uint64]int) int {
	if before == nil || row.reading == 0 {
		return -1
	}
	if expected < len(before.rows) && saysTheSame(before.rows[expected], row) {
		return expected
	}
	if *where == nil {
		*where = make(map[uint64]int, len(before.rows))
		for n, old := range before.rows {
			(*where)[old.reading] = n
		}
	}
	if n, there := (*where)[row.reading]; there && saysTheSame(before.rows[n], row) {
		return n
	}
	return -1
}

// same gives the pieces of rows whose very text is kept; nil when it is another. They know
// these rows from now on, so that nothing of an older chart is held.
func (before *pieces) same(rows []*Row) *pieces {
	if before == nil || len(before.rows) != len(rows) {
		return nil
	}
	for n, row := range rows {
		if !saysTheSame(before.rows[n], row) {
			return nil
		}
	}
	out := *before
	out.rows = rows
	return &out
}

// size is how much room the text will want, more or less.
func (before *pieces) size(unknown int) int {
	const more = 4096
	if before == nil {
		return unknown + more
	}
	return len(before.text) + more
}
