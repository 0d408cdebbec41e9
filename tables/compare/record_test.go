package compare

import (
	"testing"
	"testing/fstest"

	"capspan/tables"
	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/rogpeppe/go-internal/txtar"

	"capspan/build/diag"
)

// What a case changes is recorded line by line, and reads back from the file it was
// recorded in.
func TestRelease(t *testing.T) {
	tests := map[string][]tables.Recorded{
		"value":   {{Of: "x/a1", Column: "cap", What: "value", Old: "1.062 in", New: "1.063 in"}},
		"renamed": {{Of: "x/a2", What: "renamed", Old: "a1", New: "a2", Why: "the name was misspelt"}},
		"grouped": {
			{Of: "x/a1", Column: "cap", What: "basis", Old: "common-practice", New: "published"},
			{Of: "x/a1", Column: "cap", What: "source", New: "a-manual"},
			{Of: "x/a1", Column: "cap", What: "at", New: "table 1"},
			{Of: "x/a1", Column: "across", What: "basis", Old: "common-practice", New: "published"},
			{Of: "x/a1", Column: "across", What: "source", New: "a-manual"},
			{Of: "x/a1", Column: "across", What: "at", New: "table 1"},
			{Of: "x/b1", Column: "cap", What: "basis", Old: "common-practice", New: "published"},
			{Of: "x/b1", Column: "cap", What: "source", New: "a-manual"},
			{Of: "x/b1", Column: "cap", What: "at", New: "table 1"},
		},
		"tables": {
			{Of: "x/b1", What: "retired", Old: "hold outside-clip; cap 1.188 in; across 3.219 in; basis common-practice", New: "z/b1"},
			{Of: "z", What: "added", New: "title Joints to try"},
			{Of: "z/b1", What: "added", New: "hold outside-clip; cap 1.188 in; across 3.219 in; basis common-practice"},
			{Of: "y", What: "retired", Old: "title Joints to try"},
			{Of: "y/y1", What: "retired", Old: "hold outside-clip; cap 1.5 in; across 3.219 in; basis common-practice", Why: "nobody makes it"},
			{Of: "sources/a-manual", What: "publisher", Old: "A maker", New: "Another maker"},
			{Of: "retired/r2", What: "retired", Old: "entry withdrawn: nobody makes it"},
			{Of: "retired/r1", What: "entry", Old: "withdrawn: nobody makes it", New: "to a1: it was found again"},
		},
		"order": nil,
	}
	for name, want := range tests {
		t.Run(name, func(t *testing.T) {
			archive, err := txtar.ParseFile("testdata/" + name + ".txtar")
			if err != nil {
				t.Fatal(err)
			}
			older, newer := fstest.MapFS{}, fstest.MapFS{}
			for _, f := range archive.Files {
				for side, folder := range map[string]fstest.MapFS{"old/": older, "new/": newer} {
					if len(f.Name) > 4 && f.Name[:4] == side {
						folder[f.Name[4:]] = &fstest.MapFile{Data: f.Data}
					}
				}
			}
			release := Sets(mustLoad(t, older), mustLoad(t, newer)).Release("tried")
			if diff := cmp.Diff(want, release.Changes, cmpopts.IgnoreTypes(diag.Pos{}), cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
			if want == nil {
				return
			}
			text, err := tables.Record(nil, release)
			if err != nil {
				t.Fatal(err)
			}
			newer["history.yaml"] = &fstest.MapFile{Data: text}
			if diff := cmp.Diff([]tables.Release{release}, mustLoad(t, newer).History, cmpopts.IgnoreTypes(diag.Pos{}), cmpopts.EquateEmpty()); diff != "" {
				t.Errorf("(-recorded +read):\n%s", diff)
			}
		})
	}
}
