package static

import (
	"cmp"
	"errors"
	"io/fs"
	"slices"
	"strings"
)

// Unbundled is what [Bundle] makes of the folder, by its names alone: icons are as they
// are, and of a script or sheet there is only its name. It is for whoever looks at pages and
// knows that the sources have nothing wrong with them.
func Unbundled(fsys fs.FS) (Assets, error) {
	assets := Assets{names: map[string]string{}}
	if err := assets.addIcons(fsys); err != nil {
		return assets, err
	}
	for _, e := range entries {
		assets.add(e.name, e.name, []byte(e.name))
	}
	slices.SortFunc(assets.Files, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	return assets, nil
}

// Shipped reports whether a folder speaks a language with the very sources that are in the
// program, ours and content being those: bundling it then gives what bundling them gave, and
// no problem. What else lies in it is looked at where an import could find it.
func Shipped(fsys, content, ours, oursContent fs.FS, language string) bool {
	if fsys == ours && (cmp.Or(language, English) == English || content == oursContent) {
		return true
	}
	given, shipped := In(fsys, content, language), In(ours, oursContent, language)
	found := map[string]bool{}
	same := func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		found[name] = true
		if !sameFile(given, shipped, name) {
			return errOther
		}
		return nil
	}
	more := func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || found[name] {
			return err
		}
		if strings.HasPrefix(name, "icons/") || found[name+".ts"] {
			return errOther
		}
		return nil
	}
	return fs.WalkDir(ours, ".", same) == nil && fs.WalkDir(fsys, ".", more) == nil
}

var errOther = errors.New("another file")

func sameFile(a, b fs.FS, name string) bool {
	one, err := fs.ReadFile(a, name)
	two, failed := fs.ReadFile(b, name)
	return err == nil && failed == nil && string(one) == string(two)
}
