package matcher

import (
	"cmp"
	"encoding/json"
	"slices"
	"strconv"
	"strings"
)

// figures are those of one quantity (pieces-types.ts).
type figures struct {
	Written string `json:"written"`
	N       []int  `json:"n"`
	Basis   string `json:"basis"`
}

// piece writes the rows of some entities, size by size in the order of caps and acrosses,
// so that the steps between them are short.
func (s *splitter) piece(of []*entity) []byte {
	of = slices.Clone(of)
	slices.SortStableFunc(of, func(a, b *entity) int {
		first, second := &s.rows[a.rows[0]].ends[0], &s.rows[b.rows[0]].ends[0]
		return cmp.Or(
			cmp.Compare(first.values[0].lead.mm, second.values[0].lead.mm),
			cmp.Compare(first.values[1].lead.mm, second.values[1].lead.mm), cmp.Compare(a.rows[0], b.rows[0]))
	})
	// A conversion joint may be here for both its ends: it stands here once.
	of = slices.CompactFunc(of, func(a, b *entity) bool { return a.rows[0] == b.rows[0] })
	w := pieceWriter{splitter: s, also: [][]any{}, values: [2]figureWriter{newFigureWriter(), newFigureWriter()},
		others: [2]figureWriter{newFigureWriter(), newFigureWriter()}}
	for _, e := range of {
		w.sizes = append(w.sizes, len(e.rows))
		for _, at := range e.rows {
			w.row(at)
		}
	}
	return w.text()
}

// pieceWriter writes one piece, row by row.
type pieceWriter struct {
	*splitter
	index, tables, sizes, two []int
	names                     []string
	also                      [][]any
	basis                     []byte
	holds, holdBases          []byte
	faces, facesBases         []byte
	values, others            [2]figureWriter // by quantity
	othersOf                  [2][]int        // ends
	ends                      int
}

func (w *pieceWriter) row(at int) {
	r, from := &w.rows[at], &w.chart.Rows[at]
	n := len(w.index)
	w.index, w.tables = append(w.index, at), append(w.tables, r.table)
	w.names = append(w.names, from.Name)
	if len(from.Also) > 0 {
		also := []any{n}
		for _, other := range from.Also {
			also = append(also, other)
		}
		w.also = append(w.also, also)
	}
	w.basis = append(w.basis, '0'+r.basis)
	if len(r.ends) == 2 {
		w.two = append(w.two, n)
	}
	for i := range r.ends {
		end := &r.ends[i]
		w.holds, w.holdBases = append(w.holds, '0'+end.hold), append(w.holdBases, '0'+end.holdBasis)
		w.faces, w.facesBases = append(w.faces, '0'+end.faces), append(w.facesBases, '0'+end.facesBasis)
		for q := range end.values {
			v := &end.values[q]
			if !v.there {
				w.values[q].none()
				continue
			}
			w.values[q].add(v.lead)
			for _, other := range v.others {
				w.others[q].add(other)
				w.othersOf[q] = append(w.othersOf[q], w.ends)
			}
		}
		w.ends++
	}
}

// text is the piece as JSON, in the order of pieces-types.ts.
func (w *pieceWriter) text() []byte {
	b := make([]byte, 0, 24*len(w.index))
	b = appendInts(append(b, `{"index":`...), steps(w.index))
	b = appendJSON(append(b, `,"names":`...), strings.Join(w.names, "\n"))
	b = appendJSON(append(b, `,"also":`...), w.also)
	b = appendInts(append(b, `,"table":`...), steps(w.tables))
	b = appendInts(append(b, `,"size":`...), w.sizes)
	b = appendInts(append(b, `,"two":`...), steps(w.two))
	for _, of := range []struct {
		name  string
		signs []byte
	}{{"basis", w.basis}, {"hold", w.holds}, {"holdBasis", w.holdBases}, {"faces", w.faces}, {"facesBasis", w.facesBases}} {
		b = append(append(append(append(append(b, `,"`...), of.name...), `":"`...), of.signs...), '"')
	}
	b = w.values[0].append(append(b, `,"cap":`...))
	b = w.values[1].append(append(b, `,"across":`...))
	for q, name := range []string{`,"others":{"cap":{"end":`, `,"across":{"end":`} {
		b = appendInts(append(b, name...), steps(w.othersOf[q]))
		b = append(w.others[q].append(append(b, `,"figures":`...)), '}')
	}
	return append(b, "}}"...)
}

// figureWriter writes figures one behind the other.
type figureWriter struct {
	written, basis []byte
	n              []int
	last           map[int]int // by how it is written, the number before
}

func newFigureWriter() figureWriter { return figureWriter{n: []int{}, last: map[int]int{}} }

func (w *figureWriter) none() { w.written = append(w.written, ' ') }

func (w *figureWriter) add(f figure) {
	w.written = append(w.written, byte('A'+f.as))
	w.n = append(w.n, f.n-w.last[f.as])
	w.basis = append(w.basis, '0'+f.basis)
	w.last[f.as] = f.n
}

func (w *figureWriter) out() figures { return figures{string(w.written), w.n, string(w.basis)} }

func (w *figureWriter) append(b []byte) []byte {
	b = append(append(append(b, `{"written":"`...), w.written...), `","n":`...)
	return append(append(append(appendInts(b, w.n), `,"basis":"`...), w.basis...), `"}`...)
}

func appendInts(b []byte, list []int) []byte {
	b = append(b, '[')
	for i, n := range list {
		if i > 0 {
			b = append(b, ',')
		}
		b = strconv.AppendInt(b, int64(n), 10)
	}
	return append(b, ']')
}

func appendJSON(b []byte, x any) []byte {
	text, err := json.Marshal(x)
	if err != nil {
		panic("internal error: " + err.Error()) // texts and numbers
	}
	return append(b, text...)
}
