//go:build browser

package browser

import (
	"fmt"
	"math/rand/v2"
	"net/url"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/storage"
	"github.com/chromedp/chromedp"
)

// The pages that read their address, with what tells that they are done with it.
var readers = []struct {
	address, done string
	sealed        bool // some of the addresses carry the seal that a link of ours has
}{
	{"/identify/", ready, true},
	{"/identify/part/flanges-male/", partReady, false},
	{"/measure/card/", cardReady, true},
	{"/send/", sendReady, false},
	{"/contribute/correct/", correctReady, false},
	{"/order/", orderReady, true},
	{"/shaft/", shaftReady, false},
	{"/driveline/angles/", calculationReady, false},
	{"/driveline/ends/", calculationReady, false},
	{"/driveline/fasteners/", calculationReady, false},
	{"/search/", `document.querySelector("[data-search-page]")?.parentElement.dataset.ready !== undefined`, false},
}

// What an address can be made of: the keys the pages know, what may stand behind them,
// and what has broken readers of addresses before.
var (
	hostileKeys = []string{"hold", "faces", "cap", "across", "tool", "condition", "chart", "hold2", "faces2", "cap2", "across2", "take", "say", "name", "joint", "row", "place", "with", "grease", "from", "record", "ask", "q",
		"units", "check", "gearbox", "shaft", "speed", "joints", "cap1", "across1", "hold1", "thread", "grade", "series", "given", "yoke", "__proto__", "constructor", "toString", "hasOwnProperty", "", "%00", "id", "holes", "circle", "pilot", "edges", "hole-diameter", "table", "column", "cap[]", "Cap", "cap%20"}
	hostileValues = []string{"outside-clip", "inside-clip", "strap", "plate", "wing", "over-caps", "groove-inner", "1.062in", "3.219in", "27mm", "1 1/16", "0x10in", "1e999mm", "-1in", "NaN",
		strings.Repeat("9", 400) + "in", "0." + strings.Repeat("0", 400) + "1mm", "1/0in", "0/0", "Infinity", "2026-11-25-0000000", "digital-caliper", "used", "__proto__", "constructor",
		"<script>window.bent=1</script>", "<img src=x onerror=window.bent=1>", "\"><svg onload=window.bent=1>", "' autofocus onfocus=window.bent=1 x='", "javascript:window.bent=1", "data:text/html,<script>window.bent=1</script>",
		"</script><script>window.bent=1</script>", "{{constructor.constructor('window.bent=1')()}}", "${window.bent=1}", "&lt;img src=x onerror=window.bent=1&gt;", "]]><x onclick=window.bent=1>",
		"\u202eright to left\u202c", "\u200b\u200b", "ﬃ", "ſ", "İ", "\u0000", "\r\n\r\n", "😀" + "\U000E0041", strings.Repeat("a\u0301", 300), strings.Repeat("W", 600), strings.Repeat("-", 600), "٣٫٢١٩", "１．０６２in", "1,062in",
		"%", "%zz", "%E0%A4%A", "%c0%ae", "%00", "%ff%fe", "+", "&", "=", "#", "?", ";", "//other.example/", "../../", "\\\\other.example\\x", ","}
)

// hostileAddress is what stands behind the path: sometimes a query, always a fragment.
// Half of what it holds is escaped, the other half stands as it is.
func hostileAddress(random *rand.Rand) (query, fragment string) {
	pairs := func(most int) string {
		var parts []string
		for range 1 + random.IntN(most) {
			value := ""
			for range 1 + random.IntN(3) {
				value += hostileValues[random.IntN(len(hostileValues))]
			}
			if random.IntN(2) == 0 {
				value = url.QueryEscape(value)
			}
			parts = append(parts, hostileKeys[random.IntN(len(hostileKeys))]+"="+value)
		}
		return strings.Join(parts, []string{"&", "&", "&", ";", "&&"}[random.IntN(5)])
	}
	if random.IntN(3) == 0 {
		query = pairs(3)
	}
	return query, pairs(8)
}

// hostileFixed are the addresses that stand for what a fuzz may miss.
var hostileFixed = []string{
	"hold=outside-clip&faces=over-caps&cap=" + strings.Repeat("1.062in,", 10_000) + "&across=3.219in&tool=digital-caliper",
	"hold=outside-clip&faces=over-caps&cap=1.062in&across=" + manyReadings(10_000) + "&tool=digital-caliper",
	"take=cap,across&hold=outside-clip&say=" + strings.Repeat("W", 5000) + "&name=" + strings.Repeat("%3Cb%3E", 2000),
	"q=" + strings.Repeat("1.062x3.219+", 10_000),
	"q=" + strings.Repeat("univeral", 10_000),
	"q=%3Cimg+src%3Dx+onerror%3Dwindow.bent%3D1%3E",
	strings.Repeat("hold=strap&", 20_000),
	strings.Repeat("&", 200_000),
	strings.Repeat("%", 100_000),
	strings.Repeat("cap2=1in&across2=", 10_000),
	"",
}

// manyReadings are a number of lengths that all differ.
func manyReadings(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "%d.%04din,", 3, i)
	}
	return b.String()
}

// faults are what the page shows of an address that got out of its place.
const faults = `(() => {
	const wrong = [];
	if (window.bent !== undefined) wrong.push("a script ran");
	for (const e of document.querySelectorAll("script, style, img, iframe, object, embed, base, link, svg, a[href], form"))
		if (e.src === "x" || /bent|other\.example/.test(e.getAttribute("src") ?? "") || /^(javascript|data|vbscript):/i.test(e.href?.trim?.() ?? "") || e.hostname === "other.example"
			|| (e.localName === "script" && !e.src && e.type !== "application/ld+json") || ["iframe", "object", "embed", "base", "style"].includes(e.localName)) wrong.push(e.outerHTML.slice(0, 200));
	for (const e of document.querySelectorAll("*"))
		if ([...e.attributes].some(a => a.name.startsWith("on"))) wrong.push("a handler: " + e.outerHTML.slice(0, 200));
	const root = document.documentElement;
	if (root.scrollWidth > 360) {
		const range = document.createRange(), texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
		let wide = [...document.querySelectorAll("body *")].find(e => e.getBoundingClientRect().right > 360.5 && !e.closest(".scroll, svg"));
		for (let text = texts.nextNode(); text; text = texts.nextNode()) {
			range.selectNodeContents(text);
			if (range.getBoundingClientRect().right > 360.5 && !text.parentElement.closest(".scroll, svg, .skip")) wide = text.parentElement;
		}
		wrong.push("sideways: " + root.scrollWidth + " px by " + (wide?.outerHTML.slice(0, 300) ?? "?"));
	}
	for (const e of document.querySelectorAll("h1, main, header nav"))
		if (e.getClientRects().length === 0) wrong.push("gone: " + e.localName);
	return wrong.join("; ");
})()`

// settle is met when the page has taken its address in and drawn what came of it.
const settled = `new Promise(done => setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(() => done(true)))))`

// freeze is the longest a reader may wait. A machine that does much else is slow as well:
// only what is slow in each of three tries is the page's own slowness.
const freeze = 2 * time.Second

// An address is anybody's to write. Whatever stands in it, on each page that reads its
// own: nothing runs, nothing becomes markup or a link out, nothing is thrown, the page
// fits a phone 360 px wide, and it is there within two seconds. By a fresh visit and by
// a change of the fragment in an open page.
func TestHostileAddressOfEveryReader(t *testing.T) {
	for n, page := range readers {
		t.Run(strings.Trim(page.address, "/"), func(t *testing.T) {
			t.Parallel()
			random := rand.New(rand.NewPCG(5, uint64(n))) // the same addresses every time
			b := openTab(t)
			b.phone()
			visit := func(query, fragment string, fresh bool) time.Duration {
				start := time.Now()
				if fresh {
					b.open(fmt.Sprintf("%s?n=%d&%s#%s", page.address, random.IntN(1<<30), url.PathEscape(query), fragment))
				} else {
					see[bool](b, "location.hash = "+quote(fragment)+", true")
				}
				b.until("the page", page.done)
				b.promised("the page to settle", settled)
				return time.Since(start)
			}
			longest := time.Duration(0)
			try := func(what, query, fragment string, fresh bool) {
				t.Helper()
				took := visit(query, fragment, fresh)
				for again := 0; took > freeze && again < 2; again++ {
					took = min(took, visit(query, fragment, true))
				}
				if took > freeze {
					t.Errorf("%s: %v until the page was there: %.300s", what, took, fragment)
				}
				longest = max(longest, took)
				if wrong := see[string](b, faults); wrong != "" {
					t.Errorf("%s: %s\n?%.300s#%.300s", what, wrong, query, fragment)
				}
				b.calm(fmt.Sprintf("%s %.200s", what, fragment))
			}
			seal := func(fragment string) string {
				return see[string](b, "CapspanCore.seal("+quote(strings.Map(func(r rune) rune {
					if r <= ' ' {
						return -1
					}
					return r
				}, fragment))+")")
			}
			for i, fragment := range hostileFixed {
				try(fmt.Sprintf("fixed %d", i), "", fragment, true)
				if page.sealed {
					try(fmt.Sprintf("fixed %d, sealed", i), "", seal(fragment), true)
				}
			}
			for i := range 40 {
				query, fragment := hostileAddress(random)
				if page.sealed && i%2 == 0 {
					fragment = seal(fragment)
				}
				try(fmt.Sprintf("random %d", i), query, fragment, i%3 != 0)
			}
			t.Logf("%s: the slowest took %v", page.address, longest)
		})
	}
}

// No page sets a cookie, in the answer or by script, on a visit to every kind of page
// and with a search.
func TestNoCookie(t *testing.T) {
	b := openTab(t)
	for _, address := range kinds(t) {
		b.open(address)
		if got := see[string](b, "document.cookie"); got != "" {
			t.Errorf("%s: the page has the cookie %q", address, got)
		}
	}
	kept, err := chromedp.Call(b.ctx, storage.GetCookies, storage.GetCookiesParams{})
	if err != nil {
		t.Fatal(err)
	}
	if len(kept.Cookies) > 0 {
		t.Errorf("the browser keeps %d cookies, the first %q of %q", len(kept.Cookies), kept.Cookies[0].Name, kept.Cookies[0].Domain)
	}
}
