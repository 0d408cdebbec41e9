//go:build browser

package browser

import (
	"fmt"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/build"
	"capspan/static/matcher"
)

// What a keeper says of a row of a large chart stands in the verdict, on the page of its size,
// on the slip and in the search, and no other row of the size has it. Keeper and part number
// are invented.
func TestLargeOwnFolder(t *testing.T) {
	l := mustLarge(t)
	var row matcher.ChartRow
	for _, r := range l.chart.Rows {
		if r.Name == "s143-h" {
			row = r
		}
	}
	src, err := invented(2100)
	if err != nil {
		t.Fatal(err)
	}
	src.Own = fstest.MapFS{
		"site.yaml": {Data: []byte("demo: true\nname: Millbrook School workshop\n")},
		"overlay/counter.yaml": {Data: []byte("overlay: counter\ncolumns:\n  part: {label: Part number, kind: text, find: true}\n" +
			"rows:\n  " + row.Name + ":\n    part: MS-0143\n")},
	}
	out, problems := build.Site(src, build.Options{Base: base, Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	h := newHost(t, build.Handler(out, base))
	b := openTab(t)
	b.own = h.origin()
	open := func(address, what, ready string) {
		t.Helper()
		b.visit(h, base+"404.html")
		b.visit(h, base+address)
		b.until(what, ready)
	}
	end := row.Ends[0]
	open(fmt.Sprintf("identify/#hold=%s&cap=%smm&across=%smm", end.Hold, end.Cap.MM, end.Across.MM), "the overlay in the verdict",
		answered+` && document.querySelector("[data-verdict-body] .own-says")`)
	if got := see[string](b, `[...document.querySelectorAll(".own-says")].map((s) => s.textContent.replace(/\s+/g, " ")).join("; ")`); !strings.Contains(got, row.Name+"Part numberMS-0143") || strings.Contains(got, ";") {
		t.Errorf("the verdict says %q", got)
	}
	open(l.placeOf(t, row), "the page of the size", `document.querySelector(".own-says")`)
	if n := see[int](b, `document.querySelectorAll(".own-says").length`); n != 1 {
		t.Errorf("the size says it %d times", n)
	}
	open("order/#row="+row.Name, "the slip", orderReady+` && document.querySelector("[data-slip]").textContent.includes("MS-0143")`)
	open("search/#q=ms-0143", "the row found by its part number", `[...document.querySelectorAll("main a")].some((a) => a.href.endsWith("#`+row.Name+`"))`)
	b.calm("a keeper's folder over a large chart")
}
