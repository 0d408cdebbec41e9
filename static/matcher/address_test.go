package matcher

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

type decoded struct {
	Query      Query
	Chart      string
	Complaints []Complaint
}

func TestAddress(t *testing.T) {
	m := mustCore(t)
	q := Query{
		Ends: []QueryEnd{
			{Hold: "outside-clip", Faces: "over-caps", Cap: []string{"1,060 in", "1 1/16"}, Across: []string{"3.226\""}},
			{Hold: "inside-clip", Taken: "yoke", Cap: []string{"27,40"}, Clip: []string{"1.5"}},
		},
		Unit: "mm", Tool: "digital-caliper", Condition: "used",
	}
	got, err := m.Address(q)
	if err != nil {
		t.Fatal(err)
	}
	want := "hold=outside-clip&faces=over-caps&cap=1.060in,1-1/16in&across=3.226in" +
		"&hold2=inside-clip&taken2=yoke&cap2=27.40mm&clip2=1.5mm&unit=mm&tool=digital-caliper&condition=used&chart=test"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// An address of strangers' making is read as far as it goes, with a word on the rest.
func TestDecodeAddressJunk(t *testing.T) {
	m := mustCore(t)
	for _, c := range []struct{ fragment, want string }{
		{"hold=glue", "“glue”"},
		{"hold=plate&hold=strap", "twice"},
		{"colour=red", "“colour”"},
		{"tool=ruler", "steel-rule"},
		{"=&%=%&&", "means nothing"},
		{strings.Repeat("a", 9000), "too long"},
	} {
		var got decoded
		m.run(t, &got, "core.decodeAddress(a[0])", c.fragment)
		if len(got.Complaints) == 0 || !strings.Contains(got.Complaints[0].Says, c.want) {
			t.Errorf("%.30q: got %+v, want a complaint with %q", c.fragment, got.Complaints, c.want)
		}
		if len(got.Query.Ends) != 1 || got.Query.Ends[0].Hold == "" {
			t.Errorf("%.30q: got ends %+v, want one that can be filled in", c.fragment, got.Query.Ends)
		}
	}
}

// readings draws what people type, well and badly written.
func readings() *rapid.Generator[[]string] {
	good := rapid.Custom(func(t *rapid.T) string {
		switch rapid.IntRange(0, 3).Draw(t, "form") {
		case 0:
			return fmt.Sprintf("%d.%03d in", rapid.IntRange(1, 9).Draw(t, "whole"), rapid.IntRange(0, 999).Draw(t, "thou"))
		case 1:
			return fmt.Sprintf("%d,%02d mm", rapid.IntRange(1, 200).Draw(t, "whole"), rapid.IntRange(0, 99).Draw(t, "hundredths"))
		case 2:
			return fmt.Sprintf("%d-%d/32\"", rapid.IntRange(1, 9).Draw(t, "whole"), rapid.IntRange(1, 31).Draw(t, "top"))
		}
		return rapid.StringN(1, 12, -1).Draw(t, "anything")
	})
	return rapid.SliceOfN(good, 1, 5)
}

func queries() *rapid.Generator[Query] {
	return rapid.Custom(func(t *rapid.T) Query {
		q := Query{
			Tool:      rapid.SampledFrom(append([]Tool{""}, Tools...)).Draw(t, "tool"),
			Condition: rapid.SampledFrom(append([]Condition{""}, Conditions...)).Draw(t, "condition"),
			Unit:      rapid.SampledFrom([]Unit{"", "in", "mm"}).Draw(t, "unit"),
		}
		for range rapid.IntRange(1, 2).Draw(t, "ends") {
			q.Ends = append(q.Ends, QueryEnd{
				Hold:   rapid.SampledFrom(Holds).Draw(t, "hold"),
				Faces:  rapid.SampledFrom([]Faces{"", "over-caps", "groove-inner", "unknown"}).Draw(t, "faces"),
				Taken:  rapid.SampledFrom([]string{"", "joint", "yoke"}).Draw(t, "taken"),
				Cap:    readings().Draw(t, "cap"),
				Across: readings().Draw(t, "across"),
				Clip:   readings().Draw(t, "clip"),
			})
		}
		return q
	})
}

// A decoded address encodes to itself, and asks what was asked: only the writing of the
// readings becomes canonical.
func TestAddressRoundTrip(t *testing.T) {
	m := mustCore(t)
	rapid.Check(t, func(rt *rapid.T) {
		q := queries().Draw(rt, "query")
		first, err := m.Address(q)
		if err != nil {
			rt.Fatal(err)
		}
		var got decoded
		m.run(t, &got, "core.decodeAddress(a[0])", first)
		if len(got.Complaints) > 0 || got.Chart != "test" {
			rt.Fatalf("%s: %+v", first, got)
		}
		second, err := m.Address(got.Query)
		if err != nil {
			rt.Fatal(err)
		}
		if first != second {
			rt.Fatalf("first  %s\nsecond %s", first, second)
		}
		if diff := cmp.Diff(canonical(t, m, q), got.Query); diff != "" {
			rt.Fatalf("asked (-), decoded (+):\n%s", diff)
		}
	})
}

// canonical writes each reading as the core does, and leaves the rest.
func canonical(t *testing.T, m *Matcher, q Query) Query {
	t.Helper()
	text, err := json.Marshal(q)
	if err != nil {
		t.Fatal(err)
	}
	var out Query
	if err := json.Unmarshal(text, &out); err != nil {
		t.Fatal(err)
	}
	for _, end := range out.Ends {
		for _, list := range [][]string{end.Cap, end.Across, end.Clip} {
			for i, reading := range list {
				var r parsed
				m.run(t, &r, "core.parseReading(a[0], a[1] || undefined)", reading, q.Unit)
				if r.OK {
					list[i] = r.Text
				}
			}
		}
	}
	return out
}

func FuzzDecodeAddress(f *testing.F) {
	m := mustCore(f)
	for _, s := range []string{"hold=plate&cap=1.062in", "#cap=%,%2,%zz&&=&cap2", "hold=__proto__&__proto__=1", "chart=%F0%9F%98%80", "constructor=1"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, fragment string) {
		var got decoded
		m.run(t, &got, "core.decodeAddress(a[0])", strings.ToValidUTF8(fragment, "\ufffd"))
		if n := len(got.Query.Ends); n < 1 || n > 2 {
			t.Errorf("%q gives %d ends", fragment, n)
		}
		if _, err := m.Identify(got.Query); err != nil {
			t.Errorf("%q decodes to a query the core stumbles over: %v", fragment, err)
		}
	})
}
