//go:build browser

package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
)

// shifts adds up how far the layout moves from now on; the browser's own measure
// (Layout Instability, W3C draft) says 0 when nothing that is shown changes its place.
const shifts = `(() => {
	window.shifted = 0;
	new PerformanceObserver((list) => { for (const e of list.getEntries()) window.shifted += e.value; }).observe({type: "layout-shift"});
	return true;
})()`

const switchUnit = `((unit) => {
	const select = document.querySelector('[data-setting="unit"]');
	select.value = unit;
	select.dispatchEvent(new Event("change", {bubbles: true}));
	return select.value;
})`

// settle waits until a frame has been laid out and the observer has heard of it.
const settle = `new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(() => done(true), 50))))`

// Switching the unit changes figures, never the place of anything: a reader keeps the
// line under the thumb.
func TestUnitSwitchMovesNothing(t *testing.T) {
	b := openTab(t)
	b.open("/identify/#hold=outside-clip&faces=over-caps&cap=1.060in,1.061in&across=3.226in,3.221in,3.222in")
	b.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]").innerHTML)`)
	b.until("fonts and pictures", `document.readyState === "complete"`)
	see[bool](b, shifts)
	for _, unit := range []string{"mm", "in", "mm"} {
		if got := see[string](b, switchUnit+`("`+unit+`")`); got != unit {
			t.Fatalf("the switch says %q, want %q", got, unit)
		}
		if _, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](settle, chromedp.EvalAwaitPromise)); err != nil {
			t.Fatal(err)
		}
	}
	if got := see[float64](b, "window.shifted"); got > 0.001 {
		t.Errorf("switching the unit moved the layout by %.3f", got)
	}
}

// mostGuideBytes is what a guide page's first visit may weigh with its drawings.
const mostGuideBytes = 30_000

// Every guide page, with all that its first visit asks for.
func TestWeightOfGuide(t *testing.T) {
	heaviest, where := 0, ""
	for _, address := range addresses() {
		// The card carries the core and every picture, so that it works without a network.
		if !strings.HasPrefix(address, "/measure/") || address == "/measure/card/" {
			continue
		}
		b := openTab(t)
		b.open(address)
		b.until("the whole page", `document.readyState === "complete"`)
		sum := b.weigh()
		if sum > heaviest {
			heaviest, where = sum, address
		}
		if sum > mostGuideBytes {
			t.Errorf("%s weighs %d bytes, at most %d are meant", address, sum, mostGuideBytes)
		}
	}
	t.Logf("heaviest guide page: %s, %d bytes", where, heaviest)
}
