package publish

import (
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"
)

// replaced is a folder with one text of one file replaced; it must be there once.
func replaced(t *testing.T, folder fs.FS, name, old, new string) fs.FS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(folder, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(folder, path)
		files[path] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	text := string(files[name].Data)
	if strings.Count(text, old) != 1 {
		t.Fatalf("%s does not hold %q once", name, old)
	}
	files[name].Data = []byte(strings.Replace(text, old, new, 1))
	return files
}
