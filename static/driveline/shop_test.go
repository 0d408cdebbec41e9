package driveline_test

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// Figures worked out by hand from the published forms. They hold the functions to the forms,
// and are no evidence for them. Source of each form beside it.
func TestByHand(t *testing.T) {
	c := mustCalculate(t)
	for _, x := range []struct {
		from         string
		name         string
		input        in
		path         string
		unit         float64
		want, within float64
	}{
		{"Dana J3311-1-DSSP p. 2: 380 lbf·ft, 2.48, automatic, stall 2.0", "lowGearTorque", every["lowGearTorque"], "by.0.torque", lbfFt, 1507.8, 0.05},
		{"Caterpillar REHS2891: the same with 0.95 of net and 0.95", "lowGearTorque", every["lowGearTorque"], "by.1.torque", lbfFt, 380 * 2.48 * 2 * 0.95 * 0.95, 0.01},
		{"Dana J3311-1-DSSP p. 2: 4000 lbf, 14.5 in, 3.73", "wheelSlipTorque", every["wheelSlipTorque"], "published", lbfFt, 968.4, 0.05},
		{"Dana/GWB p. 46, W at 0°: A", "supportForces", every["supportForces"], "zero.a", 1, 115.77, 0.005},
		{"Dana/GWB p. 46, W at 0°: B", "supportForces", every["supportForces"], "zero.b", 1, 347.30, 0.005},
		{"Dana/GWB p. 46 at 90°", "supportForces", every["supportForces"], "quarter.a", 1, 1469.39, 0.005},
		{"Klein section 7: T sin 10°", "secondaryCouple", every["secondaryCouple"], "onDriven", 1, 173.65, 0.005},
		{"Klein section 7: T tan 10°", "secondaryCouple", every["secondaryCouple"], "onDriving", 1, 176.33, 0.005},
		{"two trunnions: T / (2 R cos b)", "secondaryCouple", every["secondaryCouple"], "trunnion", 1, 12693, 0.5},
		{"Dana/GWB: greased", "splineThrust", every["splineThrust"], "by.0.thrust", 1, 4383, 0.5},
		{"Dana/GWB: coated", "splineThrust", every["splineThrust"], "by.1.thrust", 1, 3188, 0.5},
		{"AISCO: 6°, 1000 rev/min, Tc/Ta 2", "lifeByRating", every["lifeByRating"], "life", hour, 2519.8, 0.05},
		{"from memory: 1.5e7/(n b) (CR/(K M))^(10/3)", "lifeByCapacity", every["lifeByCapacity"], "life", hour, 1.5e7 / 6000 * math.Pow(2000/(1.25*500.), 10./3), 1e-6},
		{"from memory: 1000 N·m, 1450 rev/min, 7°, 2000 h", "ratingForLife", every["ratingForLife"], "capacity", 1, 1095.02, 0.01},
		{"ISO 21940-11, 9549 G M / n: 6 kg, 4000 rev/min, G16", "permissibleUnbalance", every["permissibleUnbalance"], "unbalance", 1e-6, 229.2, 0.05},
		{"Dana commercial shafts: Lz 900, La 110, preferred closed + La/3", "shaftLength",
			in{"between": 0.9 + 0.11/3, "drivingFace": 0., "drivenFace": 0., "drivingYoke": 0.06, "drivenYoke": 0.2, "slip": 0.11, "out": 0.11 / 3, "root": 0.}, "centres", mm, 936.7, 0.05},
		{"L = 1300 mm, height 150 to 250 mm", "lengthOverTravel", in{"run": 1.3, "offset": 0., "heights": []float64{0.15, 0.25}, "ahead": []float64{0, 0}}, "change", mm, 15.19, 0.005},
		{"Datsun 521 PD: 15 g·cm at 4000 rev/min on a tube of 68.9 x 1.6 x 1233 mm, as a grade", "gradeOfUnbalance", in{"unbalance": 150e-6, "mass": 3.27, "speed": 4000 * rpm}, "grade", 1, 19.2, 0.05},
		{"Datsun 521 PD: mass of that tube", "criticalSpeed", in{"outside": 0.0689, "wall": 0.0016, "material": "steel", "length": 1.233, "speed": 0.}, "mass", 1, 3.27, 0.01},
		{"Datsun 521 PD: its critical speed with IMS's material", "criticalSpeed", in{"outside": 0.0689, "wall": 0.0016, "material": "steel", "length": 1.233, "speed": 0.}, "speed", rpm, 7559, 10},
		{"NTNU: T 1000 N·m, r 50 mm, 400 MPa: shear by von Mises", "torsion", in{"outside": 0.1, "wall": 0.001, "length": 1., "torque": 1000., "shearModulus": 80e9, "yield": 400e6}, "shearMises", 1e6, 230.9, 0.05},
		{"Dana commercial shafts: series 2040 at 2500 rev/min, 20000 °·rev/min", "angleAtSpeed", in{"speed": 2500 * rpm}, "series.5.angle", degree, 8, 1e-9},
		{"MAN: 1800 rev/min, gear 1, axle 3.73, tyre of 2 m round, 0.06 n U / i", "roadSpeedFromEngine", in{"engine": 1800 * rpm, "gear": 1., "transfer": 1., "tyre": 1 / math.Pi, "axle": 3.73}, "road", 1 / 3.6, 0.06 * 1800 * 2 / 3.73, 1e-9},
	} {
		near(t, x.from, c.number(t, x.name, x.input, x.path)/x.unit, x.want, x.within)
	}
}

// Angles at a speed, chart by chart as printed (degrees and minutes at rev/min): NAVEDTRA 14050A
// fig. 8-40 and Parker HY25-1890 p. 5. Between two printed speeds the smaller angle holds, and
// outside a chart there is none.
func TestAngleCharts(t *testing.T) {
	c := mustCalculate(t)
	none := math.NaN()
	for _, x := range []struct{ rpm, navedtra, parker float64 }{
		{499, none, none}, {500, none, 11.5}, {1000, 12, 11.5}, {1200, 11, 11.5}, {1500, 11, 11.5}, {1501, 8, 8 + 40./60},
		{2000, 8, 8 + 40./60}, {2500, 7, 7}, {2600, 5, 5 + 50./60}, {3000, 5, 5 + 50./60}, {3001, 5, none}, {3500, 5, none}, {3600, none, none},
	} {
		var got struct {
			Charts []struct {
				ID      string
				Angle   *float64
				Between []float64
			}
		}
		c.run(t, &got, "angleAtSpeed", in{"speed": x.rpm * rpm})
		for _, chart := range got.Charts {
			want, ok := map[string]float64{"navedtra": x.navedtra, "parker": x.parker}[chart.ID]
			if !ok {
				continue
			}
			if math.IsNaN(want) != (chart.Angle == nil) || chart.Angle != nil && math.Abs(*chart.Angle/degree-want) > 1e-9 {
				t.Errorf("%s at %v: %v, want %v°", chart.ID, x.rpm, chart.Angle, want)
			}
			if chart.Angle != nil && (chart.Between[0] > x.rpm*rpm*(1+1e-9) || chart.Between[1] < x.rpm*rpm*(1-1e-9)) {
				t.Errorf("%s at %v is read between %v", chart.ID, x.rpm, chart.Between)
			}
		}
	}
}

// Half the angle doubles the life above 3 degrees and does nothing below; half the torque gives
// 2^(10/3), and what a joint must be rated for gives back the life, in each basis by itself.
func TestLifeGoesRound(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		torque := rapid.Float64Range(10, 5000).Draw(rt, "torque")
		angle := rapid.Float64Range(0.5, 30).Draw(rt, "angle") * degree
		speed := rapid.Float64Range(50, 5000).Draw(rt, "speed") * rpm
		shock := rapid.Float64Range(1, 3).Draw(rt, "shock")
		life := rapid.Float64Range(100, 50000).Draw(rt, "life") * hour
		wanted := in{"life": life, "torque": torque, "angle": angle, "speed": speed, "shock": shock}
		common := func(more in) in {
			more["torque"], more["angle"], more["speed"], more["shock"] = torque, angle, speed, shock
			return more
		}
		type result struct {
			Life, Mean, Angle, Torque, Cubic float64
			Sensitivity                      struct{ HalfAngle, HalfTorque, HalfSpeed float64 }
		}
		var rated, capable result
		c.run(rt, &rated, "lifeByRating", common(in{"rating": c.number(rt, "ratingForLife", wanted, "rating")}))
		c.run(rt, &capable, "lifeByCapacity", common(in{"capacity": c.number(rt, "ratingForLife", wanted, "capacity")}))
		for _, x := range []result{rated, capable} {
			if math.Abs(x.Life/life-1) > 1e-9 || math.Abs(x.Mean/x.Life-5) > 1e-12 || math.Abs(x.Torque-torque*shock) > 1e-9*torque {
				rt.Errorf("%+v, wanted %v s", x, life)
			}
			if math.Abs(x.Sensitivity.HalfTorque-10.0794) > 0.0001 || x.Sensitivity.HalfSpeed != 2 {
				rt.Errorf("sensitivity %+v", x.Sensitivity)
			}
		}
		want := max(angle, 3*degree) / max(angle/2, 3*degree)
		if math.Abs(rated.Sensitivity.HalfAngle-want) > 1e-9 || math.Abs(capable.Sensitivity.HalfAngle-2) > 1e-9 || math.Abs(rated.Angle-max(angle, 3*degree)) > 1e-12 {
			rt.Errorf("half of %v°: %v by rating (want %v), %v by capacity", angle/degree, rated.Sensitivity.HalfAngle, want, capable.Sensitivity.HalfAngle)
		}
	})
}

// The parts of a shaft add up to the distance they were measured over, and the slip to its travel.
func TestShaftAddsUp(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		part := rapid.Float64Range(0, 0.2)
		input := in{"between": rapid.Float64Range(1.2, 4).Draw(rt, "between"), "slip": rapid.Float64Range(0.1, 0.3).Draw(rt, "slip"),
			"out": rapid.Float64Range(0, 0.1).Draw(rt, "out"), "root": rapid.Float64Range(0, 0.01).Draw(rt, "root")}
		sum := input["out"].(float64) + 2*input["root"].(float64)
		for _, name := range []string{"drivingFace", "drivenFace", "drivingYoke", "drivenYoke"} {
			x := part.Draw(rt, name)
			input[name], sum = x, sum+x
		}
		var got struct {
			Centres, Closed, Open, Cut, In, OutLeft float64
			Stands                                  []struct{ Least, Most float64 }
		}
		c.run(rt, &got, "shaftLength", input)
		for what, x := range map[string][2]float64{
			"whole":  {got.Cut + sum, input["between"].(float64)},
			"slip":   {got.Open - got.Closed, input["slip"].(float64)},
			"travel": {got.In + got.OutLeft, input["slip"].(float64)},
			"stands": {got.Closed + got.In, got.Centres},
			"third":  {got.Stands[0].Least * 3, input["slip"].(float64)},
			"most":   {got.Stands[1].Most, inch},
			"least":  {got.Stands[1].Least, 0.75 * inch},
		} {
			if math.Abs(x[0]-x[1]) > 1e-12 {
				rt.Errorf("%s: %v, want %v", what, x[0], x[1])
			}
		}
	})
	for _, x := range []struct {
		input, wrong string
		change       in
	}{
		{"out", "conflict", in{"out": 0.2}},
		{"drivingFace", "conflict", in{"between": 0.06}},
		{"drivingYoke", "conflict", in{"between": 0.3}},
	} {
		input := in{}
		for k, v := range every["shaftLength"] {
			input[k] = v
		}
		for k, v := range x.change {
			input[k] = v
		}
		if found := c.complaints(t, "shaftLength", input); found[0].Input != x.input || found[0].Wrong != x.wrong || found[0].Beside == "" {
			t.Errorf("%+v: %+v", x.change, found)
		}
	}
}

// Length over travel is that between two points, and overlap rules are in the units they are printed in.
func TestTravelAndOverlap(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		run, offset := rapid.Float64Range(0.5, 3).Draw(rt, "run"), rapid.Float64Range(-0.3, 0.3).Draw(rt, "offset")
		var heights, ahead []float64
		for range rapid.IntRange(2, 6).Draw(rt, "n") {
			heights = append(heights, rapid.Float64Range(-0.4, 0.4).Draw(rt, "h"))
			ahead = append(ahead, rapid.Float64Range(-0.1, 0.1).Draw(rt, "x"))
		}
		var got struct {
			Lengths, Inclinations     []float64
			Shortest, Longest, Change float64
			Inward, Outward           float64
		}
		c.run(rt, &got, "lengthOverTravel", in{"run": run, "offset": offset, "heights": heights, "ahead": ahead})
		for i, l := range got.Lengths {
			want := math.Sqrt(math.Pow(run+ahead[i], 2) + offset*offset + heights[i]*heights[i])
			if math.Abs(l-want) > 1e-12 || math.Abs(l*math.Sin(got.Inclinations[i])-heights[i]) > 1e-12 || l < got.Shortest || l > got.Longest {
				rt.Errorf("position %d: %v, want %v", i, l, want)
			}
		}
		if math.Abs(got.Inward+got.Outward-got.Change) > 1e-12 || math.Abs(got.Lengths[0]-got.Inward-got.Shortest) > 1e-12 {
			rt.Errorf("%+v does not add up", got)
		}
	})
	var got struct {
		Share, ShareLeast float64
		Rules             []struct {
			ID          string
			Least, Most *float64
		}
	}
	c.run(t, &got, "overlapRules", in{"tube": 0.6, "overlapWorking": 0.3, "overlapLeast": 0.15, "leftLeast": 0.05})
	near(t, "share", got.Share, 0.5, 1e-12)
	near(t, "least share", got.ShareLeast, 0.25, 1e-12)
	want := map[string]float64{"gaspardo-working": 300, "gaspardo-least": 200, "gaspardo-left": 40, "befco-least": 6 * 25.4, "befco-left": 2 * 25.4, "mtz": 110, "redexim": 250}
	for _, r := range got.Rules {
		if mmWanted, ok := want[r.ID]; ok {
			near(t, r.ID, *r.Least/mm, mmWanted, 1e-9)
			delete(want, r.ID)
		}
	}
	if len(want) > 0 {
		t.Errorf("no rules %v", want)
	}
}

// Threads as people write them, and what is none.
func TestThreads(t *testing.T) {
	c := mustCalculate(t)
	input := func(thread, grade string) in {
		return in{"thread": thread, "grade": grade, "condition": "dry", "series": "1610", "published": []any{
			in{"id": "other", "item": "plate bolt", "series": "1710, 1760", "thread": "3/8-24", "least": 52., "most": 65., "ground": in{}},
			in{"id": "any", "item": "flange bolt", "series": "unknown", "thread": "5/16-24", "least": 30., "most": 33., "ground": in{}},
			in{"id": "hit", "item": "plate bolt", "series": "1610", "thread": "5/16-24", "least": 35., "most": 48., "ground": in{}},
			in{"id": "metric", "item": "flange bolt", "series": "unknown", "thread": "M10", "least": 70., "most": 70., "ground": in{}},
		}}
	}
	for thread, want := range map[string]struct{ diameter, pitch float64 }{
		"5/16-24": {5. / 16 * 25.4, 25.4 / 24}, ".312-24": {5. / 16 * 25.4, 25.4 / 24}, "0.3125-24 UNF": {5. / 16 * 25.4, 25.4 / 24},
		`5/16"-24`: {5. / 16 * 25.4, 25.4 / 24}, " .438-20": {7. / 16 * 25.4, 25.4 / 20}, "1 1/8-12": {1.125 * 25.4, 25.4 / 12}, "1-8": {25.4, 25.4 / 8},
		"M10": {10, 1.5}, "m8x1.25": {8, 1.25}, "M 12 x 1,25": {12, 1.25}, "M14×1.5": {14, 1.5},
	} {
		grade := "SAE-8"
		if strings.ContainsAny(thread, "mM") {
			grade = "10.9"
		}
		var got struct {
			Diameter, Pitch, Area float64
			PitchGround           *struct{ Basis string }
		}
		c.run(t, &got, "tightening", input(thread, grade))
		if (got.PitchGround != nil) != (thread == "M10") {
			t.Errorf("%s: the pitch rests on %v", thread, got.PitchGround)
		}
		near(t, thread+" diameter", got.Diameter/mm, want.diameter, 1e-9)
		near(t, thread+" pitch", got.Pitch/mm, want.pitch, 1e-9)
	}
	for _, bad := range []string{"x", "5/16", "5/0-24", "0-24", "99-8", "5/16-1", "M", "M2", "M11", "M10x9", "1/4-200", "-", "M10x0.1", "1/4-4"} {
		if found := c.complaints(t, "tightening", input(bad, "SAE-8")); found[0].Input != "thread" {
			t.Errorf("%q: %+v", bad, found)
		}
	}
	for thread, grade := range map[string]string{"M10": "SAE-8", "5/16-24": "10.9"} {
		if found := c.complaints(t, "tightening", input(thread, grade)); found[0].Input != "grade" || found[0].Wrong != "conflict" {
			t.Errorf("%s of grade %s: %+v", thread, grade, found)
		}
	}
	var got struct {
		Published []struct{ ID string }
		Reuse     []struct{ Says string }
	}
	c.run(t, &got, "tightening", input("5/16-24", "SAE-8"))
	if len(got.Published) != 2 || got.Published[0].ID != "hit" || got.Published[1].ID != "any" || len(got.Reuse) < 4 {
		t.Errorf("published %+v, reuse %+v", got.Published, got.Reuse)
	}
}

// Metric bolts of class 10.9 as one maker prints them for DIN flanges, lightly oiled, ± 7 %
// (Dana, commercial drive shafts): M8 35, M10 70 N·m. The general formula is a dry and an oiled
// bolt's; the printed torques lie between, and so must ours.
func TestMetricBoltsAgainstPrint(t *testing.T) {
	c := mustCalculate(t)
	for thread, printed := range map[string]float64{"M8": 35, "M10": 70} {
		input := in{"thread": thread, "grade": "10.9", "condition": "oiled", "series": "", "published": []any{}}
		low := c.number(t, "tightening", input, "torque")
		input["condition"] = "dry"
		if high := c.number(t, "tightening", input, "torque"); low > printed || high < printed*0.93 {
			t.Errorf("%s: %v to %v N·m, printed %v", thread, low, high, printed)
		}
	}
}

// Series of one maker (Dana, commercial drive shafts): greatest speed, and greatest speed times
// angle. Past its speed a series has no angle at all.
func TestSeriesEndAtTheirSpeed(t *testing.T) {
	c := mustCalculate(t)
	var got struct {
		Series []struct {
			ID    string
			Angle *float64
		}
	}
	c.run(t, &got, "angleAtSpeed", in{"speed": 4000 * rpm})
	for _, s := range got.Series {
		switch s.ID {
		case "2065": // up to 3900 rev/min
			if s.Angle != nil {
				t.Errorf("2065 at 4000 rev/min has %v", *s.Angle)
			}
		case "2060": // up to 4100 rev/min, 17000 °·rev/min
			near(t, "2060 at 4000 rev/min", *s.Angle/degree, 4.25, 1e-9)
		case "2015": // up to 6000 rev/min, 27000 °·rev/min
			near(t, "2015 at 4000 rev/min", *s.Angle/degree, 6.75, 1e-9)
		}
	}
	if len(got.Series) != 12 {
		t.Errorf("%d series are left", len(got.Series))
	}
}
