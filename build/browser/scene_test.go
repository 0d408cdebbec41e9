//go:build browser

package browser

import (
	"maps"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// scene is a page as a reader meets it: just opened, or in a state that a script brought
// it into.
type scene struct {
	name, address string
	ready         string       // what to wait for; nothing for a page without a script of its own
	then          func(b *tab) // what the reader does then; nil for nothing
}

// scripted are the pages that a script makes ready, and how one sees that it has.
var scripted = map[string]string{
	"/identify/": ready, "/send/": sendReady, "/measure/card/": cardReady, "/order/": orderReady, "/shaft/": charted, "/contribute/correct/": correctReady, "/search/": `document.querySelector("[data-ready]")`,
	"/driveline/angles/": calculationReady, "/driveline/speed/": calculationReady, "/driveline/torque/": calculationReady, "/driveline/life/": calculationReady,
	"/driveline/ends/": calculationReady, "/driveline/length/": calculationReady, "/driveline/clips/": calculationReady, "/driveline/fasteners/": calculationReady,
	"/driveline/balance/": calculationReady,
}

// scenes are all kinds of pages and the states of those that change.
func scenes(t testing.TB) []scene {
	t.Helper()
	var list []scene
	for _, address := range kinds(t) {
		ready := scripted[address]
		if strings.HasPrefix(address, "/identify/part/") && address != "/identify/part/" {
			ready = partReady
		}
		list = append(list, scene{name: strings.ReplaceAll("page"+strings.TrimSuffix(address, "/"), "/", " "), address: address, ready: ready})
	}
	for _, name := range slices.Sorted(maps.Keys(verdicts)) {
		list = append(list, scene{name: "verdict: " + name, address: "/identify/#" + verdicts[name], ready: ready + ` && ` + drawn})
	}
	for _, name := range slices.Sorted(maps.Keys(partVerdicts)) {
		ready := partReady + ` && !document.querySelector("[data-pin]").hidden`
		if strings.Contains(partVerdicts[name], "chart=") {
			ready += ` && document.querySelector("[data-since] a")`
		}
		list = append(list, scene{name: name, address: partVerdicts[name], ready: ready})
	}
	list = append(list,
		scene{name: "figures that cannot be used", address: "/driveline/speed/#outside=76.2mm&wall=2.1mm&length=30m&speed=1.2.3&x=1", ready: calculationReady},
		scene{name: "a complaint", address: "/identify/", ready: ready, then: func(b *tab) {
			b.choose("hold", "outside-clip")
			b.do("type nonsense", chromedp.SendKeys(chromedp.CSS(capField), "1.0.6"+kb.Enter))
		}},
		scene{name: "the search", address: "/", then: func(b *tab) {
			b.press("/")
			b.until("the dialog", searchOpen)
			b.press("snap ring")
			b.until("hits", firstHit)
		}},
	)
	for name, typed := range corrections {
		list = append(list, scene{name: "a correction: " + name, address: "/404.html", then: func(b *tab) {
			b.correct(typed[0], typed[1:]...)
			b.makeLine()
		}})
	}
	list = append(list,
		scene{name: "a slip of two joints", address: "/order/#joint=2&place=gearbox+end&with=clips.4,straps&" + reading + "&joint=1&row=7260-to-1310", ready: orderReady},
		scene{name: "a slip that asks where the joint belongs", address: "/order/#row=1310", ready: orderReady, then: func(b *tab) {
			b.open("/404.html")
			b.open("/order/#" + reading)
			b.until("the question", orderReady+` && !document.querySelector("[data-begun]").hidden`)
			b.write("[data-order] [data-add]", "1234x"+kb.Enter)
		}},
		scene{name: "a shaft record", address: "/shaft/", ready: charted, then: func(b *tab) {
			see[bool](b, `localStorage.setItem("capspan-shaft-broken1", "{\"kind\": \"sha"), true`)
			b.reads(strings.Replace(demoRecord, `"640 mm"`, "640", 1)) // a fault to complain of
			b.until("the record", sheetText+`.includes("Guard loop")`)
		}},
	)
	for _, step := range []string{"asks you", "measure with", "joint held", "One cap", "distance across", "Send it back"} {
		list = append(list, scene{name: "the card: " + step, address: "/send/", ready: sendReady, then: func(b *tab) { b.cardTo(step) }})
	}
	return list
}

// corrections are what a form is filled with: the value, then fields and what they get.
var corrections = map[string][]string{
	"measured": {"table=joints-inch&row=1310&column=cap", `[data-way][value="measured"]`, "", `[data-field="readings"]`, "1.061\n26.98 mm"},
	"a new document": {"table=joints-inch&row=1310&column=across", `[data-field="is"]`, "3.22", `[data-field="source"]`, "+",
		`[data-field="title"]`, "A list", `[data-field="publisher"]`, "Three Gauge Railway"},
	"all wrong": {"table=joints-inch&row=1310&column=across", `[data-field="is"]`, "322", `[data-field="source"]`, "+", `[data-field="date"]`, "May"},
	"a hold":    {"table=joints-inch&row=1310&column=hold", `[data-way][value="seen"]`, "", `[data-field="hold"]`, "strap"},
}

// cardTo opens the card and goes on until its heading holds the words.
func (b *tab) cardTo(step string) {
	b.t.Helper()
	b.ask(`{ends: [{take: ["cap", "across"]}], unit: "mm", from: "Three Gauge Railway", question: "Which one?"}`)
	fill := `{"One cap": "27.00", "The distance across": "81.8"}[document.querySelector("[data-title]").textContent] ?? ""`
	onward := `(f => {
		const hold = document.querySelector('[data-step="hold"]:not([hidden]) [value="outside-clip"]');
		if (hold && !hold.checked) hold.click();
		const field = document.querySelector("[data-card] [data-reading]");
		if (field.getClientRects().length > 0) field.value = ` + fill + `;
		document.querySelector("[data-next]").click();
	})()`
	for range 12 {
		if strings.Contains(see[string](b, stepTitle), step) {
			return
		}
		b.do("next", chromedp.Evaluate[chromedp.Void](onward))
	}
	b.t.Fatalf("the card has no step %q; it stands at %q", step, see[string](b, stepTitle))
}

// show brings the tab to the scene.
func (b *tab) show(s scene) {
	b.t.Helper()
	b.open("/404.html") // else a changed fragment alone loads nothing
	b.open(s.address)
	if s.ready != "" {
		b.until(s.name, s.ready)
	}
	if s.then != nil {
		s.then(b)
	}
}
