package build

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/dop251/goja"

	"capspan/build/search"
	"capspan/static"
	"capspan/tables"
)

// shippedSite is built once for all tests of the search.
var shippedSite = sync.OnceValue(func() map[string][]byte {
	out, problems := Site(inEnglish(), Options{Base: "/sub/", Language: "en"})
	if problems.Blocked() {
		return nil
	}
	return contents(out)
})

// asker puts questions to the index of the shipped site, by the scripts the browser runs.
type asker struct {
	t  testing.TB
	vm *goja.Runtime
}

func mustAsk(t testing.TB) (asker, search.Index) {
	t.Helper()
	files := shippedSite()
	if files == nil {
		t.Fatal("the shipped site cannot be built")
	}
	a := asker{t, goja.New()}
	var index search.Index
	for name, content := range files {
		switch {
		case strings.HasPrefix(name, "assets/search-index."):
			a.set("index", content)
			if err := json.Unmarshal(content, &index); err != nil {
				t.Fatal(err)
			}
		case strings.HasPrefix(name, "assets/chart."):
			a.set("chart", content)
		}
	}
	if len(index.Entries) < 300 {
		t.Fatalf("%d entries in the index", len(index.Entries))
	}
	core, problems := static.Core(static.FS)
	for source, global := range map[string]string{"parts/search/lookup.ts": "Lookup", "parts/search/size.ts": "Size"} {
		script, more := static.Script(static.FS, source, global)
		problems.Add(more...)
		core = append(core, script...)
	}
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	a.run(string(core) + "; var find = Lookup.lookup(index); 0")
	return a, index
}

func (a asker) set(name string, text []byte) {
	a.t.Helper()
	if err := a.vm.Set("given", string(text)); err != nil {
		a.t.Fatal(err)
	}
	a.run("var " + name + " = JSON.parse(given); 0")
}

func (a asker) run(script string) string {
	a.t.Helper()
	value, err := a.vm.RunString(script)
	if err != nil {
		a.t.Fatal(err)
	}
	return value.String()
}

// found are the addresses for a question, best first, and the words taken for others.
func (a asker) found(question string) (addresses, instead []string) {
	a.t.Helper()
	var answer struct{ Addresses, Instead []string }
	text := a.run(fmt.Sprintf(`(f => JSON.stringify({Addresses: f.entries.map(e => e.address), Instead: f.instead.map(i => i.join(" > "))}))(find(%s))`, quoted(question)))
	if err := json.Unmarshal([]byte(text), &answer); err != nil {
		a.t.Fatal(err)
	}
	return answer.Addresses, answer.Instead
}

func quoted(text string) string {
	b, _ := json.Marshal(text) // a string always can
	return string(b)
}

// What readers type and what must come first. The misspellings are a reader's own.
func TestSearchFinds(t *testing.T) {
	a, _ := mustAsk(t)
	for _, test := range []struct {
		question, first string
		instead         string
	}{
		{"1310", "joint/1310/", ""},
		{"13-10", "joint/1310/", ""},
		{"13 10", "joint/1310/", ""},
		{"１３１０", "joint/1310/", ""},
		{"s44", "joint/S44/", ""},
		{"S-44", "joint/S44/", ""},
		{"27x74.6", "joint/27x74.6/", ""},
		{"27 × 74,6", "joint/27x74.6/", ""},
		{"8.5C", "joint/8.5c/", ""},
		{"1310 to 1330", "joint/1310-to-1330/", ""},
		{"snap ring", "measure/glossary/#the-hold", ""},
		{"snapring", "measure/glossary/#the-hold", ""},
		{"snap-ring", "measure/glossary/#the-hold", ""},
		{"univeral joint", "measure/glossary/#the-joint", "univeral > universal"},
		{"trunion", "measure/glossary/#the-joint", "trunion > trunnion"},
		{"caliper", "measure/caliper/", ""},
		{"calliper", "measure/caliper/", "calliper > caliper"},
		{"how do I measure the diameter of a cap", "measure/cap/", ""},
		{"identify", "identify/", ""},
		{"seized", "measure/cannot/#the-caps-are-seized-in-the-yoke", ""},
		{"1350 clip", "joint/1350/", ""},
		{"1310 big cap", "joint/1310-big-cap/", ""},
		{"rusted caps", "measure/cannot/#the-caps-are-rusted", ""},
		{"circlip", "measure/glossary/#the-hold", ""},
		{"din 862", "about/sources/#source-din862", ""},
		{"", "", ""},
		{"…", "", ""},
		{"1301", "", ""}, // another figure is another thing, however near
		{"zzzzzz", "", ""},
	} {
		got, instead := a.found(test.question)
		first := ""
		if len(got) > 0 {
			first = got[0]
		}
		if first != test.first {
			t.Errorf("%q: got %q first of %q, want %q", test.question, first, got[:min(6, len(got))], test.first)
		}
		if strings.Join(instead, ", ") != test.instead {
			t.Errorf("%q: taken %q, want %q", test.question, instead, test.instead)
		}
	}
}

// A size is read as it is written, and by nothing but its digits where it has no unit.
func TestSearchReadsSizes(t *testing.T) {
	a, _ := mustAsk(t)
	for _, test := range []struct{ question, want string }{
		{"1.062 x 3.219", `[{"cap":"1.062 in","across":"3.219 in"}]`},
		{"1.062x3.219 in", `[{"cap":"1.062 in","across":"3.219 in"}]`},
		{"27x74.6", `[{"cap":"27 mm","across":"74.6 mm"}]`},
		{"27 × 74,6 mm", `[{"cap":"27 mm","across":"74.6 mm"}]`},
		{"27mm by 74.6mm", `[{"cap":"27 mm","across":"74.6 mm"}]`},
		{"1 1/16 x 3 7/32", `[{"cap":"1 1/16 in","across":"3 7/32 in"}]`},
		{"1-1/16\" x 3.219\"", `[{"cap":"1 1/16 in","across":"3.219 in"}]`},
		{"1 1/16", `[{"cap":"1 1/16 in"},{"across":"1 1/16 in"}]`},
		{"30 mm", `[{"cap":"30 mm"},{"across":"30 mm"}]`},
		{"30", `[{"cap":"30 mm"},{"across":"30 mm"}]`},
		{"Ø 30 mm", `[{"cap":"30 mm"},{"across":"30 mm"}]`},
		{"1.188", `[{"cap":"1.188 in"},{"across":"1.188 in"}]`},
		{"1310", `[]`},
		{"13-10", `[]`},
		{"5", `[]`},
		{"snap ring", `[]`},
		{"u x v", `[]`},
		{"1 x 2 x 3", `[]`},
		{"-3 x 4", `[]`},
		{"1e3 x 2", `[]`},
		{"", `[]`},
	} {
		if got := a.run(fmt.Sprintf("JSON.stringify(Size.sizesIn(%s, CapspanCore))", quoted(test.question))); got != test.want {
			t.Errorf("%q: got %s, want %s", test.question, got, test.want)
		}
	}
}

// The verdict on a size is the core's, and the link carries the same query.
func TestSearchJudgesSizes(t *testing.T) {
	a, _ := mustAsk(t)
	for _, test := range []struct{ question, names, fragment string }{
		{"1.062 x 3.219", "1310", "hold=unknown&cap=1.062in&across=3.219in"},
		{"27x74.6", "27x74.6", "hold=unknown&cap=27mm&across=74.6mm"},
	} {
		var got []struct {
			Fragment string
			Answer   struct {
				Verdict string
				Sizes   []struct{ Names []string }
			}
		}
		text := a.run(fmt.Sprintf("JSON.stringify(Size.judge(Size.sizesIn(%s, CapspanCore), chart, CapspanCore))", quoted(test.question)))
		if err := json.Unmarshal([]byte(text), &got); err != nil {
			t.Fatal(err)
		}
		if len(got) != 1 || !strings.HasPrefix(got[0].Fragment, test.fragment+"&chart=") {
			t.Fatalf("%q: got %+v", test.question, got)
		}
		var names []string
		for _, size := range got[0].Answer.Sizes {
			names = append(names, size.Names...)
		}
		if !strings.Contains(" "+strings.Join(names, " ")+" ", " "+test.names+" ") {
			t.Errorf("%q: %s, sizes %v; %s is not among them", test.question, got[0].Answer.Verdict, names, test.names)
		}
		// The core, asked by the link, says the same.
		same := a.run(fmt.Sprintf("CapspanCore.identify(chart, CapspanCore.decodeAddress(%s).query).verdict", quoted(got[0].Fragment)))
		if same != got[0].Answer.Verdict {
			t.Errorf("%q: the search says %s, its link %s", test.question, got[0].Answer.Verdict, same)
		}
	}
}

// Every row, other name, source, page and heading is in the index, at an address that
// is there, and is found by its own name.
func TestSearchIndexIsWhole(t *testing.T) {
	a, index := mustAsk(t)
	files := shippedSite()
	byAddress := map[string]bool{}
	for n, e := range index.Entries {
		byAddress[e.Address] = true
		page, fragment, _ := strings.Cut(e.Address, "#")
		content, there := files[pageFile("/"+page)]
		if !there || fragment != "" && !strings.Contains(string(content), `id="`+fragment+`"`) {
			t.Errorf("%q leads to %q, which is not there", e.Title, e.Address)
		}
		if strings.ContainsAny(e.Title+e.Note, "<>") {
			t.Errorf("%q: %q has markup", e.Title, e.Note)
		}
		if e.Kind == search.Guide && n%8 > 0 {
			continue // enough of the long headings, which take longest
		}
		got, _ := a.found(e.Title)
		at := -1
		for i, address := range got {
			if address == e.Address {
				at = i
			}
		}
		if at < 0 || e.Kind == search.Row && at > 0 {
			t.Errorf("%q is not found by its name but at place %d", e.Title, at)
		}
	}
	set, _ := tables.Load(tables.FS)
	plain := newSite(inputs{set: set}, Options{})
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			for _, name := range row.Also {
				if got, _ := a.found(name); len(got) == 0 || !slices.Contains(got, plain.placeOf(row)[1:]) {
					t.Errorf("row %s is not found by the name %q: %q", row.ID, name, got)
				}
			}
		}
	}
	for _, source := range set.Sources {
		if !byAddress["about/sources/#source-"+source.ID] {
			t.Errorf("source %s is not in the index", source.ID)
		}
	}
	for _, name := range sheets(files) {
		address, isPage := strings.CutSuffix(name, "index.html")
		if isPage && !byAddress[address] && address != "search/" && address != "a-z/" && !strings.HasSuffix(address, "/paper/") {
			t.Errorf("/%s is not in the index", address)
		}
	}
}

// The list from A to Z has everything the index has, and needs no script for it.
func TestAZ(t *testing.T) {
	_, index := mustAsk(t)
	files := shippedSite()
	page := string(files["a-z/index.html"])
	for _, e := range index.Entries {
		if !strings.Contains(page, `href="/sub/`+e.Address+`"`) {
			t.Errorf("%s is not in the list", e.Address)
		}
	}
	nine, ten := strings.Index(page, ">9c<"), strings.Index(page, ">15x38<")
	if nine < 0 || ten < nine {
		t.Errorf("9c at %d, 15x38 at %d: want numbers by their value", nine, ten)
	}
	for _, name := range sheets(files) {
		if content := string(files[name]); !strings.Contains(content, `href="/sub/search/"`) || !strings.Contains(content, `href="/sub/a-z/"`) {
			t.Errorf("%s does not lead to the search and the list", name)
		}
	}
}

// What strangers write into tables and pages stays text: the index is JSON and the list
// is escaped.
func TestSearchEscapes(t *testing.T) {
	head := "---\ntitle: \"</script><img src=x onerror=alert(1)>\"\nabout: A.\n---\n\n## A heading & more\n\nText.\n"
	src := spoiled(t, map[string]string{"extra.md": head})
	out, problems := siteOf(t, src, Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for name, content := range contents(out) {
		if name == "a-z/index.html" || strings.HasPrefix(name, "assets/search-index.") {
			if strings.Contains(string(content), "<img") || strings.Contains(string(content), "</script><") {
				t.Errorf("%s holds markup from a title", name)
			}
		}
	}
}

// BenchmarkSearchIndex is what the index adds to a build: all pages filled, the index
// and the list made of them.
func BenchmarkSearchIndex(b *testing.B) {
	all, problems := load(inEnglish(), Options{Language: "en"})
	if problems.Blocked() {
		b.Fatal(problems)
	}
	s := newSite(all[0], Options{})
	s.bundle()
	s.fillPages()
	for b.Loop() {
		s.files, s.az.Letters = nil, nil
		s.addSearch()
		b.ReportMetric(float64(len(s.files[0].Bytes)), "bytes")
	}
}
