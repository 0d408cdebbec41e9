package driveline_test

import (
	"encoding/json"
	"io/fs"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"go.yaml.in/yaml/v4"

	"capspan/static"
)

type source struct{ Title, Publisher, Where, Trust string }

func mustSources(t *testing.T) map[string]source {
	t.Helper()
	v, err := mustCalculate(t).vm.RunString(`JSON.stringify(` + calculationsName + `.sources)`)
	if err != nil {
		t.Fatal(err)
	}
	var sources map[string]source
	mustDecode(t, v.String(), &sources)
	return sources
}

var bases = []string{"published", "common-practice", "memory", "derived", "judgement"}

// walkGrounds calls f for whatever says what it rests on: constants, limits, formulas.
func walkGrounds(x any, at string, f func(at string, ground map[string]any)) {
	switch x := x.(type) {
	case map[string]any:
		if _, ok := x["basis"]; ok {
			f(at, x)
		}
		for k, v := range x {
			walkGrounds(v, at+"."+k, f)
		}
	case []any:
		for _, v := range x {
			walkGrounds(v, at+"[]", f)
		}
	}
}

// Whatever is given, and whatever a result shows, says what it rests on: published with a
// source of the list, anything else with none. Every source of the list is cited by something,
// has a title and says who published it.
func TestEverythingSaysWhatItRestsOn(t *testing.T) {
	sources := mustSources(t)
	cited := map[string]bool{}
	look := func(at string, g map[string]any) {
		basis, _ := g["basis"].(string)
		key, ok := g["source"].(string)
		if !slices.Contains(bases, basis) || !ok {
			t.Errorf("%s: basis %v, source %v", at, g["basis"], g["source"])
		}
		if _, known := sources[key]; (basis == "published") != (key != "") || key != "" && !known {
			t.Errorf("%s is %s by %q", at, basis, key)
		}
		cited[key] = true
		for _, words := range []string{"says", "text", "valid"} {
			if w, ok := g[words]; ok && w == "" {
				t.Errorf("%s has an empty %q", at, words)
			}
		}
	}
	files, err := fs.Glob(static.FS, "driveline/given-*.ts")
	if err != nil || len(files) < 9 {
		t.Fatalf("%d files: %v", len(files), err)
	}
	for _, file := range files {
		v, err := mustRun(t, file).vm.RunString(`JSON.stringify(` + calculationsName + `)`)
		if err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		var all any
		mustDecode(t, v.String(), &all)
		walkGrounds(all, path.Base(file), look)
	}
	c := mustCalculate(t)
	for name, input := range every {
		var all any
		mustDecode(t, c.ask(t, name, input), &all)
		walkGrounds(all, name, look)
		if formulas, _ := all.(map[string]any)["formulas"].([]any); len(formulas) == 0 && !slices.Contains([]string{"direction", "angleAtSpeed", "angleAtLength"}, name) {
			t.Errorf("%s gives no formula", name)
		}
	}
	for key, s := range sources {
		if s.Title == "" || s.Publisher == "" {
			t.Errorf("source %s: %+v", key, s)
		}
		if !cited[key] {
			t.Errorf("nothing cites %s", key)
		}
	}
}

// A constant is a number beside its basis: outside the ranges, whose basis is judgement as a
// whole, no given file exports a bare number.
func TestNoBareConstants(t *testing.T) {
	files, err := fs.Glob(static.FS, "driveline/given-*.ts")
	if err != nil {
		t.Fatal(err)
	}
	bare := regexp.MustCompile(`(?m)^export const (\w+) = [\d.(-]`)
	for _, file := range files {
		text, err := fs.ReadFile(static.FS, file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range bare.FindAllStringSubmatch(string(text), -1) {
			t.Errorf("%s: %s has no basis", file, m[1])
		}
	}
}

// Limits have ids of their own, name the same kind of number the same way, and each of one
// number is in one unit.
func TestLimitsCanBeToldApart(t *testing.T) {
	c := mustCalculate(t)
	type limit struct {
		ID, Of, Bound, Unit, Says string
		Value                     *float64
	}
	meaning := map[string]limit{}
	units := map[string]string{}
	for name, input := range every {
		var outcome struct{ Result map[string]json.RawMessage }
		mustDecode(t, c.ask(t, name, input), &outcome)
		for _, field := range []string{"limits", "allowed"} {
			var list []limit
			if outcome.Result[field] != nil {
				mustDecode(t, string(outcome.Result[field]), &list)
			}
			here := map[string]bool{}
			for _, l := range list {
				if here[l.ID] {
					t.Errorf("%s gives %s twice", name, l.ID)
				}
				here[l.ID] = true
				if l.Of == "" || l.Says == "" || l.Value == nil || l.Bound != "least" && l.Bound != "most" {
					t.Errorf("%s: half a limit %+v", name, l)
				}
				if old, ok := meaning[l.ID]; ok && (old.Says != l.Says || *old.Value != *l.Value) {
					t.Errorf("%s is two limits", l.ID)
				}
				meaning[l.ID] = l
				if u, ok := units[l.Of]; ok && u != l.Unit {
					t.Errorf("limits of %s are in %q and %q", l.Of, u, l.Unit)
				}
				units[l.Of] = l.Unit
			}
		}
	}
	if len(meaning) < 40 {
		t.Errorf("%d limits are left", len(meaning))
	}
}

// A source that the chart has too is called the same there.
func TestSourcesAreThoseOfTheChart(t *testing.T) {
	text, err := os.ReadFile("../../tables/sources.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var registry struct {
		Sources []struct{ ID, Title, Publisher string }
	}
	if err := yaml.Unmarshal(text, &registry); err != nil {
		t.Fatal(err)
	}
	sources, shared := mustSources(t), 0
	for _, s := range registry.Sources {
		if ours, ok := sources[s.ID]; ok {
			shared++
			if ours.Title != s.Title || ours.Publisher != s.Publisher {
				t.Errorf("%s is %q of %q, in the chart %q of %q", s.ID, ours.Title, ours.Publisher, s.Title, s.Publisher)
			}
		}
	}
	if shared < 10 {
		t.Errorf("%d sources are shared", shared)
	}
}

// The torque factors of machine joints are those of the chart's table.
func TestMachineJointsAreThoseOfTheChart(t *testing.T) {
	text, err := os.ReadFile("../../tables/machine-joint-factors.yaml")
	if err != nil {
		t.Fatal(err)
	}
	type cell struct {
		Is     string
		Source []string
	}
	var table struct {
		Rows []struct {
			Bearing, Angle, Factor cell
		}
	}
	if err := yaml.Unmarshal(text, &table); err != nil {
		t.Fatal(err)
	}
	c := mustCalculate(t)
	for _, row := range table.Rows {
		bearing := row.Bearing.Is
		if bearing == "unknown" {
			bearing = "needle" // the point at 10 degrees is said of both
		}
		angle := must(t, row.Angle.Is)
		got := c.number(t, "angleFactor", in{"torque": 1., "angle": angle * degree, "bearing": bearing}, "factor")
		near(t, strings.Join(append(row.Factor.Source, bearing), " "), got, must(t, row.Factor.Is), 0)
		// A degree more is the next point's, or nothing.
		var beyond struct{ Factor *float64 }
		c.run(t, &beyond, "angleFactor", in{"torque": 1., "angle": (angle + 1) * degree, "bearing": bearing})
		if beyond.Factor != nil && *beyond.Factor <= got {
			t.Errorf("past %v degrees the factor is %v", angle, *beyond.Factor)
		}
	}
}
