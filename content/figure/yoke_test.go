package figure

import (
	"strings"
	"testing"
)

// Every letter on a drawing is explained in words below it and in its description, and
// its dimension line has an arrowhead at both ends.
func TestLetteredFigures(t *testing.T) {
	tests := []struct {
		name, svg string
		figures   []named
	}{
		{"full-round", string(english.Yoke("p", "full-round")), yokeFigures("full-round")},
		{"half-round", string(english.Yoke("p", "half-round")), yokeFigures("half-round")},
		{"inside-clip", string(english.Yoke("p", "inside-clip")), yokeFigures("inside-clip")},
		{"plate", string(english.Yoke("p", "plate")), yokeFigures("plate")},
		{"wing", string(english.WingCap("p")), wingFigures},
	}
	for _, test := range tests {
		drawn := mustRead(t, test.svg)
		keepsApart(t, test.name, drawn)
		tips := map[point]bool{}
		for _, e := range drawn.elements {
			if e.attr["class"] == "mt" && e.name == "path" {
				tips[e.strokes()[0][0]] = true
			}
		}
		for _, f := range test.figures {
			words := language(english).say(f.key)
			if !drawn.says(f.letter+" "+words) || !strings.Contains(drawn.desc, f.letter+": "+words) {
				t.Errorf("%s: %s is not explained", test.name, f.letter)
			}
			lines := drawn.named(f.letter)
			if len(lines) != 1 {
				t.Errorf("%s: %d dimensions %s, want 1", test.name, len(lines), f.letter)
				continue
			}
			for _, end := range lines[0].strokes()[0] {
				if !tips[end] {
					t.Errorf("%s: no arrowhead at %v, an end of %s", test.name, end, f.letter)
				}
			}
			alone := false
			for _, l := range drawn.texts {
				alone = alone || l.words == f.letter
			}
			if !alone {
				t.Errorf("%s: the line %s has no letter", test.name, f.letter)
			}
		}
		for _, l := range drawn.texts {
			if strings.ContainsAny(l.words, "0123456789") {
				t.Errorf("%s: %q is a figure no source gives", test.name, l.words)
			}
		}
	}
}

// The lengths lie where they are said to: inside the ears less than groove to groove,
// and that less than over the ears; the bore is as wide as its dimension.
func TestYokeLengths(t *testing.T) {
	full := mustRead(t, string(english.Yoke("p", "full-round")))
	width := func(letter string) float64 { return full.named(letter)[0].box().width() }
	if !(width("D") < width("C") && width("C") < width("B")) {
		t.Errorf("D %v, C %v, B %v: want them growing", width("D"), width("C"), width("B"))
	}
	exact(t, "bore", 2*number(t, full.named("bore")[0].attr["r"]), width("A"))

	half := mustRead(t, string(english.Yoke("p", "half-round")))
	bore := half.named("bore")[0].box()
	across := half.named("A")[0].box()
	if !(bore.left < across.left && across.right < bore.right) {
		t.Errorf("the half bore from %v to %v does not lie in its ear, %v to %v", across.left, across.right, bore.left, bore.right)
	}
	wings := mustRead(t, string(english.WingCap("p")))
	outer := wings.named("wing")
	both := outer[0].box().join(outer[1].box())
	exact(t, "outer radius across", wings.named("D")[0].box().width(), both.width())
	holes := wings.parts("hole", 0)
	exact(t, "hole centres of one wing", wings.named("A")[0].box().height(), number(t, holes[1].attr["cy"])-number(t, holes[0].attr["cy"]))
	exact(t, "hole centres across", wings.named("C")[0].box().width(), number(t, holes[2].attr["cx"])-number(t, holes[0].attr["cx"]))
	exact(t, "key width", wings.named("B")[0].box().height(), wings.parts("key", 0)[0].box().height())
}
