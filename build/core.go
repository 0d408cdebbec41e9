package build

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"strconv"

	"capspan/build/diag"
	"capspan/static"
	"capspan/static/matcher"
)

// A large chart is given to the core in pieces, of which a question takes those it touches:
// to read a hundred thousand rows takes the machine longer than all the questions. Up to
// largeRows it makes no difference that could be felt (BenchmarkCore).
const (
	// pieceRows is how many rows a piece has that is fetched (the table in DEVELOPERS.md): fewer
	// make more files and a longer directory, of more much is fetched in vain.
	pieceRows = 450
	// handRows is how many a piece has that lies at hand: goja takes longer to unpack rows that
	// are not needed than to look where they are.
	handRows = 120
)

// coreFor bundles the core as charts of so many rows need it.
func coreFor(fsys fs.FS, rows int) ([]byte, diag.List) {
	if rows <= largeRows {
		return static.Core(fsys)
	}
	return static.Pieced(fsys)
}

// newMatcher gives a chart to the core that [coreFor] bundled for it, or for a larger one.
func newMatcher(core []byte, chart matcher.Chart) (*matcher.Matcher, error) {
	if len(chart.Rows) <= largeRows {
		return matcher.New(core, chart)
	}
	directory, pieces, err := atHand(chart)
	if err != nil {
		return nil, err
	}
	return compiled{core: core, chart: directory, pieces: pieces}.matcher()
}

// atHand cuts a large chart for whoever has all of it: the directory, and the pieces by name.
func atHand(chart matcher.Chart) (directory []byte, pieces map[string][]byte, err error) {
	pieces = map[string][]byte{}
	made, err := matcher.Split(chart, handRows, func(p matcher.Piece) (string, error) {
		name := strconv.Itoa(len(pieces))
		text, err := p.MarshalJSON() // what [json.Marshal] gives, without a look at it
		pieces[name] = text
		return name, err
	})
	if err != nil {
		return nil, nil, fmt.Errorf("cut the chart into pieces: %w", err)
	}
	if directory, err = json.Marshal(made); err != nil {
		return nil, nil, fmt.Errorf("write the directory of the chart: %w", err)
	}
	return directory, pieces, nil
}
