package tables

import "bytes"

// RowTexts gives each row's lines of the file, with what stands between it and the next:
// all that the file says of the row. A row whose text and table head are as they were, and
// whose twins and like rows are, is the same row.
func (t *Table) RowTexts() [][]byte {
	starts := lineStarts(t.source)
	at := func(line int) int {
		if line < 1 || line > len(starts) {
			return len(t.source)
		}
		return starts[line-1]
	}
	texts := make([][]byte, len(t.Rows))
	for n, row := range t.Rows {
		from, to := at(row.Pos.Line), len(t.source)
		if n+1 < len(t.Rows) {
			to = at(max(t.Rows[n+1].Pos.Line, row.Pos.Line+1))
		}
		texts[n] = t.source[from:max(from, to)]
	}
	return texts
}

// Head is the text of a table's file before its first row.
func (t *Table) Head() []byte {
	starts := lineStarts(t.source)
	if len(t.Rows) == 0 || t.Rows[0].Pos.Line < 1 || t.Rows[0].Pos.Line > len(starts) {
		return t.source
	}
	return t.source[:starts[t.Rows[0].Pos.Line-1]]
}

// lineStarts are where the lines of a text begin.
func lineStarts(text []byte) []int {
	starts := []int{0}
	for at := 0; ; {
		n := bytes.IndexByte(text[at:], '\n')
		if n < 0 {
			return starts
		}
		at += n + 1
		starts = append(starts, at)
	}
}

// WrittenAs reports whether the files of two tables are the same, byte by byte.
func (t *Table) WrittenAs(other *Table) bool { return bytes.Equal(t.source, other.source) }
