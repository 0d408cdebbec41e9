package matcher

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mathext"
	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// The core's functions over a grid, each beside gonum's own: far finer than the few
// points a worked example has.
func TestStudentOverAGrid(t *testing.T) {
	m := mustCore(t)
	var dofs, ts, ps []float64
	for dof := 1.0; dof < 2e6; dof *= 1.9 {
		dofs = append(dofs, dof)
	}
	for x := -12.0; x <= 12; x += 0.75 {
		ts = append(ts, x)
	}
	for p := 0.0005; p < 1; p += 0.0245 {
		ps = append(ps, p)
	}
	type table struct{ Log, Below, Quantile []float64 }
	for _, nu := range dofs {
		var got table
		m.run(t, &got, `({log: a[1].map(x => gum.studentLogPdf(x, a[0])), below: a[1].map(x => gum.studentCdf(x, a[0])),
			quantile: a[2].map(p => gum.studentQuantile(p, a[0]))})`, nu, ts, ps)
		want := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: nu}
		for i, x := range ts {
			close(t, fmt.Sprintf("log density at %v, %v degrees", x, nu), got.Log[i], want.LogProb(x), 1e-8)
			close(t, fmt.Sprintf("probability below %v, %v degrees", x, nu), got.Below[i], want.CDF(x), 1e-8)
		}
		for i, p := range ps {
			close(t, fmt.Sprintf("quantile of %v, %v degrees", p, nu), got.Quantile[i], want.Quantile(p), 1e-6)
		}
	}
}

func TestNormalOverAGrid(t *testing.T) {
	m := mustCore(t)
	for z := -7.0; z <= 7; z += 0.125 {
		close(t, fmt.Sprintf("probability below %v", z), m.number(t, "gum.normalCdf(a[0])", z), distuv.UnitNormal.CDF(z), 1e-10)
	}
	for p := 0.0001; p < 1; p += 0.0099 {
		close(t, fmt.Sprintf("quantile of %v", p), m.number(t, "gum.normalQuantile(a[0])", p), distuv.UnitNormal.Quantile(p), 1e-9)
	}
}

// math.Lgamma knows nothing of the series the core uses.
func TestLogGammaOverAGrid(t *testing.T) {
	m := mustCore(t)
	for x := 0.05; x < 3000; x *= 1.17 {
		want, _ := math.Lgamma(x)
		close(t, fmt.Sprintf("ln gamma of %v", x), m.number(t, "gum.logGamma(a[0])", x), want, 1e-10)
	}
}

// A probability is the area under a density: the core's two functions are held against
// each other by an integral neither of them uses.
func TestProbabilityIsAnArea(t *testing.T) {
	m := mustCore(t)
	for _, dof := range []float64{1, 2.5, 4, 8, 40} {
		density := func(x float64) float64 { return math.Exp(m.number(t, "gum.studentLogPdf(a[0], a[1])", x, dof)) }
		for _, x := range []float64{0.4, 1, 2.7, 5} {
			area := 0.5 + quad.Fixed(density, 0, x, 40, quad.Legendre{}, 0)
			close(t, fmt.Sprintf("area below %v, %v degrees", x, dof), m.number(t, "gum.studentCdf(a[0], a[1])", x, dof), area, 1e-10)
		}
	}
	// The incomplete beta function is behind every one of them; gonum has its own.
	for x := -9.0; x <= 9; x += 0.6 {
		want := 0.5 * mathext.RegIncBeta(2.35, 0.5, 4.7/(4.7+x*x))
		if x > 0 {
			want = 1 - want
		}
		close(t, fmt.Sprintf("probability below %v by the beta function", x), m.number(t, "gum.studentCdf(a[0], 4.7)", x), want, 1e-10)
	}
}

// Means and deviations of any readings, beside gonum's.
func TestMeanAndDeviation(t *testing.T) {
	m := mustCore(t)
	rapid.Check(t, func(rt *rapid.T) {
		xs := rapid.SliceOfN(rapid.Float64Range(20, 300), 2, 12).Draw(rt, "readings")
		args := make([]any, len(xs))
		for i, x := range xs {
			args[i] = x
		}
		mean, deviation := stat.MeanStdDev(xs, nil)
		close(t, "mean", m.number(t, "gum.mean(a)", args...), mean, 1e-12)
		if got := m.number(t, "gum.stdev(a)", args...); math.Abs(got-deviation) > 1e-9 {
			rt.Errorf("standard deviation of %v: got %v, want %v", xs, got, deviation)
		}
	})
}
