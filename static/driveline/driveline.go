// Package driveline runs the driveline calculations, the TypeScript beside it, inside the
// Go program. It reckons nothing itself: [New] takes the scripts the browser gets,
// [Machine.Reckon] puts the filled inputs of a calculation to them, as the fragment of its
// page's address, and returns the [Report]; [Machine.Result] is the same as the page shows
// it. Page, command, slip and record cannot disagree, because there is one calculation.
//
// The types in report.go mirror description.ts. What the calculations take from the chart
// is given with [Machine.Provide]; this package knows no tables.
//
// A [Machine] holds one JavaScript machine, which is not safe for use by several
// goroutines at once: make one for each.
package driveline

import (
	"encoding/json"
	"fmt"
	"html/template"

	"github.com/dop251/goja"

	"capspan/static"
)

// Machine is the calculations, loaded. Use it from one goroutine at a time.
type Machine struct {
	vm           *goja.Runtime
	frame, pages *goja.Object
}

// New loads the identification core, which joins two ends, and the calculations, as package
// static bundles them ([static.Core], [static.Driveline]).
func New(core, bundle []byte) (*Machine, error) {
	vm := goja.New()
	if _, err := vm.RunScript("matcher.js", string(core)); err != nil {
		return nil, fmt.Errorf("load the core: %w", err)
	}
	if _, err := vm.RunScript("driveline.js", string(bundle)); err != nil {
		return nil, fmt.Errorf("load the calculations: %w", err)
	}
	m := &Machine{vm: vm}
	for name, to := range map[string]**goja.Object{static.DrivelineName: &m.frame, static.DrivelinePagesName: &m.pages} {
		exports := vm.Get(name)
		if exports == nil || goja.IsUndefined(exports) {
			return nil, fmt.Errorf("load the calculations: the bundle does not define %s", name)
		}
		*to = exports.ToObject(vm)
	}
	return m, nil
}

// Provide gives the calculations what they take from the chart, a value of [Provided].
func (m *Machine) Provide(p Provided) error {
	text, err := json.Marshal(p)
	if err != nil {
		return fmt.Errorf("write what the calculations take from the chart: %w", err)
	}
	value, err := m.json("parse", m.vm.ToValue(string(text)))
	if err != nil {
		return err
	}
	_, err = m.call(m.frame, "provide", value)
	return err
}

// Described lists the calculations with their inputs and words.
func (m *Machine) Described() ([]Described, error) {
	var list []Described
	return list, m.into(&list, m.pages, "described")
}

// Documents lists what the calculations cite.
func (m *Machine) Documents() ([]Document, error) {
	var list []Document
	return list, m.into(&list, m.pages, "documents")
}

// Reckon reads the fragment of a calculation's page, with or without "#", and returns what
// comes of it. Figures that cannot be used are no error: the report refuses them.
func (m *Machine) Reckon(name, fragment string) (Report, error) {
	var report Report
	value, err := m.reckon(name, fragment)
	if err != nil {
		return report, err
	}
	return report, m.decode(&report, "reckon", value)
}

// Result is the report of a fragment as the page shows it.
func (m *Machine) Result(name, fragment string) (template.HTML, error) {
	report, err := m.reckon(name, fragment)
	if err != nil {
		return "", err
	}
	tree, err := m.call(m.frame, "result", report)
	if err != nil {
		return "", err
	}
	var e Element
	if err := m.decode(&e, "result", tree); err != nil {
		return "", err
	}
	return e.HTML()
}

func (m *Machine) reckon(name, fragment string) (goja.Value, error) {
	return m.call(m.frame, "reckon", m.vm.ToValue(name), m.vm.ToValue(fragment))
}

func (m *Machine) call(of *goja.Object, name string, args ...goja.Value) (goja.Value, error) {
	call, ok := goja.AssertFunction(of.Get(name))
	if !ok {
		return nil, fmt.Errorf("the calculations have no %s", name)
	}
	value, err := call(goja.Undefined(), args...)
	if err != nil {
		return nil, fmt.Errorf("run %s: %w", name, err)
	}
	return value, nil
}

// into calls an export and decodes what it returns.
func (m *Machine) into(out any, of *goja.Object, name string, args ...goja.Value) error {
	value, err := m.call(of, name, args...)
	if err != nil {
		return err
	}
	return m.decode(out, name, value)
}

func (m *Machine) decode(out any, name string, value goja.Value) error {
	text, err := m.json("stringify", value)
	if err != nil {
		return err
	}
	if err := json.Unmarshal([]byte(text.String()), out); err != nil {
		return fmt.Errorf("read what %s returned: %w", name, err)
	}
	return nil
}

func (m *Machine) json(name string, v goja.Value) (goja.Value, error) {
	call, ok := goja.AssertFunction(m.vm.Get("JSON").ToObject(m.vm).Get(name))
	if !ok {
		return nil, fmt.Errorf("internal error: the machine has no JSON.%s", name)
	}
	return call(goja.Undefined(), v)
}
