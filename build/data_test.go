package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"capspan/tables"
)

// The descriptor tells of each CSV its columns, its length and its sum; package browser
// holds it to the published schema.
func TestDataPackage(t *testing.T) {
	files := contents(mustSite(t, Options{}))
	var doc struct {
		Version   string
		Resources []struct {
			Path, Hash string
			Bytes      int
			Schema     struct{ Fields []struct{ Name string } }
		}
	}
	if err := json.Unmarshal(files["data/datapackage.json"], &doc); err != nil {
		t.Fatal(err)
	}
	set, _ := tables.Load(tables.FS)
	if doc.Version != set.Version().Name() || len(doc.Resources) != len(set.Tables) {
		t.Errorf("version %q with %d resources", doc.Version, len(doc.Resources))
	}
	for _, r := range doc.Resources {
		content := files["data/"+r.Path]
		if sum := fmt.Sprintf("sha256:%x", sha256.Sum256(content)); sum != r.Hash || len(content) != r.Bytes {
			t.Errorf("%s has %d bytes and the sum %s", r.Path, len(content), sum)
		}
		head, err := csv.NewReader(bytes.NewReader(content)).Read()
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, f := range r.Schema.Fields {
			names = append(names, f.Name)
		}
		if !slices.Equal(head, names) {
			t.Errorf("%s has the columns %q, described are %q", r.Path, head, names)
		}
	}
}

// The folder of a version has every file of the newest data with the same bytes, and
// their sums as sha256sum writes them.
func TestDataOfAVersion(t *testing.T) {
	out := mustSite(t, Options{})
	files, folder := contents(out), "data/"+out.Chart.Name()+"/"
	var sums []string
	for _, name := range slices.Sorted(maps.Keys(files)) {
		rest, of := strings.CutPrefix(name, "data/")
		if !of || strings.Contains(rest, "/") {
			continue
		}
		if string(files[folder+rest]) != string(files[name]) {
			t.Errorf("%s differs from %s", folder+rest, name)
		}
		sums = append(sums, fmt.Sprintf("%x  %s", sha256.Sum256([]byte(files[name])), rest))
	}
	got := strings.Split(strings.TrimSuffix(string(files[folder+"SHA256SUMS.txt"]), "\n"), "\n")
	slices.Sort(got)
	slices.Sort(sums)
	if !slices.Equal(got, sums) || len(sums) < 20 {
		t.Errorf("the sums are\n%s\nwant\n%s", strings.Join(got, "\n"), strings.Join(sums, "\n"))
	}
}

// What stood at an address of an earlier version still stands there after the next build,
// and the build after that; a table that is gone from the newest data goes.
func TestDataOfEarlierVersionsStays(t *testing.T) {
	dir := t.TempDir()
	const old, newer = "data/2026-01-02-0123abc/x.csv", "data/2026-03-04-4567def/x.csv"
	for _, out := range []Output{
		output(old+"=1", "data/x.csv=1", "index.html=a"),
		output(newer+"=2", "data/y.csv=2", "index.html=b"),
		output(newer+"=2", "data/y.csv=2", "index.html=c"),
	} {
		if _, err := Write(dir, out); err != nil {
			t.Fatal(err)
		}
	}
	for name, want := range map[string]string{old: "1", newer: "2", "data/y.csv": "2", "index.html": "c"} {
		if got, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name))); err != nil || string(got) != want {
			t.Errorf("%s holds %q (%v), want %q", name, got, err, want)
		}
	}
	if _, err := os.Stat(filepath.Join(dir, "data", "x.csv")); !os.IsNotExist(err) {
		t.Errorf("data/x.csv is still there: %v", err)
	}
}
