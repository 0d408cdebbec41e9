//go:build browser

package browser

import (
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
)

// The whole job on a phone of 360 px without a network: an inspection trolley gets a shaft
// between a car's gearbox and a tractor's axle, of both of which only the bare yoke is
// there. From two yokes to a printed slip, with a calculation, to a shaft record on the
// wall. The readings are invented; what they are is the chart's to say.
func TestTrolleyOffline(t *testing.T) {
	h := newHost(t, build.Handler(site, base))
	b := openTab(t)
	b.phone()
	b.visit(h, base)
	b.kept(len(keptFiles(site)))
	h.down()
	narrow := func(where string) {
		t.Helper()
		if wide := see[int](b, `document.documentElement.scrollWidth`); wide > 360 {
			t.Errorf("%s is %d px wide on a phone of 360", where, wide)
		}
	}

	// The gearbox: outside clips, bores and grooves of the bare yoke.
	b.visit(h, base+"identify/")
	b.until("the form", ready)
	b.choose("taken", "yoke")
	b.choose("hold", "outside-clip")
	type field struct{ selector, readings string }
	for _, f := range []field{{capField, "27.02 mm,27.01 mm,27.02 mm,27.03 mm"}, {acrossField, "84.72 mm,84.74 mm"}, {`[data-quantity="clip"] [data-reading]`, "1.50 mm,1.50 mm"}} {
		for _, reading := range strings.Split(f.readings, ",") {
			b.do(reading, chromedp.SendKeys(chromedp.CSS(f.selector), reading+kb.Enter))
		}
	}
	b.until("the verdict", `document.querySelector("[data-verdict-head] .verdict--identified") && `+verdictText+`.includes("1310")`)
	narrow("the verdict")
	b.click(`[data-verdict-body] a[href*="/order/#"]`)
	b.until("the slip", orderReady+` && `+slipText+`.includes("worked out from the bare yoke")`)
	b.write("[data-place]", "gearbox")
	b.write(`[data-text="job"]`, "Inspection trolley")

	// The axle: the same, larger; its address came from somebody who measured it.
	b.visit(h, base+"identify/#hold=outside-clip&taken=yoke&cap=30.20mm,30.21mm,30.20mm&across=95.06mm,95.08mm&clip=1.50mm,1.50mm&tool=digital-caliper&condition=used")
	b.until("the verdict", `document.querySelector('[data-verdict-body] a[href*="/order/#"]') && `+verdictText+`.includes("1350")`)
	b.click(`[data-verdict-body] a[href*="/order/#"]`)
	b.until("the question", orderReady+` && !document.querySelector("[data-begun]").hidden`)
	b.click("[data-join]")
	b.until("both joints", `document.querySelectorAll("[data-slip] .slip__joint").length === 2`)
	narrow("the slip")
	b.onePage("the slip")
	if link := see[string](b, slipLink); len(link) > 2000 {
		t.Errorf("the link has %d characters", len(link))
	}
	bySchema(t, "enquiry-1.json", b.saves("[data-out] [data-file]", "enquiry.json"))
	b.click("[data-keep-it]")
	b.until("it is kept", `document.querySelector("[data-keep-said] a")`)

	// The angles, by their worked example.
	b.visit(h, base+"driveline/angles/")
	b.until("the calculation", `document.querySelector("[data-driveline][data-ready]")`)
	b.click("[data-take-example]")
	b.until("it can be kept", `!document.querySelector("[data-keep]").hidden && document.querySelector("[data-keep-record]").selectedOptions[0].value !== ""`)
	b.click("[data-keep-it]")
	b.until("it is kept", `document.querySelector("[data-keep-said] a")`)
	residual := see[string](b, `document.querySelector("[data-result]").innerText`)
	b.click("[data-keep-said] a")

	b.until("the record", charted+` && `+sheetText+`.includes("1310") && `+sheetText+`.includes("1350")`)
	b.write("[data-title]", "Trolley, front shaft")
	narrow("the record")
	sheet := see[string](b, sheetText)
	for _, want := range []string{"Inspection trolley", "gearbox", "Joint 2", "Angles", "Not checked"} {
		if !strings.Contains(sheet, want) {
			t.Errorf("the sheet lacks %q:\n%s", want, sheet)
		}
	}
	if first := see[string](b, `document.querySelector(".sheet__result li").innerText`); !strings.Contains(residual, strings.TrimSpace(first[strings.Index(first, ":")+1:][:4])) {
		t.Errorf("the sheet says %q, which the calculation did not", first)
	}
	b.onePage("the sheet")
	file := b.saves("[data-record] [data-file]", "shaft-trolley-front-shaft.json")
	bySchema(t, "shaft-1.json", file)
	if href := see[string](b, `document.querySelector("[data-calculations] [data-open]").href`); !strings.Contains(href, base+"driveline/angles/#") {
		t.Errorf("the calculation leads to %s", href)
	}
	b.click("[data-calculations] [data-open]")
	b.until("the calculation again", `document.querySelector("[data-driveline][data-ready]") && document.querySelector("[data-result]").innerText === `+quote(residual))
}
