package driveline_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"
)

// measured is a length in mm with its expanded uncertainty.
func measured(value, uncertainty float64) in {
	return in{"value": value * mm, "uncertainty": uncertainty * mm}
}

type floatResult struct {
	Float, Uncertainty, Least, Most float64
	State                           string
	BindProbability, OffCentre      float64
}

// An owner's real case (inside clips, front axle): ears 41.35 mm apart, a joint of 37.617 mm
// by its listing and 37.85 mm as measured, clips of 1.5 or 2.0 mm. Neither fits.
func TestOwnersClips(t *testing.T) {
	c := mustCalculate(t)
	for _, x := range []struct {
		joint, clip, float float64
		state              string
	}{
		{37.617, 1.5, 0.73, "floats"}, {37.85, 1.5, 0.50, "floats"},
		{37.617, 2.0, -0.27, "binds"}, {37.85, 2.0, -0.50, "binds"},
	} {
		var got floatResult
		c.run(t, &got, "clipFloat", in{"hold": "inside-clip", "yoke": measured(41.35, 0.04), "joint": measured(x.joint, 0.04), "clip": measured(x.clip, 0.02), "other": nil})
		near(t, "float, mm", got.Float/mm, x.float, 0.005)
		if got.State != x.state {
			t.Errorf("%+v: %s, want %s", x, got.State, x.state)
		}
	}
	var wanted struct {
		Thickness float64
		Sets      []struct {
			ID            string
			Choice, Float *float64
		}
	}
	c.run(t, &wanted, "clipFor", in{"hold": "inside-clip", "yoke": measured(41.35, 0.04), "joint": measured(37.617, 0.04), "float": 0.})
	near(t, "clip that fits, mm", wanted.Thickness/mm, (41.35-37.617)/2, 1e-9)
	for _, s := range wanted.Sets {
		if s.Choice != nil {
			t.Errorf("no set has a clip of 1.867 mm, %s gives %v", s.ID, *s.Choice)
		}
	}
}

// An owner's case: a cap of 27.00 mm in bores of 26.92 and 26.80 mm; the second would not go in.
func TestOwnersBores(t *testing.T) {
	c := mustCalculate(t)
	var got struct {
		Bores []struct{ Clearance, TightProbability float64 }
	}
	c.run(t, &got, "capInBore", in{"cap": measured(27, 0.02), "bores": []in{measured(26.92, 0.04), measured(26.80, 0.04)}})
	near(t, "first, mm", got.Bores[0].Clearance/mm, -0.08, 1e-9)
	near(t, "second, mm", got.Bores[1].Clearance/mm, -0.20, 1e-9)
	for _, b := range got.Bores {
		near(t, "tight", b.TightProbability, 1, 0.001)
	}
}

// Chances are those of gonum's normal distribution, whose 95 % are the expanded uncertainty,
// and of readings drawn from it.
func TestChancesAgainstGonum(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		u := rapid.Float64Range(0.001, 0.1)
		yoke, joint, clip := rapid.Float64Range(79, 83).Draw(rt, "yoke"), rapid.Float64Range(76.9, 77.1).Draw(rt, "joint"), rapid.Float64Range(1.5, 2.5).Draw(rt, "clip")
		uy, uj, uc := u.Draw(rt, "uy"), u.Draw(rt, "uj"), u.Draw(rt, "uc")
		var got floatResult
		c.run(rt, &got, "clipFloat", in{"hold": "outside-clip", "yoke": measured(yoke, uy), "joint": measured(joint, uj), "clip": measured(clip, uc), "other": nil})
		z := distuv.Normal{Mu: 0, Sigma: 1}.Quantile(0.975)
		// Both clips were read with one tool: as one quantity counted twice.
		sigma := math.Sqrt(uy*uy+uj*uj+4*uc*uc) / z
		float := yoke - joint - 2*clip
		if want := (distuv.Normal{Mu: float, Sigma: sigma}).CDF(0); math.Abs(got.BindProbability-want) > 1e-9 {
			rt.Errorf("binds with %v, gonum %v", got.BindProbability, want)
		}
		if math.Abs(got.Uncertainty/mm-z*sigma) > 1e-9 {
			rt.Errorf("± %v mm, want %v", got.Uncertainty/mm, z*sigma)
		}
		state := map[bool]string{true: "floats", false: "not-known"}[got.Least >= 0]
		if got.Most < 0 {
			state = "binds"
		}
		if got.State != state || got.Least > got.Float || got.Most < got.Float {
			rt.Errorf("%+v is called %s", got, got.State)
		}
	})
}

// The spread of 20,000 floats of drawn readings is the stated uncertainty.
func TestFloatSpread(t *testing.T) {
	c := mustCalculate(t)
	var got floatResult
	c.run(t, &got, "clipFloat", in{"hold": "outside-clip", "yoke": measured(82, 0.05), "joint": measured(78, 0.03), "clip": measured(1.98, 0.02), "other": nil})
	source := rand.NewPCG(7, 7)
	draw := func(mu, expanded float64) float64 {
		return distuv.Normal{Mu: mu, Sigma: expanded / 1.959964, Src: source}.Rand()
	}
	floats := make([]float64, 20000)
	for i := range floats {
		floats[i] = draw(82, 0.05) - draw(78, 0.03) - 2*draw(1.98, 0.02)
	}
	near(t, "expanded uncertainty, mm", got.Uncertainty/mm, 1.959964*stat.StdDev(floats, nil), 0.0015)
	near(t, "float, mm", got.Float/mm, stat.Mean(floats, nil), 0.001)
	binds := 0.
	for _, f := range floats {
		if f < 0 {
			binds++
		}
	}
	near(t, "chance to bind", got.BindProbability, binds/20000, 0.01)
}

// Unequal clips shift the joint by half their difference and leave the float of their sum. A
// clip for a float gives just that float, equal on both sides; the choice of a set never binds,
// and no thicker one of it would do.
func TestClipsGoRound(t *testing.T) {
	c := mustCalculate(t)
	rapid.Check(t, func(rt *rapid.T) {
		yoke, joint := rapid.Float64Range(80, 81).Draw(rt, "yoke"), rapid.Float64Range(76, 77.4).Draw(rt, "joint")
		float := rapid.Float64Range(0, 0.1).Draw(rt, "float")
		var clip struct {
			Thickness float64
			Sets      []struct {
				ID            string
				Thicknesses   []float64
				Choice, Float *float64
			}
		}
		c.run(rt, &clip, "clipFor", in{"hold": "outside-clip", "yoke": measured(yoke, 0.03), "joint": measured(joint, 0.03), "float": float * mm})
		var back floatResult
		c.run(rt, &back, "clipFloat", in{"hold": "outside-clip", "yoke": measured(yoke, 0), "joint": measured(joint, 0),
			"clip": measured(clip.Thickness/mm, 0), "other": measured(clip.Thickness/mm-0.1, 0)})
		if math.Abs(back.Float/mm-float-0.1) > 1e-9 || math.Abs(back.OffCentre/mm+0.05) > 1e-9 {
			rt.Errorf("asked for %v mm: %+v", float, back)
		}
		room := (yoke - joint) * mm
		for _, s := range clip.Sets {
			fits := 0.
			for _, x := range s.Thicknesses {
				if 2*x <= room+1e-9 {
					fits = max(fits, x)
				}
			}
			if close := fits > 0 && room-2*fits <= 0.1524*mm; close != (s.Choice != nil) || close && (*s.Choice != fits || math.Abs(*s.Float-(room-2*fits)) > 1e-12) {
				rt.Errorf("%s for %v mm of room: %v, want %v", s.ID, room/mm, s.Choice, fits)
			}
		}
	})
}

// ISO 286-2 as printed in a tolerance table (micrometres; the source of the chart, iso286):
// h6 and h7 below the size, H7 above, over 18 to 30, 30 to 50, 50 to 80 mm. A cap of 30.0 mm and
// one of 30.2 mm fall into different steps.
func TestToleranceClasses(t *testing.T) {
	c := mustCalculate(t)
	for _, x := range []struct{ size, h6, h7, bore float64 }{
		{18.5, 13, 21, 21}, {27, 13, 21, 21}, {30, 13, 21, 21},
		{30.2, 16, 25, 25}, {50, 16, 25, 25},
		{50.01, 19, 30, 30}, {80, 19, 30, 30},
	} {
		for class, lower := range map[string]float64{"h6": x.h6, "h7": x.h7} {
			var got struct {
				Cap, Bore, Clearance [2]float64
				Ground, Use          struct{ Basis string }
			}
			c.run(t, &got, "isoFit", in{"size": x.size * mm, "cap": class, "bore": "H7"})
			near(t, class+" lower, µm", (got.Cap[0]-x.size*mm)*1e6, -lower, 1e-6)
			near(t, class+" upper, µm", (got.Cap[1]-x.size*mm)*1e6, 0, 1e-6)
			near(t, "H7 upper, µm", (got.Bore[1]-x.size*mm)*1e6, x.bore, 1e-6)
			near(t, "H7 lower, µm", (got.Bore[0]-x.size*mm)*1e6, 0, 1e-6)
			near(t, "most clearance, µm", got.Clearance[1]*1e6, lower+x.bore, 1e-6)
			if got.Ground.Basis != "published" || got.Use.Basis != "common-practice" {
				t.Errorf("values are %s, their use %s", got.Ground.Basis, got.Use.Basis)
			}
		}
	}
	for _, size := range []float64{18, 17, 80.1} {
		if found := c.complaints(t, "isoFit", in{"size": size * mm, "cap": "h6", "bore": "H7"}); found[0].Input != "size" {
			t.Errorf("%v mm: %+v", size, found)
		}
	}
}
