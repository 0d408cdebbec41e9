//go:build browser

package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

// tools is where npm ci put the tools of the checks.
const tools = "../npm/node_modules"

// medium is a way a page is looked at.
type medium struct {
	name, media, feature, value string
	rules                       string // of axe: the options of axe.run
}

// allRules are those of axe-core for WCAG 2.2 A and AA and its best practices.
const allRules = `{resultTypes: ["violations"]}`

// colourRules are what another scheme can break: it changes colours and nothing else.
const colourRules = `{resultTypes: ["violations"], runOnly: {type: "rule", values: ["color-contrast", "link-in-text-block"]}}`

// Dark and forced colours are the same page in other colours; paper hides and shows parts
// too, so it has all rules, as light has.
var mediums = []medium{
	{"light", "", "prefers-color-scheme", "light", allRules},
	{"dark", "", "prefers-color-scheme", "dark", colourRules},
	{"forced colours", "", "forced-colors", "active", colourRules},
	{"print", "print", "prefers-color-scheme", "dark", allRules}, // paper is white at night too
}

// lookThrough has the tab show its pages in a medium.
func (b *tab) lookThrough(m medium) {
	b.t.Helper()
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Media: m.media, Features: []*emulation.MediaFeature{{Name: m.feature, Value: m.value}},
	}); err != nil {
		b.t.Fatal(err)
	}
}

// violation is one rule of axe-core that a page breaks.
type violation struct {
	ID, Impact, Help string
	Nodes            []string
}

// axe runs the rules on the page as it is.
func (b *tab) axe(rules string) []violation {
	b.t.Helper()
	if !see[bool](b, `"axe" in window`) {
		script, err := os.ReadFile(filepath.Join(tools, "axe-core", "axe.min.js"))
		if err != nil {
			b.t.Fatalf("axe-core: %v; build/test.sh installs it", err)
		}
		b.do("load axe", chromedp.Evaluate[chromedp.Void](string(script)))
	}
	// On squared paper axe cannot tell the ground of a text, and passes it over: it gets plain
	// paper. The squares are a twentieth of the ink, and hardly darken it.
	b.do("plain paper", chromedp.Evaluate[chromedp.Void](`document.body.style.backgroundImage = "none"; undefined`))
	broken, err := chromedp.Run(b.ctx, chromedp.Evaluate[[]violation](`axe.run(document, `+rules+`).then(r =>
		r.violations.map(v => ({ID: v.id, Impact: v.impact ?? "", Help: v.help, Nodes: v.nodes.slice(0, 3).map(n => n.html.slice(0, 200) + " " + (n.any[0]?.message ?? ""))})))`,
		chromedp.EvalAwaitPromise))
	if err != nil {
		b.t.Fatalf("axe: %v", err)
	}
	return broken
}

// accessible looks at the page in every medium by axe-core.
func (b *tab) accessible() {
	b.t.Helper()
	for _, m := range mediums {
		b.lookThrough(m)
		for _, v := range b.axe(m.rules) {
			b.t.Errorf("%s: %s (%s): %s\n    %s", m.name, v.ID, v.Impact, v.Help, strings.Join(v.Nodes, "\n    "))
		}
	}
	b.lookThrough(medium{})
}

// The media above are real: each shows the page in colours of its own.
func TestMediaDiffer(t *testing.T) {
	b := openTab(t)
	b.open("/")
	seen := map[string]string{}
	for _, m := range mediums {
		b.lookThrough(m)
		colours := see[string](b, `(s => s.color + " " + s.borderTopColor)(getComputedStyle(document.querySelector(".ways a"))) + " " + getComputedStyle(document.documentElement).backgroundColor`)
		if other, twice := seen[colours]; twice {
			t.Errorf("%s and %s show the same colours, %s", m.name, other, colours)
		}
		seen[colours] = m.name
	}
	if !strings.Contains(fmt.Sprint(seen), "rgb(255, 255, 255)") {
		t.Errorf("paper is not white: %v", seen)
	}
}
