package driveline_test

import (
	"math"
	"math/big"
	"testing"

	"pgregory.net/rapid"
)

// Units by their definitions, as exact fractions: inch 25.4 mm and pound 0.453 592 37 kg
// (international yard and pound agreement, 1959), standard gravity 9.806 65 m/s² (3rd CGPM,
// 1901), the rest by what they are made of. pi is taken with 40 digits.
func TestUnitsByDefinition(t *testing.T) {
	rat := func(s string) *big.Rat {
		r, ok := new(big.Rat).SetString(s)
		if !ok {
			t.Fatalf("%q is no number", s)
		}
		return r
	}
	mul := func(xs ...*big.Rat) *big.Rat {
		r := rat("1")
		for _, x := range xs {
			r = new(big.Rat).Mul(r, x)
		}
		return r
	}
	div := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
	pi := rat("3.141592653589793238462643383279502884197")
	in, lb, g := rat("0.0254"), rat("0.45359237"), rat("9.80665")
	ft, lbf := mul(rat("12"), in), mul(lb, g)
	psi := div(lbf, mul(in, in))
	want := map[string]map[string]*big.Rat{
		"m":      {"mm": rat("1/1000"), "m": rat("1"), "in": in, "ft": ft},
		"rad":    {"deg": div(pi, rat("180")), "rad": rat("1"), "arcmin": div(pi, rat("10800"))},
		"rad/s":  {"rev/min": div(pi, rat("30")), "rad/s": rat("1"), "Hz": mul(rat("2"), pi)},
		"rad/s2": {"rad/s²": rat("1")},
		"m/s":    {"km/h": rat("5/18"), "m/s": rat("1"), "mile/h": rat("0.44704"), "mm/s": rat("1/1000")},
		"N":      {"N": rat("1"), "kN": rat("1000"), "lbf": lbf},
		"N.m": {"N·m": rat("1"), "lbf·ft": mul(lbf, ft), "lbf·in": mul(lbf, in), "kgf·m": g, "kgf·cm": div(g, rat("100")),
			"kN·m": rat("1000")},
		"kg":    {"kg": rat("1"), "lb": lb, "g": rat("1/1000")},
		"kg.m":  {"g·mm": rat("1/1000000"), "g·cm": rat("1/100000"), "oz·in": mul(div(lb, rat("16")), in), "kg·m": rat("1")},
		"kg.m2": {"kg·m²": rat("1"), "lb·ft²": mul(lb, ft, ft)},
		"kg/m3": {"kg/m³": rat("1"), "lb/in³": div(lb, mul(in, in, in))},
		"Pa":    {"MPa": rat("1000000"), "GPa": rat("1000000000"), "Pa": rat("1"), "psi": psi, "ksi": mul(rat("1000"), psi)},
		// Horsepower: 550 ft·lbf/s; the metric one 75 kgf·m/s.
		"W": {"kW": rat("1000"), "W": rat("1"), "hp": mul(rat("550"), ft, lbf), "PS": mul(rat("75"), g)},
		"s": {"h": rat("3600"), "s": rat("1"), "min": rat("60")},
		"":  {"": rat("1"), "%": rat("1/100")},
	}
	v, err := mustCalculate(t).vm.RunString(`JSON.stringify(` + calculationsName + `.units)`)
	if err != nil {
		t.Fatal(err)
	}
	var got map[string]map[string]float64
	mustDecode(t, v.String(), &got)
	for si, units := range got {
		for unit, factor := range units {
			exact := want[si][unit]
			if exact == nil {
				t.Errorf("%q of %q has no definition here", unit, si)
				continue
			}
			f, _ := exact.Float64()
			if math.Abs(factor/f-1) > 4e-16 { // two roundings
				t.Errorf("%q is %v of %q, by definition %v", unit, factor, si, f)
			}
			delete(want[si], unit)
		}
		for unit := range want[si] {
			t.Errorf("%q of %q is gone", unit, si)
		}
		delete(want, si)
	}
	for si := range want {
		t.Errorf("%q is gone", si)
	}
}

// There and back is where one was, and a unit of another kind gives nothing.
func TestUnitsGoRound(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		x := rapid.Float64Range(-1e6, 1e6).Draw(rt, "x")
		pair := rapid.SampledFrom([][2]string{{"in", "m"}, {"deg", "rad"}, {"rev/min", "rad/s"}, {"lbf·ft", "N.m"}, {"hp", "W"}, {"psi", "Pa"}}).Draw(rt, "unit")
		if got := converted(x, pair[0], pair[0], pair[1])(t, c); math.Abs(got-x) > 1e-12*math.Abs(x) {
			rt.Errorf("%v %s comes back as %v", x, pair[0], got)
		}
	})
	for _, bad := range [][2]string{{"kg", "m"}, {"constructor", "m"}, {"__proto__", "m"}, {"mm", "constructor"}, {"", "m"}} {
		if err := c.vm.Set("bad", []any{bad[0], bad[1]}); err != nil {
			t.Fatal(err)
		}
		v, err := c.vm.RunString(calculationsName + `.toSi(1, bad[0], bad[1])`)
		if err != nil || v.Export() != nil {
			t.Errorf("%q of %q gives %v, %v", bad[0], bad[1], v, err)
		}
	}
}
