//go:build browser

package browser

import (
	"fmt"
	"strings"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// tooWide lists what reaches over the right edge of a page that scrolls sideways.
const tooWide = `(() => {
	const most = document.documentElement.clientWidth;
	if (document.documentElement.scrollWidth <= most) return [];
	return [...document.body.querySelectorAll("*")]
		.filter(e => e.getBoundingClientRect().right > most + 1)
		.map(e => e.tagName.toLowerCase() + "." + e.getAttribute("class")).concat("the page").slice(0, 8);
})()`

// outOfReach lists what is wider than its box and cannot be brought into sight by the
// keyboard (WCAG 2.1.1): a scroller takes the focus and has a name, and nothing is cut off.
const outOfReach = `[...document.querySelectorAll("body *")].filter(e => {
	if (e.scrollWidth <= e.clientWidth + 1 || e.clientWidth === 0 || e.closest("svg") || !e.checkVisibility()) return false;
	const way = getComputedStyle(e).overflowX;
	if (way === "visible" || e.matches("input, textarea, select")) return false; // the page scrolls, or the caret does
	const named = e.getAttribute("aria-label") || e.getAttribute("aria-labelledby");
	return way === "hidden" || way === "clip" || e.tabIndex < 0 || !e.hasAttribute("tabindex") || !named;
}).map(e => e.tagName.toLowerCase() + "." + e.getAttribute("class") + ": " + e.textContent.trim().slice(0, 40))`

// widths of windows in CSS pixels. 640 is a desk's 1280 at 200 % (WCAG 1.4.4), 320 the same
// at 400 % and the narrowest a page must bear (WCAG 1.4.10).
var widths = []int64{320, 360, 640, 768, 1280}

// zooms looks at the page at every width: nothing is wider than the window, and what needs
// two dimensions, a table or a drawing one to one, has a scroller of its own that the
// keyboard reaches. Letters set twice as large by the reader come so, and nothing falls out.
func (b *tab) zooms() {
	b.t.Helper()
	for _, width := range widths {
		b.do("resize", chromedp.EmulateViewport(width, 800))
		b.fits(fmt.Sprintf("at %d px", width))
	}
	b.do("resize", chromedp.EmulateViewport(640, 800))
	usual := see[float64](b, letter)
	b.letters(32)
	if got := see[float64](b, letter); got < 2*usual {
		b.t.Errorf("letters set twice as large are %v px, were %v", got, usual)
	}
	b.fits("at 640 px with letters twice as large")
	b.letters(16)
}

const letter = `parseFloat(getComputedStyle(document.querySelector("main")).fontSize)`

// letters sets the size of the reader's letters; 16 is usual.
func (b *tab) letters(size int64) {
	b.t.Helper()
	if _, err := chromedp.Call(b.ctx, page.SetFontSizes, page.SetFontSizesParams{
		FontSizes: &page.FontSizes{Standard: size, Fixed: size * 13 / 16}}); err != nil {
		b.t.Fatal(err)
	}
}

func (b *tab) fits(how string) {
	b.t.Helper()
	if wide := see[[]string](b, tooWide); len(wide) > 0 {
		b.t.Errorf("%s it scrolls sideways: %s", how, strings.Join(wide, ", "))
	}
	for _, lost := range see[[]string](b, outOfReach) {
		b.t.Errorf("%s the keyboard does not reach all of %s", how, lost)
	}
}
