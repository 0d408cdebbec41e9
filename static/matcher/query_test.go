package matcher

import (
	"strings"
	"testing"
)

func TestDecodeQuery(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", "is empty"},
		{"{", "query:1:2: the JSON ends too early"},
		{`{"ends": [}`, "query:1:"},
		{`{"end": []}`, `unknown field "end"`},
		{"{\"ends\": [\n  {\"hold\": 7}]}", "query:2:"},
		{`{"ends": [{"hold": "plate", "cap": [27.0]}]}`, "want text in quotes"},
		{`{"ends": {}}`, "want a list"},
		{`[]`, "want an object"},
		{`{"ends": []} {}`, "something follows"},
		{`{"ends": [{"hold": "` + strings.Repeat("x", MaxQuery) + `"}]}`, "at most 65536"},
	} {
		_, err := DecodeQuery([]byte(c.text))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.40q: got %v, want an error with %q", c.text, err, c.want)
		}
	}
	q, err := DecodeQuery([]byte(`{"ends": [{"hold": "plate", "cap": ["27 mm"]}], "tool": "tape"}`))
	if err != nil || len(q.Ends) != 1 || q.Tool != "tape" {
		t.Errorf("got %+v, %v", q, err)
	}
}

// The browser hands the core what it likes; the core never throws and always says why
// it cannot use a query.
func TestQueryOfAnyShape(t *testing.T) {
	m := mustCore(t)
	for _, c := range []struct{ query, want string }{
		{`null`, "no query"},
		{`[]`, "no query"},
		{`"ends"`, "no query"},
		{`{}`, "one or two ends"},
		{`{ends: "x"}`, "one or two ends"},
		{`{ends: [{}, {}, {}]}`, "not 3"},
		{`{ends: [null]}`, "must be an object"},
		{`{ends: [{hold: "glue"}]}`, "Use outside-clip, inside-clip"},
		{`{ends: [{hold: {}}]}`, "is no hold"},
		{`{ends: [{hold: "plate", faces: "sideways"}]}`, "is no faces"},
		{`{ends: [{hold: "plate", faces: "over-caps"}]}`, "Measure it under the plates"},
		{`{ends: [{hold: "plate", taken: "yoke", cap: ["1.875 in"], clip: ["1.5 mm"]}]}`, "has no clips"},
		{`{ends: [{hold: "plate", cap: ["1.875 in"], clip: ["1.5 mm"]}]}`, "bare yoke only"},
		{`{ends: [{hold: "inside-clip", taken: "yoke", cap: ["27 mm"], clip: ["15 mm"]}]}`, "No clip is 15.00 mm"},
		{`{ends: [{hold: "inside-clip", taken: "yoke", faces: "groove-outer"}]}`, "Leave the faces out"},
		{`{ends: [{hold: "wing", taken: "yoke", cap: ["27 mm"]}]}`, "keyway"},
		{`{ends: [{hold: "staked", taken: "yoke", cap: ["27 mm"], across: ["70 mm"]}]}`, "Give its bores alone"},
		{`{ends: [{hold: "unknown", taken: "yoke", cap: ["27 mm"], across: ["70 mm"]}]}`, "Look how it holds the caps"},
		{`{ends: [{hold: "plate", cap: "27 mm"}]}`, "list of readings"},
		{`{ends: [{hold: "plate", cap: [27, null]}]}`, "must be text"},
		{`{ends: [{hold: "plate", cap: Array(10000).fill("27 mm")}]}`, "10000 readings"},
		{`{ends: [{hold: "plate", cap: ["1.875 mm"]}]}`, "1.875 in would fit"},
		{`{ends: [{hold: "plate", cap: ["5.312 in"], across: ["1.875 in"]}]}`, "each other's place"},
		{`{ends: [{hold: "plate", cap: ["1.875 in"]}, {hold: "plate"}]}`, "second end has no readings"},
		{`{ends: [{hold: "plate", cap: ["1.875 in"]}], tool: "laser"}`, "is no tool"},
		{`{ends: [{hold: "plate", cap: ["1.875"]}], unit: "cm"}`, "is no unit"},
		{`{ends: [{hold: "plate", cap: ["1.875"]}], condition: "shiny"}`, "is no condition"},
	} {
		var a Answer
		m.run(t, &a, "core.identify({format: 1, version: 'test', rows: []}, "+c.query+")")
		if a.Verdict != MeasureAgain || len(a.Complaints) == 0 || !strings.Contains(a.Complaints[0].Says, c.want) {
			t.Errorf("%s: got %s %+v, want a complaint with %q", c.query, a.Verdict, a.Complaints, c.want)
		}
	}
}

func TestChartOfAnotherFormat(t *testing.T) {
	m := mustCore(t)
	var says string
	m.run(t, &says, `(() => { try { core.identify({format: 2, version: "", rows: []}, {}); return "" } catch (e) { return e.message } })()`)
	if !strings.Contains(says, "Load the page again") {
		t.Errorf("got %q", says)
	}
}
