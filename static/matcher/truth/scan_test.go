package main

import (
	"encoding/json"
	"fmt"
	"io/fs"
	"math"
	"path"
	"testing"
	"testing/fstest"

	"github.com/dop251/goja"
	"github.com/google/go-cmp/cmp"

	"capspan/build"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// The core without its index: every question looks at every row.
const plainCandidates = `
import type { KnownRow, Prepared } from "./prepared";
import type { Quantity } from "./types";
export type Box = Partial<Record<Quantity, readonly [number, number]>>;
export function within(chart: Prepared, box: Box): readonly KnownRow[] { return chart.parts(box).flatMap((part) => part.rows()); }
export function ordered(rows: KnownRow[]): KnownRow[] { return rows; }
export function boxRound(): Box { return {}; }
`

// An index may leave out only what decides nothing: with it and without it the core gives
// the same answers, to the last digits of a sum.
func TestIndexChangesNoAnswer(t *testing.T) {
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for _, c := range []struct {
		name  string
		chart matcher.Chart
		each  int // questions of each column
	}{{"shipped", build.Chart(set), 2}, {"dense", denseChart(300, 3), 1}} {
		indexed, plain := core(t, static.FS, c.chart), core(t, withoutIndex(t), c.chart)
		verdicts := map[matcher.Verdict]int{}
		for _, q := range questions(t, c.chart, c.each) {
			verdicts[sameAnswer(t, q, plain, indexed).Verdict]++
		}
		if len(verdicts) < 5 {
			t.Errorf("%s chart: the questions reach only the verdicts %v, want all five", c.name, verdicts)
		}
	}
}

// sameAnswer puts a question to two cores, whose answers must be the same but for the last
// digits of a sum; it returns the first one's.
func sameAnswer(t *testing.T, q matcher.Query, one, other *matcher.Matcher) matcher.Answer {
	t.Helper()
	want, err := one.Identify(q)
	if err != nil {
		t.Fatal(err)
	}
	got, err := other.Identify(q)
	if err != nil {
		t.Fatal(err)
	}
	for _, size := range got.Sizes {
		for _, ref := range size.Rows {
			if _, there := got.At[ref]; got.At != nil && !there {
				t.Errorf("%s: the answer does not say where %s has its page", mustJSON(t, q), ref)
			}
		}
	}
	got.At = nil // a chart held whole says nothing of pages
	if diff := cmp.Diff(want, got, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) <= 1e-9*max(1, math.Abs(a)) })); diff != "" {
		t.Fatalf("%s: the answers differ (-plain or whole +indexed or in pieces):\n%s", mustJSON(t, q), diff)
	}
	return want
}

func core(t *testing.T, fsys fs.FS, chart matcher.Chart) *matcher.Matcher {
	t.Helper()
	bundle, problems := static.Core(fsys)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	m, err := matcher.New(bundle, chart)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func withoutIndex(t *testing.T) fs.FS {
	t.Helper()
	out := fstest.MapFS{}
	names, err := fs.Glob(static.FS, "matcher/*.ts")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(static.FS, name)
		if err != nil {
			t.Fatal(err)
		}
		if path.Base(name) == "candidates.ts" {
			text = []byte(plainCandidates)
		}
		out[name] = &fstest.MapFile{Data: text}
	}
	return out
}

// questions are those of every column of the bench, and some a column has none of.
func questions(t *testing.T, chart matcher.Chart, each int) []matcher.Query {
	t.Helper()
	b := loaded(t)
	text := mustJSON(t, chart)
	var all []matcher.Query
	for _, c := range b.columns {
		var some []matcher.Query
		fromJSON(t, questionsOf(t, b, text, job{Column: c.ID, Seed: 5, To: each}), &some)
		all = append(all, some...)
	}
	for _, q := range all[:each] { // half measured, and of no known hold
		capOnly, acrossOnly, open := q, q, q
		capOnly.Ends, acrossOnly.Ends, open.Ends = ends(q), ends(q), ends(q)
		capOnly.Ends[0].Across, acrossOnly.Ends[0].Cap, open.Ends[0].Hold, open.Ends[0].Faces = nil, nil, "unknown", "unknown"
		all = append(all, capOnly, acrossOnly, open)
	}
	return all
}

func ends(q matcher.Query) []matcher.QueryEnd { return append([]matcher.QueryEnd{}, q.Ends...) }

func loaded(t *testing.T) *bench {
	t.Helper()
	b := &bench{}
	if err := b.load(); err != nil {
		t.Fatal(err)
	}
	return b
}

// questionsOf are a job's questions as the simulation writes them.
func questionsOf(t *testing.T, b *bench, chart string, j job) string {
	t.Helper()
	vm := goja.New()
	if _, err := vm.RunString(string(b.simulator)); err != nil {
		t.Fatal(err)
	}
	v, err := vm.RunString(fmt.Sprintf("JSON.stringify(%s.questions(%s, %s))", simulatorName, chart, mustJSON(t, j)))
	if err != nil {
		t.Fatalf("questions of %s: %v", j.Column, err)
	}
	return v.String()
}

func mustJSON(t *testing.T, x any) string {
	t.Helper()
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func fromJSON(t *testing.T, text string, out any) {
	t.Helper()
	if err := json.Unmarshal([]byte(text), out); err != nil {
		t.Fatalf("%v in %s", err, text)
	}
}
