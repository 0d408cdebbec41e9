package driveline_test

import (
	"math"
	"strconv"
	"strings"
	"testing"
)

// whirl is the critical speed of a tube, rad/s. E and density of the printed example are put
// in by the square root they stand under, since the functions take a material by name.
func whirl(t *testing.T, c *calculations, material string, outside, inside, length, modulus, density float64) float64 {
	t.Helper()
	n := c.number(t, "criticalSpeed", in{"outside": outside, "wall": (outside - inside) / 2, "material": material, "length": length, "speed": 0}, "speed")
	own := map[string]float64{"steel": 206e9 / 7850, "aluminium": 70e9 / 2700}[material]
	return n * math.Sqrt(modulus/density/own)
}

const (
	slug = lbf / (12 * inch) // kg, of a foot
	// An inch slug is a mass that one pound-force gives one foot per second squared: the
	// example prints its density in slugs for a cubic inch.
	slugPerIn3 = slug / (inch * inch * inch)
	lbPerIn3   = 0.45359237 / (inch * inch * inch)
)

// lumped is the wrong model: the whole mass of the tube at mid-span.
func lumped(w float64) float64 { return w * math.Sqrt(48/math.Pow(math.Pi, 4)) }

var speedChecks = check{
	"E=206 GPa; rho=7850 -> constant (mm) n=k*sqrt(D^2+d^2)/L^2": func(t *testing.T, c *calculations) float64 {
		const outside, inside, length = 0.08, 0.076, 1.5
		w := whirl(t, c, "steel", outside, inside, length, 206e9, 7850)
		return w / rpm * length * length / math.Hypot(outside, inside) / mm
	},
	"convert 1.21e8 mm -> inch constant (printed 4.8e6)": func(t *testing.T, c *calculations) float64 {
		// The first of the constants others print is this one; what it gives, read in inches.
		const outside, wall, length = 0.08, 0.002, 1.5
		w := c.number(t, "criticalSpeed", in{"outside": outside, "wall": wall, "material": "steel", "length": length, "speed": 0}, "constants.0.speed")
		return w / rpm * length * length / math.Hypot(outside, outside-2*wall) / inch
	},
	"steel E=29e6 psi; 0.281 lb/in3 -> inch constant": func(t *testing.T, c *calculations) float64 {
		const outside, inside, length = 0.08, 0.076, 1.5
		w := whirl(t, c, "steel", outside, inside, length, 29e6*psi, 0.281*lbPerIn3)
		return w / rpm * length * length / math.Hypot(outside, inside) / inch
	},
	"L=48 in; D=3; d=2.75; E=29e6; rho=.00883 slug/in3 -> n rpm (uniform beam)": func(t *testing.T, c *calculations) float64 {
		return whirl(t, c, "steel", 3*inch, 2.75*inch, 48*inch, 29e6*psi, 0.00883*slugPerIn3) / rpm
	},
	"NEGATIVE TEST (wrong model): same tube, whole mass lumped at mid-span, factor sqrt(48/pi^4) -> rpm": func(t *testing.T, c *calculations) float64 {
		w := whirl(t, c, "steel", 3*inch, 2.75*inch, 48*inch, 29e6*psi, 0.00883*slugPerIn3)
		if math.Abs(w/rpm-5800) < 100 {
			t.Error("the function gives the figure of the wrong model")
		}
		return lumped(w) / rpm
	},
	"NEGATIVE TEST (wrong model): Al tube E=10e6; rho=.00305 slug/in3; whole mass lumped -> rpm": func(t *testing.T, c *calculations) float64 {
		w := whirl(t, c, "aluminium", 3*inch, 2.75*inch, 48*inch, 10e6*psi, 0.00305*slugPerIn3)
		if math.Abs(w/rpm-5795) < 100 {
			t.Error("the function gives the figure of the wrong model")
		}
		return lumped(w) / rpm
	},
	"simply supported steel tube 10x10x0.375 in; L=1080 in; E=29e6; 0.2836 lb/in3 -> f1 Hz (measured about 11 cycles in 10 s)": func(t *testing.T, c *calculations) float64 {
		// A square tube has I/A = (b² + a²)/12 where a round one has (D² + d²)/16: the round tube with a wall of
		// 1 mm that sways alike. Its length is scaled into the plausible range.
		squares := 4. / 3 * (10*10 + 9.25*9.25) * inch * inch
		const scale, wall = 4.0, 0.001
		d := wall + math.Sqrt(squares/2-wall*wall)
		w := whirl(t, c, "steel", d, d-2*wall, 1080/scale*inch, 29e6*psi, 0.2836*lbPerIn3)
		return w / (scale * scale) / (2 * math.Pi)
	},
}

func torque(power, speed float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "torqueFromPower", in{"power": power, "speed": speed}, "torque")
	}
}

func over(f func(*testing.T, *calculations) float64, unit float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 { return f(t, c) / unit }
}

const horsepower = 550 * 12 * inch * lbf

func shear(outside, wall, stress float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "torqueAtStress", in{"outside": outside, "wall": wall, "stress": stress}, "torque")
	}
}

func factor(angle, torque float64, bearing string) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "angleFactor", in{"torque": torque, "angle": angle * degree, "bearing": bearing}, "torque")
	}
}

func power(torque, speed float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "powerFromTorque", in{"torque": torque, "speed": speed * rpm}, "power") / 1000
	}
}

var torqueChecks = check{
	// 1000 hp at 1000 rev/min and the like: the constant is what is left.
	"lbf.in per (hp/rpm): 33000*12/(2 pi)":                     over(torque(1000*horsepower, 1000*rpm), lbfIn),
	"lbf.in per (hp/rpm) printed 63024":                        over(torque(1000*horsepower, 1000*rpm), lbfIn),
	"N.m per (hp/rpm); 1 hp=745.6999 W":                        torque(1000*horsepower, 1000*rpm),
	"N.m per (kW/rpm)":                                         torque(1e6, 1000*rpm),
	"N.m per (kW/rpm) printed as 7125 (it is the hp constant)": torque(1e6, 1000*rpm),
	"0.65 kW at 230 rpm -> N.m":                                torque(650, 230*rpm),
	"33 N.m at 2300 rpm -> kW (printed 8.3)":                   power(33, 2300),
	"60.75 N.m at 230 rpm -> kW (printed 1.44)":                power(60.75, 230),
	"18 deg k=1.43; T=23 N.m -> 33":                            factor(18, 23, "needle"),
	"30 deg k=2.25; T=27 N.m -> 61":                            factor(30, 27, "plain"),
	"solid d=100 mm; tau=50 MPa -> T N.m":                      shear(0.1, 0.05, 50e6),
	"solid r=100 mm; tau=75 MPa -> kN.m":                       over(shear(0.2, 0.1, 75e6), 1000),
	"tube 75/100 mm radii; tau=75 MPa -> kN.m":                 over(shear(0.2, 0.025, 75e6), 1000),
	"denominator constant 12 x 0.95": func(t *testing.T, c *calculations) float64 {
		// WST[lbf ft] = 0.71 W RR[in] / (k AR): k from what the function gives.
		wst := c.number(t, "wheelSlipTorque", in{"load": 4000 * lbf, "tyre": 14.5 * inch, "axle": 3.73, "friction": 0.71, "efficiency": 0.95}, "published") / lbfFt
		return 0.71 * 4000 * 14.5 / (wst * 3.73)
	},
	"solid d=100 mm; L=3 m; twist 2 deg; G=80 GPa -> T N.m": func(t *testing.T, c *calculations) float64 {
		return c.number(t, "torqueAtTwist", in{"outside": 0.1, "wall": 0.05, "length": 3, "shearModulus": 80e9, "twist": 2 * degree}, "torque")
	},
	"tube 75/100; tau at inner wall MPa": func(t *testing.T, c *calculations) float64 {
		t75 := shear(0.2, 0.025, 75e6)(t, c)
		return c.number(t, "torsion", in{"outside": 0.2, "wall": 0.025, "length": 1, "torque": t75, "shearModulus": 80e9, "yield": 400e6}, "stressInside") / 1e6
	},
	"A=3 deg; N=100 rpm; Tc=Ta -> Lh (rating basis 5000 h)": func(t *testing.T, c *calculations) float64 {
		return c.number(t, "lifeByRating", in{"rating": 800, "torque": 800, "angle": 3 * degree, "speed": 100 * rpm, "shock": 1}, "life") / hour
	},
	"M=1000 N.m; n=1450; beta=7; L=2000 h; K=1 -> required N.m printed 1339": func(t *testing.T, c *calculations) float64 {
		input := in{"life": 2000 * hour, "torque": 1000, "angle": 7 * degree, "speed": 1450 * rpm, "shock": 1}
		if rating := c.number(t, "ratingForLife", input, "rating"); math.Abs(rating-1339) <= 5 {
			t.Errorf("by rating: %v", rating)
		}
		return c.number(t, "ratingForLife", input, "capacity")
	},
}

// boltTorque reads a row such as "Grade 8 1/4-20 dry K=0.20 75% of 120 ksi proof -> lbf.in".
func boltTorque(inputs string) func(*testing.T, *calculations) float64 {
	w := strings.Fields(inputs)
	unit := map[string]float64{"lbf.in": lbfIn, "lbf.ft": lbfFt}[w[len(w)-1]]
	return func(t *testing.T, c *calculations) float64 {
		input := in{"thread": w[2], "grade": "SAE-" + w[1], "condition": w[3], "series": "", "published": []any{}}
		near(t, "K", c.number(t, "tightening", input, "factor"), must(t, strings.TrimPrefix(w[4], "K=")), 0)
		near(t, "proof, psi", c.number(t, "tightening", input, "proof")/psi, 1000*must(t, w[7]), 1e-6)
		return c.number(t, "tightening", input, "torque") / unit
	}
}

func must(t *testing.T, text string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}
