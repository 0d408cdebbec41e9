package tables

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// records reads a table's CSV back, each row by column name.
func records(t *testing.T, table *Table) []map[string]string {
	t.Helper()
	all, err := csv.NewReader(bytes.NewReader(alone.CSV(table))).ReadAll() // every record as long as the head, or an error
	if err != nil {
		t.Fatal(err)
	}
	var out []map[string]string
	for _, record := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			if _, twice := row[name]; twice {
				t.Errorf("two columns are called %q", name)
			}
			row[name] = record[i]
		}
		out = append(out, row)
	}
	return out
}

func TestCSVHasEveryRowWithItsDigits(t *testing.T) {
	for _, table := range shippedSet(t).Tables {
		got := records(t, table)
		if len(got) != len(table.Rows) {
			t.Fatalf("%s: %d records, %d rows", table.ID, len(got), len(table.Rows))
		}
		for i, row := range table.Rows {
			for n, end := range row.Ends {
				s := endSuffix(n)
				if got[i]["id"] != row.ID || got[i]["hold"+s] != end.Hold.Word() || got[i]["cap"+s] != end.Cap.Word() || got[i]["across"+s] != end.Across.Word() {
					t.Errorf("%s end %d: %v", row.Ref(), n, got[i])
				}
				if end.Across.State == Given && (got[i]["across_mm"+s] != end.Across.Quantity.MM() || got[i]["across_unit"+s] != string(table.Unit)) {
					t.Errorf("%s end %d: %s %s mm", row.Ref(), n, got[i]["across_mm"+s], got[i]["across_unit"+s])
				}
			}
			if got[i]["note"] != row.Note || got[i]["basis"] != string(row.Basis) {
				t.Errorf("%s: %v", row.Ref(), got[i])
			}
		}
	}
}

// RFC 4180: lines end in CRLF, and what a general reader reads is, written again by a
// general writer, the same bytes. A column that is called a number holds decimals only.
func TestCSVRoundTrip(t *testing.T) {
	decimal := regexp.MustCompile(`^\d+(\.\d+)?$`)
	hostile := jointHead + joint("a", "strap", "30", "92", "    note: \"quotes \\\" and, commas; '\"\n")
	sets := []*Set{shippedSet(t), mustLoad(t, map[string]string{"x.yaml": hostile}), mustLoad(t, map[string]string{"bolts.yaml": bolts})}
	for _, set := range sets {
		for _, table := range set.Tables {
			once := alone.CSV(table)
			if lf, crlf := bytes.Count(once, []byte("\n")), bytes.Count(once, []byte("\r\n")); lf != crlf || lf != len(table.Rows)+1 {
				t.Errorf("%s: %d lines, %d of them end in CRLF", table.ID, lf, crlf)
			}
			all, err := csv.NewReader(bytes.NewReader(once)).ReadAll()
			if err != nil {
				t.Fatal(err)
			}
			var again bytes.Buffer
			w := csv.NewWriter(&again)
			w.UseCRLF = true
			if err := w.WriteAll(all); err != nil {
				t.Fatal(err)
			}
			if !bytes.Equal(again.Bytes(), once) {
				t.Errorf("%s: written again it differs", table.ID)
			}
			numbers := 0
			for n, field := range alone.csvFields(table) {
				for _, record := range all[1:] {
					if field.Number && record[n] != "" {
						numbers++
						if !decimal.MatchString(record[n]) {
							t.Errorf("%s: %s = %q", table.ID, field.Name, record[n])
						}
					}
				}
			}
			if measured := table.Unit != NoUnit; measured && numbers == 0 && len(table.Rows) > 0 {
				t.Errorf("%s has no number", table.ID)
			}
		}
	}
}

// One row of each kind in full.
func TestCSVRecords(t *testing.T) {
	set := shippedSet(t)
	find := func(id string) map[string]string {
		for _, r := range records(t, mustFind(t, set, id).Table) {
			if r["id"] == id {
				for name, cell := range r {
					if cell == "" {
						delete(r, name)
					}
				}
				return r
			}
		}
		return nil
	}
	if diff := cmp.Diff(map[string]string{"id": "22x54", "also": "size 1", "hold": "outside-clip", "hold_basis": "memory",
		"cap": "22", "cap_unit": "mm", "cap_mm": "22", "cap_in": "0.866", "cap_basis": "published", "cap_sources": "agri-list", "cap_others": "55/64 in (published: agri-list)",
		"across": "54", "across_unit": "mm", "across_mm": "54", "across_in": "2.126", "across_faces": "over-caps", "across_faces_basis": "memory", "across_basis": "published",
		"across_sources": "agri-list", "across_others": "2 1/8 in (published: agri-list)", "basis": "published", "note": "the list prints it in inches too"}, find("22x54")); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	if diff := cmp.Diff(map[string]string{"id": "7260-to-1310", "basis": "common-practice",
		"like": "7260", "hold": "inside-clip", "hold_basis": "common-practice", "cap": "1.078", "cap_unit": "in", "cap_mm": "27.3812", "cap_in": "1.078", "cap_basis": "common-practice",
		"across": "2.125", "across_unit": "in", "across_mm": "53.975", "across_in": "2.125", "across_faces": "groove-inner", "across_basis": "common-practice",
		"like_2": "1310", "hold_2": "outside-clip", "hold_basis_2": "common-practice", "cap_2": "1.062", "cap_unit_2": "in", "cap_mm_2": "26.9748", "cap_in_2": "1.062", "cap_basis_2": "common-practice",
		"cap_others_2": "27 mm (memory)", "across_2": "3.219", "across_unit_2": "in", "across_mm_2": "81.7626", "across_in_2": "3.219", "across_faces_2": "over-caps",
		"across_basis_2": "common-practice", "across_others_2": "81.7 mm (memory); 82 mm (memory)"}, find("7260-to-1310")); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

// A sheet program would run a note that begins like a formula.
func TestCSVIsInert(t *testing.T) {
	set := mustLoad(t, map[string]string{"x.yaml": jointHead + joint("a", "strap", "30", "92", "    note: \"=1+1, \\\"quoted\\\"\"\n")})
	if got := records(t, set.Tables[0])[0]["note"]; got != `'=1+1, "quoted"` {
		t.Errorf("note = %s", got)
	}
}

func TestJSON(t *testing.T) {
	set := shippedSet(t)
	var doc tableJSON
	d := json.NewDecoder(bytes.NewReader(jsonOf(t, mustFind(t, set, "22x54").Table)))
	d.DisallowUnknownFields()
	if err := d.Decode(&doc); err != nil {
		t.Fatal(err)
	}
	want := rowJSON{ID: "22x54", Also: []string{"size 1"}, Basis: Published, Note: "the list prints it in inches too", Values: map[string]valueJSON{
		"hold": {Is: "outside-clip", Basis: Memory},
		"cap": {Is: "22", Unit: Millimetre, MM: "22", In: "0.866", Basis: Published, Sources: []string{"agri-list"},
			Others: []valueJSON{{Is: "55/64", Unit: Inch, MM: "21.828125", In: "0.859375", Basis: Published, Sources: []string{"agri-list"}}}},
		"across": {Is: "54", Unit: Millimetre, MM: "54", In: "2.126", Faces: OverCaps, FacesBasis: Memory, Basis: Published, Sources: []string{"agri-list"},
			Others: []valueJSON{{Is: "2 1/8", Unit: Inch, MM: "53.975", In: "2.125", Faces: OverCaps, Basis: Published, Sources: []string{"agri-list"}}}},
	}}
	if diff := cmp.Diff(want, doc.Rows[0]); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
	var named []string
	for _, s := range doc.Sources {
		named = append(named, s.ID)
	}
	if diff := cmp.Diff([]string{"agri-list", "profi"}, named); diff != "" {
		t.Errorf("sources (-want +got):\n%s", diff)
	}
}

// Two loads give the same bytes and the same name; the name is in the export.
func TestExportAndVersionAreDeterministic(t *testing.T) {
	one, two := shippedSet(t), shippedSet(t)
	first, second := chartJSONOf(t, one), chartJSONOf(t, two)
	name := one.Version().Name()
	if !bytes.Equal(first, second) || name != two.Version().Name() {
		t.Error("two loads differ")
	}
	if !regexp.MustCompile(`^\d{4}-\d\d-\d\d-[0-9a-f]{7}$`).MatchString(name) || !strings.Contains(string(first), `"version": "`+name+`"`) {
		t.Errorf("the chart is called %q", name)
	}
}

// The name changes with what the chart says, and with nothing else.
func TestVersionFollowsMeaning(t *testing.T) {
	base := jointHead + joint("a", "strap", "30", "92", "    note: a note\n")
	name := func(text string) string {
		return mustLoad(t, map[string]string{"x.yaml": text}).Version().Name()
	}
	was := name(base)
	for what, text := range map[string]string{
		"comment": "# a comment\n" + base,
		"spacing": strings.Replace(base, "{is: 30, basis: memory}", "{ basis: memory,  is: 30 }", 1),
	} {
		if got := name(text); got != was {
			t.Errorf("%s: %s became %s", what, was, got)
		}
	}
	for what, change := range map[string][2]string{
		"digits":     {"is: 30,", "is: 30.0,"},
		"basis":      {"{is: 30, basis: memory}", "{is: 30, basis: common-practice}"},
		"note":       {"a note", "another note"},
		"label":      {"label: Cap", "label: Caps"},
		"plausible":  {"greatest: 100", "greatest: 101"},
		"version":    {"1.0.0", "1.0.1"},
		"table date": {"2026-11-25", "2026-11-26"},
	} {
		if got := name(strings.Replace(base, change[0], change[1], 1)); got == was {
			t.Errorf("%s: the name stays %s", what, got)
		}
	}
}
