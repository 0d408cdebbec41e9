package static_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"os"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/dop251/goja"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"capspan/build"
	"capspan/build/diag"
	"capspan/static"
)

// bench is the core with pure parts of the pages, and the shipped chart in both its forms.
type bench struct{ vm *goja.Runtime }

// scripts are what every bench runs, read once: building the site takes longest.
var scripts = sync.OnceValues(func() ([]*goja.Program, error) {
	var list []*goja.Program
	add := func(name string, script []byte, problems diag.List) error {
		if problems.Blocked() {
			return fmt.Errorf("%s: %v", name, problems)
		}
		program, err := goja.Compile(name, string(script), false)
		list = append(list, program)
		return err
	}
	core, problems := static.Core(static.FS)
	if err := add("core", core, problems); err != nil {
		return nil, err
	}
	for source, global := range map[string]string{"order/index.ts": "Order", "shaft/index.ts": "Shaft"} {
		script, problems := static.Script(static.FS, source, global)
		if err := add(source, script, problems); err != nil {
			return nil, err
		}
	}
	out, problems := build.Site(build.Embedded(), build.Options{})
	if problems.Blocked() {
		return nil, fmt.Errorf("the site: %v", problems)
	}
	for _, f := range out.Files {
		for stem, global := range map[string]string{"assets/chart.": "chart", "assets/slips.": "slips"} {
			if strings.HasPrefix(f.Path, stem) {
				if err := add(f.Path, slices.Concat([]byte("var "+global+" = "), f.Bytes), nil); err != nil {
					return nil, err
				}
			}
		}
	}
	return list, nil
})

func newBench(t testing.TB) *bench {
	t.Helper()
	list, err := scripts()
	if err != nil {
		t.Fatal(err)
	}
	b := &bench{goja.New()}
	for _, program := range list {
		if _, err := b.vm.RunProgram(program); err != nil {
			t.Fatal(err)
		}
	}
	return b
}

// run evaluates an expression over the arguments, named a, and decodes what comes out.
func (b *bench) run(t testing.TB, out any, expression string, args ...any) {
	t.Helper()
	text, err := json.Marshal(args)
	if err != nil {
		t.Fatal(err)
	}
	if err := b.vm.Set("given", string(text)); err != nil {
		t.Fatal(err)
	}
	v, err := b.vm.RunString("(a => JSON.stringify(" + expression + "))(JSON.parse(given))")
	if err != nil {
		t.Fatalf("%s of %.400s: %v", expression, text, err)
	}
	if err := json.Unmarshal([]byte(v.String()), out); err != nil {
		t.Fatalf("%s of %.400s gives %.400s: %v", expression, text, v, err)
	}
}

// mustSchema compiles a published schema by a library of somebody else's.
func mustSchema(t testing.TB, name string) *jsonschema.Schema {
	t.Helper()
	file, err := os.Open("schemas/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	doc, err := jsonschema.UnmarshalJSON(file)
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	c.AssertFormat()
	if err := c.AddResource(name, doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile(name)
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

func valid(t testing.TB, schema *jsonschema.Schema, document any) error {
	t.Helper()
	text, err := json.Marshal(document)
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return schema.Validate(value)
}

type object = map[string]any
