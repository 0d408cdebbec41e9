//go:build browser

package browser

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// reading1310 is the query of the story as an address. That these six cap readings and
// three readings over the caps of an outside-clip joint are a 1310 is trade practice.
const reading1310 = "hold=outside-clip&cap=1.060in,1.060in,1.060in,1.060in,1.060in,1.061in&across=3.226in,3.221in,3.222in"

// Hooks of templates/identify.html, and what the parts put into them.
const (
	capField    = `[data-quantity="cap"] [data-reading]`
	acrossField = `[data-quantity="across"] [data-reading]`
	ready       = `document.querySelector("[data-identify][data-ready]")`
	verdictText = `document.querySelector("[data-verdict-head]").innerText`
)

// judged waits for a verdict and returns its sentence.
func (b *tab) judged(verdict string) string {
	b.t.Helper()
	b.until("the verdict "+verdict, `document.querySelector("[data-verdict-head] .verdict--`+verdict+`")`)
	return see[string](b, verdictText)
}

// readings returns the chips of a quantity.
func (b *tab) readings(quantity string) []string {
	b.t.Helper()
	return see[[]string](b, `[...document.querySelectorAll('[data-quantity="`+quantity+`"] .reading__text')].map(e => e.textContent)`)
}

// The main job, as somebody does it who has a worn joint on the bench: home, identify,
// readings by a caliper that types, verdict, the row, back, and the address to a friend.
func TestIdentifyStory(t *testing.T) {
	b := openTab(t)
	b.open("/")
	b.do("follow the way to identify", chromedp.Click(chromedp.CSS(`main a[href$="/identify/"]`)))
	b.until("the form", ready)
	b.do("choose the hold", chromedp.Click(chromedp.CSS(`label:has([data-hold][value="outside-clip"])`)))
	for _, reading := range []string{"1.060", "1.060", "1.060", "1.060", "1.060", "1.061"} {
		b.do("cap "+reading, chromedp.SendKeys(chromedp.CSS(capField), reading+kb.Enter))
	}
	for _, reading := range []string{"3.226", "3.221", "3.222"} {
		b.do("across "+reading, chromedp.SendKeys(chromedp.CSS(acrossField), reading+kb.Enter))
	}
	if caps, across := b.readings("cap"), b.readings("across"); len(caps) != 6 || len(across) != 3 {
		t.Fatalf("readings taken: %q and %q, want 6 and 3", caps, across)
	}
	// The hold and figures of the 1310 are common practice: how strong the claim may be
	// is the core's to say, and told by its own tests. Here it must name the row.
	b.until("the verdict identified", `/verdict--identified/.test(document.querySelector("[data-verdict-head]").innerHTML)`)
	said := see[string](b, verdictText)
	if !strings.Contains(said, "1310") {
		t.Fatalf("the verdict does not name the 1310: %s", said)
	}
	address := see[string](b, "location.href")
	for _, part := range []string{"#", "hold=outside-clip", "chart=" + site.Chart.Name()} {
		if !strings.Contains(address, part) {
			t.Errorf("the address %s does not hold %q", address, part)
		}
	}

	b.do("open the row", chromedp.Click(chromedp.CSS(`[data-verdict-body] a[href$="/joint/1310/"]`)))
	b.until("the row's page", `location.pathname.endsWith("/joint/1310/") && document.querySelector("h1").textContent.includes("1310")`)
	b.do("go back", chromedp.NavigateBack())
	b.until("the form again", ready)
	b.until("the same verdict after going back", verdictText+" === "+quote(said))
	b.calm("the story")

	friend := openTab(t)
	friend.do("open the shared address", chromedp.Navigate(address))
	friend.until("the form", ready)
	friend.until("the same verdict", verdictText+" === "+quote(said))
	if got := friend.readings("cap"); len(got) != 6 {
		t.Errorf("the friend sees the cap readings %q", got)
	}
	friend.calm("the shared address")
}

// A reading that cannot be read stays in the field with its complaint, and is not counted.
func TestUnreadableReading(t *testing.T) {
	b := openTab(t)
	b.open("/identify/")
	b.until("the form", ready)
	b.do("type nonsense", chromedp.SendKeys(chromedp.CSS(capField), "1.0.6"+kb.Enter))
	b.until("the complaint", `!document.querySelector('[data-quantity="cap"] [data-complaint]').hidden`)
	if got := b.readings("cap"); len(got) != 0 {
		t.Errorf("readings %q, want none", got)
	}
	if got := see[string](b, `document.querySelector('`+capField+`').value`); got != "1.0.6" {
		t.Errorf("the field holds %q, want what was typed", got)
	}
	b.calm("an unreadable reading")
}

// A joint in no row is told so: 28.0 x 92.0 mm, outside clip.
func TestNotInChart(t *testing.T) {
	b := openTab(t)
	b.open("/identify/#hold=outside-clip&cap=28.00mm,28.01mm,28.00mm&across=92.00mm,92.02mm,92.01mm")
	b.until("the form", ready)
	b.judged("not-in-chart")
	b.calm("not in the chart")
}

// With scripts off every page is complete: tables and drawings are in the page, and
// identify shows the method by hand.
func TestWithoutScript(t *testing.T) {
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	// The test's own questions are still answered.
	shown := func(selector string) bool {
		return see[bool](b, `[...document.querySelectorAll(`+quote(selector)+`)].some(e => e.getClientRects().length > 0 && e.checkVisibility({visibilityProperty: true}))`)
	}
	b.open("/identify/")
	if !shown("[data-by-hand] .prose *") {
		t.Error("identify: the method by hand is not shown")
	}
	if shown("[data-board]") {
		t.Error("identify: a form is shown that nothing answers")
	}
	b.open("/chart/joints-inch/")
	if !strings.Contains(see[string](b, `document.querySelector("table").innerText`), "1310") {
		t.Error("chart: the rows are not there")
	}
	if shown("input, select, button") {
		t.Error("chart: a control is shown that does nothing")
	}
	b.open("/joint/1310/")
	if !shown("main svg") {
		t.Error("row: the drawing is not there")
	}
	b.calm("without script")
}

// An address is anybody's to write: whatever stands behind the # is text, never markup,
// and never a verdict that its readings do not carry.
func TestHostileAddresses(t *testing.T) {
	tests := []struct{ name, fragment string }{
		{"markup", "hold=outside-clip&cap=%3Cimg%20src%3Dx%20onerror%3D%22window.bent%3D1%22%3E&across=3.22in"},
		{"markup in the hold", "hold=%3Cscript%3Ewindow.bent%3D1%3C%2Fscript%3E&cap=1.062in"},
		{"markup in the chart", "hold=strap&cap=1.062in&chart=%3Cb%20id%3Dbent%3E"},
		{"broken escapes", "hold=%E0%A4%A&cap=%&across=%zz"},
		{"names of the language", "__proto__=1&constructor=2&hold=__proto__&faces=constructor&cap=toString"},
		{"nothing but signs", "&&&===&;&hold&cap=&across=,,,,"},
		{"no numbers", "hold=outside-clip&cap=NaN,Infinity,-1in,0in,1e999mm,0x10in&across=3.22in"},
		{"very many", "hold=outside-clip&cap=" + strings.Repeat("1.062in,", 5000)},
		{"very long", "hold=outside-clip&cap=" + strings.Repeat("9", 100_000) + "in"},
		{"twice", "hold=strap&hold=plate&cap=1.062in&cap=2in&hold2=wing&hold3=wing"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b := openTab(t)
			b.open("/identify/#" + test.fragment)
			b.until("the form", ready)
			if see[bool](b, `window.bent !== undefined || document.getElementById("bent") !== null || document.querySelector("[data-board] img, [data-board] script, [data-trouble] img") !== null`) {
				t.Error("text of the address became part of the page")
			}
			if see[bool](b, `document.querySelector(".verdict--identified") !== null`) {
				t.Errorf("it was identified: %s", see[string](b, verdictText))
			}
			b.calm(test.name)
		})
	}
}

// The filter of a table page understands a name and leaves the others out.
func TestTableFilter(t *testing.T) {
	b := openTab(t)
	b.open("/chart/joints-inch/")
	rows := `[...document.querySelectorAll("tbody tr")].filter(r => r.getClientRects().length > 0).length`
	all := see[int](b, rows)
	b.do("filter", chromedp.SendKeys(chromedp.CSS(`main input[type="search"]`), "1310"))
	b.until("fewer rows", fmt.Sprintf("%s < %d", rows, all))
	if !see[bool](b, `[...document.querySelectorAll("tbody tr")].some(r => r.getClientRects().length > 0 && r.textContent.includes("1310"))`) {
		t.Error("the row 1310 is filtered away")
	}
	b.calm("the filter")
}

// quote writes a text as JavaScript reads it.
func quote(text string) string {
	b, err := json.Marshal(text)
	if err != nil {
		panic("internal error: " + err.Error()) // a string can be written
	}
	return string(b)
}
