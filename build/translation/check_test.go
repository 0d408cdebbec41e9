package translation

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/rogpeppe/go-internal/txtar"

	"capspan/build/diag"
)

// Run with -update to rewrite the messages in testdata; then read the difference: a message
// is what a translator has to go by.
var update = flag.Bool("update", false, "rewrite the golden messages")

// Each case is a sentence, files of today, those under was/ of the day the Spanish ones
// were settled, or a list of texts of tables, and the messages.
func TestCases(t *testing.T) {
	files, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(files) == 0 {
		t.Fatalf("no cases: %v", err)
	}
	for _, file := range files {
		t.Run(strings.TrimSuffix(filepath.Base(file), ".txtar"), func(t *testing.T) {
			archive, err := txtar.ParseFile(file)
			if err != nil {
				t.Fatal(err)
			}
			want := &archive.Files[len(archive.Files)-1]
			got := printed(t, problemsOf(t, archive))
			if *update {
				want.Data = []byte(got)
				if err := os.WriteFile(file, txtar.Format(archive), 0o644); err != nil {
					t.Fatal(err)
				}
				return
			}
			if diff := cmp.Diff(string(want.Data), got); diff != "" {
				t.Errorf("(-want +got):\n%s", diff)
			}
		})
	}
}

func printed(t *testing.T, problems diag.List) string {
	t.Helper()
	var b bytes.Buffer
	if err := problems.Print(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

func problemsOf(t *testing.T, archive *txtar.Archive) diag.List {
	t.Helper()
	content, static := fstest.MapFS{}, fstest.MapFS{}
	put := func(name string, text []byte) {
		folder, rest, _ := strings.Cut(name, "/")
		switch folder {
		case "content":
			content[rest] = &fstest.MapFile{Data: text}
		case "static":
			static[rest] = &fstest.MapFile{Data: text}
		}
	}
	var texts []Text
	tables := false
	for _, f := range archive.Files {
		put(f.Name, f.Data)
		if f.Name == "texts" {
			tables = true
			texts = textsOf(t, string(f.Data))
		}
	}
	src := Sources{Content: content, Static: static}
	if tables {
		_, problems := LoadTables(content, "es", texts)
		return problems
	}
	if content["es/made-of.yaml"] == nil { // settle what the case was made of
		for _, f := range archive.Files {
			if was, old := strings.CutPrefix(f.Name, "was/"); old {
				put(was, f.Data)
			}
		}
		madeOf, _, problems := Settle(src, "es", nil)
		if len(problems) > 0 {
			t.Fatal(problems)
		}
		for _, f := range archive.Files {
			put(f.Name, f.Data)
		}
		content["es/made-of.yaml"] = &fstest.MapFile{Data: madeOf}
	}
	return Check(src, "es")
}

// textsOf reads a line for each text: its place, its path and what it says.
func textsOf(t *testing.T, lines string) []Text {
	t.Helper()
	var list []Text
	for line := range strings.Lines(lines) {
		fields := strings.SplitN(strings.TrimSpace(line), " ", 3)
		file, number, _ := strings.Cut(fields[0], ":")
		n, err := strconv.Atoi(number)
		if err != nil {
			t.Fatal(err)
		}
		path, name := strings.CutPrefix(fields[1], "name:")
		list = append(list, Text{Says: fields[2], Path: path, Pos: diag.Pos{File: file, Line: n}, Name: name})
	}
	return list
}
