//go:build browser

package browser

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"capspan/build"
)

// openLarge puts the large chart up for a tab of its own.
func openLarge(t *testing.T) (*tab, *host, build.Output) {
	t.Helper()
	out := mustLarge(t).site
	h := newHost(t, build.Handler(out, base))
	b := openTab(t)
	b.own = h.origin()
	return b, h, out
}

// withKits is a size's address with so many kits, alike at both ends or not.
func withKits(t *testing.T, out build.Output, kits int, conversion bool) string {
	t.Helper()
	for _, f := range out.Files {
		if !strings.HasPrefix(f.Path, "size/") || strings.Contains(f.Path, "/paper/") || strings.Contains(f.Path, "--") != conversion {
			continue
		}
		if strings.Count(string(f.Bytes), "\n<li id=\"s")+strings.Count(string(f.Bytes), "\n<li id=\"c") >= kits {
			return base + strings.TrimSuffix(f.Path, "index.html")
		}
	}
	t.Fatalf("no size has %d kits", kits)
	return ""
}

// The pages that only a large chart has are for everyone, as all others are.
func TestLargeForEveryone(t *testing.T) {
	_, h, out := openLarge(t)
	for name, address := range map[string]string{
		"a size with many kits": withKits(t, out, 11, false),
		"a conversion joint":    withKits(t, out, 2, true),
		"the sheet of a size":   withKits(t, out, 6, false) + "paper/",
		"a group":               base + "chart/joints-conversion/28/",
		"a table in groups":     base + "chart/joints-metric/",
	} {
		t.Run(name, func(t *testing.T) {
			b := openTab(t)
			b.own = h.origin()
			b.visit(h, address)
			if name == "a table in groups" {
				b.find("", "27.0", "29,5")
				b.until("sizes to be found", `document.querySelectorAll("[data-find-table] tbody tr").length > 5`)
			}
			b.accessible()
			b.zooms()
			b.touchable()
			b.keyboard()
			b.calm(name)
		})
	}
}

// find fills the form of a table in groups and sends it.
func (b *tab) find(text, from, to string) {
	b.t.Helper()
	see[bool](b, fmt.Sprintf(`(form => {
		form.elements.q.value = %q;
		form.elements["cap-from"].value = %q;
		form.elements["cap-to"].value = %q;
		form.requestSubmit();
		return true;
	})(document.querySelector("[data-find]"))`, text, from, to))
}

// The table of a large chart reads the groups it needs and no other, filters and sorts their
// lines, and says so when one cannot be read.
func TestFindOverGroups(t *testing.T) {
	b, h, out := openLarge(t)
	whole := build.Handler(out, base)
	says := `document.querySelector("[data-find-says]").textContent`
	rows := `document.querySelectorAll("[data-find-table]:not([hidden]) tbody tr").length`
	b.visit(h, base+"chart/joints-metric/")
	b.until("the form", `!document.querySelector("[data-find]").hidden`)
	h.hears("")

	b.find("", "", "")
	b.until("the question what to look for", says+`.startsWith("Say what to look for")`)
	b.find("", "wide", "")
	b.until("the complaint", says+`.includes("“wide” is no length") && document.activeElement.name === "cap-from" && document.activeElement.getAttribute("aria-invalid") === "true"`)
	if h.hears("/chart/") {
		t.Error("a group was fetched for nothing")
	}

	b.find("", "28", "28.4")
	b.until("sizes of one group", says+`.endsWith("fit.") || `+says+`.endsWith("fits.")`)
	if !h.hears("/chart/joints-metric/28/") || h.hears("/chart/joints-metric/30/") {
		t.Error("not the one group that can hold it was fetched")
	}
	one := see[int](b, rows)
	if one == 0 {
		t.Fatal("nothing found")
	}
	b.find("", "27", "30.9")
	b.until("more sizes", rows+" > "+fmt.Sprint(one))
	// By the column across, the other way: as any table is sorted.
	see[bool](b, `(button => { button.click(); button.click(); return true })(document.querySelectorAll("[data-find-table] thead .sort")[3])`)
	across := see[[]float64](b, `[...document.querySelectorAll("[data-find-table] tbody tr")].map(row => parseFloat(row.cells[3].firstChild.textContent))`)
	for i := range across[1:] {
		if across[i] < across[i+1] {
			t.Errorf("across is not sorted: %v", across)
			break
		}
	}
	b.calm("finding")

	// One group that does not come, and one that is a portal's page: what came is shown, and
	// what is missing is said; a second try brings it.
	broken := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch {
		case strings.HasSuffix(r.URL.Path, "/joints-metric/22/"):
			http.Error(w, "gone", http.StatusBadGateway)
		case strings.HasSuffix(r.URL.Path, "/joints-metric/23/"):
			w.Header().Set("Content-Type", "text/html")
			fmt.Fprint(w, "<!doctype html><title>Log in</title><table data-table><tbody><tr><td>22</td></tr></tbody></table>")
		default:
			whole.ServeHTTP(w, r)
		}
	})
	h.publish(broken)
	b.find("", "22", "24.9")
	b.until("that groups are missing", says+`.includes("2 groups could not be read") && !document.querySelector("[data-find-again]").hidden`)
	some := see[int](b, rows)
	h.publish(whole)
	see[bool](b, `(document.querySelector("[data-find-again]").click(), true)`)
	b.until("all of them", rows+" > "+fmt.Sprint(some)+` && document.querySelector("[data-find-again]").hidden && !`+says+`.includes("could not")`)
}

// The life-size sheet of any size is one page of A4 and of Letter.
func TestSheetsOfSizesAreOnePage(t *testing.T) {
	b, h, out := openLarge(t)
	var sheets []string
	for _, address := range []string{withKits(t, out, 1, false), withKits(t, out, 11, false), withKits(t, out, 8, true)} {
		sheets = append(sheets, address+"paper/")
	}
	for _, address := range sheets {
		for _, paper := range papers {
			b.visit(h, address)
			if got := pages(t, b.print(paper)); got != 1 {
				t.Errorf("%s on %s: %d pages", address, paper.name, got)
			}
		}
	}
}
