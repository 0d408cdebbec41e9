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

// Difference is what a [Write] into a folder would do. All lists are sorted.
type Difference struct {
	Write   []File   // new, or with other bytes
	Remove  []string // of an earlier build
	Same    int
	Foreign []string // files that somebody else put there, where no list of ours is or in the way
}

// Differ looks and writes nothing. A folder that is not there is an empty one.
func Differ(dir string, out Output) (Difference, error) {
	var d Difference
	root, err := os.OpenRoot(dir)
	if errors.Is(err, fs.ErrNotExist) {
		d.Write = slices.Clone(out.Files)
		return d, nil
	}
	if err != nil {
		return d, fmt.Errorf("open the folder: %w", err)
	}
	defer root.Close()
	w := &writer{root: root, dir: dir}
	if w.ours, err = readManifest(root); err != nil {
		return d, err
	}
	wanted := map[string]bool{}
	for _, f := range out.Files {
		wanted[f.Path] = true
		if w.holds(f) {
			d.Same++
			continue
		}
		d.Write = append(d.Write, f)
		if _, err := root.Lstat(f.Path); err == nil && !w.ours[f.Path] && !w.onlyOurs(f.Path) {
			d.Foreign = append(d.Foreign, f.Path)
		}
	}
	if w.ours == nil {
		if d.Foreign, err = foreignIn(root, out.Files, w); err != nil {
			return d, err
		}
	}
	for _, name := range slices.Sorted(maps.Keys(w.ours)) {
		if _, err := root.Lstat(name); err == nil && !wanted[name] && !Stays(name) {
			d.Remove = append(d.Remove, name)
		}
	}
	return d, nil
}

// foreignIn lists the files of a folder without a list of ours, but for those that are
// the site's to the byte.
func foreignIn(root *os.Root, files []File, w *writer) ([]string, error) {
	of := map[string]File{}
	for _, f := range files {
		of[f.Path] = f
	}
	var list []string
	err := fs.WalkDir(root.FS(), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(path.Base(name), ".capspan-") {
			return err
		}
		if f, known := of[name]; !known || !w.holds(f) {
			list = append(list, name)
		}
		return nil
	})
	if err != nil {
		return nil, fmt.Errorf("read the folder: %w", err)
	}
	return list, nil
}

// Adopt makes a folder with somebody else's files one that [Write] may write to, and
// those files of it that are named ones it may write over. It touches none of them.
func Adopt(dir string, names []string) error {
	root, err := os.OpenRoot(dir)
	if err != nil {
		return fmt.Errorf("open the folder: %w", err)
	}
	defer root.Close()
	w := &writer{root: root, dir: dir}
	if w.ours, err = readManifest(root); err != nil {
		return err
	}
	all := map[string]bool{}
	maps.Copy(all, w.ours)
	for _, name := range names {
		all[name] = true
	}
	return w.writeManifest(all)
}
