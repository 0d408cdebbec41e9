//go:build browser

package browser

import (
	"fmt"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"

	"capspan/build"
	"capspan/build/pseudo"
	"capspan/content"
)

// tongue is the folder of the made-up language, whose words are two fifths longer.
const tongue = pseudo.Language + "/"

// bilingual is the shipped site with that language beside English.
var bilingual = sync.OnceValues(func() (build.Output, error) {
	folder, err := pseudo.Folder(content.FS)
	if err != nil {
		return build.Output{}, err
	}
	src := build.Embedded()
	src.Content = folder
	out, problems := siteOf(src, build.Options{Base: base})
	if problems.Blocked() {
		err = fmt.Errorf("problems: %v", problems)
	}
	return out, err
})

func mustBilingual(t testing.TB) build.Output {
	t.Helper()
	out, err := bilingual()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// spilled lists what has words outside its box, and controls that are cut off at an edge
// of the window.
const spilled = `[...document.querySelectorAll("button, .btn, label, summary, legend, th, td, dt, dd, h1, h2, h3, p, li, figcaption, input, select, textarea")].filter(e => {
	if (!e.checkVisibility() || e.clientWidth < 2 || e.closest("svg")) return false;
	const box = e.getBoundingClientRect(), control = e.matches("button, .btn, input, select, textarea");
	if (control && !e.closest("[tabindex]:not(main)") && (box.left < -1 || box.right > document.documentElement.clientWidth + 1)) return true;
	return !e.matches("input, select, textarea") && e.scrollWidth > e.clientWidth + 1 && getComputedStyle(e).overflowX === "visible" && !e.querySelector("[tabindex], svg, .visually-hidden");
}).map(e => e.tagName.toLowerCase() + "." + e.getAttribute("class") + ": " + e.textContent.trim().slice(0, 60))`

// Words two fifths longer, on every kind of page and in the states that say most, fit the
// narrowest window a page must bear (WCAG 1.4.10): nothing scrolls sideways, falls out of
// its box or is cut off.
func TestLongWordsFit(t *testing.T) {
	out := mustBilingual(t)
	server := httptest.NewServer(build.Handler(out, base))
	t.Cleanup(server.Close)
	pages := coverOf(out, tongue)
	if len(pages) < 10 {
		t.Fatalf("%d kinds of pages: %v", len(pages), pages)
	}
	var list []scene
	for _, address := range pages {
		list = append(list, scene{address: address, ready: scripted["/"+strings.TrimPrefix(address, "/"+tongue)]})
	}
	for _, address := range []string{"404.html", "not-kept.html"} {
		list = append(list, scene{address: "/" + tongue + address})
	}
	for _, fragment := range verdicts {
		list = append(list, scene{address: "/" + tongue + "identify/#" + fragment, ready: ready + ` && ` + drawn})
	}
	list = append(list, scene{address: "/" + tongue + "order/#" + reading, ready: orderReady})
	b := openTab(t)
	b.do("resize", chromedp.EmulateViewport(320, 800))
	for _, s := range list {
		t.Run(strings.ReplaceAll(s.address, "/", " "), func(t *testing.T) {
			b.t = t
			b.do("leave", chromedp.Navigate("about:blank"))
			b.do("open", chromedp.Navigate(server.URL+strings.TrimSuffix(base, "/")+s.address))
			if s.ready != "" {
				b.until(s.address, s.ready)
			}
			if got := see[string](b, "document.documentElement.lang"); got != pseudo.Language {
				t.Errorf("the language is %q", got)
			}
			b.fits("at 320 px")
			for _, lost := range see[[]string](b, spilled) {
				t.Errorf("at 320 px it does not hold %s", lost)
			}
		})
	}
}

// The switch leads to the same page with what it has been asked, and back; without script
// to the same page.
func TestLanguageSwitch(t *testing.T) {
	server := httptest.NewServer(build.Handler(mustBilingual(t), base))
	t.Cleanup(server.Close)
	b := openTab(t)
	at := func(address string) { b.do("open", chromedp.Navigate(server.URL+base+address)) }
	at("identify/#" + reading1310)
	const verdict = `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`
	b.until("the verdict", verdict)
	asked := see[string](b, "location.hash")
	for _, want := range []string{base + tongue + "identify/", base + "identify/"} {
		b.click("a[hreflang]")
		b.until("the other language", fmt.Sprintf("location.pathname === %q && %s", want, verdict))
		if got := see[string](b, "location.hash"); got != asked {
			t.Errorf("%s is asked %s, want %s", want, got, asked)
		}
	}
	at("driveline/speed/?from=a#outside=76.2mm&wall=2.1mm&length=30in&speed=3000rpm")
	b.until("the calculation", calculationReady)
	asked = see[string](b, "location.search + location.hash")
	b.click("a[hreflang]")
	b.until("the other language", fmt.Sprintf("location.pathname === %q && %s", base+tongue+"driveline/speed/", calculationReady))
	if got := see[string](b, "location.search + location.hash"); got != asked || !strings.Contains(got, "76.2mm") {
		t.Errorf("the calculation is asked %s, want %s", got, asked)
	}
	// What is kept on the device is the same in both.
	see[bool](b, `localStorage.setItem("mark", "here"), true`)
	at("shaft/")
	if got := see[string](b, `localStorage.getItem("mark")`); got != "here" {
		t.Errorf("the store of the other language has %q", got)
	}
	const seen = `document.querySelector("a[hreflang]").checkVisibility()`
	if !see[bool](b, seen) {
		t.Error("the switch is not seen")
	}
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		t.Fatal(err)
	}
	if see[bool](b, seen) {
		t.Error("the switch is printed")
	}
}

// Whoever reads one language keeps that alone: all its pages, and of the other a page that
// says it is not at hand. Each language has its own worker.
func TestOfflineInOneLanguage(t *testing.T) {
	h := newHost(t, build.Handler(mustBilingual(t), base))
	b := openTab(t)
	b.visit(h, base+tongue)
	b.promised("the worker", `navigator.serviceWorker.getRegistration().then((r) => r?.active?.state === "activated" && r.scope.endsWith("/`+tongue+`"))`)
	b.promised("a row to be kept", `caches.match(new URL("joint/1310/", document.baseURI).href).then(Boolean)`)
	h.down()
	b.visit(h, base+tongue+"identify/#"+reading1310)
	b.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`)
	b.until("the drawings", drawn)
	b.visit(h, base+tongue+"joint/1310/")
	if got := see[string](b, "document.documentElement.lang + document.querySelector('h1').innerText"); got != pseudo.Language+"1310" {
		t.Errorf("the row is shown as %q", got)
	}
	b.visit(h, base+tongue+"no-such-page/")
	if got := b.heading(); !strings.Contains(got, pseudo.Prose("here")) {
		t.Errorf("a page that is nowhere is shown as %q", got)
	}
	if got := foreign(b, func(address string) bool {
		return strings.Contains(address, base) && !strings.Contains(address, base+tongue)
	}); len(got) > 0 {
		t.Errorf("kept of the other language: %q", got)
	}

	h.up()
	b.visit(h, base)
	b.promised("the worker of English", `navigator.serviceWorker.getRegistration().then((r) => r?.active?.state === "activated" && r.scope.endsWith("`+base+`"))`)
	b.promised("a row to be kept", `caches.match(new URL("joint/1310/", document.baseURI).href).then(Boolean)`)
	b.promised("the store of the first language to go", `caches.keys().then((names) => Promise.all(names.filter((n) => n.includes("/`+tongue+` ")).map((n) => caches.delete(n)))).then(() => true)`)
	b.promised("its worker to go", `navigator.serviceWorker.getRegistrations().then((list) => Promise.all(list.filter((r) => r.scope.endsWith("/`+tongue+`")).map((r) => r.unregister()))).then(() => true)`)
	h.down()
	b.visit(h, base+tongue+"chart/")
	if got := b.heading(); got != "This page is not at hand" {
		t.Errorf("a page of the language that is not kept is shown as %q", got)
	}
	b.visit(h, base+"joint/1310/")
	if got := b.heading(); got != "1310" {
		t.Errorf("the row is shown as %q", got)
	}
}

// foreign are the addresses of kept pages of a kind.
func foreign(b *tab, is func(address string) bool) []string {
	all, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]string](`caches.keys().then((names) => Promise.all(names.map(async (n) => (await (await caches.open(n)).keys()).map((r) => new URL(r.url).pathname)))).then((lists) => lists.flat())`, chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatal(err)
	}
	var list []string
	for _, address := range all {
		if strings.HasSuffix(address, "/") && is(address) && address != base { // the note of open pages lies at the root
			list = append(list, address)
		}
	}
	return list
}
