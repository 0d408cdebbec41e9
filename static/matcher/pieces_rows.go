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
	written string
	n       []int
	basis   string
}

// MarshalJSON writes a triple.
func (f figures) MarshalJSON() ([]byte, error) {
	return json.Marshal([]any{f.written, f.n, f.basis})
}

// piece takes the rows of some entities, size by size in the order of caps and acrosses, so
// that the steps between them are short.
func (s *splitter) piece(of []*entity) *pieceWriter {
	of = slices.Clone(of)
	slices.SortStableFunc(of, func(a, b *entity) int {
		first, second := &s.rows[a.rows[0]].ends[0], &s.rows[b.rows[0]].ends[0]
		return cmp.Or(
			cmp.Compare(first.values[0].lead.mm, second.values[0].lead.mm),
			cmp.Compare(first.values[1].lead.mm, second.values[1].lead.mm), cmp.Compare(a.rows[0], b.rows[0]))
	})
	// A conversion joint may be here for both its ends: it stands here once.
	of = slices.CompactFunc(of, func(a, b *entity) bool { return a.rows[0] == b.rows[0] })
	w := &pieceWriter{splitter: s, also: [][]any{}, values: [2]figureWriter{newFigureWriter(), newFigureWriter()},
		others: [2]figureWriter{newFigureWriter(), newFigureWriter()}}
	for _, e := range of {
		w.size(e)
	}
	return w
}

// pieceWriter writes one piece, and the roll of its rows.
type pieceWriter struct {
	*splitter
	index, sizes      []int
	names             []string
	also              [][]any
	writing           []rune
	basis             []byte
	holds, holdBases  []byte
	faces, facesBases []byte
	values, others    [2]figureWriter // by quantity
	othersOf          [2][]int        // ends
	ends              int
}

// size writes the rows of a size. Twins that are written alike have their figures once.
func (w *pieceWriter) size(e *entity) {
	var writings [][]end
	for _, at := range e.rows {
		r, from := &w.rows[at], &w.chart.Rows[at]
		if len(from.Also) > 0 {
			also := []any{len(w.index)}
			for _, other := range from.Also {
				also = append(also, other)
			}
			w.also = append(w.also, also)
		}
		w.index, w.names = append(w.index, at), append(w.names, from.Name)
		w.basis = append(w.basis, '0'+r.basis)
		n := slices.IndexFunc(writings, func(ends []end) bool { return slices.EqualFunc(ends, r.ends, alike) })
		if n < 0 {
			n = len(writings)
			writings = append(writings, r.ends)
			for i := range r.ends {
				w.end(&r.ends[i])
			}
		}
		w.writing = append(w.writing, '0'+rune(n))
	}
	if len(w.rows[e.rows[0]].ends) == 2 {
		w.sizes = append(w.sizes, 0)
	} else {
		w.sizes = append(w.sizes, len(e.rows))
	}
}

// alike is whether two ends are written with the same figures and signs.
func alike(a, b end) bool {
	for q := range a.values {
		v, u := &a.values[q], &b.values[q]
		if v.there != u.there || v.lead != u.lead || !slices.Equal(v.others, u.others) {
			return false
		}
	}
	return a.hold == b.hold && a.holdBasis == b.holdBasis && a.faces == b.faces && a.facesBasis == b.facesBasis
}

func (w *pieceWriter) end(end *end) {
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

// text is the piece as JSON, in the order of pieces-types.ts; roll is what its roll is called.
func (w *pieceWriter) text(roll string) []byte {
	b := make([]byte, 0, 24*len(w.index))
	b = append(appendJSON(append(b, '['), roll), ',')
	b = append(appendInts(b, steps(w.index)), ',')
	b = append(appendInts(b, w.sizes), ',')
	b = appendJSON(b, string(w.writing))
	for _, signs := range [][]byte{w.basis, w.holds, w.holdBases, w.faces, w.facesBases} {
		b = append(append(append(b, `,"`...), signs...), '"')
	}
	for q := range w.values {
		b = w.values[q].append(append(b, ','))
	}
	for q := range w.others {
		b = append(appendInts(append(b, `,[`...), steps(w.othersOf[q])), ',')
		b = append(w.others[q].append(b), ']')
	}
	return append(b, ']')
}

// roll is what the rows of the piece are called, as JSON.
func (w *pieceWriter) roll() []byte {
	b := appendJSON([]byte{'['}, strings.Join(w.names, "\n"))
	return append(appendJSON(append(b, ','), w.also), ']')
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
	b = append(append(append(b, `["`...), w.written...), `",`...)
	return append(append(append(appendInts(b, w.n), `,"`...), w.basis...), `"]`...)
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
