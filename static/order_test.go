package static_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// The slip of the demo: an inspection trolley rebuilt from a car's gearbox and a
// tractor's axle. The readings are invented; the figures beside them are the chart's.
func trolley() object {
	return object{
		"from": "The shed", "fromReach": "+1 555 0100", "job": "Inspection trolley", "note": "Both by Friday?",
		"joints": []any{
			object{"count": 2, "place": "gearbox end", "grease": "sealed", "extras": []any{object{"item": "clips", "count": 4}, object{"item": "straps"}},
				"query": object{"unit": "in", "tool": "digital-caliper", "condition": "used", "ends": []any{object{"hold": "outside-clip", "faces": "over-caps",
					"cap": []any{"1.187 in", "1.188 in"}, "across": []any{"3.626 in", "3.627 in"}}}}},
			object{"count": 1, "row": "7260-to-1310", "extras": []any{}},
		},
	}
}

const factsOf = `a[0].joints.map(j => Order.factsOf(j, chart, slips))`

func TestSlipFacts(t *testing.T) {
	b := newBench(t)
	var facts []struct {
		Settled    string
		Says       string
		Conversion bool
		Sizes      []struct {
			Names []string
			Row   struct {
				Ends []struct {
					Like   string
					Cap    struct{ Text, Converted, Basis string }
					Across struct{ Text, Note string }
				}
			}
		}
		Measured  []struct{ Estimate struct{ Quantity string } }
		NotThese  []struct{ Names []string }
		Fasteners []struct{ Label, Text, Basis string }
		Open      []string
	}
	b.run(t, &facts, factsOf, trolley())
	first, second := facts[0], facts[1]
	if first.Settled != "identified" || !slices.Equal(first.Sizes[0].Names, []string{"1350", "30.2x92", "size 6"}) {
		t.Errorf("the first joint is %s %v", first.Settled, first.Sizes[0].Names)
	}
	end := first.Sizes[0].Row.Ends[0]
	if end.Cap.Text != "1.188 in" || end.Cap.Converted != "30.18 mm" || end.Cap.Basis != "common practice" || end.Across.Note != "over the caps" {
		t.Errorf("its figures are %+v", end)
	}
	if len(first.Measured) != 2 || len(first.NotThese) == 0 || slices.Contains(first.NotThese[0].Names, "1350") {
		t.Errorf("measured %v, not to be mixed up with %v", first.Measured, first.NotThese)
	}
	for _, other := range first.NotThese {
		for _, name := range other.Names {
			if slices.Contains(first.Sizes[0].Names, name) {
				t.Errorf("%s is the size and not to be mixed up with itself", name)
			}
		}
	}
	if len(first.Fasteners) != 1 || first.Fasteners[0].Text != "3/8-24" || first.Fasteners[0].Basis != "memory" {
		t.Errorf("threads %v, want the U-bolt's 3/8-24 from memory", first.Fasteners)
	}
	if !slices.Equal(first.Open, []string{"clip-thickness", "straps"}) || !slices.Equal(second.Open, []string{"grease"}) {
		t.Errorf("open: %v and %v", first.Open, second.Open)
	}
	if second.Settled != "chosen" || !second.Conversion || second.Sizes[0].Row.Ends[1].Like != "1310" || !strings.Contains(second.Says, "No reading") {
		t.Errorf("the second joint is %+v", second)
	}
}

// A size that readings leave open is never named: several, none, or a row that is not there.
func TestSlipNamesNothingOpen(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		name, settled string
		joint         object
		sizes         int
	}{
		{"several sizes", "between", object{"query": object{"unit": "mm", "tool": "tape", "ends": []any{object{"hold": "outside-clip", "faces": "over-caps", "cap": []any{"27 mm"}}}}}, 3},
		{"not in the chart", "not-in-chart", object{"query": object{"ends": []any{object{"hold": "outside-clip", "faces": "over-caps", "cap": []any{"33.33 mm"}, "across": []any{"101.1 mm"}}}}}, 0},
		{"a hold and nothing else", "measure-again", object{"query": object{"ends": []any{object{"hold": "strap"}}}}, 0},
		{"no such row", "open", object{"row": "1311"}, 0},
		{"nothing", "open", object{}, 0},
	} {
		c.joint["count"], c.joint["extras"] = 1, []any{}
		slip := object{"joints": []any{c.joint}}
		var facts []struct {
			Settled string
			Sizes   []any
			Open    []string
		}
		b.run(t, &facts, factsOf, slip)
		if facts[0].Settled != c.settled || len(facts[0].Sizes) != c.sizes || !slices.Contains(facts[0].Open, "size") {
			t.Errorf("%s: %+v", c.name, facts[0])
		}
		var text string
		b.run(t, &text, `Order.textMessage(a[0], `+factsOf+`)`, slip)
		if !strings.Contains(text, "size open") {
			t.Errorf("%s: the message says %q", c.name, text)
		}
	}
}

func TestSlipTexts(t *testing.T) {
	b := newBench(t)
	var text, mail, subject string
	b.run(t, &text, `Order.textMessage(a[0], `+factsOf+`)`, trolley())
	b.run(t, &mail, `Order.mailText(a[0], `+factsOf+`, "2026-11-25-0000000")`, trolley())
	b.run(t, &subject, `Order.mailSubject(a[0], `+factsOf+`)`, trolley())
	for _, want := range []string{"2 x 1350 (also sold as 30.2x92, size 6)", "cap 1.188 in (≈ 30.18 mm)", "across 3.625 in (≈ 92.08 mm)", "measured cap 1.18", "Not the 1355",
		"sealed for life", "4 clips, straps", "1 x 7260-to-1310", "clip inside", "Chosen by name, not measured", "Grease: with fitting / sealed?", "The shed, +1 555 0100"} {
		if !strings.Contains(text, want) {
			t.Errorf("the message lacks %q:\n%s", want, text)
		}
	}
	for _, want := range []string{"Identified by readings.", "[common practice]", "2 readings", "Read with a digital caliper; the parts used and clean.", "Not to be mixed up with: 1355",
		"U-bolt 3/8-24 [memory]", "? thickness of the clips, number of straps", "between the inner groove faces", "elsewhere 27 mm (≈ 1.063 in) [memory]", "Both by Friday?",
		"Not checked: whether it fits your yokes, load", "chart of 2026-11-25-0000000"} {
		if !strings.Contains(mail, want) {
			t.Errorf("the mail lacks %q:\n%s", want, mail)
		}
	}
	if subject != "Enquiry: universal joint 1350, 7260-to-1310, Inspection trolley" {
		t.Errorf("the subject is %q", subject)
	}
}

// Twins that print the same figures stand together under them, each name once; one that
// prints other digits has a line of its own.
func TestSlipPrintings(t *testing.T) {
	b := newBench(t)
	var got []struct {
		Names []string
		Line  string
	}
	b.run(t, &got, `(() => {
		const row = (id) => slips.rows.find(r => r.id === id), a = row("1310"), other = row("1330");
		return Order.printings([a, {...other, id: "b", also: []}, {...a, id: "c", also: ["d", a.id]}]);
	})()`)
	if len(got) != 2 || got[0].Names[0] != "1310" || !slices.Equal(got[0].Names[len(got[0].Names)-2:], []string{"c", "d"}) || !slices.Equal(got[1].Names, []string{"b"}) {
		t.Fatalf("got %+v", got)
	}
	if !strings.Contains(got[0].Line, "1.062 in") || got[0].Line == got[1].Line {
		t.Errorf("the lines are %q and %q", got[0].Line, got[1].Line)
	}
}

// The uncertainty is rounded up, in either unit, and the value to the nearest.
func TestSlipMeasured(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		value, uncertainty float64
		lead, want         string
	}{
		{30.15, 0.05, "mm", "30.15 ± 0.05 mm (1.1870 ± 0.0020 in)"}, // 0.05 / 25.4 = 0.00197
		{92.075, 0.0602, "in", "3.6250 ± 0.0024 in (92.08 ± 0.07 mm)"},
		{25.4, 0.001, "in", "1.0000 ± 0.0001 in (25.40 ± 0.01 mm)"},
	} {
		var got string
		b.run(t, &got, `Order.measured({value: a[0], uncertainty: a[1]}, a[2])`, c.value, c.uncertainty, c.lead)
		if got != c.want {
			t.Errorf("%v ± %v mm: got %q, want %q", c.value, c.uncertainty, got, c.want)
		}
	}
}

const document = `Order.enquiryDocument(a[0], ` + factsOf + `, chart.version, {schema: "https://chart.example.org/schema/enquiry-1.json", link: "https://chart.example.org/order/#",
	identification: j => j.query ? "https://chart.example.org/identify/#" + CapspanCore.encodeAddress(j.query) : undefined})`

// The document of every row, and of the demo, is valid by the published schema; spoiled it is not.
func TestSlipDocument(t *testing.T) {
	b, schema := newBench(t), mustSchema(t, "enquiry-1.json")
	var rows []string
	b.run(t, &rows, `slips.rows.map(r => r.id)`)
	if len(rows) < 100 {
		t.Fatalf("%d rows", len(rows))
	}
	slips := []object{trolley(), {"joints": []any{object{"count": 1, "extras": []any{}}}}}
	for _, id := range rows {
		slips = append(slips, object{"joints": []any{object{"count": 1, "row": id, "extras": []any{}}}})
	}
	for _, slip := range slips {
		var got object
		b.run(t, &got, document, slip)
		if err := valid(t, schema, got); err != nil {
			t.Errorf("%v: %v", slip, err)
		}
		joint := got["joints"].([]any)[0].(object)
		delete(joint, "settled")
		if valid(t, schema, got) == nil {
			t.Fatal("a joint that does not say how its size came about is valid")
		}
	}
}

// Published figures never stand on a slip without their source.
func TestSlipNamesSources(t *testing.T) {
	b := newBench(t)
	var bare, published int
	b.run(t, &bare, `slips.rows.flatMap(r => [...r.ends.flatMap(e => [e.hold, e.cap, e.across]), ...r.values, ...r.fasteners]).flatMap(c => [c, ...(c.others ?? [])])
		.filter(c => c.basis === "published" && !(c.from?.length > 0)).length`)
	b.run(t, &published, `slips.rows.flatMap(r => r.ends.flatMap(e => [e.cap, e.across])).filter(c => c.basis === "published").length`)
	if bare > 0 || published < 10 {
		t.Errorf("%d of %d published figures name no source", bare, published)
	}
}

func TestSlipAdd(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ typed, row, says string }{
		{"1310", "1310", ""}, {" 1260 ", "1310", ""}, {"30.2 × 92", "30.2x92", ""}, {"https://x.example/joint/2c/", "2c", ""}, {"3R", "3R", ""},
		{"", "", "Write the name"}, {"99999", "", "no size in the chart"}, {"https://x.example/identify/#", "", "empty"}, {"#check=9.9&joint=1", "", "lost a piece"},
		{"https://x.example/identify/#hold=strap&cap=1.062in", "", ""},
	} {
		var got struct {
			OK     bool
			Says   string
			Joints []struct{ Row string }
		}
		b.run(t, &got, `Order.jointsFrom(a[0], slips)`, c.typed)
		if got.OK != (c.says == "") || !strings.Contains(got.Says, c.says) || got.OK && got.Joints[0].Row != c.row {
			t.Errorf("%q gives %+v, want row %q or %q", c.typed, got, c.row, c.says)
		}
	}
}

// A name that several sizes have chooses none of them.
func TestSlipAddAmbiguous(t *testing.T) {
	b := newBench(t)
	var got struct {
		OK   bool
		Says string
	}
	b.run(t, &got, `Order.jointsFrom("both", {...slips, rows: slips.rows.map((r, n) => n < 2 ? {...r, also: ["Both"]} : r)})`)
	if got.OK || !strings.Contains(got.Says, "several sizes") {
		t.Errorf("got %+v", got)
	}
}

func slipsDrawn() *rapid.Generator[object] {
	return rapid.Custom(func(t *rapid.T) object {
		slip := object{}
		for _, name := range []string{"shop", "shopReach", "from", "fromReach", "job", "note"} {
			if text := rapid.StringN(0, 70, -1).Draw(t, name); text != "" {
				slip[name] = text
			}
		}
		var joints []any
		for i := range rapid.IntRange(1, 3).Draw(t, "joints") {
			joint := object{"count": rapid.IntRange(1, 99).Draw(t, "count"), "extras": []any{}}
			if rapid.Bool().Draw(t, "placed") {
				joint["place"] = rapid.StringN(1, 70, -1).Draw(t, "place")
			}
			if rapid.Bool().Draw(t, "greased") {
				joint["grease"] = rapid.SampledFrom([]string{"fitting", "sealed"}).Draw(t, "grease")
			}
			for _, item := range []string{"clips", "straps", "u-bolts", "plate-bolts"} {
				if rapid.Bool().Draw(t, item) {
					joint["extras"] = append(joint["extras"].([]any), object{"item": item, "count": rapid.IntRange(1, 99).Draw(t, item+" many")})
				}
			}
			if rapid.Bool().Draw(t, "measured") {
				joint["query"] = object{"unit": "in", "ends": []any{object{"hold": "outside-clip", "cap": []any{fmt.Sprintf("1.06%d in", i)}, "across": []any{"3 7/32 in"}}}}
			} else {
				joint["row"] = rapid.SampledFrom([]string{"1310", "1310-big-cap", "30.2x92", "7260-to-1310"}).Draw(t, "row")
			}
			joints = append(joints, joint)
		}
		slip["joints"] = joints
		return slip
	})
}

// What is written is read back, whatever a messenger does to it; a cut is always told.
func TestSlipAddressSurvives(t *testing.T) {
	b := newBench(t)
	type opened struct {
		OK      bool
		Why     string
		Says    string
		Slip    object
		Remarks []string
	}
	rapid.Check(t, func(rt *rapid.T) {
		slip := slipsDrawn().Draw(rt, "slip")
		var fragment, again string
		b.run(t, &fragment, `Order.encodeSlip(a[0])`, slip)
		var whole opened
		b.run(t, &whole, `Order.decodeSlip(a[0])`, "#"+fragment)
		if !whole.OK || len(whole.Remarks) > 0 {
			rt.Fatalf("%s: %+v", fragment, whole)
		}
		b.run(t, &again, `Order.encodeSlip(a[0])`, whole.Slip)
		if again != fragment {
			rt.Fatalf("encoded again:\n%s\n%s", fragment, again)
		}
		for i, joint := range slip["joints"].([]any) {
			was, is := joint.(object), whole.Slip["joints"].([]any)[i].(object)
			var count float64 = is["count"].(float64)
			if int(count) != was["count"] || is["grease"] != was["grease"] || is["row"] != was["row"] || len(is["extras"].([]any)) != len(was["extras"].([]any)) || (is["query"] == nil) != (was["query"] == nil) {
				rt.Fatalf("joint %d was %v and is %v", i, was, is)
			}
		}
		at := rapid.IntRange(1, len(fragment)-1).Draw(rt, "at")
		for _, space := range []string{" ", "\r\n ", "%20"} {
			var wrapped opened
			b.run(t, &wrapped, `Order.decodeSlip(a[0])`, fragment[:at]+space+fragment[at:])
			if diff := cmp.Diff(whole, wrapped); diff != "" {
				rt.Fatalf("%q put in at %d of %s:\n%s", space, at, fragment, diff)
			}
		}
		var cut opened
		b.run(t, &cut, `Order.decodeSlip(a[0])`, fragment[:at])
		if cut.OK || cut.Says == "" {
			rt.Fatalf("cut to %q and taken for %+v", fragment[:at], cut)
		}
	})
}

// A reading that could not be read keeps its blanks through the seal: "1 1" is not 11.
func TestSlipKeepsUnreadable(t *testing.T) {
	b := newBench(t)
	var got struct {
		OK   bool
		Slip struct {
			Joints []struct {
				Query struct{ Ends []struct{ Cap []string } }
			}
		}
	}
	b.run(t, &got, `Order.decodeSlip(Order.encodeSlip({joints: [{count: 1, extras: [], query: {ends: [{hold: "strap", cap: ["1 1 0"]}]}}]}))`)
	if !got.OK || strings.ReplaceAll(got.Slip.Joints[0].Query.Ends[0].Cap[0], "\u00a0", " ") != "1 1 0" {
		t.Errorf("got %+v", got)
	}
}

// Whatever the address holds, there is a slip or a sentence, and what is made of a slip is valid.
func FuzzDecodeSlip(f *testing.F) {
	b, schema := newBench(f), mustSchema(f, "enquiry-1.json")
	for _, s := range []string{"joint=1&row=1310", "hold=strap&cap=1.062in", "row=1310", "joint=0&joint=99&joint=x", "joint=1&with=clips.4,clips,straps.0&grease=oil", "check=1.1&joint=1",
		"from=%zz&joint=2&row=%F0%9F%98%80", "joint=1&joint=1&joint=1&joint=1&joint=1", "__proto__=1&joint=1&constructor=2", "joint=1&hold=wing&across=79.35mm&hold2=plate"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, fragment string) {
		fragment = strings.ToValidUTF8(fragment, "\ufffd")
		for _, expression := range []string{"Order.decodeSlip(a[0])", `Order.decodeSlip(CapspanCore.seal(a[0].replace(/\s/g, "")))`} {
			var got struct {
				OK      bool
				Says    string
				Slip    object
				Remarks []string
			}
			b.run(t, &got, expression, fragment)
			if got.OK == (got.Says != "") {
				t.Fatalf("%q gives %+v", fragment, got)
			}
			if !got.OK {
				continue
			}
			joints := got.Slip["joints"].([]any)
			if len(joints) < 1 || len(joints) > 3 || len(got.Remarks) > 6 {
				t.Fatalf("%q gives %d joints and %d remarks", fragment, len(joints), len(got.Remarks))
			}
			var doc any
			b.run(t, &doc, document, got.Slip)
			if err := valid(t, schema, doc); err != nil {
				t.Errorf("%q: %v", fragment, err)
			}
			var text string
			b.run(t, &text, `Order.mailText(a[0], `+factsOf+`, chart.version) + Order.textMessage(a[0], `+factsOf+`)`, got.Slip)
			if text == "" || strings.Contains(text, "undefined") && !strings.Contains(fragment, "undefined") {
				t.Errorf("%q: the texts are %.300q", fragment, text)
			}
		}
	})
}
