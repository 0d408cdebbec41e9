package matcher_test

import (
	"encoding/json"
	"strings"
	"testing"
	"unicode/utf8"

	"capspan/static/matcher"
)

// checkUsable wants an answer, or a complaint a person can act on.
func checkUsable(t *testing.T, a matcher.Answer) {
	t.Helper()
	checkHonest(t, a)
	if a.Verdict == matcher.MeasureAgain && len(a.Says.Because)+len(a.Says.Next) == 0 {
		t.Errorf("measure again, but why? %+v", a.Says)
	}
	for _, c := range a.Complaints {
		if c.Says == "" || c.Quantity == "" || c.End < 0 || c.Index < 0 || len(c.Text) > 200 {
			t.Errorf("half a complaint: %+v", c)
		}
	}
}

// Any bytes as readings, one to a line, for any hold, of a joint or a bare yoke.
func FuzzReadings(f *testing.F) {
	m, _ := mustMatch(f)
	f.Fuzz(func(t *testing.T, how byte, cap, across, clip string) {
		end := matcher.QueryEnd{Hold: matcher.Holds[int(how)%len(matcher.Holds)], Cap: lines(cap), Across: lines(across), Clip: lines(clip)}
		if how&0x80 != 0 {
			end.Taken = "yoke"
		}
		q := matcher.Query{Ends: []matcher.QueryEnd{end}, Unit: []string{"", "in", "mm"}[int(how)%3],
			Tool: matcher.Tools[int(how)%len(matcher.Tools)], Condition: matcher.Conditions[int(how/8)%len(matcher.Conditions)]}
		a, err := m.Identify(q)
		if err != nil {
			t.Fatalf("%+v: %v", q, err)
		}
		checkUsable(t, a)
	})
}

func lines(s string) []string {
	if s == "" {
		return nil
	}
	return strings.Split(s, "\n")
}

// Any JSON as a query, straight to the core as a browser sends it, and through Go.
func FuzzQuery(f *testing.F) {
	m, _ := mustMatch(f)
	f.Fuzz(func(t *testing.T, text string) {
		if json.Valid([]byte(text)) && len(text) < matcher.MaxQuery {
			out, err := m.IdentifyAny(text)
			if err != nil {
				t.Fatalf("%q: %v", text, err)
			}
			var a matcher.Answer
			if err := json.Unmarshal([]byte(out), &a); err != nil {
				t.Fatalf("%q gives %s: %v", text, out, err)
			}
			checkUsable(t, a)
		}
		q, err := matcher.DecodeQuery([]byte(text))
		if err != nil {
			if err.Error() == "" {
				t.Errorf("%q is refused without a word", text)
			}
			return
		}
		a, err := m.Identify(q)
		if err != nil {
			t.Fatalf("%q: %v", text, err)
		}
		checkUsable(t, a)
	})
}

// Any address gives a query that can be asked, and writing that query gives an address
// that reads back without a complaint.
func FuzzAddress(f *testing.F) {
	m, _ := mustMatch(f)
	f.Fuzz(func(t *testing.T, fragment string) {
		if !utf8.ValidString(fragment) {
			return // as text reaches the core
		}
		q, _, err := m.Decode(fragment)
		if err != nil {
			t.Fatalf("%q: %v", fragment, err)
		}
		a, err := m.Identify(q)
		if err != nil {
			t.Fatalf("%q: %v", fragment, err)
		}
		checkUsable(t, a)
		again, err := m.Address(q)
		if err != nil {
			t.Fatalf("%q: %v", fragment, err)
		}
		if len(again) > 8000 {
			return // longer than any address that is read
		}
		if _, complaints, err := m.Decode(again); err != nil || len(complaints) > 0 {
			t.Errorf("%q is written %q, which reads with %+v, %v", fragment, again, complaints, err)
		}
	})
}
