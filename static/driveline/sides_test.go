package driveline_test

import (
	"math"
	"testing"
)

// The numbers that stand beside a result are what they are called: half and shares of the
// critical speed, a plane's part of an unbalance, life with the other exponent.
func TestNumbersBeside(t *testing.T) {
	c := mustCalculate(t)
	var critical struct {
		Speed, Half, Fraction float64
		Allowed               []struct{ Value, Speed float64 }
		Constants             []struct {
			ID    string
			Speed float64
		}
		Modulus, Density struct{ Value float64 }
	}
	tube := in{"outside": 0.0762, "wall": 0.0021082, "material": "steel", "length": 60 * inch, "speed": 3000 * rpm}
	c.run(t, &critical, "criticalSpeed", tube)
	near(t, "half", critical.Half, critical.Speed/2, 1e-9)
	near(t, "fraction", critical.Fraction, 3000*rpm/critical.Speed, 1e-12)
	shares := map[float64]bool{}
	for _, a := range critical.Allowed {
		near(t, "allowed speed", a.Speed, a.Value*critical.Speed, 1e-9)
		shares[a.Value] = true
	}
	for _, want := range []float64{0.65, 0.7, 0.75} { // IMS, IMS, from memory
		if !shares[want] {
			t.Errorf("no share of %v", want)
		}
	}
	// 3 x 0.083 x 60 in with 4.705e6, 4.764e6 (from memory) and 4.8e6 (IMS) in inches, rev/min.
	for _, k := range critical.Constants {
		if want, ok := map[string]float64{"mem-29": 5394, "mem-30": 5461, "ims-inch": 5503}[k.ID]; ok {
			near(t, k.ID, k.Speed/rpm, want, 0.6)
		}
	}
	near(t, "E over density", critical.Speed, math.Pi*math.Pi/4*math.Sqrt(critical.Modulus.Value/critical.Density.Value)*
		math.Hypot(0.0762, 0.0762-2*0.0021082)/math.Pow(60*inch, 2), 1e-9)

	var balance struct {
		Unbalance, Plane, Eccentricity float64
		Grades                         []struct{ Grade, Unbalance float64 }
		SpeedBelow                     struct{ Value float64 }
	}
	c.run(t, &balance, "permissibleUnbalance", every["permissibleUnbalance"])
	near(t, "plane", balance.Plane, balance.Unbalance/2, 1e-15)
	near(t, "eccentricity times mass", balance.Eccentricity*6, balance.Unbalance, 1e-15)
	near(t, "below, rev/min", balance.SpeedBelow.Value/rpm, 500, 1e-9) // Dana/GWB
	for _, g := range balance.Grades {
		near(t, "grade", g.Unbalance/balance.Unbalance, g.Grade/16, 1e-12)
	}

	var life struct{ Life, Cubic float64 }
	c.run(t, &life, "lifeByRating", every["lifeByRating"]) // rated twice what is carried
	near(t, "cubic", life.Life/life.Cubic, math.Pow(2, 1./3), 1e-9)

	// Through tyre and axle and back: 100 km/h on 0.33 m and 3.73.
	shaft := c.number(t, "shaftSpeedFromRoad", in{"road": 100 / 3.6, "tyre": 0.33, "axle": 3.73}, "speed")
	near(t, "shaft, rev/min", shaft/rpm, 100/3.6/(2*math.Pi*0.33)*60*3.73, 1e-6)
	near(t, "engine", c.number(t, "shaftSpeedFromEngine", in{"engine": shaft * 0.8 * 2, "gear": 0.8, "transfer": 2.}, "speed"), shaft, 1e-9)
	near(t, "road", c.number(t, "roadSpeedFromEngine", in{"engine": shaft, "gear": 1., "transfer": 1., "tyre": 0.33, "axle": 3.73}, "road"), 100/3.6, 1e-9)

	// Gross and manual, with a transfer case: 0.95 x 0.85 x 0.95 (Dana J3311-1-DSSP p. 2).
	input := in{"engine": 100., "rated": "gross", "gearbox": "manual", "gear": 2., "stall": 1., "transfer": 2.}
	near(t, "Dana", c.number(t, "lowGearTorque", input, "by.0.torque"), 100*2*2*0.95*0.85*0.95, 1e-9)
	near(t, "Caterpillar", c.number(t, "lowGearTorque", input, "by.1.torque"), 100*2*2*0.85*0.95, 1e-9)
	near(t, "slip on dry concrete", c.number(t, "wheelSlipTorque", in{"load": 1000., "tyre": 0.5, "axle": 4., "friction": 1., "efficiency": 0.8}, "torque"), 156.25, 1e-9)
}

// Each of the shop's compound angles is off by what it says, and the arctan form is exact from one
// shaft's axis, the product of cosines from a level shaft (10 and 10 degrees: 14.142, 14.002, 14.106).
func TestShopsCompoundAngles(t *testing.T) {
	c := mustCalculate(t)
	type shop struct {
		ID         string
		Angle, Off float64
	}
	var got struct {
		Angle float64
		Shop  []shop
	}
	for read, exact := range map[string]string{"level": "cosines", "projected": "arctan"} {
		driven := in{"side": 10 * degree, "plan": 10 * degree, "read": read}
		c.run(t, &got, "compoundAngle", in{"driving": level(0, 0), "driven": driven})
		for _, s := range got.Shop {
			near(t, s.ID, s.Angle/degree, map[string]float64{"root-sum": 14.142, "arctan": 14.002, "cosines": 14.106}[s.ID], 0.0006)
			near(t, s.ID+" is off by", s.Off, s.Angle-got.Angle, 1e-15)
			if s.ID == exact {
				near(t, s.ID+" is exact", s.Off, 0, 1e-12)
			}
		}
	}
}

// Rise over run, level and along the shaft, and the direction it gives.
func TestInclinations(t *testing.T) {
	c := mustCalculate(t)
	near(t, "level", c.number(t, "inclinationFromRise", in{"rise": 0.03, "run": 0.4, "along": "level"}, "angle"), math.Atan2(0.03, 0.4), 1e-15)
	near(t, "along", c.number(t, "inclinationFromRise", in{"rise": 0.03, "run": 0.4, "along": "shaft"}, "angle"), math.Asin(0.075), 1e-15)
	if found := c.complaints(t, "inclinationFromRise", in{"rise": -0.5, "run": 0.4, "along": "shaft"}); found[0].Wrong != "conflict" || found[0].Beside != "run" {
		t.Errorf("a rise longer than the shaft: %+v", found)
	}
	var got struct{ Direction [3]float64 }
	c.run(t, &got, "direction", level(30, 0))
	for i, want := range []float64{math.Cos(30 * degree), 0, 0.5} { // down is positive
		near(t, "direction", got.Direction[i], want, 1e-15)
	}
}

// What cannot be together is said of both: a wall thicker than half its tube, a curve that ends
// before it begins, joints bent past 60 degrees.
func TestConflictsAreNamed(t *testing.T) {
	c := mustCalculate(t)
	for _, x := range []struct {
		name, input, beside string
		change              in
	}{
		{"criticalSpeed", "wall", "outside", in{"wall": 0.05}},
		{"torsion", "wall", "outside", in{"wall": 0.05}},
		{"criticalCurve", "to", "from", in{"to": 0.7}},
		{"shaftAngles", "members[1]", "members[0]", in{"members": []in{level(-40, 0), level(30, 0), level(30, 0)}}},
		{"lengthOverTravel", "ahead", "heights", in{"ahead": []float64{0, 0}}},
		{"lengthOverTravel", "ahead[1]", "run", in{"ahead": []float64{0, -2, 0}}},
		{"overlapRules", "overlapLeast", "overlapWorking", in{"overlapLeast": 0.4}},
	} {
		input := in{}
		for k, v := range every[x.name] {
			input[k] = v
		}
		for k, v := range x.change {
			input[k] = v
		}
		found := c.complaints(t, x.name, input)
		if len(found) != 1 || found[0].Input != x.input || found[0].Wrong != "conflict" || found[0].Remedy != "check-both" || found[0].Beside != x.beside {
			t.Errorf("%s of %v: %+v", x.name, x.change, found)
		}
	}
}
