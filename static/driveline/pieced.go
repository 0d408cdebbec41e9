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
	exports *goja.Object
	opened  goja.Value
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
	chart, err := m.json("parse", m.vm.ToValue(string(directory)))
	if err != nil {
		return fmt.Errorf("read the directory of the chart: %w", err)
	}
	found := &pieces{machine: m, exports: exports.ToObject(m.vm), fetch: fetch}
	if found.opened, err = m.call(found.exports, "open", chart, m.vm.ToValue(found.take)); err != nil {
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
func (p *pieces) take(call goja.FunctionCall) goja.Value {
	piece, err := p.piece(call.Argument(0))
	if err != nil {
		panic(p.machine.vm.NewGoError(err))
	}
	return piece
}

func (p *pieces) piece(n goja.Value) (goja.Value, error) {
	name, err := matcher.PieceName(p.machine.vm, p.exports, p.opened, n)
	if err != nil {
		return nil, err
	}
	text, err := p.fetch(name)
	if err != nil {
		return nil, fmt.Errorf("fetch piece %s of the chart: %w", name, err)
	}
	piece, err := p.machine.json("parse", p.machine.vm.ToValue(string(text)))
	if err != nil {
		return nil, fmt.Errorf("read piece %s of the chart: %w", name, err)
	}
	return piece, nil
}
