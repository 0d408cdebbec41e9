package driveline

import (
	"encoding/json"
	"html"
	"io/fs"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capspan/static"
	"capspan/static/alike"
)

func mustSpanishMachine(t testing.TB) *Machine {
	t.Helper()
	fsys := mustSpanish(t)
	core, problems := static.Core(fsys)
	scripts, more := static.Driveline(fsys)
	if problems.Add(more...); len(problems) > 0 {
		t.Fatal(problems)
	}
	m, err := New(core, scripts)
	if err != nil {
		t.Fatal(err)
	}
	if err := m.Provide(Provided{Fasteners: []Fastener{}, Documents: []Document{}, Rows: []string{"1310"}, Ratings: []PublishedRate{}}); err != nil {
		t.Fatal(err)
	}
	return m
}

// mustSpanish is the folder static as it speaks Spanish.
func mustSpanish(t testing.TB) fs.FS {
	t.Helper()
	return static.In(static.FS, os.DirFS("../../content"), "es")
}

// Ids, addresses, drawn lines, and names of documents are the same in every language.
var kept = alike.Rules{
	Kept: []string{"calculation", "fragment", "id", "asked", "part", "basis", "source", "at", "met", "input", "text", "name", "key", "kind",
		"group", "sign", "exampleText", "exampleUnit", "tag", "class", "viewBox", "role", "points", "d", "fill", "cx", "cy",
		"r", "x", "y", "x1", "y1", "x2", "y2", "text-anchor", "publisher", "where"},
	Quoted: regexp.MustCompile(`Conoce [^.]*|Gere and Goodno|` + quotedTitles),
}

// Titles of documents that sentences name.
const quotedTitles = `Design Guidelines for Drive Shaft Installation Angle|Cardan Shafts for Industrial Applications|` +
	`Workshop manuals, propeller shafts|Drive-shaft selection|drive shaft angles|Universal joint sizing|Transmission Application and Installation Guide|` +
	`Lightweight drive shaft|Universal Joints and Driveshafts|propeller-shaft inspection and assembly|limits \(as printed in a tolerance table\)|` +
	`Bolt torques by SAE J429 grade, 75 % of proof|Mechanics of Materials|Lubrication specifications, universal joints|Mechanical Engineer's Data Handbook|` +
	`Operator's manual, drive shaft|Maximum angle against length|two-piece shaft`

var (
	documentTitles = regexp.MustCompile(`<span class="document">[^<]*</span>`)
	tags           = regexp.MustCompile(`<[^>]*>`)
)

func mustAny(t testing.TB, x any) any {
	t.Helper()
	text, err := json.Marshal(x)
	if err != nil {
		t.Fatal(err)
	}
	var out any
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	return out
}

// Every worked example, and what is refused, comes to the same figures in Spanish, its words
// are none of the English ones, and its fragment is the very same.
func TestSpanishReckonsAlike(t *testing.T) {
	english, spanish := mustMachine(t), mustSpanishMachine(t)
	described, err := english.Described()
	if err != nil {
		t.Fatal(err)
	}
	asked := map[string][]string{
		"speed": {"length=30m", "length=1,2.3", "length=abc", "length=12kg", "length=1e9", "length=3 4", "material=wood", "colour=red", "wall=2&wall=3",
			"outside=10mm&wall=8mm&length=1m", "from=engine&engine=3,000rpm&gear=1", "outside=76,2mm&wall=2,5mm&length=1,5m&speed=2500rpm"},
		"angles": {"joints=1&gearbox=3deg&shaft=7,5deg&speed=2500rpm", "joints=3&gearbox=3&shaft=5&rear=6&axle=2&shaftlength=1m&rearlength=1,2m&speed=3000",
			"gearbox=3deg&gearboxplan=2deg&shaft=7.5deg&axle=2deg&speed=90rpm&inertia=0.2&gearboxbase=300mm", "gearbox=0&shaft=3&axle=0&aim=5"},
		"torque":    {"by=given&torque=500N.m&angle=12deg&radius=40mm&machine=needle&spline=15mm", "by=slip&load=1200kg&tyre=300mm&axle=4&row=1310&rating=900N.m", "row=none&by=given&torque=1"},
		"life":      {"torque=100N.m&angle=1deg&speed=500rpm&rating=400N.m&capacity=900N.m&life=5000h"},
		"clips":     {"hold=inside-clip&yoke=41.35mm&joint=37.617mm&clip=1.5mm&float=0.02mm", "cap=27mm&bore1=26.92mm&bore2=26.8mm&size=27mm&class=h7", "yoke=82mm&joint=79mm&clip=1.2mm&other=1.3mm"},
		"length":    {"between=1200mm&drivingyoke=60mm&drivenyoke=200mm&slip=100mm&out=33mm&tube=500mm&working=300mm&least=150mm&left=45mm", "run=1m&stands=100mm&bump=20mm&droop=180mm"},
		"fasteners": {"thread=M10&grade=8.8&condition=oiled", "thread=nonsense"},
		"balance":   {"mass=6kg&speed=600rpm&unbalance=50g.cm"},
		"ends":      {"cap1=27mm", "hold1=wood"},
	}
	for _, d := range described {
		for _, fragment := range append([]string{"", d.Example.Fragment}, asked[d.Name]...) {
			e, s := english.mustReckon(t, d.Name, fragment), spanish.mustReckon(t, d.Name, fragment)
			for _, difference := range kept.Differences(mustAny(t, e), mustAny(t, s)) {
				t.Errorf("%s of %s: %s", d.Name, fragment, difference)
			}
			page, err := spanish.Result(d.Name, fragment)
			if err != nil {
				t.Fatal(err)
			}
			visible := html.UnescapeString(tags.ReplaceAllString(documentTitles.ReplaceAllString(string(page), ""), " "))
			if left := kept.Left(visible); left != "" {
				t.Errorf("the page of %s of %s has the English word %q", d.Name, fragment, left)
			}
		}
	}
	inSpanish, err := spanish.Described()
	if err != nil {
		t.Fatal(err)
	}
	for _, difference := range kept.Differences(mustAny(t, described), mustAny(t, inSpanish)) {
		t.Errorf("described: %s", difference)
	}
	documents, err := english.Documents()
	if err != nil {
		t.Fatal(err)
	}
	spanishDocuments, err := spanish.Documents()
	if err != nil {
		t.Fatal(err)
	}
	titled := kept
	titled.Kept = append(slices.Clone(kept.Kept), "title")
	titled.Kept = slices.DeleteFunc(titled.Kept, func(field string) bool { return field == "publisher" || field == "where" })
	for _, difference := range titled.Differences(mustAny(t, documents), mustAny(t, spanishDocuments)) {
		t.Errorf("documents: %s", difference)
	}
}

// A comma before three digits may be meant for thousands: where the input can be either, it is
// asked and not taken, and the address keeps it as it was typed.
func TestCommaOfThousands(t *testing.T) {
	for name, m := range map[string]*Machine{"can be 2.5 or 2500": mustMachine(t), "puede ser 2,5 o 2500": mustSpanishMachine(t)} {
		r := m.mustReckon(t, "speed", "speed=2,500rpm")
		if len(r.Refusals) != 1 || !strings.Contains(r.Refusals[0].Says, name) || len(r.Lines) != 0 {
			t.Errorf("2,500 rev/min: %+v, want a refusal that says it %s", r.Refusals, name)
		}
		if r.Fragment != "speed=2%2C500rpm" {
			t.Errorf("the fragment of 2,500 rev/min is %q: it must keep both meanings", r.Fragment)
		}
		for fragment, want := range map[string]string{
			"speed=2,5rpm":     "speed=2.5rpm",
			"speed=2.500rpm":   "speed=2.500rpm",
			"length=76,200in":  "length=76.200in", // 76,200 in would be a mile and more
			"outside=76,200mm": "outside=76.200mm",
			"speed=2,5000rpm":  "speed=2.5000rpm",
		} {
			if r := m.mustReckon(t, "speed", fragment); len(r.Refusals) != 0 || r.Fragment != want {
				t.Errorf("%s: fragment %q, refused %+v", fragment, r.Fragment, r.Refusals)
			}
		}
	}
}
