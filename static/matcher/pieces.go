package matcher

import (
	"cmp"
	"fmt"
	"maps"
	"math/big"
	"slices"
	"strconv"
	"strings"
)

// Directory is what is fetched first of a chart in pieces (pieces-types.ts).
type Directory struct {
	Format      int                        `json:"format"` // 2
	Version     string                     `json:"version"`
	Plain       int                        `json:"plain"`
	Faces       map[Hold][]Faces           `json:"faces"`
	Halves      map[string]map[Basis]Exact `json:"halves"`
	Kinds       []directoryKind            `json:"kinds"`
	Sizes       [][]any                    `json:"sizes"`
	Conversions [][]any                    `json:"conversions"`
	Tables      [][2]string                `json:"tables"`
	Written     [][3]any                   `json:"written"`
	Pieces      [][5]any                   `json:"pieces"`
}

// Exact is a decimal that goes to the core digit by digit.
type Exact string

// MarshalJSON writes the digits.
func (e Exact) MarshalJSON() ([]byte, error) { return []byte(e), nil }

// Piece is some hundred rows, as lists of numbers.
type Piece struct {
	Index      []int    `json:"index"`
	Names      []string `json:"names"`
	Also       [][]any  `json:"also"`
	Table      []int    `json:"table"`
	Size       []int    `json:"size"`
	Basis      string   `json:"basis"`
	Two        []int    `json:"two"`
	Hold       string   `json:"hold"`
	HoldBasis  string   `json:"holdBasis"`
	Faces      string   `json:"faces"`
	FacesBasis string   `json:"facesBasis"`
	Cap        figures  `json:"cap"`
	Across     figures  `json:"across"`
	Others     [][]any  `json:"others"`
}

type figures struct {
	Written string `json:"written"`
	N       []int  `json:"n"`
	Basis   string `json:"basis"`
}

// The words behind the signs, in the order of pieces-types.ts and words.ts.
var (
	pieceBases = []Basis{"memory", "common-practice", "measured", "published"}
	pieceFaces = []Faces{"over-caps", "groove-inner", "groove-outer", "under-plates", "hole-centres", "wing-outer", "unknown"}
)

// Split cuts a chart into pieces of at most so many rows, but never a size in two. Name
// is given each piece, in the order in which the directory has them, and says what it is
// called.
func Split(chart Chart, most int, name func(Piece) (string, error)) (Directory, error) {
	s := splitter{chart: chart, tables: map[string]int{}, written: map[[3]any]int{}}
	if err := s.count(); err != nil {
		return Directory{}, err
	}
	if err := s.kinds(); err != nil {
		return Directory{}, err
	}
	for _, group := range cut(s.entities(), most) {
		piece, err := s.piece(group)
		if err != nil {
			return Directory{}, err
		}
		called, err := name(piece)
		if err != nil {
			return Directory{}, err
		}
		b := boundsOf(group)
		s.out.Pieces = append(s.out.Pieces, [5]any{b.cap.least(), b.cap.greatest(), b.across.least(), b.across.greatest(), called})
	}
	return s.out, nil
}

// splitter is a chart being cut.
type splitter struct {
	chart   Chart
	out     Directory
	tables  map[string]int // by id, place in the directory
	written map[[3]any]int // place in the directory
}

// count fills what the directory says of the whole chart.
func (s *splitter) count() error {
	s.out = Directory{Format: 2, Version: s.chart.Version, Faces: map[Hold][]Faces{},
		Halves: map[string]map[Basis]Exact{"cap": {}, "across": {}}, Sizes: [][]any{}, Conversions: [][]any{}, Tables: [][2]string{}, Written: [][3]any{}, Pieces: [][5]any{}}
	standings, conversions := map[int][]standing{}, map[standing]int{}
	for _, row := range s.chart.Rows {
		id, _, _ := strings.Cut(row.Ref, "/")
		if _, known := s.tables[id]; !known {
			s.tables[id] = len(s.tables)
			s.out.Tables = append(s.out.Tables, [2]string{id, row.Table})
		}
		for _, end := range row.Ends {
			if !slices.Contains(Holds, end.Hold) || !slices.Contains(pieceFaces, end.Faces) {
				return fmt.Errorf("%s: held by %q, measured at %q: a piece has no sign for that", row.Ref, end.Hold, end.Faces)
			}
			if !slices.Contains(s.out.Faces[end.Hold], end.Faces) {
				s.out.Faces[end.Hold] = append(s.out.Faces[end.Hold], end.Faces)
			}
			for quantity, value := range map[string]*ChartValue{"cap": end.Cap, "across": end.Across} {
				if err := s.coarsest(quantity, value); err != nil {
					return fmt.Errorf("%s: %w", row.Ref, err)
				}
			}
		}
		if len(row.Ends) == 2 {
			conversions[standingOf(row)]++
			continue
		}
		s.out.Plain++
		if stands := standingOf(row); !slices.Contains(standings[row.Size], stands) {
			standings[row.Size] = append(standings[row.Size], stands)
		}
	}
	for stands, count := range sorted(conversions) {
		s.out.Conversions = append(s.out.Conversions, []any{count, stands})
	}
	groups := map[string]int{}
	lists := map[string][]standing{}
	for _, list := range standings {
		slices.SortFunc(list, standing.compare)
		key := fmt.Sprint(list)
		groups[key]++
		lists[key] = list
	}
	for _, key := range slices.Sorted(maps.Keys(groups)) {
		group := []any{groups[key]}
		for _, stands := range lists[key] {
			group = append(group, stands)
		}
		s.out.Sizes = append(s.out.Sizes, group)
	}
	return nil
}

// coarsest keeps the greatest half of a last digit that figures of a basis have.
func (s *splitter) coarsest(quantity string, value *ChartValue) error {
	if value == nil {
		return nil
	}
	for _, figure := range append([]OtherValue{value.lead()}, value.Others...) {
		half, ok := new(big.Rat).SetString(figure.Half)
		if !ok {
			return fmt.Errorf("half of the last digit of %s is %q, which is no number", figure.Text, figure.Half)
		}
		before, known := new(big.Rat).SetString(string(s.out.Halves[quantity][figure.Basis]))
		if !known || half.Cmp(before) > 0 {
			s.out.Halves[quantity][figure.Basis] = Exact(figure.Half)
		}
	}
	return nil
}

func (v *ChartValue) lead() OtherValue {
	return OtherValue{MM: v.MM, Half: v.Half, Text: v.Text, Unit: v.Unit, Basis: v.Basis}
}

// standing is what a row weighs before measuring: its weakest basis, and how many of its
// holds and faces are unknown.
type standing struct {
	basis Basis
	open  int
}

// MarshalJSON writes a pair.
func (s standing) MarshalJSON() ([]byte, error) {
	return fmt.Appendf(nil, "[%q,%d]", s.basis, s.open), nil
}

func (s standing) compare(t standing) int {
	return cmp.Or(cmp.Compare(s.basis, t.basis), cmp.Compare(s.open, t.open))
}

func standingOf(row ChartRow) standing {
	stands := standing{basis: row.Basis}
	weaken := func(v *ChartValue) {
		if v != nil && slices.Index(pieceBases, v.Basis) < slices.Index(pieceBases, stands.basis) {
			stands.basis = v.Basis
		}
	}
	for _, end := range row.Ends {
		weaken(end.Cap)
		weaken(end.Across)
		if end.Hold == "unknown" {
			stands.open++
		}
		if end.Faces == "unknown" {
			stands.open++
		}
	}
	return stands
}

func sorted(counts map[standing]int) func(func(standing, int) bool) {
	return func(yield func(standing, int) bool) {
		for _, stands := range slices.SortedFunc(maps.Keys(counts), standing.compare) {
			if !yield(stands, counts[stands]) {
				return
			}
		}
	}
}

// asWritten takes a figure's digits apart: how they are written, and the whole number they
// are without point, or the top of the fraction. It says so when they could not be put
// together again.
func asWritten(figure OtherValue) (how [3]any, n int, err error) {
	text := figure.Text
	if whole, part, mixed := strings.Cut(text, " "); mixed || strings.Contains(text, "/") {
		if !mixed {
			whole, part = "0", text
		}
		top, bottom, _ := strings.Cut(part, "/")
		w, err1 := strconv.Atoi(whole)
		t, err2 := strconv.Atoi(top)
		over, err3 := strconv.Atoi(bottom)
		if err := cmp.Or(err1, err2, err3); err != nil {
			return how, 0, fmt.Errorf("%q is no fraction: %w", text, err)
		}
		return [3]any{string(figure.Unit), 0, over}, w*over + t, nil
	}
	whole, part, _ := strings.Cut(text, ".")
	n, err = strconv.Atoi(whole + part)
	if err != nil {
		return how, 0, fmt.Errorf("%q is no number: %w", text, err)
	}
	return [3]any{string(figure.Unit), len(part), 0}, n, nil
}
