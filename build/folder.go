package build

import (
	"io/fs"
	"os"
	"path/filepath"
)

// Folder returns the folders of a working copy: dir/tables, dir/content and so on. Each
// may itself be a link; nothing below it is read through a link that leads out of it, so
// that what a stranger sends in cannot publish a file of this machine.
func Folder(dir string) Sources {
	sub := func(name string) fs.FS { return closedFolder(filepath.Join(dir, name)) }
	return Sources{Tables: sub("tables"), Content: sub("content"), Static: sub("static"), Templates: sub("templates")}
}

// closedFolder is a folder of the disk that is opened anew for each file: one that is
// removed and comes back, as when another branch is checked out, is found again.
type closedFolder string

// Open implements [fs.FS].
func (f closedFolder) Open(name string) (fs.File, error) {
	if !fs.ValidPath(name) {
		return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrInvalid}
	}
	file, err := os.OpenInRoot(string(f), filepath.FromSlash(name))
	if err != nil {
		return nil, err // not the nil *os.File in an fs.File
	}
	return file, nil
}
