//go:build browser

package browser

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// The bar of a newer chart on a small phone and in both lights: it moves nothing, hides
// nothing that cannot be scrolled clear of it, keeps the rules of axe-core, is reached by
// the keyboard, and goes when it is put off.
func TestOfferBar(t *testing.T) {
	assets := map[string]string{}
	for _, f := range site.Files {
		if name, is := strings.CutPrefix(f.Path, "assets/newer."); is {
			assets[filepath.Ext(name)] = base + f.Path
		}
	}
	b := openTab(t)
	for _, m := range mediums[:2] {
		b.lookThrough(m)
		b.do("a small phone", chromedp.EmulateViewport(320, 640))
		for _, address := range []string{"/identify/", "/joint/1310/"} {
			b.open(address)
			b.until("the page", `document.readyState === "complete"`)
			see[bool](b, shifts)
			b.do("the bar", chromedp.Evaluate[chromedp.Void](`new Promise((done) => {
				const style = Object.assign(document.createElement("link"), {rel: "stylesheet", href: `+quote(assets[".css"])+`});
				const script = Object.assign(document.createElement("script"), {src: `+quote(assets[".js"])+`});
				style.onload = () => document.head.append(script);
				script.onload = () => { CapspanNewer.show("no-room", {version: "2026-11-25-3f9a1c2"}); done(); };
				document.head.append(style);
			})`, chromedp.EvalAwaitPromise))
			b.until("the bar", offered+`?.includes("2026-11-25-3f9a1c2")`)
			if _, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](settle, chromedp.EvalAwaitPromise)); err != nil {
				t.Fatal(err)
			}
			if got := see[float64](b, "window.shifted"); got > 0 {
				t.Errorf("%s, %s: the bar moved the layout by %.3f", address, m.name, got)
			}
			if wide := see[[]string](b, tooWide); len(wide) > 0 {
				t.Errorf("%s, %s: scrolls sideways: %s", address, m.name, strings.Join(wide, ", "))
			}
			if small := see[[]string](b, `[...document.querySelectorAll(".newer button")].map((e) => e.getBoundingClientRect()).filter((r) => r.width < 44 || r.height < 44).map((r) => r.width + " x " + r.height)`); len(small) > 0 {
				t.Errorf("buttons of the bar are small: %q", small)
			}
			if !see[bool](b, `(scrollTo(0, 1e6), document.querySelector("footer").getBoundingClientRect().bottom <= document.querySelector(".newer").getBoundingClientRect().top)`) {
				t.Errorf("%s, %s: the foot of the page stays behind the bar", address, m.name)
			}
			for _, v := range b.axe(allRules) {
				t.Errorf("%s, %s: %s: %s\n    %s", address, m.name, v.ID, v.Help, strings.Join(v.Nodes, "\n    "))
			}
			b.do("the keyboard", chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-newer-use]").focus()`), chromedp.KeyEvent(kb.Tab))
			if !see[bool](b, `document.activeElement.matches("[data-newer-later]")`) {
				t.Errorf("%s: after the first button the keyboard is at %s", address, see[string](b, "document.activeElement.outerHTML.slice(0, 80)"))
			}
			b.do("later", chromedp.KeyEvent(kb.Enter))
			b.until("the bar to go", `document.querySelector(".newer") === null`)
		}
	}
	b.calm("the bar")
}
