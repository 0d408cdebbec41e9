package matcher_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"

	"capspan/build"
	"capspan/build/diag"
	"capspan/static/matcher"
	"capspan/tables"
)

var shippedSet = sync.OnceValues(func() (*tables.Set, diag.List) { return tables.Load(tables.FS) })

// mustMatch loads the core with the shipped chart.
func mustMatch(t testing.TB) (*matcher.Matcher, matcher.Chart) {
	t.Helper()
	set, problems := shippedSet()
	if problems.Blocked() {
		t.Fatalf("load the tables: %v", problems)
	}
	chart := build.Chart(set)
	return newMatcher(t, mustBundle(t), chart), chart
}

// vector is one case of testdata/vectors. Source says where its figures come from. What
// is left out of Want is not looked at.
type vector struct {
	Name   string        `json:"name"`
	Source string        `json:"source"`
	Query  matcher.Query `json:"query"`
	Want   struct {
		Verdict     string   `json:"verdict"`
		Rows        []string `json:"rows"`  // among the rows of the likeliest size
		Sizes       *int     `json:"sizes"` // how many are left
		Basis       string   `json:"basis"` // of the likeliest size
		Near        []string `json:"near"`  // names among the nearest that do not match
		SameFigures []string `json:"sameFigures"`
		SetAside    []string `json:"setAside"`
		Measure     string   `json:"measure"` // what tells the sizes apart
		Ends        int      `json:"ends"`
		Complaints  int      `json:"complaints"`
		Slips       []string `json:"slips"` // ids, likeliest first
		Ways        []string `json:"ways"`  // joints among the ways out
		Says        []string `json:"says"`  // somewhere in what is said
	} `json:"want"`
}

func TestVectors(t *testing.T) {
	m, _ := mustMatch(t)
	files, err := filepath.Glob("testdata/vectors/*.json")
	if err != nil || len(files) < 40 {
		t.Fatalf("found %d vectors: %v", len(files), err)
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		var v vector
		d := json.NewDecoder(strings.NewReader(string(text)))
		d.DisallowUnknownFields()
		if err := d.Decode(&v); err != nil {
			t.Fatalf("%s: %v", file, err)
		}
		t.Run(strings.TrimSuffix(filepath.Base(file), ".json"), func(t *testing.T) {
			if v.Name == "" || v.Source == "" || v.Want.Verdict == "" {
				t.Fatalf("%s names no case, source or verdict", file)
			}
			a, err := m.Identify(v.Query)
			if err != nil {
				t.Fatal(err)
			}
			checkVector(t, v, a)
			checkHonest(t, a)
		})
	}
}

func checkVector(t *testing.T, v vector, a matcher.Answer) {
	t.Helper()
	want := v.Want
	if a.Verdict != want.Verdict {
		t.Fatalf("%s: got %s (%s), want %s", v.Name, a.Verdict, a.Says.Head, want.Verdict)
	}
	var likeliest matcher.Size
	if len(a.Sizes) > 0 {
		likeliest = a.Sizes[0]
	}
	if want.Sizes != nil && len(a.Sizes) != *want.Sizes {
		t.Errorf("got %d sizes left, want %d: %+v", len(a.Sizes), *want.Sizes, a.Sizes)
	}
	contains(t, "rows of the likeliest size", likeliest.Rows, want.Rows)
	if want.Basis != "" && likeliest.Basis != want.Basis {
		t.Errorf("got basis %q, want %q", likeliest.Basis, want.Basis)
	}
	contains(t, "near", names(a.Near), want.Near)
	contains(t, "same figures", rows(a.SameFigures), want.SameFigures)
	if want.SetAside != nil {
		var aside []string
		for _, r := range a.Readings {
			aside = append(aside, r.SetAside...)
		}
		if !slices.Equal(aside, want.SetAside) {
			t.Errorf("got set aside %q, want %q", aside, want.SetAside)
		}
	}
	if want.Measure != "" && (len(a.TellApart) != 1 || a.TellApart[0].Measure != want.Measure) {
		t.Errorf("got %+v, want the %s to tell them apart", a.TellApart, want.Measure)
	}
	if want.Ends != len(a.Ends) {
		t.Errorf("got %d ends told of, want %d", len(a.Ends), want.Ends)
	}
	if want.Complaints != len(a.Complaints) {
		t.Errorf("got complaints %+v, want %d", a.Complaints, want.Complaints)
	}
	var slips, ways []string
	for _, s := range a.Slips {
		slips = append(slips, s.Slip)
	}
	for _, w := range a.Ways {
		ways = append(ways, w.Joint)
	}
	if want.Slips != nil && !slices.Equal(slips, want.Slips) {
		t.Errorf("got slips %q, want %q", slips, want.Slips)
	}
	contains(t, "ways", ways, want.Ways)
	all := strings.Join(said(a), "\n")
	for _, s := range want.Says {
		if !strings.Contains(all, s) {
			t.Errorf("want %q in what is said:\n%s", s, all)
		}
	}
}

func contains(t *testing.T, what string, got, want []string) {
	t.Helper()
	for _, w := range want {
		if !slices.Contains(got, w) {
			t.Errorf("%s: got %q, want %q among them", what, got, w)
		}
	}
}

func names(sizes []matcher.Size) []string {
	var out []string
	for _, s := range sizes {
		out = append(out, s.Names...)
	}
	return out
}

func rows(sizes []matcher.Size) []string {
	var out []string
	for _, s := range sizes {
		out = append(out, s.Rows...)
	}
	return out
}
