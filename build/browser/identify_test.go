//go:build browser

package browser

import (
	"maps"
	"net/http"
	"net/http/httptest"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
)

// verdicts are addresses of the identify page that show each of its parts.
var verdicts = map[string]string{
	"named":     reading1310,
	"unit slip": "hold=outside-clip&cap=1.060mm,1.061mm&across=3.226mm,3.221mm,3.222mm",
	"face slip": "hold=inside-clip&faces=groove-inner&cap=27.00mm,27.01mm&across=41.00mm,41.02mm",
	"yoke":      "hold=outside-clip&taken=yoke&cap=27.02mm,27.01mm&across=84.72mm,84.74mm",
	"two holds": "hold=unknown&cap=1.187in,1.188in&across=3.627in,3.626in",
	"two ends":  "hold=outside-clip&cap=27.00mm&across=81.80mm,81.82mm&hold2=outside-clip&cap2=34.90mm&across2=106.50mm,106.52mm",
	"cap alone": "hold=outside-clip&cap=27.00mm,27.01mm",
	"nowhere":   "hold=outside-clip&cap=28.00mm,28.01mm&across=92.00mm,92.02mm",
}

// judge opens readings and waits until everything is drawn.
func (b *tab) judge(fragment string) {
	b.t.Helper()
	b.open("/") // a changed fragment alone loads nothing
	b.open("/identify/#" + fragment)
	b.until("the form", ready)
	b.until("every drawing that is shown", drawn)
}

const drawn = `![...document.querySelectorAll("[data-board] svg[data-drawing]")].some(e => e.getClientRects().length > 0)`

// focused tells where the keyboard is.
const focused = `(e => e.getAttribute("aria-label") || e.dataset.setting || e.textContent)(document.activeElement)`

func (b *tab) choose(hook, value string) {
	b.t.Helper()
	b.do("choose "+value, chromedp.Click(chromedp.CSS(`label:has([data-`+hook+`][value="`+value+`"])`)))
}

// guided checks that the slip shown first leads to a page of the guide.
func (b *tab) guided() {
	b.t.Helper()
	guide := see[string](b, `document.querySelector("[data-slip] a").pathname`)
	address := "/" + strings.TrimPrefix(guide, base)
	if !strings.HasPrefix(address, "/measure/") || !slices.Contains(addresses(), address) {
		b.t.Errorf("the slip leads to %s", guide)
	}
}

// Inches typed while the page takes millimetres: the slip is named with the size it
// would make, nothing is put right by itself, and the readings taken out can come back.
func TestSlipStory(t *testing.T) {
	b := openTab(t)
	b.open("/identify/")
	b.until("the form", ready)
	b.choose("hold", "outside-clip")
	b.do("take millimetres", chromedp.SetValue(chromedp.CSS(`[data-setting="unit"]`), "mm"),
		chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-setting="unit"]').dispatchEvent(new Event("change"))`))
	for _, reading := range []string{"1.060", "1.061", "1.060"} {
		b.do("cap", chromedp.SendKeys(chromedp.CSS(capField), reading+kb.Enter))
	}
	for _, reading := range []string{"3.226", "3.221", "3.222"} {
		b.do("across", chromedp.SendKeys(chromedp.CSS(acrossField), reading+kb.Enter))
	}
	b.judged("measure-again")
	slip := see[string](b, `document.querySelector("[data-slip]").innerText`)
	for _, word := range []string{"inches", "1310"} {
		if !strings.Contains(slip, word) {
			t.Errorf("the slip does not say %q: %s", word, slip)
		}
	}
	if see[bool](b, `document.querySelector(".size:not(.slip)") !== null`) {
		t.Error("a size is shown although the readings are none of a joint")
	}
	b.guided()

	b.do("start again", chromedp.Click(chromedp.CSS(`[data-again]`)))
	if caps, across := b.readings("cap"), b.readings("across"); len(caps)+len(across) > 0 {
		t.Errorf("left after taking out: %q and %q", caps, across)
	}
	if at := see[string](b, focused); at != "unit" {
		t.Errorf("the keyboard is at %q, want the unit", at)
	}
	if out := see[string](b, `document.querySelector('[data-quantity="cap"] [data-taken-out]').innerText`); !strings.Contains(out, "1.061 mm") {
		t.Errorf("what was taken out reads %q", out)
	}
	b.do("take inches", chromedp.SetValue(chromedp.CSS(`[data-setting="unit"]`), "in"),
		chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-setting="unit"]').dispatchEvent(new Event("change"))`))
	for _, reading := range []string{"1.060", "1.061", "1.060"} {
		b.do("cap", chromedp.SendKeys(chromedp.CSS(capField), reading+kb.Enter))
	}
	for _, reading := range []string{"3.226", "3.221", "3.222"} {
		b.do("across", chromedp.SendKeys(chromedp.CSS(acrossField), reading+kb.Enter))
	}
	if said := b.judged("identified"); !strings.Contains(said, "1310") {
		t.Errorf("measured again it is %s", said)
	}
	b.do("put back", chromedp.Click(chromedp.CSS(`[data-quantity="cap"] [data-put-back]`)))
	if caps := b.readings("cap"); len(caps) != 6 || caps[0] != "1.060 mm" {
		t.Errorf("put back: %q", caps)
	}
	b.calm("the slip")
}

// A reading over the wrong faces shows the right ones, and takes out the across alone.
func TestFaceSlip(t *testing.T) {
	b := openTab(t)
	b.judge(verdicts["face slip"])
	if title := see[string](b, `document.querySelector("[data-slip] svg title").textContent`); !strings.Contains(title, "inner groove faces") {
		t.Errorf("the slip is shown with %q", title)
	}
	b.guided()
	b.do("start again", chromedp.Click(chromedp.CSS(`[data-again]`)))
	if caps, across := b.readings("cap"), b.readings("across"); len(caps) != 2 || len(across) != 0 {
		t.Errorf("readings left: caps %q and across %q, want the caps alone", caps, across)
	}
	if at := see[string](b, focused); at != "Next reading across" {
		t.Errorf("the keyboard is at %q", at)
	}
	b.calm("the faces")
}

// From two bores and the groove distance of a yoke to the size it takes; a clip is asked
// for in place, where the verdict is read.
func TestYokeStory(t *testing.T) {
	b := openTab(t)
	b.open("/identify/")
	b.until("the form", ready)
	shown := func(selector string) bool {
		return see[bool](b, `[...document.querySelectorAll(`+quote(selector)+`)].some(e => e.getClientRects().length > 0)`)
	}
	b.choose("taken", "yoke")
	b.choose("hold", "outside-clip")
	b.until("the drawing", `document.querySelector('[data-yoke-of="outside-clip"] svg title')`)
	if !shown(`[data-quantity="clip"]`) {
		t.Error("no field for a clip")
	}
	for _, reading := range []string{"27.02 mm", "27.01 mm"} {
		b.do("bore", chromedp.SendKeys(chromedp.CSS(capField), reading+kb.Enter))
	}
	for _, reading := range []string{"84.72 mm", "84.74 mm"} {
		b.do("groove to groove", chromedp.SendKeys(chromedp.CSS(acrossField), reading+kb.Enter))
	}
	if said := b.judged("possible"); !strings.Contains(said, "1310") {
		t.Errorf("the yoke takes: %s", said)
	}
	const onward = `[data-onward] [data-reading]`
	if asked := see[string](b, `document.querySelector(`+quote(onward)+`).getAttribute("aria-label")`); asked != "Next clip reading" {
		t.Errorf("it asks for %q", asked)
	}
	b.do("a clip", chromedp.SendKeys(chromedp.CSS(onward), "1.50 mm"+kb.Enter))
	if got := b.readings("clip"); !slices.Equal(got, []string{"1.50 mm"}) {
		t.Errorf("clip readings %q", got)
	}
	b.until("a verdict that names the 1310", verdictText+`.includes("1310")`)
	for _, part := range []string{"taken=yoke", "clip=1.50mm"} {
		if address := see[string](b, "location.href"); !strings.Contains(address, part) {
			t.Errorf("the address %s does not hold %q", address, part)
		}
	}

	b.choose("hold", "strap")
	if shown(`[data-quantity="clip"]`) || !shown(`[data-yoke-of="strap"]`) {
		t.Error("a half-round yoke is not asked from tab to tab, without a clip")
	}
	b.choose("hold", "wing")
	if instead := see[string](b, `document.querySelector("[data-instead]").innerText`); !strings.Contains(instead, "keyway") {
		t.Errorf("of a wing yoke it says %q", instead)
	}
	b.choose("taken", "joint")
	if shown("[data-yoke-of]") || !shown(`[data-faces-of="wing"]`) {
		t.Error("a joint again: the faces of its hold are not shown")
	}
	b.calm("the yoke")
}

// What is missing is asked for under the verdict, and the field stays in use.
func TestNextMeasurementInPlace(t *testing.T) {
	b := openTab(t)
	b.judge(verdicts["cap alone"])
	const onward = `[data-onward] [data-reading]`
	for _, reading := range []string{"81.78 mm", "81.76 mm"} {
		b.do("across", chromedp.SendKeys(chromedp.CSS(onward), reading+kb.Enter))
	}
	if got := b.readings("across"); len(got) != 2 {
		t.Errorf("readings across %q", got)
	}
	if said := b.judged("identified"); !strings.Contains(said, "1310") {
		t.Error(said)
	}
	if !see[bool](b, `document.activeElement === document.querySelector(`+quote(onward)+`)`) {
		t.Error("the field lost the keyboard")
	}
	b.calm("in place")
}

// The picture by keyboard: every mark is reached, says its name and how far off it is,
// and what it says is shown too. The table below it has a line for each size.
func TestPictureByKeyboard(t *testing.T) {
	b := openTab(t)
	b.judge(reading1310)
	marks := see[[]string](b, `[...document.querySelectorAll("[data-hood] [tabindex]:not(.scroll)")].map(e => e.getAttribute("aria-label"))`)
	if len(marks) < 4 {
		t.Fatalf("marks: %q", marks)
	}
	if !slices.ContainsFunc(marks, func(m string) bool { return strings.HasPrefix(m, "1310, a size left: cap ") }) {
		t.Errorf("the size left is not among them: %q", marks)
	}
	if !slices.ContainsFunc(marks, func(m string) bool {
		return strings.HasPrefix(m, "Your readings: cap 1.06") && strings.Contains(m, "±")
	}) {
		t.Errorf("the readings are not among them: %q", marks)
	}
	b.do("to the first mark", chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-hood] [tabindex]").focus()`))
	for i, mark := range marks {
		if at := see[string](b, focused); at != mark {
			t.Fatalf("mark %d: the keyboard is at %q, want %q", i, at, mark)
		}
		if told := see[string](b, `document.querySelector(".hood__told").textContent`); told != mark {
			t.Errorf("mark %d: %q is shown, want %q", i, told, mark)
		}
		b.do("on", chromedp.KeyEvent(kb.Tab))
	}
	type counts struct{ Names, Lines int }
	got := see[counts](b, `({
		Names: new Set([...document.querySelectorAll("[data-hood] .hood__mark:not(.hood__mark--you)")].map(e => e.getAttribute("aria-label"))).size,
		Lines: document.querySelectorAll("[data-hood] tbody tr").length})`)
	if got.Names != got.Lines {
		t.Errorf("%d sizes in the picture, %d in the table", got.Names, got.Lines)
	}
}

// The boxes are to scale: in one picture, the one round the readings is to the one round
// the size as the one's uncertainty is to the other's.
func TestPictureToScale(t *testing.T) {
	b := openTab(t)
	b.judge(reading1310)
	type scales struct{ Own, Reach, Apart []float64 }
	got := see[scales](b, `(() => {
		const box = (kind) => { const e = document.querySelector(".hood__picture " + kind).getBBox(); return [e.width, e.height, e.x + e.width / 2, e.y + e.height / 2]; };
		const own = box(".hood__own"), reach = box(".hood__mark--left .hood__reach");
		return {Own: own, Reach: reach, Apart: [reach[2] - own[2], own[3] - reach[3]]};
	})()`)
	type lengths struct{ Own, Reach, Off []float64 }
	want, err := chromedp.Run(b.ctx, chromedp.Evaluate[lengths](`(async () => {
		const chart = await (await fetch(document.querySelector("[data-identify]").dataset.chart)).json();
		const a = CapspanCore.identify(chart, CapspanCore.decodeAddress(location.hash).query);
		const of = (q) => a.readings.find(r => r.quantity === q).uncertainty, c = a.sizes[0].ends[0];
		return {Own: [of("across"), of("cap")], Reach: [c.across.uncertainty, c.cap.uncertainty], Off: [-c.across.difference, -c.cap.difference]};
	})()`, chromedp.EvalAwaitPromise))
	if err != nil {
		t.Fatal(err)
	}
	for i, axis := range []string{"across", "cap"} {
		perMM := got.Own[i] / (2 * want.Own[i])
		if drawn := got.Reach[i] / (2 * want.Reach[i]); drawn < 0.99*perMM || drawn > 1.01*perMM {
			t.Errorf("%s: the box of the readings has %.1f units a mm, that of the size %.1f", axis, perMM, drawn)
		}
		if off := got.Apart[i] - want.Off[i]*perMM; off < -0.1 || off > 0.1 {
			t.Errorf("%s: the size lies %.2f units off its place", axis, off)
		}
	}
}

// Once a drawing has come, all of them are there without a network; where none can
// come, the words stand alone.
func TestDrawingsWithoutNetwork(t *testing.T) {
	server := httptest.NewServer(build.Handler(site, base))
	b := openTab(t)
	b.do("open", chromedp.Navigate(server.URL+base+"identify/"))
	b.until("the form", ready)
	late := openTab(t)
	late.do("open", chromedp.Navigate(server.URL+base+"identify/"))
	late.until("the form", ready)
	b.choose("hold", "outside-clip")
	b.until("its drawing", `document.querySelector('[data-faces-of="outside-clip"] svg title')`)
	server.CloseClientConnections()
	server.Close()
	b.choose("hold", "plate")
	b.until("another drawing", `document.querySelector('[data-faces-of="plate"] svg title')`)
	late.choose("hold", "plate")
	late.until("a word instead", `document.querySelector('[data-faces-of="plate"] [data-no-drawing]')`)
	for _, reading := range []string{"30.16 mm", "30.17 mm"} {
		late.do("cap", chromedp.SendKeys(chromedp.CSS(capField), reading+kb.Enter))
	}
	late.until("a verdict all the same", `document.querySelector("[data-verdict-head] .verdict--measure-again, [data-verdict-head] .verdict--possible, [data-verdict-head] .verdict--between, [data-verdict-head] .verdict--not-in-chart")`)
}

// Opening readings moves nothing that was shown: not the form when it comes, not a
// drawing that is fetched, not the picture.
func TestOpeningMovesNothing(t *testing.T) {
	for _, name := range slices.Sorted(maps.Keys(verdicts)) {
		for _, width := range []int64{360, 1280} {
			b := openTab(t)
			b.do("resize", chromedp.EmulateViewport(width, 800))
			b.judge(verdicts[name])
			see[bool](b, `(() => {
				window.shifted = 0;
				new PerformanceObserver((list) => { for (const e of list.getEntries()) window.shifted += e.value; }).observe({type: "layout-shift", buffered: true});
				return true;
			})()`)
			if _, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](settle, chromedp.EvalAwaitPromise)); err != nil {
				t.Fatal(err)
			}
			if got := see[float64](b, "window.shifted"); got > 0.001 {
				t.Errorf("%s at %d px: the layout moved by %.3f", name, width, got)
			}
		}
	}
}

// Where the script has no chart to work with, the method by hand is there at once.
func TestByHandWhenTheChartFails(t *testing.T) {
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if strings.Contains(r.URL.Path, "/assets/chart.") {
			http.NotFound(w, r)
			return
		}
		build.Handler(site, base).ServeHTTP(w, r)
	}))
	defer server.Close()
	b := openTab(t)
	b.do("open", chromedp.Navigate(server.URL+base+"identify/"))
	b.until("what went wrong", `document.querySelector("[data-trouble] button")`)
	if !see[bool](b, `document.querySelector("[data-by-hand] .prose").checkVisibility({visibilityProperty: true})`) {
		t.Error("the method by hand is not shown")
	}
}

// Every part of the verdict on every screen, and its controls large enough for a glove.
func TestVerdictsOnSmallScreens(t *testing.T) {
	b := openTab(t)
	for _, name := range slices.Sorted(maps.Keys(verdicts)) {
		b.judge(verdicts[name])
		for _, width := range []int64{320, 360, 768, 1280} {
			b.do("resize", chromedp.EmulateViewport(width, 800))
			if wide := see[[]string](b, tooWide); len(wide) > 0 {
				t.Errorf("%s at %d px scrolls sideways: %s", name, width, strings.Join(wide, ", "))
			}
			small := see[[]string](b, `[...document.querySelectorAll("[data-board] :is(button, input:not([type=radio]), select, .taken__one, .hold, .faces__choice, .btn)")]
				.filter(e => e.getClientRects().length > 0 && (e.getBoundingClientRect().height < 43.9 || e.getBoundingClientRect().width < 43.9))
				.map(e => e.outerHTML.slice(0, 80))`)
			if len(small) > 0 {
				t.Errorf("%s at %d px: too small for a glove: %q", name, width, small)
			}
		}
		b.calm(name)
	}
}
