package build

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"
	"unicode"

	"github.com/dop251/goja"
	"github.com/google/go-cmp/cmp"

	"capspan/build/diag"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// The page of corrections checks a cell before it is sent, by rules of its own code
// (static/parts/correct/check.ts). Here each cell is judged by it, written by it into a
// file, and judged by the loader: both must name the same rules.

const tried = `table: tried
title: Joints to try
about: Invented, for the tests
version: 1.0.0
date: 2026-11-25
unit: in
columns:
  hold:   {label: Hold, kind: hold}
  cap:    {label: Cap, kind: length, least: 0.3, greatest: 4}
  across: {label: Across, kind: length, least: 1, greatest: 12}
  torque: {label: Torque, kind: torque, unit: lbf.ft, range: true, least: 2, greatest: 600}
  holes:  {label: Holes, kind: count, least: 2, greatest: 12}
  ratio:  {label: Ratio, kind: number, least: 0.5, greatest: 5}
  thread: {label: Thread, kind: text}
rows:
  - id: a1
    hold:   {is: outside-clip, basis: memory}
    cap:    {is: 1.062, basis: memory} # a comment stays
    across: {is: 3.219, faces: over-caps, basis: memory}
    torque: {is: 26-35, basis: memory}
    holes:  {is: 4, basis: memory}
    ratio:  {is: 1.43, basis: memory}
    thread: {is: 3/8-24, basis: memory}
`

const triedSources = "sources:\n  - id: a-manual\n    kind: manual\n    title: A manual\n    publisher: A maker\n"

// corrector is the page's own code, without the page.
type corrector struct {
	t  testing.TB
	vm *goja.Runtime
}

var correctorScripts = sync.OnceValues(func() ([2][]byte, diag.List) {
	measured, problems := static.Script(static.FS, "matcher/measured.ts", matcher.MeasuredName)
	script, more := static.Script(static.FS, "parts/correct/correction.ts", "correction")
	return [2][]byte{measured, script}, append(problems, more...)
})

func newCorrector(t testing.TB) *corrector {
	t.Helper()
	scripts, problems := correctorScripts()
	if problems.Blocked() {
		t.Fatal(problems)
	}
	c := &corrector{t, goja.New()}
	for _, source := range scripts {
		if _, err := c.vm.RunString(string(source)); err != nil {
			t.Fatal(err)
		}
	}
	return c
}

// run evaluates an expression over the arguments a, which go in and out as JSON.
func (c *corrector) run(out any, expression string, args ...any) {
	c.t.Helper()
	text, err := json.Marshal(args)
	if err != nil {
		c.t.Fatal(err)
	}
	if err := c.vm.Set("given", string(text)); err != nil {
		c.t.Fatal(err)
	}
	v, err := c.vm.RunString("JSON.stringify((a => " + expression + ")(JSON.parse(given)))")
	if err != nil {
		c.t.Fatalf("%s of %.300s: %v", expression, text, err)
	}
	if err := json.Unmarshal([]byte(v.String()), out); err != nil {
		c.t.Fatalf("%s gives %s: %v", expression, v, err)
	}
}

// triedChart is a chart to be corrected, with what the page is told of it.
type triedChart struct {
	files   fstest.MapFS
	tables  map[string]tableFacts
	sources sourceFacts
}

func newTriedChart(t testing.TB, files map[string]string) triedChart {
	t.Helper()
	f := triedChart{files: fstest.MapFS{}, tables: map[string]tableFacts{}}
	for name, text := range files {
		f.files[name] = &fstest.MapFile{Data: []byte(text)}
	}
	set, problems := tables.Load(f.files)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for _, table := range set.Tables {
		facts, err := factsOf(f.files, table)
		if err != nil {
			t.Fatal(err)
		}
		f.tables[table.ID] = facts
	}
	var err error
	if f.sources, err = sourceFactsOf(f.files, set); err != nil {
		t.Fatal(err)
	}
	return f
}

// column finds what the page is told of a column and of its row, which is the first.
func (f tableFacts) column(t testing.TB, id string) columnFacts {
	t.Helper()
	i := slices.IndexFunc(f.Columns, func(c columnFacts) bool { return c.ID == id })
	if i < 0 {
		t.Fatalf("no column %q", id)
	}
	return f.Columns[i]
}

// judged are the rules that the page and the loader name for a cell of the first row, each
// once, and the text the loader read.
func (c *corrector) judged(f triedChart, column string, cell any) (page, loader []string, text string) {
	c.t.Helper()
	facts := f.tables["tried"]
	row := facts.Rows[0]
	var got struct {
		Rules []string
		Text  string
	}
	c.run(&got, `({rules: correction.checkCell(a[0], a[1], a[2], a[3]).map(p => p.rule),
		text: correction.applied(correction.editCell(a[4], a[2].cells[a[1].id], correction.cellText(a[0])))})`,
		cell, facts.column(c.t, column), row, f.sources.Known, facts)
	files := fstest.MapFS{"tried.yaml": {Data: []byte(got.Text)}, "sources.yaml": f.files["sources.yaml"]}
	_, problems := tables.Load(files)
	for _, p := range problems {
		loader = append(loader, p.Rule)
	}
	return once(got.Rules), once(loader), got.Text
}

func once(rules []string) []string {
	slices.Sort(rules)
	return append([]string{}, slices.Compact(rules)...)
}

// Cells with what is to be said of them, one by one.
func TestCorrectionJudgedAlike(t *testing.T) {
	text, err := os.ReadFile("testdata/correct/judged.json")
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct {
		Name, Column string
		Cell         json.RawMessage
		Rules        []string
	}
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	c, f := newCorrector(t), newTriedChart(t, map[string]string{"tried.yaml": tried, "sources.yaml": triedSources})
	for _, one := range cases {
		page, loader, text := c.judged(f, one.Column, one.Cell)
		if diff := cmp.Diff(one.Rules, loader); diff != "" {
			t.Errorf("%s: the loader (-want +got):\n%s%s", one.Name, diff, text)
		}
		if diff := cmp.Diff(one.Rules, page); diff != "" {
			t.Errorf("%s: the page (-want +got):\n%s", one.Name, diff)
		}
	}
}

// What people type and what has broken readers of texts before.
var (
	typedFigures = []string{"1.062", "1.0620", "0.3", "4", "4.0", "12", "101.6", "101.6000001", "27.00", "300", "26-35", "35-26", "1-1", "2-600", "1 3/16", "55/64", "1 1/16", "17/16", "3/7", "1/256", "0 1/2",
		"unknown", "none", "", " ", "1,062", ".5", "5.", "1.2.3", "1e999", "1e3", "-1", "+1", "0x1F", "012", "00", "0", "0.0", ".inf", ".nan", "null", "~", "yes", "1_000", "2026-11-20", "999999999999", "9999999999999",
		"1.06200000001", "１.０", "outside-clip", "plate", "strap", "inside-clip"}
	typedTexts = []string{"page 3", "table 1: caps", "\"quoted\"", "it's", "a # b", "{a}", "[a]", "*a", "&a", "!a", "%a", "@a", "`a", "a: b", "- a", "?", "|", ">", "", " ", "\t", "a\tb", "a\nb", "\u202ea", "a\u200bb", "\ufeff", "\ufeffa", "\u0000", "\u0007", "\u0085", "\u2028", "\ufffe",
		"<script>alert(1)</script>", "javascript:alert(1)", "null", "true", "1310", "red-shed", "red shed", "аb", "😀", "é", strings.Repeat("x", 41), strings.Repeat("é", 400), strings.Repeat("é", 401), "\\", "\\\"", "a\\nb", "a ", " a", "=1+1"}
	typedDays = []string{"2026-11-20", "2024-02-29", "2026-02-29", "2026-2-3", "0000-01-01", "1900-02-29", "2000-02-29", "20261120", "2026-13-01", "2026-00-10", "2026-01-00", "2026-01-32"}
)

// pick takes one of a list, by chance a bad one.
func pick(random *rand.Rand, good []string, bad ...[]string) string {
	if random.IntN(8) == 0 {
		good = bad[random.IntN(len(bad))]
	}
	return good[random.IntN(len(good))]
}

func chance(random *rand.Rand) bool { return random.IntN(2) == 0 }

// made is a cell by chance: mostly sound, with something wrong here and there.
func made(random *rand.Rand, c columnFacts, known knownFacts) map[string]any {
	text := func(list any) []string {
		var words []string
		switch list := list.(type) {
		case []tables.Basis:
			for _, w := range list {
				words = append(words, string(w))
			}
		case []tables.Faces:
			for _, w := range list {
				words = append(words, string(w))
			}
		}
		return words
	}
	told := func() map[string]any {
		cell := map[string]any{"is": typedFigures[random.IntN(len(typedFigures))]}
		if chance(random) {
			cell["is"] = map[tables.Kind]string{tables.Holds: "outside-clip", tables.Length: "1.062", tables.Torque: "26-35", tables.Count: "6", tables.Number: "1.43", tables.Text: "3/8-24"}[c.Kind]
		}
		if c.Kind == tables.Text && chance(random) {
			cell["is"] = typedTexts[random.IntN(len(typedTexts))]
		}
		if len(c.Units) > 0 && chance(random) {
			cell["unit"] = pick(random, []string{string(c.Units[0]), string(c.Units[1])}, []string{"cm", "in", "N.m", ""})
		}
		if random.IntN(5) > 0 {
			cell["basis"] = pick(random, text(known.Bases), typedTexts)
		}
		if basis := cell["basis"]; basis == "published" && random.IntN(8) > 0 || random.IntN(6) == 0 {
			cell["source"] = []string{pick(random, known.Sources, typedTexts)}
		}
		if cell["source"] != nil && chance(random) || random.IntN(8) == 0 {
			cell["at"] = typedTexts[random.IntN(len(typedTexts))]
		}
		if c.Faces && random.IntN(4) > 0 {
			cell["faces"] = pick(random, text(known.Faces), typedTexts)
		}
		return cell
	}
	cell := told()
	if c.Faces && random.IntN(4) == 0 {
		cell["facesBasis"] = pick(random, text(known.Bases), typedTexts)
	}
	if random.IntN(4) == 0 {
		cell["others"] = []any{told()}
	}
	for c.Kind == tables.Length && chance(random) {
		m := map[string]any{"tool": pick(random, known.Tools, typedTexts)}
		readings := []string{}
		for random.IntN(4) > 0 {
			readings = append(readings, pick(random, []string{"1.061 in", "27.01 mm", "1 1/16 in", "3.22 in", "26.9 mm"}, typedTexts, typedFigures,
				[]string{"1e999 mm", "27,0 mm", "270 mm", "1 mm", "1/2 mm", "  in", "27 MM", "27.3000001 mm", "1.0 in ", " mm"}))
		}
		m["readings"] = readings
		if c.Condition && chance(random) {
			m["condition"] = pick(random, known.Conditions, typedTexts)
		}
		if c.Faces && chance(random) {
			m["faces"] = pick(random, text(known.Faces), typedTexts)
		}
		if chance(random) {
			m["on"] = pick(random, typedDays, typedTexts)
		}
		if chance(random) {
			m["by"] = pick(random, []string{"red-shed", "1310", "a.b"}, typedTexts)
		}
		list, _ := cell["measured"].([]any)
		cell["measured"] = append(list, m)
	}
	return cell
}

// idle is a unit of nothing, which is not read.
var idle = regexp.MustCompile(`(is: (?:unknown|none)), unit: [^,}]+`)

// Thousands of cells by chance: whatever is typed, page and loader name the same rules, and
// what the page takes the loader reads back as it was meant.
func TestCorrectionJudgedAlikeByChance(t *testing.T) {
	c, f := newCorrector(t), newTriedChart(t, map[string]string{"tried.yaml": tried, "sources.yaml": triedSources})
	random := rand.New(rand.NewPCG(6, 2026))
	seen, sound := map[string]int{}, 0
	for n := range 4000 {
		column := f.tables["tried"].Columns[random.IntN(len(f.tables["tried"].Columns))]
		cell := made(random, column, f.sources.Known)
		page, loader, text := c.judged(f, column.ID, cell)
		if diff := cmp.Diff(loader, page); diff != "" {
			t.Errorf("%d: %s of %v (-loader +page):\n%s", n, column.ID, cell, diff)
			if t.Failed() && n > 400 {
				break
			}
			continue
		}
		for _, rule := range loader {
			seen[rule]++
		}
		if len(loader) > 0 {
			continue
		}
		sound++
		again := newTriedChart(t, map[string]string{"tried.yaml": text, "sources.yaml": triedSources})
		var meant, is any
		c.run(&meant, "correction.cellText(a[0])", cell)
		c.run(&is, "correction.cellText(a[0])", again.tables["tried"].Rows[0].Cells[column.ID])
		plain := func(v any) string {
			return idle.ReplaceAllString(strings.ReplaceAll(fmt.Sprint(v), ", unit: "+string(column.Unit), ""), "$1")
		}
		if plain(meant) != plain(is) {
			t.Errorf("%d: meant %v\nread %v", n, meant, is)
		}
	}
	if sound < 500 || len(seen) < 23 {
		t.Errorf("%d sound cells and %d rules broken: too few to prove anything: %v", sound, len(seen), seen)
	}
}

// Every character there is: what the page calls invisible or blank is what the loader does,
// by the tables of Unicode that Go has.
func TestCorrectionKnowsEveryCharacter(t *testing.T) {
	c := newCorrector(t)
	var shown struct{ Invisible, Blank []rune }
	c.run(&shown, `(() => {
		const out = {Invisible: [], Blank: []};
		for (let code = 0; code <= 0x10ffff; code++) {
			if (code >= 0xd800 && code <= 0xdfff) continue;
			const text = String.fromCodePoint(code);
			if (correction.invisible.test(text)) out.Invisible.push(code);
			if (correction.blank.test(text)) out.Blank.push(code);
		}
		return out;
	})()`)
	var want struct{ Invisible, Blank []rune }
	for r := range unicode.MaxRune + 1 {
		switch {
		case r >= 0xd800 && r <= 0xdfff:
			continue
		case unicode.In(r, unicode.Cc, unicode.Cf, unicode.Zl, unicode.Zp):
			want.Invisible = append(want.Invisible, r)
		}
		if unicode.IsSpace(r) {
			want.Blank = append(want.Blank, r)
		}
	}
	if diff := cmp.Diff(want, shown); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// The page's words for instruments and conditions are the identification core's.
func TestWordsOfMeasuring(t *testing.T) {
	if diff := cmp.Diff(tools, tables.Words().Tools); diff != "" {
		t.Error(diff)
	}
	if diff := cmp.Diff(conditions, tables.Words().Conditions); diff != "" {
		t.Error(diff)
	}
	m, problems := NewIdentifier(inEnglish(), "")
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for hold, faces := range tables.Words().Holds {
		core, err := m.FacesFor(matcher.Hold(hold))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range faces {
			if !slices.Contains(core, matcher.Faces(f)) {
				t.Errorf("%s on %s is in the tables and not in the core", f, hold)
			}
		}
	}
}
