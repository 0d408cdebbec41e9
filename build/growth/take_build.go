package main

import (
	"io/fs"
	"os"
	"path/filepath"
)

// takeBuild makes the whole site into an empty folder.
func takeBuild(c *catalogueFolder, figures map[string]figure) error {
	out := c.root + "-site"
	defer os.RemoveAll(out)
	s, err := run(c.program, "build", "--quiet", "--root", c.root, "--out", out)
	if err != nil {
		return err
	}
	files, bytes := 0, int64(0)
	err = filepath.WalkDir(out, func(_ string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		info, err := d.Info()
		if err == nil {
			files, bytes = files+1, bytes+info.Size()
		}
		return err
	})
	figures["full build"] = seconds(s.took)
	figures["its memory at most"] = megabytes(s.peak)
	figures["its files"] = count(files)
	figures["their bytes"] = megabytes(bytes)
	return err
}
