package tables

import (
	"os"
	"strings"
	"testing"
)

const aCatalogue = "sources:\n  - id: a-catalogue\n    kind: catalogue\n    title: A catalogue\n    publisher: A maker\n"

func flanges(t *testing.T) string {
	t.Helper()
	text, err := os.ReadFile("testdata/flanges.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

// A table of another kind needs data and no code: columns of lengths, counts and
// texts, no hold, cap or across.
func TestTableOfAnotherKind(t *testing.T) {
	set := mustLoad(t, map[string]string{"flanges.yaml": flanges(t), registryFile: aCatalogue})
	row := mustFind(t, set, "90")
	if row.Table.Joint() || len(row.Ends) != 0 {
		t.Errorf("a flange is no joint: %v", row.Ends)
	}
	if got := row.Values["holes"]; got.Quantity.String() != "4" || got.Others[0].Quantity.Text != "8" {
		t.Errorf("holes = %+v", got)
	}
	if got := row.Values["gap"].Quantity.Converted(); got != "1.59 mm" {
		t.Errorf("gap in the other unit = %q", got)
	}
	if row.Values["bolt"].State != Unknown || mustFind(t, set, "58").Values["gap"].State != None {
		t.Error("the two words for absence are mixed up")
	}
	if row.Basis != Memory || mustFind(t, set, "58").Values["bolt"].Word() != "M5" {
		t.Errorf("basis %q", row.Basis)
	}
	if sizes := set.Sizes(); len(sizes) != 0 {
		t.Errorf("flanges have %d joint sizes", len(sizes))
	}
}

func TestTableOfAnotherKindIsChecked(t *testing.T) {
	tests := []struct{ name, from, to, want string }{
		{"count with a fraction", "holes:   {is: 4, basis: memory}", "holes:   {is: 4.5, basis: memory}", `"4.5" is not a whole number [bad-number]`},
		{"count out of range", "holes:   {is: 4, basis: memory}", "holes:   {is: 40, basis: memory}", `40 is outside 2..16 [implausible]`},
		{"length meant in inches", "{is: 58,", "{is: 2.283,", "2.283 in would be 57.99 mm; was it meant in in?"},
		{"fraction of a millimetre", "{is: 58,", "{is: 2 1/4,", "write unit: in beside it"},
		{"faces", "{is: 58,", "{is: 58, faces: over-caps,", `unknown key "faces" [unknown-key]`},
		{"unit of a count", "{is: 4, basis", "{is: 4, unit: mm, basis", `unknown key "unit" [unknown-key]`},
		{"ends", "  - id: \"58\"\n", "  - id: \"58\"\n    ends: [{like: a}, {like: b}]\n", "a row of this table has no ends [bad-ends]"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, list := loadFiles(map[string]string{"flanges.yaml": strings.Replace(flanges(t), tt.from, tt.to, 1), registryFile: aCatalogue})
			if got := printedAll(list); !strings.Contains(got, tt.want) || list.Count(0) != 1 {
				t.Errorf("got %s\nwant one problem with %s", got, tt.want)
			}
		})
	}
}

// Windows line ends are no problem and change nothing.
func TestWindowsLineEnds(t *testing.T) {
	unix := mustLoad(t, map[string]string{"flanges.yaml": flanges(t), registryFile: aCatalogue})
	windows := mustLoad(t, map[string]string{"flanges.yaml": strings.ReplaceAll(flanges(t), "\n", "\r\n"), registryFile: aCatalogue})
	if unix.Version() != windows.Version() {
		t.Errorf("%v became %v", unix.Version(), windows.Version())
	}
}
