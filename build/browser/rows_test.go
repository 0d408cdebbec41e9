//go:build browser

package browser

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
	"capspan/tables"
)

// A large chart in the browser: rows come from drawers, an answer stays as it is until the
// next is whole, and a drawer that does not come is said, with a way to try again.
func TestRowsOfLargeChart(t *testing.T) {
	l := mustLarge(t)
	var gone, slow atomic.Bool
	files := build.Handler(l.site, base)
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.HasPrefix(r.URL.Path, base+"assets/rows/") || strings.HasPrefix(r.URL.Path, base+"assets/correct/rows/") {
			if slow.Load() {
				time.Sleep(700 * time.Millisecond)
			}
			if gone.Load() {
				http.Error(w, "not now", http.StatusServiceUnavailable)
				return
			}
		}
		files.ServeHTTP(w, r)
	}))
	defer server.Close()
	b := openTab(t)
	b.own = server.URL
	b.do("open the search", chromedp.Navigate(server.URL+base+"search/#q=s14"))
	b.until("rows", firstHit+`?.textContent.includes("s14-")`)
	b.accessible()
	if n := see[int](b, `document.querySelectorAll("[data-search-hits] li").length`); n != 20 {
		t.Errorf("%d rows are shown", n)
	}
	b.until("how many there are", searchSaid+`.startsWith("20 of ")`)

	// While the next answer is on its way the last one stays; Enter waits for the new one.
	put := func(field, text, event string) {
		see[bool](b, `(f => { f.focus(); f.value = `+quote(text)+`; f.dispatchEvent(new Event("`+event+`", {bubbles: true})); return true; })(document.querySelector("`+field+`"))`)
	}
	ask := func(question string) { put(searchField, question, "input") }
	slow.Store(true)
	ask("c2")
	b.until("that it looks", searchSaid+`.includes("Looking")`)
	if first := see[string](b, firstHit+`.textContent`); !strings.Contains(first, "s14-") {
		t.Errorf("while rows are on their way the first is %q", first)
	}
	b.until("the rows of the second question", firstHit+`?.textContent.includes("c2")`)
	slow.Store(false)

	gone.Store(true)
	ask("s20")
	b.until("what did not come", searchSaid+`.includes("did not arrive")`)
	if said := see[string](b, searchSaid); strings.Contains(said, "Nothing") {
		t.Errorf("a drawer that did not come: %s", said)
	}
	b.accessible()
	gone.Store(false)
	b.do("try again", chromedp.Click(chromedp.CSS("[data-search-status] button")))
	b.until("the rows that came", firstHit+`?.textContent.includes("s20")`)
	ask("zzzzzz")
	b.until("nothing", searchSaid+`.includes("Nothing found")`)
	slow.Store(true)
	ask("s30")
	b.press(kb.Enter)
	b.until("the row's page, once it was there", `!location.pathname.endsWith("/search/")`)
	slow.Store(false)

	// The address that a kit had before the chart grew leads to the kit.
	kit := l.chart.Rows[len(l.chart.Rows)/2].Name
	b.do("open an old address", chromedp.Navigate(server.URL+base+"joint/"+kit+"/"))
	b.until("the kit", `location.pathname.endsWith("/search/") && `+firstHit+`?.textContent.includes(`+quote(kit)+`)`)

	// The list without script.
	b.do("open the list", chromedp.Navigate(server.URL+base+"a-z/"))
	b.do("names", chromedp.Click(chromedp.CSS("main a[href$='/a-z/s/']")))
	b.until("longer beginnings", `location.pathname.endsWith("/a-z/s/") && document.querySelector("main .rows a")`)
	b.accessible()

	// A correction of one row, and of one whose drawer does not come.
	var of, other *tables.Row
	for _, table := range l.set.Tables {
		if table.Joint() && len(table.Rows[0].Values) > 0 {
			of, other = table.Rows[0], of
		}
	}
	at := "contribute/correct/#table=" + of.Table.ID + "&row=" + of.ID + "&column=cap"
	b.do("open the correction", chromedp.Navigate(server.URL+base+at))
	b.until("what the chart has", `document.querySelector("[data-correct][data-ready]") && document.querySelector("[data-now]").textContent.includes("`+of.Values["cap"].Quantity.Text+`")`)
	b.accessible()
	gone.Store(true)
	b.do("a row of another table", chromedp.Navigate(server.URL+base+"contribute/correct/#table="+other.Table.ID+"&row="+other.ID))
	b.until("what did not come", `!document.querySelector("[data-trouble]").hidden`)
	if said := see[string](b, `document.querySelector("[data-trouble]").textContent`); strings.Contains(said, other.ID) {
		t.Errorf("a drawer that did not come was taken for one without the row: %s", said)
	}
}
