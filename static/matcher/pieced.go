package matcher

import (
	"cmp"
	"encoding/json"
	"fmt"
	"strings"

	"github.com/dop251/goja"

	"capspan/static"
)

// Fetch returns a piece of a chart by its name in the directory.
type Fetch func(name string) ([]byte, error)

// pieces are what a Matcher has of a chart that is not held whole.
type pieces struct {
	exports *goja.Object
	opened  goja.Value
	names   []string
	fetch   Fetch
	failed  error // what kept a piece from the core that asked for it
}

// NewPieced is [New] for a chart in pieces, of which it fetches what questions touch, as a
// browser does: a question is asked again when the pieces it lacked have come. The bundle
// ends with the script of pieces ([static.Pieced]); the directory is as [Split] gave it,
// written as JSON.
func NewPieced(bundle, directory []byte, fetch Fetch) (*Matcher, error) {
	return newPieced(bundle, directory, fetch, false)
}

// NewAtHand is [NewPieced] for pieces that lie at hand: the core takes each when it comes
// upon it, and is asked once.
func NewAtHand(bundle, directory []byte, fetch Fetch) (*Matcher, error) {
	return newPieced(bundle, directory, fetch, true)
}

func newPieced(bundle, directory []byte, fetch Fetch, atHand bool) (*Matcher, error) {
	version, names, err := Contents(directory)
	if err != nil {
		return nil, err
	}
	m, err := started(bundle)
	if err != nil {
		return nil, err
	}
	m.version = version
	exports := m.vm.Get(static.PiecesName)
	if exports == nil || goja.IsUndefined(exports) {
		return nil, fmt.Errorf("load the core: the bundle does not define %s", static.PiecesName)
	}
	m.pieces = &pieces{exports: exports.ToObject(m.vm), names: names, fetch: fetch}
	if m.chart, err = m.parse(directory); err != nil {
		return nil, fmt.Errorf("read the directory of the chart: %w", err)
	}
	args := []goja.Value{m.chart}
	if atHand {
		args = append(args, m.vm.ToValue(m.take))
	}
	m.pieces.opened, err = m.apply(m.pieces.exports, "open", args...)
	return m, err
}

// Contents reads which chart a directory is of, and what its pieces are called.
func Contents(directory []byte) (version string, names []string, err error) {
	var read struct {
		Version string `json:"version"`
		Pieces  struct {
			Names string `json:"names"`
		} `json:"pieces"`
	}
	if err := json.Unmarshal(directory, &read); err != nil {
		return "", nil, fmt.Errorf("read the directory of the chart: %w", err)
	}
	return read.Version, strings.Fields(read.Pieces.Names), nil
}

// ask puts a query to the core until no piece is missing.
func (m *Matcher) ask(query goja.Value) (goja.Value, error) {
	for range len(m.pieces.names) + 1 {
		m.pieces.failed = nil
		value, err := m.apply(m.pieces.exports, "ask", m.pieces.opened, query)
		if err != nil {
			return nil, cmp.Or(m.pieces.failed, err)
		}
		missing, ok := value.Export().([]any)
		if !ok {
			return value, nil
		}
		for _, n := range missing {
			if err := m.fetch(n); err != nil {
				return nil, err
			}
		}
	}
	return nil, fmt.Errorf("internal error: the core asks for pieces without end")
}

// fetch gives the core a piece that it says is missing.
func (m *Matcher) fetch(which any) error {
	piece, err := m.piece(which)
	if err != nil {
		return err
	}
	_, err = m.apply(m.pieces.exports, "add", m.pieces.opened, m.vm.ToValue(which), piece)
	return err
}

// take is called by the core for a piece at hand. What goes wrong ends the question.
func (m *Matcher) take(call goja.FunctionCall) goja.Value {
	piece, err := m.piece(call.Argument(0).Export())
	if err != nil {
		m.pieces.failed = err
		panic(m.vm.NewGoError(err))
	}
	return piece
}

func (m *Matcher) piece(which any) (goja.Value, error) {
	n, ok := which.(int64)
	if !ok || n < 0 || int(n) >= len(m.pieces.names) {
		return nil, fmt.Errorf("internal error: the core asks for piece %v", which)
	}
	name := m.pieces.names[n]
	text, err := m.pieces.fetch(name)
	if err != nil {
		return nil, fmt.Errorf("fetch piece %s of the chart: %w", name, err)
	}
	piece, err := m.parse(text)
	if err != nil {
		return nil, fmt.Errorf("read piece %s of the chart: %w", name, err)
	}
	return piece, nil
}
