//go:build browser

package browser

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Edges of a card ID-1 in millimetres, ISO/IEC 7810:2019 clause 5.1.1, nominal.
const (
	cardLong  = 85.60
	cardShort = 53.98
)

const lifeReady = `document.querySelector("[data-life]:not([hidden])")`

// says waits for the words of the life-size view.
func (b *tab) says(words string) {
	b.t.Helper()
	b.until("the view says "+words, `document.querySelector("[data-life-says]").textContent.includes(`+quote(words)+`)`)
}

// drawn is how wide and high an element of the view is on the screen, in CSS pixels.
func (b *tab) drawn(selector string) (wide, high float64) {
	b.t.Helper()
	box := see[[]float64](b, `(r => [r.width, r.height])(document.querySelector(`+quote(selector)+`).getBoundingClientRect())`)
	return box[0], box[1]
}

// isPixels compares lengths on the screen; the drawing's own are rounded to 0.01 mm.
func isPixels(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.15 {
		t.Errorf("%s: %.2f px on the screen, want %.2f px", what, got, want)
	}
}

const (
	lifeAcross  = `[data-life-drawing] [data-part="across"]`
	across1310  = 3.219 * inch // a plain decimal of the chart
	longOnPhone = 470.0        // CSS pixels: a phone of about 5.5 to the millimetre
)

// lay moves the outline to a length, by the slider and at last by a key.
func (b *tab) lay(long float64) {
	b.t.Helper()
	if !see[bool](b, `document.querySelector("[data-life-scale]").open`) {
		b.do("open the scale", chromedp.Click(chromedp.CSS("[data-life-scale] summary")))
	}
	see[bool](b, `(s => { s.value = `+quote(strconv.FormatFloat(long-1, 'f', -1, 64))+`; return s.dispatchEvent(new Event("input", {bubbles: true})); })(document.querySelector("[data-life-slider]"))`)
	b.do("a little larger, by key and by button", chromedp.SendKeys(chromedp.CSS("[data-life-slider]"), "++-"),
		chromedp.Click(chromedp.CSS(`[data-life-step="0.5"]`)))
}

// Somebody lays a card on a phone, and from then on every row is life size on it.
func TestLifeSizeByCard(t *testing.T) {
	b := openTab(t)
	b.do("a phone", chromedp.EmulateViewport(360, 800))
	b.open("/joint/1310/")
	b.until("the view", lifeReady)
	b.says("Not to scale yet")

	b.lay(longOnPhone)
	wide, high := b.drawn("[data-life-card]")
	isPixels(t, "the card's long edge", high, longOnPhone)
	isPixels(t, "the card's short edge", wide, longOnPhone*cardShort/cardLong)
	b.says("Not to scale yet") // moved, but nobody said that it fits
	if wide > 360-2*12 {
		t.Errorf("the card's outline is %.0f px wide and does not fit the phone", wide)
	}

	b.do("it fits", chromedp.Click(chromedp.CSS("[data-life-fits]")))
	b.says("Life size on this screen")
	factor := longOnPhone / cardLong
	wide, _ = b.drawn(lifeAcross)
	isPixels(t, "the across of the 1310", wide, across1310*factor)
	if most := see[float64](b, "document.documentElement.scrollWidth"); most > 360 {
		t.Errorf("the page is %.0f px wide on a phone of 360", most)
	}

	b.do("reload", chromedp.Reload())
	b.until("the view", lifeReady)
	b.says("Life size on this screen")
	wide, _ = b.drawn(lifeAcross)
	isPixels(t, "the across of the 1310 after a reload", wide, across1310*factor)

	b.open("/joint/1410/")
	b.until("the view", lifeReady)
	b.says("Life size on this screen")
	wide, _ = b.drawn(lifeAcross)
	isPixels(t, "the across of the 1410", wide, 4.188*inch*factor)

	// Another zoom, or another screen: the card would have to be laid again.
	b.do("zoom", chromedp.EmulateViewport(360, 800, chromedp.EmulateScale(2)))
	b.do("reload", chromedp.Reload())
	b.until("the view", lifeReady)
	b.says("Not to scale: the screen or the zoom is another")
	b.do("and back", chromedp.EmulateViewport(360, 800))
	b.do("reload", chromedp.Reload())
	b.says("Life size on this screen")

	// Two fingers enlarge the page without a word to it, but for the visual viewport.
	pinch := func(factor float64) {
		t.Helper()
		if _, err := chromedp.Call(b.ctx, emulation.SetPageScaleFactor, emulation.SetPageScaleFactorParams{PageScaleFactor: factor}); err != nil {
			t.Fatal(err)
		}
	}
	pinch(1.5)
	b.says("Not to scale while the page is pinched")
	pinch(1)
	b.says("Life size on this screen")

	b.do("open the scale", chromedp.Click(chromedp.CSS("[data-life-scale] summary")))
	b.do("forget", chromedp.Click(chromedp.CSS("[data-life-forget]")))
	b.says("Not to scale yet")
	b.do("reload", chromedp.Reload())
	b.says("Not to scale yet")
	b.calm("the card")
}

// By keyboard alone: to the summary, the slider, the button.
func TestLifeSizeByKeyboard(t *testing.T) {
	b := openTab(t)
	b.open("/joint/1310/")
	b.until("the view", lifeReady)
	b.do("go to the slider", chromedp.Focus(chromedp.CSS("[data-life-slider]")))
	before := see[float64](b, `document.querySelector("[data-life-slider]").valueAsNumber`)
	b.do("plus, plus, minus, arrow", chromedp.KeyEvent("++-"), chromedp.KeyEvent(kb.ArrowRight))
	if after := see[float64](b, `document.querySelector("[data-life-slider]").valueAsNumber`); after != before+1 {
		t.Errorf("the slider went from %v to %v, want two steps of 0.5 up", before, after)
	}
	b.do("to the button", chromedp.Focus(chromedp.CSS("[data-life-fits]")), chromedp.KeyEvent(kb.Enter))
	b.says("Life size on this screen")
	see[bool](b, `(localStorage.clear(), true)`)
	b.calm("by keyboard")
}

// A browser that keeps nothing, or kept nonsense, is no reason to fail or to claim.
func TestLifeSizeWithoutStore(t *testing.T) {
	tests := []struct{ name, script, then string }{
		{"refuses", `Object.defineProperty(window, "localStorage", {get() { throw new DOMException("no", "SecurityError"); }})`, "does not remember"},
		{"full", `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError"); }`, "does not remember"},
		{"nonsense", `localStorage.setItem("capspan-card", "{\"perMm\":\"<b>\",\"ratio\":null}")`, "Life size on this screen"},
		{"not JSON", `localStorage.setItem("capspan-card", "}{")`, "Life size on this screen"},
		{"absurd", `localStorage.setItem("capspan-card", "{\"perMm\":1e9,\"ratio\":1,\"screen\":\"800x600\"}")`, "Life size on this screen"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b := openTab(t)
			if _, err := chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: test.script}); err != nil {
				t.Fatal(err)
			}
			b.open("/joint/1310/")
			b.until("the view", lifeReady)
			b.says("Not to scale yet")
			b.lay(350)
			b.do("it fits", chromedp.Click(chromedp.CSS("[data-life-fits]")))
			b.says(test.then)
			b.calm(test.name)
		})
	}
}

// Without script there is no view that nothing sets, and the sheet is the way.
func TestLifeSizeWithoutScript(t *testing.T) {
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	b.open("/joint/1310/")
	if _, high := b.drawn("[data-life]"); high > 0 {
		t.Error("a view is shown that no script sets to scale")
	}
	if to := see[string](b, `document.querySelector("#life a").href`); !strings.HasSuffix(to, "/joint/1310/paper/") {
		t.Errorf("the way to the sheet leads to %s", to)
	}
	b.calm("without script")
}
