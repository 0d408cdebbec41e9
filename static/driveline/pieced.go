package driveline

import (
	"fmt"
	"slices"

	"github.com/dop251/goja"

	"capspan/static"
	"capspan/static/matcher"
)

// pieces are what a Machine has of a chart that is not held whole.
type pieces struct {
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
	found := &pieces{exports: exports.ToObject(m.vm), fetch: fetch}
	chart, err := m.json("parse", m.vm.ToValue(string(directory)))
	if err != nil {
		return fmt.Errorf("read the directory of the chart: %w", err)
	}
	if found.opened, err = m.call(found.exports, "open", chart); err != nil {
		return err
	}
	more := m.vm.NewObject()
	if err := more.Set("chart", chart); err != nil {
		return err
	}
	m.pieces = found
	_, err = m.call(m.frame, "provide", more)
	return err
}

// reckon puts a fragment to a calculation until no piece of the chart is missing.
func (m *Machine) reckon(name, fragment string) (goja.Value, error) {
	for {
		report, err := m.call(m.frame, "reckon", m.vm.ToValue(name), m.vm.ToValue(fragment))
		if err == nil || m.pieces == nil {
			return report, err
		}
		missing, wrong := m.missing()
		if wrong != nil || len(missing) == 0 {
			return nil, err // what went wrong was something else
		}
		for _, n := range missing {
			if err := m.add(n); err != nil {
				return nil, err
			}
		}
	}
}

// missing are the pieces that were looked for and are not here, noted since the last call.
func (m *Machine) missing() ([]int, error) {
	chart := m.pieces.opened.ToObject(m.vm).Get("chart").ToObject(m.vm)
	set := chart.Get("missing").ToObject(m.vm)
	var list []int
	if err := m.vm.ExportTo(set, &list); err != nil {
		return nil, err
	}
	slices.Sort(list)
	clear, ok := goja.AssertFunction(set.Get("clear"))
	if !ok {
		return nil, fmt.Errorf("internal error: what is missing is no set")
	}
	_, err := clear(set)
	return list, err
}

func (m *Machine) add(n int) error {
	number := m.vm.ToValue(n)
	name, err := matcher.PieceName(m.vm, m.pieces.exports, m.pieces.opened, number)
	if err != nil {
		return err
	}
	text, err := m.pieces.fetch(name)
	if err != nil {
		return fmt.Errorf("fetch piece %s of the chart: %w", name, err)
	}
	piece, err := m.json("parse", m.vm.ToValue(string(text)))
	if err != nil {
		return fmt.Errorf("read piece %s of the chart: %w", name, err)
	}
	_, err = m.call(m.pieces.exports, "add", m.pieces.opened, number, piece)
	return err
}
