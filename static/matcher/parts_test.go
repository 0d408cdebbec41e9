package matcher_test

import (
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"testing/fstest"
	"unicode/utf8"

	"capspan/build"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

func mustParts(t testing.TB) *matcher.Parts {
	t.Helper()
	p, err := matcher.NewParts(static.FS)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// partTables are the shipped tables a part can be identified in, and one made up for the
// tests: a file, and not a line of code.
func partTables(t testing.TB) map[string]matcher.PartTable {
	t.Helper()
	list := map[string]matcher.PartTable{}
	add := func(set *tables.Set, problems fmt.Stringer, blocked bool) {
		if blocked {
			t.Fatal(problems)
		}
		for _, table := range set.Tables {
			if len(table.Matched()) > 0 {
				list[table.ID] = build.PartTable(set, table)
			}
		}
	}
	set, problems := tables.Load(tables.FS)
	add(set, stringer(problems.Summary()), problems.Blocked())
	text, err := os.ReadFile("testdata/parts/made-up.yaml")
	if err != nil {
		t.Fatal(err)
	}
	set, problems = tables.Load(fstest.MapFS{"hub-faces.yaml": {Data: text}, "sources.yaml": {Data: []byte(
		"sources:\n  - id: a-catalogue\n    kind: catalogue\n    title: A catalogue\n    publisher: A maker\n")}})
	add(set, stringer(fmt.Sprint(problems)), problems.Blocked())
	return list
}

type stringer string

func (s stringer) String() string { return string(s) }

// partVector is one case of testdata/parts. Source says where its figures come from.
type partVector struct {
	Name   string            `json:"name"`
	Source string            `json:"source"`
	Query  matcher.PartQuery `json:"query"`
	Want   struct {
		Verdict    string   `json:"verdict"`
		Rows       []string `json:"rows"` // names, in order
		Near       []string `json:"near"` // names among the nearest
		Complaints int      `json:"complaints"`
		Circle     float64  `json:"circle"` // the diameter worked out, mm, to 0.01
		Says       []string `json:"says"`
	} `json:"want"`
}

func TestPartVectors(t *testing.T) {
	p, all := mustParts(t), partTables(t)
	files, err := filepath.Glob("testdata/parts/*.json")
	if err != nil || len(files) == 0 {
		t.Fatalf("no vectors: %v", err)
	}
	n := 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var list []partVector
		d := json.NewDecoder(strings.NewReader(string(text)))
		d.DisallowUnknownFields()
		if err := d.Decode(&list); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		for _, v := range list {
			n++
			t.Run(v.Name, func(t *testing.T) { checkPartVector(t, p, all, v) })
		}
	}
	if n < 30 {
		t.Errorf("%d vectors", n)
	}
}

func checkPartVector(t *testing.T, p *matcher.Parts, all map[string]matcher.PartTable, v partVector) {
	if v.Name == "" || v.Source == "" || v.Want.Verdict == "" {
		t.Fatal("a vector names no case, source or verdict")
	}
	a, err := p.Identify(all[v.Query.Table], v.Query)
	if err != nil {
		t.Fatal(err)
	}
	checkPartHonest(t, a)
	spoken := strings.Join(append(append(append([]string{a.Says.Head}, a.Says.Because...), a.Says.Next...), wordsOf(a)...), "\n")
	if a.Verdict != v.Want.Verdict || len(a.Complaints) != v.Want.Complaints {
		t.Fatalf("got %s with %d complaints, want %s with %d:\n%s", a.Verdict, len(a.Complaints), v.Want.Verdict, v.Want.Complaints, spoken)
	}
	if got := foundNames(a.Rows); !slices.Equal(got, v.Want.Rows) {
		t.Errorf("rows %q, want %q", got, v.Want.Rows)
	}
	for _, name := range v.Want.Near {
		if !slices.Contains(foundNames(a.Near), name) {
			t.Errorf("%q is not among the nearest %q", name, foundNames(a.Near))
		}
	}
	for _, words := range v.Want.Says {
		if !strings.Contains(spoken, words) {
			t.Errorf("nothing says %q:\n%s", words, spoken)
		}
	}
	if v.Want.Circle > 0 && !slices.ContainsFunc(a.Readings, func(r matcher.PartReading) bool { return math.Abs(r.Value-v.Want.Circle) <= 0.01 }) {
		t.Errorf("no circle of %v mm in %+v", v.Want.Circle, a.Readings)
	}
}

func wordsOf(a matcher.PartAnswer) []string {
	var list []string
	for _, f := range append(slices.Clone(a.Rows), a.Near...) {
		list = append(list, f.Because)
	}
	for _, r := range a.Readings {
		list = append(list, r.Why)
	}
	for _, c := range a.Complaints {
		list = append(list, c.Says)
	}
	return list
}

func foundNames(list []matcher.PartFound) []string {
	var names []string
	for _, f := range list {
		names = append(names, f.Name)
	}
	return names
}

// checkPartHonest wants of any answer what a person may act on: a name only where one row
// is left, everything compared agrees, and the basis allows it.
func checkPartHonest(t interface{ Errorf(string, ...any) }, a matcher.PartAnswer) {
	agree := func(f matcher.PartFound) bool {
		return len(f.Compared) > 0 && !slices.ContainsFunc(f.Compared, func(c matcher.PartComparison) bool { return !c.Agrees })
	}
	for _, f := range a.Rows {
		if !agree(f) {
			t.Errorf("%s is left and does not agree: %+v", f.Ref, f.Compared)
		}
	}
	switch a.Verdict {
	case matcher.Identified:
		if len(a.Rows) != 1 || a.Rows[0].Basis == "memory" || len(a.Rows[0].Compared) < 2 {
			t.Errorf("identified by too little: %+v", a.Rows)
		}
	case matcher.Possible:
		if len(a.Rows) != 1 {
			t.Errorf("possible with %d rows", len(a.Rows))
		}
	case matcher.Between:
		if len(a.Rows) < 2 {
			t.Errorf("between %d rows", len(a.Rows))
		}
	case matcher.NotInChart:
		if len(a.Rows) != 0 || !strings.Contains(a.Says.Head, "in no row") {
			t.Errorf("in no chart: %q with %d rows", a.Says.Head, len(a.Rows))
		}
	case matcher.MeasureAgain:
		if len(a.Says.Next) == 0 || len(a.Rows) != 0 {
			t.Errorf("measure again, but how? %+v", a.Says)
		}
	default:
		t.Errorf("verdict %q", a.Verdict)
	}
	all := strings.ToLower(strings.Join(append(append(wordsOf(a), a.Says.Head), append(a.Says.Because, a.Says.Next...)...), " "))
	if strings.Contains(all, " safe") || strings.Contains(all, "nan") || strings.Contains(all, "undefined") || strings.Contains(all, "infinity") {
		t.Errorf("words that must not be said: %s", all)
	}
}

// The chords of a circle of diameter 1 as tables of chords print them in machinists'
// handbooks, to five places; and the formula they are made by, chord = D sin(180 deg / n).
func TestChordFactors(t *testing.T) {
	p := mustParts(t)
	for holes, want := range map[int]float64{3: 0.86603, 4: 0.70711, 5: 0.58779, 6: 0.50000, 8: 0.38268} {
		got, err := p.ChordFactor(holes, "next")
		if err != nil || math.Abs(got-want) > 0.000005 {
			t.Errorf("%d holes: %.7f, %v; printed %.5f", holes, got, err, want)
		}
	}
	// Worked out from the corners of the polygon, not from the sine of half the angle.
	for holes := 2; holes <= 40; holes++ {
		for between, on := range map[string]int{"next": 1, "farthest": holes / 2} {
			a := 2 * math.Pi * float64(on) / float64(holes)
			want := math.Hypot(1-math.Cos(a), math.Sin(a)) / 2
			if got, err := p.ChordFactor(holes, between); err != nil || math.Abs(got-want) > 1e-12 {
				t.Errorf("%d holes, %s: %v, %v; by coordinates %v", holes, between, got, err, want)
			}
		}
	}
}

// An address asks what was asked, and encodes to itself.
func TestPartAddress(t *testing.T) {
	p, all := mustParts(t), partTables(t)
	table := all["flanges-male"]
	q := matcher.PartQuery{Table: "flanges-male", Values: map[string][]string{"holes": {"8"}, "circle": {"48,85", "1 59/64 in"}, "pilot": {"75.0 mm"}},
		Edges: "outer", Hole: []string{"10.1 mm"}, Unit: "mm", Tool: "dial-caliper", Condition: "worn"}
	address, err := p.Address(table, q)
	want := "circle=48.85mm,1-59/64in&pilot=75.0mm&holes=8&edges=outer&hole-diameter=10.1mm&unit=mm&tool=dial-caliper&condition=worn&chart=" + table.Version
	if err != nil || address != want {
		t.Fatalf("got  %s, %v\nwant %s", address, err, want)
	}
	got, version, complaints, err := p.Decode(table, "#"+address)
	if err != nil || version != table.Version || len(complaints) > 0 {
		t.Fatalf("%+v, %s, %+v, %v", got, version, complaints, err)
	}
	again, err := p.Address(table, got)
	if err != nil || again != address {
		t.Errorf("decoded and written again: %s, %v", again, err)
	}
	for fragment, want := range map[string]string{"holes=8&holes=6": "twice", "colour=red": "“colour”", "edges=sharp": "“sharp”", "tool=ruler": "steel-rule",
		strings.Repeat("a", 9000): "too long"} {
		if _, _, complaints, err := p.Decode(table, fragment); err != nil || len(complaints) == 0 || !strings.Contains(complaints[0].Says, want) {
			t.Errorf("%.20q: %+v, %v", fragment, complaints, err)
		}
	}
}

// Any bytes as readings, and any text as an address: never a throw, never a name by chance.
func FuzzParts(f *testing.F) {
	p, all := mustParts(f), partTables(f)
	names := slices.Sorted(mapKeys(all))
	f.Add(byte(0), "21", "1.371 in\n1.372 in", "10.1 mm", "holes=8&circle=48.85mm")
	f.Add(byte(3), "1e9", "\x00\xff", "-1", "#%zz&=&__proto__=1&holes=9999999999")
	f.Add(byte(9), "٣", "1/0", "", "check=1.2&holes=8")
	f.Fuzz(func(t *testing.T, how byte, counts, lengths, hole, fragment string) {
		table := all[names[int(how)%len(names)]]
		q := matcher.PartQuery{Table: table.ID, Values: map[string][]string{}, Hole: lines(hole), Unit: []string{"", "in", "mm"}[int(how)%3],
			Between: []string{"", "next", "farthest", hole}[int(how/3)%4], Edges: []string{"", "outer", "inner", "same", "centres", counts}[int(how/7)%6],
			Tool: matcher.Tools[int(how)%len(matcher.Tools)], Condition: matcher.Conditions[int(how/8)%len(matcher.Conditions)]}
		for i, c := range table.Columns {
			if c.Match == "exact" {
				q.Values[c.ID] = lines(counts)
			} else if how&(1<<(i%8)) == 0 {
				q.Values[c.ID] = lines(lengths)
			}
		}
		checkPartHonest(t, askPart(t, p, table, q))
		if !utf8.ValidString(fragment) {
			return // as text reaches the core
		}
		decoded, _, _, err := p.Decode(table, fragment)
		if err != nil {
			t.Fatalf("%q: %v", fragment, err)
		}
		checkPartHonest(t, askPart(t, p, table, decoded))
		again, err := p.Address(table, decoded)
		if err != nil {
			t.Fatal(err)
		}
		if len(again) > 8000 {
			return
		}
		if _, _, complaints, err := p.Decode(table, again); err != nil || len(complaints) > 0 {
			t.Errorf("%q is written %q, which reads with %+v, %v", fragment, again, complaints, err)
		}
	})
}
