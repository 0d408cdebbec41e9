package build

import (
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// locked is a folder one file, or one folder, of which may not be read.
type locked struct {
	fs.FS
	name string
}

func (l locked) Open(name string) (fs.File, error) {
	if name == l.name {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
	}
	return l.FS.Open(name)
}

// Whatever cannot be read is named, and nothing is built without it.
func TestUnreadableFile(t *testing.T) {
	for _, name := range []string{
		"tables/joints-inch.yaml", "tables/sources.yaml", "tables/retired.yaml",
		"content/about.md", "content/measure/cap.md", "content/measure", "content/site.yaml",
		"static/matcher/index.ts", "static/parts/identify/identify.ts", "static/parts/sheet.css", "static/icons/icon.svg",
		"templates/frame.html", "templates/joint.html",
	} {
		t.Run(name, func(t *testing.T) {
			src := Embedded()
			top, rest, _ := strings.Cut(name, "/")
			for folder, fsys := range map[string]*fs.FS{"tables": &src.Tables, "content": &src.Content, "static": &src.Static, "templates": &src.Templates} {
				if folder == top {
					*fsys = locked{*fsys, rest}
				}
			}
			wantNamed(t, src, rest)
		})
	}
}

// wantNamed builds and wants a problem about the file, and no site.
func wantNamed(t *testing.T, src Sources, name string) {
	t.Helper()
	out, problems := siteOf(t, src, Options{})
	checkFinds(t, src, problems)
	if !problems.Blocked() || len(out.Files) > 0 {
		t.Fatalf("a site of %d files was built without it; problems: %v", len(out.Files), problems)
	}
	for _, p := range problems {
		if strings.Contains(p.String(), name) {
			return
		}
	}
	t.Errorf("no problem names %s:\n%v", name, problems)
}

// A link in the sources must not publish what lies outside: a stranger may have sent it.
// A source folder itself may be a link, as its keeper put it.
func TestSourcesStayInside(t *testing.T) {
	dir, outside := workingFolder(t), t.TempDir()
	secret := filepath.Join(outside, "secret.md")
	if err := os.WriteFile(secret, []byte("---\ntitle: T\nabout: A.\n---\n\nTheirs.\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	link := filepath.Join(dir, "content", "measure", "extra.md")
	for _, to := range []string{secret, "../../../../../../../../etc/hostname"} {
		if err := os.Symlink(to, link); err != nil {
			t.Fatal(err)
		}
		wantNamed(t, Folder(dir), "measure/extra.md")
		if err := os.Remove(link); err != nil {
			t.Fatal(err)
		}
	}
	moved := filepath.Join(outside, "pages")
	if err := os.CopyFS(moved, inEnglish().Content); err != nil {
		t.Fatal(err)
	}
	if err := os.RemoveAll(filepath.Join(dir, "content")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(moved, filepath.Join(dir, "content")); err != nil {
		t.Fatal(err)
	}
	if _, problems := siteOf(t, Folder(dir), Options{}); problems.Blocked() {
		t.Errorf("a source folder that is a link: %v", problems)
	}
}
