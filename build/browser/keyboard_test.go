//go:build browser

package browser

import (
	"slices"

	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// keyboardStops are what the Tab key must come to, in the page's order. Of radio buttons
// with one name it comes to one. Over a modal dialog there is nothing else.
const keyboardStops = `(() => {
	const room = document.querySelector("dialog:modal") ?? document;
	const shown = [...room.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")].filter(e =>
		e.tabIndex >= 0 && !e.disabled && e.checkVisibility({visibilityProperty: true}));
	const group = e => shown.filter(o => o.type === "radio" && o.name === e.name && o.form === e.form);
	return shown.filter(e => e.type !== "radio" || !e.name || e === (group(e).find(o => o.checked) ?? group(e)[0]));
})()`

// describe names an element in a test's words.
const describe = `(e => e.tagName.toLowerCase() + (e.getAttribute("class") ? "." + e.getAttribute("class").trim().replaceAll(/\s+/g, ".") : "")
	+ " " + JSON.stringify((e.getAttribute("aria-label") || e.textContent || e.value || "").trim().slice(0, 40)))`

// takeNotes follows the keyboard through a page. Each stop is looked at when the next key
// goes down, so that the page has come to rest: is it seen at all, and does anything lie
// over it? WCAG 2.4.11 forbids to hide all of it; here no part may be hidden.
const takeNotes = `(() => {
	const said = ` + describe + `, stops = ` + keyboardStops + `, seen = new Set();
	const hiddenBy = e => {
		const shown = (e.matches("input") && e.closest("label")) || e;
		let inSight = false;
		for (const r of shown.getClientRects()) {
			const port = shown.closest(".scroll")?.getBoundingClientRect() ?? {left: 0, right: innerWidth}; // a table's own window
			const left = Math.max(0, port.left, r.left), top = Math.max(0, r.top);
			const wide = Math.min(innerWidth, port.right, r.right) - left, high = Math.min(innerHeight, r.bottom) - top;
			// a little inside, because edges fall between pixels
			if (wide > 1 && high > 1) for (const x of [Math.min(3, wide / 2), wide / 2, Math.max(wide - 3, wide / 2)]) for (const y of [Math.min(3, high / 2), high / 2, Math.max(high - 3, high / 2)]) {
				const over = document.elementFromPoint(left + x, top + y);
				if (!over || (over !== shown && over.contains(shown))) continue; // beside a rounded or broken shape
				// marks in a picture may touch each other; the table under it has them apart
				if (!shown.contains(over) && !(shown.ownerSVGElement && over.ownerSVGElement)) return said(over);
				inSight = true;
			}
		}
		return inSight ? "" : "the edge of the window";
	};
	window.way = {Stops: stops.map(said), Seen: [], Hidden: []};
	window.note = () => {
		const e = document.activeElement;
		if (e === null || e === document.body) return -1;
		if (!seen.has(e)) {
			seen.add(e);
			window.way.Seen.push(stops.indexOf(e));
			const by = hiddenBy(e);
			if (by) window.way.Hidden.push(said(e) + " is hidden by " + by);
		}
		return stops.indexOf(e);
	};
	addEventListener("keydown", window.note, true);
	scrollTo(0, 0);
	stops[0].focus();
	return stops.length;
})()`

// way is what takeNotes has noted.
type way struct {
	Stops  []string // in the page's order
	Seen   []int    // of Stops, in the keyboard's order; -1 for something else
	Hidden []string
}

// tabKey presses the Tab key so many times.
func (b *tab) tabKey(times int) {
	b.t.Helper()
	for range times {
		for _, kind := range []input.DispatchKeyEventType{input.DispatchKeyEventTypeRawKeyDown, input.DispatchKeyEventTypeKeyUp} {
			if _, err := chromedp.Call(b.ctx, input.DispatchKeyEvent, input.DispatchKeyEventParams{
				Type: kind, Key: "Tab", Code: "Tab", WindowsVirtualKeyCode: 9}); err != nil {
				b.t.Fatal(err)
			}
		}
	}
}

// keyboard walks through the page with the Tab key alone: it comes to everything there is,
// in the page's order, always in sight, and out again at the end. The window is a small one,
// in which what sticks to an edge covers most.
func (b *tab) keyboard() {
	b.t.Helper()
	b.do("a phone's window", chromedp.EmulateViewport(360, 640))
	stops := see[int](b, takeNotes) // and stands at the first
	b.tabKey(stops - 1)
	last := see[int](b, "window.note()")
	b.tabKey(1)
	after := see[int](b, "window.note()")
	got := see[way](b, "window.way")
	for _, hidden := range got.Hidden {
		b.t.Error(hidden)
	}
	for n, stop := range got.Stops {
		if !slices.Contains(got.Seen, n) {
			b.t.Errorf("the keyboard never comes to %s", stop)
		}
	}
	if !slices.IsSorted(got.Seen) {
		b.t.Errorf("the keyboard's order is not the page's: %v of %q", got.Seen, got.Stops)
	}
	if after == last || after > 0 {
		b.t.Errorf("the keyboard does not leave the page at its end: it is at %d of %d", after, stops)
	}
}
