package tables

import (
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/build/diag"
	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"
)

// Run with -update to rewrite the messages in testdata/check; then read the
// difference: a message is what a contributor has to go by.
var update = flag.Bool("update", false, "rewrite the golden messages")

// Each rule has a file of its name: a sentence, perhaps "limit NAME N" and "escapes"
// (<E9> stands for that byte), valid data with one thing spoiled, the messages.
func TestCheck(t *testing.T) {
	for _, rule := range rules {
		t.Run(rule.ID, func(t *testing.T) {
			file := filepath.Join("testdata", "check", rule.ID+".txtar")
			src, err := os.ReadFile(file)
			if err != nil {
				t.Fatalf("the rule has no case: %v", err)
			}
			archive := txtar.Parse(src)
			fsys, lim, want := readCase(t, archive)
			_, list := load(fsys, lim)
			for _, p := range list {
				if p.Rule != rule.ID {
					t.Errorf("another rule answers: %s", p)
				}
				if p.Level != rule.Level {
					t.Errorf("level %v, want %v: %s", p.Level, rule.Level, p)
				}
			}
			if len(list) == 0 {
				t.Error("nothing is reported")
			}
			got := printed(t, list)
			if *update {
				archive.Files[len(archive.Files)-1].Data = []byte(got)
				if err := os.WriteFile(file, txtar.Format(archive), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if diff := cmp.Diff(want, got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func readCase(t *testing.T, archive *txtar.Archive) (fstest.MapFS, limits, string) {
	t.Helper()
	lim, escapes := shipped, false
	for line := range strings.Lines(string(archive.Comment)) {
		words := strings.Fields(line)
		switch {
		case len(words) == 3 && words[0] == "limit":
			n, err := strconv.Atoi(words[2])
			if err != nil {
				t.Fatal(err)
			}
			switch words[1] {
			case "bytes":
				lim.bytes = n
			case "rows":
				lim.rows = n
			case "text":
				lim.text = n
			default:
				t.Fatalf("no limit %q", words[1])
			}
		case len(words) == 1 && words[0] == "escapes":
			escapes = true
		}
	}
	fsys := fstest.MapFS{}
	for _, f := range archive.Files[:len(archive.Files)-1] {
		data := f.Data
		if escapes {
			data = unescape(t, data)
		}
		fsys[f.Name] = &fstest.MapFile{Data: data}
	}
	last := archive.Files[len(archive.Files)-1]
	if last.Name != "want" {
		t.Fatalf("the last file is %q, not \"want\"", last.Name)
	}
	return fsys, lim, string(last.Data)
}

// unescape turns <E9> into that byte, so that the case itself stays plain text.
func unescape(t *testing.T, data []byte) []byte {
	t.Helper()
	var out []byte
	for i := 0; i < len(data); i++ {
		if data[i] != '<' {
			out = append(out, data[i])
			continue
		}
		n, err := strconv.ParseUint(string(data[i+1:i+3]), 16, 8)
		if err != nil || data[i+3] != '>' {
			t.Fatalf("not an escape: %q", data[i:i+4])
		}
		out = append(out, byte(n))
		i += 3
	}
	return out
}

func printed(t *testing.T, list diag.List) string {
	t.Helper()
	var b strings.Builder
	if err := list.Print(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// A case of a rule that is gone would never be run.
func TestEveryCaseHasARule(t *testing.T) {
	files, err := filepath.Glob("testdata/check/*.txtar")
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, r := range rules {
		if known[r.ID] {
			t.Errorf("two rules are called %q", r.ID)
		}
		known[r.ID] = true
		if r.What == "" {
			t.Errorf("rule %q says nothing", r.ID)
		}
	}
	for _, f := range files {
		if id := strings.TrimSuffix(filepath.Base(f), ".txtar"); !known[id] {
			t.Errorf("%s belongs to no rule", f)
		}
	}
}
