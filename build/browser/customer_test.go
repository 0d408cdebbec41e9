//go:build browser

package browser

import (
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
	"capspan/static"
)

// Hooks of templates/card.html and templates/send.html.
const (
	sendReady  = `document.querySelector("[data-send][data-ready]")`
	cardReady  = `document.querySelector("[data-card][data-ready]")`
	stepTitle  = `document.querySelector("[data-sheet]:not([hidden]) [data-title]")?.textContent`
	linkText   = `document.querySelector("[data-link]").value`
	cardField  = `[data-card] [data-reading]`
	nextButton = `[data-next]`
)

// phone makes the tab 360 px wide, as the smallest phones still in use.
func (b *tab) phone() {
	b.t.Helper()
	if _, err := chromedp.Call(b.ctx, emulation.SetDeviceMetricsOverride, emulation.SetDeviceMetricsOverrideParams{
		Width: 360, Height: 740, DeviceScaleFactor: 2, Mobile: true}); err != nil {
		b.t.Fatal(err)
	}
}

// step waits until the card shows a step whose heading holds the words.
func (b *tab) step(words string) {
	b.t.Helper()
	b.until("the step "+words, stepTitle+`?.includes(`+quote(words)+`)`)
	if wide := see[int](b, `document.documentElement.scrollWidth`); wide > 360 {
		b.t.Errorf("step %q is %d px wide on a phone of 360", words, wide)
	}
	if shown := see[int](b, `[...document.querySelectorAll("[data-sheet] svg")].filter(e => !e.closest(".hold") && e.getClientRects().length > 0).length`); shown > 1 {
		b.t.Errorf("step %q shows %d pictures, want one at a time", words, shown)
	}
	if shown := see[int](b, `[...document.querySelectorAll("[data-sheet] input[type=text]")].filter(e => e.getClientRects().length > 0).length`); shown > 1 {
		b.t.Errorf("step %q shows %d fields, want one at a time", words, shown)
	}
}

// The whole way: the counter asks, the customer opens the link on a phone, loses all
// signal, measures, and sends one link back, which the counter opens.
func TestCustomerRoundTrip(t *testing.T) {
	server := httptest.NewServer(build.Handler(site, base))
	closed := false
	defer func() {
		if !closed {
			server.Close()
		}
	}()

	shop := openTab(t)
	shop.do("open the counter's page", chromedp.Navigate(server.URL+base+"send/"))
	shop.until("the form", sendReady)
	shop.do("write the question", chromedp.SendKeys(chromedp.CSS("[data-question]"), "Front axle, the small one?"))
	asks := see[string](shop, linkText)
	if !strings.Contains(asks, "measure/card/#check=") || len(asks) > 2000 {
		t.Fatalf("the link is %q", asks)
	}
	if mail := see[string](shop, `document.querySelector("[data-mail]").href`); !strings.Contains(mail, "check%3D") {
		t.Errorf("the mail does not carry the link: %s", mail)
	}

	customer := openTab(t)
	customer.phone()
	customer.do("open the link", chromedp.Navigate(asks))
	customer.until("the card", cardReady)
	customer.step("asks you to measure")
	if said := see[string](customer, `document.querySelector("[data-question]").textContent`); said != "Front axle, the small one?" {
		t.Errorf("the question reads %q", said)
	}
	server.CloseClientConnections()
	server.Close() // from here on there is no signal
	closed = true

	customer.do("start", chromedp.Click(chromedp.CSS(nextButton)))
	customer.step("What do you measure with?")
	customer.do("next", chromedp.Click(chromedp.CSS(nextButton)))
	customer.step("How is the joint held?")
	customer.do("pick the hold", chromedp.Click(chromedp.CSS(`[data-step="hold"] label:has([value="outside-clip"])`)))
	customer.do("next", chromedp.Click(chromedp.CSS(nextButton)))
	for _, s := range []struct{ title, typed string }{
		{"One cap", "1.060"}, {"The cap opposite", "1.061"}, {"The distance across", "3.222"}, {"Across once more", "3.221"},
	} {
		customer.step(s.title)
		customer.do(s.title, chromedp.SendKeys(chromedp.CSS(cardField), s.typed), chromedp.Click(chromedp.CSS(nextButton)))
	}
	customer.step("Send it back")
	answer := see[string](customer, linkText)
	if !strings.Contains(answer, "/identify/#check=") || len(answer) > 2000 {
		t.Fatalf("the answer is %q", answer)
	}
	for _, trouble := range customer.troubles {
		if strings.Contains(trouble, "exception") || strings.Contains(trouble, "not loaded") {
			t.Errorf("offline: %s", trouble)
		}
	}

	// A messenger wraps the answer; the counter opens it from the site, which lives elsewhere in this test.
	_, fragment, _ := strings.Cut(answer, "#")
	half := len(fragment) / 2
	back := openTab(t)
	back.open("/identify/#" + fragment[:half] + "%20" + fragment[half:])
	back.until("the form", ready)
	back.until("a verdict", `document.querySelector("[data-verdict-head] .verdict--identified")`)
	if caps, across := back.readings("cap"), back.readings("across"); strings.Join(caps, " ") != "1.060 in 1.061 in" || strings.Join(across, " ") != "3.222 in 3.221 in" {
		t.Errorf("the counter reads caps %q and across %q", caps, across)
	}
	back.calm("the answer")
	cut := openTab(t)
	cut.open("/identify/#" + fragment[:half])
	cut.until("the form", ready)
	if note := see[string](cut, `document.querySelector("[data-note]").textContent`); !strings.Contains(note, "lost a piece") {
		t.Errorf("a cut answer says %q", note)
	}
}

// requestScript is the codec of requests, which the pages carry inside their own scripts.
func requestScript(t testing.TB) string {
	t.Helper()
	script, problems := static.Script(static.FS, "matcher/request.ts", "request")
	if len(problems) > 0 {
		t.Fatalf("bundle the codec: %v", problems)
	}
	return string(script)
}

// ask opens the card of a request as /send/ writes it.
func (b *tab) ask(request string) {
	b.t.Helper()
	b.open("/send/")
	b.until("the form", sendReady)
	b.open("/measure/card/#" + see[string](b, `(() => {`+requestScript(b.t)+`; return request.encodeRequest(`+request+`); })()`))
	b.until("the card", cardReady)
}

// By keyboard alone; what is typed is there after a reload, and Back goes one step back.
func TestCardByKeyboard(t *testing.T) {
	b := openTab(t)
	b.phone()
	b.ask(`{ends: [{take: ["cap", "across"], hold: "inside-clip"}], unit: "mm"}`)
	press := func(keys string) { b.do("keys", chromedp.KeyEvent(keys)) }
	b.do("to the button", chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-next]").focus()`))
	press(kb.Enter)
	b.step("What do you measure with?")
	press(kb.Tab + kb.ArrowDown) // the next tool
	b.until("the tool", `document.querySelector('[data-tool][value="dial-caliper"]').checked`)
	press(kb.Enter)
	b.step("One cap")
	press(kb.Enter)
	b.until("a word on the empty field", `!document.querySelector("[data-complaint]").hidden`)
	press("27,0,0" + kb.Enter)
	b.until("a complaint", `document.querySelector("[data-complaint]").textContent.length > 20`)
	press(strings.Repeat(kb.Backspace, 6) + "26,99")
	b.do("reload", chromedp.Reload())
	b.until("the card", cardReady)
	b.step("One cap")
	if got := see[string](b, `document.querySelector("[data-card] [data-reading]").value`); got != "26.99 mm" {
		t.Errorf("after a reload the field holds %q", got)
	}
	b.do("to the field", chromedp.Focus(chromedp.CSS(cardField)))
	press(kb.Enter)
	b.step("The cap opposite")
	press("27.01" + kb.Enter)
	b.step("The distance across")
	b.do("back", chromedp.NavigateBack())
	b.step("The cap opposite")
	if got := see[string](b, `document.querySelector("[data-card] [data-reading]").value`); got != "27.01" {
		t.Errorf("after going back the field holds %q", got)
	}
	press(kb.Enter)
	b.step("The distance across")
	press("61.9" + kb.Enter)
	b.step("Across once more")
	press(kb.Enter)
	b.step("Send it back")
	if got := see[string](b, linkText); !strings.Contains(got, "hold=inside-clip&cap=26.99mm,27.01mm&across=61.9mm&unit=mm&tool=dial-caliper") {
		t.Errorf("the answer is %s", got)
	}
	b.calm("the card by keyboard")
}

// Who cannot tell the hold measures over the caps, and the answer says where the jaws were;
// a hold passed over is the same.
func TestCardHoldUnknown(t *testing.T) {
	for _, pick := range []bool{true, false} {
		b := openTab(t)
		b.phone()
		b.ask(`{ends: [{take: ["across"]}], unit: "mm"}`)
		b.do("start", chromedp.Click(chromedp.CSS(nextButton)))
		b.step("What do you measure with?")
		b.do("next", chromedp.Click(chromedp.CSS(nextButton)))
		b.step("How is the joint held?")
		if pick {
			b.do("not sure", chromedp.Click(chromedp.CSS(`[data-step="hold"] label:has([value="unknown"])`)))
		}
		b.do("next", chromedp.Click(chromedp.CSS(nextButton)))
		b.step("The distance across")
		if got := see[string](b, `[...document.querySelectorAll("[data-faces-figure]")].filter(e => e.getClientRects().length > 0).map(e => e.dataset.facesFigure).join()`); got != "over-caps" {
			t.Errorf("the picture shows %q, want over-caps", got)
		}
		b.do("across", chromedp.SendKeys(chromedp.CSS(cardField), "82"+kb.Enter))
		b.step("Across once more")
		b.do("across", chromedp.SendKeys(chromedp.CSS(cardField), kb.Enter))
		b.step("Send it back")
		if got := see[string](b, linkText); !strings.Contains(got, "hold=unknown&faces=over-caps&across=82mm") {
			t.Errorf("the answer is %s", got)
		}
		b.calm("hold unknown")
	}
}

// Two ends are asked one after the other, and their readings stay apart.
func TestCardTwoEnds(t *testing.T) {
	b := openTab(t)
	b.phone()
	b.ask(`{ends: [{take: ["cap"], hold: "strap"}, {take: ["across"], hold: "inside-clip", faces: "groove-outer"}], unit: "in"}`)
	b.do("start", chromedp.Click(chromedp.CSS(nextButton)))
	b.step("What do you measure with?")
	b.do("next", chromedp.Click(chromedp.CSS(nextButton)))
	for _, s := range []struct{ title, typed string }{
		{"One cap: its diameter, first end", "1 1/16"}, {"The cap opposite: its diameter, first end", ""},
		{"The distance across, the other end", "2.56"}, {"Across once more, the other end", ""},
	} {
		b.step(s.title)
		b.do(s.title, chromedp.SendKeys(chromedp.CSS(cardField), s.typed+kb.Enter))
	}
	b.step("Send it back")
	if got := see[string](b, linkText); !strings.Contains(got, "hold=strap&cap=1-1/16in&hold2=inside-clip&faces2=groove-outer&across2=2.56in") {
		t.Errorf("the answer is %s", got)
	}
	b.calm("two ends")
}

// A link that is bad, cut or missing opens to a page that says what to do, not to a form.
func TestBadCardLinks(t *testing.T) {
	tests := []struct{ name, fragment, says string }{
		{"none", "", "needs a link"},
		{"cut", "check=2s.1ab&take=cap,acr", "not whole"},
		{"typed by hand", "take=cap", "does not say what to measure"},
		{"markup", "check=1.1&say=%3Cimg%20src=x%20onerror=window.bent=1%3E", "not whole"},
		{"names of the language", "__proto__=1&constructor", "does not say"},
	}
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			b := openTab(t)
			b.open("/measure/card/#" + test.fragment)
			b.until("the page", cardReady)
			if got := see[string](b, `document.querySelector("[data-trouble]").innerText`); !strings.Contains(got, test.says) || !strings.Contains(got, "What to do") {
				t.Errorf("it says %q, want %q and what to do", got, test.says)
			}
			if see[bool](b, `[...document.querySelectorAll("main input, main button")].some(e => e.getClientRects().length > 0) || window.bent !== undefined`) {
				t.Error("a form is shown, or text became markup")
			}
			b.calm(test.name)
		})
	}
}
