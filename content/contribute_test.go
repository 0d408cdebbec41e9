package content

import (
	"strings"
	"testing"
)

// A file that a keeper copies is coloured, however long it is: it must stay below what
// the lexers are trusted with.
func TestKeeperFilesAreColoured(t *testing.T) {
	pages, problems := Load(FS, Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for _, p := range pages {
		if p.Slug != "contribute/keeper" {
			continue
		}
		files := strings.Split(string(p.HTML), `<pre class="code"`)[1:]
		if len(files) != 4 {
			t.Fatalf("%d files", len(files))
		}
		for n, file := range files[:3] {
			if keys := strings.Count(file, `class="code__key"`); keys < 10 {
				t.Errorf("file %d has %d coloured keys", n+1, keys)
			}
		}
		return
	}
	t.Fatal("there is no page for keepers")
}
