package figure

import (
	"fmt"
	"math"
	"testing"
)

// The rows drawn here are the extremes of the chart and one of each kind. Figures are
// the chart's; 25.4 mm to the inch is exact.
func inch(in float64, text string) Dimension {
	return Dimension{MM: in * 25.4, Text: text + " in", Converted: fmt.Sprintf("%.2f mm", in*25.4)}
}

func millimetre(mm float64, text string) Dimension {
	return Dimension{MM: mm, Text: text + " mm", Converted: fmt.Sprintf("%.3f in", mm/25.4)}
}

var (
	end1310 = End{outsideClip, overCaps, inch(1.062, "1.062"), inch(3.219, "3.219")}
	end7260 = End{insideClip, grooveInner, inch(1.078, "1.078"), inch(2.125, "2.125")}
	end1550 = End{outsideClip, overCaps, inch(1.375, "1.375"), inch(4.969, "4.969")}
)

var joints = []JointDrawing{
	{"1310", []End{end1310}},
	{"7260-to-1310", []End{end7260, end1310}},
	{"1550-to-7260", []End{end1550, end7260}},
	{"axle-1188", []End{{insideClip, grooveInner, inch(1.188, "1.188"), inch(1.5, "1.500")}}},
	{"outer", []End{{insideClip, grooveOuter, inch(1.078, "1.078"), inch(2.125, "2.125")}}},
	{"1610", []End{{plate, underPlates, inch(1.875, "1.875"), inch(5.312, "5.312")}}},
	{"1355", []End{{strap, overCaps, inch(1.188, "1.188"), inch(3.625, "3.625")}}},
	{"15x38", []End{{"unknown", "unknown", millimetre(15, "15"), millimetre(38, "38")}}},
	{"15x39", []End{{staked, "unknown", millimetre(15, "15"), millimetre(39, "39")}}},
	{"29x49", []End{{"unknown", "unknown", millimetre(29, "29"), millimetre(49, "49")}}},
	{"83x231.4", []End{{outsideClip, overCaps, millimetre(83, "83"), millimetre(231.4, "231.4")}}},
	{"injected", []End{{injected, overCaps, millimetre(27, "27"), millimetre(82, "82")}}},
	{"2c", []End{{wing, wingOuter, Dimension{}, millimetre(79.35, "79.35")}}},
	{"2c-holes", []End{{wing, holeCentres, Dimension{}, millimetre(60, "60")}}},
	{"nothing", []End{{Hold: "unknown", Faces: "unknown"}}},
	{"no-end", nil},
}

// A drawing is to scale when the ratio of what is drawn is the ratio of the figures.
// It is read back three ways: the dimension lines, the outlines of the caps, and the
// red marks on the faces.
func TestJointIsToScale(t *testing.T) {
	for _, d := range joints {
		if len(d.Ends) == 0 || !d.Ends[0].Cap.known() {
			continue
		}
		t.Run(d.Name, func(t *testing.T) {
			drawn := mustRead(t, string(english.Joint("p", d)))
			scale := 0.0 // one scale for both ends
			for i, end := range d.Ends {
				diameter := drawn.parts("diameter", i)[0].box().longest()
				caps := drawn.parts("cap", i)
				outline := caps[0].box()
				along, thick := outline.width(), outline.height()
				if i == 1 {
					along, thick = thick, along
				}
				near(t, fmt.Sprintf("end %d: diameter dimensioned to cap drawn", i), diameter/thick, 1)
				dims := drawn.parts("across", i)
				if len(dims) != 1 {
					t.Fatalf("end %d: %d across dimensions, want 1", i, len(dims))
				}
				across := dims[0].box().longest()
				near(t, fmt.Sprintf("end %d: across drawn to cap drawn", i), across/thick, end.Across.MM/end.Cap.MM)
				faces := drawn.parts("faces", i)
				if len(faces) != 2 {
					t.Fatalf("end %d: %d faces marked, want 2", i, len(faces))
				}
				apart := faces[0].box().centre().distance(faces[1].box().centre())
				near(t, fmt.Sprintf("end %d: marked faces to across drawn", i), apart/across, 1)
				if along <= 0 {
					t.Errorf("end %d: a cap has no length", i)
				}
				if scale == 0 {
					scale = across / end.Across.MM
				}
				near(t, fmt.Sprintf("end %d: scale", i), across/end.Across.MM, scale)
			}
		})
	}
}

// Between over-caps faces lie the ends of the caps; the groove faces lie inside them.
func TestFacesLieOnTheCaps(t *testing.T) {
	drawn := mustRead(t, string(english.Joint("p", JointDrawing{"x", []End{end7260, end1310}})))
	over := drawn.parts("cap", 1)
	both := over[0].box().join(over[1].box())
	near(t, "over the caps: caps' ends to across", both.height()/drawn.parts("across", 1)[0].box().longest(), 1)
	inside := drawn.parts("cap", 0)
	both = inside[0].box().join(inside[1].box())
	got := drawn.parts("across", 0)[0].box()
	if !(both.left < got.left && got.right < both.right) {
		t.Errorf("groove faces from %v to %v, want inside the caps from %v to %v", got.left, got.right, both.left, both.right)
	}
	if gap := inside[1].box().left - inside[0].box().right; gap >= got.width() {
		t.Errorf("the open ends are %v apart, want nearer than the grooves at %v", gap, got.width())
	}
}

// No figure may stand on the joint or run off the sheet, and no two may touch.
func TestLabelsKeepClear(t *testing.T) {
	for _, d := range joints {
		t.Run(d.Name, func(t *testing.T) {
			keepsClear(t, d.Name, mustRead(t, string(english.Joint("p", d))))
		})
	}
}

func keepsClear(t *testing.T, name string, drawn drawing) {
	t.Helper()
	for _, a := range drawn.texts {
		for _, part := range drawn.solid() {
			if a.touches(part) {
				t.Errorf("%s: %q at %v stands on a part at %v", name, a.words, a.box, part)
			}
		}
	}
	keepsApart(t, name, drawn)
}

// keepsApart says whether the words keep to the sheet and off each other.
func keepsApart(t *testing.T, name string, drawn drawing) {
	t.Helper()
	page := box{0, 0, drawn.width, drawn.height}
	for i, a := range drawn.texts {
		if !page.holds(a.box) {
			t.Errorf("%s: %q at %v runs off the sheet of %v x %v", name, a.words, a.box, drawn.width, drawn.height)
		}
		for _, b := range drawn.texts[i+1:] {
			if a.touches(b.box) {
				t.Errorf("%s: %q and %q touch", name, a.words, b.words)
			}
		}
	}
}

// A drawing that cannot be to scale says so; one that is to scale does not.
func TestNotToScaleIsSaid(t *testing.T) {
	for _, d := range joints {
		want := len(d.Ends) == 0 || !d.Ends[0].Cap.known()
		drawn := mustRead(t, string(english.Joint("p", d)))
		if got := drawn.says("not to scale"); got != want {
			t.Errorf("%s: says not to scale: got %v, want %v", d.Name, got, want)
		}
	}
}

func near(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.005*want {
		t.Errorf("%s: got %.4f, want %.4f within 0.5 %%", what, got, want)
	}
}
