package figure

import (
	"math"
	"strings"
	"testing"
)

// On a life-size drawing one unit is one millimetre, and the sheet says so, so every
// length read back is the chart's own. The dimension line of a quarter runs from a
// little past the centre to one face.
func TestLifeSizeIsTrue(t *testing.T) {
	for _, d := range joints {
		svg := string(english.LifeSize("p", d))
		if svg == "" {
			continue
		}
		t.Run(d.Name, func(t *testing.T) {
			drawn := mustRead(t, svg)
			isMillimetres(t, drawn)
			quarter := len(drawn.named("symmetry")) > 0
			if want := d.Ends[0].Across.MM > 120; quarter != want {
				t.Errorf("drawn as a quarter: got %v, want %v", quarter, want)
			}
			for i, end := range d.Ends {
				faces := drawn.parts("faces", i)
				across := faces[0].box().centre().distance(faces[1].box().centre())
				exact(t, "faces apart", across, end.Across.MM)
				if end.Cap.known() {
					outline := drawn.parts("cap", i)[0].box()
					thick := outline.height()
					if i == 1 {
						thick = outline.width()
					}
					exact(t, "cap diameter", thick, end.Cap.MM)
				}
			}
			line := drawn.parts("across", 0)[0].box()
			if quarter {
				exact(t, "half of the across", line.width()-lifeBeyond/2, d.Ends[0].Across.MM/2)
			} else {
				exact(t, "across dimensioned", line.width(), d.Ends[0].Across.MM)
			}
		})
	}
}

// A life-size drawing keeps to the size it promises. That fits A4 (ISO 216: 210 x 297 mm)
// and Letter (ANSI/ASME Y14.1: 8.5 x 11 in) with margins of 10 mm and a quarter of the
// sheet left for a check ruler and a title block. Its words touch nothing.
func TestLifeSizeFitsPaper(t *testing.T) {
	const wide, high = 160.0, 185.0
	if wide > min(210, 8.5*MMPerInch)-20 || high > (min(297, 11*MMPerInch)-20)*3/4 {
		t.Error("the promised size does not fit the paper")
	}
	for _, d := range joints {
		svg := string(english.LifeSize("p", d))
		if svg == "" {
			continue
		}
		drawn := mustRead(t, svg)
		if drawn.width > wide || drawn.height > high {
			t.Errorf("%s: %v x %v mm, want at most %v x %v", d.Name, drawn.width, drawn.height, wide, high)
		}
		keepsClear(t, d.Name, drawn)
	}
}

// Without a figure nothing true can be drawn.
func TestLifeSizeOfNothing(t *testing.T) {
	for _, d := range []JointDrawing{{Name: "no end"}, {Name: "no figure", Ends: []End{{Hold: plate}}}} {
		if got := english.LifeSize("p", d); got != "" {
			t.Errorf("%s: got %s, want nothing", d.Name, got)
		}
	}
}

// The check ruler's bars are 100 mm and 4 in long, and its lines stand a millimetre and a
// sixteenth of an inch apart. An inch is 25.4 mm (international yard and pound agreement
// of 1959).
func TestRulerIsTrue(t *testing.T) {
	drawn := mustRead(t, string(english.Ruler("p")))
	isMillimetres(t, drawn)
	keepsClear(t, "ruler", drawn)
	for _, scale := range []struct {
		part   string
		length float64
		lines  int
	}{{"mm", 100, 101}, {"in", 4 * 25.4, 65}} {
		bar := drawn.named("bar-" + scale.part)[0].box()
		exact(t, "bar "+scale.part, bar.width(), scale.length)
		at := map[float64]bool{}
		for _, e := range drawn.named("scale-" + scale.part) {
			for _, l := range e.strokes() {
				at[l[0].x] = true
				if l[0].x != l[1].x {
					t.Errorf("scale %s: a line leans from %v to %v", scale.part, l[0], l[1])
				}
			}
		}
		if len(at) != scale.lines {
			t.Errorf("scale %s: %d lines, want %d", scale.part, len(at), scale.lines)
		}
		for n := range scale.lines {
			want := bar.left + float64(n)*scale.length/float64(scale.lines-1)
			if !at[math.Round(want*100)/100] {
				t.Errorf("scale %s: no line %d at %.2f", scale.part, n, want)
			}
		}
	}
}

// isMillimetres says whether the size of the sheet in millimetres is its view box.
func isMillimetres(t *testing.T, d drawing) {
	t.Helper()
	if !strings.HasSuffix(d.attr["width"], "mm") || !strings.HasSuffix(d.attr["height"], "mm") ||
		d.attr["viewBox"] != "0 0 "+num(d.width)+" "+num(d.height) {
		t.Errorf("width %s, height %s, view box %s: want the same in mm", d.attr["width"], d.attr["height"], d.attr["viewBox"])
	}
}

// exact compares lengths in millimetres; both ends are rounded to a hundredth.
func exact(t *testing.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 0.0101 {
		t.Errorf("%s: got %.3f mm, want %.3f mm", what, got, want)
	}
}
