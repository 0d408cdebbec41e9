//go:build hosts

package hosts

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"capspan/build"
)

// publisher is the program and two built sites: the second has another style, so that
// every page of it differs.
type publisher struct {
	program string
	sites   [2]build.Output
	dist    [2]string
}

func newPublisher(t *testing.T) publisher {
	t.Helper()
	dir := t.TempDir()
	p := publisher{program: filepath.Join(dir, "capspan")}
	if said, err := exec.Command("go", "build", "-o", p.program, "capspan/cmd/capspan").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, said)
	}
	other := build.Embedded()
	must(t, os.CopyFS(dir+"/other/static", other.Static))
	sheet, err := os.OpenFile(dir+"/other/static/parts/sheet.css", os.O_APPEND|os.O_WRONLY, 0)
	must(t, err)
	fmt.Fprint(sheet, "\n.other { color: red; }\n")
	must(t, sheet.Close())
	other.Static = build.Folder(dir + "/other").Static
	for n, src := range []build.Sources{build.Embedded(), other} {
		out, problems := build.Site(src, build.Options{Memory: worked})
		if problems.Blocked() {
			t.Fatal(problems)
		}
		p.sites[n], p.dist[n] = out, fmt.Sprintf("%s/dist-%d", dir, n)
		_, err := build.Write(p.dist[n], out)
		must(t, err)
	}
	return p
}

// store is a bucket that rclone serves from a folder.
type store struct {
	dir     string // of the bucket
	address string
}

func serveStore(t *testing.T, root string) store {
	t.Helper()
	must(t, os.MkdirAll(root+"/joints", 0o755))
	port := freePort(t)
	address := start(t, port, "../.cache/rclone", "serve", "s3", "--addr", fmt.Sprintf("127.0.0.1:%d", port),
		"--auth-key", keyID+","+secret, root)
	return store{dir: root + "/joints", address: address}
}

// run is the program on its way to the store; more follows the target.
func (p publisher) run(s store, site int, more ...string) *exec.Cmd {
	c := exec.Command(p.program, append([]string{"publish", "s3://joints", "--from", p.dist[site]}, more...)...)
	c.Env = []string{"HOME=/nonexistent", "AWS_ENDPOINT_URL_S3=http://" + s.address, "AWS_ACCESS_KEY_ID=" + keyID, "AWS_SECRET_ACCESS_KEY=" + secret}
	return c
}

// done runs it to its end and returns what it said; neither key nor secret may be in it.
func done(t *testing.T, c *exec.Cmd, status int) string {
	t.Helper()
	said, _ := c.CombinedOutput()
	if got := c.ProcessState.ExitCode(); got != status {
		t.Fatalf("exit status %d, want %d:\n%s", got, status, said)
	}
	if bytes.Contains(said, []byte(secret)) || bytes.Contains(said, []byte(keyID)) {
		t.Errorf("a key is shown:\n%s", said)
	}
	return string(said)
}

var loaded = regexp.MustCompile(`(?:href|src)="/(assets/[^"?#]+)"`)

// whole reports a file that is neither the one site's nor the other's, and a page without
// what it loads.
func (p publisher) whole(dir string) error {
	there, err := readFolder(dir)
	if err != nil {
		return err
	}
	one, two := texts(p.sites[0]), texts(p.sites[1])
	for name, text := range there {
		if text != one[name] && text != two[name] {
			return fmt.Errorf("%s (%d bytes) is no whole file of either site", name, len(text))
		}
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		for _, asset := range loaded.FindAllStringSubmatch(text, -1) {
			if _, found := there[asset[1]]; !found {
				return fmt.Errorf("%s loads %s, which is not there", name, asset[1])
			}
		}
	}
	return nil
}

// ends wants the very files of one site.
func (p publisher) ends(t *testing.T, dir string, site int) {
	t.Helper()
	there, err := readFolder(dir)
	must(t, err)
	want := texts(p.sites[site])
	for name, text := range want {
		if there[name] != text {
			t.Errorf("%s is not as it was built", name)
		}
	}
	if len(there) != len(want) {
		t.Errorf("%d files, want %d", len(there), len(want))
	}
}

func texts(out build.Output) map[string]string {
	m := map[string]string{}
	for _, f := range out.Files {
		m[f.Path] = string(f.Bytes)
	}
	return m
}

// readFolder reads what lies in a folder for readers: not the lists of ours, nor what a
// server has half received.
func readFolder(dir string) (map[string]string, error) {
	there := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || strings.HasPrefix(d.Name(), ".capspan-") || strings.HasPrefix(d.Name(), ".rclone_temp_put_") {
			return err
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		there[name] = string(data)
		return err
	})
	return there, err
}
