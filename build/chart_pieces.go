package build

import (
	"encoding/json"
	"strings"

	"capspan/tables"
)

// ChartPiece is one file of a chart in pieces, under the name the directory has for it.
type ChartPiece struct {
	Name  string
	Bytes []byte
}

// ChartPieces is what a page loads of a chart to identify in it: of a large one the directory
// and the pieces, in its order, of a small one the whole and no pieces.
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
	for _, name := range strings.Fields(made.directory.Pieces.Names) {
		pieces = append(pieces, ChartPiece{name, made.files[name]})
	}
	return made.in(set), pieces, nil
}
