package matcher_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// Whatever was measured of whatever, each estimate's uncertainty is what its own budget
// adds up to: combined (JCGM 100 5.1.2), with effective degrees of freedom (G.4.1), times
// t of 95 % (G.3.4) as gonum has it. A size's bound is that of reading and figure, 99 %.
func TestBudgetsAddUp(t *testing.T) {
	c := mustConstants(t)
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		q := around(rt, chart)
		if rapid.Bool().Draw(rt, "yoke") {
			for i := range q.Ends {
				q.Ends[i].Taken = "yoke"
			}
		}
		a := identify(rt, m, q)
		found := map[string]reading{}
		for _, e := range a.Readings {
			r := fromBudget(e)
			found[fmt.Sprint(e.End, e.Quantity)] = r
			if want := student(r.dof).Quantile(0.975) * r.standard; math.Abs(e.Uncertainty-want) > 1e-5*want {
				rt.Errorf("%s of end %d: ±%v, its budget adds up to ±%v", e.Quantity, e.End, e.Uncertainty, want)
			}
		}
		for _, s := range append(a.Sizes, a.Near...) {
			for i, end := range s.Ends {
				for quantity, comparison := range map[string]*matcher.Comparison{"cap": end.Cap, "across": end.Across} {
					if comparison == nil {
						continue
					}
					r := found[fmt.Sprint(i, quantity)]
					if math.Abs(comparison.Measured-r.value) > 1e-9 || math.Abs(comparison.Difference-(comparison.Measured-comparison.Chart)) > 1e-9 {
						rt.Errorf("%q: %+v beside a reading of %v", s.Names, *comparison, r.value)
					}
					// No bound is narrower than that of the reading alone with as many degrees of freedom as there can be.
					if least := student(math.Inf(1)).Quantile((1+c.get("agree-level"))/2) * r.standard; comparison.Uncertainty < least {
						rt.Errorf("%q: bound %v, the reading alone has %v", s.Names, comparison.Uncertainty, least)
					}
				}
			}
		}
	})
}

// The twenty temperatures of JCGM 100:2008 4.4.3 taken for millimetres: their standard
// deviation of 1.489, pooled with the one the tool is known for (4.2.4), over the root of 20.
func TestTwentyReadings(t *testing.T) {
	c := mustConstants(t)
	m, _ := mustMatch(t)
	var across []string
	for _, x := range []float64{96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
		100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72} {
		across = append(across, fmt.Sprintf("%.2f mm", x))
	}
	a := identify(t, m, matcher.Query{Condition: "new", Ends: []matcher.QueryEnd{{Hold: "outside-clip", Across: across}}})
	if a.Verdict != matcher.MeasureAgain { // no caliper scatters by millimetres
		t.Errorf("readings 6 mm apart: %s", a.Verdict)
	}
	dof, own := c.get("repeat-dof"), c.get("across-repeat")
	want := math.Sqrt((dof*own*own+19*1.489*1.489)/(dof+19)) / math.Sqrt(20)
	e := a.Readings[0]
	if math.Abs(e.Value-100.145) > 0.0005 || len(e.SetAside) > 0 || math.Abs(e.Budget[0].Standard-want) > 0.0005 || *e.Budget[0].DOF != dof+19 {
		t.Errorf("got %v with %+v, set aside %q; want 100.145 with %.4f", e.Value, e.Budget[0], e.SetAside, want)
	}
}

// Limits of permissible error by the standards: DIN 862 for calipers, 0.02 more for an
// inside reading, DIN 863 for micrometers, JIS B 7516 for a steel rule. A limit is half
// the width of a rectangle (JCGM 100 4.3.7).
func TestInstrumentLimits(t *testing.T) {
	m, _ := mustMatch(t)
	for _, c := range []struct {
		tool  matcher.Tool
		faces matcher.Faces
		mm    float64
		limit float64
	}{
		{"digital-caliper", "over-caps", 95, 0.02}, {"digital-caliper", "over-caps", 150, 0.03}, {"digital-caliper", "over-caps", 250, 0.03},
		{"dial-caliper", "over-caps", 95, 0.02}, {"vernier-caliper", "over-caps", 150, 0.03},
		{"vernier-caliper-coarse", "over-caps", 95, 0.05}, {"vernier-caliper-coarse", "over-caps", 250, 0.05},
		{"digital-caliper", "groove-inner", 95, 0.04}, {"digital-caliper", "groove-inner", 150, 0.05},
		{"micrometer", "over-caps", 24, 0.004}, {"micrometer", "over-caps", 49, 0.004}, {"micrometer", "over-caps", 74, 0.005},
		{"steel-rule", "over-caps", 95, 0.15}, {"steel-rule", "over-caps", 250, 0.15},
	} {
		end := matcher.QueryEnd{Hold: "outside-clip", Across: []string{fmt.Sprintf("%.2f mm", c.mm)}}
		if c.faces == "groove-inner" {
			end.Hold = "inside-clip"
		}
		a := identify(t, m, matcher.Query{Tool: c.tool, Ends: []matcher.QueryEnd{end}})
		found := false
		for _, line := range a.Readings[0].Budget {
			found = found || math.Abs(line.Standard-c.limit/math.Sqrt(3)) < 1e-9
		}
		if !found {
			t.Errorf("%s at %v mm, %s: no line of ±%v mm in %+v", c.tool, c.mm, c.faces, c.limit, a.Readings[0].Budget)
		}
	}
}
