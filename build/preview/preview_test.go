package preview

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"os"
	"strings"
	"testing"

	"capspan/content/figure"
	catalogue "capspan/templates/words"
)

// english is what drawings say here.
var english = func() figure.Words {
	words, problems := catalogue.Load(os.DirFS("../../templates"), nil, catalogue.English)
	if problems.Blocked() {
		panic(problems)
	}
	return figure.Words{Say: words.Say}
}()

var plain = figure.JointDrawing{Name: "1310", Ends: []figure.End{{Hold: "outside-clip", Faces: "over-caps",
	Cap:    figure.Dimension{MM: 26.9748, Text: "1.062 in", Converted: "26.97 mm"},
	Across: figure.Dimension{MM: 81.7626, Text: "3.219 in", Converted: "81.76 mm"}}}}

var words = Words{Name: "1310", Lines: []string{"1.062 in × 3.219 in, clip outside", "Basis: common practice"}, Foot: "Capspan 2026-11-25-3f9a1c2"}

func picture(t testing.TB, d figure.JointDrawing, w Words) (*image.Paletted, []byte) {
	t.Helper()
	b, err := Draw(string(english.Joint("p", d)), w)
	if err != nil {
		t.Fatal(err)
	}
	img, err := png.Decode(bytes.NewReader(b))
	if err != nil {
		t.Fatal(err)
	}
	return img.(*image.Paletted), b
}

// The picture can be measured as the drawing can: what lies between the two red faces is
// to what lies between the sides of the upright cap as 3.219 in to 1.062 in.
func TestToScale(t *testing.T) {
	img, _ := picture(t, plain, words)
	if got := img.Bounds().Size(); got != image.Pt(Width, Height) {
		t.Fatalf("the picture is %v", got)
	}
	// The two tallest red columns are the faces, the centre lies between them.
	tall := make([]int, Width)
	for x := range Width {
		for y := range Height {
			if img.ColorIndexAt(x, y) == ink(inkMark) {
				tall[x]++
			}
		}
	}
	var faces []int // columns that are nearly all red from end to end
	for x, n := range tall {
		if n > 120 {
			faces = append(faces, x)
		}
	}
	if len(faces) < 2 {
		t.Fatalf("no two red faces: %v", faces)
	}
	left, right := faces[0], faces[len(faces)-1]
	across := float64(right-left+1) - 2*scaleOf(t) // the line is 2 units wide, its middle counts
	// Up the middle of the picture's upright cap, its two sides are bold lines.
	centre, y := (left+right)/2, 0
	for y = margin; y < Height/2 && img.ColorIndexAt(centre+40, y) != ink(inkLine); y++ {
	}
	y += int(30 * scaleOf(t)) // below the clip and the bevel
	side := func(step int) int {
		for x := centre + 20*step; ; x += step {
			if img.ColorIndexAt(x, y) == ink(inkLine) {
				return x
			}
		}
	}
	cap := float64(side(1)-side(-1)) - 1 + 2.5*scaleOf(t) // from inner edge to inner edge of lines 2.5 units wide
	if got, want := across/cap, 3.219/1.062; math.Abs(got-want) > 0.04 {
		t.Errorf("across is to cap as %.3f, want %.3f (%v and %v pixels)", got, want, across, cap)
	}
}

// scaleOf is how large the drawing stands in the picture.
func scaleOf(t *testing.T) float64 {
	d, err := read(string(english.Joint("p", plain)))
	if err != nil {
		t.Fatal(err)
	}
	return d.scale()
}

// ink is the palette's index of an ink at full strength.
func ink(n int) uint8 { return uint8(1 + n*strengths + strengths - 1) }

func TestSameBytes(t *testing.T) {
	_, a := picture(t, plain, words)
	_, b := picture(t, plain, words)
	if !bytes.Equal(a, b) {
		t.Error("two pictures of one drawing differ")
	}
}

// What is not known is refused and not left out.
func TestUnknownElements(t *testing.T) {
	for name, svg := range map[string]string{
		"an element":   `<svg width="10" height="10"><rect class="b"/></svg>`,
		"a class":      `<svg width="10" height="10"><path class="z" d="M0 0L1 1"/></svg>`,
		"a command":    `<svg width="10" height="10"><path class="b" d="M0 0Q1 1 2 2"/></svg>`,
		"a transform":  `<svg width="10" height="10"><text x="1" y="1" transform="scale(2)">a</text></svg>`,
		"no size":      `<svg></svg>`,
		"broken XML":   `<svg width="10" height="10"><path`,
		"an ellipse":   `<svg width="10" height="10"><path class="b" d="M0 0A1 2 0 0 1 3 3"/></svg>`,
		"a path ended": `<svg width="10" height="10"><path class="b" d="M0 0L1"/></svg>`,
	} {
		if _, err := Draw(svg, words); err == nil {
			t.Errorf("%s is not refused", name)
		}
	}
}

// Words never leave the picture, whatever their length.
func TestLongWords(t *testing.T) {
	long := Words{Name: strings.Repeat("W", 40), Lines: []string{strings.Repeat("many words ", 40)}}
	img, _ := picture(t, plain, long)
	for y := range Height {
		for x := range Width {
			if inside := x >= 14 && x < Width-14 && y >= 14 && y < Height-14; !inside && img.ColorIndexAt(x, y) != 0 {
				t.Fatalf("ink at %d, %d, outside the frame", x, y)
			}
		}
	}
}

func BenchmarkDraw(b *testing.B) {
	svg := string(english.Joint("p", plain))
	for b.Loop() {
		if _, err := Draw(svg, words); err != nil {
			b.Fatal(err)
		}
	}
}
