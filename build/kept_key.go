package build

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
)

// keptFrom is how many bytes of tables there must be for a look into the folder of kept
// charts to be worth it.
const keptFrom = 200_000

// keptKey is the hash of all that a chart is compiled from: the tables, the core's sources,
// the words of the language, and the program that reads them. It is empty where the tables
// are too small to be kept.
func keptKey(src Sources) (string, error) {
	of := src.layered().Tables
	names, size, err := filesOf(of, ".")
	if err != nil || size < keptFrom {
		return "", err
	}
	h := sha256.New()
	fmt.Fprintln(h, keptFormat, handRows, src.language, programMark())
	if err := addSums(h, of, names); err != nil {
		return "", err
	}
	for _, more := range []struct {
		fsys   fs.FS
		folder string
	}{{src.Static, "matcher"}, {src.Content, src.language}} {
		if more.folder == "" {
			continue
		}
		names, _, err := filesOf(more.fsys, more.folder)
		if errors.Is(err, fs.ErrNotExist) {
			continue // English has no folder
		}
		if err != nil {
			return "", err
		}
		if err := addSums(h, more.fsys, names); err != nil {
			return "", err
		}
	}
	return hex.EncodeToString(h.Sum(nil)), nil
}

// filesOf lists the files of a folder, and how long they are together.
func filesOf(fsys fs.FS, folder string) (names []string, size int64, err error) {
	err = fs.WalkDir(fsys, folder, func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		info, err := entry.Info()
		if err != nil {
			return err
		}
		names, size = append(names, name), size+info.Size()
		return nil
	})
	return names, size, err
}

// addSums reads files on all cores; their sums are added in order.
func addSums(h io.Writer, fsys fs.FS, names []string) error {
	sums, fails := make([]string, len(names)), make([]error, len(names))
	onAllCores(len(names), func(n int) {
		text, err := fs.ReadFile(fsys, names[n])
		sums[n], fails[n] = hexSum(text), err
	})
	for n, name := range names {
		fmt.Fprintf(h, "%q %s\n", name, sums[n])
	}
	return errors.Join(fails...)
}

// programMark tells one build of the program from another.
func programMark() string {
	name, err := os.Executable()
	if err != nil {
		return ""
	}
	info, err := os.Stat(name)
	if err != nil {
		return ""
	}
	return fmt.Sprint(info.Size(), info.ModTime().UnixNano())
}

func hexSum(text []byte) string {
	sum := sha256.Sum256(text)
	return hex.EncodeToString(sum[:])
}
