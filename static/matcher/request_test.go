package matcher

import (
	"fmt"
	"math/rand"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// measureRequest mirrors MeasureRequest of request.ts.
type measureRequest struct {
	Ends     []requestEnd `json:"ends"`
	Unit     string       `json:"unit,omitempty"`
	From     string       `json:"from,omitempty"`
	Question string       `json:"question,omitempty"`
}

type requestEnd struct {
	Hold  string   `json:"hold,omitempty"`
	Faces string   `json:"faces,omitempty"`
	Take  []string `json:"take"`
}

type openedRequest struct {
	OK      bool
	Why     string
	Says    string
	Request measureRequest
}

func (m *Matcher) encodeRequest(t testing.TB, r measureRequest) string {
	t.Helper()
	var out string
	m.run(t, &out, "request.encodeRequest(JSON.parse(JSON.stringify(a[0])))", asMap(r))
	return out
}

// asMap gives the machine plain objects: it does not follow the tags of a Go struct.
func asMap(r measureRequest) map[string]any {
	out := map[string]any{"unit": r.Unit, "from": r.From, "question": r.Question}
	var ends []map[string]any
	for _, e := range r.Ends {
		end := map[string]any{"take": e.Take}
		if e.Hold != "" {
			end["hold"] = e.Hold
		}
		if e.Faces != "" {
			end["faces"] = e.Faces
		}
		ends = append(ends, end)
	}
	out["ends"] = ends
	return out
}

func TestRequest(t *testing.T) {
	m := mustCore(t)
	asked := measureRequest{
		Ends: []requestEnd{{Hold: "inside-clip", Faces: "groove-inner", Take: []string{"cap", "across"}}, {Take: []string{"cap"}}},
		Unit: "mm", From: "The workshop", Question: "Front axle, left-hand side (20.5 mm?)",
	}
	got := m.encodeRequest(t, asked)
	_, body, _ := strings.Cut(got, "&")
	want := "take=cap,across&hold=inside-clip&faces=groove-inner&take2=cap&unit=mm&from=The-workshop" +
		"&say=Front-axle%2C-left%2Dhand-side-%2820%2E5-mm%3F%29"
	if body != want {
		t.Errorf("got  %s\nwant %s", body, want)
	}
	var opened openedRequest
	m.run(t, &opened, "request.decodeRequest(a[0])", "#"+got)
	if diff := cmp.Diff(asked, opened.Request); diff != "" || !opened.OK {
		t.Errorf("opened %v: asked (-), opened (+):\n%s", opened, diff)
	}
}

func requests() *rapid.Generator[measureRequest] {
	return rapid.Custom(func(t *rapid.T) measureRequest {
		r := measureRequest{
			Unit:     rapid.SampledFrom([]string{"", "in", "mm"}).Draw(t, "unit"),
			From:     rapid.StringN(0, 80, -1).Draw(t, "from"),
			Question: rapid.StringN(0, 500, -1).Draw(t, "question"),
		}
		for range rapid.IntRange(1, 2).Draw(t, "ends") {
			end := requestEnd{Take: rapid.SampledFrom([][]string{{"cap"}, {"across"}, {"cap", "across"}}).Draw(t, "take")}
			if hold := rapid.SampledFrom(append([]Hold{""}, Holds...)).Draw(t, "hold"); hold != "" {
				end.Hold = string(hold)
			}
			r.Ends = append(r.Ends, end)
		}
		return r
	})
}

// What a messenger does to a link: white space put in anywhere, as such or escaped by an
// address field, changes nothing; any cut is noticed.
func TestRequestSurvivesMessengers(t *testing.T) {
	m := mustCore(t)
	rapid.Check(t, func(rt *rapid.T) {
		fragment := m.encodeRequest(t, requests().Draw(rt, "request"))
		if strings.Trim(fragment, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-.,=&%") != "" {
			rt.Fatalf("%q holds a sign a messenger may break at", fragment)
		}
		var whole openedRequest
		m.run(t, &whole, "request.decodeRequest(a[0])", fragment)
		if !whole.OK {
			rt.Fatalf("%q: %+v", fragment, whole)
		}
		if again := m.encodeRequest(t, whole.Request); again != fragment {
			rt.Fatalf("encoded again:\n%s\n%s", fragment, again)
		}
		at := rapid.IntRange(1, len(fragment)-1).Draw(rt, "at")
		for _, space := range []string{" ", "\n", "\r\n ", "\u00a0", "%20"} {
			var wrapped openedRequest
			m.run(t, &wrapped, "request.decodeRequest(a[0])", fragment[:at]+space+fragment[at:])
			if diff := cmp.Diff(whole, wrapped); diff != "" {
				rt.Fatalf("%q put in at %d of %s:\n%s", space, at, fragment, diff)
			}
		}
		var stuck openedRequest
		m.run(t, &stuck, "request.decodeRequest(a[0])", fragment+rapid.SampledFrom([]string{".", ").", ">", "%22", "&x=1"}).Draw(rt, "stuck"))
		if diff := cmp.Diff(whole, stuck); diff != "" {
			rt.Fatalf("with a sign stuck to its end:\n%s", diff)
		}
		var cut openedRequest
		m.run(t, &cut, "request.decodeRequest(a[0])", fragment[:at])
		if cut.OK || cut.Why == "empty" || cut.Says == "" {
			rt.Fatalf("cut to %q and taken for %+v", fragment[:at], cut)
		}
	})
}

// Links of strangers' making open to a sentence, never to a form.
func TestRequestJunk(t *testing.T) {
	m := mustCore(t)
	var sealed string
	m.run(t, &sealed, "core.seal(a[0])", "take=%zz&say=%&hold=glue&take2=everything")
	for _, c := range []struct{ fragment, why string }{
		{"", "empty"}, {"#", "empty"}, {"  ", "empty"},
		{"take=cap", "unreadable"}, {"check=1.2", "broken"}, {"check=&take=cap", "broken"},
		{"check=8.zzzzzz&take=cap", "broken"}, {sealed, "unreadable"}, {"main", "unreadable"},
		{strings.Repeat("take=cap&", 9000), "unreadable"},
	} {
		var got openedRequest
		m.run(t, &got, "request.decodeRequest(a[0])", c.fragment)
		if got.OK || got.Why != c.why || got.Says == "" {
			t.Errorf("%.40q: got %+v, want it refused as %s", c.fragment, got, c.why)
		}
	}
}

// The longest request in plain words stays below 2,000 characters with room for an origin.
func TestRequestStaysShort(t *testing.T) {
	m := mustCore(t)
	end := requestEnd{Hold: "outside-clip", Faces: "over-caps", Take: []string{"cap", "across"}}
	random := rand.New(rand.NewSource(1))
	var words strings.Builder
	for words.Len() < 1000 {
		fmt.Fprintf(&words, "%c%s, ", 'a'+rune(random.Intn(26)), strings.Repeat("e", random.Intn(9)))
	}
	got := m.encodeRequest(t, measureRequest{Ends: []requestEnd{end, end}, Unit: "in", From: words.String(), Question: words.String()})
	if len(got) > 1900 {
		t.Errorf("%d characters, want at most 1900", len(got))
	}
}

// An answer travels sealed: wrapped it is the same, cut it says so.
func TestSealedAddress(t *testing.T) {
	m := mustCore(t)
	plain, err := m.Address(Query{Ends: []QueryEnd{{Hold: "strap", Cap: []string{"1.062 in"}, Across: []string{"3.219 in", "3 7/32"}}}})
	if err != nil {
		t.Fatal(err)
	}
	var sealed string
	m.run(t, &sealed, "core.seal(a[0])", plain)
	var want decoded
	m.run(t, &want, "core.decodeAddress(a[0])", plain)
	for at := 1; at < len(sealed); at++ {
		var wrapped, cut decoded
		m.run(t, &wrapped, "core.decodeAddress(a[0])", "#"+sealed[:at]+" \n"+sealed[at:])
		if diff := cmp.Diff(want, wrapped); diff != "" {
			t.Fatalf("wrapped at %d:\n%s", at, diff)
		}
		m.run(t, &cut, "core.decodeAddress(a[0])", sealed[:at])
		if len(cut.Complaints) == 0 {
			t.Errorf("cut to %q: nothing is said of it: %+v", sealed[:at], cut)
		}
	}
}

func FuzzDecodeRequest(f *testing.F) {
	m := mustCore(f)
	for _, s := range []string{"take=cap", "check=8.1&take=cap", "#check=%&__proto__=1", "check=0.ztntfp&", "say=%F0%9F%98%80"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, fragment string) {
		fragment = strings.ToValidUTF8(fragment, "\ufffd")
		// The seal is no secret: what is behind it is a stranger's too.
		for _, expression := range []string{"request.decodeRequest(a[0])", "request.decodeRequest(core.seal(a[0]))"} {
			var got openedRequest
			m.run(t, &got, expression, fragment)
			if got.OK == (got.Says != "") || got.OK && (len(got.Request.Ends) < 1 || len(got.Request.Ends) > 2) {
				t.Errorf("%q gives %+v", fragment, got)
			}
		}
	})
}
