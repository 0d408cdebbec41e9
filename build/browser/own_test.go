//go:build browser

package browser

import (
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"

	"capspan/build"
)

// The second keeper, an invented school workshop, in the browser: what the overlay adds is
// said beneath the size of a verdict and on the enquiry slip, a part number finds its row, and
// each kind of page that is the keeper's passes the rules of axe in all media, in the keeper's
// colours.
func TestOwnFolder(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, os.DirFS("../../cmd/capspan/example")); err != nil {
		t.Fatal(err)
	}
	out, problems := siteOf(build.OwnFolder(dir), build.Options{Base: base})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	server := httptest.NewServer(build.Handler(out, base))
	defer server.Close()
	b := openTab(t)
	open := func(address, what, ready string) {
		t.Helper()
		b.do("open "+address, chromedp.Navigate("about:blank"), chromedp.Navigate(server.URL+strings.TrimSuffix(base, "/")+address))
		b.until(what, ready)
	}
	open("/identify/#hold=outside-clip&cap=1.062in&across=3.219in", "the overlay in the verdict", `document.querySelector("[data-verdict-body] .own-says")`)
	if got := see[string](b, `document.querySelector(".own-says").innerText.replace(/\s+/g, " ")`); !strings.Contains(got, "Part number MS-1310 In stock 4 pieces") {
		t.Errorf("the verdict says %q", got)
	}
	if n := see[int](b, `document.querySelectorAll(".own-says").length`); n != 1 {
		t.Errorf("it is said %d times", n)
	}
	if n := see[int](b, `document.querySelectorAll(".size--near .own-says").length`); n != 0 {
		t.Errorf("%d rows that do not match have part numbers", n)
	}
	b.accessible()
	open("/joint/1310/", "the row", `document.querySelector(".own-says")`)
	b.accessible()
	if got := see[string](b, `getComputedStyle(document.documentElement).getPropertyValue("--ink").trim()`); got != "#1f2a18" {
		t.Errorf("the ink is %s", got)
	}
	open("/", "the front page", `document.querySelector("#own-links")`)
	b.accessible()
	open("/order/#row=1310", "the slip", orderReady+` && document.querySelector("[data-slip]").textContent.includes("MS-1310")`)
	open("/search/#q=ms-1310", "the row found by its part number", `[...document.querySelectorAll("main a")].some(a => a.getAttribute("href").endsWith("/joint/1310/"))`)
}
