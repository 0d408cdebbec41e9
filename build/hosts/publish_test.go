//go:build hosts

package hosts

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
	"time"

	"github.com/minio/minio-go/v7"
	"github.com/minio/minio-go/v7/pkg/credentials"
)

// Both are invented.
const keyID, secret = "KEYOFTHETESTS", "secret-of-the-tests"

// TestPublish puts the shipped site into a store served by rclone, with the program as
// people run it.
func TestPublish(t *testing.T) {
	p := newPublisher(t)
	t.Run("arrives", p.arrives)
	t.Run("killed", p.killed)
	t.Run("killed, into a folder", p.killedFolder)
	t.Run("called off", p.calledOff)
	t.Run("wrong key", p.wrongKey)
	t.Run("full disk", p.fullDisk)
}

// Every file arrives with its type and its caching, as a plain client reads it; a second
// publish writes nothing, and one of another site only what differs.
func (p publisher) arrives(t *testing.T) {
	s := serveStore(t, t.TempDir())
	done(t, p.run(s, 0), 0)
	signer, err := minio.New(s.address, &minio.Options{Creds: credentials.NewStaticV4(keyID, secret, ""), Region: "us-east-1"})
	must(t, err)
	packed := 0
	for _, f := range p.sites[0].Files {
		u, err := signer.PresignedGetObject(t.Context(), "joints", f.Path, time.Hour, nil)
		must(t, err)
		r, err := http.Get(u.String()) // says that it takes gzip, and unpacks it
		must(t, err)
		body, err := io.ReadAll(r.Body)
		r.Body.Close()
		if err != nil || r.StatusCode != 200 || !bytes.Equal(body, f.Bytes) {
			t.Errorf("%s: status %d, %d bytes, want %d; %v", f.Path, r.StatusCode, len(body), len(f.Bytes), err)
		}
		if want := types[filepath.Ext(f.Path)]; want != "" && r.Header.Get("Content-Type") != want {
			t.Errorf("%s: type %q, want %q", f.Path, r.Header.Get("Content-Type"), want)
		}
		caching := "no-cache"
		if strings.HasPrefix(f.Path, "assets/") {
			caching = "public, max-age=31536000, immutable"
		}
		if got := r.Header.Get("Cache-Control"); got != caching {
			t.Errorf("%s: caching %q, want %q", f.Path, got, caching)
		}
		if r.Uncompressed {
			packed++
		}
		if r.Uncompressed && strings.HasPrefix(f.Path, "data/") {
			t.Errorf("%s is packed, and programs read it", f.Path)
		}
	}
	if packed < 100 {
		t.Errorf("only %d files are packed", packed)
	}
	if said := done(t, p.run(s, 0), 0); !strings.Contains(said, " 0 files put (0 kB), 0 removed, ") {
		t.Errorf("a second publish: %s", said)
	}
	var told struct {
		Files struct{ Changes []struct{ Do, Path string } }
	}
	must(t, json.Unmarshal([]byte(done(t, p.run(s, 1, "--json"), 0)), &told))
	var got, want []string
	for _, c := range told.Files.Changes {
		got = append(got, c.Do+" "+c.Path)
	}
	was, is := texts(p.sites[0]), texts(p.sites[1])
	for name, text := range is {
		if old, there := was[name]; !there || old != text {
			want = append(want, "put "+name)
		}
	}
	for name := range was {
		if _, stays := is[name]; !stays {
			want = append(want, "remove "+name)
		}
	}
	slices.Sort(got)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("%d changes, want %d:\n%q\n%q", len(got), len(want), got, want)
	}
}

// Time and again the program is killed on its way from one site to the other. Whoever reads
// then has whole files and no page without what it loads; the next run ends right.
func (p publisher) killed(t *testing.T) {
	s := serveStore(t, t.TempDir())
	p.killing(t, 24, s.dir, func(site int) *exec.Cmd { return p.run(s, site, "--encode", "none") })
}

func (p publisher) killedFolder(t *testing.T) {
	dir := t.TempDir() + "/site"
	p.killing(t, 10, dir, func(site int) *exec.Cmd {
		return exec.Command(p.program, "publish", dir, "--from", p.dist[site])
	})
}

func (p publisher) killing(t *testing.T, rounds int, dir string, run func(site int) *exec.Cmd) {
	span := time.Hour // of a whole publish, to spread the kills over
	for n := range 4 {
		begin := time.Now()
		done(t, run(n%2), 0)
		span = min(span, time.Since(begin))
	}
	now, cut := 1, 0
	for round := range rounds {
		c := run(1 - now)
		must(t, c.Start())
		after := span/8 + time.Duration(rand.Int64N(int64(span)))
		time.Sleep(after)
		c.Process.Kill()
		if c.Wait() != nil {
			cut++
		}
		if err := p.whole(dir); err != nil {
			t.Fatalf("round %d, killed after %v of %v: %v", round, after, span, err)
		}
		now = rand.IntN(2)
		done(t, run(now), 0)
		p.ends(t, dir, now)
	}
	t.Logf("%d of %d were cut off, of %v each", cut, rounds, span)
	if cut < rounds/4 {
		t.Errorf("only %d were killed before their end", cut)
	}
}

// Ctrl-C says what was done and what helps; the next run ends right.
func (p publisher) calledOff(t *testing.T) {
	s := serveStore(t, t.TempDir())
	done(t, p.run(s, 0, "--encode", "none"), 0)
	said := ""
	for wait := 250 * time.Millisecond; !strings.Contains(said, "stopped after"); wait += 50 * time.Millisecond {
		if wait > 5*time.Second {
			t.Fatalf("never stopped on its way: %s", said)
		}
		c := p.run(s, 1, "--encode", "none", "--jobs", "1")
		var b bytes.Buffer
		c.Stdout, c.Stderr = &b, &b
		must(t, c.Start())
		time.Sleep(wait)
		c.Process.Signal(os.Interrupt)
		c.Wait()
		said = b.String()
		if c.ProcessState.ExitCode() == 0 { // it was done before: back to the other site
			done(t, p.run(s, 0, "--encode", "none"), 0)
			wait = wait / 2
		}
	}
	if !strings.Contains(said, "the same command again does the rest") {
		t.Errorf("it said: %s", said)
	}
	must(t, p.whole(s.dir))
	done(t, p.run(s, 1, "--encode", "none"), 0)
	p.ends(t, s.dir, 1)
}

// A wrong secret and an unknown key are told as such, with the variable they came from,
// and nothing is written.
func (p publisher) wrongKey(t *testing.T) {
	s := serveStore(t, t.TempDir())
	for variable, value := range map[string]string{"AWS_SECRET_ACCESS_KEY": "hush-1", "AWS_ACCESS_KEY_ID": "HUSH2"} {
		c := p.run(s, 0)
		c.Env = append(c.Env, variable+"="+value)
		said := done(t, c, 2)
		if !strings.Contains(said, "the key is from AWS_ACCESS_KEY_ID and AWS_SECRET_ACCESS_KEY") || strings.Contains(said, value) {
			t.Errorf("it said: %s", said)
		}
	}
	if there, err := readFolder(s.dir); err != nil || len(there) > 0 {
		t.Errorf("%d files were written; %v", len(there), err)
	}
}

// The disk of the store is full: the program says so, readers have whole pages, and with
// room the next run ends right.
func (p publisher) fullDisk(t *testing.T) {
	disk := t.TempDir()
	size := func(flags uintptr, kB int) {
		t.Helper()
		must(t, syscall.Mount("tmpfs", disk, "tmpfs", flags, fmt.Sprintf("size=%dk", kB)))
	}
	size(0, 64<<10)
	t.Cleanup(func() { syscall.Unmount(disk, syscall.MNT_DETACH) })
	s := serveStore(t, disk)
	done(t, p.run(s, 0, "--encode", "none"), 0)
	var full syscall.Statfs_t
	must(t, syscall.Statfs(disk, &full))
	size(syscall.MS_REMOUNT, int(full.Blocks-full.Bfree)*int(full.Bsize)>>10+64)
	said := done(t, p.run(s, 1, "--encode", "none"), 2)
	if !strings.Contains(said, "write s3://joints/") || !strings.Contains(said, "is it full?") {
		t.Errorf("it said: %s", said)
	}
	must(t, p.whole(s.dir))
	size(syscall.MS_REMOUNT, 64<<10)
	done(t, p.run(s, 1, "--encode", "none"), 0)
	p.ends(t, s.dir, 1)
}
