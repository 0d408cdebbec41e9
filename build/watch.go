package build

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/fsnotify/fsnotify"
)

// settle is how long the folders must be quiet before a build: an editor's save is
// several events, and a program that unpacks files sends hundreds.
const settle = 20 * time.Millisecond

// longest is how long a build is put off while the events go on.
const longest = 500 * time.Millisecond

// sourceFolders are watched with everything below them: those of a working folder and those of a
// keeper's own, where some are files.
var sourceFolders = slices.Concat([]string{"content", "static", "templates"}, ownEntries)

// watcher tells when a source may have changed. Folders are watched rather than files:
// most editors save by writing another file and renaming it over the old one.
type watcher struct {
	dir    string
	notify *fsnotify.Watcher
}

func newWatcher(dir string) (*watcher, error) {
	notify, err := fsnotify.NewWatcher()
	if err != nil {
		return nil, err
	}
	w := &watcher{dir: filepath.Clean(dir), notify: notify}
	// The root too, without what is below: a source folder may go and come back.
	if err := notify.Add(w.dir); err != nil {
		return nil, errors.Join(err, notify.Close())
	}
	for _, name := range sourceFolders {
		if err := w.add(filepath.Join(w.dir, name)); err != nil {
			return nil, errors.Join(err, notify.Close())
		}
	}
	return w, nil
}

func (w *watcher) close() { w.notify.Close() }

// add watches a folder and all folders below it. One that is not there, or goes while
// we look, is no fault.
func (w *watcher) add(dir string) error {
	return filepath.WalkDir(dir, func(name string, d fs.DirEntry, err error) error {
		if errors.Is(err, fs.ErrNotExist) {
			return nil
		}
		if err != nil {
			return err
		}
		if !d.IsDir() {
			return nil
		}
		if name != dir && ignored(name) {
			return fs.SkipDir
		}
		if err := w.notify.Add(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
			return err
		}
		return nil
	})
}

// run sends to changes once the folders have settled, until the context is done.
func (w *watcher) run(ctx context.Context, changes chan<- struct{}) {
	quiet := time.NewTimer(settle)
	quiet.Stop()
	var since time.Time // of the first event not yet built; zero: none
	for {
		select {
		case e := <-w.notify.Events:
			if !w.matters(e) {
				continue
			}
			if e.Has(fsnotify.Create) {
				if info, err := os.Lstat(e.Name); err == nil && info.IsDir() {
					// What cannot be watched is built once more by hand; the site stays up.
					_ = w.add(e.Name)
				}
			}
		case <-w.notify.Errors:
			// The queue ran over, and nobody knows what was lost: build.
		case <-quiet.C:
			since = time.Time{}
			select {
			case changes <- struct{}{}:
			default: // one is waiting already
			}
			continue
		case <-ctx.Done():
			return
		}
		if since.IsZero() {
			since = time.Now()
		}
		quiet.Reset(max(0, min(settle, longest-time.Since(since))))
	}
}

// matters leaves out changed permissions, editors' own files and what lies beside the
// source folders.
func (w *watcher) matters(e fsnotify.Event) bool {
	if e.Op == fsnotify.Chmod || ignored(e.Name) {
		return false
	}
	rel, err := filepath.Rel(w.dir, e.Name)
	if err != nil {
		return false
	}
	first, _, _ := strings.Cut(filepath.ToSlash(rel), "/")
	return slices.Contains(sourceFolders, first)
}

// ignored names are hidden files, backups and the swap files of editors.
func ignored(name string) bool {
	base := filepath.Base(name)
	return strings.HasPrefix(base, ".") || strings.HasPrefix(base, "#") || strings.HasSuffix(base, "~") ||
		strings.HasSuffix(base, ".swp") || strings.HasSuffix(base, ".tmp") || base == "4913" // vim's probe
}
