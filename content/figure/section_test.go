package figure

import (
	"math"
	"strings"
	"testing"
)

// The parts are called what SAE J901 and the trade call them.
func TestSectionNamesItsParts(t *testing.T) {
	common := []string{"trunnion of the cross", "needle rollers", "bearing cap", "seal"}
	tests := []struct {
		hold  string
		words []string
	}{
		{outsideClip, []string{"yoke ear", "snap ring in groove"}},
		{insideClip, []string{"yoke ear", "C-shaped clip in the cap's groove"}},
		{plate, []string{"yoke ear", "bearing plate", "bolt"}},
		{strap, []string{"yoke ear with half bore", "strap or U-bolt", "locating tab"}},
		{wing, []string{"wing", "bolt hole"}},
		{injected, []string{"yoke ear", "plastic, by the small hole"}},
		{staked, []string{"yoke ear", "peened metal"}},
		{"unknown", []string{"yoke ear"}},
	}
	for _, test := range tests {
		drawn := mustRead(t, string(english.Section("p", test.hold)))
		for _, words := range append(test.words, common...) {
			if !drawn.says(words) || !strings.Contains(drawn.desc, words) {
				t.Errorf("%s: %q is not both on the drawing and in its description", test.hold, words)
			}
		}
		leadersAreClear(t, test.hold, drawn)
	}
}

// leadersAreClear says whether every leader runs from its words to its dot without
// crossing other words.
func leadersAreClear(t *testing.T, name string, d drawing) {
	t.Helper()
	keepsApart(t, name, d)
	leaders, dots := d.named("leader"), d.named("leader-end")
	if len(leaders) == 0 || len(leaders) != len(dots) {
		t.Fatalf("%s: %d leaders and %d dots", name, len(leaders), len(dots))
	}
	for i, e := range leaders {
		line := e.strokes()[0]
		if dot := (point{number(t, dots[i].attr["cx"]), number(t, dots[i].attr["cy"])}); line[1] != dot {
			t.Errorf("%s: a leader ends at %v, its dot is at %v", name, line[1], dot)
		}
		for _, l := range d.texts {
			for step := range 101 {
				share := float64(step) / 100
				at := point{line[0].x + share*(line[1].x-line[0].x), line[0].y + share*(line[1].y-line[0].y)}
				if l.holds(box{at.x, at.y, at.x, at.y}) {
					t.Errorf("%s: a leader runs through %q", name, l.words)
					break
				}
			}
		}
	}
}

// Hatching stands at 45 degrees (ISO 128-3), evenly spaced, and lies inside the part.
func TestHatching(t *testing.T) {
	for _, hold := range allHolds {
		drawn := mustRead(t, string(english.Section("p", hold)))
		cuts := append(append(drawn.named("ear"), drawn.named("cap")...), drawn.named("plate")...)
		var inside box
		for i, cut := range cuts {
			if i == 0 {
				inside = cut.box()
			}
			inside = inside.join(cut.box())
		}
		lean := map[float64]bool{}
		for _, e := range drawn.named("hatching") {
			for _, l := range e.strokes() {
				dx, dy := l[1].x-l[0].x, l[1].y-l[0].y
				if dx > 1 && math.Abs(math.Abs(dy)-dx) > 0.03 {
					t.Errorf("%s: a line from %v to %v is not at 45 degrees", hold, l[0], l[1])
				}
				way := -math.Copysign(1, dy) // up to the right is rising
				if dx > 1 {
					lean[way] = true
					if off := math.Remainder(l[0].x+way*l[0].y, hatchGap); math.Abs(off) > 0.02 {
						t.Errorf("%s: a line at %v lies %v off the grid", hold, l[0], off)
					}
				}
				if b := e.box(); !inside.holds(b) {
					t.Errorf("%s: hatching to %v leaves the parts, %v", hold, b, inside)
				}
			}
		}
		if neighbours := hold != wing; neighbours && len(lean) != 2 {
			t.Errorf("%s: neighbouring parts lean %v, want two ways", hold, lean)
		}
	}
}
