package build

import (
	"errors"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

// The build is killed 200 times at a random moment, over the other site and into an
// empty folder. After each, whoever looks finds only whole files and no page without
// its assets; and the next build ends right, with nothing left behind.
func TestWriteKilled(t *testing.T) {
	sites, files := twoSites(t)
	j := newJudge(sites)
	want := [2]map[string]string{}
	for i := range sites {
		want[i] = map[string]string{}
		for _, f := range sites[i].Files {
			want[i][f.Path] = string(f.Bytes)
		}
	}
	dir := filepath.Join(t.TempDir(), "dist")
	span := time.Hour // of a whole build, to spread the kills over
	for i := range 6 {
		start := time.Now()
		mustWrite(t, dir, sites[i%2])
		span = min(span, time.Since(start))
	}
	now, cut := 1, 0
	for round := range 200 {
		if round%10 == 9 {
			if err := os.RemoveAll(dir); err != nil {
				t.Fatal(err)
			}
		}
		c := child(t, files[1-now], dir, "")
		c.begin()
		after := time.Duration(rand.Int64N(int64(span)))
		time.Sleep(after)
		c.cmd.Process.Kill()
		if _, err := c.end(); err != nil {
			cut++
		}
		if err := j.whole(dir); err != nil && !os.IsNotExist(err) {
			t.Fatalf("round %d, killed after %v: %v", round, after, err)
		}
		next := rand.IntN(2)
		mustWrite(t, dir, sites[next])
		now = next
		if got := folder(t, dir); !maps.Equal(want[next], got) {
			diff := cmp.Diff(want[next], got)
			t.Fatalf("round %d, killed after %v: the next build (-want +got):\n%.2000s", round, after, diff)
		}
	}
	t.Logf("%d of 200 builds were cut off, of about %v each", cut, span)
	if cut < 50 {
		t.Errorf("only %d builds were killed before their end", cut)
	}
}

// Two programs build at once into one folder, sixteen times: both end well, and the
// folder holds the one site or the other, entirely.
func TestWriteTwoPrograms(t *testing.T) {
	sites, files := twoSites(t)
	j := newJudge(sites)
	dir := filepath.Join(t.TempDir(), "dist")
	for round := range 16 {
		a, b := child(t, files[0], dir, ""), child(t, files[1], dir, "")
		a.begin()
		b.begin()
		for _, c := range []*writingChild{a, b} {
			if said, err := c.end(); err != nil {
				t.Fatalf("round %d: %v: %s", round, err, said)
			}
		}
		if err := j.whole(dir); err != nil {
			t.Fatalf("round %d: %v", round, err)
		}
		got, one, two := folder(t, dir), 0, 0
		for _, f := range sites[0].Files {
			if got[f.Path] == string(f.Bytes) {
				one++
			}
		}
		for _, f := range sites[1].Files {
			if got[f.Path] == string(f.Bytes) {
				two++
			}
		}
		if len(got) != max(one, two) || one != len(sites[0].Files) && two != len(sites[1].Files) {
			t.Errorf("round %d: %d files, of which %d are the one site's and %d the other's", round, len(got), one, two)
		}
	}
}

// A file that cannot be written to its end, as on a full disk or over a quota: the build
// says which, the old site stays whole, and the next build with room ends right.
func TestWriteNoRoom(t *testing.T) {
	sites, files := twoSites(t)
	j := newJudge(sites)
	for _, most := range []string{"0", "4096", "16384"} {
		t.Run(most, func(t *testing.T) {
			dir := filepath.Join(t.TempDir(), "dist")
			mustWrite(t, dir, sites[0])
			c := child(t, files[1], dir, most)
			c.begin()
			said, err := c.end()
			if err == nil || !strings.Contains(said, "write ") || !strings.Contains(said, "file too large") {
				t.Errorf("got %v and %q, want the file and why", err, said)
			}
			if err := j.whole(dir); err != nil {
				t.Error(err)
			}
			mustWrite(t, dir, sites[1])
			if got := len(folder(t, dir)); got != len(sites[1].Files) {
				t.Errorf("the next build: %d files, want %d", got, len(sites[1].Files))
			}
		})
	}
}

// The same on a file system that is really full, where this process may mount one.
func TestWriteFullDisk(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "disk")
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	size := func(flags uintptr, kB int) error {
		return syscall.Mount("tmpfs", dir, "tmpfs", flags, fmt.Sprintf("size=%dk", kB))
	}
	if err := size(0, 64<<10); err != nil {
		t.Logf("no file system can be mounted here (%v): TestWriteNoRoom alone has tried it", err)
		return
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, 0); err != nil {
			t.Error(err)
		}
	})
	sites, _ := twoSites(t)
	j := newJudge(sites)
	dist := filepath.Join(dir, "dist")
	mustWrite(t, dist, sites[0])
	var full syscall.Statfs_t
	if err := syscall.Statfs(dir, &full); err != nil {
		t.Fatal(err)
	}
	used := int(full.Blocks-full.Bfree) * int(full.Bsize) >> 10
	for _, room := range []int{0, 8, 16} {
		if err := size(syscall.MS_REMOUNT, used+room); err != nil {
			t.Fatal(err)
		}
		if _, err := Write(dist, sites[1]); !errors.Is(err, syscall.ENOSPC) {
			t.Errorf("%d kB of room: got %v, want no space left", room, err)
		}
		if err := j.whole(dist); err != nil {
			t.Errorf("%d kB of room: %v", room, err)
		}
	}
	if err := size(syscall.MS_REMOUNT, 64<<10); err != nil {
		t.Fatal(err)
	}
	mustWrite(t, dist, sites[1])
	if got := len(folder(t, dist)); got != len(sites[1].Files) {
		t.Errorf("the next build: %d files, want %d", got, len(sites[1].Files))
	}
}
