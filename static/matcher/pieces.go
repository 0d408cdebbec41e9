package matcher

import (
	"fmt"
	"strings"
)

// Directory is what is fetched first of a chart in pieces (pieces-types.ts). All its
// numbers are whole.
type Directory struct {
	Format      int             `json:"format"` // 2
	Version     string          `json:"version"`
	Plain       int             `json:"plain"`
	Faces       [][]string      `json:"faces"`
	Kinds       []directoryKind `json:"kinds"`
	Sizes       [][]any         `json:"sizes"`
	Conversions [][]any         `json:"conversions"`
	Tables      [][2]string     `json:"tables"`
	Written     []written       `json:"written"`
	Grains      []grain         `json:"grains"`
	Pieces      directoryPieces `json:"pieces"`
}

// directoryPieces is what there is to say of each piece.
type directoryPieces struct {
	Names  string   `json:"names"`
	Bytes  []int    `json:"bytes"`
	Grain  []int    `json:"grain"`
	Cap    [2][]int `json:"cap"`
	Across [2][]int `json:"across"`
}

// Piece is some hundred rows, as lists of numbers: one file.
type Piece struct{ text []byte }

// MarshalJSON returns the bytes of the file.
func (p Piece) MarshalJSON() ([]byte, error) { return p.text, nil }

// Split cuts a chart into pieces of at most so many rows, but never a size in two. Name
// is given each piece, in the order in which the directory has them, and says what it is
// called, in a word.
func Split(chart Chart, most int, name func(Piece) (string, error)) (Directory, error) {
	s := splitter{chart: chart}
	if err := s.read(); err != nil {
		return Directory{}, err
	}
	s.out = Directory{Format: 2, Version: chart.Version, Faces: s.faces(), Tables: s.tables, Written: s.ways}
	s.weigh()
	s.kinds()
	groups := cut(s.entities(), most)
	bounds := make([]entity, len(groups))
	names, lengths := make([]string, len(groups)), make([]int, len(groups))
	for n, group := range groups {
		piece := Piece{s.piece(group)}
		called, err := name(piece)
		if err != nil {
			return Directory{}, err
		}
		if called == "" || strings.ContainsAny(called, " \n") {
			return Directory{}, fmt.Errorf("a piece is called %q, want a word", called)
		}
		names[n], lengths[n], bounds[n] = called, len(piece.text), boundsOf(group)
	}
	grains, of := grainsOf(bounds)
	s.out.Grains = grains
	s.out.Pieces = directoryPieces{Names: strings.Join(names, " "), Bytes: steps(lengths), Grain: steps(of),
		Cap: stretch(bounds, 0), Across: stretch(bounds, 1)}
	return s.out, nil
}

// stretch lists the bounds of pieces in cap, or in across.
func stretch(bounds []entity, quantity int) [2][]int {
	least, greatest := make([]int, len(bounds)), make([]int, len(bounds))
	for n := range bounds {
		least[n], greatest[n] = bounds[n].spans[quantity].least(), bounds[n].spans[quantity].greatest()
	}
	return [2][]int{steps(least), steps(greatest)}
}

// splitter is a chart being cut.
type splitter struct {
	chart  Chart
	rows   []row
	tables [][2]string
	ways   []written
	out    Directory
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
