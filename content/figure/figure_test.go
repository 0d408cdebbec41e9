package figure

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// Goldens are rewritten with: go test ./content/figure -update. Look at the drawings
// and read the difference before committing.
var update = flag.Bool("update", false, "rewrite the goldens in testdata")

var (
	allHolds = []string{outsideClip, insideClip, plate, strap, wing, injected, staked, "unknown"}
	allFaces = []string{overCaps, grooveInner, grooveOuter, underPlates, holeCentres, wingOuter, "unknown"}
)

// gallery is every drawing the site can ask for, by the name of its golden.
func gallery(w Words) map[string]string {
	all := map[string]string{}
	for _, d := range joints {
		all["joint-"+d.Name] = string(w.Joint("joint", d))
		if life := string(w.LifeSize("life", d)); life != "" {
			all["life-"+d.Name] = life
		}
	}
	noCap := End{Hold: outsideClip, Faces: overCaps, Across: inch(3.219, "3.219")}
	noAcross := End{Hold: outsideClip, Faces: overCaps, Cap: inch(1.062, "1.062")}
	for name, ends := range map[string][]End{"no-cap": {noCap}, "no-across": {noAcross}, "neither-known": {noCap, noAcross}} {
		all["life-"+name] = string(w.LifeSize("life", JointDrawing{name, ends}))
	}
	for _, hold := range allHolds {
		all["hold-"+hold] = string(w.Hold("hold", hold))
		all["section-"+hold] = string(w.Section("section", hold))
		for _, faces := range allFaces {
			all["jaws-"+hold+"-"+faces] = string(w.Jaws("jaws", hold, faces))
			all["faces-"+hold+"-"+faces] = string(w.Faces("faces", hold, faces))
		}
	}
	for name, r := range readings {
		all["instrument-"+name] = string(w.Instrument("instrument", r))
	}
	for _, kind := range []string{"full-round", "half-round", "inside-clip", "plate"} {
		all["yoke-"+kind] = string(w.Yoke("yoke", kind))
	}
	all["wing-cap"] = string(w.WingCap("wing"))
	all["ruler"] = string(w.Ruler("ruler"))
	return all
}

// One golden for each kind of drawing; the other tests read every drawing back.
func TestGolden(t *testing.T) {
	all := gallery(english)
	for _, name := range []string{
		"joint-1310", "joint-7260-to-1310", "joint-1610", "joint-1355", "joint-15x39", "joint-injected", "joint-2c", "joint-nothing",
		"faces-outside-clip-over-caps", "faces-inside-clip-groove-inner", "faces-wing-hole-centres",
		"hold-outside-clip", "hold-wing", "hold-unknown",
		"life-1310", "life-7260-to-1310", "life-83x231.4", "ruler",
		"instrument-digital-mm", "instrument-dial-in", "instrument-vernier-mm", "instrument-micrometer-mm",
		"section-outside-clip", "section-strap", "jaws-outside-clip-over-caps", "jaws-inside-clip-groove-inner",
		"yoke-full-round", "yoke-half-round", "wing-cap",
	} {
		t.Run(name, func(t *testing.T) {
			got := strings.ReplaceAll(all[name], "><", ">\n<") + "\n"
			file := filepath.Join("testdata", name+".svg")
			if *update {
				if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
					t.Fatal(err)
				}
			}
			want, err := os.ReadFile(file)
			if err != nil {
				t.Fatal(err)
			}
			if diff := cmp.Diff(string(want), got); diff != "" {
				t.Errorf("(-want +got)\n%s", diff)
			}
		})
	}
}

// Every drawing can be read by a screen reader, keeps to the documented classes, and
// carries no colour, style or script of its own.
func TestEveryDrawing(t *testing.T) {
	classes := map[string]bool{"": true, "b": true, "l": true, "h": true, "c": true, "k": true, "m": true, "mt": true, "s": true,
		"drawing": true, "drawing drawing--icon": true, "drawing drawing--true": true}
	paints := map[string]bool{"": true, "none": true, "currentColor": true}
	longNumber := regexp.MustCompile(`\.[0-9]{3}`)
	for name, svg := range gallery(english) {
		d := mustRead(t, svg)
		if d.title == "" || d.desc == "" || d.attr["role"] != "img" {
			t.Errorf("%s: title %q, description %q, role %q", name, d.title, d.desc, d.attr["role"])
		}
		if ids := strings.Fields(d.attr["aria-labelledby"]); len(ids) != 2 || !strings.Contains(svg, `<title id="`+ids[0]+`"`) ||
			!strings.Contains(svg, `<desc id="`+ids[1]+`"`) {
			t.Errorf("%s: labelled by %v, which are not its title and description", name, ids)
		}
		red, words := false, false
		for _, e := range d.elements {
			if !classes[e.attr["class"]] {
				t.Errorf("%s: class %q is not documented", name, e.attr["class"])
			}
			if !paints[e.attr["fill"]] || !paints[e.attr["stroke"]] || e.attr["style"] != "" {
				t.Errorf("%s: %s has a colour of its own: %v", name, e.name, e.attr)
			}
			if longNumber.MatchString(e.attr["d"]) || strings.Contains(e.attr["d"], "NaN") || strings.Contains(e.attr["d"], "Inf") {
				t.Errorf("%s: a path with wrong numbers: %s", name, e.attr["d"])
			}
			red = red || e.attr["class"] == "m"
		}
		for _, l := range d.texts {
			words = words || l.class == "mt" && len(l.words) > 12
		}
		if red && !words {
			t.Errorf("%s: red lines that no words name", name)
		}
	}
}

// Two drawings on one page never share an id, whatever the row is called.
func TestPrefixMakesIds(t *testing.T) {
	tests := []struct{ prefix, want string }{
		{"row-30.2x92", "row-30.2x92-title row-30.2x92-desc"},
		{`a "b" <c>`, "a--b---c--title a--b---c--desc"},
	}
	for _, test := range tests {
		if got := mustRead(t, string(english.Hold(test.prefix, plate))).attr["aria-labelledby"]; got != test.want {
			t.Errorf("prefix %q: got %q, want %q", test.prefix, got, test.want)
		}
	}
}

// Any numbers and any words give a well-formed drawing, and the same bytes twice.
func TestAnyJoint(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		dimension := func(name string) Dimension {
			return Dimension{rapid.Float64Range(0, 1000).Draw(r, name), rapid.StringN(0, 12, -1).Draw(r, name+" text"), ""}
		}
		end := func() End {
			return End{rapid.SampledFrom(allHolds).Draw(r, "hold"), rapid.SampledFrom(allFaces).Draw(r, "faces"), dimension("cap"), dimension("across")}
		}
		d := JointDrawing{Name: rapid.String().Draw(r, "name"), Ends: []End{end(), end()}}
		first := string(english.Joint("p", d))
		if second := string(english.Joint("p", d)); first != second {
			r.Fatalf("two drawings of %v differ", d)
		}
		if strings.Contains(first, "NaN") || strings.Contains(first, "Inf ") {
			r.Fatalf("wrong numbers in %s", first)
		}
		mustRead(t, first)
	})
}

// One of every drawing the site can ask for; the aim is well under a second.
func BenchmarkGallery(b *testing.B) {
	for b.Loop() {
		gallery(english)
	}
}

// The picture of a hold without words of its own is the same picture.
func TestHoldIcon(t *testing.T) {
	for _, hold := range []string{"outside-clip", "inside-clip", "plate", "strap", "wing", "injected", "staked", "unknown"} {
		icon, said := string(HoldIcon(hold)), string(english.Hold("p", hold))
		_, lines, _ := strings.Cut(said, "</desc>")
		if !strings.HasSuffix(icon, lines) || !strings.Contains(icon, ` aria-hidden="true"`) || strings.Contains(icon, "<title") {
			t.Errorf("%s: the icon is %.300s", hold, icon)
		}
	}
}
