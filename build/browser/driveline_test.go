//go:build browser

package browser

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"capspan/build"
	"capspan/static/driveline"
)

// calculationReady is met when the fields of a calculation are shown.
const calculationReady = `document.querySelector("[data-driveline][data-ready]")`

// machine is the calculations as the command runs them.
func machine(t testing.TB) *driveline.Machine {
	t.Helper()
	m, problems := build.Driveline(build.Embedded())
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return m
}

// typed are figures for each calculation, none of them its example's, as somebody types them: a unit after a figure is
// chosen beside it.
var typed = map[string][][2]string{
	"angles": {{"gearbox", "4 deg"}, {"shaft", "60 mm/m"}, {"axle", "0,5 in/ft"}, {"speed", "2200"}, {"axleplan", "-1.5"},
		{"turn", "2"}, {"aim", "1"}, {"axlebase", "5 in"}},
	"speed": {{"outside", "3 in"}, {"wall", "0.083 in"}, {"length", "50 in"}, {"from", "road"}, {"road", "62 mph"}, {"tyre", "12 1/2 in"}, {"axle", "4.1"}},
	"torque": {{"by", "slip"}, {"row", "1350"}, {"load", "9000 N"}, {"tyre", "310"}, {"axle", "3.73"}, {"outside", "70"}, {"wall", "2"}, {"yield", "36 ksi"},
		{"angle", "7"}, {"radius", "33"}, {"machine", "needle"}},
	"life": {{"torque", "180 lbf.ft"}, {"angle", "4"}, {"speed", "900"}, {"rating", "500 lbf.ft"}, {"capacity", "300"}, {"life", "3000"}},
	"ends": {{"hold1", "outside-clip"}, {"cap1", "1.062 in; 1.061 in"}, {"across1", "3.219 in"}, {"hold2", "outside-clip"}, {"cap2", "1.188 in"},
		{"across2", "3.625 in"}},
	"length": {{"between", "48 in"}, {"drivingyoke", "2 in"}, {"drivenyoke", "7 in"}, {"slip", "4 in"}, {"out", "1 in"}, {"tube", "400"},
		{"working", "250"}, {"least", "180"}, {"left", "45"}},
	"clips":     {{"yoke", "84.73"}, {"joint", "81.70"}, {"clip", "1.5"}, {"other", "1.52"}, {"cap", "1.0635 in"}, {"bore1", "1.063 in"}, {"size", "27"}},
	"fasteners": {{"thread", "M10"}, {"grade", "10.9"}, {"condition", "oiled"}},
	"balance":   {{"mass", "13 lb"}, {"speed", "4000"}, {"grade", "40"}, {"unbalance", "0.4 oz.in"}},
}

// give fills one input by hand: the unit first, as it stands beside the field.
func (b *tab) give(id, text string) {
	b.t.Helper()
	field := "#in-" + id
	if see[bool](b, `document.querySelector("`+field+`").localName === "select"`) {
		b.do("choose "+text, chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(e => { e.value = %q; e.dispatchEvent(new Event("input", {bubbles: true})) })(document.querySelector(%q))`, text, field)))
		return
	}
	unit := ""
	if i := strings.LastIndexByte(text, ' '); i > 0 && see[bool](b, fmt.Sprintf(`[...document.querySelectorAll('[data-input=%q] [data-unit] option')].some(o => o.value === %q)`, id, text[i+1:])) {
		text, unit = text[:i], text[i+1:]
	}
	if unit != "" {
		b.do("unit "+unit, chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(e => { e.value = %q; e.dispatchEvent(new Event("change", {bubbles: true})) })(document.querySelector('[data-input=%q] [data-unit]'))`, unit, id)))
	}
	b.do("clear "+id, chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.querySelector(%q).value = ""`, field)))
	b.do("type "+text, chromedp.SendKeys(chromedp.CSS(field), text))
}

// shownLines are the figures on the page: label and value with both units.
const shownLines = `[...document.querySelectorAll(".result__line")].map(e =>
	e.querySelector("dt").textContent + ": " + e.querySelector(".result__value").innerText.replaceAll(/\s+/g, " ").trim())`

// wantLines are the same of a report.
func wantLines(r driveline.Report) []string {
	lines := []string{}
	for _, part := range r.Parts {
		for _, l := range r.Lines {
			if l.Part != part.ID {
				continue
			}
			value := l.Value + " " + l.Unit
			if l.Unit == "°" {
				value = l.Value + l.Unit
			}
			value += strings.Join(l.Rows, ", ")
			if l.Also != "" {
				value += " ≈ " + l.Also
			}
			lines = append(lines, l.Label+": "+strings.Join(strings.Fields(value), " "))
		}
	}
	return lines
}

// emptyFigure is a label that nothing follows.
var emptyFigure = regexp.MustCompile(`:\s*(;|$)`)

// Whoever types figures into a page is told what the command prints for the address that
// comes of them: the same lines, limits, sentences and refusals. The address brings them
// back.
func TestDrivelineStories(t *testing.T) {
	m := machine(t)
	for _, name := range slices.Sorted(maps.Keys(typed)) {
		t.Run(name, func(t *testing.T) {
			b := openTab(t)
			b.open("/driveline/")
			b.do("choose the calculation", chromedp.Click(chromedp.CSS(`main a[href$="/driveline/`+name+`/"]`)))
			b.until("the fields", calculationReady)
			if name == "ends" {
				b.until("the chart", `!document.querySelector("[data-result]").innerText.includes("not here yet")`)
			}
			for _, pair := range typed[name] {
				b.give(pair[0], pair[1])
			}
			b.until("a result of its own", `document.querySelector("[data-example]").hidden`)
			fragment := see[string](b, "location.hash")
			report, err := m.Reckon(name, fragment)
			if err != nil {
				t.Fatal(err)
			}
			if len(report.Refusals) > 0 || len(report.Lines) < 3 {
				t.Errorf("refusals %v and %d lines of %s", report.Refusals, len(report.Lines), fragment)
			}
			for _, pair := range typed[name] {
				if !strings.Contains(fragment, "#"+pair[0]+"=") && !strings.Contains(fragment, "&"+pair[0]+"=") && pair[1] != "outside-clip" {
					t.Errorf("%s is not in the address %s", pair[0], fragment)
				}
			}
			want := wantLines(report)
			check := func(where string) {
				t.Helper()
				if got := see[[]string](b, shownLines); !slices.Equal(got, want) {
					t.Errorf("%s shows\n%s\nwant\n%s", where, strings.Join(got, "\n"), strings.Join(want, "\n"))
				}
				b.until("what is said first", `document.querySelector("[data-spoken]").textContent !== ""`)
				if spoken := see[string](b, `document.querySelector("[data-spoken]").textContent`); emptyFigure.MatchString(spoken) {
					t.Errorf("%s says a figure without saying it: %q", where, spoken)
				}
				text := see[string](b, `document.querySelector("[data-result]").textContent`)
				for _, part := range report.Parts {
					for _, says := range part.Says {
						if !strings.Contains(text, says) {
							t.Errorf("%s does not say %q", where, says)
						}
					}
				}
				for _, l := range report.Limits {
					if !strings.Contains(text, l.Limit) {
						t.Errorf("%s does not show the limit %q", where, l.Limit)
					}
				}
			}
			check("the page")
			b.calm("typing")
			b.open("/404.html")
			b.open("/driveline/" + name + "/" + fragment)
			b.until("the fields", calculationReady)
			b.until("the first figure", `document.querySelector(".result__value")`)
			if name == "ends" {
				b.until("the chart", `!document.querySelector("[data-result]").innerText.includes("not here yet")`)
			}
			check("the address")
			if got := see[string](b, "location.hash"); got != fragment {
				t.Errorf("the address became %s, want %s", got, fragment)
			}
			b.calm("the address")
		})
	}
}

// The example on a page is the one its calculation has, worked out by the build; without
// script it stays, with every input explained and no control that does nothing.
func TestDrivelineWithoutScript(t *testing.T) {
	m := machine(t)
	described, err := m.Described()
	if err != nil {
		t.Fatal(err)
	}
	b := openTab(t)
	if _, err := chromedp.Call(b.ctx, emulation.SetScriptExecutionDisabled, emulation.SetScriptExecutionDisabledParams{Value: true}); err != nil {
		t.Fatal(err)
	}
	for _, d := range described {
		b.open("/driveline/" + d.Name + "/")
		report, err := m.Reckon(d.Name, d.Example.Fragment)
		if err != nil {
			t.Fatal(err)
		}
		if got, want := see[[]string](b, shownLines), wantLines(report); !slices.Equal(got, want) {
			t.Errorf("%s shows %q, want %q", d.Name, got, want)
		}
		if see[bool](b, `[...document.querySelectorAll("main input, main select, main button")].some(e => e.getClientRects().length > 0)`) {
			t.Errorf("%s: a control is shown that does nothing", d.Name)
		}
		text := see[string](b, `document.querySelector("main").innerText`)
		for _, in := range d.Inputs {
			if !strings.Contains(text, in.Label) || !strings.Contains(text, in.Hint) {
				t.Errorf("%s: the input %s is not explained", d.Name, in.ID)
			}
		}
		for _, says := range slices.Concat(d.Cautions, d.Unchecked, d.Purpose, []string{d.Example.Says}) {
			if !strings.Contains(text, says) {
				t.Errorf("%s does not say %q", d.Name, says)
			}
		}
	}
	b.calm("without script")
}

// A unit switched there and back leaves what was typed; the figures do not move.
func TestUnitSwitch(t *testing.T) {
	b := openTab(t)
	b.open("/driveline/speed/")
	b.until("the fields", calculationReady)
	for id, text := range map[string]string{"outside": "76.2", "wall": "2.1", "length": "1450"} {
		b.give(id, text)
	}
	before := see[[]string](b, shownLines)
	unit := func(name string) {
		b.do("unit "+name, chromedp.Evaluate[chromedp.Void](`(e => { e.value = "`+name+`"; e.dispatchEvent(new Event("change", {bubbles: true})) })(document.querySelector('[data-input="outside"] [data-unit]'))`))
	}
	value := `document.querySelector("#in-outside").value`
	unit("in")
	if got := see[string](b, value); got != "3" { // 76.2 mm is exactly 3 in
		t.Errorf("76.2 mm became %q in", got)
	}
	if got := see[[]string](b, shownLines); !slices.Equal(got, before) {
		t.Errorf("the figures moved: %q, were %q", got, before)
	}
	unit("mm")
	if got := see[string](b, value); got != "76.2" {
		t.Errorf("back it is %q", got)
	}
	b.calm("the switch")
}

// A figure that cannot be used stays in its field with its complaint; what does not need
// it is still worked out, and an address that brings it shows the same.
func TestDrivelineRefuses(t *testing.T) {
	b := openTab(t)
	b.open("/driveline/speed/")
	b.until("the fields", calculationReady)
	b.give("outside", "76.2")
	b.give("wall", "2.1")
	b.give("length", "1450")
	b.give("speed", "1.2.3")
	complaint := func(id string) string {
		return see[string](b, `(e => e.hidden ? "" : e.textContent)(document.querySelector('[data-input="`+id+`"] [data-complaint]'))`)
	}
	if got := complaint("speed"); !strings.Contains(got, "two points") {
		t.Errorf("the complaint is %q", got)
	}
	if got := see[string](b, `document.querySelector("#in-speed").value`); got != "1.2.3" {
		t.Errorf("the field has %q", got)
	}
	if got := see[string](b, `document.querySelector("#part-critical").innerText`); !strings.Contains(got, "rev/min") {
		t.Errorf("the critical speed is not told beside it: %s", got)
	}
	b.open("/404.html")
	b.open("/driveline/speed/#outside=76.2mm&wall=2.1mm&length=30m&speed=3000rpm&colour=red")
	b.until("the fields", calculationReady)
	if got := complaint("length"); !strings.Contains(got, "outside 50 to 12000 mm") && !strings.Contains(got, "outside 0.05 to 12 m") {
		t.Errorf("the complaint is %q", got)
	}
	if got := see[string](b, `document.querySelector(".result .trouble").innerText`); !strings.Contains(got, "colour") {
		t.Errorf("the address's trouble is %q", got)
	}
	b.calm("what cannot be used")
}

// With the keyboard alone: to the first field, through the units, to a result.
func TestDrivelineByKeyboard(t *testing.T) {
	b := openTab(t)
	b.open("/driveline/balance/")
	b.until("the fields", calculationReady)
	b.do("the skip link", chromedp.KeyEvent(kb.Tab+kb.Enter))
	for range 20 {
		if see[string](b, "document.activeElement.id") == "in-mass" {
			break
		}
		b.do("tab", chromedp.KeyEvent(kb.Tab))
	}
	b.do("mass, unit, speed", chromedp.KeyEvent("6"+kb.Tab+kb.Tab+"3600"))
	report, err := machine(t).Reckon("balance", "mass=6kg&speed=3600rpm")
	if err != nil {
		t.Fatal(err)
	}
	if got, want := see[[]string](b, shownLines), wantLines(report); !slices.Equal(got, want) {
		t.Errorf("shown %q, want %q", got, want)
	}
	b.until("it is spoken", `document.querySelector("[data-spoken]").textContent.includes("254.6")`)
	b.calm("the keyboard")
}

// A shaft of three joints with everything there is to give.
const fullShaft = "joints=3&gearbox=3deg&shaft=7.5deg&rear=4deg&axle=2deg&speed=1500rpm&gearboxplan=2deg&shaftplan=1deg&turn=3deg" +
	"&inertia=0.2kg.m2&shaftlength=900mm&rearlength=800mm&axlebase=120mm&gearboxbase=500mm"

// Every calculation is one page on paper, its example as well as what was typed.
func TestDrivelineIsOnePage(t *testing.T) {
	m := machine(t)
	described, err := m.Described()
	if err != nil {
		t.Fatal(err)
	}
	b := openTab(t)
	print := func(address string) {
		b.open("/404.html")
		b.open(address)
		b.until("the fields", calculationReady)
		for _, paper := range papers {
			if n := pages(t, b.print(paper)); n != 1 {
				t.Errorf("%s on %s: %d pages", address, paper.name, n)
			}
		}
	}
	for _, d := range described {
		print("/driveline/" + d.Name + "/")
		fragment := ""
		for _, pair := range typed[d.Name] {
			fragment += "&" + pair[0] + "=" + strings.ReplaceAll(pair[1], " ", "+")
		}
		print("/driveline/" + d.Name + "/#" + fragment[1:])
	}
	print("/driveline/angles/#" + fullShaft)
}

// BenchmarkKeystroke is one key in a field of each calculation, to the redrawn result with
// its plots, with a processor four times slower: script, style and layout together.
func BenchmarkKeystroke(b *testing.B) {
	m := machine(b)
	described, err := m.Described()
	if err != nil {
		b.Fatal(err)
	}
	fragments := map[string]string{"angles 3": fullShaft}
	for _, d := range described {
		fragments[d.Name] = d.Example.Fragment
	}
	for _, name := range slices.Sorted(maps.Keys(fragments)) {
		b.Run(name, func(b *testing.B) {
			tab := openTab(b)
			tab.open("/driveline/" + strings.Fields(name)[0] + "/#" + fragments[name])
			tab.until("the fields", calculationReady)
			if _, err := chromedp.Call(tab.ctx, emulation.SetCPUThrottlingRate, emulation.SetCPUThrottlingRateParams{Rate: 4}); err != nil {
				b.Fatal(err)
			}
			var took []float64
			for b.Loop() {
				took = append(took, see[float64](tab, keystroke))
			}
			slices.Sort(took)
			b.ReportMetric(took[0], "ms/key-least") // a busy machine swells all but this
			b.ReportMetric(took[len(took)/2], "ms/key")
			b.ReportMetric(0, "ns/op")
		})
	}
}

// keystroke types a digit more and takes it away again, and lays the page out each time;
// it gives half of what that takes.
const keystroke = `(() => {
	const field = [...document.querySelectorAll("[data-value]")].find(e => e.matches("input") && e.value !== "" && e.getClientRects().length > 0);
	const text = field.value;
	const start = performance.now();
	for (const value of [text + "1", text]) {
		field.value = value;
		field.dispatchEvent(new Event("input", {bubbles: true}));
		document.body.getBoundingClientRect();
	}
	return (performance.now() - start) / 2;
})()`
