//go:build browser

package browser

// moving lists what would move by itself for a reader who asked for less motion: a
// transition, an animation that lasts, or a page that glides.
const moving = `[document.documentElement, ...document.querySelectorAll("body, body *")].filter(e => ["", "::before", "::after"].some(part => {
	const style = getComputedStyle(e, part);
	const lasts = times => times.split(",").some(time => parseFloat(time) > 0);
	return lasts(style.transitionDuration) || (style.animationName !== "none" && lasts(style.animationDuration)) || style.scrollBehavior === "smooth";
})).map(` + describe + `).slice(0, 5)`

// still looks whether the page keeps still for who asked for that (WCAG 2.3.3).
func (b *tab) still() {
	b.t.Helper()
	b.lookThrough(medium{feature: "prefers-reduced-motion", value: "reduce"})
	for _, e := range see[[]string](b, moving) {
		b.t.Errorf("with reduced motion %s moves", e)
	}
	b.lookThrough(medium{})
}
