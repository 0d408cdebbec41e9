package driveline_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"
)

// beam is a tube between two hinges in finite elements: cubic bending elements with their
// consistent mass, which know nothing of the closed form. It returns the lowest natural
// frequency of bending, rad/s.
func beam(outside, inside, length, modulus, density float64, elements int) (float64, error) {
	second := math.Pi / 64 * (math.Pow(outside, 4) - math.Pow(inside, 4))
	area := math.Pi / 4 * (outside*outside - inside*inside)
	h := length / float64(elements)
	n := 2 * (elements + 1) // deflection and slope of every node
	stiff, mass := mat.NewSymDense(n, nil), mat.NewSymDense(n, nil)
	k := [4][4]float64{
		{12, 6 * h, -12, 6 * h}, {6 * h, 4 * h * h, -6 * h, 2 * h * h},
		{-12, -6 * h, 12, -6 * h}, {6 * h, 2 * h * h, -6 * h, 4 * h * h},
	}
	m := [4][4]float64{
		{156, 22 * h, 54, -13 * h}, {22 * h, 4 * h * h, 13 * h, -3 * h * h},
		{54, 13 * h, 156, -22 * h}, {-13 * h, -3 * h * h, -22 * h, 4 * h * h},
	}
	for e := range elements {
		for i := range 4 {
			for j := i; j < 4; j++ {
				r, c := 2*e+i, 2*e+j
				stiff.SetSym(r, c, stiff.At(r, c)+modulus*second/(h*h*h)*k[i][j])
				mass.SetSym(r, c, mass.At(r, c)+density*area*h/420*m[i][j])
			}
		}
	}
	// Hinges: the first and the last deflection are gone.
	var free []int
	for i := range n {
		if i != 0 && i != n-2 {
			free = append(free, i)
		}
	}
	kk, mm := mat.NewSymDense(len(free), nil), mat.NewSymDense(len(free), nil)
	for i, r := range free {
		for j := i; j < len(free); j++ {
			kk.SetSym(i, j, stiff.At(r, free[j]))
			mm.SetSym(i, j, mass.At(r, free[j]))
		}
	}
	// K x = w² M x, with M = L Lᵀ, is the plain eigenproblem of L⁻¹ K L⁻ᵀ.
	var chol mat.Cholesky
	if !chol.Factorize(mm) {
		return 0, fmt.Errorf("the mass matrix of %v x %v is not positive", outside, length)
	}
	var l mat.TriDense
	chol.LTo(&l)
	var left, both mat.Dense
	if err := left.Solve(&l, kk); err != nil {
		return 0, err
	}
	if err := both.Solve(&l, left.T()); err != nil {
		return 0, err
	}
	sym := mat.NewSymDense(len(free), nil)
	for i := range free {
		for j := i; j < len(free); j++ {
			sym.SetSym(i, j, (both.At(i, j)+both.At(j, i))/2)
		}
	}
	var eigen mat.EigenSym
	if !eigen.Factorize(sym, false) {
		return 0, fmt.Errorf("no eigenvalues for %v x %v", outside, length)
	}
	return math.Sqrt(eigen.Values(nil)[0]), nil
}

// Over many tubes and bars of both materials, the critical speed is within 0.1 % of the finite
// elements; so is the longest shaft's, and that of the tube for a length.
func TestCriticalSpeedAgainstBeam(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		outside := rapid.Float64Range(0.01, 0.3).Draw(rt, "outside")
		wall := outside / 2 * rapid.Float64Range(0.07, 1).Draw(rt, "wall")
		length := rapid.Float64Range(0.2, 6).Draw(rt, "length")
		material := rapid.SampledFrom([]string{"steel", "aluminium"}).Draw(rt, "material")
		modulus, density := 206e9, 7850.
		if material == "aluminium" {
			modulus, density = 70e9, 2700
		}
		want, err := beam(outside, outside-2*wall, length, modulus, density, 8)
		if err != nil {
			rt.Fatal(err)
		}
		tube := in{"outside": outside, "wall": wall, "material": material}
		got := c.number(rt, "criticalSpeed", in{"outside": outside, "wall": wall, "material": material, "length": length, "speed": 100.}, "speed")
		if math.Abs(got/want-1) > 0.001 {
			rt.Errorf("%v rad/s, the beam %v", got, want)
		}
		if want < 1*rpm || want > 20000*rpm {
			return
		}
		tube["speed"] = want
		if longest := c.number(rt, "longestShaft", tube, "atCritical"); math.Abs(longest/length-1) > 0.001 {
			rt.Errorf("longest shaft %v m, the beam %v", longest, length)
		}
		if d := c.number(rt, "tubeFor", in{"length": length, "speed": want, "wall": wall, "material": material}, "atCritical"); math.Abs(d/outside-1) > 0.002 {
			rt.Errorf("tube of %v m, the beam's is %v", d, outside)
		}
	})
}

// With the weight lumped at mid-span, 32 elements of no mass and one heavy node, the beam gives
// the 0.702 of some worked examples in print: the model that is wrong.
func TestBeamIsNotLumped(t *testing.T) {
	c := mustCalculate(t)
	const outside, inside, length = 3 * inch, 2.75 * inch, 48 * inch
	got := c.number(t, "criticalSpeed", in{"outside": outside, "wall": (outside - inside) / 2, "material": "steel", "length": length, "speed": 0.}, "speed")
	area := math.Pi / 4 * (outside*outside - inside*inside)
	second := math.Pi / 64 * (math.Pow(outside, 4) - math.Pow(inside, 4))
	lumped := math.Sqrt(48 * 206e9 * second / (length * length * length) / (7850 * area * length))
	near(t, "lumped over spread", lumped/got, 0.702, 0.0005)
}

// Elements twice as short change nothing that 0.1 % could hide.
func TestBeamConverges(t *testing.T) {
	for _, length := range []float64{0.3, 1.5, 6} {
		coarse, err1 := beam(0.08, 0.076, length, 206e9, 7850, 8)
		fine, err2 := beam(0.08, 0.076, length, 206e9, 7850, 16)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		near(t, "8 over 16 elements", coarse/fine, 1, 5e-5)
	}
}

// Doubling the length quarters the critical speed; the curve is the function at its lengths;
// nothing but the square root of an allowed fraction shortens a shaft.
func TestCriticalSpeedScales(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		outside := rapid.Float64Range(0.01, 0.3).Draw(rt, "outside")
		tube := in{"outside": outside, "wall": outside / 10, "material": "steel"}
		length := rapid.Float64Range(0.1, 5).Draw(rt, "length")
		with := func(more in) in {
			for k, v := range tube {
				more[k] = v
			}
			return more
		}
		once := c.number(rt, "criticalSpeed", with(in{"length": length, "speed": 0.}), "speed")
		twice := c.number(rt, "criticalSpeed", with(in{"length": 2 * length, "speed": 0.}), "speed")
		if math.Abs(once/twice-4) > 1e-12 {
			rt.Errorf("%v at %v m, %v at twice that", once, length, twice)
		}
		var curve struct{ Length, Speed []float64 }
		c.run(rt, &curve, "criticalCurve", with(in{"from": length, "to": 2 * length, "points": 5.}))
		if len(curve.Speed) != 5 || math.Abs(curve.Speed[0]/once-1) > 1e-12 || math.Abs(curve.Speed[4]/twice-1) > 1e-12 || math.Abs(curve.Length[2]/length-1.5) > 1e-12 {
			rt.Errorf("curve %+v, ends %v and %v", curve, once, twice)
		}
		var longest struct {
			AtCritical float64
			Allowed    []struct{ Value, Length float64 }
		}
		c.run(rt, &longest, "longestShaft", with(in{"speed": 300.}))
		for _, a := range longest.Allowed {
			if math.Abs(a.Length/longest.AtCritical-math.Sqrt(a.Value)) > 1e-12 {
				rt.Errorf("at %v of the critical speed %v m of %v", a.Value, a.Length, longest.AtCritical)
			}
		}
	})
}
