package matcher

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
)

// The twenty temperatures of JCGM 100:2008 table 1 (4.4.3).
var temperatures = []any{96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
	100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72}

// Every figure is printed in the clause named; got must round to its digits.
func TestUncertaintyArithmetic(t *testing.T) {
	m := mustCore(t)
	parts := `[{standard: 0.25, dof: 9}, {standard: 0.57, dof: 4}, {standard: 0.82, dof: 14}]`
	for _, c := range []struct {
		from, expression string
		args             []any
		want, within     float64
	}{
		{"EURACHEM/CITAC QUAM appendix E.1: rectangular ±1.5", "gum.rectangular(1.5)", nil, 0.866, 0.0005},
		{"JCGM 100:2008 4.3.3: 240 µg stated at three standard deviations", "240 / gum.normalQuantile(gum.normalCdf(3))", nil, 80, 1e-6},
		{"JCGM 100:2008 4.3.4: 129 µΩ at 99 %, divided by 2.58", "129 / gum.coverage(0.99, Infinity)", nil, 50, 0.5},
		{"JCGM 100:2008 4.3.4: the factor of 99 % is 2.58", "gum.normalQuantile(0.995)", nil, 2.58, 0.005},
		{"JCGM 100:2008 4.3.5: ±0.04 mm at even odds is 0.06 mm", "0.04 / gum.coverage(0.5, Infinity)", nil, 0.06, 0.005},
		{"JCGM 100:2008 4.3.7: half-width 0.40e-6 - 0.14e-6 gives 0.15e-6", "1e6 * gum.rectangular(0.26e-6)", nil, 0.15, 0.005},
		{"JCGM 100:2008 4.4.3: mean of the twenty temperatures", "gum.mean(a)", temperatures, 100.145, 0.0005},
		{"JCGM 100:2008 4.4.3: their standard deviation", "gum.stdev(a)", temperatures, 1.489, 0.0005},
		{"JCGM 100:2008 4.4.3: of their mean", "gum.stdev(a) / Math.sqrt(a.length)", temperatures, 0.333, 0.0005},
		{"JCGM 100:2008 G.4.1: combined relative uncertainty in %", "gum.combine(" + parts + ")", nil, 1.03, 0.005},
		{"JCGM 100:2008 G.4.1: effective degrees of freedom", "gum.welchSatterthwaite(" + parts + ")", nil, 19.0, 0.05},
		{"JCGM 100:2008 G.4.1: t95 of 19 degrees of freedom", "gum.coverage(0.95, 19)", nil, 2.09, 0.005},
	} {
		if got := m.number(t, c.expression, c.args...); math.Abs(got-c.want) > c.within {
			t.Errorf("%s: got %.6g, want %.6g", c.from, got, c.want)
		}
	}
}

// JCGM 100:2008 4.2.4: a pooled estimate lies between its two parts, and is the weighted
// mean square of them.
func TestPooled(t *testing.T) {
	m := mustCore(t)
	got := m.number(t, "gum.pooled(3, 4, 5, 2)")
	if want := math.Sqrt((4*9. + 2*25.) / 6); math.Abs(got-want) > 1e-15 {
		t.Errorf("got %v, want %v", got, want)
	}
}

var freedoms = []float64{1, 1.5, 2, 3, 4, 4.7, 5, 8, 10, 19, 30.25, 100, 1e3, 1e5}

func TestStudentAgainstGonum(t *testing.T) {
	m := mustCore(t)
	for _, nu := range freedoms {
		want := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: nu}
		for _, x := range []float64{-40, -6, -2.5, -1, -0.3, 0, 0.01, 0.7, 1.96, 3.3, 8, 25} {
			close(t, fmt.Sprintf("density at %v, %v degrees", x, nu), m.number(t, "gum.studentLogPdf(a[0], a[1])", x, nu), want.LogProb(x), 1e-9)
			close(t, fmt.Sprintf("probability below %v, %v degrees", x, nu), m.number(t, "gum.studentCdf(a[0], a[1])", x, nu), want.CDF(x), 1e-9)
		}
		for _, p := range []float64{0.005, 0.025, 0.1, 0.4, 0.5, 0.75, 0.95, 0.975, 0.995, 0.9995} {
			close(t, fmt.Sprintf("quantile of %v, %v degrees", p, nu), m.number(t, "gum.studentQuantile(a[0], a[1])", p, nu), want.Quantile(p), 1e-7)
		}
	}
}

func TestNormalAgainstGonum(t *testing.T) {
	m := mustCore(t)
	for _, z := range []float64{-8, -4, -3.54, -3.53, -2, -1, -0.1, 0, 0.5, 1.2816, 3, 3.6, 6} {
		close(t, fmt.Sprintf("probability below %v", z), m.number(t, "gum.normalCdf(a[0])", z), distuv.UnitNormal.CDF(z), 1e-10)
	}
	for _, p := range []float64{1e-6, 0.001, 0.005, 0.25, 0.5, 0.6, 0.9, 0.975, 0.995, 0.999999} {
		close(t, fmt.Sprintf("quantile of %v", p), m.number(t, "gum.normalQuantile(a[0])", p), distuv.UnitNormal.Quantile(p), 1e-9)
	}
}

// close wants agreement to a share of the greater of the value and 1e-3: far tails are
// compared absolutely.
func close(t *testing.T, what string, got, want, share float64) {
	t.Helper()
	if math.Abs(got-want) > share*math.Max(math.Abs(want), 1e-3) || math.IsNaN(got) {
		t.Errorf("%s: got %.15g, want %.15g", what, got, want)
	}
}

// The interval of a sum, by integrating the distribution of the sum with gonum's; with one part gone it is the other's
// own: a rectangle's share is that part of its half-width, 1.65 standard uncertainties for 95 % (JCGM 100 G.6.5 has
// 1.65, from memory), and t95 of 19 degrees of freedom is 2.09 (JCGM 100:2008 G.4.1).
func TestCoverageOfSumAgainstGonum(t *testing.T) {
	m := mustCore(t)
	for _, nu := range []float64{4, 6.5, 30, 1e9} {
		for _, limit := range []float64{0.002, 0.05, 0.5, 3, 40} {
			for _, level := range []float64{0.95, 0.997} {
				got := m.number(t, "gum.coverageOfSum(a[0], a[1], a[2], a[3])", level, limit, 0.5, nu)
				rest := distuv.StudentsT{Mu: 0, Sigma: 0.5, Nu: nu}
				below := quad.Fixed(func(u float64) float64 { return rest.CDF(got - u) }, -limit, limit, 400, quad.Legendre{}, 0) / (2 * limit)
				close(t, fmt.Sprintf("share within %v of limit %v, %v degrees", got, limit, nu), 2*below-1, level, 1e-6)
			}
		}
	}
	close(t, "rectangle alone", m.number(t, "gum.coverageOfSum(0.95, 1, 1e-6, 100)")*math.Sqrt(3), 1.645, 1e-3)
	close(t, "Student's t alone", m.number(t, "gum.coverageOfSum(0.95, 0, 1, 19)"), 2.093, 1e-3)
}
