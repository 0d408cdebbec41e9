package build

import (
	"bytes"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"capspan/content"
	"capspan/static/matcher"
	"capspan/tables"
)

// What a page asks of the chart and the chart does not have is a problem with its place and, where
// one name is near, a hint.
func TestGuideRefusals(t *testing.T) {
	head := "---\ntitle: T\nabout: A.\n---\n\n"
	all, found := load(inEnglish(), Options{})
	if found.Blocked() {
		t.Fatal(found)
	}
	options := content.Options{Chart: all[0].core.resolver(all[0].core)}
	const ask = `hold=outside-clip&cap=1.062in&across=3.219in`
	for _, test := range []struct{ text, want string }{
		{"A {row 1301}.", `content/extra.md:6:8: extra: no joint of the chart is called "1301" [unknown-row]`},
		{"A {row 1310-to-1480}.", `content/extra.md:6:8: extra: no joint of the chart is called "1310-to-1480" [unknown-row]`},
		{"A {row u-bolt-131}.", `content/extra.md:6:8: extra: no joint of the chart is called "u-bolt-131" [unknown-row]`}, // u-bolt-1310 is no joint
		{"A {reading 1.062}.", `content/extra.md:6:12: extra: "1.062" has no unit: end it with in or mm, as in 1.062 in [bad-reading]`},
		{"A {reading 1,062 in}.", `content/extra.md:6:12: extra: "1,062" is not a number [bad-reading]`},
		{":: table joints-wings", "content/extra.md:6:10: extra: no table is called \"joints-wings\" [unknown-table]\n    hint: did you mean \"joints-wing\"?"},
		{":: table joints-wing rows=2c,1310", `content/extra.md:6:10: extra: table "joints-wing" has no row "1310" [unknown-row]`},
		{"::: figure joint row=7260x alt=\"x\"\n:::", "content/extra.md:6:22: extra: no joint of the chart is called \"7260x\" [unknown-row]\n    hint: did you mean \"7260\"?"},
		{":: apart tool=steelrule", "content/extra.md:6:15: extra: no sizes are compared for the instrument \"steelrule\" [unknown-tool]\n    hint: did you mean \"steel-rule\"?"},
		{`:: answer expect=identified query="` + ask + `&tool=ruler"`, "[bad-query]"},
		{`:: answer expect=possible query="` + ask + `"`, `content/extra.md:6:18: extra: the text counts on "possible" and the core says "identified" [stale-answer]` +
			"\n    hint: mend the text around it, then the word"},
		{`:: answer expect=identified rows=1330 query="` + ask + `"`, `content/extra.md:6:34: extra: the text counts on row "1330", and the core leaves ["1310"] [stale-answer]`},
	} {
		_, problems := content.Parse("extra.md", []byte(head+test.text+"\n"), options)
		if len(problems) != 1 || !strings.HasSuffix(problems[0].String(), test.want) {
			t.Errorf("%s:\ngot  %v\nwant %s", test.text, problems, test.want)
		}
	}
}

// When the tables themselves are broken, the pages add no noise about rows.
func TestGuideKeepsQuietWithoutChart(t *testing.T) {
	src := spoiled(t, map[string]string{"extra.md": "---\ntitle: T\n---\n\nA {row nowhere}.\n"})
	src.Tables = src.Content // a folder without tables
	_, problems := siteOf(t, src, Options{})
	checkFinds(t, src, problems)
	if !problems.Blocked() {
		t.Fatal("a folder without tables builds")
	}
	for _, p := range problems {
		if p.Rule == "unknown-row" {
			t.Errorf("%v", p)
		}
	}
}

var shownVerdict = regexp.MustCompile(`<div class="verdict verdict--([a-z-]+)"><p class="verdict__stamp">([^<]*)</p><p class="verdict__head">([^<]*)</p>`)

// The verdicts on the pages of examples are what their words claim.
func TestExamples(t *testing.T) {
	files := contents(mustSite(t, Options{Base: "/sub/"}))
	for page, want := range map[string][]struct{ verdict, says string }{
		"plain": {{"identified", "1350"}},
		"conversion": {{"identified", "7260-to-1310"},
			{"measure-again", "do not belong together"}},
		"nowhere": {{"not-in-chart", "no row"},
			{"not-in-chart", "these two ends"}},
		"bare-yoke": {{"possible", "This yoke may take the 1310"},
			{"identified", "This yoke takes the 1310"}},
		"bad-readings": {{"identified", "1350"},
			{"measure-again", "do not belong together"},
			{"measure-again", ""}},
	} {
		html := string(files["measure/examples/"+page+"/index.html"])
		found := shownVerdict.FindAllStringSubmatch(html, -1)
		if len(found) != len(want) {
			t.Errorf("%s: %d answers, want %d", page, len(found), len(want))
			continue
		}
		for n, w := range want {
			if found[n][1] != w.verdict || found[n][2] != english.word("verdict."+w.verdict) || !strings.Contains(found[n][3], w.says) {
				t.Errorf("%s, answer %d: got %q, want %s with %q", page, n+1, found[n][1:], w.verdict, w.says)
			}
		}
		if !strings.Contains(html, "This case is invented.") {
			t.Errorf("%s does not say that it is invented", page)
		}
	}
	bad := string(files["measure/examples/bad-readings/index.html"])
	if !strings.Contains(bad, "Not used: 3.641 in.") {
		t.Error("the reading that stands apart is not shown as set aside")
	}
}

// The case reckons 81.73 mm from the yoke by hand and names the 1310. A joint that
// measures so is the 1310 to the core as well.
func TestBareYokeByHand(t *testing.T) {
	m, problems := NewIdentifier(inEnglish(), "")
	if problems.Blocked() {
		t.Fatal(problems)
	}
	answer, err := m.Identify(matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip",
		Cap: []string{"27.00 mm", "26.99 mm"}, Across: []string{"81.73 mm", "81.73 mm"}}}})
	if err != nil {
		t.Fatal(err)
	}
	if len(answer.Sizes) != 1 || !strings.HasSuffix(answer.Sizes[0].Rows[0], "/1310") {
		t.Errorf("got %s with %v, want the 1310 alone", answer.Verdict, answer.Sizes)
	}
}

// A size is named as one a rule cannot tell exactly when a reading within its limits can
// belong to either; the core must not name a single size for a reading halfway.
func TestApart(t *testing.T) {
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files := contents(mustSite(t, Options{}))
	page := files["measure/rule/index.html"]
	rule, _, _ := bytes.Cut(page, []byte(">What a tape cannot settle<"))
	listed := map[string]bool{}
	for _, m := range regexp.MustCompile(`<li><a href="/joint/[^"]+">([^<]+)</a> from`).FindAllSubmatch(rule, -1) {
		listed[string(m[1])] = true
	}
	want := map[string]bool{}
	const apart = 2 * (0.15 + 0.5/2) // mm: JIS B 7516, and half of a rule's half-millimetre line
	for _, a := range measurable(set) {
		for _, b := range measurable(set) {
			x, y := a.Ends[0], b.Ends[0]
			near := func(p, q tables.Quantity) bool {
				d := p.Float() - q.Float()
				return d < apart+1e-6 && d > -apart-1e-6
			}
			if a != b && x.Hold.Hold() == y.Hold.Hold() && near(x.Cap.Quantity, y.Cap.Quantity) && near(x.Across.Quantity, y.Across.Quantity) {
				want[a.ID] = true
			}
		}
	}
	if diff := cmp.Diff(want, listed); diff != "" || len(want) == 0 {
		t.Errorf("sizes a rule cannot tell apart (-want +got):\n%s", diff)
	}

	m, _ := NewIdentifier(inEnglish(), "")
	answer, err := m.Identify(matcher.Query{Tool: "steel-rule", Ends: []matcher.QueryEnd{{Hold: "outside-clip",
		Cap: []string{"22.0 mm", "22.0 mm"}, Across: []string{"54.4 mm", "54.4 mm"}}}})
	if err != nil {
		t.Fatal(err)
	}
	if listed["22x54"] && answer.Verdict == matcher.Identified {
		t.Errorf("halfway between 22x54 and 22x54.8 the core names %v", answer.Sizes)
	}
}

// The page on tightening groups the bolts of the chart as a reader meets them. Each figure of
// the table stands there as the table has it, beside its thread.
func TestTighteningIsTheTable(t *testing.T) {
	page, err := fs.ReadFile(content.FS, "measure/tightening.md")
	if err != nil {
		t.Fatal(err)
	}
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	lines := strings.Split(string(page), "\n")
	rows := 0
	for _, table := range set.Tables {
		if table.ID != "fasteners" {
			continue
		}
		for _, row := range table.Rows {
			rows++
			torque := row.Values["torque"]
			for _, v := range append([]tables.Value{torque}, torque.Others...) {
				if !slices.ContainsFunc(lines, func(line string) bool {
					return strings.Contains(line, row.Values["thread"].Word()) && strings.Contains(line, "| "+v.Word()+" |")
				}) {
					t.Errorf("the page lacks %s of %s", v.Figure(), row.ID)
				}
			}
		}
	}
	if rows == 0 {
		t.Error("the chart has no table of bolts")
	}
}
