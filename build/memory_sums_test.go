package build

import (
	"os"
	"path/filepath"
	"testing"
	"time"
)

// A folder of the disk is summed up as if every file of it were read, whatever happened to
// one: its length and day may be the same.
func TestSumOfWhatLiesOnDisk(t *testing.T) {
	dir := t.TempDir()
	path := func(name string) string { return filepath.Join(dir, name) }
	write := func(name, text string, day time.Time) {
		t.Helper()
		if err := os.WriteFile(path(name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if err := os.Chtimes(path(name), day, day); err != nil {
			t.Fatal(err)
		}
	}
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	old, now := time.Now().Add(-time.Hour), time.Now()
	write("old", "1", old)
	write("new", "1", now)
	write("aim", "1", old)
	must(os.Symlink("aim", path("link")))
	must(os.Mkdir(path("below"), 0o755))
	write("below/deep", "1", old)

	m, folder := NewMemory(), closedFolder(dir)
	before := m.sumOf(folder)
	if len(m.files) != 3 {
		t.Fatalf("%d files are known, not those that are old", len(m.files))
	}
	for _, change := range []struct {
		name string
		do   func()
	}{
		{"longer", func() { write("old", "12", old) }},
		{"another day", func() { write("old", "34", old.Add(time.Second)) }},
		{"another file", func() {
			write("other", "56", old.Add(time.Second))
			must(os.Rename(path("other"), path("old")))
		}},
		{"written twice in a tick", func() { write("new", "2", now) }},
		{"what a link leads to", func() { write("aim", "2", old.Add(time.Second)) }},
		{"below", func() { write("below/deep", "2", now) }},
		{"renamed", func() { must(os.Rename(path("old"), path("older"))) }},
		{"gone", func() { must(os.Remove(path("older"))) }},
		{"unreadable", func() { must(os.Symlink("nowhere", path("lost"))) }},
	} {
		change.do()
		got, want := m.sumOf(folder), (*Memory)(nil).sumOf(folder)
		if got != want {
			t.Errorf("%s: the sum is not that of the files", change.name)
		}
		if got == before {
			t.Errorf("%s: the sum is as it was", change.name)
		}
		before = got
	}
}
