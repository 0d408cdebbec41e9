package build

import (
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"path"
	"slices"
	"strings"
)

// manifestHead is the first line of the list of files; the paths follow, one a line.
const manifestHead = "Written by capspan, which removes a file of this list once the site no longer has it."

// checkOwner refuses a folder that holds something and no list of ours.
func checkOwner(root *os.Root, dir string) error {
	entries, err := fs.ReadDir(root.FS(), ".")
	if err != nil {
		return fmt.Errorf("read the output folder: %w", err)
	}
	for _, e := range entries {
		if strings.HasPrefix(e.Name(), ".capspan-") { // a build killed before its list was there
			continue
		}
		// Looked for after the files were seen: a build that runs beside this one writes its list first.
		if _, err := root.Lstat(manifestName); err == nil {
			return nil
		}
		return fmt.Errorf("%q holds files that no build of ours wrote (%q is one); "+
			"name a new or empty folder, or empty this one by hand", dir, e.Name())
	}
	return nil
}

// readManifest returns the files an earlier build wrote; none in a new folder.
func readManifest(root *os.Root) (map[string]bool, error) {
	data, err := root.ReadFile(manifestName)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, fmt.Errorf("read the list of written files: %w", err)
	}
	lines := strings.Split(strings.TrimSuffix(string(data), "\n"), "\n")
	if lines[0] != manifestHead {
		return nil, fmt.Errorf("%s is not a list of ours; name another folder or remove that file", manifestName)
	}
	ours := make(map[string]bool, len(lines))
	for _, name := range lines[1:] {
		// A line that somebody bent must not name a file elsewhere.
		if !fs.ValidPath(name) || name == "." {
			return nil, fmt.Errorf("%s: %q is no path of a written file; empty the folder by hand", manifestName, name)
		}
		ours[name] = true
	}
	return ours, nil
}

// writeManifest replaces the list, unless it says the same already.
func (w *writer) writeManifest(files map[string]bool) error {
	var b strings.Builder
	b.WriteString(manifestHead + "\n")
	for _, name := range slices.Sorted(maps.Keys(files)) {
		b.WriteString(name + "\n")
	}
	list := File{Path: manifestName, Bytes: []byte(b.String())}
	if w.holds(list) {
		return nil
	}
	return w.replace(list.Path, list.Bytes)
}

// removeScratch takes away what a killed build left half written. It looks only into
// folders that hold files of the site, and not into those that are known to have none.
func (w *writer) removeScratch(files map[string]bool) error {
	folders := map[string]bool{".": true}
	for name := range files {
		for dir := path.Dir(name); !folders[dir]; dir = path.Dir(dir) {
			folders[dir] = true
		}
	}
	sorted := slices.Sorted(maps.Keys(folders)) // those above come first
	infos := w.known.lookAll(sorted)
	for n, dir := range sorted {
		if w.known.quiet(dir, infos[n]) {
			continue
		}
		info := infos[n]
		entries, err := fs.ReadDir(w.root.FS(), dir)
		if err != nil {
			continue // not made yet, or a file; writing into it will tell
		}
		for _, e := range entries {
			if strings.HasPrefix(e.Name(), scratchName) {
				if err := w.discard(path.Join(dir, e.Name())); err != nil {
					return err
				}
				info = nil // it has just changed
			}
		}
		w.known.through(dir, info)
	}
	return nil
}

// checkForeign refuses to write over a file that no build of ours put there, before
// anything is written. The same bytes are no loss to anybody.
func (w *writer) checkForeign(files []File) error {
	for _, f := range files {
		if w.ours[f.Path] {
			continue
		}
		if _, err := w.root.Lstat(f.Path); err != nil || w.holds(f) || w.onlyOurs(f.Path) {
			continue
		}
		return fmt.Errorf("%q is there already, and no build of ours wrote it; move it away and build again",
			path.Join(w.dir, f.Path))
	}
	return nil
}

// onlyOurs reports whether the path is a folder that holds our files and nothing else.
func (w *writer) onlyOurs(dir string) bool {
	found := false
	err := fs.WalkDir(w.root.FS(), dir, func(name string, d fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case !d.IsDir() && !w.ours[name]:
			return fs.ErrExist
		case !d.IsDir():
			found = true
		}
		return nil
	})
	return err == nil && found
}
