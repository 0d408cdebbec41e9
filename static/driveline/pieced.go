package driveline

import (
	"fmt"

	"github.com/dop251/goja"

	"capspan/static"
	"capspan/static/matcher"
)

// pieces are those of a chart that is not held whole.
type pieces struct {
	machine *Machine
	names   []string
	fetch   func(name string) ([]byte, error)
}

// ProvidePieces is [Machine.Provide] for a chart in pieces, of which a calculation fetches
// what it touches. The core was bundled with the script of pieces ([static.Pieced]); the
// directory is as package matcher's Split gave it, written as JSON.
func (m *Machine) ProvidePieces(p Provided, directory []byte, fetch func(name string) ([]byte, error)) error {
	if err := m.Provide(p); err != nil {
		return err
	}
	exports := m.vm.Get(static.PiecesName)
	if exports == nil || goja.IsUndefined(exports) {
		return fmt.Errorf("load the core: the bundle does not define %s", static.PiecesName)
	}
	_, names, err := matcher.Contents(directory)
	if err != nil {
		return err
	}
	chart, err := m.json("parse", m.vm.ToValue(string(directory)))
	if err != nil {
		return fmt.Errorf("read the directory of the chart: %w", err)
	}
	if _, err = m.call(exports.ToObject(m.vm), "open", chart, m.vm.ToValue(pieces{m, names, fetch}.take)); err != nil {
		return err
	}
	more := m.vm.NewObject()
	if err := more.Set("chart", chart); err != nil {
		return err
	}
	_, err = m.call(m.frame, "provide", more)
	return err
}

// take gives the core a piece when it comes upon it. A page lets the pieces that a question
// touches be noted, fetches them and asks again from the start; here they are at hand, and
// nothing is worked out twice.
func (p pieces) take(call goja.FunctionCall) goja.Value {
	piece, err := p.piece(int(call.Argument(0).ToInteger()))
	if err != nil {
		panic(p.machine.vm.NewGoError(err))
	}
	return piece
}

func (p pieces) piece(n int) (goja.Value, error) {
	if n < 0 || n >= len(p.names) {
		return nil, fmt.Errorf("internal error: the core asks for piece %d", n)
	}
	text, err := p.fetch(p.names[n])
	if err != nil {
		return nil, fmt.Errorf("fetch piece %d of the chart: %w", n, err)
	}
	piece, err := p.machine.json("parse", p.machine.vm.ToValue(string(text)))
	if err != nil {
		return nil, fmt.Errorf("read piece %d of the chart: %w", n, err)
	}
	return piece, nil
}
