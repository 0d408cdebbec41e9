//go:build browser

package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// listen takes down what a screen reader would say by itself: words that change inside a
// region that was there, and announced as live, before they came (ARIA 1.2, 6.5.2).
const listen = `(() => {
	const live = new Set(document.querySelectorAll("[role=status], [role=alert], [aria-live]:not([aria-live=off])"));
	window.spoken = [];
	new MutationObserver((changes) => {
		for (const change of changes) {
			const from = change.target.nodeType === 1 ? change.target : change.target.parentElement;
			const region = from?.closest("[role=status], [role=alert], [aria-live]");
			if (region && live.has(region) && region.checkVisibility()) window.spoken.push(region.textContent.trim());
		}
	}).observe(document.body, {subtree: true, childList: true, characterData: true, attributes: true, attributeFilter: ["hidden"]});
	return live.size;
})()`

// Every verdict, status and complaint is said without being looked for (WCAG 4.1.3).
func TestSpoken(t *testing.T) {
	click := func(selector string) func(b *tab) {
		return func(b *tab) { b.do("press "+selector, chromedp.Click(chromedp.CSS(selector))) }
	}
	tests := []struct {
		name    string
		address string // or the card, when empty
		ready   string
		then    func(b *tab)
		want    string
	}{
		{"verdict", "/identify/", ready, func(b *tab) {
			b.choose("hold", "outside-clip")
			b.do("cap", chromedp.SendKeys(chromedp.CSS(capField), "27.00 mm"+kb.Enter))
			b.do("across", chromedp.SendKeys(chromedp.CSS(acrossField), "81.80 mm"+kb.Enter))
		}, "1310"},
		{"unreadable reading", "/identify/", ready, func(b *tab) {
			b.do("nonsense", chromedp.SendKeys(chromedp.CSS(capField), "1.0.6"+kb.Enter))
		}, "1.0.6"},
		{"a part", "/identify/part/pto-shafts/", partReady, func(b *tab) {
			b.do("count", chromedp.SendKeys(chromedp.CSS("[data-count]"), "6"))
			b.do("measure", chromedp.SendKeys(chromedp.CSS("[data-reading]"), "34.80 mm"+kb.Enter))
		}, "pto-type-1"},
		{"copied address", "/identify/#" + reading1310, ready, click("[data-copy]"), "cop"},
		{"filtered rows", "/chart/joints-inch/", "document.readyState === 'complete'", func(b *tab) {
			b.do("filter", chromedp.SendKeys(chromedp.CSS("[data-filter-field]"), "1310"))
		}, " of "},
		{"search", "/search/", scripted["/search/"], func(b *tab) {
			b.do("ask", chromedp.SendKeys(chromedp.CSS("main [data-search-field]"), "snap ring"))
		}, "found"},
		{"nothing to send", "/send/", sendReady, func(b *tab) {
			b.do("untick", chromedp.Click(chromedp.CSS(`[data-take][value="cap"]`)), chromedp.Click(chromedp.CSS(`[data-take][value="across"]`)))
		}, "Tick"},
		{"unknown size on a slip", "/order/", orderReady, func(b *tab) { b.write("[data-order] [data-add]", "1234x"+kb.Enter) }, "1234x"},
		{"joint taken off a slip", "/order/#row=1310", orderReady, click("[data-remove]"), "Taken off"},
		{"unreadable record", "/shaft/", charted, func(b *tab) { b.reads("hello") }, "line 1, column 1"},
		{"scale of the screen", "/joint/1310/", "!document.querySelector('[data-life]').hidden", click("[data-life-fits]"), "Life size on this screen"},
		{"empty field of the card", "", cardReady, click(nextButton), ""},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b := openTab(t)
			if test.address == "" {
				b.cardTo("One cap")
			} else {
				b.open(test.address)
			}
			b.until("the page", test.ready)
			if regions := see[int](b, listen); regions == 0 {
				t.Fatal("no live region")
			}
			test.then(b)
			b.until("it is said", `window.spoken.some(s => s !== "" && s.includes(`+quote(test.want)+`))`)
			if said := see[[]string](b, "window.spoken"); len(said) > 12 {
				t.Errorf("said %d times, which drowns it: %s", len(said), strings.Join(said, " / "))
			}
		})
	}
}

// A step of the card is said because the keyboard goes to its heading or field.
func TestCardStepTakesFocus(t *testing.T) {
	b := openTab(t)
	b.cardTo("joint held")
	if !see[bool](b, `document.activeElement.matches("[data-card] [data-title]")`) {
		t.Errorf("the keyboard is at %s, want the heading of the step", see[string](b, describe+"(document.activeElement)"))
	}
}
