package build

import (
	"crypto/sha256"
	"fmt"
	"io/fs"
)

// summedFile is a file of the disk when it was read last, and its sum.
type summedFile struct {
	info fs.FileInfo
	sum  sum
}

// diskFile is where such a file lies.
type diskFile struct {
	folder closedFolder
	name   string
}

// sumOf is of all files below some folders; of one that cannot be read, of what is wrong with
// it. A file of the disk that is the one it was, and was no longer new then ([settled]), is not read again.
func (m *Memory) sumOf(folders ...fs.FS) sum {
	all := sha256.New()
	for n, fsys := range folders {
		fmt.Fprintf(all, "%d\n", n)
		err := fs.WalkDir(fsys, ".", func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() {
				return err
			}
			one, err := m.sumOfFile(fsys, name, d)
			fmt.Fprintf(all, "%q %x\n", name, one)
			return err
		})
		if err != nil {
			fmt.Fprintf(all, "%q\n", err)
		}
	}
	return sum(all.Sum(nil))
}

// sumOfFile is of one; a link tells nothing of what it leads to, and is read.
func (m *Memory) sumOfFile(fsys fs.FS, name string, d fs.DirEntry) (sum, error) {
	folder, disk := fsys.(closedFolder)
	if m == nil || !disk || !d.Type().IsRegular() {
		return readSum(fsys, name)
	}
	info, err := d.Info()
	if err != nil {
		return readSum(fsys, name)
	}
	at := diskFile{folder, name}
	m.mu.Lock()
	before, known := m.files[at]
	m.mu.Unlock()
	if known && same(info, before.info) {
		return before.sum, nil
	}
	made, err := readSum(fsys, name)
	if err == nil && settled(info) {
		m.mu.Lock()
		m.files[at] = summedFile{info, made}
		m.mu.Unlock()
	}
	return made, err
}

func readSum(fsys fs.FS, name string) (sum, error) {
	text, err := fs.ReadFile(fsys, name)
	return sha256.Sum256(text), err
}
