package build

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"

	"capspan/static/matcher"
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
	chart := Chart(set)
	if jointRows(set) <= largeRows {
		first, err = json.Marshal(chart)
		return first, nil, err
	}
	directory, err := matcher.Split(chart, pieceRows, func(p matcher.Piece) (string, error) {
		text, err := json.Marshal(p)
		sum := sha256.Sum256(text)
		pieces = append(pieces, ChartPiece{hex.EncodeToString(sum[:]), text})
		return pieces[len(pieces)-1].Name, err
	})
	if err != nil {
		return nil, nil, fmt.Errorf("cut the chart into pieces: %w", err)
	}
	first, err = json.Marshal(directory)
	return first, pieces, err
}
