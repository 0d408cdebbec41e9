//go:build browser

package browser

import (
	"net/http"
	"net/http/httptest"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
)

// Without its parts the element is a link to the full page, and what stands between its
// tags: when the chart is lost, when the core is, when the page's policy does not allow
// them, and without script. Trying again helps when the trouble is over.
func TestEmbedWithoutParts(t *testing.T) {
	plain := build.Handler(site, base)
	for name, lost := range map[string]string{"chart": "/embed/chart.json", "core": "/assets/embed-core."} {
		t.Run(name, func(t *testing.T) {
			broken := true
			server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
				if broken && strings.Contains(r.URL.Path, lost) {
					http.Error(w, "lost", http.StatusInternalServerError)
					return
				}
				plain.ServeHTTP(w, r)
			}))
			defer server.Close()
			s := newShop(t)
			s.policy = strings.ReplaceAll(s.policy, origin, server.URL)
			s.pages["/"] = s.page("", strings.ReplaceAll(examples(t, "html")[0], origin, server.URL))
			b := s.open(t, "/")
			b.until("the link", finder+`.querySelector("a[target=_top][href='`+server.URL+base+`identify/']") && `+finder+`.querySelector("slot")`)
			broken = false
			see[bool](b, finder+`.querySelector("button").click(), true`)
			b.until("the form", opened)
		})
	}
	t.Run("policy", func(t *testing.T) {
		s := newShop(t)
		s.policy = strings.Replace(s.policy, "connect-src "+origin, "", 1)
		b := s.open(t, "/")
		b.until("the link", finder+`.querySelector("a[target=_top]")`)
	})
	t.Run("no script", func(t *testing.T) {
		s := newShop(t)
		s.policy = "default-src 'none'"
		b := s.open(t, "/")
		if !see[bool](b, `document.querySelector("joint-finder a").checkVisibility()`) {
			t.Error("the link between the tags is not seen")
		}
	})
}

// Policies of the strictest sort: a nonce that is not in the page's other scripts, trusted
// types, isolation from other origins, and the code pinned by its sum.
func TestEmbedStrict(t *testing.T) {
	frame := string(siteFile(t, "embed/frame/index.html"))
	pinned := regexp.MustCompile(`<script src="([^"]*/embed\.[0-9a-f]{8}\.js)" integrity="(sha384-[^"]+)"`).FindStringSubmatch(frame)
	if pinned == nil {
		t.Fatalf("the frame names no script:\n%s", frame)
	}
	for name, test := range map[string]struct{ policy, script string }{
		"nonce":         {"script-src 'nonce-abc'", `<script nonce="abc" src="` + origin + base + `embed/capspan.js" async></script>`},
		"dynamic":       {"script-src 'nonce-abc' 'strict-dynamic'", `<script nonce="abc" src="` + origin + base + `embed/capspan.js" async></script>`},
		"trusted types": {"script-src " + origin + "; require-trusted-types-for 'script'; trusted-types joint-finder joint-finder-form", `<script src="` + origin + base + `embed/capspan.js" async></script>`},
		"pinned":        {"script-src " + origin, `<script src="` + origin + pinned[1] + `" integrity="` + pinned[2] + `" crossorigin="anonymous" async></script>`},
	} {
		t.Run(name, func(t *testing.T) {
			s := &shop{policy: "default-src 'none'; style-src 'none'; connect-src " + origin + "; " + test.policy}
			s.pages = map[string]string{"/": s.page("", test.script+`<joint-finder unit="mm"></joint-finder>`)}
			b := s.open(t, "/")
			b.until("the form", opened)
			b.known(finder)
			b.until("the verdict", finder+`.querySelector(".verdict--identified")`)
			b.calm(name)
		})
	}
}

// For everyone: axe in every medium, before and after the answer, in a shop and in the page
// for a frame; the keyboard alone; a phone 320 px wide; and touch targets.
func TestEmbedForEveryone(t *testing.T) {
	s := newShop(t)
	s.pages["/"] = s.page(`<script src="heard.js"></script><meta name="color-scheme" content="light dark">`, examples(t, "html")[0])
	b := s.open(t, "/")
	b.until("the form", opened)
	axe := func(when string) {
		t.Helper()
		for _, m := range mediums {
			b.lookThrough(m)
			for _, v := range b.axe(m.rules) {
				t.Errorf("%s, %s: %s (%s) %s\n\t%s", when, m.name, v.ID, v.Impact, v.Help, strings.Join(v.Nodes, "\n\t"))
			}
		}
		b.lookThrough(mediums[0])
	}
	axe("empty")
	// Tab to the holds, choose by an arrow, Tab to the readings.
	at := func() string {
		return see[string](b, `(e => e ? [e.localName, e.value ?? "", e.closest("[data-quantity]")?.dataset.quantity ?? ""].join(" ") : "")(`+finder+`.activeElement)`)
	}
	press := func(keys ...string) {
		for _, key := range keys {
			b.do("key", chromedp.KeyEvent(key))
		}
	}
	press(kb.Tab)
	if got := at(); !strings.HasPrefix(got, "input outside-clip") {
		t.Fatalf("Tab leads to %q", got)
	}
	press(kb.ArrowDown, kb.ArrowUp, kb.Tab)
	if got := at(); got != "input  cap" {
		t.Fatalf("the next Tab leads to %q", got)
	}
	press("26.95", kb.Enter, "26.97", kb.Tab) // a caliper may end a reading by Tab
	for n := 0; at() != "input  across" && n < 9; n++ {
		press(kb.Tab)
	}
	press("81.75", kb.Enter, "81.78", kb.Enter, "81.76", kb.Enter)
	b.until("the verdict", finder+`.querySelector("[aria-live=polite] .verdict--identified")`)
	axe("answered")
	press(kb.Tab)
	if got := see[float64](b, `Math.min(...[...`+finder+`.querySelectorAll("button, select, a, input[type=text], .hold")].filter(e => e.checkVisibility() && e.getClientRects().length).map(e => e.getBoundingClientRect().height))`); got < 44 {
		t.Errorf("a target is %.0f px high", got)
	}
	if _, err := chromedp.Call(b.ctx, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{Width: 320, Height: 640, DeviceScaleFactor: 1}); err != nil {
		t.Fatal(err)
	}
	if wide := see[string](b, `(document.documentElement.scrollWidth > 320 ? "page " + document.documentElement.scrollWidth : "") + [...`+finder+`.querySelectorAll("*")].filter(e => e.getBoundingClientRect().right > 320 && !e.closest(".scroll")).map(e => e.outerHTML.slice(0, 80)).join()`); wide != "" {
		t.Errorf("wider than 320 px: %s", wide)
	}
	b.calm("for everyone")
	b.open("/embed/frame/#unit=mm&hold=inside-clip")
	b.until("the form", opened)
	axe("the frame")
	b.calm("the frame")
}

// The frame: it works in a page whose policy allows nothing but frames of the site, tells
// its height to anyone and the answer to the origin its address names and nobody else.
// No other page may be framed.
func TestEmbedFrame(t *testing.T) {
	s := newShop(t)
	s.policy = "default-src 'none'; script-src 'self'; frame-src " + origin
	s.pages["/listen.js"] = `window.told = []; addEventListener("message", (event) => { if (event.origin === "` + origin + `") told.push(event.data); });`
	server := httptest.NewServer(s)
	t.Cleanup(server.Close)
	line := strings.ReplaceAll(examples(t, "html")[3], "hold=strap", "hold=outside-clip")
	for path, to := range map[string]string{"/": server.URL, "/nobody": "", "/another": "https://another.example", "/star": "*", "/bent": server.URL + "/path"} {
		s.pages[path] = s.page(`<script src="listen.js"></script>`, strings.ReplaceAll(line, "https://shop.example", to))
	}
	s.pages["/framing"] = s.page("", `<iframe src="`+origin+base+`identify/"></iframe>`)
	for path, hears := range map[string]bool{"/": true, "/nobody": false, "/another": false, "/star": false, "/bent": false} {
		b := openTab(t)
		b.own = server.URL
		b.do("open", chromedp.Navigate(server.URL+path))
		b.until("the height", `told.some(m => m.type === "joint-finder-height" && m.height > 200)`)
		b.until("the form", `told.at(-1).height > 700`)
		b.frameTypes()
		if hears {
			b.until("the answer", `told.some(m => m.type === "joint-answer" && m.detail.answer?.verdict === "identified")`)
		} else {
			// The frame has grown by the verdict, and the answer would have been told.
			b.until("a verdict", `new Set(told.map(m => m.height)).size > 3`)
			time.Sleep(time.Second)
			if got := see[int](b, `told.filter(m => m.type === "joint-answer").length`); got > 0 {
				t.Errorf("%s: an answer was told to who was not named", path)
			}
		}
		// A frame that is talked to does nothing.
		see[bool](b, `document.querySelector("iframe").contentWindow.postMessage({type: "joint-answer", hold: "strap", unit: "<b>"}, "*"), true`)
	}
	b := openTab(t)
	b.own = server.URL
	b.do("open", chromedp.Navigate(server.URL+"/framing"))
	b.until("a refusal", `document.readyState === "complete"`)
	b.until("a refusal", `document.querySelector("iframe").contentDocument === null`)
	b.mu.Lock()
	defer b.mu.Unlock()
	if !slices.ContainsFunc(b.troubles, func(s string) bool {
		return strings.Contains(s, "frame-ancestors") || strings.Contains(s, "BLOCKED_BY_RESPONSE")
	}) {
		t.Errorf("the identify page lets itself be framed: %v", b.troubles)
	}
}

// frameTypes takes readings in the one frame of the page by keys, which go from field to
// field without asking where they are.
func (b *tab) frameTypes() {
	b.t.Helper()
	for _, key := range []string{kb.Tab, kb.Tab, "26.95", kb.Enter, "26.97", kb.Enter, kb.Tab, kb.Tab, "81.75", kb.Enter, "81.78", kb.Enter, "81.76", kb.Enter} {
		b.do("key", chromedp.KeyEvent(key))
	}
}
