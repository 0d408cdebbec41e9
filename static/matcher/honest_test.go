package matcher_test

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capspan/content"
	"capspan/static/matcher"
)

// said gathers every sentence of an answer.
func said(a matcher.Answer) []string {
	out := append([]string{a.Says.Head}, a.Says.Because...)
	out = append(out, a.Says.Next...)
	for _, list := range [][]matcher.Size{a.Sizes, a.Near, a.SameFigures} {
		for _, s := range list {
			out = append(out, s.Because)
		}
	}
	for _, e := range a.Ends {
		out = append(out, e.Says)
	}
	for _, r := range a.Readings {
		out = append(out, r.Why)
	}
	for _, c := range a.Complaints {
		out = append(out, c.Says)
	}
	for _, s := range a.TellApart {
		out = append(out, s.Says)
	}
	for _, s := range a.Slips {
		out = append(out, s.Says, s.Next)
	}
	for _, w := range a.Ways {
		out = append(out, w.Says)
	}
	return out
}

type errorer interface {
	Helper()
	Errorf(string, ...any)
}

// checkHonest holds for every answer whatever was asked.
func checkHonest(t errorer, a matcher.Answer) {
	t.Helper()
	switch a.Verdict {
	case matcher.Identified:
		if len(a.Sizes) != 1 || len(a.Complaints) > 0 || a.Sizes[0].Basis == "memory" || a.Sizes[0].Hold == "unknown" || a.Sizes[0].Probability < 0.95 {
			t.Errorf("identified without the right to: %+v, complaints %+v", a.Sizes, a.Complaints)
		}
		for _, end := range a.Sizes[0].Ends {
			for _, c := range []*matcher.Comparison{end.Cap, end.Across} {
				if c != nil && max(c.Difference, -c.Difference) > c.Uncertainty {
					t.Errorf("identified though %+v does not agree", *c)
				}
			}
			if end.Across == nil {
				t.Errorf("identified without an across")
			}
		}
	case matcher.Possible:
		if len(a.Sizes) != 1 {
			t.Errorf("possible with %d sizes", len(a.Sizes))
		}
	case matcher.Between:
		if len(a.Sizes) < 2 {
			t.Errorf("between %d sizes", len(a.Sizes))
		}
	case matcher.NotInChart, matcher.MeasureAgain:
		if len(a.Sizes) > 0 {
			t.Errorf("%s with sizes %+v", a.Verdict, a.Sizes)
		}
	default:
		t.Errorf("unknown verdict %q", a.Verdict)
	}
	if a.Says.Head == "" || len(a.Says.Next) == 0 {
		t.Errorf("%s says too little: %+v", a.Verdict, a.Says)
	}
	for _, s := range said(a) {
		checkSentence(t, s)
	}
	checkSlips(t, a)
	checkParting(t, a)
	checkWays(t, a)
	checkNumbers(t, a)
}

// What somebody typed stands in quotes, and is theirs.
var quoted = regexp.MustCompile(`(?s)“.*”`)

func checkSentence(t errorer, s string) {
	t.Helper()
	s = quoted.ReplaceAllString(s, "“”")
	low := strings.ToLower(s)
	for _, bad := range []string{"%", "NaN", "undefined", "null", "Infinity", "  ", "[object", ".."} {
		if strings.Contains(s, bad) {
			t.Errorf("%q in %q", bad, s)
		}
	}
	if s == "" || strings.Contains(low, "percent") || strings.Contains(low, "safe") || !strings.ContainsAny(s[len(s)-1:], ".?") {
		t.Errorf("badly said: %q", s)
	}
	// A row's name is written as it is, also in front.
	word, _, _ := strings.Cut(s, " ")
	if word != "" && !strings.ContainsAny(word, "0123456789") && 'a' <= word[0] && word[0] <= 'z' {
		t.Errorf("begins with a small letter: %q", s)
	}
}

// A slip is offered at most three times, likeliest first, never beside a size that is
// left, and always with a page that shows it.
func checkSlips(t errorer, a matcher.Answer) {
	t.Helper()
	if len(a.Slips) > 3 || len(a.Slips) > 0 && len(a.Sizes) > 0 {
		t.Errorf("%s with %d sizes left and slips %+v", a.Verdict, len(a.Sizes), a.Slips)
	}
	sum := 0.0
	for i, s := range a.Slips {
		sum += s.Probability
		if s.Probability <= 0 || sum > 1+1e-9 || i > 0 && s.Probability > a.Slips[i-1].Probability {
			t.Errorf("slip %s has probability %v after %v", s.Slip, s.Probability, sum)
		}
		if s.Slip == "" || !slices.Contains([]string{"cap", "across", "hold", "unit"}, s.Look) || s.End < 0 || s.End > 1 || len(s.Rows) != len(s.Names) {
			t.Errorf("half a slip: %+v", s)
		}
		if len(s.Rows) > 0 && s.Cap == nil && s.Across == nil {
			t.Errorf("%s would make it %q but has no figure of it", s.Slip, s.Names)
		}
		checkGuide(t, s.Guide)
	}
}

// checkGuide wants an address of a guide page there is.
func checkGuide(t errorer, address string) {
	t.Helper()
	page, _, _ := strings.Cut(address, "#")
	if !guidePages[page] {
		t.Errorf("no guide page %q", address)
	}
}

var guidePages = func() map[string]bool {
	out := map[string]bool{}
	files, err := content.FS.ReadDir("measure")
	if err != nil {
		panic(err)
	}
	for _, f := range files {
		if name, ok := strings.CutSuffix(f.Name(), ".md"); ok {
			out["/measure/"+name+"/"] = true
		}
	}
	out["/measure/"] = true
	return out
}()

// What tells sizes apart speaks of sizes that are left, and expects something else of each.
func checkParting(t errorer, a matcher.Answer) {
	t.Helper()
	left := rows(a.Sizes)
	for _, part := range a.TellApart {
		if len(part.Between) < 2 || len(part.Expect) != len(part.Between) || !slices.Contains(matcher.Tools, part.Tool) && part.Measure != "hold" {
			t.Errorf("half a measure: %+v", part)
		}
		for _, ref := range part.Between {
			if _, ok := part.Expect[ref]; !ok || !slices.Contains(left, ref) {
				t.Errorf("%+v parts %s, left are %q", part, ref, left)
			}
		}
		if part.Measure != "hold" && part.Able && part.Apart <= 0 {
			t.Errorf("able to part what is the same: %+v", part)
		}
	}
}

func checkWays(t errorer, a matcher.Answer) {
	t.Helper()
	for i, w := range a.Ways {
		if w.Joint == "" || len(w.Keeps) == 0 || len(w.To) == 0 || slices.Contains(w.Keeps, w.Change) || w.Change < 0 || w.Change > 1 {
			t.Errorf("half a way: %+v", w)
		}
		if i > 0 && len(w.Keeps) > len(a.Ways[i-1].Keeps) {
			t.Errorf("a way that keeps more comes later: %+v", a.Ways)
		}
	}
	if len(a.Ways) > 0 && a.Verdict == matcher.Identified {
		t.Errorf("ways out of an identified joint: %+v", a.Ways)
	}
}

// Every number is one, and probabilities share out one.
func checkNumbers(t errorer, a matcher.Answer) {
	t.Helper()
	sum := 0.0
	for _, s := range a.Sizes {
		sum += s.Probability
	}
	if sum > 1+1e-9 || math.IsNaN(sum) {
		t.Errorf("probabilities add up to %v", sum)
	}
	for _, r := range a.Readings {
		if !(r.Uncertainty > 0) || !(r.Value > 0) || len(r.Used) == 0 {
			t.Errorf("half an estimate: %+v", r)
		}
		for _, line := range r.Budget {
			if !(line.Standard >= 0) || line.DOF != nil && !(*line.DOF > 0) {
				t.Errorf("half a line of a budget: %+v", r.Budget)
			}
		}
	}
}

// The checks above are worth nothing if they cannot fail.
func TestHonestyCanFail(t *testing.T) {
	good := matcher.Answer{Verdict: matcher.NotInChart, Says: matcher.Says{Head: "It is in no row.", Next: []string{"Measure again."}}}
	slip := matcher.SlipFound{Slip: "x", Look: "cap", Probability: 0.5, Says: "A slip.", Next: "Look.", Guide: "/measure/cap/"}
	for name, spoil := range map[string]func(*matcher.Answer){
		"four slips":          func(a *matcher.Answer) { a.Slips = slices.Repeat([]matcher.SlipFound{slip}, 4) },
		"no such page":        func(a *matcher.Answer) { s := slip; s.Guide = "/measure/nowhere/"; a.Slips = append(a.Slips, s) },
		"more than certain":   func(a *matcher.Answer) { s := slip; s.Probability = 1.5; a.Slips = append(a.Slips, s) },
		"a small letter":      func(a *matcher.Answer) { a.Says.Head = "it is in no row." },
		"half a way":          func(a *matcher.Answer) { a.Ways = []matcher.Way{{Joint: "x", Says: "Change it."}} },
		"parting nothing":     func(a *matcher.Answer) { a.TellApart = []matcher.TellApart{{Says: "Measure it."}} },
		"nothing used":        func(a *matcher.Answer) { a.Readings = []matcher.Estimate{{Value: 27, Uncertainty: 1, Why: "So."}} },
		"a size not in chart": func(a *matcher.Answer) { a.Sizes = []matcher.Size{{Because: "It fits."}} },
	} {
		a := good
		spoil(&a)
		count := &counter{}
		checkHonest(count, a)
		if count.errors == 0 {
			t.Errorf("%s passes", name)
		}
	}
}

type counter struct{ errors int }

func (c *counter) Helper()               {}
func (c *counter) Errorf(string, ...any) { c.errors++ }
