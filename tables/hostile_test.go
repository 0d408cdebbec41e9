package tables

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"
	"time"
)

// A stranger's file tries to hurt: each is refused by the rule that says why, soon, and
// with a list a person can read. What a page does with a stranger's words is tested where
// pages are made.
func TestHostileFiles(t *testing.T) {
	good := jointHead + joint("a", "strap", "30", "92", "")
	id := func(id string) string { return jointHead + joint(id, "strap", "30", "92", "") }
	number := func(n string) string { return jointHead + joint("a", "strap", n, "92", "") }
	bomb := "a: &a [x, x, x, x, x, x, x, x, x]\n"
	for c := 'b'; c <= 'i'; c++ {
		bomb += fmt.Sprintf("%c: &%c [%s]\n", c, c, strings.TrimSuffix(strings.Repeat(fmt.Sprintf("*%c, ", c-1), 9), ", "))
	}
	utf16 := []byte{0xFF, 0xFE}
	for _, c := range []byte(strings.Repeat(good, 100)) {
		utf16 = append(utf16, c, 0)
	}
	tests := []struct{ name, text, rule, says string }{
		{"path in an id", id("../../index"), "bad-id", `"../../index"`},
		{"address in an id", id(`"javascript:alert(1)"`), "bad-id", `"javascript:alert(1)"`},
		{"markup in an id", id(`"<script>"`), "bad-id", `"<script>"`},
		{"percent in an id", id(`"a%2e%2e"`), "bad-id", `"a%2e%2e"`},
		{"backslash in an id", id(`'a\b'`), "bad-id", `"a\\b"`},
		{"points alone", id(`".."`), "bad-id", `".."`},
		{"Cyrillic letter in an id", id("1310\u0430"), "bad-id", "U+0430"},
		{"full-width digit in an id", id("\uFF11310"), "bad-id", "U+FF11"},
		{"long s in an id", id("\u017Fpicer"), "bad-id", "U+017F"},
		{"direction turned in an id", id("13\u202E01"), "control-character", "U+202E"},
		{"nothing wide in an id", id("13\u200B10"), "control-character", "U+200B"},
		{"direction turned in a note", good + "    note: \"\\u202E01\"\n", "control-character", "U+202E"},
		{"path in a method", strings.Replace(good, "kind: length,", "kind: length, method: ../../x,", 1), "bad-id", `"../../x"`},
		{"path in a source", strings.Replace(good, "basis: memory", "basis: published, source: [../../etc/passwd]", 1), "unknown-source", `"../../etc/passwd"`},
		{"address in a source", strings.Replace(good, "basis: memory", "basis: published, source: ['javascript:alert(1)']", 1), "unknown-source", `"javascript:alert(1)"`},
		{"path in a twin", good + "    twins: [../../index]\n", "twin-nowhere", `"../../index"`},
		{"path in a column", strings.Replace(good, "  cap:    {label", "  ../../x: {label", 1), "bad-id", `"../../x"`},
		{"direction turned in a name", good + "    also: [\"13\u202E01\"]\n", "control-character", "U+202E"},
		{"direction turned in a title", strings.Replace(good, "title: ", "title: \u2066", 1), "control-character", "U+2066"},
		{"infinity", number(".inf"), "bad-number", `".inf"`},
		{"no number", number(".nan"), "bad-number", `".nan"`},
		{"huge number", number("1e999"), "bad-number", `"1e999"`},
		{"huge limit", strings.Replace(good, "greatest: 100", "greatest: 1e999", 1), "bad-number", `"1e999"`},
		{"long number", number(strings.Repeat("9", 300)), "bad-number", "is not a number"},
		{"alias bomb", bomb, "unknown-key", `unknown key "i"`},
		{"alias bomb as a row", jointHead + "  - &a {id: a}\n  - *a\n", "alias", `the alias "*a"`},
		{"nested for ever", strings.Repeat("[", 1<<20-1), "bad-yaml", ""},
		{"nested mappings", strings.Repeat("{a: ", 1<<18-1), "bad-yaml", ""},
		{"byte order mark", "\xef\xbb\xbf" + good, "encoding", "byte order mark"},
		{"Latin-1", strings.Replace(good, "title: ", "title: Gr\xf6\xdfe ", 1), "encoding", `'ö' in Latin-1`},
		{"UTF-16", string(utf16), "encoding", "not UTF-8"},
		{"tabs", strings.Replace(good, "    cap:", "\tcap:", 1), "tab", "use spaces"},
		{"old Macintosh line ends", strings.ReplaceAll(good, "\n", "\r"), "control-character", "U+000D"},
		{"a name of the open data's own", strings.Replace(good, "table: x", "table: datapackage", 1), "table-name", "no table may be called"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			name := "x.yaml"
			if strings.Contains(tt.text, "table: datapackage") {
				name = "datapackage.yaml"
			}
			start := time.Now()
			_, list := loadFiles(map[string]string{name: tt.text})
			Format(name, []byte(tt.text)) // must end as well
			if took := time.Since(start); took > 5*time.Second {
				t.Errorf("took %v", took)
			}
			said := false
			for _, p := range list {
				said = said || p.Rule == tt.rule && strings.Contains(p.Fact+strings.Join(p.Hints, " "), tt.says)
			}
			if !said || !list.Blocked() {
				t.Errorf("want a problem of rule %q that says %q, got\n%.2000s", tt.rule, tt.says, printedAll(list))
			}
			if len(list) > 2*mostRaw {
				t.Errorf("%d problems", len(list))
			}
		})
	}
}

// The registry, the retired ids and the history are a stranger's to change as well.
func TestHostileLists(t *testing.T) {
	good := jointHead + joint("a", "strap", "30", "92", "")
	source := func(id, where string) string {
		return "sources:\n  - id: " + id + "\n    kind: manual\n    title: T\n    publisher: P\n    where: " + where + "\n"
	}
	release := "history:\n  - chart: 2026-11-25-0123abc\n    date: 2026-11-25\n    why: x\n    tables: [\"x 1.0.0\"]\n    changes:\n      - {of: \"OF\", what: \"value\", old: \"1\", new: \"2\"}\n"
	for _, tt := range []struct{ name, file, text, rule, says string }{
		{"path in a source's id", registryFile, source("../../x", "here"), "bad-id", `"../../x"`},
		{"look-alike letter in a source's id", registryFile, source("m\u0430nual", "here"), "bad-id", "U+0430"},
		{"direction turned in a source's place", registryFile, source("m", "\"\u202Eexe.fdp\""), "control-character", "U+202E"},
		{"path in a retired id", retiredFile, "retired:\n  - {id: ../../index, why: x}\n", "bad-id", `"../../index"`},
		{"retired to a path", retiredFile, "retired:\n  - {id: b, to: [../../index], why: x}\n", "retired-nowhere", `"../../index"`},
		{"path in a chart's name", historyFile, strings.Replace(release, "2026-11-25-0123abc", "../../index", 1), "bad-version", `"../../index"`},
		{"1e999 for a date", historyFile, strings.Replace(release, "date: 2026-11-25", "date: 1e999", 1), "bad-date", `"1e999"`},
	} {
		t.Run(tt.name, func(t *testing.T) {
			_, list := loadFiles(map[string]string{"x.yaml": good, tt.file: tt.text})
			said := false
			for _, p := range list {
				said = said || p.Rule == tt.rule && strings.Contains(p.Fact+strings.Join(p.Hints, " "), tt.says)
			}
			if !said || !list.Blocked() {
				t.Errorf("want a problem of rule %q that says %q, got\n%.2000s", tt.rule, tt.says, printedAll(list))
			}
		})
	}
}

// 200 MB are refused by their size, before a byte is read.
func TestHugeFile(t *testing.T) {
	dir := t.TempDir()
	file, err := os.Create(filepath.Join(dir, "x.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	if err := file.Truncate(200 << 20); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	if _, list := Load(os.DirFS(dir)); len(list) != 1 || list[0].Rule != "file-size" {
		t.Errorf("got %s", printedAll(list))
	}
}

// endless is a folder whose file says it is empty and never ends, as a link to a device
// does.
type endless struct{ fs.FS }

func (e endless) Open(name string) (fs.File, error) {
	file, err := e.FS.Open(name)
	if name == "x.yaml" && err == nil {
		return endlessFile{file}, nil
	}
	return file, err
}

type endlessFile struct{ fs.File }

func (endlessFile) Read(b []byte) (int, error) {
	copy(b, bytes.Repeat([]byte("#"), len(b)))
	return len(b), nil
}

func TestEndlessFile(t *testing.T) {
	_, list := Load(endless{fstest.MapFS{"x.yaml": {}}})
	if len(list) != 1 || list[0].Rule != "file-size" {
		t.Errorf("got %s", printedAll(list))
	}
}
