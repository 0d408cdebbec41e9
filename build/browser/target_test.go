//go:build browser

package browser

// leastTarget is what a gloved finger hits, in CSS pixels. WCAG 2.2 asks for 24 (2.5.8, AA);
// 44 is its level AAA (2.5.5) and what this site promises.
const leastTarget = 44

// targets measures everything one can press. A press on a label is a press on its field.
// Left out, as WCAG 2.5.8 leaves them out: a link in running text, whose height is that of
// its line, and what only a keyboard meets, such as the link that skips to the content
// while it is out of sight.
const targets = `(() => {
	const said = e => e.tagName.toLowerCase() + (e.getAttribute("class") ? "." + e.getAttribute("class").replaceAll(" ", ".") : "")
		+ " " + JSON.stringify((e.getAttribute("aria-label") || e.textContent || e.value || "").trim().slice(0, 30));
	const inText = e => {
		if (!e.matches("a, button") || getComputedStyle(e).display !== "inline") return false;
		let block = e.parentElement;
		while (getComputedStyle(block).display === "inline") block = block.parentElement;
		let words = block.textContent;
		for (const a of block.querySelectorAll("a, button")) words = words.replace(a.textContent, "");
		return /\p{L}{2}/u.test(words);
	};
	const list = [];
	for (const e of document.querySelectorAll("a[href], area[href], button, input, select, textarea, summary, label, [role=button], [data-mark], svg [tabindex]")) {
		if (!e.checkVisibility({visibilityProperty: true}) || e.disabled || inText(e) || e.closest(".skip")) continue;
		if (e.matches("label") && e.control && !e.contains(e.control)) continue; // words beside a field of its own size
		const pressed = (e.matches("input") && e.closest("label")) || e;
		const box = pressed.getBoundingClientRect();
		if (box.width === 0 && box.height === 0) continue;
		list.push({Name: said(e), Width: box.width, Height: box.height});
	}
	return list;
})()`

// target is one thing to press and its size.
type target struct {
	Name          string
	Width, Height float64
}

// touchable looks at the page on a phone: everything one presses is as large as a thumb in
// a glove.
func (b *tab) touchable() {
	b.t.Helper()
	b.phone()
	list := see[[]target](b, targets)
	if len(list) < 5 {
		b.t.Errorf("only %d targets are found", len(list)) // the head of the sheet has more
	}
	for _, m := range list {
		if m.Width < leastTarget-0.5 || m.Height < leastTarget-0.5 { // half a pixel for the rounding of rem
			b.t.Errorf("%s is %.0f x %.0f px, want %d", m.Name, m.Width, m.Height, leastTarget)
		}
	}
}
