package build

import (
	"errors"
	"fmt"
	"io/fs"

	"capspan/build/diag"
)

// The files that pages write for a reader to keep or send have a published form: JSON
// Schemas, at addresses that stay. A form that changes its meaning gets a new number and
// a file of its own beside the old one.
const schemaFolder = "schema/"

// addSchemas writes them as they are in static/schemas.
func (s *site) addSchemas(static fs.FS) diag.List {
	files, err := fs.ReadDir(static, "schemas")
	if errors.Is(err, fs.ErrNotExist) {
		return nil // a chart of one's own may do without the pages that write such files
	}
	var problems diag.List
	for _, f := range files {
		name := "schemas/" + f.Name()
		content, err := fs.ReadFile(static, name)
		if err != nil {
			problems.Add(diag.Problem{Pos: diag.Pos{File: "static/" + name}, Rule: "bad-schema", Fact: fmt.Sprintf("cannot be read: %v", err)})
			continue
		}
		s.addRoot(schemaFolder+f.Name(), content, Pages)
	}
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "static/schemas"}, Rule: "bad-schema", Fact: fmt.Sprintf("cannot be read: %v", err)})
	}
	return problems
}
