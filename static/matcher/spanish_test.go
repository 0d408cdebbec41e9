package matcher_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/dop251/goja"
	"pgregory.net/rapid"

	"capspan/static"
	"capspan/static/alike"
	"capspan/static/matcher"
)

// mustSpanish is the folder static as it speaks Spanish.
func mustSpanish(t testing.TB) fs.FS {
	t.Helper()
	return static.In(static.FS, os.DirFS("../../content"), "es")
}

// What may be the same in two languages: what names a row, a reading or a place.
var kept = []string{"rows", "row", "names", "name", "ref", "refs", "joint", "to", "used", "setAside", "chartText", "text", "unit", "verdict",
	"basis", "hold", "quantity", "slip", "look", "guide", "measure", "tool", "version", "between", "conversions", "table", "column", "id", "key"}

// Documents keep their title in every language.
var titles = regexp.MustCompile(`propeller-shaft assembly|driveshaft service manual`)

func mustAny(t testing.TB, x any) any {
	t.Helper()
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	var out any
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

func TestSpanishHasEverySpeechFile(t *testing.T) {
	missing, err := alike.Missing(static.FS, os.DirFS("../../content/es"))
	if err != nil || len(missing) > 0 {
		t.Errorf("content/es lacks %q (%v)", missing, err)
	}
}

// The core that speaks Spanish answers every vector with the same verdict, sizes and figures
// as the English one, and with no English sentence.
func TestSpanishAnswersAlike(t *testing.T) {
	english, chart := mustMatch(t)
	bundle, problems := static.Core(mustSpanish(t))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	spanish, err := matcher.New(bundle, chart)
	if err != nil {
		t.Fatal(err)
	}
	rules := alike.Rules{Kept: kept, Quoted: titles}
	files, err := filepath.Glob("testdata/vectors/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no vectors: %v", err)
	}
	queries := map[string]matcher.Query{"nothing": {}}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var v vector
		if err := json.Unmarshal(text, &v); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		queries[filepath.Base(file)] = v.Query
	}
	// Readings that cannot be understood or used, each refused in its own words.
	for _, bad := range []string{"", "27.00.00 mm", "27 mm 28", "-27", "2e1 mm", "27", "0 mm", "1 17/16 in", "1/0 in", "1/7 in", "1.5/8 in",
		"1/2 mm", "27 cm", "27 ft", "27 thou", "27 m", "27 li", "27 28 mm", "no number", "9 mm", "900 mm", strings.Repeat("2", 30)} {
		for _, q := range []string{"cap", "across", "clip"} {
			end := matcher.QueryEnd{Hold: "inside-clip", Taken: "yoke"}
			switch q {
			case "cap":
				end.Cap = []string{bad, "27 mm"}
			case "across":
				end.Across = []string{bad, "82 mm"}
			default:
				end.Clip = []string{bad, "1.5 mm", "2.5 mm"}
			}
			queries["refused "+q+" "+bad] = matcher.Query{Ends: []matcher.QueryEnd{end}}
		}
	}
	for name, q := range queries {
		e, err := english.Identify(q)
		if err != nil {
			t.Fatal(err)
		}
		s, err := spanish.Identify(q)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range rules.Differences(mustAny(t, e), mustAny(t, s)) {
			t.Errorf("%s: %s", name, d)
		}
	}
}

func TestSpanishPartsAlike(t *testing.T) {
	english, all := mustParts(t), partTables(t)
	spanish, err := matcher.NewParts(mustSpanish(t))
	if err != nil {
		t.Fatal(err)
	}
	rules := alike.Rules{Kept: append([]string{"label"}, kept...)}
	files, err := filepath.Glob("testdata/parts/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no vectors: %v", err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var vectors []partVector
		if err := json.Unmarshal(text, &vectors); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		for _, v := range vectors {
			table := all[v.Query.Table]
			// Labels, titles and cautions are words of the table: the sentences alone are looked at.
			table.Cautions = []string{}
			table.Title = "“" + table.Title + "”"
			for i := range table.Columns {
				table.Columns[i].Label = "“" + table.Columns[i].Label + "”"
			}
			e, err := english.Identify(table, v.Query)
			if err != nil {
				t.Fatal(err)
			}
			s, err := spanish.Identify(table, v.Query)
			if err != nil {
				t.Fatal(err)
			}
			for _, d := range rules.Differences(mustAny(t, e), mustAny(t, s)) {
				t.Errorf("%s: %s: %s", file, v.Name, d)
			}
		}
	}
}

func TestSpanishMethodAlike(t *testing.T) {
	english, err := matcher.Assumptions(static.FS)
	if err != nil {
		t.Fatal(err)
	}
	spanish, err := matcher.Assumptions(mustSpanish(t))
	if err != nil {
		t.Fatal(err)
	}
	rules := alike.Rules{Kept: []string{"id", "unit", "basis", "source"}}
	for _, d := range rules.Differences(mustAny(t, english), mustAny(t, spanish)) {
		t.Error(d)
	}
}

// script runs a source of the folder alone, its exports under the name it.
func script(t testing.TB, fsys fs.FS, source string) *goja.Runtime {
	t.Helper()
	bundle, problems := static.Script(fsys, source, "it")
	if problems.Blocked() {
		t.Fatal(problems)
	}
	vm := goja.New()
	if _, err := vm.RunScript(source, string(bundle)); err != nil {
		t.Fatal(err)
	}
	return vm
}

// What is printed in Spanish is read back as the same reading, by the English core too, and
// English prints with a point as ever.
func TestNumbersGoRound(t *testing.T) {
	spanish := script(t, mustSpanish(t), "matcher/speech-words.ts")
	english := script(t, static.FS, "matcher/speech-words.ts")
	cores := []*goja.Runtime{script(t, mustSpanish(t), "matcher/reading.ts"), script(t, static.FS, "matcher/reading.ts")}
	run := func(t *rapid.T, vm *goja.Runtime, expression string, args ...any) string {
		if err := vm.Set("a", args); err != nil {
			t.Fatal(err)
		}
		v, err := vm.RunString(expression)
		if err != nil {
			t.Fatal(err)
		}
		return v.String()
	}
	rapid.Check(t, func(t *rapid.T) {
		mm := float64(rapid.IntRange(1, 30_000).Draw(t, "hundredths of a millimetre")) / 100
		lead := rapid.SampledFrom([]string{"mm", "in"}).Draw(t, "lead")
		e := run(t, english, "it.both(a[0], a[1])", mm, lead)
		s := run(t, spanish, "it.both(a[0], a[1])", mm, lead)
		if strings.Contains(e, ",") || strings.Contains(s, ".") || strings.ReplaceAll(s, ",", ".") != e {
			t.Fatalf("%v mm is %q in English and %q in Spanish", mm, e, s)
		}
		first, _, _ := strings.Cut(s, " (")
		point, _, _ := strings.Cut(e, " (")
		for _, core := range cores {
			if got := run(t, core, "it.parseReading(a[0]).text", first); got != point {
				t.Fatalf("%q is read as %q, want %q", first, got, point)
			}
		}
	})
}

// Sentences that no vector reaches: of links, of measurements beside a value, of old charts.
// Names and records of words, and what needs no argument, are compared file by file.
func TestSpanishSentencesAlike(t *testing.T) {
	const same = `JSON.stringify(Object.fromEntries(Object.entries(it).map(([name, x]) =>
		[name, typeof x !== "function" ? x : x.length === 0 ? x() : x.length])))`
	calls := map[string][]string{
		"matcher/speech-address.ts": {`it.twice("cap")`, `it.unknownKey("x")`, `it.unknownWord("hold2", "x", ["plate", "strap"])`},
		"matcher/speech-measured.ts": {
			`it.worth(30.15, 0.02, 1, "micrometer", "mm")`, `it.worth(30.15, 0.02, 3, "tape", "in")`,
			`[true, false].map((consistent) => it.amongThemselves({ratio: 1.23, limit: 2, consistent}))`,
			`["tape", undefined].map((tool) => it.comes({mm: 30, uncertainty: 0.1, count: 2, readings: 6}, tool, "mm"))`,
			`[[true, 0, 1], [true, 0.2, 1], [true, 2, 1], [false, 0.2, 1]].map(([consistent, off, within]) =>
				it.beside("1.062 in", {off, within, larger: off > 1}, consistent, "mm"))`,
			`[[1, ""], [2, ""]].map(([n]) => it.unused(Array.from({length: n}, () => ({elsewhere: true}))))`,
			`it.unused([{trouble: true, says: "“why”"}])`},
		"matcher/speech-since.ts": {
			`["older", "partly", "newer", "unknown", "no-name", "same"].flatMap((standing) =>
				[0, 1, 3].flatMap((rows) => [true, false].map((told) => it.head(standing, "2025-11-25-1a", "2026-11-25-2b", rows, told))))`,
			`["added", "retired", "renamed", "value", "hold"].flatMap((what) => ["", "1.062 in"].map((old) =>
				it.changed({what, of: "joints-inch/1310", column: "cap", old, new: "27.00 mm", why: ""}, {chart: "2026", why: "“misprint”"}, "1310")))`},
		"matcher/speech-query.ts": {`[1, 3].map(it.howManyEnds)`, `[0, 1].map(it.emptyEnd)`, `it.tooMany(40, 30)`, `it.unknownWord("hold", "x", ["plate"])`, `it.notReadings("cap")`},
		"matcher/speech-ways.ts": {`[[true, true, 0], [true, false, 1], [false, false, 0]].map(([caps, held, keeps]) =>
				it.way({joint: "S44", conversion: held, keeps, to: "1330", caps, held, recalled: held}))`},
		"matcher/speech-part-query.ts": {`it.otherTable("a", "b")`, `it.countsDiffer("“Teeth”", 21, 22)`, `["outer", "inner"].map(it.howWideHole)`, `it.badAddress("x")`},
		"matcher/speech-yokes.ts":      {`it.fromBore({readings: 2, mean: 27.1, value: 27, uncertainty: 0.05, largest: "", apart: 0.1, lead: "mm"})`, `[0.5, -0.5].map((float) => it.withClips(1.5, float, 1.2, "mm", 1))`, `[0.9, 1.5, 3].map((clip) => it.clipsFor(clip, "in", undefined))`, `it.setAside(["27.1 mm"])`},
	}
	rules := alike.Rules{Kept: []string{"faces"}, Quoted: titles}
	files, err := fs.Glob(static.FS, "matcher/speech*.ts")
	if err != nil || len(files) < 15 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	spanish := mustSpanish(t)
	for _, file := range files {
		e, s := script(t, static.FS, file), script(t, spanish, file)
		for _, expression := range append([]string{same}, calls[file]...) {
			tell := func(vm *goja.Runtime) any {
				v, err := vm.RunString(expression)
				if err != nil {
					t.Fatalf("%s: %s: %v", file, expression, err)
				}
				return v.Export()
			}
			x, y := tell(e), tell(s)
			if expression == same {
				var english, other map[string]any
				if json.Unmarshal([]byte(x.(string)), &english) != nil || json.Unmarshal([]byte(y.(string)), &other) != nil {
					t.Fatal(file)
				}
				for name := range other { // a language may have words of its own besides
					if _, ok := english[name]; !ok {
						delete(other, name)
					}
				}
				x, y = english, other
			}
			for _, d := range rules.Differences(mustAny(t, x), mustAny(t, y)) {
				t.Errorf("%s: %s: %s", file, strings.Join(strings.Fields(expression), " ")[:min(len(expression), 30)], d)
			}
		}
	}
}
