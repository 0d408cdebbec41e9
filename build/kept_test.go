package build

import (
	"bytes"
	"encoding/json"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"

	"capspan/build/synth/catalogue"
	"capspan/static/matcher"
	"capspan/tables"
)

// largeSources are the shipped folders with an invented catalogue in place of the chart.
func largeSources(t *testing.T) (Sources, catalogue.Files) {
	t.Helper()
	made, err := madeRows()
	if err != nil {
		t.Fatal(err)
	}
	files := maps.Clone(made)
	src := Embedded()
	src.Tables = files.FS()
	return src, files
}

// askedOf are questions about the first rows that have both figures.
func askedOf(t *testing.T, set *tables.Set, most int) []matcher.Query {
	t.Helper()
	var list []matcher.Query
	for _, row := range Chart(set).Rows {
		if end := row.Ends[0]; end.Cap != nil && end.Across != nil && len(row.Ends) == 1 && len(list) < most {
			list = append(list, matcher.Query{Ends: []matcher.QueryEnd{{Hold: end.Hold,
				Cap: []string{end.Cap.MM + " mm"}, Across: []string{end.Across.MM + " mm"}}}})
		}
	}
	return list
}

// A kept chart answers as the chart that was read, and one that is spoilt is never believed.
func TestKeptChart(t *testing.T) {
	src, _ := largeSources(t)
	folder := filepath.Join(t.TempDir(), "deep", "capspan")
	set, problems := src.spoken()
	if problems.Blocked() {
		t.Fatal(problems)
	}
	questions := askedOf(t, set, 5)
	first := identifierOf(t, src, folder)
	if !first.Kept {
		t.Fatal("a large chart was not kept")
	}
	want := answersOf(t, first, questions)
	same := func(what string, kept bool) {
		t.Helper()
		d := identifierOf(t, src, folder)
		got := answersOf(t, d, questions)
		if d.Kept != kept {
			t.Errorf("%s: kept anew is %v, want %v", what, d.Kept, kept)
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s: other answers (-read +kept):\n%s", what, diff)
		}
	}
	same("askedOf again", false)

	file := onlyFile(t, folder)
	whole, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	head := bytes.IndexByte(whole, '\n')
	for what, text := range map[string][]byte{
		"empty":                {},
		"cut off in the head":  whole[:head/2],
		"cut off behind it":    whole[:len(whole)/2],
		"pieces changed about": exchanged(t, whole),
		"another head":         bytes.Replace(whole, []byte(keptFormat), []byte("capspan chart 9"), 1),
		"a changed core":       flipped(whole, head+80),
		"changed pieces":       changedFrom(whole, len(whole)/2),
		"of somebody else":     []byte("{}\n"),
	} {
		if err := os.WriteFile(file, text, 0o600); err != nil {
			t.Fatal(err)
		}
		same(what, true)
		same(what+", and once more", false)
	}
}

// A chart that is held whole is kept likewise, once it is long enough to be worth it.
func TestKeptWhole(t *testing.T) {
	files, err := catalogue.Make(catalogue.Options{Rows: 800, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	src, folder := Embedded(), t.TempDir()
	src.Tables = files.FS()
	set, problems := src.spoken()
	if problems.Blocked() || len(Chart(set).Rows) > largeRows {
		t.Fatalf("%d rows, problems: %v", len(Chart(set).Rows), problems)
	}
	questions := askedOf(t, set, 5)
	want := answersOf(t, identifierOf(t, src, ""), questions)
	same := func(what string, kept bool) {
		t.Helper()
		d := identifierOf(t, src, folder)
		if d.Kept != kept {
			t.Errorf("%s: kept anew is %v, want %v", what, d.Kept, kept)
		}
		if diff := cmp.Diff(want, answersOf(t, d, questions)); diff != "" {
			t.Errorf("%s: other answers (-read +kept):\n%s", what, diff)
		}
	}
	same("the first time", true)
	same("again", false)
	file := onlyFile(t, folder)
	whole, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file, changedFrom(whole, len(whole)/2), 0o600); err != nil {
		t.Fatal(err)
	}
	same("a changed chart", true)
	files["joints-inch.yaml"] = bytes.Replace(files["joints-inch.yaml"], []byte("\n"), []byte("\n\n"), 1)
	src.Tables = files.FS()
	same("another byte in a table", true)
}

// exchanged takes two pieces of a kept chart for each other; each is whole.
func exchanged(t *testing.T, text []byte) []byte {
	t.Helper()
	line, rest, _ := bytes.Cut(text, []byte("\n"))
	var head keptHead
	if err := json.Unmarshal(line, &head); err != nil {
		t.Fatal(err)
	}
	names := slices.Sorted(maps.Keys(head.Pieces))
	for n := 0; n+1 < len(names); n += 2 {
		head.Pieces[names[n]], head.Pieces[names[n+1]] = head.Pieces[names[n+1]], head.Pieces[names[n]]
	}
	return slices.Concat(mustJSON(head), []byte("\n"), rest)
}

func flipped(text []byte, at int) []byte {
	text = bytes.Clone(text)
	text[at] ^= 1
	return text
}

// changedFrom changes a digit of every piece behind that place.
func changedFrom(text []byte, from int) []byte {
	return append(bytes.Clone(text[:from]), bytes.ReplaceAll(text[from:], []byte("1"), []byte("2"))...)
}

// Another chart has another name, so that none is ever taken for it.
func TestKeptKey(t *testing.T) {
	src, files := largeSources(t)
	key := func(src Sources) string {
		t.Helper()
		key, err := keptKey(src)
		if err != nil {
			t.Fatal(err)
		}
		return key
	}
	before := key(src)
	if before == "" || before != key(src) {
		t.Fatalf("the key is %q, and then %q", before, key(src))
	}
	spanish, problems := src.In("es")
	if problems.Blocked() {
		t.Fatal(problems)
	}
	if key(spanish) == before {
		t.Error("in Spanish the key is the same")
	}
	files["joints-inch.yaml"] = flipped(files["joints-inch.yaml"], 0)
	src.Tables = files.FS()
	if key(src) == before {
		t.Error("with one bit of a table changed the key is the same")
	}
	if shipped := key(Embedded()); shipped != "" {
		t.Errorf("the shipped chart is kept as %s; it is small", shipped)
	}
}

// Where nothing can be kept the answer is the same.
func TestKeptNowhere(t *testing.T) {
	src, _ := largeSources(t)
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, folder := range []string{"", file, filepath.Join(file, "below")} {
		if d := identifierOf(t, src, folder); d.Kept {
			t.Errorf("%q: kept", folder)
		}
	}
}

// Only a few charts are kept, and what was begun and left is removed.
func TestKeptFew(t *testing.T) {
	folder := t.TempDir()
	left, fresh := filepath.Join(folder, "begun-1"), filepath.Join(folder, "begun-2")
	for _, name := range []string{left, fresh} {
		if err := os.WriteFile(name, nil, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	old := time.Now().Add(-2 * keptLeft)
	if err := os.Chtimes(left, old, old); err != nil {
		t.Fatal(err)
	}
	for n := range keptMost + 2 {
		key := string(rune('a' + n))
		if err := writeKept(folder, key, compiled{}); err != nil {
			t.Fatal(err)
		}
		then := old.Add(time.Duration(n) * time.Minute)
		if err := os.Chtimes(filepath.Join(folder, key+keptEnding), then, then); err != nil {
			t.Fatal(err)
		}
	}
	if err := tidyKept(folder); err != nil {
		t.Fatal(err)
	}
	var names []string
	files, err := os.ReadDir(folder)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range files {
		names = append(names, f.Name())
	}
	if diff := cmp.Diff([]string{"begun-2", "c.chart", "d.chart", "e.chart", "f.chart"}, names); diff != "" {
		t.Errorf("other files are there (-want +got):\n%s", diff)
	}
}

func identifierOf(t *testing.T, src Sources, folder string) *Identifier {
	t.Helper()
	d, problems := NewIdentifier(src, folder)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return d
}

func answersOf(t *testing.T, d *Identifier, questions []matcher.Query) []matcher.Answer {
	t.Helper()
	var list []matcher.Answer
	for _, q := range questions {
		answer, err := d.Identify(q)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, answer)
	}
	return list
}

func onlyFile(t *testing.T, folder string) string {
	t.Helper()
	files, err := os.ReadDir(folder)
	if err != nil || len(files) != 1 {
		t.Fatalf("there are %d files in the folder, want one (%v)", len(files), err)
	}
	return filepath.Join(folder, files[0].Name())
}
