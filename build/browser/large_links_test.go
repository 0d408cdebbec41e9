//go:build browser

package browser

import (
	"net/http"
	"strings"
	"testing"

	"github.com/chromedp/chromedp/kb"
)

// Joining two ends and searching by size in a large chart: with a lost piece there is no
// result and a way on; with it every row leads to a page that is there.
func TestLargeEndsAndSearch(t *testing.T) {
	l := mustLarge(t)
	h := newFaulty(t, l.site, "assets/chart/")
	row, other := l.chart.Rows[700].Ends[0], l.chart.Rows[1400].Ends[0]
	for name, c := range map[string]struct {
		address, typed, lost, links string
	}{
		"ends": {base + "driveline/ends/#hold1=" + string(row.Hold) + "&cap1=" + row.Cap.MM + "%20mm&across1=" + row.Across.MM + "%20mm&hold2=" + string(other.Hold) +
			"&cap2=" + other.Cap.MM + "%20mm&across2=" + other.Across.MM + "%20mm", "", `document.querySelector("[data-result]").hidden && document.querySelector("[data-note] button")`, `[data-result] .result__value a`},
		"search": {base + "search/", row.Cap.MM + " x " + row.Across.MM, `document.querySelector("[data-search-status] button") && !document.querySelector("[class*='hit--']")`, `[data-search-hits] a[href*="/size/"]`},
	} {
		t.Run(name, func(t *testing.T) {
			h.does(pieceFaults["no answer"].does)
			b := openTab(t)
			b.own = h.origin()
			b.visit(h.host, c.address)
			if c.typed != "" {
				b.until("the search", `document.querySelector("[data-search-field]")`)
				b.write("[data-search-field]", c.typed+kb.End)
			}
			b.until("the message", c.lost)
			h.does(nil)
			b.click("[data-pieces-go]:last-of-type")
			b.until("rows", `document.querySelectorAll(`+quote(c.links)+`).length > 0`)
			for _, href := range see[[]string](b, `[...document.querySelectorAll(`+quote(c.links)+`)].map(a => a.href)`) {
				response, err := http.Get(href)
				if err != nil {
					t.Fatal(err)
				}
				response.Body.Close()
				if response.StatusCode != http.StatusOK || !strings.Contains(href, "/size/") {
					t.Errorf("a row leads to %s: %s", href, response.Status)
				}
			}
		})
	}
}
