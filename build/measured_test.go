package build

import (
	"encoding/csv"
	"encoding/json"
	"slices"
	"strings"
	"testing"

	"capspan/tables"
)

// The measurements are invented: a workshop and its trolley gang measured the same cap and
// agree, and two spans, one of them of a worn joint, that do not. The pilot of a flange was
// measured once, and one cap is believed for its readings alone.
var measuredLines = []struct{ file, line, measured string }{
	{"joints-inch.yaml", "cap:    {is: 1.062, basis: common-practice, others: [{is: 27, unit: mm, basis: memory}]}", "cap:    {is: 1.062, basis: common-practice, measured: [{readings: [1.061 in, 1.0615 in], tool: micrometer, condition: used, on: 2026-11-20, by: red-shed}, {readings: [26.98 mm, 26.96 mm], tool: digital-caliper, condition: used, by: trolley-gang}]}"},
	{"joints-inch.yaml", "across: {is: 3.219, faces: over-caps, basis: common-practice, others: [{is: 81.7, unit: mm, basis: memory}, {is: 82, unit: mm, basis: memory}]}",
		"across: {is: 3.219, faces: over-caps, basis: common-practice, measured: [{readings: [3.2 in, 3.21 in], tool: digital-caliper, condition: worn}, {readings: [82.31 mm, 82.35 mm], tool: digital-caliper, condition: new}]}"},
	{"joints-inch.yaml", "cap:    {is: 0.938, basis: memory}", "cap:    {is: 0.938, basis: measured, measured: [{readings: [0.938 in], tool: digital-caliper, condition: new}]}"},
	{"flanges-male.yaml", "pilot:   {is: 30, basis: memory}", "pilot:   {is: 30, basis: memory, measured: [{readings: [31.98 mm, 32.00 mm], tool: digital-caliper, by: red-shed}]}"},
}

// measuredSource is the shipped site with those lines in it.
func measuredSource(t *testing.T) Sources {
	t.Helper()
	src := inEnglish()
	files := mapped(t, src.Tables)
	for _, l := range measuredLines {
		text := string(files[l.file].Data)
		if !strings.Contains(text, l.line) {
			t.Fatalf("%s has no line %q", l.file, l.line)
		}
		files[l.file].Data = []byte(strings.Replace(text, l.line, l.measured, 1))
	}
	src.Tables = files
	return src
}

// What was measured stands beside the printed value, never in its place: on the row's page,
// on the page of a table, and in the open data.
func TestMeasuredOnPagesAndInData(t *testing.T) {
	src := measuredSource(t)
	set, _ := tables.Load(src.Tables)
	out, problems := siteOf(t, src, Options{})
	checkFinds(t, src, problems)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files := contents(out)
	for page, wants := range map[string][]string{
		"joint/1310/index.html": {">1.062 in<", "measured 1.0619 ± 0.0014 in (≈ 26.972 ± 0.036 mm), agrees", "the weighted mean of 2 measurements (4 readings)",
			"The measurements agree among themselves: Birge ratio 0.39, where chance goes up to 1.96", "That agrees with 1.062 in as printed", "trolley-gang", "red-shed", "1.061 in, 1.0615 in",
			">3.219 in<", "the measurements do not agree with each other", "The uncertainty is enlarged by that ratio.", "speaks neither for 3.219 in as printed nor against it"},
		"joint/1000/index.html":         {">0.938 in<", "from one reading with a digital caliper"},
		"chart/flanges-male/index.html": {"30 mm", "does not agree", "from 2 readings with a digital caliper", "it is 1.99 mm"},
		"chart/joints-inch/index.html":  {"measured 1.0619 ± 0.0014 in"},
		"data/datapackage.json":         {`"cap_measured_uncertainty_mm"`},
	} {
		for _, want := range wants {
			if !strings.Contains(string(files[page]), want) {
				t.Errorf("%s lacks %q", page, want)
			}
		}
	}
	if strings.Contains(string(files["joint/1000/index.html"]), "0.938 in as printed") {
		t.Error("a value that rests on its readings is said to agree with them")
	}
	all, err := csv.NewReader(strings.NewReader(string(files["data/joints-inch.csv"]))).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	cell := map[string]string{}
	for i, name := range all[0] {
		cell[name] = all[slices.IndexFunc(all, func(r []string) bool { return r[0] == "1310" })][i]
	}
	for name, want := range map[string]string{"cap_mm": "26.9748", "cap_measured_mm": "26.972", "cap_measured_uncertainty_mm": "0.036", "cap_measured_birge": "0.39", "across_measured_birge": "7.18"} {
		if cell[name] != want {
			t.Errorf("CSV: %s = %q, want %q", name, cell[name], want)
		}
	}
	var doc struct {
		Rows []struct {
			Values map[string]struct {
				Is       string
				Measured []struct{ Tool string }
				Combined struct {
					MM, UncertaintyMM, Agrees string
					Consistent                bool
				}
			}
		}
	}
	if err := json.Unmarshal(files["data/joints-inch.json"], &doc); err != nil {
		t.Fatal(err)
	}
	row := doc.Rows[slices.IndexFunc(set.Find("1310").Table.Rows, func(r *tables.Row) bool { return r.ID == "1310" })]
	capOf, across := row.Values["cap"], row.Values["across"]
	if capOf.Is != "1.062" || len(capOf.Measured) != 2 || capOf.Combined.MM != "26.972" || !capOf.Combined.Consistent || capOf.Combined.Agrees != "yes" {
		t.Errorf("JSON: the cap is %+v", capOf)
	}
	if across.Combined.Consistent || across.Combined.Agrees != "" {
		t.Errorf("JSON: the across is %+v", across)
	}
}

// The chart is named by what it says: what the core reckons of it does not rename it.
func TestMeasuredDoesNotRenameTheChart(t *testing.T) {
	src := measuredSource(t)
	out, problems := siteOf(t, src, Options{})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	set, _ := tables.Load(src.Tables)
	var whole struct{ Version string }
	if err := json.Unmarshal(contents(out)["data/whole_chart.json"], &whole); err != nil {
		t.Fatal(err)
	}
	if name := set.Version().Name(); whole.Version != name || out.Chart.Name() != name {
		t.Errorf("the chart is %s, in the data %s and on the pages %s", name, whole.Version, out.Chart.Name())
	}
}
