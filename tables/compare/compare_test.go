package compare

import (
	"bytes"
	"flag"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/tables"
	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

// Run with -update to rewrite what is said in testdata; then read the difference: a
// keeper decides by it.
var update = flag.Bool("update", false, "rewrite the golden texts")

// mustLoad refuses a chart with errors; warnings are not what is tried here.
func mustLoad(t testing.TB, fsys fs.FS) *tables.Set {
	t.Helper()
	set, problems := tables.Load(fsys)
	if problems.Blocked() {
		var b strings.Builder
		if err := problems.Print(&b); err != nil {
			t.Fatal(err)
		}
		t.Fatalf("the chart has problems:\n%s", &b)
	}
	return set
}

// Each case holds old/, new/, what is said of them, and the problems.
func TestCases(t *testing.T) {
	cases, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(cases) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, file := range cases {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			folders := map[string]fstest.MapFS{"old": {}, "new": {}}
			want := map[string]string{}
			for _, f := range archive.Files {
				if side, name, sub := strings.Cut(f.Name, "/"); sub {
					folders[side][name] = &fstest.MapFile{Data: f.Data}
				} else {
					want[f.Name] = string(f.Data)
				}
			}
			d := Sets(mustLoad(t, folders["old"]), mustLoad(t, folders["new"]))
			if err := d.Formatting(folders["old"], folders["new"]); err != nil {
				t.Fatal(err)
			}
			var text, problems bytes.Buffer
			if err := d.WriteText(&text); err != nil {
				t.Fatal(err)
			}
			if err := d.Problems().Print(&problems); err != nil {
				t.Fatal(err)
			}
			got := map[string]string{"text": text.String(), "problems": problems.String()}
			if *update {
				for i, f := range archive.Files {
					if now, is := got[f.Name]; is {
						archive.Files[i].Data = []byte(now)
					}
				}
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
}
