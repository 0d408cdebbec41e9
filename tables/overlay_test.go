package tables

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"capspan/build/diag"
)

// overlaid is the small chart under the overlays of the tests: two rows, one that moved, one
// that was split, one that was withdrawn.
const overlaid = `table: x
title: Joints to try
about: Two joints that differ
version: 1.0.0
date: 2026-11-25
unit: in
columns:
  hold:   {label: Hold, kind: hold}
  cap:    {label: Cap, kind: length, least: 0.3, greatest: 4}
  across: {label: Across, kind: length, least: 1, greatest: 12}
rows:
  - id: a1
    hold:   {is: outside-clip, basis: common-practice}
    cap:    {is: 1.062, basis: common-practice}
    across: {is: 3.219, faces: over-caps, basis: common-practice}

  - id: a2
    hold:   {is: inside-clip, basis: memory}
    cap:    {is: 1.188, basis: memory}
    across: {is: 2.560, faces: groove-inner, basis: memory}
`

const overlaidRetired = `retired:
  - {id: old, to: [a1], why: the name was misspelt}
  - {id: both, to: [a1, a2], why: it was two sizes}
  - {id: gone, why: nobody could say where it came from}
`

func overlaidSet(t *testing.T) *Set {
	t.Helper()
	set, problems := Load(fstest.MapFS{"x.yaml": {Data: []byte(overlaid)}, "retired.yaml": {Data: []byte(overlaidRetired)}})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return set
}

// chartRules are rules of the chart that an overlay can break too: those of files, of YAML,
// of keys, ids and numbers.
var chartRules = strings.Fields("unreadable file-size encoding tab control-character bad-yaml depth alias tag duplicate-key unknown-key " +
	"missing-key empty-value wrong-shape one-line text-length table-name bad-column bad-id bad-number")

// Each rule has a file of its name: overlays with one thing spoiled, and the messages.
func TestOverlayCheck(t *testing.T) {
	rules := chartRules
	for _, rule := range overlayRules {
		rules = append(rules, rule.ID)
	}
	for _, rule := range rules {
		t.Run(rule, func(t *testing.T) {
			file := filepath.Join("testdata", "overlay", rule+".txtar")
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatalf("the rule has no case: %v", err)
			}
			archive := txtar.Parse(src)
			fsys, lim, want := readCase(t, archive)
			_, list := loadOverlay(fsys, overlaidSet(t), lim)
			for _, p := range list {
				if p.Rule != rule {
					t.Errorf("another rule answers: %s", p)
				}
				if p.Level != diag.Error || !strings.HasPrefix(p.Pos.File, "overlay/") {
					t.Errorf("not an error of the overlay: %s", p)
				}
			}
			if len(list) == 0 {
				t.Error("nothing is reported")
			}
			got := printed(t, list)
			if *update {
				archive.Files[len(archive.Files)-1].Data = []byte(got)
				if err := os.WriteFile(file, txtar.Format(archive), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
	files, err := filepath.Glob("testdata/overlay/*.txtar")
	if err != nil || len(files) != len(rules) {
		t.Errorf("%d cases for %d rules: %v", len(files), len(rules), err)
	}
}

// What an overlay says comes back in the order of its columns, with digits as written; a row
// is named by its id in any case of letters, and a folder that is not there says nothing.
func TestOverlay(t *testing.T) {
	set := overlaidSet(t)
	o, problems := LoadOverlay(fstest.MapFS{
		"a.yaml": {Data: []byte("overlay: a\ncolumns:\n  part:  {label: Part number, kind: text, find: true}\n  stock: {label: In stock, kind: number, unit: pieces}\n  keep:  {label: We keep it, kind: choice, words: [yes, no]}\n" +
			"rows:\n  A1:\n    keep: yes\n    stock: 4.50\n    part: 0131\n")},
		"b.yaml": {Data: []byte("overlay: b\ncolumns:\n  part:  {label: Part number, kind: text, find: true}\n  note: {label: Note, kind: text}\nrows:\n  a1:\n    note: on the second shelf\n  a2:\n    part: SW-2\n")},
	}, set)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	says := func(id string) string {
		var list []string
		for _, v := range o.Of(set.Find(id)) {
			list = append(list, v.Column.Label+" "+v.String())
		}
		return strings.Join(list, "; ")
	}
	for id, want := range map[string]string{
		"a1": "Part number 0131; In stock 4.50 pieces; We keep it yes; Note on the second shelf",
		"a2": "Part number SW-2",
	} {
		if got := says(id); got != want {
			t.Errorf("%s: %q, want %q", id, got, want)
		}
	}
	if o.Rows() != 2 {
		t.Errorf("%d rows", o.Rows())
	}
	none, problems := LoadOverlay(os.DirFS(filepath.Join(t.TempDir(), "overlay")), set)
	if none != nil || len(problems) > 0 || none.Rows() != 0 || none.Of(set.Find("a1")) != nil {
		t.Errorf("without a folder: %v, %v", none, problems)
	}
}

// The schema that editors get is one, takes a good overlay, and refuses what it can see.
func TestOverlaySchema(t *testing.T) {
	set := overlaidSet(t)
	good := "overlay: o\ncolumns:\n  stock: {label: In stock, kind: number}\n  keep: {label: Kept, kind: choice, words: [yes, no]}\nrows:\n  a1:\n    stock: 4\n    keep: yes\n"
	o, problems := LoadOverlay(fstest.MapFS{"o.yaml": {Data: []byte(good)}}, set)
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(OverlaySchema(set, o)))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("schema.json", doc); err != nil {
		t.Fatal(err)
	}
	schema, err := c.Compile("schema.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, spoil := range [][2]string{{"", ""}, {"a1:", "a9:"}, {"stock: 4", "stock: some"}, {"keep: yes", "keep: maybe"}, {"kind: number", "kind: length"},
		{", words: [yes, no]", ""}, {"label: In stock, ", ""}, {"overlay: o\n", ""}} {
		text := strings.Replace(good, spoil[0], spoil[1], 1)
		if err := schema.Validate(instance([]byte(text))); (err == nil) != (spoil[0] == "") {
			t.Errorf("%q for %q: %v", spoil[1], spoil[0], err)
		}
	}
}
