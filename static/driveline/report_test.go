package driveline

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/dop251/goja"

	"capspan/static"
)

func mustMachine(t testing.TB) *Machine {
	t.Helper()
	core, problems := static.Core(static.FS)
	scripts, more := static.Driveline(static.FS)
	if problems.Add(more...); len(problems) > 0 {
		t.Fatal(problems)
	}
	m, err := New(core, scripts)
	if err != nil {
		t.Fatal(err)
	}
	if err := m.Provide(Provided{Fasteners: []Fastener{}, Documents: []Document{}, Rows: []string{"1310"}, Ratings: []PublishedRate{}}); err != nil {
		t.Fatal(err)
	}
	return m
}

func (m *Machine) mustReckon(t testing.TB, name, fragment string) Report {
	t.Helper()
	r, err := m.Reckon(name, fragment)
	if err != nil {
		t.Fatalf("%s of %.200q: %v", name, fragment, err)
	}
	return r
}

// Every calculation of the list is there, says what its inputs and parts are, cautions and
// defers, and works out its example: no part of it is left without a line or a sentence
// unless it names what is missing. Every document that is cited is listed.
func TestEveryCalculationIsWhole(t *testing.T) {
	m := mustMachine(t)
	described, err := m.Described()
	if err != nil {
		t.Fatal(err)
	}
	documents, err := m.Documents()
	if err != nil {
		t.Fatal(err)
	}
	listed := map[string]bool{"": true}
	for _, d := range documents {
		listed[d.Key] = true
	}
	var names []string
	for _, d := range described {
		names = append(names, d.Name)
		groups := map[string]bool{}
		for _, g := range d.Groups {
			groups[g.ID] = true
		}
		for _, in := range d.Inputs {
			if in.Label == in.ID || in.Hint == "" || !groups[in.Group] {
				t.Errorf("%s: the input %s has no words: %+v", d.Name, in.ID, in)
			}
		}
		said := strings.Join(d.Cautions, " ")
		for _, want := range []string{"maker’s manual", "driveline shop", "Mark the phase", "rated stands"} {
			if !strings.Contains(said, want) {
				t.Errorf("%s: no caution says %q", d.Name, want)
			}
		}
		if len(d.Unchecked) == 0 || !strings.Contains(d.Example.Says, "invented") {
			t.Errorf("%s says what was not checked: %q, and of its example %q", d.Name, d.Unchecked, d.Example.Says)
		}
		r := m.mustReckon(t, d.Name, d.Example.Fragment)
		if len(r.Refusals) > 0 {
			t.Errorf("%s: the example is refused: %v", d.Name, r.Refusals)
		}
		if again := m.mustReckon(t, d.Name, r.Fragment); again.Fragment != r.Fragment || len(again.Lines) != len(r.Lines) {
			t.Errorf("%s: the example's fragment becomes %s, then %s", d.Name, r.Fragment, again.Fragment)
		}
		for _, part := range r.Parts {
			lines := slices.ContainsFunc(r.Lines, func(l Line) bool { return l.Part == part.ID })
			if d.Name == "ends" {
				continue // there is no chart here
			}
			if !lines && len(part.Says)+len(part.Missing)+len(part.Pictures) == 0 {
				t.Errorf("%s: the part %s has nothing", d.Name, part.ID)
			}
		}
		for _, l := range r.Lines {
			for _, g := range l.Source {
				if !listed[g.Source] || g.Basis == "" || (g.Basis == "published") != (g.Source != "") {
					t.Errorf("%s: the line %s rests on %+v", d.Name, l.ID, g)
				}
			}
			if strings.Contains(l.Value, "NaN") || strings.Contains(l.Value, "Infinity") {
				t.Errorf("%s: the line %s is %s", d.Name, l.ID, l.Value)
			}
		}
		for _, l := range r.Limits {
			for _, g := range l.Source {
				if !listed[g.Source] || g.Basis == "" {
					t.Errorf("%s: the limit %s rests on %+v", d.Name, l.Limit, g)
				}
			}
		}
	}
	if !slices.Equal(names, static.Calculations) {
		t.Errorf("the calculations are %q, want %q", names, static.Calculations)
	}
}

// The word beside a limit says how the value stands to it: 5 degrees against the 3 of one
// manual and the 6 of another, and what is equal as printed is within.
func TestLimitsStandBesideTheirValue(t *testing.T) {
	m := mustMachine(t)
	met := func(fragment, limit string) []string {
		for _, l := range m.mustReckon(t, "angles", fragment).Limits {
			if l.Of == "Angle of a joint" && l.Limit == limit {
				var words []string
				for _, s := range l.Stands {
					words = append(words, s.Value+" "+s.Met)
				}
				return words
			}
		}
		t.Fatalf("%s has no limit %q", fragment, limit)
		return nil
	}
	both := "gearbox=0deg&shaft=5deg&axle=2deg"
	if got := met(both, "at most 3.00°"); !slices.Equal(got, []string{"5.00° above", "3.00° within"}) {
		t.Errorf("got %q", got)
	}
	if got := met(both, "at most 6.00°"); !slices.Equal(got, []string{"5.00° within", "3.00° within"}) {
		t.Errorf("got %q", got)
	}
	if got := met("gearbox=0deg&shaft=0.2deg&axle=0deg", "at least 0.50°"); !slices.Equal(got, []string{"0.20° below", "0.20° below"}) {
		t.Errorf("got %q", got)
	}
}

// A figure is the same in whatever unit it is given; the units are exact: an inch is
// 25.4 mm (1959), a pound-force foot 1.3558179483314004 N.m (NIST SP 811, B.8).
func TestUnitsOfInputs(t *testing.T) {
	m := mustMachine(t)
	value := func(name, fragment, line string) string {
		r := m.mustReckon(t, name, fragment)
		for _, l := range r.Lines {
			if l.ID == line {
				return l.Value
			}
		}
		t.Fatalf("%s of %s has no line %s: %v", name, fragment, line, r.Refusals)
		return ""
	}
	for _, c := range []struct{ name, line, one, other string }{
		{"speed", "critical", "outside=76.2mm&wall=2.54mm&length=1270mm", "outside=3in&wall=0.1in&length=50in"},
		{"speed", "critical", "outside=76.2mm&wall=2.54mm&length=1.27m", "outside=3in&wall=1/10in&length=4.166666667ft"},
		{"angles", "residual", "gearbox=3deg&shaft=5deg&axle=1deg", "gearbox=52.4077793mm/m&shaft=87.4886635mm/m&axle=0.209460779in/ft"},
		{"angles", "residual", "gearbox=2.5deg&shaft=5deg&axle=1deg", "gearbox=2%C2%B030'&shaft=5deg&axle=1%C2%B00'"},
		{"life", "rated", "torque=135.58179483314004N.m&angle=5deg&speed=1500rpm&rating=600N.m", "torque=100lbf.ft&angle=5deg&speed=25Hz&rating=600N.m"},
		{"torque", "slip", "load=1000kg&tyre=300mm&axle=4", "load=9806.65N&tyre=300mm&axle=4"},
	} {
		if a, b := value(c.name, c.one, c.line), value(c.name, c.other, c.line); a != b {
			t.Errorf("%s: %s gives %s, %s gives %s", c.name, c.one, a, c.other, b)
		}
	}
	if got := value("speed", "outside=76.2mm&wall=2.54mm&length=1270mm", "critical"); got != "7800" { // 1.207e8 sqrt(76.2² + 71.12²) / 1270², by hand
		t.Errorf("the critical speed is %s", got)
	}
}

// What cannot be used is refused with its place, its range and its reason; nothing that was
// written is lost.
func TestRefusals(t *testing.T) {
	m := mustMachine(t)
	for _, c := range []struct{ fragment, input, says string }{
		{"length=30m", "length", "outside 0.05 to 12 m"},
		{"length=1,2.3", "length", "two points or commas"},
		{"length=abc", "length", "no number"},
		{"length=12kg", "length", "not a unit that fits"},
		{"length=1e9", "length", "exponent"},
		{"length=1.25.5mm", "length", "two points"},
		{"length=3 4", "length", "two numbers"},
		{"material=wood", "material", "steel or aluminium"},
		{"colour=red", "", "no input of this calculation"},
		{"wall=2&wall=3", "", "stands there twice"},
		{strings.Repeat("x", 5000), "", "too long"},
		{"length=" + strings.Repeat("9", 100), "length", "longer than 32"},
	} {
		r := m.mustReckon(t, "speed", c.fragment)
		if len(r.Refusals) != 1 || r.Refusals[0].Input != c.input || !strings.Contains(r.Refusals[0].Says, c.says) {
			t.Errorf("%.40s is refused with %+v, want %s: %q", c.fragment, r.Refusals, c.input, c.says)
		}
	}
	r := m.mustReckon(t, "speed", "outside=10mm&wall=8mm&length=1m") // the wall is more than half: possible each by itself
	if says := strings.Join(r.Parts[0].Says, " "); !strings.Contains(says, "Check both") || len(r.Lines) != 0 {
		t.Errorf("a wall of more than half the tube says %q and has the lines %v", says, r.Lines)
	}
}

// An address is anybody's to write: whatever stands in it, the report has no NaN, the
// canonical fragment gives the same report again, and the markup holds no text that was
// not escaped.
func TestHostileFragments(t *testing.T) {
	m := mustMachine(t)
	described, err := m.Described()
	if err != nil {
		t.Fatal(err)
	}
	values := []string{"<img src=x onerror=alert(1)>", "1e999mm", "-0", "NaN", "Infinity", "%00", "%zz", "__proto__", "constructor", "\u202e1mm", "1/0in",
		"1 1/16in", "-5deg", "12", "0.0001mm", "99999999", "1_1/2in", "\"'`", "&&", "=", "3deg", "1500rpm", "M10", "3/8-24", "10mm", "250MPa", "½", "٣"}
	random := rand.New(rand.NewPCG(7, 7))
	for range 400 {
		d := described[random.IntN(len(described))]
		var pairs []string
		for _, in := range d.Inputs {
			if random.IntN(2) == 0 {
				pairs = append(pairs, in.ID+"="+values[random.IntN(len(values))])
			}
		}
		if random.IntN(3) == 0 {
			pairs = append(pairs, values[random.IntN(len(values))]+"="+values[random.IntN(len(values))])
		}
		fragment := strings.Join(pairs, "&")
		r := m.mustReckon(t, d.Name, fragment)
		for _, l := range r.Lines {
			if x, err := strconv.ParseFloat(strings.ReplaceAll(l.Value, "−", "-"), 64); err == nil && (math.IsNaN(x) || math.IsInf(x, 0)) {
				t.Errorf("%s of %q: %s is %s", d.Name, fragment, l.ID, l.Value)
			}
		}
		again := m.mustReckon(t, d.Name, r.Fragment)
		if !slices.EqualFunc(r.Lines, again.Lines, func(a, b Line) bool { return a.ID == b.ID && a.Value == b.Value }) {
			t.Errorf("%s of %q is not what its own fragment %q gives", d.Name, fragment, r.Fragment)
		}
		html, err := m.Result(d.Name, fragment)
		if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(string(html), "<img") || strings.Contains(string(html), "onerror=a\"") {
			t.Errorf("%s of %q: markup came through", d.Name, fragment)
		}
	}
}

// An element that no result may have is a fault of the program, not markup.
func TestElementRefuses(t *testing.T) {
	for _, text := range []string{`{"tag":"script"}`, `{"tag":"a","attributes":{"onclick":"x"}}`, `{"tag":"a","attributes":{"style":"x"}}`, `{"tag":"div","children":[{"tag":"iframe"}]}`} {
		var e Element
		if err := json.Unmarshal([]byte(text), &e); err != nil {
			t.Fatal(err)
		}
		if html, err := e.HTML(); err == nil {
			t.Errorf("%s became %s", text, html)
		}
	}
	var e Element
	if err := json.Unmarshal([]byte(`{"tag":"p","attributes":{"class":"\"><b>"},"children":["<b>&"]}`), &e); err != nil {
		t.Fatal(err)
	}
	if html, err := e.HTML(); err != nil || html != `<p class="&#34;&gt;&lt;b&gt;">&lt;b&gt;&amp;</p>` {
		t.Errorf("got %s, %v", html, err)
	}
}

// The plot of a turn stays what it is drawn from: its table has the shaft's own ratio, and
// its axis round steps.
func TestPlot(t *testing.T) {
	m := mustMachine(t)
	var turn *Picture
	for _, part := range m.mustReckon(t, "angles", "joints=1&gearbox=0deg&axle=10deg").Parts {
		for _, p := range part.Pictures {
			if p.ID == "turn" {
				turn = &p
			}
		}
	}
	if turn == nil || turn.Table == nil {
		t.Fatal("no plot, or no table beside it")
	}
	// 1/cos 10° and cos 10°: 1.543 % above, 1.519 % below (Mechanical Engineer's Data Handbook, 2.4.3)
	if first, quarter := turn.Table.Rows[0][1], turn.Table.Rows[3][1]; first != "1.543" || quarter != "−1.519" {
		t.Errorf("the table has %s and %s", first, quarter)
	}
	plot, problems := static.Script(static.FS, "driveline/plot.ts", "plot")
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	vm := goja.New()
	if _, err := vm.RunScript("plot.js", string(plot)); err != nil {
		t.Fatal(err)
	}
	got, err := vm.RunString(`[plot.ticks({from: 0, to: 360}), plot.ticks({from: -0.35, to: 0.35}), plot.ticks({from: 870, to: 2320})].join(" | ")`)
	if err != nil {
		t.Fatal(err)
	}
	if want := "0,100,200,300 | -0.2,0,0.2 | 1000,1500,2000"; got.String() != want {
		t.Errorf("ticks %s, want %s", got, want)
	}
}
