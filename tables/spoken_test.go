package tables

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
)

// texted is a chart with every kind of text that a language says.
func texted(t *testing.T) *Set {
	return mustLoad(t, map[string]string{
		"bolts.yaml": "table: bolts\ntitle: Bolts\nabout: All bolts.\nversion: 1.0.0\ndate: 2026-11-25\nunit: mm\ncautions: [Be warned.]\n" +
			"columns:\n  what: {label: What it is, kind: text}\n  size: {label: How large, kind: length, least: 1, greatest: 99}\nrows:\n" +
			"  - id: a\n    what: {is: strap bolt, basis: published, source: [book], others: [{is: lock bolt, basis: memory}]}\n" +
			"    size: {is: 8, basis: published, source: [book]}\n    note: used once\n" +
			"  - id: b\n    what: {is: M8, basis: memory}\n    size: {is: unknown}\n",
		"sources.yaml": "sources:\n  - id: book\n    kind: manual\n    title: A book\n    publisher: A house\n    trust: it may be old\n",
		"retired.yaml": "retired:\n  - {id: old, to: [a], why: misspelt}\n",
		"history.yaml": "history:\n  - chart: 2026-11-25-0000000\n    date: 2026-11-25\n    why: a row was wrong\n    tables: [bolts 1.0.0]\n" +
			"    changes:\n      - {of: bolts/old, what: retired, why: it was misspelt}\n",
	})
}

// Words and nothing else are said in another language, and the version is the chart's own.
func TestSpoken(t *testing.T) {
	set := texted(t)
	asked := map[string]bool{}
	spoken := set.Spoken(func(english string) string { asked[english] = true; return "«" + english + "»" })
	want := []string{"Bolts", "All bolts.", "Be warned.", "What it is", "How large", "strap bolt", "lock bolt", "used once", "it may be old",
		"misspelt", "a row was wrong", "it was misspelt"}
	for _, text := range want {
		if !asked[text] {
			t.Errorf("%q is not said", text)
		}
		delete(asked, text)
	}
	for text := range asked {
		t.Errorf("%q is said, and is no word of a language", text)
	}
	if spoken.Version() != set.Version() {
		t.Errorf("the version is %v, want %v", spoken.Version(), set.Version())
	}
	row := spoken.Find("a")
	if row == nil || row.Table.Title != "«Bolts»" || row.Values["what"].Others[0].Text != "«lock bolt»" || row.Values["size"].Sources[0].Trust != "«it may be old»" {
		t.Errorf("the row is %+v", row)
	}
	if set.Find("a").Note != "used once" || set.Tables[0].Columns[0].Label != "What it is" || set.Retired[0].Why != "misspelt" || set.History[0].Changes[0].Why != "it was misspelt" {
		t.Error("the chart itself has changed")
	}
}

// Said with the same words a chart is the same, and shares no row, source or table with the
// one it was made of.
func TestSpokenAlike(t *testing.T) {
	for name, set := range map[string]*Set{"shipped": shippedSet(t), "texted": texted(t)} {
		spoken := set.Spoken(strings.Clone)
		if !bytes.Equal(chartJSONOf(t, set), chartJSONOf(t, spoken)) {
			t.Errorf("%s: the charts differ", name)
		}
		if got, want := len(spoken.Sizes()), len(set.Sizes()); got != want {
			t.Errorf("%s: %d sizes, want %d", name, got, want)
		}
		spoken.of = nil
		theirs := pointersOf(spoken)
		for p := range pointersOf(set) {
			if theirs[p] {
				t.Errorf("%s: %s is shared", name, p.of)
			}
		}
	}
}

// pointersOf are the rows, sources and tables that can be reached from a chart.
func pointersOf(set *Set) map[reached]bool {
	found := map[reached]bool{}
	var walk func(v reflect.Value)
	walk = func(v reflect.Value) {
		switch v.Kind() {
		case reflect.Pointer:
			if v.IsNil() {
				return
			}
			switch v.Type() {
			case reflect.TypeFor[*Row](), reflect.TypeFor[*Source](), reflect.TypeFor[*Table]():
				p := reached{v.Type(), v.Pointer()}
				if found[p] {
					return
				}
				found[p] = true
			case reflect.TypeFor[*Set]():
			default:
				return
			}
			walk(v.Elem())
		case reflect.Struct:
			for i := range v.NumField() {
				walk(v.Field(i))
			}
		case reflect.Slice:
			for i := range v.Len() {
				walk(v.Index(i))
			}
		case reflect.Map:
			for _, key := range v.MapKeys() {
				walk(v.MapIndex(key))
			}
		}
	}
	walk(reflect.ValueOf(set))
	return found
}

// reached is a pointer with its type.
type reached struct {
	of reflect.Type
	at uintptr
}
