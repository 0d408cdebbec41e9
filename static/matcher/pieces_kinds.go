package matcher

import (
	"cmp"
	"fmt"
	"math"
	"strconv"
)

// directoryKind says where the ends of plain rows lie that are held alike (absent.ts).
type directoryKind struct {
	Hold  Hold     `json:"hold"`
	Faces Faces    `json:"faces"`
	Cells [][3]int `json:"cells"`
	Caps  [][4]any `json:"caps"`
}

// How wide a cell is, mm: half of absent-spread-cap and absent-spread-across of the
// method. Were they others, answers would not be those of the whole chart.
const (
	capCell    = 1.5
	acrossCell = 5
)

// kinds counts the ends of plain rows: by the cell they lie in, and by their cap.
func (s *splitter) kinds() error {
	type kind struct {
		at    int // among the kinds, in the order they are met
		cells map[[2]int]int
		caps  map[[3]any]int
	}
	found := map[[2]string]*kind{}
	s.out.Kinds = []directoryKind{}
	for _, row := range s.chart.Rows {
		if len(row.Ends) != 1 {
			continue
		}
		end := row.Ends[0]
		name := [2]string{string(end.Hold), string(end.Faces)}
		k := found[name]
		if k == nil {
			k = &kind{at: len(s.out.Kinds), cells: map[[2]int]int{}, caps: map[[3]any]int{}}
			found[name] = k
			s.out.Kinds = append(s.out.Kinds, directoryKind{Hold: end.Hold, Faces: end.Faces, Cells: [][3]int{}, Caps: [][4]any{}})
		}
		to := &s.out.Kinds[k.at]
		c, err1 := cellOf(end.Cap, capCell)
		a, err2 := cellOf(end.Across, acrossCell)
		if err1 != nil || err2 != nil {
			return fmt.Errorf("%s: %w", row.Ref, cmp.Or(err1, err2))
		}
		place, known := k.cells[[2]int{c, a}]
		if !known {
			place = len(to.Cells)
			k.cells[[2]int{c, a}] = place
			to.Cells = append(to.Cells, [3]int{c, a, 0})
		}
		to.Cells[place][2]++
		if end.Cap == nil {
			continue
		}
		as, n, err := s.place(end.Cap.lead())
		if err != nil {
			return fmt.Errorf("%s: %w", row.Ref, err)
		}
		alike := [3]any{letter(as), n, sign(pieceBases, end.Cap.Basis)}
		place, known = k.caps[alike]
		if !known {
			place = len(to.Caps)
			k.caps[alike] = place
			to.Caps = append(to.Caps, [4]any{alike[0], alike[1], alike[2], 0})
		}
		to.Caps[place][3] = to.Caps[place][3].(int) + 1
	}
	return nil
}

// cellOf is 0 for no figure.
func cellOf(v *ChartValue, wide float64) (int, error) {
	if v == nil {
		return 0, nil
	}
	mm, err := strconv.ParseFloat(v.MM, 64)
	if err != nil {
		return 0, err
	}
	return int(math.Floor(mm/wide)) + 1, nil
}
