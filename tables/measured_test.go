package tables

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// measuredJoint is invented: nobody measured such a joint.
const measuredJoint = jointHead + `
  - id: a
    hold:   {is: outside-clip, basis: common-practice}
    cap:    {is: 30, basis: common-practice, measured: [{readings: [30.02 mm, 1 23/128 in], tool: micrometer, condition: new, on: 2026-11-20, by: red-shed}]}
    across: {is: 92.0, faces: over-caps, basis: common-practice, measured: [{readings: [91.9 mm], tool: tape}, {readings: [3.62 in], tool: steel-rule, faces: over-caps}]}
`

// Readings keep their digits and units, on every way out.
func TestMeasured(t *testing.T) {
	set := mustLoad(t, map[string]string{"x.yaml": measuredJoint})
	row := mustFind(t, set, "a")
	m := row.Values["cap"].Measured
	if got, want := m.Words(), "30.02 mm, 1 23/128 in by micrometer, new, 2026-11-20, from red-shed"; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
	if row.Ends[0].Cap.Measured != m {
		t.Error("the end does not share the row's measurements")
	}
	hash := set.Version().Hash
	m.Combined = &Combined{MM: "30.013", Uncertainty: "0.022", Count: 1, Readings: 2, Consistent: true, Agrees: "yes"}
	if got := set.Version().Hash; got != hash {
		t.Errorf("what was reckoned changes the chart's hash from %s to %s", hash, got)
	}
	got := records(t, set.Tables[0])[0]
	for name, want := range map[string]string{"cap_measured": m.Words(), "cap_measured_mm": "30.013", "cap_measured_uncertainty_mm": "0.022",
		"across_measured": "91.9 mm by tape; 3.62 in by steel-rule, over-caps", "across_measured_mm": "", "cap": "30"} {
		if got[name] != want {
			t.Errorf("CSV: %s = %q, want %q", name, got[name], want)
		}
	}
	var doc struct {
		Rows []struct {
			Values map[string]struct{ Measured, Combined any }
		}
	}
	if err := json.Unmarshal(jsonOf(t, set.Tables[0]), &doc); err != nil {
		t.Fatal(err)
	}
	value := doc.Rows[0].Values["cap"]
	if diff := cmp.Diff([]any{map[string]any{"readings": []any{map[string]any{"is": "30.02", "unit": "mm", "mm": "30.02", "in": "1.1819"},
		map[string]any{"is": "1 23/128", "unit": "in", "mm": "29.9640625", "in": "1.1796875"}}, "tool": "micrometer", "condition": "new", "on": "2026-11-20", "by": "red-shed"}}, value.Measured); diff != "" {
		t.Errorf("JSON (-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(map[string]any{"mm": "30.013", "uncertaintyMm": "0.022", "measurements": 1., "readings": 2., "consistent": true, "agrees": "yes"}, value.Combined); diff != "" {
		t.Errorf("JSON (-want +got):\n%s", diff)
	}
}

// A table nobody measured has no columns for it; one more measurement is another chart.
func TestMeasuredIsMeaning(t *testing.T) {
	with := mustLoad(t, map[string]string{"x.yaml": measuredJoint})
	less := mustLoad(t, map[string]string{"x.yaml": strings.Replace(measuredJoint, ", {readings: [3.62 in], tool: steel-rule, faces: over-caps}", "", 1)})
	if with.Version().Hash == less.Version().Hash {
		t.Error("a measurement more does not change the chart's hash")
	}
	for _, table := range shippedSet(t).Tables {
		for _, field := range alone.csvFields(table) {
			if strings.Contains(field.Name, "_measured") {
				t.Errorf("%s has %s, and nobody measured it", table.ID, field.Name)
			}
		}
	}
}

// Only lengths are measured, and only the cap and across of a joint know a condition.
func TestMeasuredRefusals(t *testing.T) {
	for _, c := range []struct{ spoil, by, want string }{
		{"hold:   {is: outside-clip, basis: common-practice", "hold:   {is: outside-clip, basis: common-practice, measured: []", `only lengths are measured`},
		{"tool: micrometer", "tool: micrometer, faces: over-caps", "a measurement of this column has only: readings, tool, condition, on, by"},
		{"30.02 mm", "300.2 mm", "300.2 mm is outside"},
		{"30.02 mm", "1e999 mm", `"1e999" is not a number`},
		{"30.02 mm", "30,02 mm", `"30" does not end in a unit`},
		{"2026-11-20", "2026-02-30", "bad-date"},
		{"red-shed", `"<script>"`, "bad-id"},
		{"red-shed", `"red\u202eshed"`, "control-character"},
		{"[91.9 mm]", "[]", "empty-value"},
		{"readings: [91.9 mm], ", "", `"readings" is missing`},
	} {
		text := strings.Replace(measuredJoint, c.spoil, c.by, 1)
		_, list := loadFiles(map[string]string{"x.yaml": text})
		var all strings.Builder
		if err := list.Print(&all); err != nil {
			t.Fatal(err)
		}
		if !list.Blocked() || !strings.Contains(all.String(), c.want) {
			t.Errorf("%s instead of %s: %s\nwant %s", c.by, c.spoil, &all, c.want)
		}
	}
}

// The formatter puts a measurement in order and keeps its digits.
func TestFormatMeasured(t *testing.T) {
	untidy := strings.Replace(measuredJoint, "{readings: [91.9 mm], tool: tape}", "{ on: 2026-11-20,tool: tape,  readings: [ 91.90 mm ] }", 1)
	got, list := Format("x.yaml", []byte(untidy))
	if len(list) > 0 || !strings.Contains(string(got), "measured: [{readings: [91.90 mm], tool: tape, on: 2026-11-20}, {readings") {
		t.Errorf("%v\n%s", list, got)
	}
}
