package build

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"sync"
	"time"
)

// Whoever writes to a folder again and again does not read each file of it every time. A
// [Memory] knows of the folder it wrote to last what the bytes of each file were and what
// the system said of it then: which file it is, its size, and when it was changed. As long
// as that is the same, so are the bytes. What somebody else did to the folder shows in it,
// and is then read as ever.

// known is that; nil knows nothing and learns nothing.
type known struct {
	dir     string
	mu      sync.Mutex
	files   map[string]knownFile
	folders map[string]fs.FileInfo // those without a scratch file
	real    map[string]bool        // folders that are no links, in this run
}

type knownFile struct {
	sum  sum
	info fs.FileInfo
}

// Write is [Write] of whoever writes what it builds with the memory.
func (m *Memory) Write(dir string, out Output) (Report, error) {
	if m.disk == nil || m.disk.dir != dir {
		m.disk = &known{dir: dir, files: map[string]knownFile{}, folders: map[string]fs.FileInfo{}}
	}
	m.disk.real = map[string]bool{}
	return write(dir, out, m.disk)
}

// settled reports whether a change from now on must show in the time of the last one. A
// system counts in ticks, some in whole seconds or two, and a change in the same tick as one
// before does not show.
func settled(info fs.FileInfo) bool {
	tick := 50 * time.Millisecond
	if info.ModTime().Nanosecond() == 0 {
		tick = 2500 * time.Millisecond
	}
	return time.Since(info.ModTime()) > tick
}

// look asks the system about a file or folder. It neither reads nor writes, so it may take
// the short way, past [os.Root].
func (k *known) look(name string) (fs.FileInfo, error) {
	return os.Lstat(filepath.Join(k.dir, filepath.FromSlash(name)))
}

// same reports whether the system says the same of a file as it did then.
func same(now, then fs.FileInfo) bool {
	return os.SameFile(now, then) && now.Size() == then.Size() && now.Mode() == then.Mode() && now.ModTime().Equal(then.ModTime())
}

// has reports whether the folder is known to hold the very file.
func (k *known) has(f File) bool {
	if k == nil {
		return false
	}
	k.mu.Lock()
	then, is := k.files[f.Path]
	k.mu.Unlock()
	if !is || then.sum != f.sum() || !k.real[path.Dir(f.Path)] {
		return false
	}
	now, err := k.look(f.Path)
	return err == nil && same(now, then.info)
}

// learn is told that the folder holds a file; info is from before its bytes were read.
func (k *known) learn(f File, info fs.FileInfo) {
	if k == nil || !settled(info) {
		return
	}
	k.mu.Lock()
	k.files[f.Path] = knownFile{f.sum(), info}
	k.mu.Unlock()
}

// forget is told that a file is no longer part of the site.
func (k *known) forget(name string) {
	if k != nil {
		delete(k.files, name)
	}
}

// lookAll asks the system about many; nil stands for one that it says nothing of.
func (k *known) lookAll(names []string) []fs.FileInfo {
	infos := make([]fs.FileInfo, len(names))
	if k != nil {
		onAllCores(len(names), func(n int) { infos[n], _ = k.look(names[n]) })
	}
	return infos
}

// quiet reports whether nothing has come into a folder or left it since it was looked
// through. It is told what the system says of it now, and asked of a folder after those
// above: what lies behind a link is not known.
func (k *known) quiet(folder string, now fs.FileInfo) bool {
	if k == nil || now == nil {
		return false
	}
	above := path.Dir(folder)
	k.real[folder] = folder == "." || now.IsDir() && (above == "." || k.real[above])
	then, is := k.folders[folder]
	return is && k.real[folder] && same(now, then)
}

// through is told that a folder was looked through; info is from before.
func (k *known) through(folder string, info fs.FileInfo) {
	if k == nil {
		return
	}
	delete(k.folders, folder)
	if info != nil && settled(info) {
		k.folders[folder] = info
	}
}
