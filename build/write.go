package build

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"

	"github.com/rogpeppe/go-internal/lockedfile"
)

// Report says what a [Write] did.
type Report struct {
	Written int   `json:"written"` // files that were new or had other bytes
	Removed int   `json:"removed"` // files of an earlier build that are no longer part of the site
	Same    int   `json:"same"`    // files left alone
	Bytes   int64 `json:"bytes"`   // of the written files
}

// Files of our own at the output's root. They start with a dot, so that servers and
// publishers leave them out.
const (
	manifestName = ".capspan-files"
	lockName     = ".capspan-lock"
	scratchName  = ".capspan-new-" // and a number: a file that is being written
)

// stages are the stages in the order of writing.
var stages = []Stage{Assets, Pages, Hosting}

// Write brings the folder up to date with the site.
//
// Whoever looks at the folder while Write runs, or after it was killed, finds only
// whole files, and no page whose assets are missing:
//
//   - a file is written beside its place and renamed over it;
//   - assets come first, then pages, then the list of sums; what is no longer needed goes last,
//     the other way round;
//   - the data of earlier versions stays ([Stays]): somebody may have its address;
//   - the list of our files is widened before the first file is written and narrowed
//     after the last is removed, so that a killed build's files are still known as ours.
//
// Whoever writes with a [Memory] reads no file again that it knows ([Memory.Write]).
//
// Nothing is synced to the disk: after a power cut the next build compares bytes and
// mends what was lost, and a sync for each file would take longer than the whole build.
//
// A folder that holds files, but no list of ours, is refused; so is a file that
// somebody else put where the site needs one. All access goes through [os.Root], so
// that no path or link leads outside. A second Write into the same folder waits for
// the first; the lock is the kernel's and dies with the process.
func Write(dir string, out Output) (Report, error) { return write(dir, out, nil) }

func write(dir string, out Output, known *known) (Report, error) {
	if err := checkPaths(out.Files); err != nil {
		return Report{}, err
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return Report{}, fmt.Errorf("make the output folder: %w", err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		return Report{}, fmt.Errorf("open the output folder: %w", err)
	}
	defer root.Close()

	// Looked at before the lock file is put there: a folder that is not ours stays as it is.
	if err := checkOwner(root, dir); err != nil {
		return Report{}, err
	}
	unlock, err := lockedfile.MutexAt(filepath.Join(dir, lockName)).Lock()
	if err != nil {
		return Report{}, fmt.Errorf("lock the output folder: %w", err)
	}
	defer unlock()

	w := &writer{root: root, dir: dir, known: known}
	if w.ours, err = readManifest(root); err != nil {
		return Report{}, err
	}
	err = w.run(out.Files)
	return w.report(), err
}

// writer is one run over one folder, under its lock.
type writer struct {
	root  *os.Root
	dir   string
	ours  map[string]bool // files an earlier build wrote
	known *known          // nil: nothing was written here before by the same process

	written, removed, same, bytes atomic.Int64
	scratch                       atomic.Int64
}

func (w *writer) report() Report {
	return Report{
		Written: int(w.written.Load()), Removed: int(w.removed.Load()),
		Same: int(w.same.Load()), Bytes: w.bytes.Load(),
	}
}

func (w *writer) run(files []File) error {
	wanted := make(map[string]bool, len(files))
	all := make(map[string]bool, len(files)+len(w.ours))
	for _, f := range files {
		wanted[f.Path], all[f.Path] = true, true
	}
	for name := range w.ours {
		all[name] = true
	}
	if err := w.removeScratch(all); err != nil {
		return err
	}
	if err := w.checkForeign(files); err != nil {
		return err
	}
	if err := w.writeManifest(all); err != nil {
		return err
	}
	if err := w.clearWay(wanted); err != nil {
		return err
	}
	for _, stage := range stages {
		if err := w.stage(files, stage); err != nil {
			return err
		}
	}
	gone := []string{}
	for name := range w.ours {
		if Stays(name) {
			wanted[name] = true
		}
		if !wanted[name] {
			gone = append(gone, name)
		}
	}
	// The other way round: a page goes before what it loads.
	slices.SortFunc(gone, func(a, b string) int { return cmp.Compare(StageOf(b), StageOf(a)) })
	for _, name := range gone {
		if err := w.remove(name); err != nil {
			return err
		}
	}
	return w.writeManifest(wanted)
}

// stage writes the files of one stage. Making files is mostly waiting, so a few are
// made at a time.
func (w *writer) stage(files []File, stage Stage) error {
	queue := make(chan File)
	workers := 2 * runtime.GOMAXPROCS(0)
	errs := make([]error, workers)
	var wg sync.WaitGroup
	for i := range workers {
		wg.Go(func() {
			for f := range queue {
				if errs[i] == nil {
					errs[i] = w.file(f)
				}
			}
		})
	}
	for _, f := range files {
		if f.Stage == stage {
			queue <- f
		}
	}
	close(queue)
	wg.Wait()
	return errors.Join(errs...)
}

// file writes one file unless it is there with the same bytes.
func (w *writer) file(f File) error {
	if w.holds(f) {
		w.same.Add(1)
		return nil
	}
	if dir := path.Dir(f.Path); dir != "." {
		if err := w.root.MkdirAll(dir, 0o755); err != nil {
			return fmt.Errorf("make the folder of %s: %w", f.Path, err)
		}
	}
	content, err := f.Read()
	if err != nil {
		return err
	}
	if err := w.replace(f.Path, content); err != nil {
		return err
	}
	w.written.Add(1)
	w.bytes.Add(f.Size())
	return nil
}

// holds reports whether the folder has the very file. A link is never taken for it.
func (w *writer) holds(f File) bool {
	if w.known.has(f) {
		return true
	}
	info, err := w.root.Lstat(f.Path)
	if err != nil || !info.Mode().IsRegular() || info.Size() != f.Size() {
		return false
	}
	have, err := w.root.ReadFile(f.Path)
	if err != nil {
		return false
	}
	if f.Bytes == nil && sha256.Sum256(have) != f.sum() || f.Bytes != nil && !bytes.Equal(have, f.Bytes) {
		return false
	}
	w.known.learn(f, info)
	return true
}

// replace writes beside the place and renames over it: in the same folder, because a
// rename across file systems is a copy.
func (w *writer) replace(name string, data []byte) error {
	scratch := path.Join(path.Dir(name), fmt.Sprintf("%s%d", scratchName, w.scratch.Add(1)))
	if err := w.root.WriteFile(scratch, data, 0o644); err != nil {
		return errors.Join(fmt.Errorf("write %s: %w", name, err), w.discard(scratch))
	}
	if err := w.root.Rename(scratch, name); err != nil {
		return errors.Join(fmt.Errorf("write %s: %w", name, err), w.discard(scratch))
	}
	return nil
}

// discard removes a scratch file after a fault; one that is not there is fine.
func (w *writer) discard(name string) error {
	if err := w.root.Remove(name); err != nil && !errors.Is(err, fs.ErrNotExist) {
		return fmt.Errorf("clean up: %w", err)
	}
	return nil
}

// remove takes away a file of an earlier build, and the folders that it leaves empty.
func (w *writer) remove(name string) error {
	w.known.forget(name)
	switch err := w.root.Remove(name); {
	case err == nil:
		w.removed.Add(1)
	case !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("remove %s: %w", name, err)
	}
	for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
		if err := w.root.Remove(dir); err != nil && !errors.Is(err, fs.ErrNotExist) {
			break // not empty: somebody still needs it
		}
	}
	return nil
}

// clearWay removes early the few old files that stand where the site now needs a
// folder, or whose folder stands where it now needs a file.
func (w *writer) clearWay(wanted map[string]bool) error {
	folders := map[string]bool{}
	for name := range wanted {
		for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
			folders[dir] = true
		}
	}
	for name := range w.ours {
		if wanted[name] {
			continue
		}
		inTheWay := folders[name]
		for dir := path.Dir(name); dir != "."; dir = path.Dir(dir) {
			inTheWay = inTheWay || wanted[dir]
		}
		if inTheWay {
			if err := w.remove(name); err != nil {
				return err
			}
			delete(w.ours, name) // its name may now belong to a folder
		}
	}
	return nil
}

// checkPaths refuses what could not be a file below the root.
func checkPaths(files []File) error {
	seen := map[string]string{}
	for _, f := range files {
		base := path.Base(f.Path)
		if !fs.ValidPath(f.Path) || !filepath.IsLocal(filepath.FromSlash(f.Path)) || f.Path == "." ||
			strings.Contains(f.Path, `\`) || strings.HasPrefix(base, ".capspan-") {
			return fmt.Errorf("internal error: %q is no path for a file of the site", f.Path)
		}
		// Some file systems do not tell letter case apart; a site must not depend on it.
		folded := strings.ToLower(f.Path)
		if other, taken := seen[folded]; taken {
			return fmt.Errorf("internal error: %q and %q would be one file", other, f.Path)
		}
		seen[folded] = f.Path
		if !slices.Contains(stages, f.Stage) {
			return fmt.Errorf("internal error: %q belongs to no stage", f.Path)
		}
	}
	return nil
}
