package build

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// A keeper's folder is watched as a working folder is: an overlay that comes, a line of it
// that changes, and the keeper's name.
func TestServeFollowsOwnFolder(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../cmd/capspan/example")); err != nil {
		t.Fatal(err)
	}
	overlay := filepath.Join(dir, "overlay", "counter.yaml")
	text, err := os.ReadFile(overlay)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(filepath.Dir(overlay)); err != nil {
		t.Fatal(err)
	}
	address, builds := serving(t, ServeOptions{Sources: OwnFolder(dir), Watch: dir, Addr: "127.0.0.1:0"})
	if b := soon(t, "first build", builds); b.Kept || len(b.Problems) > 0 {
		t.Fatalf("first build: %+v", b)
	}
	says := func(want string, is bool) {
		t.Helper()
		if _, page := fetch(t, address+"joint/1310/"); strings.Contains(page, want) != is {
			t.Errorf("the page of the row says %q: %v", want, !is)
		}
	}
	says("MS-1310", false)
	if err := os.Mkdir(filepath.Dir(overlay), 0o755); err != nil {
		t.Fatal(err)
	}
	soon(t, "build after a new folder", builds)
	if err := os.WriteFile(overlay, text, 0o644); err != nil {
		t.Fatal(err)
	}
	soon(t, "build after an overlay", builds)
	says("MS-1310", true)
	replaceIn(t, filepath.Join(dir, "site.yaml"), "Millbrook School", "Overbrook School")
	soon(t, "build after another name", builds)
	says("Overbrook School workshop", true)
}

// A link in the folder must not publish what lies outside it.
func TestOwnFolderStaysInside(t *testing.T) {
	outside := filepath.Join(t.TempDir(), "secret.md")
	if err := os.WriteFile(outside, []byte("---\ntitle: T\nabout: A.\n---\n\nTheirs.\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"pages/secret.md", "logo.svg", "overlay/more.yaml", "words/en/home.yaml", "tables/more.yaml"} {
		dir := t.TempDir()
		if err := os.CopyFS(dir, os.DirFS("../cmd/capspan/example")); err != nil {
			t.Fatal(err)
		}
		link := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.RemoveAll(link); err != nil {
			t.Fatal(err)
		}
		if err := os.Symlink(outside, link); err != nil {
			t.Fatal(err)
		}
		_, problems := siteOf(t, OwnFolder(dir), Options{})
		if !problems.Blocked() {
			t.Errorf("%s leads out of the folder and a site is built", name)
		}
	}
}
