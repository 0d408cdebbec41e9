//go:build browser

package browser

import (
	"net/http/httptest"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
	"capspan/tables"
)

const (
	partReady   = `document.querySelector("[data-part][data-ready]")`
	partStamp   = `document.querySelector("[data-verdict-head]").innerText`
	partVerdict = `document.querySelector("[data-verdict]").innerText`
)

// partVerdicts are addresses of pages of parts that show each of their states.
var partVerdicts = map[string]string{
	"a spline named":         "/identify/part/pto-shafts/#splines=6&diameter=34.80mm,34.82mm",
	"a spline in no row":     "/identify/part/steering-splines/#teeth=37&diameter=0.560in",
	"two flanges left":       "/identify/part/flanges-male/#holes=8&circle=48.84mm,48.85mm&hole-diameter=10.00mm&pilot=75.02mm",
	"a count that is none":   "/identify/part/pto-shafts/#splines=six&diameter=34.80mm",
	"a link of long ago":     "/identify/part/pto-shafts/#splines=6&diameter=34.80mm&chart=2020-01-01-0123abc",
	"a flange not yet known": "/identify/part/flanges-female/#holes=4&edges=same&circle=2.210in",
}

// A phone at the bench: count, type, read the verdict; the address keeps it, and another
// device shows the same.
func TestPartOnPhone(t *testing.T) {
	b := openTab(t)
	b.do("a phone", chromedp.EmulateViewport(360, 640))
	b.open("/identify/part/flanges-male/")
	b.until("the form", partReady)
	if wide := see[int](b, "document.documentElement.scrollWidth"); wide > 360 {
		t.Errorf("the page is %d wide", wide)
	}
	field := func(column string) string { return `[data-column="` + column + `"] [data-reading]` }
	b.do("count", chromedp.SendKeys(chromedp.CSS(`[data-column="holes"] [data-count]`), "8"))
	b.until("one thing is not enough", partStamp+`.includes("leave 4 rows")`)
	b.do("a caliper that types", chromedp.SendKeys(chromedp.CSS(field("circle")), "48.84"+kb.Enter+"48.85"+kb.Enter))
	b.until("a hole is asked for", partVerdict+`.includes("Change or remove what is marked") && document.querySelector("[data-hole] [data-set-aside]").innerText.includes("diameter of a hole")`)
	b.do("the hole", chromedp.SendKeys(chromedp.CSS("[data-hole] [data-reading]"), "10.00"+kb.Enter))
	b.do("the pilot", chromedp.SendKeys(chromedp.CSS(field("pilot")), "75.02"+kb.Enter))
	b.until("two rows are left", partStamp+`.includes("flange-120-8x10 and flange-120-8x8")`)
	said := see[string](b, partVerdict)
	for _, want := range []string{"Look at the hole size", "0.38268 of the bolt circle", "101.51 mm", "Basis of what was compared: memory."} {
		if !strings.Contains(said, want) {
			t.Errorf("the verdict lacks %q:\n%s", want, said)
		}
	}
	if !see[bool](b, `(({top, bottom}) => top > 0 && bottom <= innerHeight)(document.querySelector("[data-pin]").getBoundingClientRect())`) {
		t.Errorf("the pinned verdict is not in sight: %s", see[string](b, `JSON.stringify(document.querySelector("[data-pin]").getBoundingClientRect())`))
	}
	hash := see[string](b, "location.hash")
	if !strings.Contains(hash, "hole-diameter=10.00mm") || !strings.Contains(hash, "chart=") {
		t.Errorf("the address is %s", hash)
	}
	b.do("another way to measure", chromedp.SetValue(chromedp.CSS(`[data-setting="edges"]`), "same"),
		chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-setting="edges"]').dispatchEvent(new Event("change", {bubbles: true}))`))
	b.until("no hole is asked for", `document.querySelector("[data-hole]").hidden`)
	b.until("another circle, which is in no row", partStamp+`.includes("in no row")`)
	b.calm("on a phone")

	other := openTab(t)
	other.open("/identify/part/flanges-male/" + hash)
	other.until("the same verdict", partStamp+`.includes("flange-120-8x10 and flange-120-8x8")`)
	other.do("start over", chromedp.Click(chromedp.CSS("[data-over]")))
	other.until("nothing is left", `location.hash === "" && `+partStamp+`.includes("Count what is to be counted")`)
	other.calm("on another device")
}

// What no chart of another kind is fetched: an identification of a joint loads nothing of parts.
func TestPartsStayAway(t *testing.T) {
	b := openTab(t)
	b.open("/identify/#" + reading1310)
	b.until("a verdict", ready+" && "+drawn)
	for _, url := range b.requests {
		if strings.Contains(url, "part") || strings.Contains(url, "since") || strings.Contains(url, "history") {
			t.Errorf("asks for %s", url)
		}
	}
}

// withRecord is the shipped chart after two recorded issues, in its folder.
func withRecord(t *testing.T) build.Output {
	t.Helper()
	src := build.Embedded()
	files := mapped(t, src.Tables)
	now := string(regexp.MustCompile(`\d{4}-\d\d-\d\d-[0-9a-f]{7}`).Find(siteFile(t, "index.html")))
	text := files["history.yaml"].Data
	var err error
	for _, r := range []tables.Release{
		{Chart: "2026-11-10-0000001", From: "2026-11-01-0000000", Date: "2026-11-10", Why: "first letters", Changes: []tables.Recorded{
			{Of: "joints-inch/1310", Column: "across", What: "value", Old: "3.20 in", New: "3.219 in"}}},
		{Chart: now, From: "2026-11-10-0000001", Date: "2026-11-25", Why: "counted again", Changes: []tables.Recorded{
			{Of: "pto-shafts/pto-type-1", Column: "splines", What: "value", Old: "8", New: "6"}}},
	} {
		if text, err = tables.Record(text, r); err != nil {
			t.Fatal(err)
		}
	}
	files["history.yaml"] = &fstest.MapFile{Data: text}
	src.Tables = files
	out, problems := siteOf(src, build.Options{Base: base, Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return out
}

func siteFile(t *testing.T, name string) []byte {
	t.Helper()
	for _, f := range site.Files {
		if f.Path == name {
			return f.Bytes
		}
	}
	t.Fatalf("no file %s", name)
	return nil
}

// A link of an older chart says which of its rows have changed since, with old, new and
// why; that none has; or that nobody can tell. It says so without a network too.
func TestSinceTheLinkWasMade(t *testing.T) {
	out := withRecord(t)
	const box = `document.querySelector("[data-since]").innerText`
	h := newHost(t, build.Handler(out, base))
	b := openTab(t)
	b.visit(h, base)
	b.kept(len(keptFiles(out)))
	h.down()
	joint := "identify/#hold=outside-clip&cap=1.062in&across=3.219in&chart="
	for _, c := range []struct{ address, says string }{
		{joint + "2026-11-01-0000000", "1310: across was 3.20 in (≈ 81.28 mm) and is 3.219 in (≈ 81.76 mm), in chart 2026-11-10-0000001. First letters."},
		{joint + "2026-11-10-0000001", "None of the rows its answer rests on has changed since."},
		{joint + "2099-01-01-0000001", "which is newer than"},
		{joint + "nonsense", "no chart is called so"},
		{"identify/part/pto-shafts/#splines=6&diameter=34.80mm&chart=2026-11-10-0000001", "pto-type-1: splines was 8 and is 6"},
	} {
		b.visit(h, base+"not-kept.html") // a changed fragment alone loads nothing
		b.visit(h, base+c.address)
		b.until(c.address, `document.querySelector("[data-since] a")`)
		if said := see[string](b, box); !strings.Contains(said, c.says) {
			t.Errorf("%s: nothing says %q:\n%s", c.address, c.says, said)
		}
		if spoken := see[string](b, `document.querySelector("[data-note]").innerText`); !strings.Contains(spoken, "The verdict here is by chart") {
			t.Errorf("%s: the region that is read aloud says %q", c.address, spoken)
		}
	}
}

// A record that does not come is told of, and the verdict stands.
func TestSinceWithoutRecord(t *testing.T) {
	out := withRecord(t)
	for i := range out.Files {
		if out.Files[i].Path == "changes/history.json" {
			out.Files[i].Bytes = []byte("{")
		}
	}
	server := httptest.NewServer(build.Handler(out, base))
	defer server.Close()
	b := openTab(t)
	b.do("open", chromedp.Navigate(server.URL+base+"identify/#hold=outside-clip&cap=1.062in&across=3.219in&chart=2026-11-01-0000000"))
	b.until("a word on it", `document.querySelector("[data-since]")?.innerText.includes("could not be fetched")`)
	b.until("the verdict", partStamp+`.includes("1310")`)
}
