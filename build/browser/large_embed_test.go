//go:build browser

package browser

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"capspan/static/matcher"
)

// largeShop is a stranger's page with two finders of a site whose chart is in pieces, by the
// policy that the guide names.
func largeShop(t testing.TB, h *host) *shop {
	t.Helper()
	s := &shop{policy: strings.ReplaceAll(shopPolicy(t), origin, h.origin()), finder: h.origin()}
	s.pages = map[string]string{"/heard.js": heard, "/": s.page(`<script src="heard.js"></script>`,
		strings.ReplaceAll(examples(t, "html")[0], origin, h.origin())+`<joint-finder id="other" unit="mm"></joint-finder>`)}
	return s
}

// otherFinder is the second finder of that page.
const otherFinder = `document.querySelector("#other").shadowRoot`

// headIn is what a finder says of an answer or of why there is none.
func headIn(root string) string {
	return root + `.querySelector("[data-verdict-head]").innerText`
}

// judgedIn tells whether a finder has a verdict.
func judgedIn(root string) string {
	return `/verdict--/.test(` + root + `.querySelector("[data-verdict-head]").innerHTML)`
}

// measure takes the readings of a question into a finder, as a person types them.
func (b *tab) measure(root string, q matcher.Query) {
	b.t.Helper()
	see[bool](b, root+`.querySelector("[data-hold][value=`+string(q.Ends[0].Hold)+`]").click(), true`)
	b.take(root, "cap", q.Ends[0].Cap[0])
	b.take(root, "across", q.Ends[0].Across[0])
}

// The finder looks into a chart in pieces from somebody else's page, by the guide's policy: it
// says what the core says that has the whole chart, leads to pages that are there, and
// leaves nothing in the page or on the device.
func TestEmbedLarge(t *testing.T) {
	l := mustLarge(t)
	h := newFaulty(t, l.site, "assets/chart/")
	b := largeShop(t, h.host).open(t, "/")
	smallest, largest := l.extremes(t)
	b.until("the forms", opened+` && `+otherFinder+`.querySelector("[data-form]")`)
	for root, q := range map[string]matcher.Query{finder: smallest, otherFinder: largest} {
		b.measure(root, q)
		b.until("the verdict", judgedIn(root)+` && heard.at(-1)?.whole && heard.at(-1).answer !== null`)
		told := see[struct{ Address, Verdict, Head, Shown string }](b, `(({address, answer}) => ({Address: address, Verdict: answer.verdict, Head: answer.says.head,
			Shown: `+root+`.querySelector(".verdict__head").textContent}))(heard.at(-1))`)
		at, err := url.Parse(told.Address)
		if err != nil {
			t.Fatal(err)
		}
		if want := l.says(t, at.Fragment); told.Verdict != want.Verdict || told.Head != want.Head || told.Shown != want.Head {
			t.Errorf("%s: told %+v, the core says %+v", at.Fragment, told, want)
		}
		links := see[[]string](b, `[...`+root+`.querySelectorAll(".size__names a")].map((a) => a.href)`)
		if len(links) == 0 {
			t.Errorf("%s: the verdict leads nowhere", at.Fragment)
		}
		for _, href := range links {
			response, err := http.Get(href)
			if err != nil {
				t.Fatal(err)
			}
			response.Body.Close()
			if response.StatusCode != http.StatusOK || !strings.HasPrefix(href, h.origin()+base+"size/") {
				t.Errorf("%s leads to %s: %s", at.Fragment, href, response.Status)
			}
		}
	}
	if left := see[string](b, `[document.cookie, localStorage.length + sessionStorage.length, Object.keys(window).filter((k) => /capspan/i.test(k)).join(" ")].join(" ")`); strings.TrimSpace(left) != "0" {
		t.Errorf("left in the page: %q", left)
	}
	b.promised("nothing to be kept on the device", `caches.keys().then((keys) => keys.length === 0)`)
	if h.hears("/assets/chart.") {
		t.Error("the chart was fetched whole")
	}
	b.calm("the shop")
}

// While pieces are on their way, or do not come, a finder says so and tells the page that
// there is no answer; the other finder of the page keeps its own. A second try brings it.
func TestEmbedLargeFaults(t *testing.T) {
	l := mustLarge(t)
	smallest, largest := l.extremes(t)
	for _, name := range []string{"lost", "no answer", "tampered"} {
		t.Run(name, func(t *testing.T) {
			fault := pieceFaults[name]
			h := newFaulty(t, l.site, "assets/chart/")
			b := largeShop(t, h.host).open(t, "/")
			b.until("the forms", opened+` && `+otherFinder+`.querySelector("[data-form]")`)
			b.measure(finder, smallest)
			b.until("the verdict", judgedIn(finder)+` && heard.at(-1)?.whole && heard.at(-1).answer !== null`)
			before := see[string](b, headIn(finder))
			h.does(fault.does)
			b.measure(otherFinder, largest)
			b.until("the message", headIn(otherFinder)+`.includes(`+quote(fault.says)+`)`)
			if see[bool](b, judgedIn(otherFinder)+` || heard.at(-1).answer !== null`) {
				t.Error("there is an answer without the piece")
			}
			if see[string](b, headIn(finder)) != before {
				t.Error("the other finder has lost its verdict")
			}
			h.does(nil)
			see[bool](b, otherFinder+`.querySelector("[data-pieces-go]:last-of-type").click(), true`)
			b.until("the verdict", judgedIn(otherFinder)+` && heard.at(-1).whole && heard.at(-1).answer !== null`)
			at, err := url.Parse(see[string](b, `heard.at(-1).address`))
			if err != nil {
				t.Fatal(err)
			}
			if got, want := see[string](b, otherFinder+`.querySelector(".verdict__head").textContent`), l.says(t, at.Fragment).Head; got != want {
				t.Errorf("mended: %q, the core says %q", got, want)
			}
		})
	}
}

// Two finders that wait at once both get their answer.
func TestEmbedLargeBothWait(t *testing.T) {
	l := mustLarge(t)
	smallest, largest := l.extremes(t)
	h := newFaulty(t, l.site, "assets/chart/")
	b := largeShop(t, h.host).open(t, "/")
	b.until("the forms", opened+` && `+otherFinder+`.querySelector("[data-form]")`)
	let := make(chan struct{})
	h.does(func(w http.ResponseWriter, _ *http.Request, content []byte) {
		<-let
		send(w, content)
	})
	b.measure(finder, smallest)
	b.measure(otherFinder, largest)
	for _, root := range []string{finder, otherFinder} {
		b.until("the word that it waits", headIn(root)+`.includes("until all are here")`)
	}
	if see[bool](b, `heard.some((detail) => detail.answer !== null)`) {
		t.Error("an answer without pieces")
	}
	close(let)
	for _, root := range []string{finder, otherFinder} {
		b.until("the verdict", judgedIn(root))
	}
}
