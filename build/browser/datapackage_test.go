//go:build browser

package browser

import (
	"bytes"
	"os"
	"testing"

	"capspan/build"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// The descriptor of the open data is valid by the schemas that the Data Package
// specification publishes (1.0; in the npm package datapackage): of any package, and of
// one whose files are all tables.
func TestDataPackageSchema(t *testing.T) {
	out, problems := siteOf(build.Embedded(), build.Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	checked := 0
	for _, profile := range []string{"data-package", "tabular-data-package"} {
		file, err := os.Open(tools + "/datapackage/lib/profiles/" + profile + ".json")
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
		if err := c.AddResource(profile, doc); err != nil {
			t.Fatal(err)
		}
		schema, err := c.Compile(profile)
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range out.Files {
			if f.Path != "data/datapackage.json" && f.Path != "data/"+out.Chart.Name()+"/datapackage.json" {
				continue
			}
			descriptor, err := jsonschema.UnmarshalJSON(bytes.NewReader(f.Bytes))
			if err != nil {
				t.Fatal(err)
			}
			checked++
			if err := schema.Validate(descriptor); err != nil {
				t.Errorf("%s by %s: %v", f.Path, profile, err)
			}
			broken := descriptor.(map[string]any)
			delete(broken, "resources")
			if schema.Validate(broken) == nil {
				t.Errorf("%s takes a package without files", profile)
			}
		}
	}
	if checked != 4 {
		t.Errorf("%d checks, want 4", checked)
	}
}
