package matcher

import (
	"encoding/json"

	"github.com/dop251/goja"

	"capspan/static"
)

// NewOf is [New] of a bundle that is compiled already: to read the same one for each chart
// of a test is most of what it takes. The machine is a new one all the same.
func NewOf(compiled *goja.Program, chart Chart) (*Matcher, error) {
	vm := goja.New()
	if _, err := vm.RunProgram(compiled); err != nil {
		return nil, err
	}
	m := &Matcher{vm: vm, core: vm.Get(static.CoreName).ToObject(vm), version: chart.Version}
	text, err := json.Marshal(chart)
	if err != nil {
		return nil, err
	}
	m.chart, err = m.parse(text)
	return m, err
}

// IdentifyAny puts any JSON value to the core, of any shape, past the types of Go: as a
// browser may. What comes out is the answer's own JSON.
func (m *Matcher) IdentifyAny(query string) (string, error) {
	value, err := m.parse([]byte(query))
	if err != nil {
		return "", err
	}
	identify, _ := goja.AssertFunction(m.core.Get("identify"))
	answer, err := identify(goja.Undefined(), m.chart, value)
	if err != nil {
		return "", err
	}
	return m.text(answer)
}
