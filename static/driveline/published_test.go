package driveline_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// What is printed elsewhere, in testdata/checks.csv, with the document each row comes from.
//
//	verified    our functions give the printed figure within the tolerance
//	disagrees   the printed figure is wrong, or was recalled wrong: a negative test, our
//	            functions must not give it
//
// The rows "NEGATIVE TEST (wrong model)" are figures that come of a wrong model. That model
// is worked out here, to know why they are wrong; the functions must not give them either.
func TestPublished(t *testing.T) {
	c := mustCalculate(t)
	known := map[string]func(*testing.T, *calculations) float64{}
	for _, list := range []map[string]func(*testing.T, *calculations) float64{jointChecks, speedChecks, torqueChecks, fitChecks} {
		for inputs, f := range list {
			known[inputs] = f
		}
	}
	for _, row := range mustRows(t) {
		t.Run(row.topic+"/"+row.inputs, func(t *testing.T) {
			f := known[row.inputs]
			if strings.Contains(row.topic, "bolt_torque") {
				f = boltTorque(row.inputs)
			}
			if strings.Contains(row.inputs, " mm joint distance -> in") || strings.HasSuffix(row.inputs, " mm ring -> in") {
				f = millimetres(row.inputs)
			}
			if f == nil {
				t.Fatal("no function answers this row")
			}
			got := f(t, c)
			// A last digit of binary must not decide.
			agrees := math.Abs(got-row.expected) <= row.tolerance+1e-9*math.Abs(row.expected)
			if row.verified && !agrees {
				t.Errorf("got %.7g, printed %v ± %v (%s)", got, row.expected, row.tolerance, row.source)
			}
			if !row.verified && agrees {
				t.Errorf("got %.7g, which is the wrong figure %v of %s", got, row.expected, row.source)
			}
			delete(known, row.inputs)
		})
	}
	for inputs := range known {
		t.Errorf("testdata/checks.csv has no row %q", inputs)
	}
}

type checkRow struct {
	topic, inputs, source string
	expected, tolerance   float64
	verified              bool
}

func mustRows(t *testing.T) []checkRow {
	t.Helper()
	f, err := os.Open("testdata/checks.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	lines, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var rows []checkRow
	for _, l := range lines[1:] {
		expected, err1 := strconv.ParseFloat(l[2], 64)
		tolerance, err2 := strconv.ParseFloat(l[3], 64)
		if err1 != nil || err2 != nil || l[4] == "" || l[5] != "verified" && l[5] != "disagrees" {
			t.Fatalf("row %q cannot be used", l)
		}
		rows = append(rows, checkRow{topic: l[0], inputs: l[1], expected: expected, tolerance: tolerance, source: l[4], verified: l[5] == "verified"})
	}
	if len(rows) < 100 {
		t.Fatalf("%d rows are left", len(rows))
	}
	return rows
}

type check = map[string]func(*testing.T, *calculations) float64

func angleOf(fluctuation float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "angleForFluctuation", in{"fluctuation": fluctuation}, "angle")
	}
}

func degrees(f func(*testing.T, *calculations) float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 { return f(t, c) / degree }
}

func single(angle, speed, inertia float64, path string) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "singleJoint", in{"angle": angle * degree, "speed": speed * rpm, "inertia": inertia}, path)
	}
}

func accelerationAt(angle, speed, rotation float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "jointAt", in{"angle": angle * degree, "speed": speed * rpm, "rotation": rotation * degree}, "acceleration")
	}
}

// ofFluctuation is the fastest and slowest driven speed, rev/min, of the angle a fluctuation asks for.
func ofFluctuation(fluctuation, speed float64, path string) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return single(angleOf(fluctuation)(t, c)/degree, speed, 0, path)(t, c) / rpm
	}
}

// between is the joint angle of two side inclinations, degrees.
func between(driving, driven float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "compoundAngle", in{"driving": level(driving, 0), "driven": level(driven, 0)}, "angle") / degree
	}
}

// minutes is a difference of side inclinations with its sign, minutes of arc.
func minutes(driven, driving float64) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "compoundAngle", in{"driving": level(driving/60, 0), "driven": level(driven/60, 0)}, "side") / degree * 60
	}
}

// shop is a compound angle by the n-th of the forms in use, degrees.
func shop(n, side, plan string) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		s, _ := strconv.ParseFloat(side, 64)
		p, _ := strconv.ParseFloat(plan, 64)
		return c.number(t, "compoundAngle", in{"driving": level(0, 0), "driven": level(s, p)}, "shop."+n+".angle") / degree
	}
}

func small(angle, minutes, speed float64) func(*testing.T, *calculations) float64 {
	return single(angle+minutes/60, speed, 0, "accelerationSmall")
}

var jointChecks = check{
	"n1=1200 rpm; total fluctuation=100 rpm -> cos(beta)": func(t *testing.T, c *calculations) float64 {
		return math.Cos(angleOf(100.0/1200)(t, c))
	},
	"n1=1200 rpm; total fluctuation=100 rpm -> beta_deg":                                 degrees(angleOf(100.0 / 1200)),
	"n1=1200 rpm; total fluctuation=100 rpm -> n2_max_rpm":                               ofFluctuation(100.0/1200, 1200, "speedMost"),
	"n1=1200 rpm; total fluctuation=100 rpm -> n2_min_rpm":                               ofFluctuation(100.0/1200, 1200, "speedLeast"),
	"beta=20 deg -> theta of max acceleration (approx formula cos2t=2sin^2b/(2-sin^2b))": degrees(single(20, 1500, 0, "accelerationAtShop")),
	"beta=20 deg; n1=1500 rpm; theta=41.45 -> |alpha2| rad/s2": func(t *testing.T, c *calculations) float64 {
		return -accelerationAt(20, 1500, 41.45)(t, c)
	},
	"I=0.12 kg m2 x that alpha -> torque N.m":                   single(20, 1500, 0.12, "inertiaTorque"),
	"beta=18 deg; ratio=1 -> theta deg (cos^2 t = 1/(1+cos b))": degrees(single(18, 1000, 0, "equalAt")),
	"n2 within +-6% of 500 rpm (total 12%) -> beta_deg":         degrees(angleOf(0.12)),
	"beta=20; n=240 rpm; theta=45 -> alpha2 rad/s2":             accelerationAt(20, 240, 45),
	"n=240 rpm; total fluctuation 24 rpm -> beta_deg":           degrees(angleOf(0.1)),
	"side T=2.15 deg; plan S=2.50 deg -> C=sqrt(T^2+S^2)":       shop("0", "2.15", "2.50"),
	"same by atan sqrt(tan^2+tan^2)":                            shop("1", "2.15", "2.50"),
	"beta=3 deg -> U=tan(b)*sin(b) (limit printed 0.0027)":      single(3, 1000, 0, "fluctuation"),
	"rear axle yoke 12 / interaxle shaft 5 -> joint angle":      between(5, 12),
	"forward axle output 2.5 / shaft 5 -> joint angle":          between(2.5, 5),
	"forward axle input 2.5 / front shaft 4.5 -> joint angle":   between(4.5, 2.5),
	"transmission 1 / front shaft 4.5 -> joint angle":           between(1, 4.5),
	"transmission 3.0 - driveline 2.0 -> |joint angle|":         between(3, 2),
	"driveline 2.0 - axle 1.0 -> |joint angle|":                 between(2, 1),
	"2d00m - 2d51m -> minutes":                                  minutes(120, 171),
	"2d51m - 1d54m -> minutes":                                  minutes(171, 114),
	"side T=2.15 deg; plan S=2.50 deg -> C^2 (sum printed 10.873; exact 10.8725)": func(t *testing.T, c *calculations) float64 {
		return math.Pow(shop("0", "2.15", "2.50")(t, c), 2)
	},
	"n=3000 rpm; beta=5d50m -> w^2 b^2 rad/s2 (table basis prints 100; must be 1000)":  small(5, 50, 3000),
	"n=2500 rpm; beta=7d00m -> w^2 b^2 rad/s2 (table basis prints 100; must be 1000)":  small(7, 0, 2500),
	"n=2000 rpm; beta=8d40m -> w^2 b^2 rad/s2 (table basis prints 100; must be 1000)":  small(8, 40, 2000),
	"n=1500 rpm; beta=11d30m -> w^2 b^2 rad/s2 (table basis prints 100; must be 1000)": small(11, 30, 1500),
	"n=3000; beta=5d50m -> w^2 b^2 vs the PRINTED basis 100 rad/s2":                    small(5, 50, 3000),
	"parallel arrangement L=15 in -> L/5":                                              lengthAngle(15, "parallel"),
	"parallel arrangement L=30 in -> L/5":                                              lengthAngle(30, "parallel"),
	"intersecting arrangement L=30 in -> L/10":                                         lengthAngle(30, "intersecting"),
}

func lengthAngle(inches float64, path string) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return c.number(t, "angleAtLength", in{"length": inches * inch}, path) / degree
	}
}
