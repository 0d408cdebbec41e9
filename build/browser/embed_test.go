//go:build browser

package browser

import (
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
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

// The finder in somebody else's page. The shop here is invented; its page is the one that
// content/about/embed.md tells its readers to write.

// examples are the fenced blocks of that page in a language, in their order, with the
// address of the site under test in them.
func examples(t testing.TB, language string) []string {
	t.Helper()
	text, err := os.ReadFile("../../content/about/embed.md")
	if err != nil {
		t.Fatal(err)
	}
	var list []string
	for _, block := range regexp.MustCompile("(?s)```"+language+"\n(.*?)```").FindAllStringSubmatch(string(text), -1) {
		list = append(list, strings.ReplaceAll(block[1], "https://joints.example.org", origin+strings.TrimSuffix(base, "/")))
	}
	return list
}

// shop serves the pages of a stranger, each under its name, by a policy that lets nothing
// be but what the guide names, and its own scripts.
type shop struct {
	pages  map[string]string
	policy string
}

// shopPolicy is what the guide says, for a page that allows nothing else.
func shopPolicy(t testing.TB) string {
	t.Helper()
	for _, block := range examples(t, "text") {
		if policy, found := strings.CutPrefix(strings.TrimSpace(block), "Content-Security-Policy: "); found {
			// A policy names origins and folders; the guide's has an origin.
			policy = strings.ReplaceAll(policy, strings.TrimSuffix(base, "/"), "")
			return "default-src 'none'; style-src 'none'; form-action 'none'; base-uri 'none'; " + strings.Replace(policy, "script-src", "script-src 'self'", 1)
		}
	}
	t.Fatal("the guide names no policy")
	return ""
}

func (s *shop) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	page, found := s.pages[r.URL.Path]
	if !found {
		http.NotFound(w, r)
		return
	}
	kind := "text/html; charset=utf-8"
	if strings.HasSuffix(r.URL.Path, ".js") {
		kind = "text/javascript; charset=utf-8"
	}
	if strings.HasSuffix(r.URL.Path, ".css") {
		kind = "text/css; charset=utf-8"
	}
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Security-Policy", s.policy)
	fmt.Fprint(w, page)
}

// page is a whole page round some markup.
func (s *shop) page(head, body string) string {
	return `<!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>An invented shop</title>` +
		head + `</head><body><main><h1>Joints</h1>` + body + `</main></body></html>`
}

// open puts the shop up and opens its front page in a tab that may ask both origins.
func (s *shop) open(t testing.TB, path string) *tab {
	t.Helper()
	server := httptest.NewServer(s)
	t.Cleanup(server.Close)
	b := openTab(t)
	b.own = server.URL
	b.do("open the shop", chromedp.Navigate(server.URL+path))
	return b
}

// heard is the script of a shop that notes every answer.
const heard = `window.heard = []; addEventListener("joint-answer", (event) => heard.push(event.detail));`

// newShop has a front page with the finder twice, as the guide's example has it, and a
// form that takes the answer.
func newShop(t testing.TB) *shop {
	t.Helper()
	s := &shop{policy: shopPolicy(t)}
	markup := examples(t, "html")
	code := slices.IndexFunc(examples(t, "text"), func(block string) bool { return strings.HasPrefix(block, "addEventListener") })
	s.pages = map[string]string{
		"/":        s.page(`<script src="heard.js"></script>`, markup[0]+markup[1]+`<joint-finder id="other" hold="strap"></joint-finder>`),
		"/shop.js": examples(t, "text")[code], "/heard.js": heard,
	}
	return s
}

// Where things are in the shadow of an element.
const (
	finder = `document.querySelector("joint-finder").shadowRoot`
	opened = finder + `.querySelector("[data-form]")`
	said   = finder + `.querySelector(".verdict--identified, .verdict--possible, .verdict--between, .verdict--not-in-chart, .verdict--measure-again")`
)

// take puts a reading into a field of a finder by keys, as a person does.
func (b *tab) take(root, quantity, reading string) {
	b.t.Helper()
	see[bool](b, root+`.querySelector("[data-quantity=`+quantity+`] [data-reading]").focus(), true`)
	b.do(quantity, chromedp.KeyEvent(reading+kb.Enter))
}

// known takes readings of a 1310 in millimetres.
func (b *tab) known(root string) {
	b.t.Helper()
	see[bool](b, root+`.querySelector("[data-hold][value=outside-clip]").click(), true`)
	for _, reading := range []string{"26.95", "26.97"} {
		b.take(root, "cap", reading)
	}
	for _, reading := range []string{"81.75", "81.78", "81.76"} {
		b.take(root, "across", reading)
	}
}

// The guide's page works on another origin, by the guide's policy and no more: the answer
// is shown and told, is the one that the site's own page gives to the same address, and
// fills the shop's form.
func TestEmbedInAShop(t *testing.T) {
	b := newShop(t).open(t, "/")
	b.until("the form", opened)
	b.known(finder)
	b.until("the verdict", finder+`.querySelector(".verdict--identified")`)
	b.until("the shop's form", `document.querySelector("#order").elements.joint.value === "1310" && document.querySelector("#order").elements.readings.value.includes("/identify/#hold=outside-clip") && !document.querySelector("#order button").disabled`)
	last := see[struct {
		Verdict, Address string
		Whole, Same      bool
		Query            any
	}](b, `(({answer, query, address, whole}) => ({Verdict: answer.verdict, Address: address, Whole: whole, Query: query,
		Same: answer.says.head === `+finder+`.querySelector(".verdict__head").textContent}))(heard.at(-1))`)
	if last.Verdict != "identified" || !last.Whole || !last.Same {
		t.Errorf("told: %+v", last)
	}
	for _, part := range []string{`".caution"`, `"[data-full][href*='/identify/#']"`, `".size__names a[target=_top][href$='/joint/1310/']"`} {
		if !see[bool](b, finder+`.querySelector(`+part+`) !== null`) {
			t.Errorf("the verdict has no %s", part)
		}
	}
	if !see[bool](b, finder+`.querySelector("[data-version]").textContent.includes(`+quote(site.Chart.Name())+`)`) {
		t.Error("the chart is not named")
	}
	// What the finder leaves in the page: nothing.
	if left := see[string](b, `[...document.querySelectorAll("head script")].map(s => s.src).concat(Object.keys(window).filter(k => /capspan/i.test(k)), [typeof CapspanCore, typeof CapspanForm, document.cookie, localStorage.length + sessionStorage.length].map(String)).join(" ")`); left != see[string](b, `location.origin`)+"/heard.js undefined undefined  0" {
		t.Errorf("left in the page: %s", left)
	}
	// The other element of the page is asked nothing, and began with its own hold.
	if !see[bool](b, `(r => r.querySelector("[data-hold][value=strap]").checked && r.querySelector("[data-readings]").children.length === 0)(document.querySelector("#other").shadowRoot)`) {
		t.Error("two finders in one page are not two")
	}
	// The shop is told when there is no answer any more.
	see[bool](b, finder+`.querySelector("[data-over]").click(), true`)
	b.until("the form is empty again", `heard.at(-1).answer === null && document.querySelector("#order button").disabled`)
	b.calm("the shop")

	b.do("the full page", chromedp.Navigate(last.Address))
	b.until("the full page", ready)
	b.until("its verdict", `document.querySelector("[data-verdict-head] .verdict--identified")`)
}

// Attributes and properties, before and after the element is there; none of them takes a
// reading away.
func TestEmbedAttributes(t *testing.T) {
	s := newShop(t)
	script := strings.SplitN(examples(t, "html")[0], "\n", 2)[0]
	s.pages["/early.js"] = heard + `document.querySelector("joint-finder").unit = "mm";` // nobody has defined the element yet
	s.pages["/early"] = s.page("", `<joint-finder language="xx" hold="plate"></joint-finder><script src="early.js"></script>`+strings.Replace(script, "async", "defer", 1)+script+script)
	b := s.open(t, "/early")
	b.until("the form", opened)
	if got := see[string](b, `(r => [r.querySelector("[data-setting=unit]").value, r.querySelector("[data-hold]:checked").value, r.querySelector("[data-finder]").lang].join(" "))(`+finder+`)`); got != "mm plate en" {
		t.Errorf("it begins with %q", got)
	}
	b.mu.Lock()
	warned := slices.ContainsFunc(b.troubles, func(s string) bool {
		return strings.Contains(s, `console warning`) && strings.Contains(s, "no language") && strings.Contains(s, "xx")
	})
	b.troubles = nil
	b.mu.Unlock()
	if !warned {
		t.Error("nothing is said of a language that is not there")
	}
	b.take(finder, "cap", "26.95")
	see[bool](b, `(e => { e.unit = "in"; e.setAttribute("hold", "outside-clip"); return true })(document.querySelector("joint-finder"))`)
	b.take(finder, "cap", "1.061")
	got := see[string](b, `(q => JSON.stringify([q.ends[0].hold, q.ends[0].cap, q.unit]))(heard.at(-1).query)`)
	if got != `["outside-clip",["26.95 mm","1.061 in"],"in"]` {
		t.Errorf("asked after the change: %s", got)
	}
	b.calm("attributes")
}

// Another language is fetched from its folder when an element asks for it, by its whole
// tag or the first part of one; each element of a page has its own, and an element may
// change it. The language here is the English one under another name.
func TestEmbedLanguages(t *testing.T) {
	plain := build.Handler(site, base)
	host := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		below, other := strings.CutPrefix(r.URL.Path, base+"eo/")
		if other {
			r.URL.Path = base + below
		}
		if below, small := strings.CutSuffix(r.URL.Path, "embed/capspan.js"); small && below == base {
			script := string(siteFile(t, "embed/capspan.js"))
			if other {
				script = strings.Replace(script, `"language":"en"`, `"language":"eo"`, 1)
			}
			w.Header().Set("Content-Type", "text/javascript; charset=utf-8")
			w.Header().Set("Access-Control-Allow-Origin", "*")
			fmt.Fprint(w, strings.Replace(script, `"languages":{}`, `"languages":{"en":"","eo":"eo/"}`, 1))
			return
		}
		plain.ServeHTTP(w, r)
	}))
	defer host.Close()
	s := newShop(t)
	s.policy = strings.ReplaceAll(s.policy, origin, host.URL)
	script := strings.ReplaceAll(strings.SplitN(examples(t, "html")[0], "\n", 2)[0], origin, host.URL)
	s.pages["/"] = s.page("", script+`<joint-finder></joint-finder><joint-finder language="EO-xx"></joint-finder>`)
	server := httptest.NewServer(s)
	defer server.Close()
	b := openTab(t)
	b.do("open", chromedp.Navigate(server.URL+"/"))
	languages := `[...document.querySelectorAll("joint-finder")].map(e => e.shadowRoot?.querySelector("[data-finder]")?.lang).join(" ")`
	b.until("both", languages+` === "en eo"`)
	see[bool](b, `document.querySelector("joint-finder").language = "eo", document.querySelectorAll("joint-finder")[1].language = "en", true`)
	b.until("both changed", languages+` === "eo en"`)
	if href := see[string](b, finder+`.querySelector("[data-full]").href`); !strings.HasPrefix(href, host.URL+base) {
		t.Errorf("the full page is at %s", href)
	}
}

// hostileSheet is the worst a page can do to what stands in it.
const hostileSheet = `* { font-size: 40px !important; color: #fdfdfd !important; background: #fff !important; letter-spacing: 1em !important; text-transform: uppercase !important;
	line-height: 0 !important; visibility: hidden; pointer-events: none; user-select: none; text-indent: -999px; direction: rtl; cursor: none; word-spacing: 9em }
html { font-size: 3px !important } joint-finder { visibility: visible }
:not(html, body, main, joint-finder, head, script) { display: none !important }
button, input, fieldset, section, div, p, a, svg, label, table { position: fixed !important; transform: scale(9) !important; opacity: 0 !important }`

// A page's styles do not reach the finder but through its own element, and the finder's
// change nothing in the page.
func TestEmbedStyles(t *testing.T) {
	s := newShop(t)
	script := examples(t, "html")[0]
	look := `(r => ["[data-finder]", ".hold", ".btn", "[data-reading]", ".verdict__head", "legend", "select"].map(q => { const e = r.querySelector(q), c = getComputedStyle(e);
		return [q, c.display, c.fontSize, c.color, c.backgroundColor, c.letterSpacing, c.textTransform, c.visibility, c.opacity, c.position, c.direction, c.writingMode, c.pointerEvents, c.textIndent, Math.round(e.getBoundingClientRect().height)].join(" ") }).join("\n"))(` + finder + `)`
	plain := `joint-finder { display: block; width: 600px }`
	s.pages["/plain.css"], s.pages["/hostile.css"] = plain, plain+hostileSheet
	s.policy = strings.Replace(s.policy, "style-src 'none'", "style-src 'self'", 1)
	around := `JSON.stringify([...document.querySelectorAll("html, body, main, h1, p")].map(e => { const c = getComputedStyle(e), r = e.getBoundingClientRect(); return [c.font, c.color, c.backgroundColor, c.display, r.x, r.y, r.width] }))`
	var looks []string
	for _, sheet := range []string{"plain", "hostile"} {
		s.pages["/"+sheet] = s.page(`<link rel="stylesheet" href="`+sheet+`.css">`, `<p>Words of the shop.</p>`+script)
		b := s.open(t, "/"+sheet)
		b.until("the form", opened)
		looks = append(looks, see[string](b, look))
		if sheet == "plain" {
			with := see[string](b, around)
			see[bool](b, `document.querySelector("joint-finder").remove(), true`)
			if without := see[string](b, around); with != without {
				t.Errorf("the page with the finder:\n%s\nwithout:\n%s", with, without)
			}
		}
	}
	if looks[0] != looks[1] {
		t.Errorf("in a plain page:\n%s\nin a hostile one:\n%s", looks[0], looks[1])
	}
}

// All that the page really asks the site for until the first verdict keeps to its budget,
// and asks for nothing before the element is near to being seen. With it comes the late
// part, once.
func TestEmbedWeight(t *testing.T) {
	s := newShop(t)
	s.pages["/far.css"] = `h1 { margin-bottom: 5000px }`
	s.policy = strings.Replace(s.policy, "style-src 'none'", "style-src 'self'", 1)
	s.pages["/"] = s.page(`<link rel="stylesheet" href="far.css">`, examples(t, "html")[0])
	b := s.open(t, "/")
	b.until("the element", `document.querySelector("joint-finder").shadowRoot && document.readyState === "complete"`)
	small := b.fromSite()
	if len(small) != 1 || !strings.HasSuffix(small[0], "/embed/capspan.js") {
		t.Errorf("before it is near: %v", small)
	}
	see[bool](b, `document.querySelector("joint-finder").scrollIntoView(), true`)
	b.until("the form", opened)
	sum := 0
	for _, address := range b.fromSite() {
		sum += packed(t, siteFile(t, strings.TrimPrefix(address, origin+base)), 11)
	}
	t.Logf("%d bytes to the first verdict", sum)
	if most := build.Budgets["embed"]; sum > most {
		t.Errorf("the finder weighs %d bytes until it can give a verdict, at most %d are meant", sum, most)
	}
	b.known(finder)
	b.until("the verdict", finder+`.querySelector(".verdict--identified")`)
	if whole := b.fromSite(); len(whole) != 4 {
		t.Errorf("asked for: %v", whole)
	}
}

// fromSite are the addresses of the site that the tab has asked for.
func (b *tab) fromSite() []string {
	b.mu.Lock()
	defer b.mu.Unlock()
	var list []string
	for _, address := range b.requests {
		if strings.HasPrefix(address, origin+"/") {
			list = append(list, address)
		}
	}
	return list
}

// Nothing that a page puts into the attributes, or into the address of a frame, becomes
// markup or runs; the finder is there all the same.
func TestEmbedHostileAttributes(t *testing.T) {
	s := newShop(t)
	s.pages["/"] = s.page(`<script src="heard.js"></script>`, examples(t, "html")[0])
	b := s.open(t, "/")
	b.until("the form", opened)
	for _, key := range []string{"unit", "hold", "language", "scheme"} {
		for _, value := range hostileValues {
			see[bool](b, `document.querySelector("joint-finder").setAttribute(`+quote(key)+`, `+quote(value)+`), true`)
		}
	}
	if asked := see[string](b, `heard.map(d => d.query.unit + " " + d.query.ends[0].hold).filter(asked => !/^(in|mm) (outside-clip|inside-clip|strap|plate|wing|unknown)$/.test(asked)).join()`); asked != "" {
		t.Errorf("asked by hostile attributes: %.300s", asked)
	}
	see[bool](b, `(e => { `+finder+`.querySelector("[data-finder]").id = "old"; e.unit = "mm"; e.hold = "unknown"; e.language = "en"; return true })(document.querySelector("joint-finder"))`)
	b.until("the form again", opened+` && !`+finder+`.querySelector("#old")`)
	b.known(finder)
	b.until("the verdict", finder+`.querySelector(".verdict--identified")`)
	if wrong := see[string](b, `window.bent !== undefined ? "a script ran" : [...`+finder+`.querySelectorAll("script, img, iframe, [onclick], [onload], a[href^=javascript]")].map(e => e.outerHTML).join()`); wrong != "" {
		t.Error(wrong)
	}
	b.mu.Lock()
	for _, trouble := range b.troubles {
		if !strings.Contains(trouble, "no language") {
			t.Error(trouble)
		}
	}
	b.mu.Unlock()
}

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
