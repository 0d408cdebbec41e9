package build

import (
	"encoding/json"
	"maps"
	"slices"

	"capspan/tables"
)

// ChartPiece is one file of a chart in pieces, under the name by which others lead to it.
type ChartPiece struct {
	Name  string
	Bytes []byte
}

// ChartPieces is what a page loads of a chart to identify in it: of a large one the directory
// and all other files, by name, of a small one the whole and no others.
func ChartPieces(set *tables.Set) (first []byte, pieces []ChartPiece, err error) {
	cut := cutOnce(set)
	if cut == nil {
		first, err = json.Marshal(Chart(set))
		return first, nil, err
	}
	made, err := cut()
	if err != nil {
		return nil, nil, err
	}
	for _, name := range slices.Sorted(maps.Keys(made.files)) {
		pieces = append(pieces, ChartPiece{name, made.files[name]})
	}
	return made.in(set), pieces, nil
}
