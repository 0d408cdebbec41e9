package build

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What is told before is what Write then does, and looking changes nothing.
func TestDiffer(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "dist")
	a := func(name, text string) File { return File{Path: name, Bytes: []byte(text), Stage: Pages} }
	one := Output{Files: []File{a("a/index.html", "1"), a("data/2020-01-01-0a1b2c3/x.csv", "1"), a("gone/index.html", "1"), a("same", "1")}}
	two := Output{Files: []File{a("a/index.html", "2"), a("new", "2"), a("same", "1")}}
	for _, test := range []struct {
		site          Output
		write, remove []string
		same          int
	}{
		{one, []string{"a/index.html", "data/2020-01-01-0a1b2c3/x.csv", "gone/index.html", "same"}, nil, 0},
		{one, nil, nil, 4},
		{two, []string{"a/index.html", "new"}, []string{"gone/index.html"}, 1},
		{two, nil, nil, 3},
	} {
		before, _ := readFolderIfThere(dir)
		d, err := Differ(dir, test.site)
		if err != nil {
			t.Fatal(err)
		}
		var write []string
		for _, f := range d.Write {
			write = append(write, f.Path)
		}
		if !slices.Equal(write, test.write) || !slices.Equal(d.Remove, test.remove) || d.Same != test.same || len(d.Foreign) > 0 {
			t.Errorf("got %q, %q, %d, %q; want %q, %q, %d", write, d.Remove, d.Same, d.Foreign, test.write, test.remove, test.same)
		}
		after, _ := readFolderIfThere(dir)
		if diff := cmp.Diff(before, after); diff != "" {
			t.Errorf("looking changed the folder:\n%s", diff)
		}
		report, err := Write(dir, test.site)
		if err != nil || report.Written != len(test.write) || report.Removed != len(test.remove) || report.Same != test.same {
			t.Errorf("Write did %+v, %v", report, err)
		}
	}
}

// Files of somebody else are told; once they are adopted Write goes over those of the
// site's names and leaves the others.
func TestAdopt(t *testing.T) {
	dir := t.TempDir()
	spoil(t, dir, "index.html", "theirs")
	spoil(t, dir, "letter.txt", "dear all")
	site := small("index.html", "ours")
	foreign := func(want ...string) {
		t.Helper()
		d, err := Differ(dir, site)
		if err != nil || !slices.Equal(d.Foreign, want) {
			t.Errorf("got %q, %v, want %q", d.Foreign, err, want)
		}
	}
	foreign("index.html", "letter.txt")
	if _, err := Write(dir, site); err == nil {
		t.Error("a folder of somebody else was written to")
	}
	if err := Adopt(dir, []string{"index.html", sumsName}); err != nil {
		t.Fatal(err)
	}
	foreign()
	mustWrite(t, dir, site)
	site = small("new.html", "ours")
	spoil(t, dir, "new.html", "theirs")
	foreign("new.html")
	if err := Adopt(dir, []string{"new.html"}); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dir, site)
	got, err := readFolderIfThere(dir)
	want := map[string]string{"letter.txt": "dear all", "new.html": "ours", sumsName: string(site.Files[0].Bytes)}
	if diff := cmp.Diff(want, got); diff != "" || err != nil {
		t.Errorf("(-want +got), %v:\n%s", err, diff)
	}
}

func readFolderIfThere(dir string) (map[string]string, error) {
	got := map[string]string{}
	entries, err := os.ReadDir(dir)
	for _, e := range entries {
		if e.Name() == manifestName || e.Name() == lockName {
			continue
		}
		data, _ := os.ReadFile(filepath.Join(dir, e.Name())) // nothing of a folder
		got[e.Name()] = string(data)
	}
	return got, err
}
