package build

import (
	"bytes"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"capspan/build/synth/catalogue"
	"capspan/tables"
	catalog "capspan/templates/words"
)

// manyRowsMade is how many rows the catalogue of the tests has: a large chart, and hardly more.
const manyRowsMade = 2100

// madeMany is the catalogue, made once.
var madeMany = sync.OnceValues(func() (Sources, error) { return makeMany(manyRowsMade) })

// makeMany makes a catalogue; its figures are invented.
func makeMany(rows int) (Sources, error) {
	src := inEnglish()
	made, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		return src, err
	}
	guide, err := catalogue.Guide(src.Content)
	src.Tables, src.Content = made.FS(), guide.FS()
	return src, err
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
	before := buildOf(t, manySources(t), Options{})
	src, id := edited(t, manySources(t), "joints-metric.yaml")
	after := contents(buildOf(t, src, Options{}))
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
