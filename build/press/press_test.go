package press

import (
	"maps"
	"strings"
	"testing"
	"time"
)

// invented is a file of three pages as Chromium writes one, but for what is on the pages: a
// tree two levels deep, whose leaves are not in the order of their numbers.
const invented = `%PDF-1.4
1 0 obj
<</Title (Invented)
/CreationDate (D:20261128065224+00'00')
/ModDate (D:20261128065224+00'00')>>
endobj
5 0 obj
<</Type /Page
/Parent 8 0 R>>
endobj
3 0 obj
<</Type /Page
/Parent 8 0 R>>
endobj
4 0 obj
<</Type /Page
/Parent 9 0 R>>
endobj
8 0 obj
<</Type /Pages
/Count 2
/Kids [5 0 R 3 0 R]>>
endobj
9 0 obj
<</Type /Pages
/Count 3
/Kids [8 0 R 4 0 R]>>
endobj
10 0 obj
<</cap [3 0 R /XYZ 0 842 0]
/row-15x39.2 [4 0 R /XYZ 0 12.5 0]
/a#23b [5 0 R /XYZ 0 1 0]>>
endobj
11 0 obj
<</ID (node00000516)>> <</ID (node00000007)>> <</Headers [(node00000516)]>>
endobj
12 0 obj
<</Type /Catalog
/Dests 10 0 R
/Pages 9 0 R>>
endobj
`

func TestPlaces(t *testing.T) {
	got, count, err := places([]byte(invented))
	if err != nil {
		t.Fatal(err)
	}
	if want := map[string]int{"a#b": 1, "cap": 2, "row-15x39.2": 3}; !maps.Equal(got, want) || count != 3 {
		t.Errorf("got %v on %d pages, want %v on 3", got, count, want)
	}
}

// What is not as it is known is refused, never guessed.
func TestPlacesRefuses(t *testing.T) {
	for _, c := range []struct{ what, old, new, want string }{
		{"no table of places", "/Dests 10 0 R\n", "", "no table of places"},
		{"a place on a page that is not there", "/cap [3 0 R", "/cap [2 0 R", "the place cap stands on no page"},
		{"a missing branch", "/Kids [8 0 R", "/Kids [7 0 R", "broken at object 7"},
		{"a tree in a circle", "/Kids [5 0 R", "/Kids [9 0 R", "broken at object"},
		{"a table of other places", "/XYZ", "/FitH", "is empty"},
	} {
		_, _, err := places([]byte(strings.ReplaceAll(invented, c.old, c.new)))
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: got %v, want %q", c.what, err, c.want)
		}
	}
	if _, _, err := places(nil); err == nil {
		t.Error("nothing at all was read as a book")
	}
}

// Two prints that differ in time and in how Chromium counted become the same bytes, of the
// same length, and the names keep their order.
func TestAlike(t *testing.T) {
	other := strings.NewReplacer("D:20261128065224", "D:20270101120000", "node00000516", "node00000522", "node00000007", "node00000013").Replace(invented)
	date := time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)
	var made []string
	for _, pdf := range []string{invented, other} {
		got, err := alike([]byte(pdf), date)
		if err != nil {
			t.Fatal(err)
		}
		if len(got) != len(pdf) {
			t.Errorf("it was %d bytes and is %d: every place in the file would be wrong", len(pdf), len(got))
		}
		made = append(made, string(got))
	}
	if made[0] != made[1] {
		t.Error("the two differ still")
	}
	for _, want := range []string{"/CreationDate (D:20261125000000+00'00')", "/ModDate (D:20261125000000+00'00')",
		"<</ID (node00000002)>> <</ID (node00000001)>> <</Headers [(node00000002)]>>"} {
		if !strings.Contains(made[0], want) {
			t.Errorf("it lacks %q", want)
		}
	}
	if _, err := alike([]byte("%PDF-1.4 without a date"), date); err == nil {
		t.Error("a file without the two known dates was taken")
	}
}

// Any bytes give an answer or an error.
func FuzzPlaces(f *testing.F) {
	f.Add([]byte(invented))
	f.Add([]byte(strings.ReplaceAll(invented, "Kids [5 0 R", "Kids [9 0 R")))
	f.Fuzz(func(t *testing.T, pdf []byte) {
		found, count, err := places(pdf)
		if err != nil {
			return
		}
		for place, n := range found {
			if n < 1 || n > count {
				t.Errorf("%q is said to stand on page %d of %d", place, n, count)
			}
		}
	})
}
