package build

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"golang.org/x/net/html"

	"capspan/tables"
)

// schoolFolder is the folder that capspan start writes: the second keeper, an invented school
// workshop. Files of changed are put in or, when empty, taken out; "old => new" replaces a
// piece of the file that is there.
func schoolFolder(t testing.TB, changed map[string]string) Sources {
	t.Helper()
	folder := fstest.MapFS{}
	dir := os.DirFS("../cmd/capspan/example")
	err := fs.WalkDir(dir, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(dir, name)
		folder[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil || len(folder) < 6 {
		t.Fatalf("%d files of the example: %v", len(folder), err)
	}
	for name, text := range changed {
		before, after, piece := strings.Cut(text, " => ")
		switch {
		case text == "":
			delete(folder, name)
		case piece:
			was := string(folder[name].Data)
			if !strings.Contains(was, before) {
				t.Fatalf("%s does not hold %q", name, before)
			}
			folder[name] = &fstest.MapFile{Data: []byte(strings.Replace(was, before, after, 1))}
		default:
			folder[name] = &fstest.MapFile{Data: []byte(text)}
		}
	}
	src := inEnglish()
	src.Own = folder
	return src
}

func mustOwn(t testing.TB, src Sources, opt Options) map[string][]byte {
	t.Helper()
	out, problems := siteOf(t, src, opt)
	if len(problems) > 0 {
		t.Fatalf("a keeper's folder has problems:\n%v", problems)
	}
	return contents(out)
}

// The second keeper's whole site is walked as ours is: addresses, ids, landmarks, headings;
// the keeper's name stands on every page, and the shipped pages are all there.
func TestOwnCrawl(t *testing.T) {
	ours := contents(mustSite(t, Options{}))
	for _, base := range []string{"/", "/counter/joints/"} {
		files := mustOwn(t, schoolFolder(t, nil), Options{Base: base})
		pages := map[string]crawled{}
		for name, content := range files {
			if strings.HasSuffix(name, ".html") {
				pages[name] = crawl(t, content)
			}
		}
		for name := range ours {
			if strings.HasSuffix(name, ".html") && pages[name].h1 == 0 {
				t.Errorf("%s is not among the keeper's pages", name)
			}
		}
		for _, name := range sheets(files) {
			page := pages[name]
			for _, link := range page.links {
				follow(t, base, name, link, files, pages)
			}
			for id, n := range page.ids {
				if n > 1 {
					t.Errorf("%s has the id %q %d times", name, id, n)
				}
			}
			if !strings.Contains(page.text, "Millbrook School workshop") || !strings.Contains(page.text, "An invented example.") {
				t.Errorf("%s does not name its keeper", name)
			}
			doc, err := html.Parse(bytes.NewReader(files[name]))
			if err != nil {
				t.Fatal(err)
			}
			for _, fault := range structureOf(doc).faults() {
				t.Errorf("%s: %s", name, fault)
			}
		}
	}
}

// What the folder holds is where it belongs, and nowhere else.
func TestOwnPages(t *testing.T) {
	files := mustOwn(t, schoolFolder(t, nil), Options{})
	var data, script string
	for name := range files {
		if strings.HasPrefix(name, "assets/own.") && strings.HasSuffix(name, ".json") {
			data = name
		}
		if strings.HasPrefix(name, "assets/own.") && strings.HasSuffix(name, ".js") {
			script = name
		}
	}
	for name, wants := range map[string][]string{
		"joint/1310/index.html":               {"<dt>Part number</dt><dd>MS-1310</dd>", "<dt>In stock</dt><dd>4 pieces</dd>", "At the counter of Millbrook School workshop"},
		"counter/index.html":                  {"<h1>The workshop&#39;s counter</h1>", `href="/joint/1310/"`},
		"chart/counter-tools/index.html":      {"outside micrometer"},
		"chart/index.html":                    {"/chart/counter-tools/"},
		"index.html":                          {"From Millbrook School workshop", `href="/counter/"`, `href="/chart/counter-tools/"`},
		"identify/index.html":                 {`data-counter="/` + data + `"`, `src="/` + script + `"`},
		"identify/part/pto-shafts/index.html": {`data-counter="/` + data + `"`, `src="/` + script + `"`},
		"a-z/index.html":                      {"MS-1330"},
		"measure/card/index.html":             {`data-mail="counter@example.org"`},
		"site.webmanifest":                    {`"background_color": "#f7f5ee"`},
		data:                                  {`"1310":["MS-1310","4 pieces","18.50 with clips","yes",""]`},
		"worker.js":                           {data, script},
	} {
		for _, want := range wants {
			if !strings.Contains(string(files[name]), want) {
				t.Errorf("%s lacks %s", name, want)
			}
		}
	}
	for name, page := range files {
		if strings.Contains(string(page), "own-says") && strings.HasSuffix(name, ".html") && !strings.HasPrefix(name, "joint/13") {
			t.Errorf("%s shows an overlay that says nothing of it", name)
		}
	}
	var slips, index string
	for name, text := range files {
		if strings.HasPrefix(name, "assets/slips.") {
			slips = string(text)
		}
		if strings.HasPrefix(name, "assets/search-index.") {
			index = string(text)
		}
	}
	if want := `{"label":"Part number","text":"MS-1310","note":"At the counter of Millbrook School workshop"}`; !strings.Contains(slips, want) {
		t.Errorf("the enquiry slip lacks %s", want)
	}
	if !strings.Contains(index, "ms1310") || !strings.Contains(index, "fridays") {
		t.Error("the search does not find part number and note")
	}
}

// Without a keeper's folder not a byte of it is on any page or in any file.
func TestNothingOwnWithout(t *testing.T) {
	for name, text := range contents(mustSite(t, Options{})) {
		if strings.HasPrefix(name, "assets/own") || strings.HasPrefix(name, "assets/logo") {
			t.Errorf("%s is written", name)
		}
		for _, piece := range []string{"own-says", `class="own`, "data-counter", "/own."} {
			if strings.HasSuffix(name, ".html") && bytes.Contains(text, []byte(piece)) {
				t.Errorf("%s holds %s", name, piece)
			}
		}
	}
	files := mustOwn(t, schoolFolder(t, map[string]string{"overlay/counter.yaml": ""}), Options{})
	for name, text := range files {
		if strings.HasSuffix(name, ".html") && (bytes.Contains(text, []byte("own-says")) || bytes.Contains(text, []byte("data-counter"))) {
			t.Errorf("%s of a folder without overlay has one", name)
		}
	}
}

// ownMeasure are part numbers and stock for as many rows, invented and without a pattern that
// would pack them better than a shop's own.
func ownMeasure(rows int) map[string]string {
	var table, overlay strings.Builder
	table.WriteString("table: stock-rows\ntitle: Rows to weigh\nabout: Made up to weigh an overlay.\nversion: 1.0.0\ndate: 2026-11-25\ncolumns:\n  what: {label: What, kind: text}\nrows:\n")
	overlay.WriteString("overlay: counter\ncolumns:\n  part:  {label: Part number, kind: text, find: true}\n  stock: {label: In stock, kind: number}\nrows:\n")
	seed := uint32(1)
	for n := range rows {
		seed = seed*1664525 + 1013904223 // Numerical Recipes
		fmt.Fprintf(&table, "  - id: w%03d\n    what: {is: a row, basis: memory}\n\n", n)
		fmt.Fprintf(&overlay, "  w%03d:\n    part: %c%c-%05d\n    stock: %d\n\n", n, 'A'+seed>>8%26, 'A'+seed>>13%26, seed>>8%100000, seed>>20%12)
	}
	return map[string]string{"tables/stock-rows.yaml": table.String(), "overlay/counter.yaml": overlay.String()}
}

// An overlay of 500 part numbers, with their stock, adds less than 8,000 packed bytes to the
// identify page: what a first visit carries more, and what comes late.
func TestOverlayWeight(t *testing.T) {
	visit := func(out Output) int {
		alone := out // every other page would be packed too, which takes long
		alone.Files = slices.DeleteFunc(slices.Clone(out.Files), func(f File) bool {
			return strings.HasSuffix(f.Path, ".html") && f.Path != "identify/index.html"
		})
		for _, w := range Weigh(alone) {
			if w.Address == "/identify/" {
				return w.Visit
			}
		}
		t.Fatal("no identify page")
		return 0
	}
	changed := ownMeasure(500)
	with, problems := siteOf(t, schoolFolder(t, changed), Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	overlay := changed["overlay/counter.yaml"]
	changed["overlay/counter.yaml"] = ""
	without, problems := siteOf(t, schoolFolder(t, changed), Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files, late := map[string]File{}, ""
	for _, f := range with.Files {
		files[f.Path] = f
		if strings.HasPrefix(f.Path, "assets/own.") && strings.HasSuffix(f.Path, ".json") {
			late = f.Path
		}
	}
	if strings.Count(string(files[late].Bytes), `"w`) != 500 || strings.Count(overlay, "\n    part: ") != 500 {
		t.Fatal("not 500 part numbers")
	}
	first, second := visit(with)-visit(without), packedSizes(files, []string{late})[late]
	t.Logf("first visit %d B more, late %d B", first, second)
	if first <= 0 || second <= 0 || first+second >= 8000 {
		t.Errorf("an overlay of 500 part numbers adds %d B at first and %d B late", first, second)
	}
}

// The command says what the overlay adds to rows that are left, as the pages do.
func TestCounter(t *testing.T) {
	got, problems := Counter(schoolFolder(t, nil), []string{"joints-inch/1310", "joints-inch/1410"})
	if len(problems) > 0 || len(got) != 1 || got[0].Row != "1310" || got[0].String() != "Part number MS-1310; In stock 4 pieces; Price 18.50 with clips; We keep this yes" {
		t.Errorf("%+v, %v", got, problems)
	}
	if got, problems := Counter(inEnglish(), []string{"joints-inch/1310"}); len(problems) > 0 || got != nil {
		t.Errorf("without a folder: %+v, %v", got, problems)
	}
}

// A newer chart under an old overlay: what stays flows through, and each thing that does not
// is told with both places and what became of it.
func TestOwnUpgrade(t *testing.T) {
	chart := func(changes ...[3]string) fs.FS {
		next := fstest.MapFS{}
		entries, err := fs.ReadDir(tables.FS, ".")
		if err != nil {
			t.Fatal(err)
		}
		for _, e := range entries {
			text, err := fs.ReadFile(tables.FS, e.Name())
			if err != nil {
				t.Fatal(err)
			}
			next[e.Name()] = &fstest.MapFile{Data: text}
		}
		for _, c := range changes {
			was := string(next[c[0]].Data)
			if !strings.Contains(was, c[1]) {
				t.Fatalf("%s does not hold %q", c[0], c[1])
			}
			next[c[0]] = &fstest.MapFile{Data: []byte(strings.Replace(was, c[1], c[2], 1))}
		}
		return next
	}
	const shelf = "overlay: counter\ncolumns:\n  part: {label: Part number, kind: text, find: true}\n  stock: {label: In stock, kind: number}\n"
	src := schoolFolder(t, map[string]string{"overlay/counter.yaml": shelf + "rows:\n  1310:\n    part: MS-1310\n  tool-caliper-150:\n    stock: 2\n"})

	t.Run("a figure that is put right is shown beside the old part number, and a new row is there", func(t *testing.T) {
		next := src
		next.Tables = chart([3]string{"retired.yaml", "retired: []", "retired:\n  - {id: 1309, to: [1310], why: it was written wrong}"},
			[3]string{"fasteners.yaml", "rows:\n", "rows:\n  - id: plate-bolt-new\n    item: {is: bolt of the test, basis: memory}\n    series: {is: unknown}\n    thread: {is: unknown}\n    grade: {is: unknown}\n    torque: {is: unknown}\n\n"},
			[3]string{"joints-inch.yaml", "version: 1.0.0", "version: 1.0.1"})
		files := mustOwn(t, next, Options{})
		if page := string(files["joint/1310/index.html"]); !strings.Contains(page, "MS-1310") || !strings.Contains(page, "1309") {
			t.Error("the page of the row lacks its part number or what the newer chart says")
		}
		if !strings.Contains(string(files["chart/fasteners/index.html"]), "bolt of the test") {
			t.Error("the new row did not flow through")
		}
	})
	memory := NewMemory() // the scripts are the same for all
	for _, c := range []struct {
		name   string
		change [][3]string
		want   []string
	}{
		{"a row that moved", [][3]string{{"retired.yaml", "retired: []", "retired:\n  - {id: gauge-1310, to: [1330], why: it was named after a gauge}"}},
			[]string{`overlay/counter.yaml:8:3: counter/gauge-1310: the row "gauge-1310" is no longer in the chart`, "it went to 1330: it was named after a gauge", "note: retired at tables/retired.yaml:11:10"}},
		{"a row that was withdrawn", [][3]string{{"retired.yaml", "retired: []", "retired:\n  - {id: gauge-1310, why: nobody has seen one}"}},
			[]string{"overlay/counter.yaml:8:3:", "it was withdrawn: nobody has seen one", "note: retired at tables/retired.yaml:11:10"}},
		{"a column that the newer chart has too", [][3]string{{"joints-inch.yaml", "  hold: ", "  stock: {label: Bar stock, kind: text}\n  hold: "}},
			[]string{`overlay/counter.yaml:4:3: counter/1310.stock: the column "stock" means something else in the table "joints-inch" of the chart`, "note: declared by the chart at tables/joints-inch.yaml:"}},
		{"a table that the newer program ships too", [][3]string{{"steering-splines.yaml", "", ""}},
			[]string{`tables/counter-tools.yaml:1:1: the program ships a file of the name "counter-tools.yaml"`, "note: the shipped one is tables/counter-tools.yaml:1:1"}},
		{"a row id that the newer chart has too", [][3]string{{"fasteners.yaml", "  - id: plate-bolt-1610", "  - id: tool-caliper-150"}},
			[]string{`tables/counter-tools.yaml:15:9: counter-tools/tool-caliper-150: the id "tool-caliper-150" is already taken`, "note: first defined at tables/fasteners.yaml:"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			next := src
			overlay := shelf + "rows:\n  1310:\n    part: MS-1310\n    stock: 3\n"
			if strings.HasPrefix(c.name, "a row that") {
				overlay = strings.Replace(shelf, "columns:", "# on the shelf\ncolumns:", 1) + "rows:\n  1330:\n    part: X\n  gauge-1310:\n    part: MS-1310\n"
				overlay = strings.Replace(overlay, "# on the shelf\n", "", 1)
			}
			next.Own = schoolFolder(t, map[string]string{"overlay/counter.yaml": overlay}).Own
			next.Tables = chart(c.change...)
			if strings.HasPrefix(c.name, "a table") {
				folder := next.Tables.(fstest.MapFS)
				folder["counter-tools.yaml"] = next.Own.(fstest.MapFS)["tables/counter-tools.yaml"]
			}
			_, problems := Site(next, Options{Memory: memory})
			checkFinds(t, next, problems)
			if !problems.Blocked() {
				t.Fatal("nothing is told")
			}
			text := fmt.Sprint(problems)
			for _, want := range c.want {
				if !strings.Contains(text, want) {
					t.Errorf("lacks %s:\n%s", want, text)
				}
			}
		})
	}
}
