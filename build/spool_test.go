package build

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"

	catalogue "capspan/templates/words"
)

// A site whose files wait in the spool is written to the byte like one in memory, and no
// trace of the spool stays.
func TestSpool(t *testing.T) {
	want := contents(mustSite(t, Options{}))
	opt := Options{Language: catalogue.English}
	for name, room := range map[string]*spool{"all": {}, "some": {after: 1 << 20}, "no room": {failed: true}} {
		t.Run(name, func(t *testing.T) {
			parent := t.TempDir()
			dir := filepath.Join(parent, "site")
			room.dir = dir
			languages, problems := load(inEnglish(), opt)
			out, problems := opt.build(inEnglish(), languages, problems, room)
			out.spool = room
			defer out.Close()
			if problems.Blocked() {
				t.Fatal(problems)
			}
			away := 0
			for _, f := range out.Files {
				if f.Bytes == nil {
					away++
				}
			}
			if (away > 0) != (name != "no room") {
				t.Errorf("%d of %d files are in the spool", away, len(out.Files))
			}
			if _, err := Write(dir, out); err != nil {
				t.Fatal(err)
			}
			got, err := Read(dir)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(want, contents(got), wholeFiles); diff != "" {
				t.Error(diff)
			}
			if again, err := Write(dir, out); err != nil || again.Written > 0 || again.Same != len(want) {
				t.Errorf("the same again: %+v, %v", again, err)
			}
			if left, _ := os.ReadDir(parent); len(left) != 1 {
				t.Errorf("left beside the site: %v", left)
			}
		})
	}
}
