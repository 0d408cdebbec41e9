package build

import (
	"strings"
	"testing"
)

// Tables of other things than joints are data only: their pages say ranges in both units,
// carry their cautions, and their rows are found.
func TestOtherTables(t *testing.T) {
	files := contents(mustSite(t, Options{}))
	page := string(files["chart/fasteners/index.html"])
	for _, want := range []string{
		`<aside class="caution">`, "A maker&#39;s own figure always overrides this table.",
		"26-35 lbf.ft<span class=\"converted\">≈ 35-47 N.m</span>", // dana-lube prints 35-48
		"elsewhere 35-48 N.m", "62 N.m<span class=\"converted\">≈ 45.7 lbf.ft</span>",
		`<tr id="row-cross-tooth-bolt-120" data-words="`,
	} {
		if !strings.Contains(page, want) {
			t.Errorf("the page of the fasteners lacks %q", want)
		}
	}
	if steering := string(files["chart/steering-splines/index.html"]); !strings.Contains(steering, "0.742-0.747 in<span class=\"converted\">≈ 18.85-18.97 mm</span>") {
		t.Error("the measured crests of 3/4-48 are not shown as a range")
	}
	// Such a row has no page of its own: its line names what it rests on, and its note.
	for id, want := range map[string]string{
		"fasteners/plate-bolt-1610":        `published</span><span class="note">Lubrication specifications, universal joints</span><span class="note">Lock straps`,
		"fasteners/strap-bolt-1710":        `elsewhere 130-135 lbf.ft</span><span class="note">122SD maintenance manual group 41 table 1</span>`,
		"flanges-male/flange-90":           `published</span><span class="note">Commercial drive shafts: companion flanges; flange boltings</span>`,
		"steering-splines/steering-3-4-48": `measured</span><span class="note">SR-107 steering spline count (owner&#39;s measurement)</span>`,
	} {
		table, row, _ := strings.Cut(id, "/")
		_, line, _ := strings.Cut(string(files["chart/"+table+"/index.html"]), `<tr id="row-`+row+`"`)
		if line, _, _ = strings.Cut(line, "</tr>"); !strings.Contains(line, want) {
			t.Errorf("%s lacks %q: %s", id, want, line)
		}
	}
	// The filter looks in the words of a line: each figure and text of it is among them.
	_, line, _ := strings.Cut(page, `<tr id="row-plate-bolt-1610" data-words="`)
	line, _, _ = strings.Cut(line, `"`)
	for _, want := range []string{"26-35 lbf.ft", "5/16-24", "1610", "bearing plate bolt", "published"} {
		if !strings.Contains(line, want) {
			t.Errorf("the filter cannot find %q in %q", want, line)
		}
	}
	if joints := string(files["chart/joints-inch/index.html"]); strings.Contains(joints, `<aside class="caution">`) {
		t.Error("a table without cautions shows some")
	}
}
