//go:build browser

package browser

import (
	"bytes"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
)

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
