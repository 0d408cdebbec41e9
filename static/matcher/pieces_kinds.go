package matcher

import (
	"cmp"
	"maps"
	"math"
	"slices"
)

// directoryKind says where the ends of plain rows lie that are held alike (absent.ts).
type directoryKind struct {
	Hold  Hold     `json:"hold"`
	Faces Faces    `json:"faces"`
	Cells [3][]int `json:"cells"`
	Caps  figures  `json:"caps"`
	Alike []int    `json:"alike"`
}

// How wide a cell is, mm: half of absent-spread-cap and absent-spread-across of the
// method. Were they others, answers would not be those of the whole chart.
const (
	capCell    = 1.5
	acrossCell = 5
)

// kinds counts the ends of plain rows: by the cell they lie in, and by their cap.
func (s *splitter) kinds() {
	type counts struct {
		cells map[[2]int]int
		caps  map[figure]int
	}
	found := map[[2]byte]*counts{}
	for n := range s.rows {
		if len(s.rows[n].ends) != 1 {
			continue
		}
		end := &s.rows[n].ends[0]
		name := [2]byte{end.hold, end.faces}
		k := found[name]
		if k == nil {
			k = &counts{map[[2]int]int{}, map[figure]int{}}
			found[name] = k
		}
		k.cells[[2]int{cellOf(&end.values[0], capCell), cellOf(&end.values[1], acrossCell)}]++
		if end.values[0].there {
			k.caps[end.values[0].lead]++
		}
	}
	s.out.Kinds = []directoryKind{}
	for _, name := range slices.SortedFunc(maps.Keys(found), func(a, b [2]byte) int { return slices.Compare(a[:], b[:]) }) {
		kind := directoryKind{Hold: Holds[name[0]], Faces: pieceFaces[name[1]], Cells: [3][]int{{}, {}, {}}, Alike: []int{}}
		for _, cell := range slices.SortedFunc(maps.Keys(found[name].cells), func(a, b [2]int) int { return slices.Compare(a[:], b[:]) }) {
			for i, n := range [3]int{cell[0], cell[1], found[name].cells[cell]} {
				kind.Cells[i] = append(kind.Cells[i], n)
			}
		}
		kind.Cells[0], kind.Cells[1] = steps(kind.Cells[0]), steps(kind.Cells[1])
		w := newFigureWriter()
		for _, cap := range slices.SortedFunc(maps.Keys(found[name].caps), compareFigures) {
			w.add(cap)
			kind.Alike = append(kind.Alike, found[name].caps[cap])
		}
		kind.Caps = w.out()
		s.out.Kinds = append(s.out.Kinds, kind)
	}
}

func compareFigures(a, b figure) int {
	return cmp.Or(cmp.Compare(a.as, b.as), cmp.Compare(a.n, b.n), cmp.Compare(a.basis, b.basis))
}

// cellOf is 0 for no figure.
func cellOf(v *value, wide float64) int {
	if !v.there {
		return 0
	}
	return int(math.Floor(v.lead.mm/wide)) + 1
}
