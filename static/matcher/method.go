package matcher

import (
	"encoding/json"
	"fmt"
	"io/fs"

	"github.com/dop251/goja"

	"capspan/static"
)

// Assumption is one constant of the method and what it rests on.
type Assumption struct {
	ID     string  `json:"id"`
	Value  float64 `json:"value"`
	Unit   string  `json:"unit"`   // mm, or empty for a plain number
	Basis  string  `json:"basis"`  // published, common-practice, memory, judgement
	Source string  `json:"source"` // the source's key, or empty
	Says   string  `json:"says"`
}

// methodName is the global the bundle is found under.
const methodName = "CapspanMethod"

// Assumptions returns every constant of the method in the order the about page shows
// them. The files are those of package static.
func Assumptions(fsys fs.FS) ([]Assumption, error) {
	bundle, problems := static.Script(fsys, "matcher/method.ts", methodName)
	if problems.Blocked() {
		return nil, fmt.Errorf("bundle the method: %v", problems)
	}
	vm := goja.New()
	if _, err := vm.RunScript("method.js", string(bundle)); err != nil {
		return nil, fmt.Errorf("load the method: %w", err)
	}
	text, err := vm.RunString("JSON.stringify(" + methodName + ".assumptions)")
	if err != nil {
		return nil, fmt.Errorf("read the method: %w", err)
	}
	var list []Assumption
	if err := json.Unmarshal([]byte(text.String()), &list); err != nil {
		return nil, fmt.Errorf("read the method: %w", err)
	}
	return list, nil
}
