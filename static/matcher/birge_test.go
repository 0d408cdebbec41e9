package matcher

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

type togetherGot struct {
	Value, Standard, Dof, ChiSquare, Ratio, Limit, Chance float64
	Consistent                                            bool
}

func (m *Matcher) together(t testing.TB, values, standards []float64, dof any) togetherGot {
	t.Helper()
	var got togetherGot
	m.run(t, &got, `birge.together(a[0].map((value, i) => ({value, standard: a[1][i], dof: a[2] ?? Infinity})))`, values, standards, dof)
	return got
}

// The mass of the charged kaon in MeV, from six experiments that do not agree: the example
// by which the Particle Data Group explains its scale factor (Review of Particle Physics,
// introduction, "Unconstrained averaging", and the listing of the K+-; recalled from
// memory). Printed are the average 493.677, chi-square 22.9, what the last two add to it
// (13.6 and 7.7), the confidence level 0.0004, and the error 0.013 with its scale factor 2.4.
func TestChargedKaonMass(t *testing.T) {
	m := mustCore(t)
	values := []float64{493.691, 493.657, 493.670, 493.640, 493.636, 493.696}
	errors := []float64{0.040, 0.020, 0.029, 0.054, 0.011, 0.007}
	all := m.together(t, values, errors, nil)
	rounds := func(what string, got, want, within float64) {
		t.Helper()
		if math.Abs(got-want) > within {
			t.Errorf("%s = %.6g, printed %g", what, got, want)
		}
	}
	rounds("the average", all.Value, 493.677, 0.0005)
	rounds("chi-square", all.ChiSquare, 22.9, 0.05)
	rounds("the confidence level", all.Chance, 0.0004, 0.00005)
	for i, printed := range map[int]float64{4: 13.6, 5: 7.7} {
		rounds(fmt.Sprintf("part %d of chi-square", i), math.Pow((values[i]-all.Value)/errors[i], 2), printed, 0.05)
	}
	if all.Consistent {
		t.Error("the six experiments are said to agree")
	}
	// The scale factor leaves out errors above 3 sqrt(n) times the average's: the 0.054.
	rounds("the limit of the scale factor's experiments", 3*math.Sqrt(6)*all.Standard/all.Ratio, 0.040, 0.0005)
	five := m.together(t, append(values[:3:3], values[4:]...), append(errors[:3:3], errors[4:]...), nil)
	rounds("the scale factor", five.Ratio, 2.4, 0.05)
	rounds("the error", five.Standard, 0.013, 0.0005)
}

// A general library, over a grid and over chance.
func TestTogetherAgainstGonum(t *testing.T) {
	m := mustCore(t)
	for _, dof := range []float64{1, 2, 3, 4, 5, 9, 19, 60, 200} {
		want := distuv.ChiSquared{K: dof}
		for _, x := range []float64{1e-6, 0.01, 0.3, 1, 2.5, 3.84, 7, 15, 40, 120, 260} {
			if above := want.Survival(x); above > 1e-12 {
				close(t, fmt.Sprintf("above %v of %v", x, dof), m.number(t, "birge.chiSquareAbove(a[0], a[1])", x, dof), above, 1e-9)
			}
		}
		for _, p := range []float64{0.01, 0.5, 0.95, 0.999} {
			close(t, fmt.Sprintf("quantile %v of %v", p, dof), m.number(t, "birge.chiSquareQuantile(a[0], a[1])", p, dof), want.Quantile(p), 1e-8)
		}
	}
	random := rand.New(rand.NewPCG(6, 5))
	disagree := 0
	for range 300 {
		n := 2 + random.IntN(8)
		values, standards, weights := make([]float64, n), make([]float64, n), make([]float64, n)
		for i := range n {
			standards[i] = 0.01 + 0.1*random.Float64()
			values[i] = 27 + standards[i]*random.NormFloat64()*(1+random.Float64())
			weights[i] = 1 / (standards[i] * standards[i])
		}
		got := m.together(t, values, standards, nil)
		mean, sum, chiSquare := stat.Mean(values, weights), 0., 0.
		for i := range n {
			sum += weights[i]
			chiSquare += weights[i] * (values[i] - mean) * (values[i] - mean)
		}
		law := distuv.ChiSquared{K: float64(n - 1)}
		ratio := math.Sqrt(chiSquare / float64(n-1))
		enlarged := 1.
		if law.Survival(chiSquare) < 0.05 {
			enlarged = ratio
			disagree++
		}
		close(t, "mean", got.Value, mean, 1e-12)
		close(t, "ratio", got.Ratio, ratio, 1e-9)
		close(t, "standard", got.Standard, enlarged/math.Sqrt(sum), 1e-9)
		close(t, "limit", got.Limit, math.Sqrt(law.Quantile(0.95)/float64(n-1)), 1e-8)
		if got.Consistent != (got.Ratio <= got.Limit) {
			t.Errorf("%d values: ratio %v, limit %v, consistent %t", n, got.Ratio, got.Limit, got.Consistent)
		}
	}
	if disagree < 30 || disagree > 200 {
		t.Errorf("%d of 300 disagree: too few or too many to prove anything", disagree)
	}
}

// Equal measurements: the uncertainty goes down with the root of their number and the
// degrees of freedom add up (JCGM 100 G.4.1). One alone is itself, and nothing is compared.
func TestTogetherEqual(t *testing.T) {
	m := mustCore(t)
	got := m.together(t, []float64{27, 27, 27, 27}, []float64{0.02, 0.02, 0.02, 0.02}, 5.)
	if math.Abs(got.Standard-0.01) > 1e-15 || math.Abs(got.Dof-20) > 1e-9 || got.Ratio != 0 || !got.Consistent {
		t.Errorf("got %+v", got)
	}
	one := m.together(t, []float64{27}, []float64{0.02}, 5.)
	if one.Value != 27 || math.Abs(one.Standard-0.02) > 1e-15 || math.Abs(one.Dof-5) > 1e-9 || one.Ratio != 0 || one.Limit != 0 || !one.Consistent {
		t.Errorf("got %+v", one)
	}
}
