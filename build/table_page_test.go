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
