// Package matcher runs the identification core, the TypeScript beside it, inside the
// Go program. It implements nothing of the method itself: [New] takes the scripts the
// browser gets and a [Chart], [Matcher.Identify] puts a [Query] to them and returns their
// [Answer]. Go and browser cannot disagree, because there is one core.
//
// The types in query.go, chart.go and answer.go mirror types.ts. Package build compiles
// the tables into a Chart; this package knows no tables.
//
// A [Matcher] holds one JavaScript machine, which is not safe for use by several
// goroutines at once: make one Matcher for each.
package matcher

import (
	"encoding/json"
	"fmt"

	"github.com/dop251/goja"

	"capspan/static"
)

// Matcher is the core with a chart loaded. Use it from one goroutine at a time.
type Matcher struct {
	vm      *goja.Runtime
	core    *goja.Object
	chart   goja.Value
	version string
	pieces  *pieces // nil for a chart held whole
}

// New loads the bundle, the core's scripts one behind the other as [static.Core] or
// [static.Assets.Core] gives them, and the chart. The chart is read once; later changes to
// it are not seen.
func New(bundle []byte, chart Chart) (*Matcher, error) {
	text, err := json.Marshal(chart)
	if err != nil {
		return nil, fmt.Errorf("write the chart for the core: %w", err)
	}
	return NewWritten(bundle, text)
}

// NewWritten is [New] for a chart that has been written as JSON.
func NewWritten(bundle, chart []byte) (*Matcher, error) {
	var read struct {
		Version string `json:"version"`
	}
	if err := json.Unmarshal(chart, &read); err != nil {
		return nil, fmt.Errorf("load the chart: %w", err)
	}
	m, err := started(bundle)
	if err != nil {
		return nil, err
	}
	m.version = read.Version
	if m.chart, err = m.parse(chart); err != nil {
		return nil, fmt.Errorf("load the chart: %w", err)
	}
	return m, nil
}

// started runs the bundle in a machine of its own.
func started(bundle []byte) (*Matcher, error) {
	vm := goja.New()
	if _, err := vm.RunScript("matcher.js", string(bundle)); err != nil {
		return nil, fmt.Errorf("load the core: %w", err)
	}
	exports := vm.Get(static.CoreName)
	if exports == nil || goja.IsUndefined(exports) {
		return nil, fmt.Errorf("load the core: the bundle does not define %s", static.CoreName)
	}
	return &Matcher{vm: vm, core: exports.ToObject(vm)}, nil
}

// Learn runs the late part of the core ([static.Parts]) in a machine that was made without.
func (m *Matcher) Learn(late []byte) error {
	if _, err := m.vm.RunScript("matcher-late.js", string(late)); err != nil {
		return fmt.Errorf("load the late part of the core: %w", err)
	}
	return nil
}

// Identify puts a query to the core. A query the core cannot use is no error: the
// answer then says to measure again and carries complaints.
func (m *Matcher) Identify(q Query) (Answer, error) {
	text, err := json.Marshal(q)
	if err != nil {
		return Answer{}, fmt.Errorf("write the query for the core: %w", err)
	}
	query, err := m.parse(text)
	if err != nil {
		return Answer{}, err
	}
	var value goja.Value
	if m.pieces == nil {
		value, err = m.apply(m.core, "identify", m.chart, query)
	} else {
		value, err = m.ask(query)
	}
	if err != nil {
		return Answer{}, err
	}
	var a Answer
	return a, m.decode(&a, "identify", value)
}

// FacesFor returns the faces that go with a hold, the usual ones first.
func (m *Matcher) FacesFor(hold Hold) ([]Faces, error) {
	var list []Faces
	err := m.into(&list, "facesFor", m.vm.ToValue(string(hold)))
	return list, err
}

// Address returns the fragment, without "#", that stands for a query on the identify page.
func (m *Matcher) Address(q Query) (string, error) {
	text, err := json.Marshal(q)
	if err != nil {
		return "", fmt.Errorf("write the query for the core: %w", err)
	}
	query, err := m.parse(text)
	if err != nil {
		return "", err
	}
	var s string
	err = m.into(&s, "encodeAddress", query, m.vm.ToValue(m.version))
	return s, err
}

// into calls an export of the core and decodes what it returns.
func (m *Matcher) into(out any, name string, args ...goja.Value) error {
	value, err := m.apply(m.core, name, args...)
	if err != nil {
		return err
	}
	return m.decode(out, name, value)
}

// apply calls an export of one of the scripts.
func (m *Matcher) apply(of *goja.Object, name string, args ...goja.Value) (goja.Value, error) {
	call, ok := goja.AssertFunction(of.Get(name))
	if !ok {
		return nil, fmt.Errorf("the core has no %s", name)
	}
	value, err := call(goja.Undefined(), args...)
	if err != nil {
		return nil, fmt.Errorf("run %s: %w", name, err)
	}
	return value, nil
}

func (m *Matcher) decode(out any, name string, value goja.Value) error {
	text, err := m.text(value)
	if err != nil {
		return err
	}
	if err := json.Unmarshal([]byte(text), out); err != nil {
		return fmt.Errorf("read what %s returned: %w", name, err)
	}
	return nil
}

func (m *Matcher) parse(text []byte) (goja.Value, error) {
	return m.json("parse", m.vm.ToValue(string(text)))
}

func (m *Matcher) text(v goja.Value) (string, error) {
	s, err := m.json("stringify", v)
	if err != nil {
		return "", err
	}
	return s.String(), nil
}

func (m *Matcher) json(name string, v goja.Value) (goja.Value, error) {
	call, ok := goja.AssertFunction(m.vm.Get("JSON").ToObject(m.vm).Get(name))
	if !ok {
		return nil, fmt.Errorf("internal error: the machine has no JSON.%s", name)
	}
	return call(goja.Undefined(), v)
}
