package build

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/dop251/goja"

	"capspan/build/diag"
	"capspan/static"
	"capspan/tables"
	"capspan/templates"
	catalog "capspan/templates/words"
)

// manySite is of that catalogue what lies in drawers and on pages of names, made once for all
// tests of them: sizes have their pages, and the rest of the site its tests, elsewhere.
var manySite = sync.OnceValue(func() *site {
	src, err := madeMany()
	if err != nil {
		return nil
	}
	s, problems := rowsOnly(src, nil)
	if problems.Blocked() {
		return nil
	}
	return s
})

// rowsOnly makes of sources what a large chart tells row by row.
func rowsOnly(src Sources, memory *Memory) (*site, diag.List) {
	set, problems := tables.Load(src.Tables)
	said, found := catalog.Load(src.Templates, src.Content, catalog.English)
	problems.Add(found...)
	frames, err := templates.New(src.Templates, said)
	if err != nil {
		problems.Add(diag.Problem{Fact: err.Error(), Rule: "bad-template"})
	}
	if problems.Blocked() {
		return nil, problems
	}
	in := inputs{set: set, english: set, words: said, frames: frames, tables: src.Tables, sources: src, cut: memory.cutOnce(set)}
	s := newSite(in, Options{Base: "/sub/", Memory: memory})
	s.again = s.rememberedRows()
	if s.cut != nil {
		problems.Add(s.addPieces()...)
	}
	s.az = &templates.AZ{}
	s.addSlips()
	_, found = s.addFacts()
	problems.Add(found...)
	for _, draft := range s.namesDrafts() {
		page, from := draft.fill(s)
		s.drafted = append(s.drafted, drafted{page, from})
	}
	s.addSearch()
	return s, problems
}

func mustMany(t testing.TB) (map[string][]byte, *tables.Set) {
	t.Helper()
	s := manySite()
	if s == nil {
		t.Fatal("the site of many rows cannot be made")
	}
	return contents(Output{Files: s.files}), s.set
}

// scripted is a page's own code with the files of a site to fetch.
type scripted struct {
	t     testing.TB
	vm    *goja.Runtime
	files map[string][]byte
	asked []string // files, in turn
	gone  func(file string) bool
}

// newPage loads scripts, each under its global name.
func newPage(t testing.TB, files map[string][]byte, scripts map[string]string) *scripted {
	t.Helper()
	p := &scripted{t: t, vm: goja.New(), files: files, gone: func(string) bool { return false }}
	if err := p.vm.Set("fetched", p.fetch); err != nil {
		t.Fatal(err)
	}
	p.run(`var fetch = async (address) => {
		const text = fetched(address);
		return {ok: text !== null, status: text === null ? 404 : 200, text: async () => text, json: async () => JSON.parse(text)};
	}; 0`)
	var problems diag.List
	for source, global := range scripts {
		script, found := static.PiecedScript(static.FS, source, global)
		problems.Add(found...)
		p.run(string(script) + "; 0")
	}
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	return p
}

func (p *scripted) fetch(address string) any {
	file, ok := strings.CutPrefix(address, "/sub/")
	if content, there := p.files[file]; ok && there && !p.gone(file) {
		p.asked = append(p.asked, file)
		return string(content)
	}
	return nil
}

func (p *scripted) run(script string) {
	p.t.Helper()
	if _, err := p.vm.RunString(script); err != nil {
		p.t.Fatal(err)
	}
}

// ask waits for what an expression over the arguments a promises. It fails with what the
// promise is refused by.
func (p *scripted) ask(out any, expression string, args ...any) error {
	p.t.Helper()
	if err := p.vm.Set("given", string(mustJSON(args))); err != nil {
		p.t.Fatal(err)
	}
	p.run("var came = null; (async (a) => " + expression + ")(JSON.parse(given)).then((v) => { came = {is: v}; }, (e) => { came = {refused: String(e)}; }); 0")
	v, err := p.vm.RunString("JSON.stringify(came)")
	if err != nil {
		p.t.Fatal(err)
	}
	var came *struct {
		Is      json.RawMessage
		Refused string
	}
	if err := json.Unmarshal([]byte(v.String()), &came); err != nil || came == nil {
		p.t.Fatalf("%s gives %s: %v", expression, v, err)
	}
	if came.Refused != "" {
		return fmt.Errorf("refused: %s", came.Refused)
	}
	if err := json.Unmarshal(came.Is, out); err != nil {
		p.t.Fatalf("%s gives %s: %v", expression, came.Is, err)
	}
	return nil
}

func (p *scripted) mustAsk(out any, expression string, args ...any) {
	p.t.Helper()
	if err := p.ask(out, expression, args...); err != nil {
		p.t.Fatal(err)
	}
}

// Every key leads to a drawer that has its record, no drawer has another's, and only one
// whose keys are all the same may be larger than it should.
func TestDrawers(t *testing.T) {
	var records []record
	for n := range 5000 {
		key := fmt.Sprintf("k%d", n*n)
		records = append(records, recordOf(key, key+strings.Repeat("x", 40)))
		records = append(records, recordOf("ß"+key, key+strings.Repeat("y", 40)))
	}
	for n := range 2000 {
		records = append(records, recordOf("same", fmt.Sprintf("same %d %s", n, strings.Repeat("x", 40))))
	}
	in := map[string][]record{}
	split := map[string]bool{}
	sortIn(records, drawerSize, func(beginning string, list []record) { in[beginning] = list }, func(beginning string, list []record) { split[beginning] = true })
	if len(in) < 20 || !split[""] || !split["k"] {
		t.Fatalf("%d drawers", len(in))
	}
	for beginning, list := range in {
		if len(listOf(list)) > drawerSize+1000 && beginning != "same " {
			t.Errorf("%q has %d bytes", beginning, len(listOf(list)))
		}
		for _, r := range list {
			if !strings.HasPrefix(r.key, beginning) {
				t.Errorf("%q lies in %q", r.key, beginning)
			}
		}
		for n := range beginning {
			if n > 0 && in[beginning[:n]] != nil {
				t.Errorf("%q has a drawer, and %q too", beginning, beginning[:n])
			}
		}
	}
	// One more record changes one drawer.
	more := map[string][]record{}
	sortIn(append(slices.Clone(records), recordOf("k123456789", "new")), drawerSize, func(beginning string, list []record) { more[beginning] = list }, nil)
	changed := 0
	for beginning, list := range more {
		if string(listOf(list)) != string(listOf(in[beginning])) {
			changed++
		}
	}
	if changed != 1 {
		t.Errorf("one more record changes %d drawers", changed)
	}
}
