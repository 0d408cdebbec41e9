package build

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"sync"
)

// spoolAfter is how many bytes of a site stay in memory: the shipped chart has a tenth of it.
const spoolAfter = 64 << 20

// spool takes the files of a large site as they are made, so that memory is bounded by the
// pages in the making and not by all of them: what is more than spoolAfter goes into one
// file without a name, and each [File] knows its place in it. Nothing of the site is
// touched by that; [Write] reads the files back when every problem is known. A nil spool
// leaves all in memory.
type spool struct {
	dir    string
	after  int64 // how many bytes stay in memory
	mu     sync.Mutex
	held   int64    // bytes in memory
	file   *os.File // nil until it is needed
	end    int64
	failed bool // there is no room: the rest stays in memory
}

// facts are what is known of a file since it was made.
type facts struct {
	sum   [sha256.Size]byte
	size  int64
	spool *spool // nil: the bytes are in memory
	at    int64
}

// keep makes a file of the site, with the sum of its bytes.
func (s *spool) keep(path string, content []byte, stage Stage) File {
	f := File{Path: path, Bytes: content, Stage: stage, facts: &facts{sum: sha256.Sum256(content), size: int64(len(content))}}
	if s == nil {
		return f
	}
	if at, room := s.put(content); room {
		f.Bytes, f.facts.spool, f.facts.at = nil, s, at
	}
	return f
}

// keepCopy is keep for bytes that the caller will write over.
func (s *spool) keepCopy(path string, content []byte, stage Stage) File {
	f := s.keep(path, content, stage)
	f.Bytes = bytes.Clone(f.Bytes) // nil of a file that lies elsewhere
	return f
}

// put finds a place for bytes and writes them; where that fails they stay where they are.
func (s *spool) put(content []byte) (at int64, room bool) {
	s.mu.Lock()
	if s.held+int64(len(content)) <= s.after {
		s.held += int64(len(content))
		s.mu.Unlock()
		return 0, false
	}
	if s.file == nil && !s.failed {
		s.file = scratchFile(s.dir)
	}
	if s.failed = s.failed || s.file == nil; s.failed {
		s.mu.Unlock()
		return 0, false
	}
	at = s.end
	s.end += int64(len(content))
	s.mu.Unlock()
	if _, err := s.file.WriteAt(content, at); err != nil {
		s.mu.Lock()
		s.failed = true
		s.mu.Unlock()
		return 0, false
	}
	return at, true
}

// scratchFile opens a file that is gone with the process: in the folder the site is written
// to, or the nearest above it that is there, because room for a site is where one is
// wanted. It is nil where no folder takes one.
func scratchFile(dir string) *os.File {
	for {
		file, err := os.CreateTemp(dir, scratchName)
		if err == nil {
			os.Remove(file.Name()) // a system that keeps open files by name lets Close take it away
			return file
		}
		above := filepath.Dir(dir)
		if above == dir {
			return nil
		}
		dir = above
	}
}

// close gives the room back.
func (s *spool) close() {
	if s != nil && s.file != nil {
		s.file.Close()
		os.Remove(s.file.Name())
		s.file = nil
	}
}

// Read returns the bytes of a file, wherever they lie.
func (f File) Read() ([]byte, error) {
	if f.facts == nil || f.facts.spool == nil {
		return f.Bytes, nil
	}
	content := make([]byte, f.facts.size)
	if _, err := f.facts.spool.file.ReadAt(content, f.facts.at); err != nil {
		return nil, fmt.Errorf("read %s back: %w", f.Path, err)
	}
	return content, nil
}

// mustRead is for the making of a site: a spool that gives back less than it took would
// make another site than the sources say.
func (f File) mustRead() []byte {
	content, err := f.Read()
	if err != nil {
		panic(err)
	}
	return content
}

// Size is how many bytes a file has.
func (f File) Size() int64 {
	if f.facts != nil {
		return f.facts.size
	}
	return int64(len(f.Bytes))
}

// sum is the SHA-256 of a file.
func (f File) sum() [sha256.Size]byte {
	if f.facts != nil {
		return f.facts.sum
	}
	return sha256.Sum256(f.Bytes)
}

// Equal reports whether two files are the same to the byte.
func (f File) Equal(g File) bool {
	if f.facts == nil && g.facts == nil {
		return f.Path == g.Path && f.Stage == g.Stage && bytes.Equal(f.Bytes, g.Bytes)
	}
	return f.Path == g.Path && f.Stage == g.Stage && f.sum() == g.sum()
}
