package build

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// What was written is read back: the same files in the same stages.
func TestRead(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "dist")
	want := mustSite(t, Options{})
	mustWrite(t, dir, want)
	got, err := Read(dir)
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want.Files, got.Files); diff != "" {
		t.Errorf("(-written +read):\n%.2000s", diff)
	}
}

// Open data of an earlier version, which the list of sums does not name, is read too; a
// page that a cut off build left is not.
func TestReadEarlierData(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "dist")
	const earlier, left = "data/2020-01-01-0a1b2c3/joints.csv", "left/index.html"
	site := small("index.html", "a")
	site.Files = append(site.Files, File{Path: earlier, Bytes: []byte("id\n"), Stage: Pages}, File{Path: left, Stage: Pages})
	mustWrite(t, dir, site)
	mustWrite(t, dir, small("index.html", "b"))
	if err := os.MkdirAll(filepath.Join(dir, "left"), 0o755); err != nil {
		t.Fatal(err)
	}
	spoil(t, dir, left, "half")
	spoil(t, dir, manifestName, manifestHead+"\n"+strings.Join([]string{sumsName, earlier, "index.html", left}, "\n")+"\n")
	got, err := Read(dir)
	if err != nil {
		t.Fatal(err)
	}
	names := []string{}
	for _, f := range got.Files {
		names = append(names, f.Path)
	}
	if diff := cmp.Diff([]string{sumsName, earlier, "index.html"}, names); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// A folder that is not the whole site is refused, with what is wrong and what helps.
func TestReadRefuses(t *testing.T) {
	tests := map[string]struct {
		spoil func(dir string) error
		want  string
	}{
		"no folder":       {func(dir string) error { return os.RemoveAll(dir) }, "there is no folder"},
		"not of ours":     {func(dir string) error { return os.Remove(filepath.Join(dir, manifestName)) }, "holds no whole site of ours"},
		"never finished":  {func(dir string) error { return os.Remove(filepath.Join(dir, sumsName)) }, "holds no whole site of ours"},
		"changed":         {func(dir string) error { return os.WriteFile(filepath.Join(dir, "index.html"), nil, 0o644) }, "index.html is not as SHA256SUMS.txt says"},
		"missing":         {func(dir string) error { return os.Remove(filepath.Join(dir, "index.html")) }, "index.html is not as SHA256SUMS.txt says"},
		"sums of nothing": {func(dir string) error { return os.WriteFile(filepath.Join(dir, sumsName), []byte("x\n"), 0o644) }, "SHA256SUMS.txt is not as"},
		"a bent list": {func(dir string) error {
			return os.WriteFile(filepath.Join(dir, manifestName), []byte(manifestHead+"\n../secret\n"), 0o644)
		}, "no path of a written file"},
		"a link out": {func(dir string) error {
			os.Remove(filepath.Join(dir, "index.html"))
			return os.Symlink("/etc/hostname", filepath.Join(dir, "index.html"))
		}, "read the site"},
	}
	for name, test := range tests {
		t.Run(name, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "dist")
			mustWrite(t, dir, small("index.html", "a"))
			if err := test.spoil(dir); err != nil {
				t.Fatal(err)
			}
			if out, err := Read(dir); err == nil || !strings.Contains(err.Error(), test.want) || len(out.Files) > 0 {
				t.Errorf("got %v and %d files, want an error that tells %q", err, len(out.Files), test.want)
			}
		})
	}
}

// small is a site of one page and its sums.
func small(name, text string) Output {
	files := []File{{Path: name, Bytes: []byte(text), Stage: Pages}}
	return Output{Files: append([]File{{Path: sumsName, Bytes: sumsFile(files), Stage: Hosting}}, files...)}
}

func spoil(t *testing.T, dir, name, text string) {
	t.Helper()
	if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
}
