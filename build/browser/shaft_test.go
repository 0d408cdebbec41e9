//go:build browser

package browser

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

// Hooks of templates/shaft.html.
const (
	shaftReady = `document.querySelector("[data-shaft][data-ready]")`
	charted    = `document.querySelector("[data-shaft][data-charted]")`
	sheetText  = `document.querySelector("[data-sheet]").innerText`
	shelfText  = `document.querySelector("[data-list]").innerText`
)

// reads gives a file to the page's import.
func (b *tab) reads(text string) {
	b.t.Helper()
	name := filepath.Join(b.t.TempDir(), "record.json")
	if err := os.WriteFile(name, []byte(text), 0o600); err != nil {
		b.t.Fatal(err)
	}
	b.do("read a file", chromedp.SetUploadFiles(chromedp.CSS("[data-import]"), []string{name}))
}

// demoRecord is a file of the demo, the trolley of a small railway; its figures are invented.
const demoRecord = `{"kind": "shaft-record", "format": 1, "title": "Trolley, front shaft", "job": "Inspection trolley", "date": "2026-11-20",
	"joints": [{"place": "gearbox end", "identification": "` + reading + `", "clips": "1.50 mm, both sides"}, {"place": "axle end", "row": "7260-to-1310"}],
	"figures": [{"label": "Flange to flange", "value": "640 mm"}], "notes": "Guard loop fitted.",
	"calculations": [{"calculation": "angles", "fragment": "joints=2", "title": "Angles of the shaft",
		"lines": [{"label": "Residual angle", "value": "0.50", "unit": "°", "formula": "f", "source": ["derived"]}],
		"limits": [{"of": "Residual angle", "limit": "at most 1°", "stands": [{"of": "", "value": "0.50 °", "met": "within"}], "source": ["common practice"]}], "unchecked": ["The balance."]}]}`

// A record is begun, filled, kept, found again, saved as a file and read back elsewhere.
func TestShaftStory(t *testing.T) {
	b := openTab(t)
	b.phone()
	b.open("/order/#" + reading)
	b.until("the slip", orderReady)
	b.write(`[data-text="job"]`, "Inspection trolley")
	b.click("[data-keep-it]")
	b.until("it is kept", `document.querySelector("[data-keep-said] a")`)
	b.click("[data-keep-said] a")
	b.until("the record", shaftReady+` && `+charted+` && !document.querySelector("[data-record]").hidden`)
	b.write("[data-title]", "Trolley, front shaft")
	b.write("[data-record] [data-add]", "7260-to-1310"+kb.Enter)
	b.until("the second joint", `document.querySelectorAll("[data-joint]").length === 2`)
	b.write(`[data-joint]:nth-of-type(1) [data-clips]`, "1.50 mm, both sides")
	b.click("[data-figure-add]")
	b.write("[data-figure-label]", "Flange to flange")
	b.write("[data-figure-value]", "640 mm")
	b.write("[data-notes]", "Guard loop fitted.")
	if wide := see[int](b, `document.documentElement.scrollWidth`); wide > 360 {
		t.Errorf("the page is %d px wide on a phone of 360", wide)
	}
	for _, want := range []string{"Trolley, front shaft", "Inspection trolley", "1350", "7260-to-1310", "1.50 mm, both sides", "±", "Flange to flange: 640 mm", "Guard loop fitted.", "Chosen by name, not measured", "rated stands"} {
		if said := see[string](b, sheetText); !strings.Contains(said, want) {
			t.Errorf("the sheet lacks %q:\n%s", want, said)
		}
	}
	b.onePage("the sheet")
	if back := b.decodes("[data-sheet] .slip__joint:nth-of-type(1) svg"); back != origin+base+"identify/#"+reading {
		t.Errorf("the code leads to %s", back)
	}
	if href := see[string](b, `document.querySelector("[data-enquiry]").href`); !strings.Contains(href, "/order/#check=") || !strings.Contains(href, "row=7260") {
		t.Errorf("the enquiry is %s", href)
	}
	sheet := see[string](b, sheetText)
	b.do("reload", chromedp.Reload())
	b.until("the record again", charted+` && `+sheetText+` === `+quote(sheet))
	file := b.saves("[data-record] [data-file]", "shaft-trolley-front-shaft.json")
	bySchema(t, "shaft-1.json", file)
	b.calm("the record")

	other := openTab(t) // another device
	other.open("/shaft/")
	other.until("the page", charted)
	other.reads(string(file))
	other.until("the same sheet", sheetText+` === `+quote(sheet))
	other.calm("another device")
}

// The storage fails in every way it can; the page in hand is never lost, and says so.
func TestShaftStorageFails(t *testing.T) {
	for name, fault := range map[string]string{
		"full":      `Storage.prototype.setItem = () => { throw new DOMException("full", "QuotaExceededError") }`,
		"forbidden": `Object.defineProperty(window, "localStorage", {get() { throw new DOMException("no", "SecurityError") }})`,
		"mute":      `Storage.prototype.setItem = () => {}`,
	} {
		t.Run(name, func(t *testing.T) {
			b := openTab(t)
			if _, err := chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{Source: fault}); err != nil {
				t.Fatal(err)
			}
			b.open("/shaft/")
			b.until("the page", charted)
			b.reads(demoRecord)
			b.until("it is said", `document.querySelector("[data-kept]").innerText.includes("Save it as a file")`)
			b.write("[data-by]", "K.")
			b.until("the sheet goes on", sheetText+`.includes("K.") && `+sheetText+`.includes("Guard loop")`)
			if name == "forbidden" && see[bool](b, `document.querySelector("[data-no-storage]").hidden`) {
				t.Error("it is not said that nothing is kept")
			}
			bySchema(t, "shaft-1.json", b.saves("[data-record] [data-file]", "shaft-trolley-front-shaft.json"))
			b.calm(name)
		})
	}
}

// Damaged entries are shown and never lost by themselves; deleting has a way back.
func TestShaftDamagedAndDeleted(t *testing.T) {
	b := openTab(t)
	b.open("/shaft/")
	b.until("the page", charted)
	b.reads(demoRecord)
	b.until("the record", shelfText+`.includes("Trolley, front shaft")`)
	see[bool](b, `localStorage.setItem("capspan-shaft-broken1", "{\"kind\": \"sha"), localStorage.setItem("capspan-shaft-half1", JSON.stringify({kind: "shaft-record", format: 2, title: "From later", joints: [7], figures: [], calculations: []})), true`)
	b.open("/404.html")
	b.open("/shaft/")
	b.until("both are listed", shelfText+`.includes("cannot be read") && `+shelfText+`.includes("From later")`)
	if raw := b.savesRaw(`[aria-label="Save it as it is: the damaged record"]`); raw != `{"kind": "sha` {
		t.Errorf("the damaged record is saved as %q", raw)
	}
	b.click(`[aria-label="Open From later"]`)
	b.until("what could not be read", `/joints\[0\].*later edition|later edition.*joints\[0\]/s.test(document.querySelector("[data-trouble]").innerText)`)
	b.click(`[aria-label="Delete Trolley, front shaft"]`)
	b.until("it is gone", `!`+shelfText+`.includes("Trolley, front shaft") && document.activeElement.innerText === "Put it back"`)
	b.do("back", chromedp.KeyEvent(kb.Enter))
	b.until("it is back", shelfText+`.includes("Trolley, front shaft")`)
	b.calm("damaged")
}

// savesRaw reads a saved file that is no JSON, as the page made it.
func (b *tab) savesRaw(selector string) string {
	b.t.Helper()
	see[bool](b, `(f => { URL.createObjectURL = blob => { blob.text().then(text => { window.savedText = text }); return f.call(URL, blob) } })(URL.createObjectURL), true`)
	b.click(selector)
	b.until("the file", `window.savedText !== undefined`)
	return see[string](b, "window.savedText")
}

// Two windows write to one record: both versions stay.
func TestShaftTwoWindows(t *testing.T) {
	b := openTab(t)
	b.open("/shaft/")
	b.until("the page", charted)
	b.reads(demoRecord)
	b.until("the record", shelfText+`.includes("Trolley, front shaft")`)
	// The other window is an entry that changes behind this page's back.
	see[bool](b, `(key => { const theirs = JSON.parse(localStorage.getItem(key)); theirs.notes = "Theirs."; localStorage.setItem(key, JSON.stringify(theirs)) })(Object.keys(localStorage).find(k => k.startsWith("capspan-shaft-"))), true`)
	b.write("[data-notes]", "Ours.")
	b.until("a copy", shelfText+`.includes("Trolley, front shaft (copy)") && document.querySelector("[data-note-said]").innerText.includes("kept as a copy")`)
	kept := see[string](b, `Object.keys(localStorage).filter(k => k.startsWith("capspan-shaft-")).map(k => JSON.parse(localStorage.getItem(k)).notes).sort().join(" ")`)
	if kept != "Ours. Theirs." {
		t.Errorf("kept are %q", kept)
	}
	b.calm("two windows")
}

// A file that cannot be read is said with its place, and what is open stays.
func TestShaftImports(t *testing.T) {
	b := openTab(t)
	b.open("/shaft/")
	b.until("the page", charted)
	b.reads(demoRecord)
	b.until("the record", sheetText+`.includes("Guard loop")`)
	for text, says := range map[string]string{
		"hello":               "line 1, column 1",
		`{"kind": "enquiry"}`: "enquiry, not a shaft record",
		"[1, 2]":              "no shaft record",
	} {
		b.reads(text)
		b.until("says of "+text, `document.querySelector("[data-trouble]").innerText.includes(`+quote(says)+`)`)
		if !see[bool](b, sheetText+`.includes("Guard loop")`) {
			t.Errorf("%q: what was open is gone", text)
		}
	}
	cut, _, _ := strings.Cut(demoRecord, `"calculations"`)
	b.reads(cut)
	b.until("a cut file", `document.querySelector("[data-trouble]").innerText.includes("damaged at line 4") && `+sheetText+`.includes("7260-to-1310")`)
	b.calm("imports")
}

// The fullest record is still one page.
func TestShaftFullest(t *testing.T) {
	b := openTab(t)
	b.open("/shaft/")
	b.until("the page", charted)
	plain := func(most int) string {
		return strings.Repeat("As long as it may be, in words of a plain kind. ", 20)[:most-1] + "x"
	}
	var lines, calculations, figures, joints []string
	for range 60 {
		lines = append(lines, `{"label": "`+plain(40)+`", "value": "1234.56", "unit": "N·m", "also": "910.5 lbf·ft", "formula": "f", "source": ["derived"]}`)
	}
	for i := range 9 {
		calculations = append(calculations, fmt.Sprintf(`{"calculation": "angles", "fragment": "n=%d", "title": "%s", "lines": [%s], "limits": [], "unchecked": ["%s", "%s"]}`,
			i, plain(40), strings.Join(lines, ","), plain(100), plain(100)))
	}
	for range 12 {
		figures = append(figures, `{"label": "`+plain(40)+`", "value": "`+plain(40)+`"}`)
	}
	for range 3 {
		joints = append(joints, `{"place": "`+plain(40)+`", "clips": "`+plain(60)+`", "note": "`+plain(120)+
			`", "identification": "hold=inside-clip&faces=groove-inner&cap=1.078in,1.079in&across=2.125in&hold2=outside-clip&cap2=1.062in&across2=3.219in&unit=in"}`)
	}
	b.reads(`{"kind": "shaft-record", "format": 1, "title": "` + plain(60) + `", "job": "` + plain(60) + `", "by": "` + plain(60) + `", "notes": "` + plain(600) + `", "joints": [` +
		strings.Join(joints, ",") + `], "figures": [` + strings.Join(figures, ",") + `], "calculations": [` + strings.Join(calculations, ",") + `]}`)
	b.until("the record", sheetText+`.includes("7260-to-1310")`)
	if said := see[string](b, sheetText); !strings.Contains(said, "more lines on its page") {
		t.Error("lines are left out and nobody is told")
	}
	b.onePage("the fullest record")
	b.calm("the fullest record")
}
