package matcher

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// row is a row of the chart in numbers: words by their places in lists, figures as whole
// numbers.
type row struct {
	size  int
	basis byte
	ends  []end
}

type end struct {
	hold, holdBasis, faces, facesBasis byte
	values                             [2]value // cap, across
}

// value is what is given of a quantity: nothing, or a figure and others beside it.
type value struct {
	there  bool
	lead   figure
	others []figure
}

// figure is a whole number and how it is written.
type figure struct {
	n     int
	mm    float64
	as    int // place among the ways
	basis byte
}

// written is how a figure is written: with so many decimals, or as a fraction.
type written struct {
	unit           Unit
	decimals, over int
}

// MarshalJSON writes a triple.
func (w written) MarshalJSON() ([]byte, error) {
	return json.Marshal([]any{w.unit, w.decimals, w.over})
}

func (w written) compare(v written) int {
	return cmp.Or(cmp.Compare(w.unit, v.unit), cmp.Compare(w.over, v.over), cmp.Compare(w.decimals, v.decimals))
}

// parts is how many of its last digit make one.
func (w written) parts() int {
	parts := max(w.over, 1)
	for range w.decimals {
		parts *= 10
	}
	return parts
}

// mm and half divide whole numbers once, as the core does.
func (w written) mm(n int) float64 {
	if w.unit == "in" {
		return float64(n*254) / float64(10*w.parts())
	}
	return float64(n) / float64(w.parts())
}

func (w written) half() float64 {
	if w.unit == "in" {
		return 254 / float64(20*w.parts())
	}
	return 1 / float64(2*w.parts())
}

// coarse is half of the last digit, µm, upwards.
func (w written) coarse() int { return int(math.Ceil(w.half() * 1000)) }

// The words behind the signs, in the order of pieces-types.ts and words.ts.
var (
	pieceBases = []Basis{"memory", "common-practice", "measured", "published"}
	pieceFaces = []Faces{"over-caps", "groove-inner", "groove-outer", "under-plates", "hole-centres", "wing-outer", "unknown"}
)

// read makes numbers of the chart. It says so where they could not be put together again.
func (s *splitter) read() error {
	s.rows = make([]row, len(s.chart.Rows))
	ends := make([]end, 0, len(s.chart.Rows)*5/4)
	ways := map[written]int{}
	for n := range s.chart.Rows {
		from := &s.chart.Rows[n]
		id, name, _ := strings.Cut(from.Ref, "/")
		if name != from.Name || strings.ContainsRune(name, '\n') {
			return fmt.Errorf("%s: its name %q is not the one in its ref", from.Ref, from.Name)
		}
		if len(from.Ends) < 1 || len(from.Ends) > 2 {
			return fmt.Errorf("%s: it has %d ends, want one or two", from.Ref, len(from.Ends))
		}
		if last := len(s.tables) - 1; last >= 0 && s.tables[last] == [2]string{id, from.Table} {
			s.inTables[last]++
		} else {
			s.tables, s.inTables = append(s.tables, [2]string{id, from.Table}), append(s.inTables, 1)
		}
		r := signs{ways: ways}
		to := row{size: from.Size, basis: r.sign(pieceBases, from.Basis)}
		first := len(ends)
		for i := range from.Ends {
			ends = append(ends, r.end(&from.Ends[i]))
		}
		if r.err != nil {
			return fmt.Errorf("%s: %w", from.Ref, r.err)
		}
		to.ends = ends[first:len(ends):len(ends)]
		s.rows[n] = to
	}
	s.sortWays(ways)
	return nil
}

// sortWays numbers the ways to write a figure in an order that does not follow from the rows.
func (s *splitter) sortWays(met map[written]int) {
	s.ways = make([]written, 0, len(met))
	for way := range met {
		s.ways = append(s.ways, way)
	}
	slices.SortFunc(s.ways, written.compare)
	place := make([]int, len(met))
	for n, way := range s.ways {
		place[met[way]] = n
	}
	for n := range s.rows {
		for i := range s.rows[n].ends {
			for q := range s.rows[n].ends[i].values {
				v := &s.rows[n].ends[i].values[q]
				v.lead.as = place[v.lead.as]
				for o := range v.others {
					v.others[o].as = place[v.others[o].as]
				}
			}
		}
	}
}

// signs reads the words and digits of a row; err is the first that could not be.
type signs struct {
	ways map[written]int
	err  error
}

func (s *signs) end(from *ChartEnd) end {
	return end{
		hold: s.sign(Holds, from.Hold), holdBasis: s.sign(pieceBases, from.HoldBasis),
		faces: s.sign(pieceFaces, from.Faces), facesBasis: s.sign(pieceBases, from.FacesBasis),
		values: [2]value{s.value(from.Cap), s.value(from.Across)},
	}
}

// sign is the place of a word in its list.
func (s *signs) sign(list []string, word string) byte {
	n := slices.Index(list, word)
	if n < 0 && s.err == nil {
		s.err = fmt.Errorf("a piece has no sign for %q", word)
	}
	return byte(n)
}

func (s *signs) value(from *ChartValue) value {
	if from == nil {
		return value{}
	}
	out := value{there: true, lead: s.figure(from.MM, from.Half, from.Text, from.Unit, from.Basis)}
	for _, o := range from.Others {
		out.others = append(out.others, s.figure(o.MM, o.Half, o.Text, o.Unit, o.Basis))
	}
	return out
}

func (s *signs) figure(mm, half, text string, unit Unit, basis Basis) figure {
	way, n, err := asWritten(text, unit)
	if err != nil {
		s.err = cmp.Or(s.err, err)
		return figure{}
	}
	as, known := s.ways[way]
	if !known {
		as = len(s.ways)
		s.ways[way] = as
	}
	out := figure{n: n, mm: way.mm(n), as: as, basis: s.sign(pieceBases, basis)}
	given, err1 := strconv.ParseFloat(mm, 64)
	coarse, err2 := strconv.ParseFloat(half, 64)
	if s.err == nil && (err1 != nil || err2 != nil || given != out.mm || coarse != way.half()) {
		s.err = fmt.Errorf("%s %s is not %s mm, of which half a last digit is %s mm", text, unit, mm, half)
	}
	return out
}

// asWritten takes digits apart: how they are written, and the whole number they are
// without point, or the top of the fraction.
func asWritten(text string, unit Unit) (way written, n int, err error) {
	whole, part, mixed := strings.Cut(text, " ")
	if mixed || strings.Contains(text, "/") {
		if !mixed {
			whole, part = "0", text
		}
		top, bottom, _ := strings.Cut(part, "/")
		w, err1 := strconv.Atoi(whole)
		t, err2 := strconv.Atoi(top)
		over, err3 := strconv.Atoi(bottom)
		if err := cmp.Or(err1, err2, err3); err != nil || over < 1 {
			return way, 0, fmt.Errorf("%q is no fraction", text)
		}
		return written{unit, 0, over}, w*over + t, nil
	}
	whole, part, _ = strings.Cut(text, ".")
	n, err = strconv.Atoi(whole + part)
	if err != nil {
		return way, 0, fmt.Errorf("%q is no number: %w", text, err)
	}
	return written{unit, len(part), 0}, n, nil
}
