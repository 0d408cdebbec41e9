package matcher

import (
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
}

// NewPieced is [New] for a chart in pieces, of which it fetches what questions touch. The
// bundle ends with the script of pieces ([static.Pieced]); the directory is as [Split]
// gave it, written as JSON.
func NewPieced(bundle, directory []byte, fetch Fetch) (*Matcher, error) {
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
	p := &pieces{exports: exports.ToObject(m.vm), names: names, fetch: fetch}
	if m.chart, err = m.parse(directory); err != nil {
		return nil, fmt.Errorf("read the directory of the chart: %w", err)
	}
	if p.opened, err = m.apply(p.exports, "open", m.chart); err != nil {
		return nil, err
	}
	m.pieces = p
	return m, nil
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
		value, err := m.apply(m.pieces.exports, "ask", m.pieces.opened, query)
		if err != nil {
			return nil, err
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

func (m *Matcher) fetch(which any) error {
	n, ok := which.(int64)
	if !ok || n < 0 || int(n) >= len(m.pieces.names) {
		return fmt.Errorf("internal error: the core asks for piece %v", which)
	}
	name := m.pieces.names[n]
	text, err := m.pieces.fetch(name)
	if err != nil {
		return fmt.Errorf("fetch piece %s of the chart: %w", name, err)
	}
	piece, err := m.parse(text)
	if err != nil {
		return fmt.Errorf("read piece %s of the chart: %w", name, err)
	}
	_, err = m.apply(m.pieces.exports, "add", m.pieces.opened, m.vm.ToValue(n), piece)
	return err
}
