package static

import (
	"bytes"
	"path"
	"strings"
	"testing"
)

// What is for charts in pieces is in the scripts of such a site, and in none of another: its
// pages must not get heavier for it.
func TestPiecesOnlyWherePieced(t *testing.T) {
	whole, problems := Bundle(FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	pieced, problems := BundlePieced(FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	// What such scripts say, where they keep it, what loads them, and the switch itself: sentences of
	// words/en/pieces.ts and large.ts, the name of the store, the globals of what only they load.
	signs := []string{"comes in pieces", "Nothing of it is written until", "You can go on measuring", "Looking through the rows", "still the one before",
		"capspan-chart", "CapspanPieces", "CapspanSearchRows.", "CapspanFacts.", inPieces}
	found := map[string]bool{}
	for _, f := range whole.Files {
		for _, sign := range signs {
			if path.Ext(f.Path) == ".js" && bytes.Contains(f.Bytes, []byte(sign)) {
				t.Errorf("%s of a chart held whole has %q", f.Path, sign)
			}
		}
	}
	for _, f := range pieced.Files {
		for _, sign := range signs {
			found[sign] = found[sign] || bytes.Contains(f.Bytes, []byte(sign))
		}
	}
	for _, sign := range signs {
		if found[sign] != (sign != inPieces) {
			t.Errorf("in the scripts of a chart in pieces %q is found: %v", sign, found[sign])
		}
	}
	if whole.Path(PiecesScript) != "" || pieced.Path(PiecesScript) == "" {
		t.Errorf("%s is %q and %q", PiecesScript, whole.Path(PiecesScript), pieced.Path(PiecesScript))
	}
	if core := string(pieced.Core()); !strings.Contains(core, PiecesName) {
		t.Error("the core of a chart in pieces cannot read them")
	}
}
