package driveline_test

import (
	"strings"
	"testing"
)

// converted reads a figure in one unit and gives it in another, by units.ts.
func converted(x float64, from, to, si string) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		v, err := c.vm.RunString(calculationsName)
		if err != nil {
			t.Fatal(err)
		}
		if err := c.vm.Set("x", []any{x, from, to, si}); err != nil {
			t.Fatal(err)
		}
		if v, err = c.vm.RunString(calculationsName + `.fromSi(` + calculationsName + `.toSi(x[0], x[1], x[3]), x[2], x[3])`); err != nil {
			t.Fatal(err)
		}
		return v.ToFloat()
	}
}

// millimetres reads rows such as "1233 mm joint distance -> in".
func millimetres(inputs string) func(*testing.T, *calculations) float64 {
	return func(t *testing.T, c *calculations) float64 {
		return converted(must(t, strings.Fields(inputs)[0]), "mm", "in", "m")(t, c)
	}
}

func newtons(lbfFeet float64) func(*testing.T, *calculations) float64 {
	return converted(lbfFeet, "lbf·ft", "N·m", "N.m")
}

var fitChecks = check{
	"bearing-cap capscrews: 43 lbf.ft -> N.m":    newtons(43),
	"RPL / yoke strap: 125 lbf.ft -> N.m":        newtons(125),
	"propshaft bolts: 27 lbf.ft -> N.m":          newtons(27),
	"flange bolts: 46 lbf.ft -> N.m":             newtons(46),
	"SPL spring-tab 8 mm low: 25 lbf.ft -> N.m":  newtons(25),
	"SPL spring-tab 8 mm high: 30 lbf.ft -> N.m": newtons(30),
	".312-24 low: 26 lbf.ft -> N.m":              newtons(26),
	".312-24 high: 35 lbf.ft -> N.m":             newtons(35),
	".375-24 low: 38 lbf.ft -> N.m":              newtons(38),
	".375-24 high: 48 lbf.ft -> N.m":             newtons(48),
	".438-20 low: 60 lbf.ft -> N.m":              newtons(60),
	".438-20 high: 70 lbf.ft -> N.m":             newtons(70),
	"73.6 N.m -> kgf.cm":                         converted(73.6, "N·m", "kgf·cm", "N.m"),
	"73.6 N.m -> lbf.ft":                         converted(73.6, "N·m", "lbf·ft", "N.m"),
	"101.5 N.m -> kgf.cm":                        converted(101.5, "N·m", "kgf·cm", "N.m"),
	"101.5 N.m -> lbf.ft":                        converted(101.5, "N·m", "lbf·ft", "N.m"),
	"0.006 in -> mm":                             converted(0.006, "in", "mm", "m"),
	"runout 0.015 in -> mm":                      converted(0.015, "in", "mm", "m"),
	"runout 0.005 in -> mm":                      converted(0.005, "in", "mm", "m"),
	"2.00 mm -> in":                              converted(2.00, "mm", "in", "m"),
}
