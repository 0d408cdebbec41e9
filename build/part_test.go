package build

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/http/httptest"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/static/matcher"
)

// The table of chords for doing it by hand is the core's own, and the one that machinists'
// handbooks print: 0.86603, 0.70711, 0.58779, 0.5 and 0.38268 for 3, 4, 5, 6 and 8 holes.
func TestChordTable(t *testing.T) {
	p, err := matcher.NewParts(inEnglish().Static)
	if err != nil {
		t.Fatal(err)
	}
	printed := map[int]string{3: "0.86603", 4: "0.70711", 5: "0.58779", 6: "0.50000", 8: "0.38268"}
	for _, f := range chordFactors() {
		for between, got := range map[string]string{"next": f.Next, "farthest": f.Farthest} {
			own, err := p.ChordFactor(f.Holes, between)
			if want := fmt.Sprintf("%.5f", own); err != nil || got != want {
				t.Errorf("%d holes, %s: %s, the core has %s, %v", f.Holes, between, got, want, err)
			}
		}
		if want := printed[f.Holes]; want != "" && f.Next != want {
			t.Errorf("%d holes: %s, printed %s", f.Holes, f.Next, want)
		}
		delete(printed, f.Holes)
	}
	if len(printed) > 0 {
		t.Errorf("not in the table: %v", printed)
	}
}

// A table with matched columns gets its page, its data and its ways there; another gets none.
func TestPartPages(t *testing.T) {
	files := mustBuild(t, inEnglish(), Options{Base: "/sub/"})
	page := string(files["identify/part/flanges-male/index.html"])
	for _, want := range []string{`data-column="holes"`, `data-column="circle"`, `data-column="pilot"`, `data-hole`, ">0.38268<", `data-rows="/sub/chart/flanges-male/"`} {
		if !strings.Contains(page, want) {
			t.Errorf("the page lacks %s", want)
		}
	}
	if strings.Index(page, `data-column="holes"`) > strings.Index(page, `data-column="circle"`) {
		t.Error("the holes are counted after the circle that needs their number")
	}
	data := regexp.MustCompile(`data-table="/sub/([^"]+)"`).FindStringSubmatch(page)
	var table matcher.PartTable
	if len(data) == 0 || json.Unmarshal(files[data[1]], &table) != nil || len(table.Rows) != 10 || len(table.Columns) != 3 {
		t.Errorf("the page names %q, which has %d rows and %d columns", data, len(table.Rows), len(table.Columns))
	}
	if !strings.Contains(string(files["identify/part/pto-shafts/index.html"]), "Keep every guard of a power take-off on") {
		t.Error("a caution of the table is not on the page")
	}
	if files["identify/part/fasteners/index.html"] != nil || files["identify/part/joints-inch/index.html"] != nil {
		t.Error("a page for a table that nothing is matched in")
	}
	index := string(files["identify/part/index.html"])
	for _, name := range []string{"flanges-male", "pto-shafts", "steering-splines", "machine-joints"} {
		if link := `href="/sub/identify/part/` + name + `/"`; !strings.Contains(index, link) || !strings.Contains(string(files["chart/"+name+"/index.html"]), link) {
			t.Errorf("no way to the page of %s from the list or from its table", name)
		}
	}
	if !strings.Contains(string(files["identify/index.html"]), `href="/sub/identify/part/"`) {
		t.Error("no way from the identify page")
	}
}

// The record of changes names the rows of today that each change bears on: under the name
// they have now, what took the place of a retired one, and the joints that have its figures.
func TestRecordOfChanges(t *testing.T) {
	files := mustBuild(t, recorded(t, "words of a stranger", ""), Options{})
	var record matcher.Record
	if err := json.Unmarshal(files["changes/history.json"], &record); err != nil {
		t.Fatal(err)
	}
	if len(record.Issues) != 2 || record.Issues[0].Chart != "2026-11-25-0123abd" {
		t.Fatalf("%+v", record)
	}
	rows := map[string][]string{}
	for _, issue := range record.Issues {
		for _, c := range issue.Changes {
			rows[c.Of+" "+c.What] = c.Rows
		}
	}
	for of, want := range map[string][]string{
		"joints-inch/1310-old value":  {"joints-inch/1310", "joints-conversion/7260-to-1310"}, // renamed later
		"joints-inch/1330 value":      {"joints-inch/1330"},
		"fasteners/u-bolt-1310 value": {"fasteners/u-bolt-1310"},
		"joints-inch/gone retired":    {},
		"sources/profi title":         {},
	} {
		got := rows[of]
		if len(want) == 0 && len(got) > 0 || len(want) > 0 && (len(got) == 0 || got[0] != want[0]) {
			t.Errorf("%s bears on %q, want %q", of, got, want)
		}
		for _, ref := range want {
			if !slices.Contains(got, ref) {
				t.Errorf("%s bears on %q, not on %s", of, got, ref)
			}
		}
	}
	if !strings.Contains(string(files["worker.js"]), "changes/history.json") {
		t.Error("a device does not keep the record")
	}
}

// A retired row's address leads on, and where it leads says what stood there: the reader may
// never see the page between.
func TestRetiredEndToEnd(t *testing.T) {
	src := retiredRows(t)
	files := src.Tables.(fstest.MapFS)
	files["retired.yaml"].Data = append(files["retired.yaml"].Data, "- {id: old-shaft, to: [pto-type-1], why: it was called otherwise}\n"...)
	out, problems := siteOf(t, src, Options{Base: "/sub/"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	h := Handler(out, "/sub/")
	for address, want := range map[string]struct{ at, says string }{
		"/sub/joint/old-1310/":  {"/sub/joint/1310/", "It took the place of old-1310, which is no longer in the chart. It was renamed."},
		"/sub/joint/old-shaft/": {"/sub/chart/pto-shafts/", "It took the place of old-shaft, which is no longer in the chart. It was called otherwise."},
		"/sub/joint/old-pair/":  {"/sub/joint/old-pair/", "it was split"},
		"/sub/joint/old-gone/":  {"/sub/joint/old-gone/", "nobody made it"},
	} {
		at, answer := address, httptest.NewRecorder()
		for range 3 {
			answer = httptest.NewRecorder()
			h.ServeHTTP(answer, httptest.NewRequest("GET", at, nil))
			if answer.Code/100 != 3 {
				break
			}
			at = answer.Header().Get("Location")
		}
		if at != want.at || answer.Code != http.StatusOK || !strings.Contains(answer.Body.String(), want.says) {
			t.Errorf("%s leads to %s with %d, want %s saying %q", address, at, answer.Code, want.at, want.says)
		}
	}
	if !strings.Contains(string(contents(out)["joint/1330/index.html"]), "took the place of old-pair") {
		t.Error("a row that came of a split does not say so")
	}
}
