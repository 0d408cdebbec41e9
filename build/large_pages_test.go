package build

import (
	"bytes"
	"fmt"
	"maps"
	"math"
	"path"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/andybalholm/brotli"
	"golang.org/x/net/html"

	"capspan/build/diag"
	"capspan/build/synth/catalogue"
	"capspan/tables"
)

// sizesTried are an invented catalogue of 2,100 rows, and a table of rows that a page of
// sizes must bear: sixty kits of one size, figures that are unknown, readings somebody took,
// a row that took another's place, and a keeper's own words.
func sizesTried() (Sources, error) {
	src := Embedded()
	rows, err := madeRows()
	if err != nil {
		return Sources{}, err
	}
	made := maps.Clone(rows)
	guide, err := catalogue.Guide(src.Content)
	if err != nil {
		return Sources{}, err
	}
	made["joints-tried.yaml"] = []byte(triedTable())
	made["retired.yaml"] = []byte("retired:\n  - {id: gone-1, to: [tried-1], why: \"it was misspelt\"}\n")
	history, err := tables.Record([]byte("history: []\n"), tables.Release{Chart: "2026-11-25-0123abd", Date: "2026-11-25", Why: "somebody measured it",
		Changes: []tables.Recorded{{Of: "joints-tried/tried-7", Column: "cap", What: "value", Old: "33.1 mm", New: "33.3 mm"}}})
	if err != nil {
		return Sources{}, err
	}
	made["history.yaml"] = history
	src.Tables, src.Content = made.FS(), guide.FS()
	src.Own = fstest.MapFS{
		"site.yaml":          {Data: []byte("demo: true\nname: An invented counter\n")},
		"overlay/stock.yaml": {Data: []byte(triedOverlay)},
	}
	return src, nil
}

const triedOverlay = `overlay: stock
columns:
  part: {label: "Part number", kind: text, find: true}
rows:
  tried-2:
    part: SW-0002
`

func triedTable() string {
	var b strings.Builder
	b.WriteString("table: joints-tried\ntitle: \"Invented: Tried joints\"\nabout: Invented to try pages with.\nversion: 1.0.0\ndate: 2026-11-25\nunit: mm\n" +
		"cautions: [\"Invented: do not press it in.\"]\ncolumns:\n  hold:   {label: Hold, kind: hold, method: what-holds-it}\n" +
		"  cap:    {label: Cap, kind: length, least: 1, greatest: 900, method: cap}\n  across: {label: Across, kind: length, least: 1, greatest: 900, method: across}\n" +
		"  grease: {label: Grease nipple, kind: text}\nrows:\n")
	row := func(id, hold, cap, across, more string) {
		fmt.Fprintf(&b, "  - id: %s\n    hold:   {is: %s, basis: memory}\n    cap:    %s\n    across: %s\n    grease: {is: \"%s\", basis: memory}\n",
			id, hold, cap, across, more)
	}
	var ids []string
	for n := range 60 {
		ids = append(ids, fmt.Sprintf("tried-%d", n))
	}
	for n, id := range ids {
		cap := "{is: 33.3, basis: memory}"
		if n == 3 {
			cap = "{is: 33.3, basis: memory, measured: [{readings: [33.31 mm, 33.29 mm], tool: micrometer, condition: new, by: red-shed}]}"
		}
		row(id, "outside-clip", cap, "{is: 95.5, faces: over-caps, basis: memory}", []string{"in the middle", "at a cap"}[n/50])
		fmt.Fprintf(&b, "    twins: [%s]\n", strings.Join(slices.Concat(ids[:n], ids[n+1:]), ", "))
		if n%20 == 1 {
			fmt.Fprintf(&b, "    note: \"marked %d on the cross\"\n", n)
		}
	}
	row("tried-alone", "plate", "{is: 77.7, basis: memory}", "{is: unknown, faces: unknown, basis: memory}", "in the middle")
	row("tried-nothing", "unknown", "{is: unknown, basis: memory}", "{is: unknown, faces: unknown, basis: memory}", "in the middle")
	return b.String()
}

// largeSite is built once for all tests of this package.
var largeSite = sync.OnceValues(func() (Output, error) {
	src, err := sizesTried()
	if err != nil {
		return Output{}, err
	}
	out, problems := Site(src, Options{})
	if problems.Blocked() {
		return Output{}, fmt.Errorf("the large site has problems:\n%v", slices.DeleteFunc(problems, func(p diag.Problem) bool { return p.Level == diag.Warning }))
	}
	return out, nil
})

func mustLarge(t testing.TB) (map[string][]byte, *tables.Set) {
	t.Helper()
	out, err := largeSite()
	if err != nil {
		t.Fatal(err)
	}
	src, err := sizesTried()
	if err != nil {
		t.Fatal(err)
	}
	set, _ := tables.Load(src.Tables)
	return contents(out), set
}

// Every joint has its entry on one page, the one its row says, and no page of its own.
func TestEveryRowIsOnOneSizePage(t *testing.T) {
	files, set := mustLarge(t)
	entries := map[string][]string{} // ids with the pages that have them
	for name, content := range files {
		if !strings.HasPrefix(name, "size/") || strings.HasSuffix(name, "/paper/index.html") {
			continue
		}
		if files[path.Dir(name)+"/paper/index.html"] == nil {
			t.Errorf("%s has no sheet", name)
		}
		for id, n := range crawl(t, content).ids {
			for range n {
				entries[id] = append(entries[id], name)
			}
		}
	}
	rows := 0
	for _, table := range set.Tables {
		if !table.Joint() {
			continue
		}
		for _, row := range table.Rows {
			rows++
			if want := "size/" + sizeKey(row) + "/index.html"; len(entries[row.ID]) != 1 || entries[row.ID][0] != want {
				t.Errorf("%s stands on %v, not on %s alone", row.ID, entries[row.ID], want)
			}
			if files["joint/"+row.ID+"/index.html"] != nil {
				t.Errorf("%s has a page of its own", row.ID)
			}
		}
	}
	if rows != 2162 {
		t.Errorf("%d rows", rows)
	}
	gone := string(files["joint/gone-1/index.html"])
	if !strings.Contains(gone, `href="/size/outside-clip-33.3x95.5/#tried-1"`) {
		t.Errorf("the retired row does not lead to its place: %s", gone)
	}
}

// Every table is in groups that hold each of its sizes: one for the millimetre of each cap.
func TestEveryGroup(t *testing.T) {
	files, set := mustLarge(t)
	lines := map[string]map[string]bool{} // groups with the sizes they lead to
	for _, table := range set.Tables {
		index := string(files["chart/"+table.ID+"/index.html"])
		if !table.Joint() {
			if strings.Contains(index, "data-groups") {
				t.Errorf("%s is in groups", table.ID)
			}
			continue
		}
		for _, row := range table.Rows {
			for _, group := range capsOf(row) {
				name := "chart/" + table.ID + "/" + group + "/index.html"
				if lines[name] == nil {
					lines[name] = map[string]bool{}
					for _, link := range crawl(t, files[name]).links {
						lines[name][link] = true
					}
					if !strings.Contains(string(files[name]), `data-group="`+table.ID+"/"+group+`"`) {
						t.Errorf("%s does not say which group it is", name)
					}
					if want := `<a href="/` + strings.TrimSuffix(name, "index.html") + `">`; !strings.Contains(index, want) {
						t.Errorf("the index of %s lacks %s", table.ID, want)
					}
				}
				if !lines[name]["/size/"+sizeKey(row)+"/"] {
					t.Errorf("%s lacks the size of %s", name, row.ID)
				}
			}
		}
	}
	if len(lines) < 80 {
		t.Errorf("only %d groups", len(lines))
	}
}

// capsOf are the whole millimetres of a row's caps, reckoned apart from groupsOf.
func capsOf(row *tables.Row) []string {
	var list []string
	for _, end := range row.Ends {
		name := "u"
		if end.Cap.State == tables.Given {
			name = strconv.Itoa(int(math.Round(end.Cap.Quantity.Float()*10)) / 10)
		}
		list = append(list, name)
	}
	return list
}

// Whatever the page of a row says is said on the page of its size.
func TestNothingOfARowIsLost(t *testing.T) {
	files, _ := mustLarge(t)
	many := string(files["size/outside-clip-33.3x95.5/index.html"])
	for _, want := range []string{
		"60 kits", "49 of 60 kits", "1 of 60 kits", "10 of 60 kits", "To be confirmed before ordering", "Invented: do not press it in.",
		">Marked 21 on the cross.<", "It took the place of gone-1, which is no longer in the chart. It was misspelt.",
		"tried-7: cap", "33.1 mm", "tried-3: Cap", "33.31 mm, 33.29 mm", "tried-2: Part number", "SW-0002", "Grease nipple", "at a cap",
		`<a href="/chart/joints-tried/">Invented: Tried joints</a>, version <span class="num">1.0.0</span>`,
		`href="/contribute/correct/#table=joints-tried&amp;row=tried-59&amp;column=grease" aria-label="Grease nipple of tried-59"`,
		`href="/contribute/correct/#table=joints-tried&amp;row=tried-3&amp;column=cap"`, `href="/order/#row=tried-8"`, "/measure/cap/", "/measure/over-caps/",
		`href="/size/outside-clip-33.3x95.5/paper/"`,
	} {
		if !strings.Contains(many, want) {
			t.Errorf("the page of sixty kits lacks %q", want)
		}
	}
	if nothing := string(files["size/unknown-uxu/index.html"]); !strings.Contains(nothing, "<h1>Not known × not known, hold not known</h1>\n<p class=\"lead\">1 kit</p>") {
		t.Errorf("the page of no figures: %s", nothing)
	}
	if sheet := string(files["size/outside-clip-33.3x95.5/paper/index.html"]); !strings.Contains(sheet, "60 kits: tried-0, tried-1, tried-2 and 57 more") {
		t.Errorf("the sheet of sixty kits: %s", sheet)
	}
}

// Pages that lead to a size name it once, whatever its kits.
func TestSizesAreNamedOnce(t *testing.T) {
	files, set := mustLarge(t)
	listed := 0
	for name, content := range files {
		if !strings.HasPrefix(name, "size/") {
			continue
		}
		doc, err := html.Parse(bytes.NewReader(content))
		if err != nil {
			t.Fatal(err)
		}
		for n := range doc.Descendants() {
			if n.Type != html.ElementNode || attribute(n, "class") != "rows" {
				continue
			}
			seen := map[string]bool{}
			for a := range n.Descendants() {
				if to := attribute(a, "href"); a.Data == "a" {
					listed++
					if seen[to] || strings.Contains(to, "#") || to == "/"+strings.TrimSuffix(name, "index.html") {
						t.Errorf("%s leads to %s twice, to a kit or to itself", name, to)
					}
					seen[to] = true
				}
			}
		}
	}
	if listed < 1000 {
		t.Errorf("only %d links", listed)
	}
	// What a caliper cannot tell apart is linked though its figures are rounded otherwise.
	twins := 0
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			for _, twin := range row.Twins {
				if table.Joint() && sizeKey(row) != sizeKey(twin) {
					twins++
					if page := string(files["size/"+sizeKey(row)+"/index.html"]); !strings.Contains(page, `<a href="/size/`+sizeKey(twin)+`/">`) {
						t.Errorf("the page of %s does not lead to its twin %s", row.ID, twin.ID)
					}
				}
			}
		}
	}
	if twins == 0 {
		t.Error("no twins are rounded otherwise")
	}
}

// Every address on a page of a large chart leads somewhere, and no two pages have a title.
func TestLargeCrawl(t *testing.T) {
	files, _ := mustLarge(t)
	pages, titles := map[string]crawled{}, map[string]string{}
	for name, content := range files {
		if !strings.HasSuffix(name, ".html") || name == "embed/frame/index.html" {
			continue
		}
		pages[name] = crawl(t, content)
		doc, err := html.Parse(bytes.NewReader(content))
		if err != nil {
			t.Fatal(err)
		}
		s := structureOf(doc)
		for _, fault := range s.faults() {
			t.Errorf("%s: %s", name, fault)
		}
		if other, taken := titles[s.title]; taken {
			t.Errorf("%s and %s have the title %q", name, other, s.title)
		}
		titles[s.title] = name
	}
	for name, page := range pages {
		if page.h1 != 1 {
			t.Errorf("%s has %d h1", name, page.h1)
		}
		for id, n := range page.ids {
			if n > 1 {
				t.Errorf("%s has the id %q %d times", name, id, n)
			}
		}
		for _, link := range page.links {
			follow(t, "/", name, link, files, pages)
		}
	}
}

// No page of a size or a group is heavier than a phone bears.
func TestLargePagesAreLight(t *testing.T) {
	files, _ := mustLarge(t)
	for name, content := range files {
		if !strings.HasSuffix(name, ".html") || !strings.HasPrefix(name, "size/") && !strings.HasPrefix(name, "chart/") {
			continue
		}
		if len(content) < 60_000 {
			continue
		}
		var packed bytes.Buffer
		w := brotli.NewWriterLevel(&packed, 9)
		if _, err := w.Write(content); err != nil {
			t.Fatal(err)
		}
		if err := w.Close(); err != nil {
			t.Fatal(err)
		}
		if packed.Len() > 60_000 {
			t.Errorf("%s weighs %d bytes packed", name, packed.Len())
		}
	}
}

// A book of a large chart would be thousands of pages; it is refused with a way out.
func TestLargeBookIsRefused(t *testing.T) {
	src, err := sizesTried()
	if err != nil {
		t.Fatal(err)
	}
	_, problems := Book(src, BookOptions{})
	found := slices.DeleteFunc(problems, func(p diag.Problem) bool { return p.Level == diag.Warning })
	if len(found) != 1 || found[0].Rule != "book-too-large" || !strings.Contains(found[0].Fact, "2162 rows") || len(found[0].Hints) != 2 {
		t.Errorf("the problems: %v", found)
	}
}

// Where a kit had its page before the chart grew large stands the page of lost addresses,
// whose script asks the search for it; a small chart's page has no mark of that.
func TestLostAddresses(t *testing.T) {
	files, _ := mustLarge(t)
	if page := string(files["404.html"]); !strings.Contains(page, "<body data-lost>") {
		t.Error("the page of lost addresses does not say that it is one")
	}
	if page := string(contents(mustSite(t, Options{}))["404.html"]); !strings.Contains(page, "<body>") {
		t.Error("a small chart has the mark too")
	}
}
