package build

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"golang.org/x/text/language"

	"capspan/build/search"
	"capspan/tables"
)

// begun is what the page finds among rows.
type begun struct {
	Rows    [][]string
	Count   int
	Many    bool
	Instead [][2]string
}

func (b begun) ids(most int) []string {
	var ids []string
	for _, row := range b.Rows[:min(most, len(b.Rows))] {
		ids = append(ids, row[0])
	}
	return ids
}

// rowsPage is the page's search over the drawers of the large site, and beside it the same
// over one drawer with all rows, and the words of pages and rows in one index.
func rowsPage(t testing.TB) (*scripted, *tables.Set) {
	t.Helper()
	files, set := mustMany(t)
	p := newPage(t, files, map[string]string{"parts/search/rows.ts": "Rows", "parts/search/lookup.ts": "Lookup"})
	var index searchIndex
	if err := json.Unmarshal(files[searchDirectory], &index); err != nil {
		t.Fatal(err)
	}
	find := search.In(language.English, "the")
	var all []*search.Named
	var entries []search.Entry
	var records []record
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if table.Joint() {
				all = append(all, search.NewNamed(row.ID, "", (&site{inputs: inputs{set: set}}).placeOf(row), row.Also))
				records = append(records, recordOf("", all[len(all)-1]))
				entries = append(entries, find.New(search.Row, (&site{inputs: inputs{set: set}}).placeOf(row), row.ID, "", row.Also, ""))
			}
		}
	}
	p.files = map[string][]byte{"whole/all.json": listOf(records), "whole/words.json": mustJSON(search.RowWords(all)),
		"whole/index.json": mustJSON(find.NewIndex("/sub/", "", entries))}
	for name, content := range files {
		p.files[name] = content
	}
	index.Rows, index.First, index.Words = drawers{"/sub/whole/", map[string]string{"": "all"}}, map[string]string{}, "words"
	p.mustAsk(new(int), `{ globalThis.rows = Rows.rowFinder(JSON.parse(fetched("/sub/search/index.json")), []);
		globalThis.whole = Rows.rowFinder(a[0], []);
		globalThis.entries = Lookup.lookup(JSON.parse(fetched("/sub/whole/index.json"))); return 0; }`, index)
	return p, set
}

// questionsOf are names of rows, beginnings of them, and both with one letter wrong.
func questionsOf(set *tables.Set, each int) []string {
	random := rand.New(rand.NewPCG(7, 7))
	var names, out []string
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if table.Joint() {
				names = append(append(names, row.ID), row.Also...)
			}
		}
	}
	for range each {
		name := names[random.IntN(len(names))]
		short := name[:1+random.IntN(len(name))]
		at := random.IntN(len(name))
		wrong := name[:at] + string("abcz019"[random.IntN(7)]) + name[at+1:]
		out = append(out, name, strings.ToUpper(name), strings.ReplaceAll(name, "-", " "), strings.ReplaceAll(name, "-", ""),
			short, strings.ReplaceAll(short, "-", " "), wrong, name[:at]+name[at+1:], name+" "+name[:2], short+" "+name)
	}
	return out
}

// What comes of the drawers is what a look at all names gives: as many rows, and the same in
// the same order. A question of several words that many rows have says so.
func TestSearchRowsAreThoseOfAll(t *testing.T) {
	p, set := rowsPage(t)
	found, many := 0, 0
	questions := questionsOf(set, 12)
	var index searchIndex
	if err := json.Unmarshal(p.files[searchDirectory], &index); err != nil {
		t.Fatal(err)
	}
	for beginning := range index.First { // those that have a file of their own
		questions = append(questions, beginning)
	}
	for _, question := range append(questions, "", "-", "x", "a", "s", "also", "alos s1-c", "laso", "zzzzz", "1", "s1 also", "joint "+set.Tables[0].Rows[0].ID+" kit", "constructor", "__proto__") {
		var is, want begun
		p.mustAsk(&is, "rows.find(a[0])", question)
		p.mustAsk(&want, "whole.find(a[0])", question)
		if is.Many {
			many++
			if len(strings.Fields(question)) < 2 && !strings.ContainsAny(question, "- ") {
				t.Errorf("%q: one word must be answered", question)
			}
			continue
		}
		if is.Count != want.Count || !slices.Equal(is.ids(firstRows), want.ids(firstRows)) || !slices.Equal(is.Instead, want.Instead) {
			t.Errorf("%q: %d rows %q %q, of all names %d %q %q", question, is.Count, is.ids(5), is.Instead, want.Count, want.ids(5), want.Instead)
		}
		if is.Count > 0 {
			found++
		}
	}
	if found < 70 || many > 15 {
		t.Errorf("%d questions found something, %d had too much to look at", found, many)
	}
}

// Of rows that fit alike the one with the shorter id comes first, and then by the alphabet: in
// what the build counts beforehand and in what a page finds by itself.
func TestSearchRowsOrder(t *testing.T) {
	p := newPage(t, nil, map[string]string{"parts/search/rows.ts": "Rows"})
	var rows []*search.Named
	for _, row := range [][]string{{"ab-100"}, {"b-ab-1"}, {"ab-20"}, {"ab-3"}, {"ab-10"}, {"zz", "ab"}, {"a", "abc"}} {
		rows = append(rows, search.NewNamed(row[0], "", "/size/x/#"+row[0], row[1:]))
	}
	want := []string{"zz", "a", "ab-3", "ab-10", "ab-20", "ab-100", "b-ab-1"}
	var ids []string
	for _, row := range search.FirstOf("ab", rows, len(rows)).Rows {
		ids = append(ids, row.ID)
	}
	if !slices.Equal(ids, want) {
		t.Errorf("the build has %q, want %q", ids, want)
	}
	var is begun
	p.mustAsk(&is, "Rows.begunBy('ab', a[0])", rows)
	if !slices.Equal(is.ids(len(want)), want) {
		t.Errorf("the page has %q, want %q", is.ids(len(want)), want)
	}
}

// A row's names find what the index of small charts would find by them.
func TestSearchRowsAreThoseOfTheIndex(t *testing.T) {
	p, set := rowsPage(t)
	looked := 0
	var names []string
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			for _, name := range append([]string{row.ID}, row.Also...) {
				names = append(names, search.Squeeze(search.Fold(name)))
			}
		}
	}
	for _, question := range questionsOf(set, 6) {
		var is begun
		var index []string
		if len(search.Squeeze(search.Fold(question))) < 3 {
			continue
		}
		p.mustAsk(&is, "rows.find(a[0])", question)
		p.mustAsk(&index, `((found) => found.whole ? found.entries.map((e) => e.title) : [])(entries(a[0]))`, question)
		if is.Count > firstRows || is.Many {
			continue // only the first have come
		}
		looked++
		ids := is.ids(is.Count)
		if len(index) > 0 && (len(ids) == 0 || set.Find(question) != nil && ids[0] != index[0]) {
			t.Errorf("%q: %q come first, in the index %q", question, ids[:min(3, len(ids))], index[:min(3, len(index))])
		}
		if named := search.Squeeze(search.Fold(question)); slices.Contains(names, named) {
			continue // it is a name, and the index goes on with what has its words somewhere
		}
		for _, id := range index {
			if !slices.Contains(ids, id) {
				t.Errorf("%q: %q is in the index, and not among %d rows", question, id, len(ids))
				break
			}
		}
	}
	if looked < 25 {
		t.Errorf("%d questions", looked)
	}
}

// What is asked with a word that no name has, or a letter wrong in one, is found all the
// same, and it is said; what is found beside rows stands where a reader looks for it.
func TestSearchRowsAndPages(t *testing.T) {
	p, set := rowsPage(t)
	files, _ := mustMany(t)
	var index searchIndex
	if err := json.Unmarshal(files[searchDirectory], &index); err != nil {
		t.Fatal(err)
	}
	var row *tables.Row
	for joint := range manySite().joints() {
		if len(joint.Also) > 0 {
			row = joint
			break
		}
	}
	name := row.Also[0] // also-s17-c-1
	if set.Find(row.ID) == nil || !strings.HasPrefix(name, "also-") {
		t.Fatalf("%s is also called %q", row.ID, name)
	}
	p.run(`var passing = [];
		var page = {kind: "guide", address: "measure/cap/", title: "Cap", names: "cap", words: "cap"};
		var found = {entries: [page], instead: [], whole: true};
		var failing = {entries: [], instead: [], whole: false};`)
	p.mustAsk(new(int), `{ globalThis.ask = Rows.finder("/sub/search/index.json", a[0], [], (q) => q === "cap" || q.includes("joint") ? {...found, whole: q === "cap"} : failing); return 0; }`, index)
	type answer struct {
		Entries []struct{ Title, Address string }
		Instead [][2]string
		More    int
		Failed  bool
		Many    bool
		Whole   bool
	}
	for _, test := range []struct {
		question string
		titles   []string
		instead  [][2]string
		more     bool
	}{
		{row.ID, []string{row.ID}, nil, false},
		{"alos" + name[4:], []string{row.ID}, [][2]string{{"alos", "also"}}, false},
		{row.ID + " joint", []string{row.ID, "Cap"}, nil, false},
		{"joint", []string{"Cap"}, nil, false},
		{"cap", []string{"Cap"}, nil, false},
		{"zzzz", nil, nil, false},
	} {
		var is answer
		p.mustAsk(&is, "ask(a[0])", test.question)
		var titles []string
		for _, e := range is.Entries {
			titles = append(titles, e.Title)
		}
		if len(titles) > len(test.titles) {
			titles = titles[:len(test.titles)]
		}
		if !slices.Equal(titles, test.titles) || !slices.Equal(is.Instead, test.instead) || is.Failed {
			t.Errorf("%q: %q %q, want %q %q", test.question, titles, is.Instead, test.titles, test.instead)
		}
		if test.question == row.ID && is.Entries[0].Address != strings.TrimLeft((&site{inputs: inputs{set: set}}).placeOf(row), "/") {
			t.Errorf("%s leads to %s", row.ID, is.Entries[0].Address)
		}
	}

	// A drawer that does not come is said, with what else there is; when it comes, it is found.
	p.mustAsk(new(int), `{ globalThis.ask = Rows.finder("/sub/search/index.json", a[0], [], () => failing); return 0; }`, index)
	p.gone = func(file string) bool { return strings.HasPrefix(file, searchFolder) }
	var is answer
	if p.mustAsk(&is, "ask(a[0])", row.ID); !is.Failed || len(is.Entries) > 0 {
		t.Errorf("a drawer that did not come: %+v", is)
	}
	p.gone = func(string) bool { return false }
	is = answer{}
	if p.mustAsk(&is, "ask(a[0])", row.ID); is.Failed || len(is.Entries) == 0 || is.Entries[0].Title != row.ID {
		t.Errorf("the drawer came, and the answer is %+v", is)
	}

	// A directory of an older edition names drawers that are gone: the one of today is read.
	old := index
	old.Rows.Files, old.First = map[string]string{}, map[string]string{}
	for beginning := range index.Rows.Files {
		old.Rows.Files[beginning] = "000000000000"
	}
	for beginning := range index.First {
		old.First[beginning] = "000000000000"
	}
	p.mustAsk(new(int), `{ globalThis.ask = Rows.finder("/sub/search/index.json", a[0], [], () => failing); return 0; }`, old)
	is = answer{}
	if p.mustAsk(&is, "ask(a[0])", row.ID); is.Failed || len(is.Entries) == 0 || is.Entries[0].Title != row.ID {
		t.Errorf("from an older directory: %+v", is)
	}
}
