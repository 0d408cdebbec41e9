//go:build browser

package browser

import (
	"fmt"
	"net/http"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
	"capspan/static/matcher"
)

// slipFaults are files that do not come for a slip of a large chart: what is asked for at
// such an address fails, and what the page says then.
var slipFaults = map[string]struct {
	part string
	does func(http.ResponseWriter, *http.Request, []byte)
	says string
}{
	"a lost piece":               {"assets/chart/", pieceFaults["lost"].does, "newer than this page"},
	"a tampered piece":           {"assets/chart/", pieceFaults["tampered"].does, "damaged"},
	"a drawer without an answer": {"assets/slips/", pieceFaults["no answer"].does, "could not be fetched"},
	"a tampered drawer":          {"assets/slips/", pieceFaults["tampered"].does, "could not be fetched"},
}

const (
	jointsSaid  = `(document.querySelector("[data-joints-said]")?.innerText ?? "")`
	jointsRetry = `[data-joints-said] button:last-of-type`
	slipShown   = `(!document.querySelector("[data-slip]").hidden && !document.querySelector("[data-out]").hidden)`
)

// slipSays is what a slip names: the size it is about, row by row, and those it is not.
type slipSays struct{ Sold, Not []string }

const slipNames = `(() => {
	const said = [...document.querySelectorAll("[data-slip] .slip__said")];
	const of = (label) => said.find((p) => p.querySelector(".slip__label")?.textContent === label);
	const not = of("Not to be mixed up with")?.cloneNode(true);
	not?.querySelectorAll(".slip__label, .slip__more").forEach((e) => e.remove());
	return {Sold: [...(of("Sold as")?.querySelectorAll("strong") ?? [])].map((s) => s.textContent).filter((s) => !s.startsWith(" ")),
		Not: (not?.textContent ?? "").split(" · ").map((s) => s.trim()).filter((s) => s !== "")};
})()`

// slipOf is what the core that has the whole chart, and the chart itself, make of a row that
// was chosen by its name.
func (l large) slipOf(t testing.TB, row matcher.ChartRow) slipSays {
	t.Helper()
	byRef := l.byRef()
	var says slipSays
	var own []string
	for _, r := range l.chart.Rows {
		if r.Size == row.Size {
			own = append(own, r.Ref)
		}
	}
	slices.SortStableFunc(own, func(a, b string) int {
		return map[bool]int{true: -1}[a == row.Ref] + map[bool]int{true: 1}[b == row.Ref]
	})
	says.Sold = soldAs(byRef, own)
	q := matcher.Query{Condition: "new"}
	for _, end := range row.Ends {
		asked := matcher.QueryEnd{Hold: end.Hold}
		if end.Faces != "unknown" {
			asked.Faces = end.Faces
		}
		if end.Cap != nil {
			asked.Cap = []string{end.Cap.Text + " " + string(end.Cap.Unit)}
		}
		if end.Across != nil {
			asked.Across = []string{end.Across.Text + " " + string(end.Across.Unit)}
		}
		q.Ends = append(q.Ends, asked)
	}
	answer, err := l.core.Identify(q)
	if err != nil {
		t.Fatal(err)
	}
	taken := map[string]bool{} // by name
	for _, size := range slices.Concat(answer.SameFigures, answer.Sizes, answer.Near) {
		var names []string
		for _, ref := range size.Rows {
			for _, name := range append([]string{byRef[ref].Name}, byRef[ref].Also...) {
				if !slices.Contains(names, name) {
					names = append(names, name)
				}
			}
		}
		known := func(ref string) bool { return slices.Contains(own, ref) }
		if slices.ContainsFunc(size.Rows, known) || slices.ContainsFunc(names, func(n string) bool { return taken[n] }) || len(says.Not) == 3 {
			continue
		}
		for _, name := range names {
			taken[name] = true
		}
		says.Not = append(says.Not, strings.Join(names, ", "))
	}
	return says
}

// byRef are the rows of the chart.
func (l large) byRef() map[string]matcher.ChartRow {
	rows := make(map[string]matcher.ChartRow, len(l.chart.Rows))
	for _, row := range l.chart.Rows {
		rows[row.Ref] = row
	}
	return rows
}

// soldAs is how a slip names the rows of a size: those printed with the same figures together.
func soldAs(byRef map[string]matcher.ChartRow, refs []string) []string {
	var sold []string
	printed := map[string]int{} // by the figures, which of them
	for _, ref := range refs {
		row := byRef[ref]
		figures := ""
		for _, end := range row.Ends {
			figures += string(end.Hold)
			for _, f := range []*matcher.ChartValue{end.Cap, end.Across} {
				if f != nil {
					figures += " " + f.Text + string(f.Unit)
				}
				figures += ";"
			}
		}
		names := strings.Join(append([]string{row.Name}, row.Also...), ", ")
		if at, known := printed[figures]; known {
			sold[at] += ", " + names
			continue
		}
		printed[figures] = len(sold)
		sold = append(sold, names)
	}
	return sold
}

// A kit of a large chart on a slip says what the whole chart would have it say, for rows of
// every kind, and leads to the page of its size.
func TestLargeSlipOfKits(t *testing.T) {
	l := mustLarge(t)
	h := newHost(t, build.Handler(l.site, base))
	b := openTab(t)
	b.own = h.origin()
	tried, conversions := 0, 0
	for i, row := range l.chart.Rows {
		if i%300 != 5 && !(len(row.Ends) > 1 && i%90 == 0 && i < 300) {
			continue
		}
		tried++
		if len(row.Ends) > 1 {
			conversions++
		}
		b.visit(h, base+"404.html")
		b.do("forget", chromedp.Evaluate[chromedp.Void](`sessionStorage.clear()`))
		b.visit(h, base+"order/#row="+row.Name)
		b.until("the slip of "+row.Name, orderReady+` && `+slipShown)
		want, got := l.slipOf(t, row), see[slipSays](b, slipNames)
		if !slices.Equal(got.Sold, want.Sold) || !slices.Equal(got.Not, want.Not) {
			t.Errorf("%s\nslip  %q\nchart %q", row.Name, got, want)
		}
		if said := see[string](b, slipText); !strings.Contains(said, "Chosen by name, not measured") || row.Ends[0].Cap != nil && !strings.Contains(said, row.Ends[0].Cap.Text) {
			t.Errorf("%s: the slip is\n%s", row.Name, said)
		}
	}
	if tried < 9 || conversions < 3 {
		t.Errorf("%d kits, %d of them with unlike ends, are too few", tried, conversions)
	}
	b.onePage("a slip of a large chart")
	back := b.decodes("[data-slip] svg")
	at := strings.TrimPrefix(back, h.origin())
	b.visit(h, at)
	b.until("the page of the size", `document.getElementById(location.hash.slice(1)) !== null`)
	if !strings.HasPrefix(at, base+"size/") {
		t.Errorf("the code leads to %s", back)
	}
	b.calm("slips of kits")
}

// From a size's page to a slip, on to a record and back, on a phone; a second kit by its
// name, and one by the address of its page.
func TestLargeSlipStory(t *testing.T) {
	l := mustLarge(t)
	h := newHost(t, build.Handler(l.site, base))
	b := openTab(t)
	b.own = h.origin()
	b.phone()
	b.visit(h, withKits(t, l.site, 6, false))
	id := see[string](b, `new URL(document.querySelector('main a[href*="/order/#row="]').href).hash.slice(5)`)
	b.click(`main a[href*="/order/#row="]`)
	b.until("the slip", orderReady+` && `+slipShown+` && `+slipText+`.includes(`+quote(id)+`)`)
	second, third := l.chart.Rows[700], l.chart.Rows[1400]
	b.write("[data-order] [data-add]", "no such kit"+kb.Enter)
	b.until("the complaint", `document.querySelector("[data-add-wrong]").innerText.includes("no such kit")`)
	b.write("[data-order] [data-add]", strings.ToUpper(second.Name)+kb.Enter)
	b.until("two joints", slipShown+` && document.querySelectorAll("[data-slip] .slip__joint").length === 2 && `+slipText+`.includes(`+quote(second.Name)+`)`)
	b.write("[data-order] [data-add]", h.origin()+base+l.placeOf(t, third)+kb.Enter)
	b.until("three joints", slipShown+` && document.querySelectorAll("[data-slip] .slip__joint").length === 3 && `+slipText+`.includes(`+quote(third.Name)+`)`)
	b.write("[data-place]", "gearbox end")
	if wide := see[int](b, `document.documentElement.scrollWidth`); wide > 360 {
		t.Errorf("the page is %d px wide on a phone of 360", wide)
	}
	b.onePage("a slip of three kits")
	b.click("[data-keep-it]")
	b.until("it is kept", `document.querySelector("[data-keep-said] a")`)
	b.click("[data-keep-said] a")
	b.until("the record", shaftReady+` && `+charted+` && `+sheetText+`.includes(`+quote(third.Name)+`)`)
	b.until("what the chart says of its joints", sheetText+`.includes(`+quote(third.Ends[0].Cap.Text)+`)`)
	for _, row := range []matcher.ChartRow{second, third} {
		if said := see[string](b, sheetText); !strings.Contains(said, row.Ends[0].Cap.Text) {
			t.Errorf("the sheet lacks the cap of %s:\n%s", row.Name, said)
		}
	}
	for _, href := range see[[]string](b, `[...document.querySelectorAll("[data-joint] [data-look]")].map(a => a.href)`) {
		if !strings.Contains(href, "/size/") {
			t.Errorf("a joint leads to %s", href)
		}
	}
	b.onePage("the record")
	b.calm("slip and record")
}

// placeOf is where a row stands: the page that has its id.
func (l large) placeOf(t testing.TB, row matcher.ChartRow) string {
	t.Helper()
	for _, f := range l.site.Files {
		if strings.HasPrefix(f.Path, "size/") && !strings.Contains(f.Path, "/paper/") && strings.Contains(string(f.Bytes), ` id="`+row.Name+`"`) {
			return strings.TrimSuffix(f.Path, "index.html") + "#" + row.Name
		}
	}
	t.Fatalf("no page has %s", row.Name)
	return ""
}

// From a verdict to a slip with the readings.
func TestLargeSlipOfVerdict(t *testing.T) {
	l := mustLarge(t)
	h := newHost(t, build.Handler(l.site, base))
	b := openTab(t)
	b.own = h.origin()
	for _, fragment := range l.fragments(t, 41) {
		q, _, err := l.core.Decode(fragment)
		if err != nil {
			t.Fatal(err)
		}
		answer, err := l.core.Identify(q)
		if err != nil {
			t.Fatal(err)
		}
		if len(answer.Sizes) != 1 {
			continue
		}
		b.visit(h, base+"identify/#"+fragment)
		b.until("the form", ready)
		b.until("the verdict", `document.querySelector('[data-verdict-body] a[href*="/order/#"]')`)
		for _, href := range see[[]string](b, `[...document.querySelectorAll("[data-verdict-body] .onto a")].map(a => a.href)`) {
			response, err := http.Get(href)
			if err != nil {
				t.Fatal(err)
			}
			response.Body.Close()
			if response.StatusCode != http.StatusOK {
				t.Errorf("the verdict leads to %s: %s", href, response.Status)
			}
		}
		b.click(`[data-verdict-body] a[href*="/order/#"]`)
		b.until("the slip", orderReady+` && `+slipShown)
		got := see[slipSays](b, slipNames).Sold
		if want := soldAs(l.byRef(), answer.Sizes[0].Rows); !slices.Equal(got, want) {
			t.Errorf("#%s: sold as %q, want %q", fragment, got, want)
		}
		b.calm("from a verdict")
		return
	}
	t.Fatal("no question has one size as its answer")
}

// While a file is missing there is no slip, older or half, and the page says so; a second try
// brings it. A record keeps what it has, and gets the rest.
func TestLargeSlipFaults(t *testing.T) {
	l := mustLarge(t)
	row, other := l.chart.Rows[5], l.chart.Rows[1800]
	for name, fault := range slipFaults {
		t.Run(name, func(t *testing.T) {
			h := newFaulty(t, l.site, fault.part)
			b := openTab(t)
			b.own = h.origin()
			b.visit(h.host, base+"order/#row="+row.Name)
			b.until("a slip", orderReady+` && `+slipShown)
			b.visit(h.host, base+"404.html")
			h.does(fault.does)
			b.visit(h.host, base+"order/#joint=1&row="+row.Name+"&joint=1&row="+other.Name)
			b.until("the message", orderReady+` && `+jointsSaid+`.includes(`+quote(fault.says)+`)`)
			if see[bool](b, slipShown+` || !document.querySelector("[data-keep]").hidden && document.querySelector("[data-keep]").getClientRects().length > 0`) {
				t.Error("there is a slip without the file")
			}
			h.does(nil)
			b.click(jointsRetry)
			b.until("the slip", slipShown+` && document.querySelectorAll("[data-slip] .slip__joint").length === 2 && `+jointsSaid+` === ""`)
			if got, want := see[slipSays](b, slipNames).Sold, l.slipOf(t, row).Sold; !slices.Equal(got, want) {
				t.Errorf("mended: sold as %q, want %q", got, want)
			}

			// The record, with the same file lost.
			b.click("[data-keep-it]")
			b.until("it is kept", `document.querySelector("[data-keep-said] a")`)
			h.does(fault.does)
			b.click("[data-keep-said] a")
			b.until("the message", shaftReady+` && `+jointsSaid+`.includes(`+quote(fault.says)+`)`)
			if said := see[string](b, sheetText); !strings.Contains(said, row.Name) || strings.Contains(said, row.Ends[0].Cap.Text+" "+string(row.Ends[0].Cap.Unit)) {
				t.Errorf("without the file the sheet is\n%s", said)
			}
			h.does(nil)
			b.click(jointsRetry)
			b.until("the whole sheet", sheetText+`.includes(`+quote(row.Ends[0].Cap.Text)+`) && `+jointsSaid+` === ""`)
		})
	}
}

// The directories are missing: the page says so, and a second try opens it.
func TestLargeSlipDirectories(t *testing.T) {
	l := mustLarge(t)
	row := l.chart.Rows[5]
	for _, part := range []string{"assets/chart-directory", "order/slips.json"} {
		t.Run(part, func(t *testing.T) {
			h := newFaulty(t, l.site, part)
			h.does(pieceFaults["overloaded"].does)
			b := openTab(t)
			b.own = h.origin()
			b.visit(h.host, base+"order/#row="+row.Name)
			b.until("the message", `!document.querySelector("[data-trouble]").hidden && document.querySelector("[data-trouble] button")`)
			h.does(nil)
			b.click("[data-trouble] button")
			b.until("the slip", slipShown+` && `+slipText+`.includes(`+quote(row.Name)+`) && document.querySelector("[data-trouble]").hidden`)

			h.does(pieceFaults["overloaded"].does)
			b.visit(h.host, base+"shaft/")
			b.until("the message", shaftReady+` && document.querySelector("[data-trouble] button")`)
			h.does(nil)
			b.click("[data-trouble] button")
			b.until("the chart", charted)
			b.click("[data-new]")
			b.write("[data-record] [data-add]", row.Name+kb.Enter)
			b.until("the joint", sheetText+`.includes(`+quote(row.Name)+`) && `+sheetText+`.includes(`+quote(row.Ends[0].Cap.Text)+`)`)
			b.until("it is kept with it", fmt.Sprintf(`Object.values(localStorage).some(t => t.includes('"found"') && t.includes(%q))`, row.Name))
		})
	}
}
