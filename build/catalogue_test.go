package build

import (
	"bytes"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"capspan/build/diag"
	"capspan/build/synth/catalogue"
	"capspan/tables"
	catalog "capspan/templates/words"
)

// manyRowsMade is how many rows the catalogue of the tests has: a large chart, and hardly more.
const manyRowsMade = 2100

// madeRows are the tables of the catalogue, made once for all tests; its figures are invented.
var madeRows = sync.OnceValues(func() (catalogue.Files, error) { return makeRows(manyRowsMade) })

func makeRows(rows int) (catalogue.Files, error) {
	return catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, tables.FS)
}

// madeSet is what they say.
var madeSet = sync.OnceValues(func() (*tables.Set, error) {
	made, err := madeRows()
	if err != nil {
		return nil, err
	}
	set, problems := tables.Load(made.FS())
	if problems.Blocked() {
		return nil, fmt.Errorf("%v", problems)
	}
	return set, nil
})

func manySet(t testing.TB) *tables.Set {
	t.Helper()
	set, err := madeSet()
	if err != nil {
		t.Fatal(err)
	}
	return set
}

// madeMany are the sources with the catalogue in place of the chart, and a guide that names
// no row of that.
var madeMany = sync.OnceValues(func() (Sources, error) {
	made, err := madeRows()
	if err != nil {
		return Sources{}, err
	}
	return withRows(inEnglish(), made)
})

func makeMany(rows int) (Sources, error) {
	made, err := makeRows(rows)
	if err != nil {
		return Sources{}, err
	}
	return withRows(inEnglish(), made)
}

func withRows(src Sources, made catalogue.Files) (Sources, error) {
	guide, err := catalogue.Guide(src.Content)
	src.Tables, src.Content = made.FS(), guide.FS()
	return src, err
}

// builtMany is the site of it, and what its build remembers, for all tests. Who builds on
// that takes a copy.
var builtMany = sync.OnceValue(func() builtOnce {
	src, err := madeMany()
	if err != nil {
		return builtOnce{}
	}
	memory := NewMemory()
	out, problems := Site(src, Options{Memory: memory, Language: catalog.English})
	return builtOnce{out, problems, memory}
})

type builtOnce struct {
	out      Output
	problems diag.List
	memory   *Memory
}

func mustBuilt(t testing.TB) builtOnce {
	t.Helper()
	built := builtMany()
	if built.memory == nil || built.problems.Blocked() {
		t.Fatalf("the catalogue cannot be built: %v", built.problems)
	}
	return built
}

func manySources(t testing.TB) Sources {
	t.Helper()
	src, err := madeMany()
	if err != nil {
		t.Fatal(err)
	}
	return src
}

// buildOf builds sources in English.
func buildOf(t testing.TB, src Sources, opt Options) Output {
	t.Helper()
	opt.Language = catalog.English
	out, problems := Site(src, opt)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return out
}

var acrossOf = regexp.MustCompile(`\n    across: \{is: ([0-9.]+),`)

// edited is the catalogue with the first distance across of a table made longer by less
// than a caliper shows, and the row it is of.
func edited(t testing.TB, src Sources, file string) (Sources, string) {
	t.Helper()
	text, err := fs.ReadFile(src.Tables, file)
	if err != nil {
		t.Fatal(err)
	}
	at := acrossOf.FindSubmatchIndex(text)
	if at == nil {
		t.Fatalf("%s has no distance across in millimetres", file)
	}
	ids := regexp.MustCompile(`\n  - id: "?([^",}\s]+)`).FindAllSubmatch(text[:at[0]], -1)
	longer := string(text[at[2]:at[3]])
	if !strings.Contains(longer, ".") {
		longer += ".0"
	}
	changed := slices.Concat(text[:at[2]], []byte(longer+"1"), text[at[3]:])
	files := maps.Clone(src.Tables.(fstest.MapFS))
	files[file] = &fstest.MapFile{Data: changed}
	src.Tables = files
	return src, string(ids[len(ids)-1][1])
}

// One edited row of a large chart changes the pages that show it and those about the whole
// chart, and no others.
func TestOneRowChangesFewPages(t *testing.T) {
	before, memory := mustBuilt(t).out, mustBuilt(t).memory.copy()
	memory.pages = map[string]pageMemory{} // every page is made anew
	src, id := edited(t, manySources(t), "joints-metric.yaml")
	after := contents(buildOf(t, src, Options{Memory: memory}))
	whole := []string{"chart/index.html", "chart/joints-metric/index.html", "changes/index.html", "identify/index.html", "measure/card/index.html", "order/index.html",
		"shaft/index.html", "embed/frame/index.html", "not-kept.html", "contribute/correct/index.html"}
	pages, same := 0, 0
	for _, f := range before.Files {
		if !strings.HasSuffix(f.Path, ".html") {
			continue
		}
		pages++
		switch now := after[f.Path]; {
		case bytes.Equal(now, f.Bytes):
			same++
		case bytes.Contains(now, []byte(id)), bytes.Contains(f.Bytes, []byte(id)), slices.Contains(whole, f.Path), strings.HasPrefix(f.Path, "identify/part/"), strings.HasPrefix(f.Path, "driveline/"):
		default:
			t.Errorf("%s changed and does not show %s", f.Path, id)
		}
	}
	if changed := pages - same; changed == 0 || changed > pages/20 {
		t.Errorf("%s was edited: %d of %d pages changed", id, changed, pages)
	} else {
		t.Logf("%s was edited: %d of %d pages changed", id, changed, pages)
	}
}
