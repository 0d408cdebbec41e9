package driveline_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"
	"pgregory.net/rapid"
)

// The kinematics again, in another way: nothing but crosses whose two pairs of trunnions
// stand square to each other. The axes are unit vectors, speeds are finite differences.

// direction of a member by its two angles, ahead, right and down.
func direction(m member) r3.Vec {
	if m.projected {
		return r3.Unit(r3.Vec{X: 1, Y: math.Tan(m.plan), Z: math.Tan(m.side)})
	}
	return r3.Vec{X: math.Cos(m.side) * math.Cos(m.plan), Y: math.Cos(m.side) * math.Sin(m.plan), Z: math.Sin(m.side)}
}

type member struct {
	side, plan float64 // rad
	projected  bool
}

type chain struct {
	members []member
	yokes   []float64 // rad
}

func (s chain) input(speed float64) in {
	var members []in
	for _, m := range s.members {
		read := "level"
		if m.projected {
			read = "projected"
		}
		members = append(members, in{"side": m.side, "plan": m.plan, "read": read})
	}
	return in{"members": members, "yokes": append([]float64{}, s.yokes...), "speed": speed, "inertia": 0.1}
}

// about turns v by an angle about an axis, right-handed.
func about(v, axis r3.Vec, angle float64) r3.Vec { return r3.NewRotation(angle, axis).Rotate(v) }

// turned is the angle from a to b about an axis, both square to it.
func turned(a, b, axis r3.Vec) float64 {
	return math.Atan2(r3.Dot(r3.Cross(a, b), axis), r3.Dot(a, b))
}

// arms gives the last yoke of each member when the first driving yoke is turned by an angle from `zero`.
func (s chain) arms(rotation float64) []r3.Vec {
	u := make([]r3.Vec, len(s.members))
	for i, m := range s.members {
		u[i] = direction(m)
	}
	arm := about(square(u[0], u[1]), u[0], rotation)
	var out []r3.Vec
	for i := 1; i < len(u); i++ {
		// The driven pair is square to its own shaft and to the driving pair.
		driven := r3.Unit(r3.Cross(u[i], arm))
		out = append(out, driven)
		if i-1 < len(s.yokes) {
			arm = about(driven, u[i], s.yokes[i-1])
		}
	}
	return out
}

// square is the direction square to u in the plane of u and v; any, when they are one.
func square(u, v r3.Vec) r3.Vec {
	n := r3.Cross(u, v)
	if r3.Norm(n) < 1e-12 {
		n = r3.Cross(u, r3.Vec{Z: 1})
	}
	return r3.Unit(r3.Cross(n, u))
}

// ratios of each member after the first at a rotation, by central differences of fourth order.
func (s chain) ratios(rotation float64) []float64 {
	const h = 1e-3
	last := s.arms(rotation)
	out := make([]float64, len(last))
	for _, step := range []struct{ by, weight float64 }{{-2 * h, 1. / 12}, {-h, -8. / 12}, {h, 8. / 12}, {2 * h, -1. / 12}} {
		for i, arm := range s.arms(rotation + step.by) {
			out[i] += step.weight * turned(last[i], arm, direction(s.members[i+1])) / h
		}
	}
	return out
}

// acceleration of the last member over the square of the driving speed.
func (s chain) acceleration(rotation float64) float64 {
	const h = 2e-3
	n := len(s.members) - 2
	at := func(x float64) float64 { return s.ratios(rotation + x)[n] }
	return (at(-2*h) - 8*at(-h) + 8*at(h) - at(2*h)) / (12 * h)
}

func drawnChain(t *rapid.T, most float64) chain {
	var s chain
	n := rapid.IntRange(2, 4).Draw(t, "members")
	angle := rapid.OneOf(rapid.Just(0.), rapid.Float64Range(-most*degree, most*degree)) // a joint between two zeros is straight
	for range n {
		s.members = append(s.members, member{angle.Draw(t, "side"), angle.Draw(t, "plan"), rapid.Bool().Draw(t, "projected")})
	}
	for range n - 2 {
		s.yokes = append(s.yokes, rapid.OneOf(rapid.Just(0.), rapid.Just(math.Pi/2), rapid.Float64Range(-math.Pi, math.Pi)).Draw(t, "yokes"))
	}
	return s
}

type shaftResult struct {
	Joints       []struct{ Angle float64 }
	Planes       []*float64
	Phase        []*float64
	Residual     residual
	ResidualShop float64
	Inertia      []struct{ Drive, Coast residual }
}

type residual struct{ Angle, Fluctuation, RatioMost, RatioLeast, Acceleration, AccelerationSmall float64 }

// Whatever the layout, the exact results are those of the simulation: joint angles, greatest and
// least speed over a turn, fluctuation, greatest acceleration, and the speeds in between.
func TestShaftAgainstSimulation(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		s := drawnChain(rt, 25)
		var got shaftResult
		c.run(rt, &got, "shaftAngles", s.input(1))
		for i, j := range got.Joints {
			u, v := direction(s.members[i]), direction(s.members[i+1])
			if want := math.Acos(min(1, r3.Dot(u, v))); math.Abs(j.Angle-want) > 1e-7 {
				rt.Errorf("joint %d: %v, want %v", i, j.Angle, want)
			}
		}
		last := len(s.members) - 2
		most := highest(func(x float64) float64 { return s.ratios(x)[last] })
		least := -highest(func(x float64) float64 { return -s.ratios(x)[last] })
		peak := highest(func(x float64) float64 { return math.Abs(s.acceleration(x)) })
		for what, x := range map[string][2]float64{
			"greatest ratio": {got.Residual.RatioMost, most},
			"least ratio":    {got.Residual.RatioLeast, least},
			"fluctuation":    {got.Residual.Fluctuation, most - least},
			"acceleration":   {got.Residual.Acceleration, peak},
		} {
			// Finite differences of an even run leave about 1e-9, of one at 80 degrees of angle 1e-5 of its size.
			if math.Abs(x[0]-x[1]) > 1e-7+1e-5*math.Abs(x[1]) {
				rt.Errorf("%s: %.9f, simulated %.9f", what, x[0], x[1])
			}
		}
	})
}

// highest value over half a turn, after which everything repeats: a grid, then finer ones.
func highest(f func(float64) float64) float64 {
	at, step := 0., math.Pi/90
	best := f(0)
	for i := range 90 {
		if y := f(float64(i) * step); y > best {
			at, best = float64(i)*step, y
		}
	}
	for range 3 {
		from := at - step
		step /= 8
		for i := range 17 {
			if y := f(from + float64(i)*step); y > best {
				at, best = from+float64(i)*step, y
			}
		}
	}
	return best
}

// The curve of a turn is that of the simulation at every point, for every member.
func TestCurveAgainstSimulation(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		s := drawnChain(rt, 25)
		for i := range s.members[1:] {
			if r3.Norm(r3.Cross(direction(s.members[i]), direction(s.members[i+1]))) < 1e-6 {
				rt.Skip("a straight first joint has no zero of rotation")
			}
		}
		input := s.input(1)
		input["points"] = 25
		var got struct {
			Rotation []float64
			Ratios   [][]float64
		}
		c.run(rt, &got, "shaftCurve", input)
		for i, rotation := range got.Rotation {
			for m, want := range s.ratios(rotation) {
				if math.Abs(got.Ratios[m][i]-want) > 1e-8 {
					rt.Errorf("member %d at %v: %.12f, simulated %.12f", m+1, rotation, got.Ratios[m][i], want)
				}
			}
		}
	})
}

// One joint at a rotation: where the driven side is, how fast, and its acceleration.
func TestJointAtAgainstSimulation(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		angle := rapid.Float64Range(0.001, 59*degree).Draw(rt, "angle")
		rotation := rapid.Float64Range(-7, 7).Draw(rt, "rotation")
		s := chain{members: []member{{}, {side: angle}}}
		var got struct{ Rotation, Ratio, Speed, Acceleration float64 }
		c.run(rt, &got, "jointAt", in{"angle": angle, "speed": 2, "rotation": rotation})
		arms := func(x float64) r3.Vec { return s.arms(x)[0] }
		axis := direction(s.members[1])
		turn := turned(arms(0), arms(rotation), axis)
		if d := math.Mod(got.Rotation-turn, 2*math.Pi); math.Abs(math.Sin(d/2)) > 1e-9 || math.Abs(got.Rotation-rotation) > math.Pi/4 {
			rt.Errorf("rotation %v, simulated %v", got.Rotation, turn)
		}
		// Differences lose digits where the joint jerks: the wider, the more of them.
		within := 1e-7 + 1e-6*math.Pow(math.Tan(angle), 8)
		if want := s.ratios(rotation)[0]; math.Abs(got.Ratio-want) > within || math.Abs(got.Speed-2*want) > 2*within {
			rt.Errorf("ratio %.9f, simulated %.9f", got.Ratio, want)
		}
		if want := 4 * s.acceleration(rotation); math.Abs(got.Acceleration-want) > 1e-5+1e-4*math.Pow(math.Tan(angle), 10) {
			rt.Errorf("acceleration %.9f, simulated %.9f", got.Acceleration, want)
		}
	})
}

// In shop layouts by name: cases of two and three joints with the residual angles a
// simulation of 3600 steps a turn gave, and the shop's root of squares beside it. Degrees.
func TestShopLayouts(t *testing.T) {
	c := mustCalculate(t)
	for _, x := range []struct {
		name        string
		sides       []float64
		yokes       []float64
		exact, shop float64
	}{
		{"single 10", []float64{0, 10}, nil, 10.000, 10.000},
		{"Z 5/5", []float64{0, 5, 0}, []float64{0}, 0, 0},
		{"W 5/5", []float64{0, 5, 10}, []float64{0}, 0, 0},
		{"Z 5/5, yokes 90 out", []float64{0, 5, 0}, []float64{90}, 7.067, 7.071},
		{"5/4 in phase", []float64{0, 5, 1}, []float64{0}, 3.0024, 3.000},
		{"3/4/5 in phase", []float64{0, 3, 7, 12}, []float64{0, 0}, 4.243, 4.243},
		{"1/4/4 in phase", []float64{0, 1, 5, 9}, []float64{0, 0}, 1.000, 1.000},
		{"1/4/4, first shaft 90 out", []float64{0, 1, 5, 9}, []float64{90, 0}, 1.000, 1.000},
		{"3/4/5, first shaft 90 out", []float64{0, 3, 7, 12}, []float64{90, 0}, 0.121, 0.000},
	} {
		var s chain
		for _, side := range x.sides {
			s.members = append(s.members, member{side: side * degree})
		}
		for _, yoke := range x.yokes {
			s.yokes = append(s.yokes, yoke*degree)
		}
		var got shaftResult
		c.run(t, &got, "shaftAngles", s.input(1))
		near(t, x.name, got.Residual.Angle/degree, x.exact, 0.0006)
		near(t, x.name+", shop", got.ResidualShop/degree, x.shop, 0.0006)
	}
}

// Joints whose planes are turned against each other by gamma, yokes by psi; residual angles
// of the same simulation. Degrees.
func TestTurnedPlanes(t *testing.T) {
	c := mustCalculate(t)
	for _, x := range []struct{ first, second, gamma, psi, exact, shop float64 }{
		{5, 5, 0, 0, 0, 0}, {5, 5, 30, 0, 5.000, 5.000}, {5, 5, 30, 30, 0, 0}, {5, 5, 30, -30, 6.577, 6.580},
		{5, 5, 90, 0, 7.067, 7.071}, {5, 5, 90, 90, 0, 0}, {5, 5, 90, -90, 0, 0}, {5, 3, 45, 0, 5.154, 5.155}, {5, 3, 180, 0, 4.002, 4.000},
	} {
		// The shaft lies ahead; the gearbox is bent off it in side view, the axle in a plane turned by gamma.
		axle := about(direction(member{side: x.second * degree}), r3.Vec{X: 1}, x.gamma*degree)
		s := chain{
			members: []member{{side: -x.first * degree}, {}, {side: math.Asin(axle.Z), plan: math.Atan2(axle.Y, axle.X)}},
			yokes:   []float64{x.psi * degree},
		}
		var got shaftResult
		c.run(t, &got, "shaftAngles", s.input(1))
		near(t, "exact", got.Residual.Angle/degree, x.exact, 0.0006)
		near(t, "shop", got.ResidualShop/degree, x.shop, 0.0006)
		if got.Planes[0] == nil || math.Abs(math.Sin(*got.Planes[0]-x.gamma*degree)) > 1e-9 {
			t.Errorf("planes of %+v are %v", x, got.Planes[0])
		}
		if got.Phase[0] == nil || math.Abs(math.Sin(*got.Phase[0]-(x.psi-x.gamma)*degree)) > 1e-9 {
			t.Errorf("phase of %+v is %v", x, got.Phase[0])
		}
	}
}

// With joints in one plane and yokes in line or square, what is left is the product of
// cosines, each turned over where the joint counts against the first.
func TestProductOfCosines(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		side, product, with := 0., 1., 1.
		s := chain{members: []member{{}}}
		for i := range rapid.IntRange(1, 3).Draw(rt, "joints") {
			angle := rapid.Float64Range(-25, 25).Draw(rt, "angle") * degree
			side += angle
			s.members = append(s.members, member{side: side})
			if i > 0 {
				square := rapid.Bool().Draw(rt, "square")
				if s.yokes = append(s.yokes, 0); square {
					s.yokes[i-1] = math.Pi / 2
				} else {
					with = -with
				}
			}
			product *= math.Pow(math.Cos(angle), with)
		}
		var got struct {
			Residual residual
			Equality float64
			Phase    []*float64
		}
		c.run(rt, &got, "shaftAngles", s.input(1))
		if want := math.Acos(min(product, 1/product)); math.Abs(math.Cos(got.Residual.Angle)-math.Cos(want)) > 1e-12 {
			rt.Errorf("%v is left, the cosines give %v", got.Residual.Angle, want)
		}
		if n := len(s.members) - 1; n > 1 {
			last, before := s.members[n].side-s.members[n-1].side, s.members[n-1].side-s.members[n-2].side
			if math.Abs(got.Equality-math.Abs(math.Abs(last)-math.Abs(before))) > 1e-9 {
				rt.Errorf("joints of %v and %v differ by %v", before, last, got.Equality)
			}
		} else if got.Equality != 0 {
			rt.Errorf("one joint differs by %v", got.Equality)
		}
		for i, p := range got.Phase {
			if p != nil && math.Abs(math.Abs(*p)-s.yokes[i]) > 1e-9 {
				rt.Errorf("yokes turned by %v are out by %v", s.yokes[i], *p)
			}
		}
	})
}

// A straight joint in the middle passes on how its neighbours are turned against each other.
func TestStraightInTheMiddle(t *testing.T) {
	c := mustCalculate(t)
	for _, turn := range []float64{0, 30, 90} {
		axle := about(direction(member{side: 5 * degree}), r3.Vec{X: 1}, turn*degree)
		s := chain{members: []member{{side: -5 * degree}, {}, {}, {side: math.Asin(axle.Z), plan: math.Atan2(axle.Y, axle.X)}}, yokes: []float64{math.Pi / 2, 0}}
		var got shaftResult
		c.run(t, &got, "shaftAngles", s.input(1))
		most := highest(func(x float64) float64 { return s.ratios(x)[2] })
		near(t, "greatest ratio", got.Residual.RatioMost, most, 1e-8)
		if got.Planes[0] != nil || got.Planes[1] != nil {
			t.Errorf("a straight joint has planes %v", got.Planes)
		}
	}
}
