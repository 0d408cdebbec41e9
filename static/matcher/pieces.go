package matcher

import (
	"fmt"
	"slices"
	"strings"
)

// Directory is what is fetched first of a chart in pieces (pieces-types.ts). All its
// numbers are whole.
type Directory struct {
	Format      int             `json:"format"` // 3
	Version     string          `json:"version"`
	Plain       int             `json:"plain"`
	Faces       [][]string      `json:"faces"`
	Kinds       []directoryKind `json:"kinds"`
	Sizes       [][]any         `json:"sizes"`
	Conversions [][]any         `json:"conversions"`
	Tables      [][2]string     `json:"tables"`
	InTables    []int           `json:"inTables"`
	Written     []written       `json:"written"`
	Grains      []grain         `json:"grains"`
	Grain       []int           `json:"grain"`
	Entries     entries         `json:"entries"`
	Pieces      []int           `json:"pieces,omitempty"`
	Bytes       [3]int          `json:"bytes"`
}

// entries is what there is to say of each piece, or of each part of a directory.
type entries struct {
	Names  string   `json:"names"`
	Cap    [2][]int `json:"cap"`
	Across [2][]int `json:"across"`
}

// Piece is one file of a chart: some hundred rows as lists of numbers, their names, or a part
// of the directory.
type Piece struct{ text []byte }

// MarshalJSON returns the bytes of the file.
func (p Piece) MarshalJSON() ([]byte, error) { return p.text, nil }

// mostInOne is how many pieces stand in the directory itself. Of more it holds the parts in
// which they stand: so it does not grow as the chart does, for one more turn of fetching.
const mostInOne = 64

// Split cuts a chart into pieces of at most so many rows, but never a size in two. Name is
// given every file there is beside the directory; one that another leads to comes before it.
func Split(chart Chart, most int, name func(Piece) (string, error)) (Directory, error) {
	s := splitter{chart: chart, name: name}
	if err := s.read(); err != nil {
		return Directory{}, err
	}
	s.out = Directory{Format: 3, Version: chart.Version, Faces: s.faces(), Tables: s.tables, InTables: s.inTables, Written: s.ways}
	s.weigh()
	s.kinds()
	if err := s.files(cut(s.entities(), most)); err != nil {
		return Directory{}, err
	}
	return s.out, nil
}

// The kinds of files, as Directory.Bytes has them.
const (
	pieceFile = iota
	rollFile
	partFile
)

// files names all files, and enters them where they are looked for.
func (s *splitter) files(parts [][][]*entity) error {
	var pieces, whole register
	deep := 0
	for _, part := range parts {
		deep += len(part)
	}
	for _, part := range parts {
		var own register
		for _, group := range part {
			w := s.piece(group)
			roll, err := s.file(rollFile, w.roll())
			if err != nil {
				return err
			}
			called, err := s.file(pieceFile, w.text(roll))
			if err != nil {
				return err
			}
			own.add(called, boundsOf(group))
		}
		pieces.join(own)
		if deep <= mostInOne {
			continue
		}
		called, err := s.file(partFile, appendJSON(nil, own.entries()))
		if err != nil {
			return err
		}
		whole.add(called, boundsOf(slices.Concat(part...)))
		s.out.Pieces = append(s.out.Pieces, len(part))
	}
	if deep <= mostInOne {
		whole = pieces
	}
	s.out.Entries = whole.entries()
	list, of := grainsOf(whole.bounds)
	s.out.Grains, s.out.Grain = list, steps(of)
	return nil
}

func (s *splitter) file(kind int, text []byte) (string, error) {
	called, err := s.name(Piece{text})
	if err != nil {
		return "", err
	}
	if called == "" || strings.ContainsAny(called, " \n") {
		return "", fmt.Errorf("a piece is called %q, want a word", called)
	}
	s.out.Bytes[kind] += len(text)
	return called, nil
}

// register lists files with what lies in them.
type register struct {
	names  []string
	bounds []entity
}

func (r *register) add(name string, bounds entity) {
	r.names, r.bounds = append(r.names, name), append(r.bounds, bounds)
}

func (r *register) join(other register) {
	r.names, r.bounds = append(r.names, other.names...), append(r.bounds, other.bounds...)
}

func (r *register) entries() entries {
	return entries{Names: strings.Join(r.names, " "), Cap: stretch(r.bounds, 0), Across: stretch(r.bounds, 1)}
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
	chart    Chart
	name     func(Piece) (string, error)
	rows     []row
	tables   [][2]string
	inTables []int // how many rows each has
	ways     []written
	out      Directory
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
