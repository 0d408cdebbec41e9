package matcher

import (
	"math"
	"strings"
	"sync"
	"testing"

	"capspan/build/diag"
	"capspan/static"
)

var shippedAssets = sync.OnceValues(func() (static.Assets, diag.List) { return static.Bundle(static.FS) })

func mustMeasuring(t testing.TB) *Measuring {
	t.Helper()
	assets, problems := shippedAssets()
	if problems.Blocked() {
		t.Fatal(problems)
	}
	m, err := NewMeasuring(assets.Bytes("measured.js"))
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func read(tool Tool, condition Condition, readings ...string) MeasurementTold {
	return MeasurementTold{Readings: readings, Tool: tool, Condition: condition}
}

// All measurements are invented. One alone is worth what the same readings are worth when
// they are to be identified: it is the same code.
func TestOneMeasurementIsWorthItsReadings(t *testing.T) {
	m, core := mustMeasuring(t), mustCore(t)
	readings := []string{"27.02 mm", "27.00 mm", "1.0635 in"}
	got, err := m.ComesTo(MeasuredQuestion{Column: "cap", Measurements: []MeasurementTold{read("micrometer", "used", readings...)}})
	if err != nil {
		t.Fatal(err)
	}
	answer, err := core.Identify(Query{Ends: []QueryEnd{{Hold: "unknown", Cap: readings}}, Tool: "micrometer", Condition: "used"})
	if err != nil || len(answer.Readings) == 0 {
		t.Fatalf("%+v, %v", answer, err)
	}
	want := answer.Readings[0]
	if math.Abs(got.Combined.MM-want.Value) > 1e-12 || math.Abs(got.Combined.Uncertainty-want.Uncertainty) > 1e-9 {
		t.Errorf("got %+v, want %v ± %v", got.Combined, want.Value, want.Uncertainty)
	}
	if len(got.Says) != 1 || !strings.Contains(got.Says[0], "from 3 readings with a micrometer") {
		t.Errorf("says %q", got.Says)
	}
}

func TestComesTo(t *testing.T) {
	m := mustMeasuring(t)
	inches := &PrintedValue{Text: "1.062 in", Least: 26.9748, Greatest: 26.9748, Half: 0.0127}
	agreeing := []MeasurementTold{read("micrometer", "new", "26.97 mm", "26.98 mm"), read("digital-caliper", "new", "26.98 mm", "26.96 mm")}
	apart := []MeasurementTold{read("micrometer", "new", "26.97 mm", "26.98 mm"), read("micrometer", "new", "27.20 mm", "27.20 mm")}
	for _, c := range []struct {
		name       string
		q          MeasuredQuestion
		consistent bool
		agrees     string
		count      int
		says       []string
	}{
		{"they agree, and with the print", MeasuredQuestion{Column: "cap", Printed: inches, Measurements: agreeing}, true, "yes", 2,
			[]string{"the weighted mean of 2 measurements (4 readings)", "agree among themselves: Birge ratio 0.", "agrees with 1.062 in as printed"}},
		{"they do not agree", MeasuredQuestion{Column: "cap", Measurements: apart}, false, "", 2,
			[]string{"weighted mean", "The uncertainty is enlarged by that ratio."}},
		{"they do not agree, and the print lies between", MeasuredQuestion{Column: "cap", Printed: &PrintedValue{"27.1 mm", 27.1, 27.1, 0.05}, Measurements: apart}, false, "", 2,
			[]string{"weighted mean", "do not agree among themselves", "speaks neither for 27.1 mm as printed nor against it"}},
		{"not with the print", MeasuredQuestion{Column: "cap", Printed: inches, Measurements: apart[1:]}, true, "no", 1,
			[]string{"from 2 readings with a micrometer", "does not agree with 1.062 in as printed: it is 0.23 mm (0.009 in) larger"}},
		{"within a printed range", MeasuredQuestion{Column: "length", Printed: &PrintedValue{"0.742-0.747 in", 18.8468, 18.9738, 0.0127}, Measurements: []MeasurementTold{read("micrometer", "", "18.90 mm")}}, true, "yes", 1,
			[]string{"one reading", "agrees with 0.742-0.747 in as printed."}},
		{"other faces", MeasuredQuestion{Column: "across", Faces: "groove-inner", Measurements: []MeasurementTold{read("digital-caliper", "new", "62.40 mm"),
			{Readings: []string{"65.1 mm"}, Tool: "digital-caliper", Faces: "groove-outer"}}}, true, "", 1,
			[]string{"from one reading", "One measurement was taken between other faces"}},
		{"two groups", MeasuredQuestion{Column: "cap", Measurements: append(agreeing[:1:1], read("micrometer", "new", "27.0 mm", "27.0 mm", "30.0 mm", "30.0 mm"))}, true, "", 1,
			[]string{"from 2 readings", "listed and not counted. Cap readings fall into two groups"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			got, err := m.ComesTo(c.q)
			if err != nil || got.Combined == nil {
				t.Fatalf("%+v, %v", got, err)
			}
			if got.Combined.Consistent != c.consistent || got.Combined.Agrees != c.agrees || got.Combined.Count != c.count || len(got.Says) != len(c.says) {
				t.Errorf("got %+v\n%q", got.Combined, got.Says)
			}
			for i, want := range c.says {
				if i < len(got.Says) && !strings.Contains(got.Says[i], want) {
					t.Errorf("says %q, want %q in it", got.Says[i], want)
				}
			}
		})
	}
	none, err := m.ComesTo(MeasuredQuestion{Column: "cap", Measurements: []MeasurementTold{read("tape", "new", "1e999", "-3 mm")}})
	if err != nil || none.Combined != nil || len(none.Says) != 1 {
		t.Errorf("nothing to combine: %+v, %v", none, err)
	}
}

// What does not agree among itself claims less: the interval of two caps 0.2 mm apart
// reaches both.
func TestDisagreementWidens(t *testing.T) {
	m := mustMeasuring(t)
	got, err := m.ComesTo(MeasuredQuestion{Column: "cap", Measurements: []MeasurementTold{
		read("micrometer", "new", "26.97 mm", "26.98 mm"), read("micrometer", "new", "27.20 mm", "27.20 mm")}})
	if err != nil {
		t.Fatal(err)
	}
	c := got.Combined
	if c.Consistent || c.MM-c.Uncertainty > 26.975 || c.MM+c.Uncertainty < 27.20 {
		t.Errorf("%.3f ± %.3f does not reach 26.975 and 27.20", c.MM, c.Uncertainty)
	}
}
