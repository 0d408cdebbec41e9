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
	finder string // the origin of the finder, where it is not the site's
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
	b.own = server.URL + " " + s.finder
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
