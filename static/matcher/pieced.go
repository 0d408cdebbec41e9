package matcher

import (
	"cmp"
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
	m.pieces = &pieces{exports: exports.ToObject(m.vm), fetch: fetch}
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
			if err := m.fetch(m.vm.ToValue(n)); err != nil {
				return nil, err
			}
		}
	}
}

// fetch gives the core a file that it says is missing.
func (m *Matcher) fetch(n goja.Value) error {
	piece, err := m.piece(n)
	if err != nil {
		return err
	}
	_, err = m.apply(m.pieces.exports, "add", m.pieces.opened, n, piece)
	return err
}

// take is called by the core for a file at hand. What goes wrong ends the question.
func (m *Matcher) take(call goja.FunctionCall) goja.Value {
	piece, err := m.piece(call.Argument(0))
	if err != nil {
		m.pieces.failed = err
		panic(m.vm.NewGoError(err))
	}
	return piece
}

func (m *Matcher) piece(n goja.Value) (goja.Value, error) {
	name, err := PieceName(m.vm, m.pieces.exports, m.pieces.opened, n)
	if err != nil {
		return nil, err
	}
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
