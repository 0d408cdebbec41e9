package build

import (
	"bufio"
	"bytes"
	"encoding/gob"
	"fmt"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"slices"
	"strings"
	"syscall"
	"testing"
)

// childEnv makes the test program write a site and nothing else: a build that the tests
// below may kill, or let run into a full disk.
const childEnv = "CAPSPAN_TEST_WRITES"

func TestMain(m *testing.M) {
	if job := os.Getenv(childEnv); job != "" {
		os.Exit(writeAsChild(job))
	}
	os.Exit(m.Run())
}

// writeAsChild reads "site file, folder, most bytes a file may have" and writes the site
// into the folder once it is told to on standard input.
func writeAsChild(job string) int {
	parts := strings.Split(job, "|")
	var out Output
	data, err := os.ReadFile(parts[0])
	if err == nil {
		err = gob.NewDecoder(bytes.NewReader(data)).Decode(&out)
	}
	if err != nil {
		fmt.Println("child:", err)
		return 3
	}
	if parts[2] != "" {
		var most uint64
		fmt.Sscan(parts[2], &most)
		signal.Ignore(syscall.SIGXFSZ) // as a full disk: an error from write, not a signal
		if err := syscall.Setrlimit(syscall.RLIMIT_FSIZE, &syscall.Rlimit{Cur: most, Max: most}); err != nil {
			fmt.Println("child:", err)
			return 3
		}
	}
	fmt.Println("ready")
	bufio.NewReader(os.Stdin).ReadString('\n')
	if _, err := Write(parts[1], out); err != nil {
		fmt.Println(err)
		return 1
	}
	return 0
}

// writingChild is a build in a process of its own.
type writingChild struct {
	cmd  *exec.Cmd
	in   io.WriteCloser
	out  *bufio.Reader
	done bool
}

// child starts a build and waits until it is about to write.
func child(t *testing.T, siteFile, dir, most string) *writingChild {
	t.Helper()
	c := &writingChild{cmd: exec.Command(os.Args[0])}
	c.cmd.Env = append(os.Environ(), childEnv+"="+siteFile+"|"+dir+"|"+most)
	out, err := c.cmd.StdoutPipe()
	if err != nil {
		t.Fatal(err)
	}
	if c.in, err = c.cmd.StdinPipe(); err != nil {
		t.Fatal(err)
	}
	if err := c.cmd.Start(); err != nil {
		t.Fatal(err)
	}
	c.out = bufio.NewReader(out)
	t.Cleanup(func() {
		if !c.done {
			c.cmd.Process.Kill()
			c.cmd.Wait()
		}
	})
	if line, err := c.out.ReadString('\n'); line != "ready\n" {
		t.Fatalf("the child said %q, %v", line, err)
	}
	return c
}

func (c *writingChild) begin() { io.WriteString(c.in, "go\n") }

// end waits for the build and returns what it said.
func (c *writingChild) end() (said string, err error) {
	text, _ := io.ReadAll(c.out)
	c.done = true
	return string(text), c.cmd.Wait()
}

// twoSites are the shipped site, and the same with another style: every page differs,
// because it names the sheet by its content. Of the rows' pages, which are all alike, one
// in eight is kept, of each site another: the tests write the sites some five hundred times. Each also lies in
// a file for the children.
func twoSites(t *testing.T) (sites [2]Output, files [2]string) {
	t.Helper()
	other := inEnglish()
	styles := mapped(t, other.Static)
	sheet := styles["parts/sheet.css"]
	sheet.Data = append(bytes.Clone(sheet.Data), "\n.other { color: red; }\n"...)
	other.Static = styles
	for i, src := range []Sources{inEnglish(), other} {
		out, problems := siteOf(t, src, Options{})
		if problems.Blocked() {
			t.Fatal(problems)
		}
		row := 0
		out.Files = slices.DeleteFunc(out.Files, func(f File) bool {
			if !strings.HasPrefix(f.Path, "joint/") {
				return false
			}
			row++
			return row%8 != i // so that each has pages of its own, which the other removes
		})
		var data bytes.Buffer
		if err := gob.NewEncoder(&data).Encode(Output{Files: out.Files}); err != nil {
			t.Fatal(err)
		}
		sites[i], files[i] = out, filepath.Join(t.TempDir(), fmt.Sprintf("site-%d.gob", i))
		if err := os.WriteFile(files[i], data.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return sites, files
}

// judge reads the folder of a site and knows what each page asks for.
type judge struct {
	bytes map[string][]string // path: what it may hold
	loads map[string][]string // bytes of a page: the assets it names
}

func newJudge(sites [2]Output) judge {
	j := judge{map[string][]string{}, map[string][]string{}}
	for _, out := range sites {
		for _, f := range out.Files {
			text := string(f.Bytes)
			j.bytes[f.Path] = append(j.bytes[f.Path], text)
			if strings.HasSuffix(f.Path, ".html") {
				j.loads[text] = loads(f.Bytes, "/")
			}
		}
	}
	return j
}

// whole reports a file that is neither the one site's nor the other's, and a page whose
// assets are not there.
func (j judge) whole(dir string) error {
	there, err := readFolder(dir)
	if err != nil {
		return err
	}
	for name, text := range there {
		if strings.Contains(name, scratchName) {
			continue // never asked for; the next build takes it away
		}
		may := j.bytes[name]
		if len(may) == 0 || text != may[0] && text != may[len(may)-1] {
			return fmt.Errorf("%s (%d bytes) is no whole file of either site", name, len(text))
		}
		for _, asset := range j.loads[text] {
			if _, found := there[asset]; !found {
				return fmt.Errorf("%s asks for %s, which is not there", name, asset)
			}
		}
	}
	return nil
}

func readFolder(dir string) (map[string]string, error) {
	got := map[string]string{}
	err := fs.WalkDir(os.DirFS(dir), ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || name == manifestName || name == lockName {
			return err
		}
		data, err := os.ReadFile(filepath.Join(dir, name))
		got[name] = string(data)
		return err
	})
	return got, err
}
