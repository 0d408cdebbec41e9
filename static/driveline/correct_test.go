package driveline_test

import (
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

type change struct {
	Kind             string
	At               int
	From, To, Change float64
	Shim             *float64
	Residual         float64
	Reaches          bool
	Angles           []float64
}

type corrections struct {
	Residual float64
	Changes  []change
}

// residualAfter is the residual angle after a change, by the simulation: from the greatest
// ratio of the driven end, which is 1/cos of it.
func (s chain) residualAfter(x change, by float64, lengths []float64) float64 {
	after := s.after(x, by, lengths)
	last := len(after.members) - 2
	most := highest(func(t float64) float64 { return after.ratios(t)[last] })
	return math.Acos(min(1, 1/most))
}

// quickResidual is the same from three ratios a third of half a turn apart: 1/ratio is
// a + b cos 2t + c sin 2t, so its mean and its swing are all there is to know.
func (s chain) quickResidual(x change, by float64, lengths []float64) float64 {
	after := s.after(x, by, lengths)
	var y [3]float64
	for i := range y {
		y[i] = 1 / after.ratios(float64(i) * math.Pi / 3)[len(after.members)-2]
	}
	mean := (y[0] + y[1] + y[2]) / 3
	swing := math.Hypot(y[0]-mean, (y[1]-y[2])/math.Sqrt(3))
	return math.Acos(min(1, math.Sqrt((mean-swing)/(mean+swing))))
}

// after is the chain with a change of that kind.
func (s chain) after(x change, by float64, lengths []float64) chain {
	after := chain{members: slices.Clone(s.members), yokes: slices.Clone(s.yokes)}
	switch x.Kind {
	case "side":
		after.members[x.At].side += by
	case "plan":
		after.members[x.At].plan += by
	case "yokes":
		after.yokes[x.At] += by
	case "bearing":
		for i, down := range []float64{by, -by} {
			n := x.At + 1 + i
			v := r3.Add(r3.Scale(lengths[n], direction(after.members[n])), r3.Vec{Z: down})
			after.members[n] = member{side: math.Asin(v.Z / r3.Norm(v)), plan: math.Atan2(v.Y, v.X)}
		}
	}
	return after
}

// Each change gives the residual it names, by the simulation; where it reaches what was asked
// for, a little less of it does not; where it does not, no step of a grid does better.
func TestCorrectionsAgainstSimulation(t *testing.T) {
	c := mustCalculate(t)
	// The search is slow in goja: 30 shafts drawn from their seeds.
	for seed := range 30 {
		checkCorrections(t, c, drawnProblem.Example(seed))
	}
}

// problem is a shaft and the residual angle that may be left, rad.
type problem struct {
	chain
	most float64
}

var drawnProblem = rapid.Custom(func(rt *rapid.T) problem {
	var p problem
	n := rapid.IntRange(2, 4).Draw(rt, "members")
	for range n {
		p.members = append(p.members, member{side: rapid.Float64Range(-8, 8).Draw(rt, "side") * degree, plan: rapid.Float64Range(-4, 4).Draw(rt, "plan") * degree})
	}
	for range n - 2 {
		p.yokes = append(p.yokes, rapid.SampledFrom([]float64{0, 5, 90}).Draw(rt, "yokes")*degree)
	}
	p.most = rapid.SampledFrom([]float64{0, 0.5, 2, 3}).Draw(rt, "most") * degree
	return p
})

func checkCorrections(t *testing.T, c *calculations, s problem) {
	t.Helper()
	var lengths []float64
	var given, bases []any
	for i := range s.members {
		lengths = append(lengths, 0.8+0.3*float64(i))
		given, bases = append(given, lengths[i]), append(bases, 0.5)
	}
	most := s.most
	input := s.input(1)
	input["most"], input["bases"], input["lengths"] = most, bases, given
	var got corrections
	c.run(t, &got, "corrections", input)
	if most > 0 && got.Residual <= most && len(got.Changes) > 0 {
		t.Fatalf("%v is left, %v was allowed, and yet %d changes", got.Residual, most, len(got.Changes))
	}
	for _, x := range got.Changes {
		// A residual angle near nothing is a square root of next to nothing: compare squares.
		if sim := s.residualAfter(x, x.Change, lengths); math.Abs(sim*sim-x.Residual*x.Residual) > 1e-7 {
			t.Errorf("%+v leaves %v, simulated %v", x, x.Residual, sim)
		}
		if math.Abs(x.To-x.From-x.Change) > 1e-12 {
			t.Errorf("%+v does not add up", x)
		}
		if x.Reaches && most > 0 {
			if less := s.quickResidual(x, 0.98*x.Change, lengths); less < most-1e-6 {
				t.Errorf("%+v: 0.98 of it leaves %v, less than the %v asked for", x, less, most)
			}
		}
		far := map[string]float64{"side": 20 * degree, "plan": 20 * degree, "yokes": 90 * degree, "bearing": math.Tan(20*degree) * 0.8}[x.Kind]
		for i := range 41 {
			by := far * float64(i-20) / 20
			if x.Reaches && math.Abs(by) >= math.Abs(x.Change) {
				continue
			}
			if r := s.quickResidual(x, by, lengths); r < max(x.Residual, most)-1e-4 {
				t.Errorf("%+v, but %v leaves %v", x, by, r)
			}
		}
		if (x.Shim != nil) != (x.Kind == "side" || x.Kind == "plan") || x.Shim != nil && math.Abs(*x.Shim-0.5*math.Tan(x.Change)) > 1e-12 {
			t.Errorf("%+v has a shim of %v", x, x.Shim)
		}
	}
}

// Gearbox down 3, shaft 7, axle 2 degrees in side view: joints of 4 and 5. The axle up by 1
// degree makes them equal (7 - 4 = 3, parallel to the gearbox), as does the gearbox by 1 the
// other way; the ends then cancel. Wedge and shim under a seat of 120 mm: 2.09 mm.
func TestShimOfAParallelShaft(t *testing.T) {
	c := mustCalculate(t)
	var got corrections
	c.run(t, &got, "corrections", in{"members": []in{level(3, 0), level(7, 0), level(2, 0)}, "yokes": []float64{0}, "most": 0.,
		"bases": []any{nil, nil, 0.12}, "lengths": []any{nil, nil, nil}})
	found := map[string]change{}
	for _, x := range got.Changes {
		found[x.Kind+string(rune('0'+x.At))] = x
	}
	near(t, "axle, degrees", found["side2"].Change/degree, 1, 1e-6)
	near(t, "gearbox, degrees", found["side0"].Change/degree, -1, 1e-6)
	if y, ok := found["side1"]; ok {
		t.Errorf("a shaft cannot be tilted by itself: %+v", y)
	}
	near(t, "shim, mm", *found["side2"].Shim/mm, 120*math.Tan(1*degree), 1e-5)
	near(t, "residual as it stands, degrees", got.Residual/degree, 3.0024, 0.0003)
	for _, x := range []string{"side0", "side2"} {
		if !found[x].Reaches || math.Abs(found[x].Angles[0]-found[x].Angles[1]) > 1e-7 {
			t.Errorf("%s: %+v", x, found[x])
		}
	}
	if y, ok := found["yokes0"]; ok {
		t.Errorf("turned yokes cannot help unequal joints in one plane: %+v", y)
	}
}

// Equal joint angles with yokes in line and in one plane leave nothing, parallel or meeting,
// and so do equal angles in turned planes with the yokes turned alike.
func TestNothingLeft(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		angle := rapid.Float64Range(0.1, 40).Draw(rt, "angle") * degree
		gamma := rapid.Float64Range(-3, 3).Draw(rt, "gamma")
		axle := about(direction(member{side: angle}), r3.Vec{X: 1}, gamma)
		s := chain{members: []member{{side: -angle}, {}, {side: math.Asin(axle.Z), plan: math.Atan2(axle.Y, axle.X)}}, yokes: []float64{gamma}}
		var got shaftResult
		c.run(rt, &got, "shaftAngles", s.input(100))
		if got.Residual.Angle > 1e-6 || got.Residual.Acceleration > 1e-3 {
			rt.Errorf("%+v is left", got.Residual)
		}
		// Turned a quarter against that they add up: the square of one cosine.
		s.yokes[0] = math.Mod(gamma+math.Pi/2+2*math.Pi, math.Pi)
		c.run(rt, &got, "shaftAngles", s.input(100))
		if want := math.Acos(math.Pow(math.Cos(angle), 2)); math.Abs(got.Residual.Angle-want) > 1e-7 {
			rt.Errorf("a quarter turn out %v, want %v", got.Residual.Angle, want)
		}
		// Of one shaft, drive is the first joint and coast the last.
		if math.Abs(got.Inertia[0].Drive.Angle-angle) > 1e-7 || math.Abs(got.Inertia[0].Coast.Angle-angle) > 1e-7 {
			rt.Errorf("inertia %+v", got.Inertia)
		}
	})
}
