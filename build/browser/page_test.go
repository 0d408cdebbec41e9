//go:build browser

package browser

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// tools is where npm ci put the tools of the checks.
const tools = "../npm/node_modules"

// Nothing is wider than the screen on a small phone, a phone, a tablet and a desk.
func TestNoSidewaysScroll(t *testing.T) {
	b := openTab(t)
	for _, address := range kinds(t) {
		b.open(address)
		for _, width := range []int64{320, 360, 768, 1280} {
			b.do("resize", chromedp.EmulateViewport(width, 800))
			wide := see[[]string](b, `(() => {
				const most = document.documentElement.clientWidth;
				if (document.documentElement.scrollWidth <= most) return [];
				return [...document.body.querySelectorAll("*")]
					.filter(e => e.getBoundingClientRect().right > most + 1)
					.map(e => e.tagName.toLowerCase() + "." + e.getAttribute("class")).concat("the page").slice(0, 8);
			})()`)
			if len(wide) > 0 {
				t.Errorf("%s at %d px scrolls sideways: %s", address, width, strings.Join(wide, ", "))
			}
		}
	}
}

// violation is one rule of axe-core that a page breaks.
type violation struct {
	ID, Impact, Help string
	Nodes            []string
}

// One page of each kind, in light and in dark, by all rules of axe-core for WCAG 2.2
// A and AA and its best practices.
func TestAccessible(t *testing.T) {
	axe, err := os.ReadFile(filepath.Join(tools, "axe-core", "axe.min.js"))
	if err != nil {
		t.Fatalf("axe-core: %v; build/test.sh installs it", err)
	}
	b := openTab(t)
	for _, scheme := range []string{"light", "dark"} {
		if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
			Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: scheme}},
		}); err != nil {
			t.Fatal(err)
		}
		for _, address := range append(kinds(t), "/identify/#"+reading1310) {
			b.open("/") // a changed fragment alone loads nothing
			b.open(address)
			b.do("load axe", chromedp.Evaluate[chromedp.Void](string(axe)))
			broken, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]violation](`axe.run(document, {resultTypes: ["violations"]}).then(r =>
				r.violations.map(v => ({ID: v.id, Impact: v.impact ?? "", Help: v.help, Nodes: v.nodes.slice(0, 3).map(n => n.html.slice(0, 200) + " " + (n.any[0]?.message ?? ""))})))`,
				chromedp.EvalAwaitPromise))
			if err != nil {
				t.Fatalf("axe on %s: %v", address, err)
			}
			for _, v := range broken {
				t.Errorf("%s, %s: %s (%s): %s\n    %s", address, scheme, v.ID, v.Impact, v.Help, strings.Join(v.Nodes, "\n    "))
			}
		}
	}
}

// A printed page is a real document; Chromium's own PDF is its paper.
func TestPrints(t *testing.T) {
	b := openTab(t)
	for _, address := range []string{"/chart/joints-inch/", "/joint/1310/", "/identify/#" + reading1310} {
		b.open(address)
		pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF())
		if err != nil {
			t.Errorf("%s: %v", address, err)
			continue
		}
		if !bytes.HasPrefix(pdf, []byte("%PDF-")) || len(pdf) < 5000 {
			t.Errorf("%s: the PDF has %d bytes, starting with %.8q", address, len(pdf), pdf)
		}
	}
}

// On paper the navigation is gone and the chart's version is there.
func TestPaper(t *testing.T) {
	b := openTab(t)
	b.open("/joint/1310/")
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		t.Fatal(err)
	}
	shown := func(selector string) bool {
		return see[bool](b, `(e => e !== null && e.getClientRects().length > 0)(document.querySelector("`+selector+`"))`)
	}
	if shown("header nav") {
		t.Error("the navigation is printed")
	}
	if !shown("footer") || !strings.Contains(see[string](b, "document.body.innerText"), site.Chart.Name()) {
		t.Error("the title block with the chart's version is not printed")
	}
}
