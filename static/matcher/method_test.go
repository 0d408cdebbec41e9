package matcher_test

import (
	"slices"
	"testing"

	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

func TestAssumptions(t *testing.T) {
	list, err := matcher.Assumptions(static.FS)
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	for _, a := range list {
		switch {
		case seen[a.ID]:
			t.Errorf("%s is there twice", a.ID)
		case a.Says == "" || a.Value == 0:
			t.Errorf("%s says nothing: %+v", a.ID, a)
		case a.Basis == "published" && a.Source == "":
			t.Errorf("%s is published without a source", a.ID)
		case a.Basis != "published" && a.Basis != "common-practice" && a.Basis != "memory" && a.Basis != "judgement":
			t.Errorf("%s has basis %q", a.ID, a.Basis)
		}
		seen[a.ID] = true
	}
	// din862 in the source registry: 0.02 mm to 100 mm.
	if !seen["caliper-limit-100"] {
		t.Error("the limit of a caliper is not among the assumptions")
	}
}

// A source named beside a constant of the method is in the registry.
func TestAssumptionsNameSources(t *testing.T) {
	set, _ := tables.Load(tables.FS)
	list, err := matcher.Assumptions(static.FS)
	if err != nil {
		t.Fatal(err)
	}
	for _, a := range list {
		if a.Source != "" && !slices.ContainsFunc(set.Sources, func(s *tables.Source) bool { return s.ID == a.Source }) {
			t.Errorf("%s: source %q is not in the registry", a.ID, a.Source)
		}
	}
}
