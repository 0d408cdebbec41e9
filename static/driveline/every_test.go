package driveline_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/dop251/goja"
	"pgregory.net/rapid"
)

// every function with inputs it answers.
var every = map[string]in{
	"angleAtLength":        {"length": 1.2},
	"angleAtSpeed":         {"speed": 3000 * rpm},
	"gradeOfUnbalance":     {"unbalance": 150e-6, "mass": 3.3, "speed": 4000 * rpm},
	"permissibleUnbalance": {"grade": 16., "mass": 6., "speed": 4000 * rpm},
	"clipFloat":            {"hold": "outside-clip", "yoke": measured(82, 0.05), "joint": measured(78, 0.03), "clip": measured(1.98, 0.02), "other": nil},
	"clipFor":              {"hold": "inside-clip", "yoke": measured(82, 0.05), "joint": measured(78, 0.03), "float": 0.},
	"compoundAngle":        {"driving": level(3, 0), "driven": level(5, 2)},
	"corrections":          {"members": []in{level(3, 0), level(7, 1), level(2, 0)}, "yokes": []float64{0}, "most": 1 * degree, "bases": []any{0.6, nil, 0.2}, "lengths": []any{nil, 1.2, nil}},
	"angleFactor":          {"torque": 20., "angle": 15 * degree, "bearing": "needle"},
	"secondaryCouple":      {"torque": 1000., "angle": 10 * degree, "radius": 0.04},
	"splineThrust":         {"torque": 1000., "radius": 0.025, "angle": 5 * degree},
	"supportForces":        {"torque": 1000., "layout": "W", "first": 10 * degree, "second": 10 * degree, "length": 1.5, "a": 0.12, "b": 0.06, "e": 0.06, "f": 0.12},
	"criticalCurve":        {"outside": 0.08, "wall": 0.002, "material": "steel", "from": 0.8, "to": 2., "points": 50.},
	"criticalSpeed":        {"outside": 0.08, "wall": 0.002, "material": "aluminium", "length": 1.5, "speed": 3000 * rpm},
	"longestShaft":         {"outside": 0.08, "wall": 0.002, "material": "steel", "speed": 3000 * rpm},
	"tubeFor":              {"length": 1.5, "speed": 3000 * rpm, "wall": 0.002, "material": "steel"},
	"tightening":           {"thread": "5/16-24", "grade": "SAE-8", "condition": "dry", "series": "1610", "published": []any{}},
	"capInBore":            {"cap": measured(27, 0.02), "bores": []in{measured(27.01, 0.04)}},
	"isoFit":               {"size": 0.027, "cap": "h6", "bore": "H7"},
	"direction":            level(3, 1),
	"inclinationFromRise":  {"rise": 0.02, "run": 0.5, "along": "shaft"},
	"angleForFluctuation":  {"fluctuation": 0.01},
	"jointAt":              {"angle": 10 * degree, "speed": 100., "rotation": 1.},
	"singleJoint":          {"angle": 10 * degree, "speed": 3000 * rpm, "inertia": 0.1},
	"lengthOverTravel":     {"run": 1.3, "offset": 0., "heights": []float64{0.2, 0.15, 0.25}, "ahead": []float64{0, 0, 0.01}},
	"overlapRules":         {"tube": 0.6, "overlapWorking": 0.35, "overlapLeast": 0.25, "leftLeast": 0.06},
	"shaftLength":          {"between": 1.4, "drivingFace": 0.04, "drivenFace": 0.04, "drivingYoke": 0.06, "drivenYoke": 0.2, "slip": 0.11, "out": 0.037, "root": 0.},
	"lifeByCapacity":       {"capacity": 2000., "torque": 500., "angle": 6 * degree, "speed": 1000 * rpm, "shock": 1.25},
	"lifeByRating":         {"rating": 1000., "torque": 500., "angle": 6 * degree, "speed": 1000 * rpm, "shock": 1.},
	"ratingForLife":        {"life": 2000 * hour, "torque": 1000., "angle": 7 * degree, "speed": 1450 * rpm, "shock": 1.},
	"shaftAngles":          {"members": []in{level(3, 0), level(7, 1), level(2, 0)}, "yokes": []float64{0}, "speed": 3000 * rpm, "inertia": 0.1},
	"shaftCurve":           {"members": []in{level(3, 0), level(7, 1), level(2, 0)}, "yokes": []float64{0}, "points": 181.},
	"roadSpeedFromEngine":  {"engine": 5000 * rpm, "gear": 0.8, "transfer": 1., "tyre": 0.33, "axle": 3.73},
	"shaftSpeedFromEngine": {"engine": 5000 * rpm, "gear": 0.8, "transfer": 1.},
	"shaftSpeedFromRoad":   {"road": 33., "tyre": 0.33, "axle": 3.73},
	"lowGearTorque":        {"engine": 380 * lbfFt, "rated": "net", "gearbox": "automatic", "gear": 2.48, "stall": 2., "transfer": nil},
	"powerFromTorque":      {"torque": 500., "speed": 3000 * rpm},
	"torqueFromPower":      {"power": 50000., "speed": 3000 * rpm},
	"wheelSlipTorque":      {"load": 4000 * lbf, "tyre": 14.5 * inch, "axle": 3.73, "friction": 0.71, "efficiency": 0.95},
	"torqueAtStress":       {"outside": 0.08, "wall": 0.002, "stress": 100e6},
	"torqueAtTwist":        {"outside": 0.08, "wall": 0.002, "length": 1.5, "shearModulus": 80e9, "twist": 0.03},
	"torsion":              {"outside": 0.08, "wall": 0.002, "length": 1.5, "torque": 1000., "shearModulus": 80e9, "yield": 350e6},
}

// All exports but those that are no calculation stand in `every`.
func TestEveryFunctionIsTried(t *testing.T) {
	c := mustCalculate(t)
	v, err := c.vm.RunString(`Object.keys(` + calculationsName + `).filter((k) => typeof ` + calculationsName + `[k] === "function").sort().join(" ")`)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, name := range strings.Fields(v.String()) {
		if name != "toSi" && name != "fromSi" {
			got = append(got, name)
		}
	}
	if want := slices.Sorted(maps.Keys(every)); !slices.Equal(got, want) {
		t.Errorf("exported are %v\nwant %v", got, want)
	}
	for name, input := range every {
		var result any
		c.run(t, &result, name, input)
	}
}

// What a function may go without.
var mayBeNull = map[string]bool{"clipFloat.other": true, "lowGearTorque.transfer": true, "tightening.series": true}

// Without any one of its inputs, and with one that is no number, too large or of another kind, a
// function says which one is wrong, and what to do.
func TestEveryInputIsLookedAt(t *testing.T) {
	c := mustCalculate(t)
	for name, input := range every {
		for field := range input {
			if mayBeNull[name+"."+field] {
				continue
			}
			for what, bad := range map[string]any{"nothing": nil, "NaN": math.NaN(), "infinity": math.Inf(1), "too large": 1e30, "too small": -1e30, "a word": "x", "an object": in{"a": 1}} {
				spoiled := maps.Clone(input)
				spoiled[field] = bad
				found := c.complaints(t, name, spoiled)
				for _, f := range found {
					if !strings.HasPrefix(f.Input, field) && f.Beside != field {
						t.Errorf("%s without a good %s (%s): %+v", name, field, what, f)
					}
					if f.Wrong == "" || f.Remedy == "" {
						t.Errorf("half a complaint: %+v", f)
					}
				}
			}
		}
	}
}

// Each function exports what its inputs may be, has an answer at both ends of it or says what
// stands against it, and refuses just beyond by naming the bound.
func TestRangesAreTold(t *testing.T) {
	for name, input := range every {
		c := mustRun(t, sourceOf(t, name))
		v, err := c.vm.RunString(`JSON.stringify(` + calculationsName + `.` + name + `Ranges)`)
		if err != nil || goja.IsUndefined(v) {
			t.Errorf("%s does not export %sRanges (%v)", name, name, err)
			continue
		}
		var ranges map[string]*struct {
			Least, Most *float64
			Measured    bool
			Count       []float64
		}
		mustDecode(t, v.String(), &ranges)
		for field, r := range ranges {
			if _, ok := input[field]; !ok {
				t.Errorf("%s has a range for %s, which is no input", name, field)
			}
			if r == nil || r.Least == nil || r.Measured || r.Count != nil {
				continue
			}
			for _, x := range []float64{*r.Least, *r.Most} {
				spoiled := maps.Clone(input)
				spoiled[field] = x
				c.ask(t, name, spoiled)
			}
			for wrong, x := range map[string]float64{"too-small": *r.Least - 1e-3 - 1e-3*math.Abs(*r.Least), "too-large": *r.Most + 1e-3*math.Abs(*r.Most)} {
				spoiled := maps.Clone(input)
				spoiled[field] = x
				found := c.complaints(t, name, spoiled)
				bound := map[string]float64{"too-small": *r.Least, "too-large": *r.Most}[wrong]
				if found[0].Input != field || found[0].Wrong != wrong || found[0].Bound == nil || *found[0].Bound != bound {
					t.Errorf("%s with %s = %v: %+v", name, field, x, found[0])
				}
			}
		}
	}
}

// Any numbers within their ranges give a result or a complaint, and never anything that is no number.
func TestAnyNumbers(t *testing.T) {
	c := mustCalculate(t)
	names := slices.Sorted(maps.Keys(every))
	rapid.Check(t, func(rt *rapid.T) {
		name := rapid.SampledFrom(names).Draw(rt, "name")
		c.ask(rt, name, shaken(every[name], func(x float64) float64 {
			return rapid.OneOf(rapid.Just(x), rapid.Just(0.), rapid.Just(1.), rapid.Just(-x), rapid.Float64Range(-2, 2), rapid.Float64()).Draw(rt, "x")
		}))
	})
}

// shaken is an input with each of its numbers put through f.
func shaken(x any, f func(float64) float64) any {
	switch x := x.(type) {
	case float64:
		return f(x)
	case in:
		out := in{}
		for _, k := range slices.Sorted(maps.Keys(x)) {
			out[k] = shaken(x[k], f)
		}
		return out
	case []in:
		out := make([]any, len(x))
		for i, v := range x {
			out[i] = shaken(v, f)
		}
		return out
	case []float64:
		out := make([]float64, len(x))
		for i, v := range x {
			out[i] = f(v)
		}
		return out
	case []any:
		out := make([]any, len(x))
		for i, v := range x {
			out[i] = shaken(v, f)
		}
		return out
	}
	return x
}

// Any function with any numbers in any of its places.
func FuzzNumbers(f *testing.F) {
	names := slices.Sorted(maps.Keys(every))
	for i := range names {
		f.Add(uint8(i), uint64(0), 0.1, 1.0)
	}
	f.Add(uint8(3), uint64(5), math.NaN(), math.Inf(-1))
	f.Add(uint8(7), uint64(1), 5e-324, 1.7e308)
	c := mustCalculate(f)
	f.Fuzz(func(t *testing.T, which uint8, places uint64, x, y float64) {
		name := names[int(which)%len(names)]
		n := 0
		c.ask(t, name, shaken(every[name], func(old float64) float64 {
			n++
			switch places >> (2 * n) & 3 {
			case 1:
				return x
			case 2:
				return y
			case 3:
				return old * x
			}
			return old
		}))
	})
}

// Any JSON at all in the place of an input.
func FuzzInput(f *testing.F) {
	names := slices.Sorted(maps.Keys(every))
	for i, text := range []string{`null`, `{}`, `[]`, `"x"`, `7`, `{"members":[null,{}],"yokes":7}`, `{"thread":7,"published":[null,{"thread":{}}]}`,
		`{"cap":null,"bores":[null]}`, `{"thread":"5/16-24","grade":"SAE-8","condition":"dry","series":7,"published":[{"thread":"5/16-24","series":8}]}`} {
		f.Add(uint8(i), text)
	}
	c := mustCalculate(f)
	f.Fuzz(func(t *testing.T, which uint8, text string) {
		name := names[int(which)%len(names)]
		if err := c.vm.Set("text", text); err != nil {
			t.Fatal(err)
		}
		v, err := c.vm.RunString(`(() => { try { return { is: JSON.parse(text) }; } catch { return null; } })()`)
		if err != nil || v.Export() == nil {
			return
		}
		c.ask(t, name, v.ToObject(c.vm).Get("is"))
	})
}

func BenchmarkEach(b *testing.B) {
	for _, name := range slices.Sorted(maps.Keys(every)) {
		b.Run(name, func(b *testing.B) {
			c := mustCalculate(b)
			if err := c.vm.Set("asked", plain(every[name])); err != nil {
				b.Fatal(err)
			}
			for b.Loop() {
				if _, err := c.vm.RunString(calculationsName + "." + name + "(asked)"); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
