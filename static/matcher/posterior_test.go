package matcher_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// The core's probabilities beside the same model written down anew and integrated by
// brute force: what is a closed form there is an integral here.
func TestPosteriorByBruteForce(t *testing.T) {
	c, bundle := mustConstants(t), mustBundle(t)
	compared := 0
	rapid.Check(t, func(rt *rapid.T) {
		chart := smallCharts().Draw(rt, "chart")
		a := identify(rt, newMatcher(rt, bundle, chart), nearRow(rt, chart, matcher.Tools[:5]))
		if len(a.Sizes) == 0 {
			return
		}
		want, clear := posterior(c, chart, a.Readings, false)
		whole, _ := posterior(c, chart, a.Readings, true)
		if !clear {
			return // a row so near the edge of counting that the last digits decide
		}
		for _, s := range a.Sizes {
			compared++
			if diff := math.Abs(s.Probability - want[s.Rows[0]]); !(diff < 1e-6) {
				rt.Errorf("%s: got probability %.9f, by brute force %.9f", s.Rows[0], s.Probability, want[s.Rows[0]])
			}
			// The core spares itself the error of reading where it is lost in the blur of unlisted sizes.
			if diff := math.Abs(s.Probability - whole[s.Rows[0]]); !(diff < 1e-3) {
				rt.Errorf("%s: got probability %.9f, with every unlisted size integrated over %.9f", s.Rows[0], s.Probability, whole[s.Rows[0]])
			}
		}
	})
	if compared < 10 {
		t.Errorf("only %d probabilities were compared", compared)
	}
}

// reading is one estimate as its budget states it.
type reading struct {
	value, standard, dof float64
}

func fromBudget(e matcher.Estimate) reading {
	r := reading{value: e.Value, dof: math.Inf(1)}
	var squares, fourths float64
	for _, line := range e.Budget {
		squares += line.Standard * line.Standard
		if line.DOF != nil {
			fourths += math.Pow(line.Standard, 4) / *line.DOF
		}
	}
	r.standard = math.Sqrt(squares)
	if fourths > 0 {
		r.dof = squares * squares / fourths
	}
	return r
}

// posterior weighs every row that counts. It is not clear when a row lies within a
// millionth of the share of counting. Whole, the sizes of unlisted joints are spread
// round each row's own figures, and integrated over together with the error of reading;
// else, as the core has it, round the middles of cells, and that error is left out
// beside millimetres of spread.
func posterior(c constants, chart matcher.Chart, readings []matcher.Estimate, whole bool) (map[string]float64, bool) {
	measured := map[matcher.Dimension]reading{}
	for _, e := range readings {
		measured[e.Quantity] = fromBudget(e)
	}
	var around blur
	weights := map[string]float64{}
	total, clear := 0.0, true
	for _, row := range chart.Rows {
		weight, counts := priorOf(c, row.Basis)*(1-c.get("prior-absent"))/together(c, chart), true
		near := map[matcher.Dimension]float64{}
		for quantity, v := range map[matcher.Dimension]*matcher.ChartValue{"cap": row.Ends[0].Cap, "across": row.Ends[0].Across} {
			r := measured[quantity]
			mm := mustFloat(v.MM)
			own := figureOf(c, quantity, v)
			standard := math.Hypot(r.standard, own.made)
			dof := r.dof * math.Pow(standard/r.standard, 4)
			counted := within(math.Abs(r.value-mm)/c.get("rival-reach"), own.limit, standard, dof)
			counts = counts && counted <= c.get("agree-level")
			clear = clear && math.Abs(counted-c.get("agree-level")) > 1e-6
			likelihood := func(off float64) float64 {
				return limited(off, own.limit, standard, math.Min(dof, c.get("tail-dof")))
			}
			density := likelihood(r.value - mm)
			weight *= density
			if quantity == "cap" {
				around.shared += density
			}
			if !whole {
				near[quantity] = inCell(c, quantity, mm).Prob(r.value)
				continue
			}
			spread := distuv.Normal{Mu: mm, Sigma: c.get("absent-spread-" + quantity)}
			near[quantity] = quad.Fixed(func(off float64) float64 { return spread.Prob(r.value-off) * likelihood(off) }, -9*math.Hypot(standard, own.limit), 9*math.Hypot(standard, own.limit), 200, quad.Legendre{}, 0)
		}
		around.add(near["cap"], near["across"])
		if counts {
			weights[row.Ref] = weight
			total += weight
		}
	}
	absent := c.get("prior-absent") * around.density(c) / float64(len(chart.Rows))
	for ref := range weights {
		weights[ref] /= total + absent
	}
	return weights, clear
}

// blur gathers where joints in no row lie beside some readings.
type blur struct {
	both, ofCap, shared float64
}

func (b *blur) add(cap, across float64) {
	b.both += cap * across
	b.ofCap += cap
}

// density is that of joints whose cap is one of the rows', or spread round them, and
// whose across is spread as those of joints with such caps.
func (b *blur) density(c constants) float64 {
	shared := c.get("absent-shared-cap")
	return (1-shared)*b.both + shared*b.shared*b.both/b.ofCap
}

// inCell spreads a figure round the middle of its cell, so that with the width of the
// cell it is spread as given.
func inCell(c constants, quantity matcher.Dimension, mm float64) distuv.Normal {
	spread := c.get("absent-spread-" + quantity)
	wide := spread / 2
	cell := distuv.Uniform{Min: math.Floor(mm/wide) * wide, Max: (math.Floor(mm/wide) + 1) * wide}
	return distuv.Normal{Mu: cell.Mean(), Sigma: math.Sqrt(spread*spread - cell.Variance())}
}

// heavyTailed is Student's density as what it stands for: a normal density whose
// precision is itself unknown, integrated over the logarithm of that precision.
func heavyTailed(difference, standard, dof float64) float64 {
	precision := distuv.Gamma{Alpha: dof / 2, Beta: dof / 2}
	return quad.Fixed(func(u float64) float64 {
		p := math.Exp(u)
		return distuv.Normal{Mu: 0, Sigma: standard / math.Sqrt(p)}.Prob(difference) * precision.Prob(p) * p
	}, -16, 5, 200, quad.Legendre{}, 0)
}

// limited is the density of a difference that is the sum of anything within ±limit and a heavy-tailed rest.
func limited(difference, limit, standard, dof float64) float64 {
	rest := student(dof)
	return (rest.CDF((difference+limit)/standard) - rest.CDF((difference-limit)/standard)) / (2 * limit)
}

// within is the share of such sums that lie no farther from 0 than so much.
func within(off, limit, standard, dof float64) float64 {
	rest := student(dof)
	below := quad.Fixed(func(u float64) float64 { return rest.CDF((off - u) / standard) }, -limit, limit, 200, quad.Legendre{}, 0) / (2 * limit)
	return 2*below - 1
}

func student(dof float64) interface {
	CDF(x float64) float64
	Quantile(p float64) float64
} {
	if math.IsInf(dof, 1) || dof > 1e6 {
		return distuv.UnitNormal
	}
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: dof}
}

// together is what all rows weigh before anything is measured; each is a size of its own here.
func together(c constants, chart matcher.Chart) float64 {
	sum := 0.0
	for _, row := range chart.Rows {
		sum += priorOf(c, row.Basis)
	}
	return sum
}

func priorOf(c constants, basis matcher.Basis) float64 {
	switch basis {
	case "memory":
		return c.get("prior-memory")
	case "common-practice":
		return c.get("prior-common-practice")
	}
	return 1
}

// figure is what a figure of the chart is taken for: anything within a limit, and the standard uncertainty of making the part.
type figure struct {
	limit, made float64
}

func figureOf(c constants, quantity matcher.Dimension, v *matcher.ChartValue) figure {
	limit := mustFloat(v.Half)
	switch v.Basis {
	case "common-practice":
		limit = math.Max(limit, c.get("chart-common-practice"))
	case "memory":
		limit = math.Max(limit, c.get("chart-memory-"+quantity))
	}
	return figure{limit, c.get("made-"+quantity) / math.Sqrt(3)}
}

func (f figure) standard() float64 { return math.Hypot(f.limit/math.Sqrt(3), f.made) }

// The two ways of writing the heavy-tailed density agree, or the check above would prove nothing.
func TestHeavyTailedIsStudent(t *testing.T) {
	for _, dof := range []float64{4, 5.5, 8} {
		for _, d := range []float64{0, 0.03, 0.2, 0.7} {
			got, want := heavyTailed(d, 0.07, dof), distuv.StudentsT{Mu: 0, Sigma: 0.07, Nu: dof}.Prob(d)
			if math.Abs(got-want) > 1e-9*want {
				t.Errorf("%v mm, %v degrees: got %.12g, gonum has %.12g", d, dof, got, want)
			}
		}
	}
}

// And so do the two ways of writing the density of a sum.
func TestLimitedIsAMean(t *testing.T) {
	for _, limit := range []float64{0.005, 0.05, 0.4} {
		for _, d := range []float64{0, 0.03, 0.2, 0.7} {
			got := limited(d, limit, 0.07, 6)
			want := quad.Fixed(func(u float64) float64 { return heavyTailed(d-u, 0.07, 6) }, -limit, limit, 80, quad.Legendre{}, 0) / (2 * limit)
			if math.Abs(got-want) > 1e-7*want {
				t.Errorf("%v mm, limit %v: got %.12g, by integration %.12g", d, limit, got, want)
			}
		}
	}
}
