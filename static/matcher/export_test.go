package matcher

import "github.com/dop251/goja"

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
