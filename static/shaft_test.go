package static_test

import (
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

// The record of the demo: its figures are invented.
func frontShaft() object {
	return object{
		"title": "Trolley, front shaft", "job": "Inspection trolley", "date": "2026-11-20", "notes": "Guard loop fitted.\nGrease in spring.",
		"joints": []any{
			object{"place": "gearbox end", "identification": "hold=outside-clip&cap=1.187in", "clips": "1.50 mm, both sides",
				"found": object{"settled": "identified", "names": []any{"1350", "30.2x92"}, "says": "This is the 1350 size.", "chart": "2026-11-25-0000000"}},
			object{"place": "axle end", "row": "1310"},
		},
		"figures": []any{object{"label": "Flange to flange", "value": "640 mm"}},
		"calculations": []any{object{"calculation": "angles", "fragment": "joints=2&side1=3deg", "title": "Angles", "given": []any{object{"label": "Side view", "value": "3", "unit": "°"}}, "limits": []any{}, "unchecked": []any{"The balance."},
			"lines": []any{object{"label": "Residual angle", "value": "0.50", "unit": "°", "formula": "cos θ = cos β1 / cos β2", "source": []any{"derived"}}}}},
	}
}

type readRecord struct {
	OK         bool
	Says       string
	Record     object
	Complaints []struct{ At, Says string }
}

func (b *bench) readRecord(t testing.TB, text string) readRecord {
	t.Helper()
	var got readRecord
	b.run(t, &got, `Shaft.readRecord(a[0])`, text)
	return got
}

// recordText is a file of the record.
func (b *bench) recordText(t testing.TB, record object) string {
	t.Helper()
	var text string
	b.run(t, &text, `JSON.stringify(Shaft.recordDocument(a[0], "https://chart.example.org/schema/shaft-1.json"), null, 2)`, record)
	return text
}

// What is saved is valid by the published schema and is read back whole.
func TestShaftFile(t *testing.T) {
	b, schema := newBench(t), mustSchema(t, "shaft-1.json")
	record := frontShaft()
	text := b.recordText(t, record)
	var document object
	if err := json.Unmarshal([]byte(text), &document); err != nil {
		t.Fatal(err)
	}
	if err := valid(t, schema, document); err != nil {
		t.Error(err)
	}
	got := b.readRecord(t, text)
	if diff := cmp.Diff(record, got.Record); diff != "" || !got.OK || len(got.Complaints) > 0 {
		t.Errorf("read back %v %v (-saved +read):\n%s", got.OK, got.Complaints, diff)
	}
	delete(document, "kind")
	if valid(t, schema, document) == nil {
		t.Error("a file that does not say what it is is valid")
	}
}

// Every fault is named with its place, and all around it is kept.
func TestShaftComplaints(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct {
		name, old, new string
		at, says       string
		kept           string // still there
	}{
		{"a number for a text", `"1.50 mm, both sides"`, `1.5`, "joints[0].clips", "It is 1.5, where a text in quotes", "axle end"},
		{"a text for a list", `"figures": [`, `"figures": "none", "xfigures": [`, "figures", "where a list", "gearbox end"},
		{"a joint that is none", `"joints": [`, `"joints": [7,`, "joints[0]", "where a part in { }", "axle end"},
		{"a field of nobody's", `"title": "Trolley`, `"colour": "red", "title": "Trolley`, "colour", "does not know it", "gearbox end"},
		{"a day that is none", `2026-11-20`, `20.11.2026`, "date", "a day such as", "gearbox end"},
		{"a verdict of another kind", `"identified"`, `"safe"`, "joints[0].found.settled", "one of identified", "axle end"},
		{"a calculation that leads out", `"angles"`, `"../../evil"`, "calculations[0].calculation", "name of a calculation", "640 mm"},
		{"a later form", `"format": 1`, `"format": 2`, "format", "later edition", "640 mm"},
		{"too long", `axle end`, strings.Repeat("x", 200), "joints[1].place", "longer than 40", "gearbox end"},
		{"cut off", `"notes"`, "", "", "damaged at line", "gearbox end"},
	} {
		text := b.recordText(t, frontShaft())
		if !strings.Contains(text, c.old) {
			t.Fatalf("%s: the file does not hold %q", c.name, c.old)
		}
		spoiled := strings.Replace(text, c.old, c.new, 1)
		if c.new == "" {
			spoiled, _, _ = strings.Cut(text, c.old)
		}
		got := b.readRecord(t, spoiled)
		found := false
		for _, complaint := range got.Complaints {
			found = found || complaint.At == c.at && strings.Contains(complaint.Says, c.says)
		}
		if !got.OK || !found || !strings.Contains(fmt.Sprint(got.Record), c.kept) {
			t.Errorf("%s: %+v; want %q at %q, and %q kept", c.name, got, c.says, c.at, c.kept)
		}
	}
	for text, says := range map[string]string{"": "empty", "hello": "line 1, column 1", "[]": "no shaft record", `{"kind": "enquiry"}`: "enquiry", "{}": "no shaft record", "null": "no shaft record",
		strings.Repeat(" ", 1_000_001) + "{}": "too large", strings.Repeat("[", 100_000): "column 41"} {
		if got := b.readRecord(t, text); got.OK || !strings.Contains(got.Says, says) {
			t.Errorf("%.30q: %+v, want %q", text, got, says)
		}
	}
}

// rescue agrees with JSON.parse on what is whole, and of what is cut keeps a beginning.
func TestShaftRescue(t *testing.T) {
	b := newBench(t)
	text := b.recordText(t, frontShaft())
	var whole object
	if err := json.Unmarshal([]byte(text), &whole); err != nil {
		t.Fatal(err)
	}
	for at := range len(text) {
		if at > 0 && text[at]&0xC0 == 0x80 {
			continue // inside a character
		}
		var got struct {
			Value any
			Fault *struct {
				Line, Column int
				Found        string
			}
		}
		b.run(t, &got, `Shaft.rescue(a[0])`, text[:at])
		if got.Fault == nil || got.Fault.Line < 1 || got.Fault.Line > 1+strings.Count(text[:at], "\n") {
			t.Fatalf("cut at %d: %+v", at, got)
		}
		if got.Value != nil && !partOf(got.Value, whole) {
			t.Fatalf("cut at %d: %v was never in the file", at, got.Value)
		}
	}
}

// partOf reports whether got is want with some of its end missing.
func partOf(got, want any) bool {
	switch g := got.(type) {
	case object:
		w, ok := want.(object)
		for key, value := range g {
			ok = ok && w[key] != nil && partOf(value, w[key])
		}
		return ok
	case []any:
		w, ok := want.([]any)
		if !ok || len(g) > len(w) {
			return false
		}
		for i := range g {
			ok = ok && partOf(g[i], w[i])
		}
		return ok
	}
	return reflect.DeepEqual(got, want)
}

// shelf runs a script over a store of the test's own, which can be full, forbidden or
// written to by another window.
const shelf = `(() => {
	const kept = new Map(), fault = {};
	const store = {
		get length() { if (fault.all) throw new Error("forbidden"); return kept.size },
		key: n => [...kept.keys()][n] ?? null,
		getItem: k => { if (fault.all) throw new Error("forbidden"); return kept.get(k) ?? null },
		setItem: (k, v) => { if (fault.full || fault.all) throw new Error("full"); if (!fault.mute) kept.set(k, v) },
		removeItem: k => { if (fault.all) throw new Error("forbidden"); kept.delete(k) },
	};
	const shelf = Shelf(() => { if (fault.name) throw new Error("no such name"); return store });
	const record = a[0];
	%s
})()`

func (b *bench) shelf(t testing.TB, out any, script string, args ...any) {
	t.Helper()
	b.run(t, out, strings.Replace(fmt.Sprintf(shelf, script), "Shelf(", `(s => Shaft.shelfOf(s, "x"))(`, 1), args...)
}

func TestShelf(t *testing.T) {
	b := newBench(t)
	for _, c := range []struct{ name, script, want string }{
		{"kept and taken", `const k = shelf.keep("a1", record, ""); return [k.is, shelf.take("a1").record.title, shelf.list().entries.length]`, `["kept","Trolley, front shaft",1]`},
		{"kept again", `const k = shelf.keep("a1", record, ""); record.title = "Other"; return [shelf.keep("a1", record, k.text).is, shelf.take("a1").record.title]`, `["kept","Other"]`},
		{"another window wrote", `const k = shelf.keep("a1", record, ""); shelf.keep("a1", {...record, title: "Theirs"}, k.text); return [shelf.keep("a1", {...record, title: "Ours"}, k.text).is, shelf.take("a1").record.title]`, `["changed","Theirs"]`},
		{"another window deleted", `const k = shelf.keep("a1", record, ""); shelf.remove("a1"); return [shelf.keep("a1", record, k.text).is]`, `["kept"]`},
		{"a new one never falls on an old one", `shelf.keep("a1", record, ""); return [shelf.keep("a1", {...record, title: "New"}, "").is, shelf.take("a1").record.title]`, `["changed","Trolley, front shaft"]`},
		{"full", `fault.full = true; return [shelf.keep("a1", record, "").is, shelf.list().able, shelf.take("a1").is]`, `["refused",true,"none"]`},
		{"takes nothing and says nothing", `fault.mute = true; return [shelf.keep("a1", record, "").is]`, `["refused"]`},
		{"forbidden", `fault.all = true; return [shelf.keep("a1", record, "").is, shelf.list().able, shelf.take("a1").is, shelf.remove("a1"), shelf.putBack("a1", "x")]`, `["refused",false,"none",null,false]`},
		{"no store at all", `fault.name = true; return [shelf.keep("a1", record, "").is, shelf.list().able]`, `["refused",false]`},
		{"damaged", `kept.set("capspan-shaft-b2", "{\"kind\": \"sha"); const l = shelf.list(); return [l.entries.length, l.damaged[0].id, l.damaged[0].text, shelf.take("b2").is, kept.size]`, `[0,"b2","{\"kind\": \"sha","damaged",1]`},
		{"half damaged", `const k = shelf.keep("a1", record, ""); kept.set("capspan-shaft-a1", k.text.slice(0, 400)); const t = shelf.take("a1"); return [t.is, t.record.title, t.complaints.length > 0]`, `["here","Trolley, front shaft",true]`},
		{"deleted and put back", `const k = shelf.keep("a1", record, ""); const text = shelf.remove("a1"); return [shelf.list().entries.length, shelf.putBack("a1", text), shelf.take("a1").record.title]`, `[0,true,"Trolley, front shaft"]`},
		{"put back where another stands", `const k = shelf.keep("a1", record, ""); return [shelf.putBack("a1", "x"), shelf.take("a1").is]`, `[false,"here"]`},
		{"what is not ours", `kept.set("capspan-card", "{}"); kept.set("capspan-shaft-", "{}"); kept.set("capspan-shaft-../x", "{}"); return [shelf.list().entries.length + shelf.list().damaged.length, shelf.idOf("capspan-shaft-a1"), shelf.idOf(null)]`, `[0,"a1",null]`},
	} {
		var got json.RawMessage
		b.shelf(t, &got, c.script, frontShaft())
		if string(got) != c.want {
			t.Errorf("%s: got %s, want %s", c.name, got, c.want)
		}
	}
}

// A calculation of the same inputs takes its old place, another is put behind; a full
// record says so and changes nothing.
func TestShaftPutsCalculations(t *testing.T) {
	b := newBench(t)
	report := `{calculation: "angles", title: "Angles", fragment: a[1], given: [], asked: [], parts: [], refusals: [], cautions: [], unchecked: ["The balance."],
		lines: [{id: "residual", part: "p", label: "Residual angle", value: "0.50", unit: "°", formula: "f", source: [{basis: "published", source: "dana-j3311", at: "p. 4"}, {basis: "derived", source: ""}]}],
		limits: [{part: "p", of: "Angle of a joint", limit: "at most 3°", says: "", stands: [{of: "joint 1", value: "2.00°", met: "within"}, {of: "joint 2", value: "4.00°", met: "above"}], source: []}]}, g => g.basis + " " + g.source`
	var got struct {
		Put    bool
		Record struct {
			Calculations []struct {
				Fragment, Chart string
				Lines           []struct{ Source []string }
				Limits          []struct {
					Of, Limit string
					Stands    []struct{ Of, Value, Met string }
				}
			}
		}
	}
	for fragment, want := range map[string]int{"joints=2&side1=3deg": 1, "joints=2&side1=4deg": 2} {
		b.run(t, &got, `(r => ({put: Shaft.putCalculation(r, Shaft.keptOf(`+report+`, "2026-11-25-0000000")), record: r}))(a[0])`, frontShaft(), fragment)
		calculations := got.Record.Calculations
		if !got.Put || len(calculations) != want {
			t.Fatalf("%s: %+v", fragment, got)
		}
		last := calculations[want-1]
		if diff := cmp.Diff([]string{"published dana-j3311", "derived"}, last.Lines[0].Source); diff != "" || last.Chart == "" {
			t.Errorf("%s: %+v %s", fragment, last, diff)
		}
		if len(last.Limits) != 1 || last.Limits[0].Limit != "at most 3°" || len(last.Limits[0].Stands) != 2 || last.Limits[0].Stands[1].Of != "joint 2" || last.Limits[0].Stands[1].Met != "above" {
			t.Errorf("%s: the limits are %+v", fragment, last.Limits)
		}
	}
	full := frontShaft()
	for i := range 8 {
		full["calculations"] = append(full["calculations"].([]any), object{"calculation": "speed", "fragment": fmt.Sprint("n=", i), "title": "x", "given": []any{}, "lines": []any{}, "limits": []any{}, "unchecked": []any{}})
	}
	b.run(t, &got, `(r => ({put: Shaft.putCalculation(r, Shaft.keptOf(`+report+`)), record: r}))(a[0])`, full, "joints=1")
	if got.Put || len(got.Record.Calculations) != 9 {
		t.Errorf("a full record: %v, %d", got.Put, len(got.Record.Calculations))
	}
}

// A record of anybody's making is read to a record that the schema takes, or to a sentence.
func TestShaftReadsAnything(t *testing.T) {
	b, schema := newBench(t), mustSchema(t, "shaft-1.json")
	rapid.Check(t, func(rt *rapid.T) {
		record := frontShaft()
		record["kind"], record["format"] = "shaft-record", 1
		for range rapid.IntRange(1, 5).Draw(rt, "faults") {
			spoil(rt, record)
		}
		text, err := json.Marshal(record)
		if err != nil {
			rt.Fatal(err)
		}
		b.readsTo(rt, schema.Validate, string(text))
	})
}

// readsTo reads a text and holds what comes of it to the schema.
func (b *bench) readsTo(t interface {
	Fatalf(string, ...any)
}, validate func(any) error, text string) {
	var got struct {
		OK         bool
		Says       string
		Document   any
		Complaints []any
	}
	if err := b.vm.Set("text", text); err != nil {
		t.Fatalf("%v", err)
	}
	v, err := b.vm.RunString(`JSON.stringify((r => ({...r, document: r.ok ? Shaft.recordDocument(r.record, "x") : null}))(Shaft.readRecord(text)))`)
	if err != nil {
		t.Fatalf("%.300q: %v", text, err)
	}
	if err := json.Unmarshal([]byte(v.String()), &got); err != nil {
		t.Fatalf("%.300q: %v", text, err)
	}
	if got.OK == (got.Says != "") || len(got.Complaints) > 21 {
		t.Fatalf("%.300q gives %+v", text, got)
	}
	if got.OK {
		if err := validate(got.Document); err != nil {
			t.Fatalf("%.300q is read to %v: %v", text, got.Document, err)
		}
	}
}

func FuzzReadRecord(f *testing.F) {
	b, schema := newBench(f), mustSchema(f, "shaft-1.json")
	text := b.recordText(f, frontShaft())
	for _, s := range []string{text, text[:len(text)/2], `{"kind":"shaft-record"}`, `{"kind":"shaft-record","format":1,"joints":[{"__proto__":{}}]}`, "\ufeff{}", `{"kind":"shaft-record","title":"\ud800"}`} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) { b.readsTo(t, schema.Validate, strings.ToValidUTF8(text, "\ufffd")) })
}

// spoil puts something else into a place of the record.
func spoil(t *rapid.T, value any) {
	other := rapid.SampledFrom([]any{nil, 1, "", "x", strings.Repeat("long ", 500), []any{}, []any{nil, "a", object{}}, object{}, object{"__proto__": 1, "title": "t"}, true, "\u202e\u0000", "2026-13-40"}).Draw(t, "other")
	switch v := value.(type) {
	case object:
		keys := []string{"constructor", "extra"}
		for key := range v {
			keys = append(keys, key)
		}
		slices.Sort(keys)
		key := rapid.SampledFrom(keys).Draw(t, "key")
		if key == "kind" || v[key] == nil || rapid.Bool().Draw(t, "here") {
			if key != "kind" {
				v[key] = other
			}
			return
		}
		spoil(t, v[key])
	case []any:
		if len(v) > 0 {
			n := rapid.IntRange(0, len(v)-1).Draw(t, "n")
			if rapid.Bool().Draw(t, "here") {
				v[n] = other
				return
			}
			spoil(t, v[n])
		}
	}
}
