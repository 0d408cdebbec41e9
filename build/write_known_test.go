package build

import (
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// age makes everything in a folder as old as if it had been written an hour ago.
func age(t *testing.T, dir string) {
	t.Helper()
	then := time.Now().Add(-time.Hour)
	err := filepath.Walk(dir, func(name string, _ os.FileInfo, err error) error {
		if err != nil {
			return err
		}
		return os.Chtimes(name, then, then)
	})
	if err != nil {
		t.Fatal(err)
	}
}

// knownSite is a folder that a memory has written twice to, and the site in it: so it has
// read each file and knows it.
func knownSite(t *testing.T) (m *Memory, dir string, site Output) {
	t.Helper()
	m, dir, site = NewMemory(), filepath.Join(t.TempDir(), "dist"), output("assets/a.css=one", "index.html=home", "joint/1310/index.html=joint")
	for range 2 {
		if _, err := m.Write(dir, site); err != nil {
			t.Fatal(err)
		}
		age(t, dir)
	}
	if _, err := m.Write(dir, site); err != nil { // in which the folders were looked through
		t.Fatal(err)
	}
	return m, dir, site
}

// overwrite writes into the very file, as an editor may do it, and gives it that time.
func overwrite(t *testing.T, name, text string, at time.Time) {
	t.Helper()
	file, err := os.OpenFile(name, os.O_WRONLY|os.O_TRUNC, 0)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := file.WriteString(text); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	if err := os.Chtimes(name, at, at); err != nil {
		t.Fatal(err)
	}
}

// What is known of a file is believed: other bytes are not found where the system says that
// nothing has happened, because nobody reads them. Without a memory they are.
func TestWriteReadsNothingKnown(t *testing.T) {
	m, dir, site := knownSite(t)
	name := filepath.Join(dir, "index.html")
	info, err := os.Stat(name)
	if err != nil {
		t.Fatal(err)
	}
	overwrite(t, name, "hoax", info.ModTime())
	report, err := m.Write(dir, site)
	if diff := cmp.Diff(Report{Same: 3}, report); err != nil || diff != "" {
		t.Errorf("with a memory (-want +got), %v:\n%s", err, diff)
	}
	if diff := cmp.Diff(Report{Written: 1, Same: 2, Bytes: 4}, mustWrite(t, dir, site)); diff != "" {
		t.Errorf("without (-want +got):\n%s", diff)
	}
}

// Whatever somebody does to a folder that is known, the next write mends as it does one that
// is not.
func TestWriteMendsWhatWasKnown(t *testing.T) {
	for name, test := range map[string]struct {
		harm func(t *testing.T, dir string)
		want Report
	}{
		"nothing": {func(t *testing.T, dir string) {}, Report{Same: 3}},
		"other bytes of the same length": {func(t *testing.T, dir string) {
			overwrite(t, filepath.Join(dir, "index.html"), "hoax", time.Now())
		}, Report{Written: 1, Same: 2, Bytes: 4}},
		"other bytes, as old as the file": {func(t *testing.T, dir string) {
			name := filepath.Join(dir, "index.html")
			info, err := os.Stat(name)
			if err != nil {
				t.Fatal(err)
			}
			overwrite(t, name, "longer", info.ModTime())
		}, Report{Written: 1, Same: 2, Bytes: 4}},
		"another file in its place": {func(t *testing.T, dir string) {
			name := filepath.Join(dir, "index.html")
			info, err := os.Stat(name)
			if err != nil {
				t.Fatal(err)
			}
			if err := os.Rename(name, name+".old"); err != nil {
				t.Fatal(err)
			}
			if err := os.WriteFile(name, []byte("hoax"), 0o644); err != nil {
				t.Fatal(err)
			}
			if err := os.Chtimes(name, info.ModTime(), info.ModTime()); err != nil {
				t.Fatal(err)
			}
		}, Report{Written: 1, Same: 2, Bytes: 4}},
		"a file gone": {func(t *testing.T, dir string) {
			if err := os.Remove(filepath.Join(dir, "joint/1310/index.html")); err != nil {
				t.Fatal(err)
			}
		}, Report{Written: 1, Same: 2, Bytes: 5}},
		"a link to the file": {func(t *testing.T, dir string) {
			name := filepath.Join(dir, "index.html")
			if err := os.Rename(name, name+".old"); err != nil {
				t.Fatal(err)
			}
			if err := os.Symlink("index.html.old", name); err != nil {
				t.Fatal(err)
			}
		}, Report{Written: 1, Same: 2, Bytes: 4}},
		"a link to its folder": {func(t *testing.T, dir string) {
			if err := os.Rename(filepath.Join(dir, "joint"), filepath.Join(dir, "old")); err != nil {
				t.Fatal(err)
			}
			if err := os.Symlink("old", filepath.Join(dir, "joint")); err != nil {
				t.Fatal(err)
			}
		}, Report{Same: 3}},
		"the whole folder gone": {func(t *testing.T, dir string) {
			if err := os.RemoveAll(dir); err != nil {
				t.Fatal(err)
			}
		}, Report{Written: 3, Bytes: 12}},
		"a killed build's scratch file": {func(t *testing.T, dir string) {
			if err := os.WriteFile(filepath.Join(dir, "joint/1310", scratchName+"7"), []byte("half"), 0o644); err != nil {
				t.Fatal(err)
			}
		}, Report{Same: 3}},
	} {
		t.Run(name, func(t *testing.T) {
			m, dir, site := knownSite(t)
			test.harm(t, dir)
			report, err := m.Write(dir, site)
			if diff := cmp.Diff(test.want, report); err != nil || diff != "" {
				t.Errorf("(-want +got), %v:\n%s", err, diff)
			}
			for _, f := range site.Files {
				if got, err := os.ReadFile(filepath.Join(dir, f.Path)); string(got) != string(f.Bytes) {
					t.Errorf("%s is %q, %v", f.Path, got, err)
				}
			}
			if _, err := os.Lstat(filepath.Join(dir, "joint/1310", scratchName+"7")); err == nil {
				t.Error("the scratch file is still there")
			}
		})
	}
}

// A folder that has become a link out of the site is refused by a memory too.
func TestWriteKnownStaysInside(t *testing.T) {
	m, dir, site := knownSite(t)
	away := filepath.Join(t.TempDir(), "away")
	if err := os.Rename(filepath.Join(dir, "joint"), away); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(away, filepath.Join(dir, "joint")); err != nil {
		t.Fatal(err)
	}
	_, want := Write(dir, site)
	if _, err := m.Write(dir, site); want == nil || err == nil || err.Error() != want.Error() {
		t.Errorf("%v, without a memory %v", err, want)
	}
}

// What is so new that a change in the same tick of the clock would not show is not known: it
// is read once more.
func TestWriteKnowsNothingFresh(t *testing.T) {
	m, dir, site := NewMemory(), filepath.Join(t.TempDir(), "dist"), output("index.html=home")
	for range 2 {
		if _, err := m.Write(dir, site); err != nil {
			t.Fatal(err)
		}
		now := time.Now()
		if err := os.Chtimes(filepath.Join(dir, "index.html"), now, now); err != nil {
			t.Fatal(err)
		}
	}
	name := filepath.Join(dir, "index.html")
	info, err := os.Stat(name)
	if err != nil {
		t.Fatal(err)
	}
	if report, err := m.Write(dir, site); err != nil || report.Same != 1 {
		t.Fatal(report, err)
	}
	overwrite(t, name, "hoax", info.ModTime())
	if report, err := m.Write(dir, site); err != nil || report.Written != 1 {
		t.Errorf("%+v, %v", report, err)
	}
}
