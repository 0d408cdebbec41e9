//go:build browser

package browser

import (
	"context"
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/static"
)

// Hooks of static/parts/search.
const (
	searchOpen  = `document.querySelector("dialog.search[open][data-ready]")`
	searchField = `[data-search-field]`
	searchSaid  = `document.querySelector("[data-search-status]").textContent`
	firstHit    = `document.querySelector("[data-search-hits] a")`
)

// press sends keys to whatever has the focus.
func (b *tab) press(keys string) {
	b.t.Helper()
	b.do("press "+quote(keys), chromedp.KeyEvent(keys))
}

// From a row's page to a word of the glossary, misspelt, by keyboard alone.
func TestSearchStory(t *testing.T) {
	b := openTab(t)
	b.open("/joint/1310/")
	before := b.requested()
	b.press("/")
	b.until("the dialog", searchOpen)
	if strings.Contains(before, "search-index") || !strings.Contains(b.requested(), "search-index") {
		t.Error("the index is not fetched on first use, and on first use only")
	}
	b.press("univeral joint")
	b.until("what was understood", searchSaid+`.includes("“universal” for “univeral”")`)
	if said := see[string](b, searchSaid); !strings.Contains(said, "found") {
		t.Errorf("the live region does not say how many: %s", said)
	}
	b.press(kb.ArrowDown)
	b.until("the first hit has the focus", "document.activeElement === "+firstHit)
	b.press(kb.ArrowDown)
	b.until("the second has it", "document.activeElement === document.querySelectorAll('[data-search-hits] a')[1]")
	b.press(kb.ArrowUp)
	b.press(kb.ArrowUp)
	b.until("the field has it", "document.activeElement.matches('"+searchField+"')")
	b.press(kb.Enter)
	b.until("the glossary", `location.pathname.endsWith("/measure/glossary/") && location.hash === "#the-joint"`)
	b.calm("the story")
}

// A size is judged by the core and its link leads to the same verdict.
func TestSearchOfSize(t *testing.T) {
	for _, c := range []struct{ typed, title string }{
		{"1.062 x 3.219", "1.062 in × 3.219 in"},
		{"27x74.6", "27 mm × 74.6 mm"},
		{"1 1/16", "1 1/16 in as a cap"},
		{"30 mm", "30 mm as a cap"},
	} {
		b := openTab(t)
		b.open("/")
		b.press("/")
		b.until("the dialog", searchOpen)
		b.press(c.typed)
		b.until("the verdict on "+c.typed, `document.querySelector("[class*='hit--']")`)
		title, says := see[string](b, firstHit+`.querySelector(".hit__title").textContent`), see[string](b, firstHit+`.querySelector(".hit__note").textContent`)
		if !strings.HasPrefix(title, c.title+": ") {
			t.Errorf("%s: the hit says %q, want %q and a verdict", c.typed, title, c.title)
		}
		b.press(kb.Enter)
		b.until("the identify page", ready)
		b.until("the same verdict there", verdictText+".includes("+quote(says)+")")
		b.calm(c.typed)
	}
}

// Names win over sizes, however they are written.
func TestSearchOfNames(t *testing.T) {
	b := openTab(t)
	for _, typed := range []string{"1310", "13-10"} {
		b.open("/search/#q=" + typed)
		b.until("the row for "+typed, firstHit+`?.pathname.endsWith("/joint/1310/")`)
	}
	b.calm("names")
}

// Escape closes and the focus is where it was; in a field the key is a character; and it
// can be turned off.
func TestSearchKey(t *testing.T) {
	b := openTab(t)
	b.open("/chart/joints-wing/")
	b.do("focus a link", chromedp.Focus(chromedp.CSS("header a[href$='/measure/']")))
	b.press("/")
	b.until("the dialog", searchOpen)
	b.press("cap")
	b.press(kb.Escape)
	b.until("closed, and the focus back", `!document.querySelector("dialog[open]") && document.activeElement.matches("header a[href$='/measure/']")`)

	b.do("type in the filter", chromedp.SendKeys(chromedp.CSS("[data-filter-field]"), "1/2"))
	b.until("a slash in the field", `document.querySelector("[data-filter-field]").value === "1/2"`)
	if see[bool](b, `document.querySelector("dialog[open]") !== null`) {
		t.Error("a slash in a field opens the search")
	}

	b.do("click the link", chromedp.Click(chromedp.CSS("[data-search]")))
	b.until("the dialog again", searchOpen)
	if got := see[string](b, `document.querySelector("dialog input").value`); got != "cap" {
		t.Errorf("the question was %q, want what was typed before", got)
	}
	b.do("turn the key off", chromedp.Click(chromedp.CSS(".search__key")))
	b.until("the box is empty", `!document.querySelector(".search__key input").checked && localStorage.length > 0`)
	b.open("/about/")
	b.press("/")
	if see[bool](b, `document.querySelector("dialog, script[src*='/search.']") !== null`) {
		t.Error("the key works though it was turned off")
	}
	b.calm("the key")
}

// Each page is reached without the script that searches: the link's own page stands in.
func TestSearchDoesNotCome(t *testing.T) {
	b := openTab(t)
	b.open("/about/")
	if _, err := chromedp.Call(b.ctx, network.SetBlockedURLs, network.SetBlockedURLsParams{URLPatterns: []*network.BlockPattern{{URLPattern: "*://*:*/*/search.*.js", Block: true}}}); err != nil {
		t.Fatal(err)
	}
	b.press("/")
	b.until("the page of the search", `location.pathname.endsWith("/search/") && document.querySelector("main a[href$='/a-z/']")`)
}

// Without the core the words are still searched, and the panel says what is missing.
func TestSearchWithoutCore(t *testing.T) {
	b := openTab(t)
	b.open("/about/")
	if _, err := chromedp.Call(b.ctx, network.SetBlockedURLs, network.SetBlockedURLsParams{URLPatterns: []*network.BlockPattern{{URLPattern: "*://*:*/*/matcher.*", Block: true}}}); err != nil {
		t.Fatal(err)
	}
	b.press("/")
	b.until("the dialog", searchOpen)
	b.press("27x74.6")
	b.until("what is missing", searchSaid+`.includes("did not arrive")`)
	b.until("the row of that name", firstHit+`?.pathname.endsWith("/joint/27x74.6/")`)
}

// Without the index the search page sends the reader to the list.
func TestSearchWithoutIndex(t *testing.T) {
	b := openTab(t)
	b.open("/about/")
	if _, err := chromedp.Call(b.ctx, network.SetBlockedURLs, network.SetBlockedURLsParams{URLPatterns: []*network.BlockPattern{{URLPattern: "*://*:*/*/search-index.*", Block: true}}}); err != nil {
		t.Fatal(err)
	}
	b.open("/search/#q=1310")
	b.until("what is missing", searchSaid+`.includes("did not arrive")`)
	b.do("enter", chromedp.SendKeys(chromedp.CSS(searchField), "1310"+kb.Enter))
	b.until("the list", `location.pathname.endsWith("/a-z/")`)
}

// Without script the header leads to the search page, that to the list, that to the row.
func TestSearchWithoutScript(t *testing.T) {
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	b.open("/")
	for _, step := range []struct{ link, at string }{
		{"header a[href$='/search/']", "/search/"}, {"main a[href$='/a-z/']", "/a-z/"}, {"main a[href$='/joint/1310/']", "/joint/1310/"},
	} {
		b.do("follow "+step.link, chromedp.Click(chromedp.CSS(step.link)))
		b.until(step.at, `location.pathname.endsWith("`+step.at+`") && document.readyState === "complete"`)
	}
	b.calm("without script")
}

// Whatever an address asks stays text and is cut to a length.
func TestSearchHostile(t *testing.T) {
	b := openTab(t)
	for _, q := range []string{"<img src=x onerror=alert(1)>", "</script><script>alert(1)</script>", "javascript:alert(1)",
		strings.Repeat("1.062 x ", 9000), strings.Repeat("9", 4000), "%", "\u202e\u0000", "__proto__ constructor toString"} {
		b.open("/search/")
		b.until("the page", `document.querySelector("[data-ready]")`)
		b.do("ask", chromedp.Evaluate[chromedp.Void]("location.hash = 'q=' + encodeURIComponent("+quote(q)+"); undefined"))
		b.until("an answer", searchSaid+` !== ""`)
		if see[bool](b, `document.querySelector("main img, main script") !== null || document.documentElement.scrollWidth > innerWidth`) {
			t.Errorf("%.40q: became markup, or widened the page", q)
		}
		if length := see[int](b, `document.querySelector("[data-search-field]").value.length`); length > 80 {
			t.Errorf("%.40q: a question of %d characters", q, length)
		}
		b.calm(q[:1])
	}
}

// Chromium folds letters as the index was folded: the fixture of both sides.
func TestSearchFold(t *testing.T) {
	text, err := os.ReadFile(filepath.Join("..", "search", "testdata", "fold.json"))
	if err != nil {
		t.Fatal(err)
	}
	var cases []struct{ Text, Fold string }
	if err := json.Unmarshal(text, &cases); err != nil {
		t.Fatal(err)
	}
	script, problems := static.Script(static.FS, "parts/search/fold.ts", "Folding")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	b := openTab(t)
	b.open("/")
	got := see[[]string](b, string(script)+";"+string(text)+".map(c => Folding.fold(c.text))")
	for i, c := range cases {
		if got[i] != c.Fold {
			t.Errorf("fold(%q) = %q, want %q", c.Text, got[i], c.Fold)
		}
	}
}

// The open dialog and what is found, by axe, on a small phone and a desk.
func TestSearchAccessible(t *testing.T) {
	for _, m := range mediums[:3] { // the last is paper, where it is not shown
		for _, asked := range []string{"1.062 x 3.219", "5 x 9 in", "snap ring"} {
			b := openTab(t)
			b.lookThrough(m)
			b.open("/identify/")
			b.do("a small phone", chromedp.EmulateViewport(320, 640))
			b.press("/")
			b.until("the dialog", searchOpen)
			b.press(asked)
			b.until("hits", firstHit)
			b.until("a verdict where there is a size", `!/\d/.test(`+quote(asked)+`) || document.querySelector("[class*='hit--']")`)
			if wide := see[bool](b, `(d => d.scrollWidth > d.clientWidth || document.documentElement.scrollWidth > innerWidth)(document.querySelector("dialog"))`); wide {
				t.Errorf("%s: the dialog scrolls sideways at 320 px", asked)
			}
			small := see[[]string](b, `[...document.querySelectorAll("dialog a, dialog button, dialog input:not([type=checkbox]), dialog label.search__key")]
				.filter(e => e.getBoundingClientRect().height < 43.5).map(e => e.outerHTML.slice(0, 80))`)
			if len(small) > 0 {
				t.Errorf("%s: too low for a thumb: %v", asked, small)
			}
			for _, v := range b.axe(allRules) {
				t.Errorf("%s, %s: %s: %s\n    %s", asked, m.name, v.ID, v.Help, strings.Join(v.Nodes, "\n    "))
			}
		}
	}
}

// The search is not printed.
func TestSearchOnPaper(t *testing.T) {
	b := openTab(t)
	b.open("/joint/1310/")
	b.press("/")
	b.until("the dialog", searchOpen)
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{Media: "print"}); err != nil {
		t.Fatal(err)
	}
	if see[bool](b, `document.querySelector("dialog").getClientRects().length > 0 || document.querySelector("[data-search]").getClientRects().length > 0`) {
		t.Error("the search or its link is printed")
	}
}

// What the search costs: the script every page is given, which opens it, asks for the copy
// on the device and takes addresses along to other languages, and what comes on first use
// before a size is asked, packed as build --compress packs it.
const (
	mostFrame  = 1_300
	mostSearch = 4_096
)

func TestSearchWeight(t *testing.T) {
	for prefix, most := range map[string]int{"assets/frame.": mostFrame, "assets/search.": mostSearch} {
		found := false
		for _, f := range site.Files {
			if strings.HasPrefix(f.Path, prefix) && strings.HasSuffix(f.Path, ".js") {
				found = true
				if n := packed(t, f.Bytes, 11); n > most {
					t.Errorf("%s: %d bytes packed, at most %d are meant", f.Path, n, most)
				} else {
					t.Logf("%s: %d bytes packed", f.Path, n)
				}
			}
		}
		if !found {
			t.Errorf("no script %s", prefix)
		}
	}
}

// requested is everything the tab asked for so far.
func (b *tab) requested() string {
	b.mu.Lock()
	defer b.mu.Unlock()
	return strings.Join(slices.Clone(b.requests), "\n")
}

// BenchmarkSearch is the time of one question in Chromium at the shipped chart: words,
// letter by letter as they are typed, and misspelt ones; ns/op means nothing here.
//
//	go test -tags browser -run '^$' -bench Search -benchtime 1x ./build/browser/
func BenchmarkSearch(b *testing.B) {
	script, problems := static.Script(static.FS, "parts/search/lookup.ts", "Lookup")
	if len(problems) > 0 {
		b.Fatal(problems)
	}
	page := openTab(b)
	page.open("/")
	type times struct{ Restore, Typed, Misspelt, Slowest float64 }
	var got times
	for b.Loop() {
		var err error
		if got, err = askTimes[times](page.ctx, string(script)); err != nil {
			b.Fatal(err)
		}
	}
	b.ReportMetric(got.Restore, "ms/restore")
	b.ReportMetric(got.Typed, "ms/typed")
	b.ReportMetric(got.Misspelt, "ms/misspelt")
	b.ReportMetric(got.Slowest, "ms/slowest")
}

func askTimes[T any](ctx context.Context, script string) (T, error) {
	return chromedp.Run(ctx, chromedp.Evaluate[T](fmt.Sprintf(`(async () => {
		%s;
		const index = await (await fetch(document.querySelector("[data-search]").dataset.search)).json();
		const median = (list) => list.sort((a, b) => a - b)[list.length >> 1];
		const time = (times, work) => { const start = performance.now(); for (let i = 0; i < times; i++) work(); return (performance.now() - start) / times; };
		const restore = [];
		for (let i = 0; i < 11; i++) restore.push(time(5, () => Lookup.lookup(index)));
		const find = Lookup.lookup(index);
		const words = ["1310", "27x74.6", "snap ring", "bearing cap", "how to measure a joint", "universal"];
		const typed = words.flatMap(w => [...w].map((_, i) => w.slice(0, i + 1)));
		const wrong = ["univeral", "snaprng", "calliper", "trunion", "driveshaftt", "meassure"];
		for (const q of [...typed, ...wrong]) find(q);
		const each = typed.map(q => time(20, () => find(q))), bad = wrong.map(q => time(20, () => find(q)));
		return {Restore: median(restore), Typed: median(each), Misspelt: median(bad), Slowest: Math.max(...each, ...bad)};
	})()`, script), chromedp.EvalAwaitPromise))
}
