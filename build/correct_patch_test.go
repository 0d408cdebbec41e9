package build

import (
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/tables"
	"capspan/tables/compare"
)

// typed is what a form was filled with; it mirrors Typed in static/parts/correct/correction.ts.
type typed struct {
	Way          string `json:"way"`
	Value        string `json:"value"`
	Unit         string `json:"unit"`
	Faces        string `json:"faces"`
	FacesPrinted bool   `json:"facesPrinted"`
	Source       string `json:"source"`
	Fresh        struct {
		Kind      string `json:"kind"`
		Title     string `json:"title"`
		Publisher string `json:"publisher"`
		Edition   string `json:"edition"`
		Date      string `json:"date"`
		Where     string `json:"where"`
	} `json:"fresh"`
	At        string `json:"at"`
	Beside    bool   `json:"beside"`
	Tool      string `json:"tool"`
	Condition string `json:"condition"`
	Readings  string `json:"readings"`
	On        string `json:"on"`
	By        string `json:"by"`
}

// proposed is what the page makes of it.
type proposed struct {
	Problems   []struct{ Rule, Key, Says string }
	Understood []string
	Line       string // of the cell, as it is to be
	Patch      string
}

// propose fills the form for a cell of a chart.
func (c *corrector) propose(f triedChart, table, row, column string, what typed) proposed {
	c.t.Helper()
	facts := f.tables[table]
	for _, r := range facts.Rows {
		if r.ID != row {
			continue
		}
		var got proposed
		c.run(&got, `(() => {
			const [typed, column, row, registry, facts] = a;
			const p = correction.propose(typed, column, row, row.cells[column.id], registry.known);
			const edits = [correction.editCell(facts, row.cells[column.id], correction.cellText(p.cell))];
			if (p.source) edits.push(correction.editSources(registry, p.source));
			return {problems: p.problems, understood: p.understood, line: edits[0].put[0], patch: correction.patchOf(edits)};
		})()`, what, facts.column(c.t, column), r, f.sources, facts)
		return got
	}
	c.t.Fatalf("no row %s/%s", table, row)
	return proposed{}
}

// gitApply puts the files into a repository of its own, applies the patch with git itself and
// returns the files.
func gitApply(t *testing.T, files fstest.MapFS, patch string) fs.FS {
	t.Helper()
	root := t.TempDir()
	for name, f := range files {
		if err := os.MkdirAll(filepath.Join(root, "tables"), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(root, "tables", name), f.Data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.WriteFile(filepath.Join(root, "it.patch"), []byte(patch), 0o644); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"init", "-q"}, {"-c", "core.autocrlf=false", "apply", "--whitespace=nowarn", "it.patch"}} {
		git := exec.Command("git", args...)
		git.Dir = root
		git.Env = append(os.Environ(), "GIT_CONFIG_GLOBAL="+os.DevNull, "GIT_CONFIG_SYSTEM="+os.DevNull)
		if out, err := git.CombinedOutput(); err != nil {
			t.Fatalf("git %s: %v\n%s\n%s", args[len(args)-1], err, out, patch)
		}
	}
	return os.DirFS(filepath.Join(root, "tables"))
}

// changed is the difference in meaning, a part a line; versions are the keeper's to raise.
func changed(t *testing.T, older, newer fs.FS) string {
	t.Helper()
	was, problems := tables.Load(older)
	is, more := tables.Load(newer)
	if problems.Blocked() || more.Blocked() {
		t.Fatal(problems, more)
	}
	var b strings.Builder
	for _, c := range compare.Sets(was, is).Changes {
		for _, p := range c.Parts {
			fmt.Fprintf(&b, "%s %s %s: %s -> %s\n", c.Kind, c.Path(), p.What, p.Old.Text, p.New.Text)
		}
	}
	return b.String()
}

// What is typed, the patch it makes, applied by git to the file, loaded and compared: just
// the change that was meant, whatever the line ends of the file. All of it is invented.
func TestCorrectionPatchApplies(t *testing.T) {
	manual := typed{Way: "published", Value: "27,00 mm", Unit: "in", Source: "a-manual", At: "page 3"}
	fresh := typed{Way: "published", Value: "1 1/16", Unit: "in", Source: "+"}
	fresh.Fresh.Kind, fresh.Fresh.Title, fresh.Fresh.Publisher = "catalogue", "Joints: a \"list\" # 2", "Three Gauge Railway"
	across := typed{Way: "published", Value: `3-7/32"`, Unit: "mm", Source: "a-manual"}
	printed := across
	printed.FacesPrinted = true
	beside := manual
	beside.Beside = true
	for _, c := range []struct {
		name, column string
		what         typed
		want         string
	}{
		{"published", "cap", manual, "changed tried/a1.cap value: 1.062 in -> 27.00 mm\nchanged tried/a1.cap basis: memory -> published\n" +
			"changed tried/a1.cap source:  -> a-manual\nchanged tried/a1.cap at:  -> page 3\n"},
		{"beside", "cap", beside, "changed tried/a1.cap others:  -> 27.00 mm, published, a-manual, page 3\n"},
		{"a new document", "cap", fresh, "changed tried/a1.cap value: 1.062 in -> 1 1/16 in\nchanged tried/a1.cap basis: memory -> published\n" +
			"changed tried/a1.cap source:  -> joints-a-list-2\nadded sources/joints-a-list-2 title:  -> Joints: a \"list\" # 2\n"},
		{"faces not in the document", "across", across, "changed tried/a1.across value: 3.219 in -> 3 7/32 in\nchanged tried/a1.across faces-basis:  -> memory\n" +
			"changed tried/a1.across basis: memory -> published\nchanged tried/a1.across source:  -> a-manual\n"},
		{"faces in the document", "across", printed, "changed tried/a1.across value: 3.219 in -> 3 7/32 in\nchanged tried/a1.across basis: memory -> published\nchanged tried/a1.across source:  -> a-manual\n"},
		{"measured", "cap", typed{Way: "measured", Unit: "mm", Tool: "micrometer", Condition: "used", Readings: "26,98\n 1.062 in\n\n1 1/16\"", On: "2026-11-20", By: "red-shed"},
			"changed tried/a1.cap measured:  -> 26.98 mm, 1.062 in, 1 1/16 in by micrometer, used, 2026-11-20, from red-shed\n"},
		{"counted", "holes", typed{Way: "seen", Value: "6"}, "changed tried/a1.holes value: 4 -> 6\nchanged tried/a1.holes basis: memory -> measured\n"},
		{"a range", "torque", typed{Way: "published", Value: "35 - 48 Nm", Unit: "lbf.ft", Source: "a-manual"},
			"changed tried/a1.torque value: 26-35 lbf.ft -> 35-48 N.m\nchanged tried/a1.torque basis: memory -> published\nchanged tried/a1.torque source:  -> a-manual\n"},
		{"words", "thread", typed{Way: "published", Value: "M10 x 1: \"fine\"", Source: "a-manual"},
			"changed tried/a1.thread value: 3/8-24 -> M10 x 1: \"fine\"\nchanged tried/a1.thread basis: memory -> published\nchanged tried/a1.thread source:  -> a-manual\n"},
	} {
		for _, form := range []struct {
			name   string
			shaped func(string) string
		}{
			{"unix", func(s string) string { return s }},
			{"windows", func(s string) string { return strings.ReplaceAll(s, "\n", "\r\n") }},
			{"no last line end", func(s string) string { return strings.TrimSuffix(s, "\n") }},
		} {
			t.Run(c.name+" "+form.name, func(t *testing.T) {
				page, f := newCorrector(t), newTriedChart(t, map[string]string{"tried.yaml": form.shaped(tried), "sources.yaml": form.shaped(triedSources)})
				got := page.propose(f, "tried", "a1", c.column, c.what)
				if len(got.Problems) > 0 {
					t.Fatal(got.Problems)
				}
				after := gitApply(t, f.files, got.Patch)
				if is := changed(t, f.files, after); is != c.want {
					t.Errorf("changes\n%swant\n%s", is, c.want)
				}
				for name := range f.files {
					text, err := fs.ReadFile(after, name)
					if err != nil {
						t.Fatal(err)
					}
					if lf, crlf := strings.Count(string(text), "\n"), strings.Count(string(text), "\r\n"); form.name == "windows" && lf != crlf || form.name != "windows" && crlf > 0 {
						t.Errorf("%s: %d lines end in LF, %d of them in CRLF", name, lf, crlf)
					}
					if name == "tried.yaml" && !strings.Contains(string(text), "# a comment stays") {
						t.Error("the comment behind the cell is gone")
					}
				}
			})
		}
	}
}

// When a document names other faces, what stood beside the old figure keeps its own.
func TestCorrectionOfFacesKeepsTheOthers(t *testing.T) {
	page, f := newCorrector(t), newTriedChart(t, map[string]string{"sources.yaml": triedSources, "tried.yaml": strings.NewReplacer("outside-clip", "inside-clip",
		"across: {is: 3.219, faces: over-caps, basis: memory}", "across: {is: 2.56, faces: groove-inner, basis: memory, others: [{is: 2.57, basis: memory}], measured: [{readings: [65.0 mm], tool: tape}]}").Replace(tried)})
	got := page.propose(f, "tried", "a1", "across", typed{Way: "published", Value: "2.640", Unit: "in", Source: "a-manual", Faces: "groove-outer", FacesPrinted: true})
	if want := "    across: {is: 2.640, faces: groove-outer, basis: published, source: [a-manual], others: [{is: 2.57, faces: groove-inner, basis: memory}], measured: [{readings: [65.0 mm], tool: tape, faces: groove-inner}]}\n"; got.Line != want {
		t.Errorf("got  %s\nwant %s", got.Line, want)
	}
	if is := changed(t, f.files, gitApply(t, f.files, got.Patch)); strings.Contains(is, "others") {
		t.Errorf("the others changed: %s", is)
	}
}

// The registry need not be there, or may be empty, when the first document is named.
func TestCorrectionStartsTheRegistry(t *testing.T) {
	what := typed{Way: "published", Value: "1.0625", Unit: "in", Source: "+"}
	what.Fresh.Kind, what.Fresh.Title, what.Fresh.Publisher = "manual", "Κατάλογος", "A maker"
	for name, registry := range map[string]*string{"missing": nil, "empty": ptr("# none yet\nsources: []\n"), "indented by four": ptr("sources:\n    - id: source\n      kind: manual\n      title: A\n      publisher: B\n")} {
		t.Run(name, func(t *testing.T) {
			files := map[string]string{"tried.yaml": tried}
			if registry != nil {
				files["sources.yaml"] = *registry
			}
			page, f := newCorrector(t), newTriedChart(t, files)
			got := page.propose(f, "tried", "a1", "cap", what)
			if len(got.Problems) > 0 {
				t.Fatal(got.Problems)
			}
			if is := changed(t, f.files, gitApply(t, f.files, got.Patch)); !strings.Contains(is, "title:  -> Κατάλογος") {
				t.Errorf("changes\n%s", is)
			}
		})
	}
}

func ptr(s string) *string { return &s }

// Every value of the shipped chart can be corrected: a measurement of each length, applied
// by git to the shipped files, is the only change. The readings are made up of the figures.
func TestEveryShippedLengthTakesAMeasurement(t *testing.T) {
	files := map[string]string{}
	names, err := fs.Glob(tables.FS, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(tables.FS, name)
		if err != nil {
			t.Fatal(err)
		}
		files[name] = string(text)
	}
	page, f := newCorrector(t), newTriedChart(t, files)
	done := 0
	for id, table := range f.tables {
		for _, column := range table.Columns {
			for n, row := range table.Rows {
				cell, own := row.Cells[column.ID]
				if !own || column.Kind != tables.Length {
					continue
				}
				reading, _, _ := strings.Cut(cell.Is, "-")
				if cell.Is == "unknown" || cell.Is == "none" {
					reading = column.Least
				}
				unit := string(column.Unit)
				if cell.Unit != "" {
					unit = string(cell.Unit)
				}
				what := typed{Way: "measured", Unit: unit, Readings: reading, Tool: "digital-caliper", Condition: "new"}
				if column.Faces && cell.Faces == "" {
					what.Faces = "over-caps"
				}
				got := page.propose(f, id, row.ID, column.ID, what)
				if len(got.Problems) > 0 {
					t.Errorf("%s/%s.%s: %v", id, row.ID, column.ID, got.Problems)
					continue
				}
				if done++; n > 0 {
					continue // git is slow: one row of a column will do
				}
				is := changed(t, f.files, gitApply(t, f.files, got.Patch))
				for line := range strings.Lines(is) {
					if !strings.HasPrefix(line, "changed "+id+"/"+row.ID+"."+column.ID+" ") {
						t.Errorf("%s/%s.%s: %s", id, row.ID, column.ID, line)
					}
				}
				if !strings.Contains(is, " measured: ") {
					t.Errorf("%s/%s.%s: %q", id, row.ID, column.ID, is)
				}
			}
		}
	}
	if done < 250 {
		t.Errorf("only %d values were tried", done)
	}
}

// What cannot be taken is refused with a word at the right field, and nothing is made.
func TestCorrectionRefuses(t *testing.T) {
	page, f := newCorrector(t), newTriedChart(t, map[string]string{"tried.yaml": tried, "sources.yaml": triedSources})
	measured := func(readings string) typed {
		return typed{Way: "measured", Unit: "mm", Tool: "micrometer", Condition: "used", Readings: readings}
	}
	named := measured("27.00")
	named.By = "<script>alert(1)</script>"
	turned := typed{Way: "published", Value: "1.063", Unit: "in", Source: "a-manual", At: "page \u202e31"}
	for _, c := range []struct {
		column string
		what   typed
		rule   string
		key    string
	}{
		{"cap", typed{Way: "published", Value: "", Unit: "in", Source: "a-manual"}, "bad-number", "is"},
		{"cap", typed{Way: "published", Value: "1e999", Unit: "in", Source: "a-manual"}, "bad-number", "is"},
		{"cap", typed{Way: "published", Value: "1.063 cm", Unit: "in", Source: "a-manual"}, "bad-number", "is"},
		{"cap", typed{Way: "published", Value: "106.3", Unit: "in", Source: "a-manual"}, "implausible", "is"},
		{"cap", typed{Way: "published", Value: "1.063", Unit: "in"}, "missing-source", "source"},
		{"cap", typed{Way: "published", Value: "1.063", Unit: "in", Source: "javascript:alert(1)"}, "unknown-source", "source"},
		{"cap", typed{Way: "published", Value: "1.063", Unit: "in", Source: "+"}, "empty-value", "new.title"},
		{"cap", turned, "control-character", "at"},
		{"cap", measured(""), "empty-value", "measured.readings"},
		{"cap", measured("27.00\n-27.01"), "bad-number", "measured.readings"},
		{"cap", measured("27.00\n" + strings.Repeat("9", 400)), "bad-number", "measured.readings"},
		{"cap", measured("2700"), "implausible", "measured.readings"},
		{"cap", named, "bad-id", "measured.by"},
		{"across", typed{Way: "published", Value: "3.22", Unit: "in", Source: "a-manual", Faces: "groove-inner"}, "wrong-faces", "faces"},
		{"holes", typed{Way: "seen", Value: "4"}, "", ""},
		{"thread", typed{Way: "seen", Value: "3/8-24"}, "", ""},
		{"holes", typed{Way: "seen", Value: "six"}, "bad-number", "is"},
		{"hold", typed{Way: "seen", Value: "plate"}, "wrong-faces", "is"},
	} {
		got := page.propose(f, "tried", "a1", c.column, c.what)
		if c.rule == "" {
			if len(got.Problems) > 0 {
				t.Errorf("%+v: %v", c.what, got.Problems)
			}
			continue
		}
		if len(got.Problems) == 0 || got.Problems[0].Rule != c.rule || got.Problems[0].Key != c.key || got.Problems[0].Says == "" {
			t.Errorf("%s %+v: %v, want %s at %s", c.column, c.what, got.Problems, c.rule, c.key)
		}
	}
}

// A correction that changes nothing is said to be none, and what was understood is told.
func TestCorrectionSaysWhatItUnderstood(t *testing.T) {
	page, f := newCorrector(t), newTriedChart(t, map[string]string{"tried.yaml": strings.Replace(tried, "cap:    {is: 1.062, basis: memory}", "cap:    {is: 1.062, basis: published, source: [a-manual]}", 1), "sources.yaml": triedSources})
	got := page.propose(f, "tried", "a1", "cap", typed{Way: "published", Value: "1,062", Unit: "in", Source: "a-manual"})
	if len(got.Problems) != 1 || got.Problems[0].Rule != "nothing-new" || len(got.Understood) != 1 || got.Understood[0] != "Understood as 1.062 in (≈ 26.975 mm)." {
		t.Errorf("got %+v", got)
	}
}
