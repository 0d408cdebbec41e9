package matcher

import (
	"encoding/json"
	"fmt"

	"github.com/dop251/goja"

	"capspan/static"
)

// Fetch returns a file of a chart in pieces by the name that [Split] was given for it.
type Fetch func(name string) ([]byte, error)

// pieces are what a Matcher has of a chart that is not held whole.
type pieces struct {
	exports *goja.Object
	opened  goja.Value
	fetch   Fetch
}

// NewPieced is [New] for a chart in pieces, of which it fetches what questions touch. The
// bundle ends with the script of pieces ([static.Pieced]); the directory is as [Split]
// gave it, written as JSON.
func NewPieced(bundle, directory []byte, fetch Fetch) (*Matcher, error) {
	var read struct {
		Version string `json:"version"`
	}
	if err := json.Unmarshal(directory, &read); err != nil {
		return nil, fmt.Errorf("read the directory of the chart: %w", err)
	}
	m, err := started(bundle)
	if err != nil {
		return nil, err
	}
	m.version = read.Version
	exports := m.vm.Get(static.PiecesName)
	if exports == nil || goja.IsUndefined(exports) {
		return nil, fmt.Errorf("load the core: the bundle does not define %s", static.PiecesName)
	}
	p := &pieces{exports: exports.ToObject(m.vm), fetch: fetch}
	if m.chart, err = m.parse(directory); err != nil {
		return nil, fmt.Errorf("read the directory of the chart: %w", err)
	}
	if p.opened, err = m.apply(p.exports, "open", m.chart); err != nil {
		return nil, err
	}
	m.pieces = p
	return m, nil
}

// PieceName asks the script of pieces what a file is called that it asks for, by its number.
func PieceName(vm *goja.Runtime, exports *goja.Object, opened, number goja.Value) (string, error) {
	nameOf, ok := goja.AssertFunction(exports.Get("nameOf"))
	if !ok {
		return "", fmt.Errorf("internal error: %s has no nameOf", static.PiecesName)
	}
	name, err := nameOf(exports, opened, number)
	if err != nil {
		return "", err
	}
	if name == nil || goja.IsUndefined(name) {
		return "", fmt.Errorf("internal error: the core asks for piece %v", number)
	}
	return name.String(), nil
}

// ask puts a query to the core until no piece is missing.
func (m *Matcher) ask(query goja.Value) (goja.Value, error) {
	for {
		value, err := m.apply(m.pieces.exports, "ask", m.pieces.opened, query)
		if err != nil {
			return nil, err
		}
		missing, ok := value.Export().([]any)
		if !ok {
			return value, nil
		}
		for _, n := range missing {
			if err := m.fetch(m.vm.ToValue(n)); err != nil {
				return nil, err
			}
		}
	}
}

func (m *Matcher) fetch(n goja.Value) error {
	name, err := PieceName(m.vm, m.pieces.exports, m.pieces.opened, n)
	if err != nil {
		return err
	}
	text, err := m.pieces.fetch(name)
	if err != nil {
		return fmt.Errorf("fetch piece %s of the chart: %w", name, err)
	}
	piece, err := m.parse(text)
	if err != nil {
		return fmt.Errorf("read piece %s of the chart: %w", name, err)
	}
	_, err = m.apply(m.pieces.exports, "add", m.pieces.opened, n, piece)
	return err
}
