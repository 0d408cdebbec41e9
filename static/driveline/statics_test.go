package driveline_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// A cross passes on only what stands square to its two pairs of trunnions: the moment on the
// driven shaft is M n, n the normal of the cross. What of it lies along a shaft is torque,
// the rest bends the shaft. This is worked out from vectors over a whole turn.
func TestCoupleAgainstVectors(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		angle := rapid.Float64Range(0, 50*degree).Draw(rt, "angle")
		s := chain{members: []member{{}, {side: angle}}}
		u, v := direction(s.members[0]), direction(s.members[1])
		const torque = 1000.
		onDriving, onDriven, most, least := 0., 0., 0., math.Inf(1)
		for i := range 1801 {
			rotation := math.Pi * float64(i) / 1800
			arm := about(square(u, v), u, rotation)
			driven := r3.Unit(r3.Cross(v, arm))
			normal := r3.Cross(arm, driven)
			moment := r3.Scale(torque/r3.Dot(normal, u), normal) // its part along the driving shaft is the torque put in
			along := r3.Dot(moment, v)
			onDriving = max(onDriving, r3.Norm(r3.Sub(moment, r3.Scale(torque, u))))
			onDriven = max(onDriven, r3.Norm(r3.Sub(moment, r3.Scale(along, v))))
			most, least = max(most, math.Abs(along)), min(least, math.Abs(along))
		}
		var got struct{ OnDriving, OnDriven, Trunnion, TorqueMost, TorqueLeast float64 }
		c.run(rt, &got, "secondaryCouple", in{"torque": torque, "angle": angle, "radius": 0.04})
		for what, x := range map[string][2]float64{
			"on the driving shaft": {got.OnDriving, onDriving}, "on the driven shaft": {got.OnDriven, onDriven},
			"most": {got.TorqueMost, most}, "least": {got.TorqueLeast, least},
			// The pair of trunnions on the driven yoke sees the whole moment.
			"trunnion": {got.Trunnion * 0.08, torque / math.Cos(angle)},
		} {
			if math.Abs(x[0]-x[1]) > 1e-6+1e-6*x[1] {
				rt.Errorf("%s: %v, by vectors %v", what, x[0], x[1])
			}
		}
	})
}

// The forces on the bearings again by the equilibrium of three beams, solved as a system: the
// shaft with a couple at each end, and the two ends on their bearings.
func TestSupportsAgainstEquilibrium(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		angle := rapid.Float64Range(0, 40*degree)
		length := rapid.Float64Range(0.05, 1)
		first, second := angle.Draw(rt, "first"), angle.Draw(rt, "second")
		l, a, b := length.Draw(rt, "l"), length.Draw(rt, "a"), length.Draw(rt, "b")
		e, f := length.Draw(rt, "e"), length.Draw(rt, "f")
		sign, layout := -1., "Z"
		if rapid.Bool().Draw(rt, "W") {
			sign, layout = 1, "W"
		}
		const torque = 1000.
		// Driving yoke in the plane: the shaft is bent by T sin b1 at the driving joint and, its own
		// torque being T cos b1, by T cos b1 tan b2 at the driven one. Unknowns: the force across at the
		// two joints, and A, B, E, F. Rows: balance of forces and moments of the shaft, then of either end.
		m1, m2 := torque*math.Sin(first), sign*torque*math.Cos(first)*math.Tan(second)
		system := mat.NewDense(6, 6, []float64{
			1, -1, 0, 0, 0, 0, // shaft: forces
			0, l, 0, 0, 0, 0, // shaft: moments about the driving joint
			-1, 0, -1, 1, 0, 0, // driving end: forces
			-(a + b), 0, 0, a, 0, 0, // about A
			0, -1, 0, 0, 1, -1, // driven end: forces
			0, -(e + f), 0, 0, f, 0, // about F
		})
		var x mat.VecDense
		if err := x.SolveVec(system, mat.NewVecDense(6, []float64{0, m1 + m2, 0, 0, 0, 0})); err != nil {
			rt.Fatal(err)
		}
		type forces struct{ A, B, E, F float64 }
		var got struct{ Zero, Quarter forces }
		c.run(rt, &got, "supportForces", in{"torque": torque, "layout": layout, "first": first, "second": second, "length": l, "a": a, "b": b, "e": e, "f": f})
		for i, y := range []float64{got.Zero.A, got.Zero.B, got.Zero.E, got.Zero.F} {
			if want := x.AtVec(2 + i); math.Abs(y-want) > 1e-6+1e-9*math.Abs(want) {
				rt.Errorf("force %d: %v, by equilibrium %v", i, y, want)
			}
		}
		// A quarter turn later the couples act on the ends alone, each a pair of forces on its bearings.
		if got.Quarter.A != got.Quarter.B || got.Quarter.E != got.Quarter.F || math.Abs(got.Quarter.A*a-torque*math.Tan(first)) > 1e-6 ||
			math.Abs(got.Quarter.E*f-torque/math.Cos(first)*math.Sin(second)) > 1e-6 {
			rt.Errorf("a quarter turn later: %+v", got.Quarter)
		}
	})
}

// Shear over the wall of a tube, summed ring by ring, gives back the torque; at the torque
// of yield it is there, by either rule, and a thin wall is the thin formula's.
func TestTorsionBySumming(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		outside := rapid.Float64Range(0.01, 0.3).Draw(rt, "outside")
		wall := outside / 2 * rapid.Float64Range(0.06, 1).Draw(rt, "wall")
		yield := rapid.Float64Range(100e6, 1000e6).Draw(rt, "yield")
		input := in{"outside": outside, "wall": wall, "length": 1.5, "torque": 500., "shearModulus": 80e9, "yield": yield}
		var got struct {
			Inside, Stress, StressInside, StressThin, Twist    float64
			ShearMises, ShearTresca, TorqueMises, TorqueTresca float64
			ShareMises, ShareTresca                            float64
		}
		c.run(rt, &got, "torsion", input)
		const rings = 4000
		sum, dr := 0., (outside-got.Inside)/2/rings
		for i := range rings {
			r := got.Inside/2 + (float64(i)+0.5)*dr
			sum += got.Stress * r / (outside / 2) * r * 2 * math.Pi * r * dr
		}
		alike := func(what string, x, want, share float64) {
			if math.Abs(x-want) > share*math.Abs(want) {
				rt.Errorf("%s: %v, want %v", what, x, want)
			}
		}
		alike("torque of the summed shear", sum, 500, 1e-6)
		alike("twist", got.Twist, got.Stress/(outside/2)/80e9*1.5, 1e-9)
		alike("von Mises in pure shear", 3*got.ShearMises*got.ShearMises, yield*yield, 1e-12)
		alike("Tresca in pure shear", 2*got.ShearTresca, yield, 1e-12)
		alike("share at yield", got.TorqueMises*got.ShareMises, 500, 1e-9)
		alike("share at yield by Tresca", got.TorqueTresca*got.ShareTresca, 500, 1e-9)
		if wall/outside < 0.05 {
			alike("thin wall", got.StressThin, got.Stress, 0.06)
		}
	})
}
