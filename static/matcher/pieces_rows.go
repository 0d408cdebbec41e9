package matcher

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// piece writes the rows of some entities, in the chart's order of caps and acrosses, so
// that the steps between them are short.
func (s *splitter) piece(of []*entity) (Piece, error) {
	var rows []int
	for _, e := range of {
		rows = append(rows, e.rows...)
	}
	slices.SortFunc(rows, func(a, b int) int {
		first, second := s.chart.Rows[a].Ends[0], s.chart.Rows[b].Ends[0]
		return cmp.Or(
			cmp.Compare(leading(first.Cap), leading(second.Cap)),
			cmp.Compare(leading(first.Across), leading(second.Across)), cmp.Compare(a, b))
	})
	rows = slices.Compact(rows)
	w := pieceWriter{splitter: s, piece: Piece{Index: steps(rows), Names: []string{}, Also: [][]any{}, Others: [][]any{}}}
	w.piece.Cap.N, w.piece.Across.N = []int{}, []int{}
	var tables, sizes, two []int
	for n, at := range rows {
		row := s.chart.Rows[at]
		id, name, _ := strings.Cut(row.Ref, "/")
		if name != row.Name {
			return Piece{}, fmt.Errorf("%s: its name %q is not the one in its ref", row.Ref, row.Name)
		}
		w.piece.Names = append(w.piece.Names, name)
		if len(row.Also) > 0 {
			also := []any{n}
			for _, other := range row.Also {
				also = append(also, other)
			}
			w.piece.Also = append(w.piece.Also, also)
		}
		tables, sizes = append(tables, s.tables[id]), append(sizes, row.Size)
		w.piece.Basis += sign(pieceBases, row.Basis)
		if len(row.Ends) == 2 {
			two = append(two, n)
		}
		for _, end := range row.Ends {
			if err := w.end(end); err != nil {
				return Piece{}, fmt.Errorf("%s: %w", row.Ref, err)
			}
		}
	}
	w.piece.Table, w.piece.Size, w.piece.Two = steps(tables), steps(sizes), steps(two)
	return w.piece, nil
}

func leading(v *ChartValue) float64 {
	if v == nil {
		return 0
	}
	mm, err := strconv.ParseFloat(v.MM, 64)
	if err != nil {
		return 0
	}
	return mm
}

// pieceWriter writes one piece, end by end.
type pieceWriter struct {
	*splitter
	piece Piece
	ends  int
	last  [2]map[int]int // by quantity and how it is written, the number before
}

func (w *pieceWriter) end(end ChartEnd) error {
	w.piece.Hold += sign(Holds, end.Hold)
	w.piece.HoldBasis += sign(pieceBases, end.HoldBasis)
	w.piece.Faces += sign(pieceFaces, end.Faces)
	w.piece.FacesBasis += sign(pieceBases, end.FacesBasis)
	if err := w.value(0, "cap", &w.piece.Cap, end.Cap); err != nil {
		return err
	}
	if err := w.value(1, "across", &w.piece.Across, end.Across); err != nil {
		return err
	}
	w.ends++
	return nil
}

func (w *pieceWriter) value(q int, quantity string, to *figures, v *ChartValue) error {
	if v == nil {
		to.Written += " "
		return nil
	}
	as, n, err := w.place(v.lead())
	if err != nil {
		return err
	}
	if w.last[q] == nil {
		w.last[q] = map[int]int{}
	}
	to.Written += letter(as)
	to.N = append(to.N, n-w.last[q][as])
	to.Basis += sign(pieceBases, v.Basis)
	w.last[q][as] = n
	for _, other := range v.Others {
		as, n, err := w.place(other)
		if err != nil {
			return err
		}
		w.piece.Others = append(w.piece.Others, []any{w.ends, quantity, letter(as), n, sign(pieceBases, other.Basis)})
	}
	return nil
}

// place finds how a figure is written among the ways of the directory.
func (s *splitter) place(figure OtherValue) (as, n int, err error) {
	how, n, err := asWritten(figure)
	if err != nil {
		return 0, 0, err
	}
	as, known := s.written[how]
	if !known {
		as = len(s.written)
		s.written[how] = as
		s.out.Written = append(s.out.Written, how)
	}
	return as, n, nil
}

func letter(as int) string { return string(rune('A' + as)) }

// sign is the place of a word in its list, as a digit.
func sign[T comparable](list []T, word T) string {
	return strconv.Itoa(max(slices.Index(list, word), 0))
}

// steps are numbers, each less the one before it.
func steps(list []int) []int {
	out := make([]int, len(list))
	last := 0
	for i, n := range list {
		out[i], last = n-last, n
	}
	return out
}
