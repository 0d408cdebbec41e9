//go:build browser

package browser

import (
	"bytes"
	"image/png"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	goqr "github.com/piglig/go-qr"
)

// A question too long for a link is refused with words, and nothing is asked without a tick.
func TestSendRefuses(t *testing.T) {
	b := openTab(t)
	b.open("/send/")
	b.until("the form", sendReady)
	trouble := `document.querySelector("[data-send] [data-trouble]").innerText`
	set := func(text string) {
		b.do("write", chromedp.Evaluate[chromedp.Void](`(e => { e.value = `+quote(text)+`; e.dispatchEvent(new Event("input", {bubbles: true})) })(document.querySelector("[data-question]"))`))
	}
	set(strings.Repeat("関", 400))
	b.until("the link is too long", trouble+`.includes("Shorten")`)
	set("short")
	b.until("the link is back", `document.querySelector("[data-send] [data-trouble]").hidden && document.querySelector("[data-qr] svg")`)
	b.do("untick all", chromedp.Evaluate[chromedp.Void](`document.querySelectorAll('[data-end="0"] [data-take]').forEach(e => e.click())`))
	b.until("nothing is asked", trouble+`.includes("Tick")`)
	b.calm("the counter's page")
}

// A page of the guide opens the counter's page with what it is about.
func TestGuideAsks(t *testing.T) {
	for _, c := range []struct{ page, asks string }{
		{"/measure/cap/", "&take=cap&unit=in"},
		{"/measure/wing/", "&take=cap,across&hold=wing&unit=in"},
	} {
		b := openTab(t)
		b.open(c.page)
		b.do("follow", chromedp.Click(chromedp.CSS(`main a[href*="/send/"]`)))
		b.until("the form", sendReady)
		if got := see[string](b, linkText); !strings.Contains(got, c.asks) {
			t.Errorf("from %s the link is %s, want %s in it", c.page, got, c.asks)
		}
		b.calm(c.page)
	}
}

// The picture on the counter's page is the link: a decoder of somebody else's reads it off
// the screen, in the dark scheme too.
func TestQROnScreen(t *testing.T) {
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: "dark"}}}); err != nil {
		t.Fatal(err)
	}
	b.open("/send/")
	b.until("the form", sendReady)
	shot, err := chromedp.Run(b.ctx, chromedp.Screenshot(chromedp.CSS("[data-qr] svg")))
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(shot))
	if err != nil {
		t.Fatal(err)
	}
	got, err := goqr.Decode(img)
	if want := see[string](b, linkText); err != nil || got != want {
		t.Errorf("the screen reads %q, %v; want %q", got, err, want)
	}
}

// What a device offers for sharing is handed the link; without script both pages say what to do instead.
func TestCustomerPagesOtherWays(t *testing.T) {
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: `navigator.share = async what => { window.handed = what }`}); err != nil {
		t.Fatal(err)
	}
	b.open("/send/")
	b.until("the form", sendReady)
	b.do("share", chromedp.Click(chromedp.CSS("[data-share]")))
	b.until("the link is handed over", `window.handed?.url === `+linkText)
	b.calm("sharing")

	plain := openTab(t)
	if _, err := chromedp.Call(plain.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	for _, address := range []string{"/send/", "/measure/card/"} {
		plain.open(address)
		if !see[bool](plain, `document.querySelector("[data-without] a[href$='/measure/']").getClientRects().length > 0`) {
			t.Errorf("%s without script: no way on", address)
		}
		if see[bool](plain, `[...document.querySelectorAll("main input, main button")].some(e => e.getClientRects().length > 0)`) {
			t.Errorf("%s without script: a control is shown that does nothing", address)
		}
	}
	plain.calm("without script")
}
