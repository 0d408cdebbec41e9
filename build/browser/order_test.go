//go:build browser

package browser

import (
	"bytes"
	"encoding/json"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	goqr "github.com/piglig/go-qr"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

// Hooks of templates/order.html.
const (
	orderReady = `document.querySelector("[data-order][data-ready]")`
	slipText   = `document.querySelector("[data-slip]").innerText`
	slipLink   = `document.querySelector("[data-order] [data-link]").value`
	reading    = "hold=outside-clip&faces=over-caps&cap=1.187in,1.188in&across=3.626in,3.627in&unit=in&tool=digital-caliper&condition=used" // of a 1350
)

// press clicks what a selector finds.
func (b *tab) click(selector string) {
	b.t.Helper()
	b.do("press "+selector, chromedp.Click(chromedp.CSS(selector)))
}

// write puts a text into a field as a person does, in the place of what is there.
func (b *tab) write(selector, text string) {
	b.t.Helper()
	b.do("write into "+selector, chromedp.Evaluate[chromedp.Void](`(e => { e.focus(); e.select() })(document.querySelector(`+quote(selector)+`))`),
		chromedp.SendKeys(chromedp.CSS(selector), kb.Backspace+text))
}

// saves presses a button that saves a file, and reads the file.
func (b *tab) saves(selector, name string) []byte {
	b.t.Helper()
	dir := b.t.TempDir()
	if _, err := chromedp.Call(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: "allow", BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID, DownloadPath: dir}); err != nil {
		b.t.Fatal(err)
	}
	b.click(selector)
	for end := time.Now().Add(10 * time.Second); time.Now().Before(end); time.Sleep(20 * time.Millisecond) {
		if text, err := os.ReadFile(filepath.Join(dir, name)); err == nil && len(text) > 0 && json.Valid(text) {
			return text
		}
	}
	there, _ := os.ReadDir(dir)
	b.t.Fatalf("no file %s came; the folder has %v", name, there)
	return nil
}

// bySchema holds a file to its published form, as the site serves it, by a library of
// somebody else's.
func bySchema(t testing.TB, name string, text []byte) {
	t.Helper()
	c := jsonschema.NewCompiler()
	for _, f := range site.Files {
		if f.Path == "schema/"+name {
			doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(f.Bytes))
			if err != nil {
				t.Fatal(err)
			}
			if err := c.AddResource(name, doc); err != nil {
				t.Fatal(err)
			}
		}
	}
	schema, err := c.Compile(name)
	if err != nil {
		t.Fatal(err)
	}
	value, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	if err := schema.Validate(value); err != nil {
		t.Errorf("%s: %v", name, err)
	}
}

// decodes reads the picture of a selector off the screen by a decoder of somebody else's.
func (b *tab) decodes(selector string) string {
	b.t.Helper()
	shot, err := chromedp.Run(b.ctx, chromedp.Screenshot(chromedp.CSS(selector)))
	if err != nil {
		b.t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		b.t.Fatal(err)
	}
	text, err := goqr.Decode(img)
	if err != nil {
		b.t.Fatalf("%s is not read: %v", selector, err)
	}
	return text
}

// onePage prints what is in the tab on both papers.
func (b *tab) onePage(what string) {
	b.t.Helper()
	for _, paper := range papers {
		if got := pages(b.t, b.print(paper)); got != 1 {
			b.t.Errorf("%s on %s: %d pages, want 1", what, paper.name, got)
		}
	}
}

// From a verdict to the counter, on a phone: two joints on one slip, on one page, as a
// message, as a mail and as a file, with codes that lead back.
func TestOrderStory(t *testing.T) {
	b := openTab(t)
	b.phone()
	b.open("/identify/#" + reading)
	b.until("the verdict", `document.querySelector("[data-verdict-head] .verdict--identified")`)
	b.click(`[data-verdict-body] a[href*="/order/#"]`)
	b.until("the slip", orderReady)
	for _, want := range []string{"Identified by readings", "1350", "30.2x92", "1.188 in (≈ 30.18 mm)", "common practice", "±", "2 readings", "over the caps", "Not to be mixed up with", "1355", site.Chart.Name(), "Not checked"} {
		if said := see[string](b, slipText); !strings.Contains(said, want) {
			t.Errorf("the slip lacks %q:\n%s", want, said)
		}
	}
	b.write("[data-count]", "2")
	b.write("[data-place]", "gearbox end")
	b.click(`label:has([data-grease][value="sealed"])`)
	b.click(`label:has([data-extra="clips"])`)
	b.write(`[data-extra-count="clips"]`, "8")
	b.write(`[data-text="from"]`, "The shed")
	b.write(`[data-text="job"]`, "Inspection trolley")

	// The second joint comes from the identify page and asks whether it belongs here.
	b.open("/identify/#hold=inside-clip&faces=groove-inner&cap=1.078in&across=2.125in&hold2=outside-clip&cap2=1.062in&across2=3.219in&unit=in")
	b.until("the verdict", `document.querySelector('[data-verdict-body] a[href*="/order/#"]')`)
	b.click(`[data-verdict-body] a[href*="/order/#"]`)
	b.until("the question", orderReady+` && document.querySelector("[data-begun-says]").textContent.includes("1350") && !document.querySelector("[data-begun]").hidden`)
	b.click("[data-join]")
	b.until("both joints", `document.querySelectorAll("[data-slip] .slip__joint").length === 2`)
	said := see[string](b, slipText)
	for _, want := range []string{"2 wanted · for: gearbox end", "sealed for life", "8 clips", "7260-to-1310", "1. One end (7260)", "2. The other end (1310)", "The shed", "Inspection trolley"} {
		if !strings.Contains(said, want) {
			t.Errorf("the slip lacks %q:\n%s", want, said)
		}
	}
	if wide := see[int](b, `document.documentElement.scrollWidth`); wide > 360 {
		t.Errorf("the page is %d px wide on a phone of 360", wide)
	}
	b.onePage("the slip of two joints")

	link := see[string](b, slipLink)
	if !strings.Contains(link, base+"order/#check=") || len(link) > 2000 || link != see[string](b, "location.href") {
		t.Errorf("the link is %s", link)
	}
	sms := see[string](b, `decodeURIComponent(document.querySelector("[data-sms]").href)`)
	if !strings.HasPrefix(sms, "sms:?&body=Enquiry") || !strings.Contains(sms, "2 x 1350") || !strings.Contains(sms, link) {
		t.Errorf("the text message is %s", sms)
	}
	mail := see[string](b, `decodeURIComponent(document.querySelector("[data-mail]").href)`)
	if !strings.Contains(mail, "subject=Enquiry: universal joint 1350, 7260-to-1310, Inspection trolley") || !strings.Contains(mail, "Read with a digital caliper") || !strings.Contains(mail, link) {
		t.Errorf("the mail is %s", mail)
	}
	file := b.saves("[data-out] [data-file]", "enquiry.json")
	bySchema(t, "enquiry-1.json", file)
	if !strings.Contains(string(file), `"link": "`+link+`"`) || !strings.Contains(string(file), `"settled": "identified"`) {
		t.Errorf("the file is %s", file)
	}
	if back := b.decodes("[data-slip] .slip__joint:nth-of-type(1) svg"); back != origin+base+"identify/#"+reading+"&chart="+site.Chart.Name() {
		t.Errorf("the code leads to %s", back)
	}
	b.calm("the slip")

	// Who gets the link sees the same slip.
	counter := openTab(t)
	counter.do("open the link", chromedp.Navigate(link))
	counter.until("the slip", orderReady)
	if got := see[string](counter, slipText); got != see[string](b, slipText) {
		t.Errorf("the counter sees\n%s", got)
	}
	counter.calm("the counter")
}

// A row's page leads to a slip that says it was not measured; a slip that was cut says so.
func TestOrderFromRowAndCutLink(t *testing.T) {
	b := openTab(t)
	b.open("/joint/22x54/")
	b.click(`main a[href*="/order/#row="]`)
	b.until("the slip", orderReady)
	said := see[string](b, slipText)
	for _, want := range []string{"Chosen by name, not measured", "22x54", "published: PTO shaft parts list", "elsewhere 2 1/8 in"} {
		if !strings.Contains(said, want) {
			t.Errorf("the slip lacks %q:\n%s", want, said)
		}
	}
	if lines := see[int](b, `document.querySelectorAll("[data-slip] table .slip__line").length`); lines != 3 {
		t.Errorf("%d lines for readings, want 3", lines)
	}
	if back := b.decodes("[data-slip] svg"); back != origin+base+"joint/22x54/" {
		t.Errorf("the code leads to %s", back)
	}
	fragment := see[string](b, "location.hash.slice(1)")
	b.open("/404.html")
	b.open("/order/#" + fragment[:len(fragment)/2])
	b.until("the page", orderReady)
	if got := see[string](b, `document.querySelector("[data-trouble]").innerText`); !strings.Contains(got, "lost a piece") {
		t.Errorf("a cut link says %q", got)
	}
	b.calm("row and cut link")
}

// The fullest slip that can be made is still one page, and one too long for a link says
// what to do and can still be printed and saved.
func TestOrderFullest(t *testing.T) {
	b := openTab(t)
	wide := strings.Repeat("W", 60)
	joint := "&joint=99&place=" + wide[:40] + "&with=clips,straps,u-bolts,plate-bolts&"
	slip := "shop=" + wide + "&shop-at=" + wide + "&from=" + wide + "&from-at=" + wide + "&job=" + wide + "&say=" + strings.Repeat("W", 240) +
		strings.Repeat(joint+"hold=inside-clip&faces=groove-inner&cap=1.078in,1.079in&across=2.125in&hold2=outside-clip&faces2=over-caps&cap2=1.062in&across2=3.219in&unit=in", 3)
	b.open("/order/#" + slip)
	b.until("the slip", orderReady)
	b.onePage("the fullest slip")
	b.until("the link is refused", `document.querySelector("[data-too-long]").innerText.includes("second slip") === (`+slipLink+` === "")`)
	b.write(`[data-text="note"]`, strings.Repeat("関", 240))
	b.until("the link is refused", `document.querySelector("[data-too-long]").innerText.includes("second slip") && document.querySelector("[data-ready-link]").hidden`)
	bySchema(t, "enquiry-1.json", b.saves("[data-out] [data-file]", "enquiry.json"))
	b.onePage("a slip too long for a link")
	b.calm("the fullest slip")
}

// Wrong numbers and names are answered in place, taking off has a way back, and a slip
// begun in the window comes back.
func TestOrderForm(t *testing.T) {
	b := openTab(t)
	b.phone()
	b.open("/order/")
	b.until("the page", orderReady)
	if !strings.Contains(see[string](b, slipText), "Joint 2") {
		t.Error("without a joint the blank slip is not shown")
	}
	b.write("[data-order] [data-add]", "1234x"+kb.Enter)
	b.until("the complaint", `document.querySelector("[data-add-wrong]").innerText.includes("1234x")`)
	b.write("[data-order] [data-add]", "1310"+kb.Enter)
	b.until("the joint", `document.querySelectorAll("[data-slip] .slip__joint").length === 1 && document.querySelector("[data-slip]").innerText.includes("1310")`)
	b.write("[data-count]", "0")
	b.until("the complaint", `document.querySelector("[data-count-wrong]").innerText.includes("from 1 to 99")`)
	b.write("[data-count]", "3")
	b.until("three", slipText+`.includes("3 wanted")`)
	b.click("[data-remove]")
	b.until("none", `document.querySelectorAll("[data-joint]").length === 0 && document.activeElement.innerText === "Put it back"`)
	b.do("back", chromedp.KeyEvent(kb.Enter))
	b.until("it is back", slipText+`.includes("3 wanted")`)
	b.open("/404.html")
	b.open("/order/")
	b.until("the slip begun", orderReady+` && `+slipText+`.includes("3 wanted")`)
	b.calm("the form")
}

// Without script there is a blank slip on one page, and no control that does nothing.
func TestOrderWithoutScript(t *testing.T) {
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	for _, address := range []string{"/order/", "/shaft/"} {
		b.open(address)
		if see[bool](b, `[...document.querySelectorAll("main input, main button, main select, main textarea")].some(e => e.getClientRects().length > 0)`) {
			t.Errorf("%s without script: a control is shown that does nothing", address)
		}
		if lines := see[int](b, `[...document.querySelectorAll(".slip__line")].filter(e => e.getClientRects().length > 0).length`); lines < 20 {
			t.Errorf("%s without script: %d lines to write on", address, lines)
		}
		b.onePage(address + " without script")
	}
	b.calm("without script")
}
