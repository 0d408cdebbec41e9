package build

import (
	"io/fs"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
	"capspan/tables/compare"
	"github.com/google/go-cmp/cmp"
)

// changedTables are the shipped ones with words replaced, each once, in the file named
// before the first: "joints-inch.yaml: old => new".
func changedTables(t testing.TB, changes ...string) fstest.MapFS {
	t.Helper()
	out := fstest.MapFS{}
	names, err := fs.Glob(tables.FS, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(tables.FS, name)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = &fstest.MapFile{Data: text}
	}
	for _, change := range changes {
		file, words, _ := strings.Cut(change, ": ")
		old, now, _ := strings.Cut(words, " => ")
		if !strings.Contains(string(out[file].Data), old) {
			t.Fatalf("%s does not hold %q", file, old)
		}
		out[file] = &fstest.MapFile{Data: []byte(strings.Replace(string(out[file].Data), old, now, 1))}
	}
	return out
}

func mustCompare(t testing.TB, older, newer fs.FS) *Comparison {
	t.Helper()
	src := inEnglish()
	src.Tables = newer
	c, problems, err := Compare(older, src, false)
	if err != nil || c == nil {
		t.Fatalf("%v: %v", err, problems)
	}
	return c
}

// inchRow is how a row of the shipped inch table begins; the tests move its figures.
func inchRow(t testing.TB, id string) (cap, across tables.Value) {
	t.Helper()
	set, _ := tables.Load(tables.FS)
	row := set.Find(id)
	if row == nil || len(row.Ends) != 1 {
		t.Fatalf("no plain row %q", id)
	}
	return row.Ends[0].Cap, row.Ends[0].Across
}

// moveAcross writes another distance across into a row of the inch table.
func moveAcross(t testing.TB, id, to string) fstest.MapFS {
	t.Helper()
	_, across := inchRow(t, id)
	files := changedTables(t)
	name := "joints-inch.yaml"
	before, row, found := strings.Cut(string(files[name].Data), "  - id: \""+id+"\"\n")
	if !found {
		t.Fatalf("no row %q in %s", id, name)
	}
	old := "across: {is: " + across.Quantity.Text + ","
	if !strings.Contains(row, old) {
		t.Fatalf("%q: no %q", id, old)
	}
	row = strings.Replace(row, old, "across: {is: "+to+",", 1)
	files[name] = &fstest.MapFile{Data: []byte(before + "  - id: \"" + id + "\"\n" + row)}
	return files
}

// 1310 made as long as 1330: a caliper can no longer tell them apart, its conversions
// move with it, and readings of either now mean something else.
func TestEffectOfAMovedRow(t *testing.T) {
	_, across := inchRow(t, "1330")
	c := mustCompare(t, tables.FS, moveAcross(t, "1310", across.Quantity.Text))
	together := slices.ContainsFunc(c.Shifts.Together, func(p compare.Pair) bool { return p.A == "1310" && p.B == "1330" && !p.Twins })
	if !together {
		t.Errorf("1310 and 1330 did not come together: %v", c.Shifts.Together)
	}
	moved := map[string]bool{}
	for _, m := range c.Shifts.Conversions {
		if m.Like != "1310" || m.What != "across" || m.New.Text != across.Quantity.String() || m.New.Converted == "" {
			t.Errorf("another move: %+v", m)
		}
		moved[m.Row] = true
	}
	if !moved["7260-to-1310"] || !moved["1310-to-1350"] || moved["1410-to-1480"] {
		t.Errorf("conversions that moved: %v", moved)
	}
	var of1310, of1330 bool
	for _, v := range c.Verdicts {
		of1310 = of1310 || v.Of == "1310" && v.Old.Verdict == matcher.Identified && v.New.Verdict != matcher.Identified
		of1330 = of1330 || v.Of == "1330" && slices.Contains(v.New.Rows, "1310") && !slices.Contains(v.Old.Rows, "1310")
		if !strings.HasPrefix(v.Address, "/identify/#hold=") || v.Asks == "" {
			t.Errorf("no address or words: %+v", v)
		}
	}
	if !of1310 || !of1330 {
		t.Errorf("readings of 1310 (%t) or 1330 (%t) should mean something else", of1310, of1330)
	}
	t.Logf("%d queries, %d near, %d asked, %d answered otherwise", c.Queries, c.Near, c.Asked, len(c.Verdicts))
	back := mustCompare(t, moveAcross(t, "1310", across.Quantity.Text), tables.FS)
	if diff := cmp.Diff(c.Shifts.Together, back.Shifts.Apart); diff != "" {
		t.Errorf("there and back (-together +apart):\n%s", diff)
	}
}

// What says nothing of a size asks the core nothing.
func TestEffectOfWords(t *testing.T) {
	c := mustCompare(t, tables.FS, changedTables(t, "joints-inch.yaml: title: Inch-series joints => title: Joints in inches"))
	if c.Empty() || c.Asked != 0 || len(c.Verdicts) != 0 || len(c.Shifts.Together)+len(c.Shifts.Apart)+len(c.Shifts.Conversions) != 0 {
		t.Errorf("a title changed: %+v", c)
	}
	if c.Queries < 400 {
		t.Errorf("%d queries for 133 rows: each has its own figures and three readings about them", c.Queries)
	}
}

// A query that is left out because it lies far from every changed row would have been
// answered as before: a part of those is asked here, and none is answered otherwise.
func TestNothingFarAwayChanges(t *testing.T) {
	_, across := inchRow(t, "1330")
	edits := map[string]fstest.MapFS{
		"moved":  moveAcross(t, "1310", across.Quantity.Text),
		"memory": changedTables(t, "joints-farm.yaml: basis: common-practice => basis: memory"),
	}
	core := mustParts(t, false)
	for name, files := range edits {
		t.Run(name, func(t *testing.T) {
			older, newer := mustLoadTables(t, tables.FS), mustLoadTables(t, files)
			c := &Comparison{Diff: compare.Sets(older, newer)}
			charts := [2]matcher.Chart{Chart(older), Chart(newer)}
			changes := c.touched(charts[0], charts[1])
			all := c.choose(charts[0], charts[1], true)
			if changes.everywhere || c.Near == 0 || c.Near == len(all) || c.Queries != len(all) {
				t.Fatalf("everywhere %t, %d near of %d", changes.everywhere, c.Near, len(all))
			}
			far := slices.DeleteFunc(all, func(q putQuery) bool { return reachOf(changes.ends).near(q.mm) })
			var some []putQuery
			for n := 0; n < len(far); n += 9 {
				some = append(some, far[n])
			}
			if err := c.ask(core, charts, some); err != nil {
				t.Fatal(err)
			}
			for _, v := range c.Verdicts {
				t.Errorf("far away and answered otherwise: %+v", v)
			}
		})
	}
}

func mustParts(t testing.TB, pieced bool) coreParts {
	t.Helper()
	first, late, problems := static.Parts(static.FS, pieced)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return coreParts{first, late}
}

// The core in two parts concludes what the whole core does, of a chart held whole and of one
// in pieces: of rows' own readings, of careless ones, and of slips.
func TestPartsConcludeAsTheWhole(t *testing.T) {
	many, err := manyJoints()
	if err != nil {
		t.Fatal(err)
	}
	for name, folder := range map[string]fs.FS{"whole": tables.FS, "in pieces": many.Tables} {
		t.Run(name, func(t *testing.T) {
			set := mustLoadTables(t, folder)
			chart := Chart(set)
			c := &Comparison{Diff: compare.Sets(set, set)}
			all := c.choose(chart, chart, true)
			var asked []putQuery
			for n := 0; n < len(all); n += len(all) / 20 {
				asked = append(asked, all[n])
			}
			for _, cap := range []string{"27 in", "1.0 mm", "2.7 mm", "0.5 in"} { // another unit, a lost point
				asked = append(asked, putQuery{query: matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip", Faces: "over-caps", Cap: []string{cap}, Across: []string{"81.7 mm"}}}}})
			}
			parts := mustParts(t, len(chart.Rows) > largeRows)
			m, err := newMatcher(parts.first, chart)
			if err != nil {
				t.Fatal(err)
			}
			called := func(id string) string { return id }
			got, err := parts.concludedBy(m, asked, called)
			if err != nil {
				t.Fatal(err)
			}
			core, problems := coreFor(static.FS, len(chart.Rows))
			if problems.Blocked() {
				t.Fatal(problems)
			}
			if m, err = newMatcher(core, chart); err != nil {
				t.Fatal(err)
			}
			verdicts := map[matcher.Verdict]int{}
			for i, q := range asked {
				a, err := m.Identify(q.query)
				if err != nil {
					t.Fatal(err)
				}
				want := concluded(a, called)
				verdicts[want.Verdict]++
				if diff := cmp.Diff(want, got[i]); diff != "" {
					t.Errorf("%s (-whole core +parts):\n%s", asks(q.query), diff)
				}
			}
			if len(verdicts) < 4 || verdicts[matcher.MeasureAgain] == 0 {
				t.Errorf("too few kinds of verdicts to prove anything: %v", verdicts)
			}
		})
	}
}

func mustLoadTables(t testing.TB, fsys fs.FS) *tables.Set {
	t.Helper()
	set, problems := tables.Load(fsys)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return set
}

// A row under a new name changes no verdict: whoever asks gets the same joint.
func TestRenamingChangesNoVerdict(t *testing.T) {
	c := mustCompare(t, tables.FS, changedTables(t, `joints-farm.yaml: id: 22x54 => id: 22-by-54`,
		"retired.yaml: retired: [] => retired:\n  - {id: 22x54, to: [22-by-54], why: spelt out}"))
	if len(c.Changes) != 1 || len(c.Verdicts) != 0 || len(c.Shifts.Together)+len(c.Shifts.Apart) != 0 {
		t.Errorf("more than a name changed: %+v", c)
	}
}

// Both sides' problems are told, each on its own side.
func TestCompareWhatDoesNotLoad(t *testing.T) {
	bad := changedTables(t, "joints-inch.yaml: basis: memory => basis: hearsay")
	worse := changedTables(t, "joints-farm.yaml: version: => edition:")
	src := inEnglish()
	src.Tables = worse
	c, problems, err := Compare(bad, src, false)
	if err != nil || c != nil {
		t.Fatalf("compared what does not load: %v, %v", c, err)
	}
	if got := problems[0][0].Rule; got != "unknown-basis" {
		t.Errorf("base: %s", got)
	}
	if !problems[1].Blocked() || !strings.HasPrefix(problems[1][0].Pos.File, "tables/joints-farm.yaml") {
		t.Errorf("here: %v", problems[1])
	}
}
