package tables

import (
	"bytes"
	"encoding/json"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/build/diag"
	"github.com/rogpeppe/go-internal/txtar"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"go.yaml.in/yaml/v4"
)

// blind are the rules a schema cannot see, and why. Of every other rule its case must be
// refused by the schema too, and of these it must not.
var blind = map[string]string{
	"unreadable": "the disk", "no-tables": "the folder", "file-size": "bytes", "too-many-rows": "the whole chart",
	"encoding": "bytes", "tab": "white space is gone once YAML is read",
	"bad-yaml": "no instance to check", "tag": "editors drop it",
	"duplicate-key": "an instance has each key once", "one-line": "layout",
	"table-name": "the file's name", "duplicate-id": "other rows", "unnamed-twins": "other rows",
	"like-nowhere": "other rows", "like-retired": "other files", "like-conversion": "other rows", "like-circle": "other rows",
	"not-as-measured": "two figures against each other",
	"twin-nowhere":    "other rows", "impossible-twins": "other rows", "one-sided-twins": "other rows",
	"retired-in-use": "other files", "retired-nowhere": "other files",
}

func compiled(t *testing.T, set *Set) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema(set)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler() // has draft-07's own schema in it and holds ours to it
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	return schema
}

// instance is a file as an editor's schema checker sees it; nil when it is no YAML.
func instance(src []byte) any {
	var root yaml.Node
	clean := (&reader{list: &diag.List{}}).clean(src)
	if yaml.Unmarshal(clean, &root) != nil || len(root.Content) == 0 {
		return nil
	}
	return instanceOf(&root)
}

// instanceOf reads scalars by YAML 1.2's core schema: numbers with their digits.
func instanceOf(n *yaml.Node) any {
	switch n.Kind {
	case yaml.DocumentNode:
		return instanceOf(n.Content[0])
	case yaml.AliasNode:
		return instanceOf(n.Alias)
	case yaml.MappingNode:
		out := map[string]any{}
		for i := 0; i+1 < len(n.Content); i += 2 {
			out[n.Content[i].Value] = instanceOf(n.Content[i+1])
		}
		return out
	case yaml.SequenceNode:
		out := []any{}
		for _, c := range n.Content {
			out = append(out, instanceOf(c))
		}
		return out
	}
	switch n.Tag {
	case "!!null":
		return nil
	case "!!bool":
		return strings.EqualFold(n.Value, "true")
	case "!!int", "!!float":
		var v json.Number
		if json.Unmarshal([]byte(n.Value), &v) == nil {
			return v
		}
	}
	return n.Value
}

// The schema of the shipped tables is the one in the folder. Run capspan schema when not.
func TestSchemaIsNotStale(t *testing.T) {
	got, err := os.ReadFile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, Schema(shippedSet(t))) {
		t.Error("schema.json is not what the tables declare: run capspan schema")
	}
}

// Every file begins with the line by which editors find the schema.
func TestShippedFilesNameTheSchema(t *testing.T) {
	for name, src := range shippedFiles(t) {
		if !strings.HasPrefix(string(src), "# yaml-language-server: $schema=schema.json\n") {
			t.Errorf("%s does not begin with the schema's line", name)
		}
	}
}

// What the loader takes the schema takes: the shipped files, and the tables of the tests.
func TestSchemaTakesWhatLoadTakes(t *testing.T) {
	schema := compiled(t, shippedSet(t))
	for name, src := range shippedFiles(t) {
		if err := schema.Validate(instance(src)); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, files := range []map[string]string{
		{"flanges.yaml": flanges(t), registryFile: aCatalogue},
		{"bolts.yaml": bolts},
	} {
		set := mustLoad(t, files)
		schema := compiled(t, set)
		for name, src := range files {
			if err := schema.Validate(instance([]byte(src))); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// Of every file of every fixture, here and of the comparison, loader and schema say the
// same: a file without an error passes, and one with an error that a schema can see does not.
func TestSchemaAgreesFileByFile(t *testing.T) {
	var fixtures []string
	for _, pattern := range []string{"testdata/check/*.txtar", "compare/testdata/*.txtar"} {
		found, err := filepath.Glob(pattern)
		if err != nil || len(found) < 10 {
			t.Fatalf("%d fixtures of %s: %v", len(found), pattern, err)
		}
		fixtures = append(fixtures, found...)
	}
	passed, refused := 0, 0
	for _, fixture := range fixtures {
		archive, err := txtar.ParseFile(fixture)
		if err != nil {
			t.Fatal(err)
		}
		folders, lim := foldersOf(archive), shipped
		if strings.HasPrefix(fixture, "testdata/check/") {
			var only fstest.MapFS
			only, lim, _ = readCase(t, archive)
			folders = map[string]fstest.MapFS{"": only}
		}
		for _, folder := range folders {
			set, list := load(folder, lim)
			schema := compiled(t, set)
			for name, file := range folder {
				doc := instance(file.Data)
				if doc == nil || !strings.HasSuffix(name, ".yaml") {
					continue
				}
				errors, seen := 0, false
				for _, p := range list {
					if strings.TrimPrefix(p.Pos.File, "tables/") == name && p.Level == diag.Error {
						errors++
						seen = seen || blind[p.Rule] == ""
					}
				}
				err := schema.Validate(doc)
				switch {
				case errors == 0 && err != nil:
					t.Errorf("%s: %s loads and the schema refuses it: %v", fixture, name, err)
				case seen && err == nil:
					t.Errorf("%s: %s does not load and the schema takes it", fixture, name)
				case err == nil:
					passed++
				default:
					refused++
				}
			}
		}
	}
	if passed < 40 || refused < 20 {
		t.Errorf("%d files passed and %d were refused: the test looks at too little", passed, refused)
	}
}

// foldersOf are the folders in a fixture: one, or an older and a newer of a comparison.
func foldersOf(archive *txtar.Archive) map[string]fstest.MapFS {
	out := map[string]fstest.MapFS{}
	for _, f := range archive.Files {
		folder, name := path.Split(f.Name)
		if out[folder] == nil {
			out[folder] = fstest.MapFS{}
		}
		out[folder][name] = &fstest.MapFile{Data: f.Data}
	}
	return out
}

// What the loader refuses the schema refuses, but for what it cannot see.
func TestSchemaRefusesWhatLoadRefuses(t *testing.T) {
	for _, rule := range rules {
		t.Run(rule.ID, func(t *testing.T) {
			src, err := os.ReadFile(filepath.Join("testdata", "check", rule.ID+".txtar"))
			if err != nil {
				t.Fatal(err)
			}
			fsys, lim, _ := readCase(t, txtar.Parse(src))
			set, _ := load(fsys, lim)
			schema, refused := compiled(t, set), ""
			for name, file := range fsys {
				doc := instance(file.Data)
				if doc == nil || !strings.HasSuffix(name, ".yaml") {
					continue
				}
				if err := schema.Validate(doc); err != nil {
					refused = name + ": " + err.Error()
				}
			}
			why, cannot := blind[rule.ID]
			switch {
			case cannot && refused != "":
				t.Errorf("it does see it, though %s:\n%s", why, refused)
			case !cannot && refused == "":
				t.Error("the loader refuses it and the schema does not")
			}
		})
	}
	for id := range blind {
		if _, known := levels[id]; !known {
			t.Errorf("no rule is called %q", id)
		}
	}
}
