package tables

import (
	"encoding/json"
	"math/big"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const bolts = `table: bolts
title: Bolts
about: Bolts to try
version: 1.0.0
date: 2026-11-25
unit: lbf.ft
cautions: [the maker's figure holds]
columns:
  torque: {label: Torque, kind: torque, range: true, least: 10, greatest: 100}
  once:   {label: Single torque, kind: torque, least: 10, greatest: 100}
  over:   {label: Over crests, kind: length, unit: in, range: true, least: 0.5, greatest: 1}
  factor: {label: Factor, kind: number, least: 0.5, greatest: 5}
rows:
  - id: a
    torque: {is: 26-35, basis: memory}
    once:   {is: 62, unit: N.m, basis: memory}
    over:   {is: 0.742-0.747, basis: memory}
    factor: {is: 1.43, basis: memory}
`

// A range is one value: one cell, one reason to believe it, two numbers in every export.
func TestRanges(t *testing.T) {
	set := mustLoad(t, map[string]string{"bolts.yaml": bolts})
	row := mustFind(t, set, "a")
	for _, tt := range []struct{ column, word, figure, converted string }{
		{"torque", "26-35", "26-35 lbf.ft", "35-47 N.m"},
		{"once", "62", "62 N.m", "45.7 lbf.ft"},
		{"over", "0.742-0.747", "0.742-0.747 in", "18.85-18.97 mm"},
		{"factor", "1.43", "1.43", ""},
	} {
		v := row.Values[tt.column]
		if got := []string{v.Word(), v.Figure(), v.Converted()}; !cmp.Equal(got, []string{tt.word, tt.figure, tt.converted}) {
			t.Errorf("%s = %q", tt.column, got)
		}
	}
	got := records(t, set.Tables[0])[0]
	for name, want := range map[string]string{
		"torque": "26-35", "torque_unit": "lbf.ft", "torque_nm": "35.2512666566164104", "torque_nm_to": "47.453628191599014",
		"torque_lbfft": "26", "torque_lbfft_to": "35", "once_nm": "62", "once_lbfft": "45.7",
		"over_mm": "18.8468", "over_mm_to": "18.9738", "over_in": "0.742", "over_in_to": "0.747", "factor": "1.43",
	} {
		if got[name] != want {
			t.Errorf("CSV: %s = %q, want %q", name, got[name], want)
		}
	}
	var doc tableJSON
	if err := json.Unmarshal(jsonOf(t, set.Tables[0]), &doc); err != nil {
		t.Fatal(err)
	}
	want := valueJSON{Is: "26-35", Unit: PoundFoot, Nm: "35.2512666566164104", Lbfft: "26", Basis: Memory,
		To: &valueJSON{Is: "35", Unit: PoundFoot, Nm: "47.453628191599014", Lbfft: "35"}}
	if diff := cmp.Diff(want, doc.Rows[0].Values["torque"]); diff != "" {
		t.Errorf("JSON (-want +got):\n%s", diff)
	}
	if !cmp.Equal(doc.Cautions, []string{"the maker's figure holds"}) {
		t.Errorf("cautions = %q", doc.Cautions)
	}
}

func TestRangesAreChecked(t *testing.T) {
	tests := []struct{ name, from, to, want string }{
		{"falling", "26-35", "35-26", `the range "35-26" does not rise [bad-number]`},
		{"no range at all", "26-35", "26-26", `the range "26-26" does not rise [bad-number]`},
		{"lower end", "26-35", "6-35", "6 lbf.ft is outside 10..100 lbf.ft [implausible]"},
		{"upper end", "26-35", "26-350", "350 lbf.ft is outside 10..100 lbf.ft [implausible]"},
		{"upper end no number", "26-35", "26-3.5.1", `"3.5.1" is not a number [bad-number]`},
		{"where none may be", "is: 62", "is: 62-70", `"62-70" is a range, and this column holds single numbers [bad-number]`},
		{"mixed fraction", "0.742-0.747", "0-3/4", `"0-3/4" is not a number [bad-number]`},
		{"length's unit", "unit: N.m", "unit: mm", `unknown unit "mm" [unknown-unit]`},
		{"torque's unit", "0.747,", "0.747, unit: N.m,", `unknown unit "N.m" [unknown-unit]`},
		{"unit of a number", "1.43,", "1.43, unit: mm,", `unknown key "unit" [unknown-key]`},
		{"column's unit", "kind: torque, least", "kind: torque, unit: mm, least", "a torque is not measured in mm [bad-column]"},
		{"no unit", "unit: lbf.ft\n", "unit: mm\n", "a torque has no unit [bad-column]"},
		{"value of range", "kind: torque, range: true", "kind: torque, range: yes", `unknown value of range "yes" [bad-column]`},
		{"range of texts", "kind: number, least: 0.5, greatest: 5", "kind: text, range: true", `the column "factor" cannot hold ranges [bad-column]`},
		{"cautions", "cautions: [the maker's figure holds]", "cautions: the maker's figure holds", "where a list is expected [wrong-shape]"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, list := loadFiles(map[string]string{"bolts.yaml": strings.Replace(bolts, tt.from, tt.to, 1)})
			if got := printedAll(list); !strings.Contains(got, tt.want) {
				t.Errorf("got %s\nwant %s", got, tt.want)
			}
		})
	}
}

// Joints are matched as single figures.
func TestJointColumnsHoldNoRanges(t *testing.T) {
	_, list := loadFiles(map[string]string{"x.yaml": strings.Replace(jointHead, "kind: length,", "kind: length, range: true,", 1) + joint("a", "strap", "30", "92", "")})
	if got := printedAll(list); !strings.Contains(got, `the column "cap" cannot hold ranges [bad-column]`) {
		t.Errorf("got %s", got)
	}
}

// NIST SP 811 (2008), appendix B.8: foot pound-force to newton metre, 1.355 818; pound-force
// inch is a twelfth of it, 0.112 984 8.
func TestTorqueConversion(t *testing.T) {
	q, err := ParseQuantity("1", PoundFoot)
	if err != nil {
		t.Fatal(err)
	}
	if got := q.si().FloatString(6); got != "1.355818" {
		t.Errorf("1 lbf.ft = %s N.m", got)
	}
	if got := new(big.Rat).Quo(q.si(), big.NewRat(12, 1)).FloatString(7); got != "0.1129848" {
		t.Errorf("1 lbf.in = %s N.m", got)
	}
}

// The manual prints both units (dana-lube): each pair must be one torque within two units
// of the last digit, for the makers round and we do not.
func TestPrintedTorquesAgree(t *testing.T) {
	pairs := 0
	for row := range shippedSet(t).rows() {
		v := row.Values["torque"]
		for _, o := range v.Others {
			if o.Quantity.Unit == v.Quantity.Unit {
				continue
			}
			pairs++
			for _, end := range [][2]Quantity{{v.Quantity, o.Quantity}, {v.To, o.To}} {
				if d := end[0].Float() - end[1].Float(); d > 2 || d < -2 {
					t.Errorf("%s: %s and %s are %.2f N.m apart", row.ID, end[0], end[1], d)
				}
			}
		}
	}
	if pairs != 5 {
		t.Errorf("%d pairs, the manual's charts have 5", pairs)
	}
}

// A double DIN 808 joint is a single one and the distance between two crosses, which hangs
// on the outside diameter alone: the listing (elesa-808) must agree with itself.
func TestMachineJointsAgree(t *testing.T) {
	between := map[string]string{}
	for row := range shippedSet(t).rows() {
		if row.Table.ID != "machine-joints" {
			continue
		}
		v := func(id string) Quantity { return row.Values[id].Quantity }
		d := new(big.Rat).Sub(v("double").si(), v("single").si()).FloatString(1)
		if first, seen := between[v("outside").Text]; seen && first != d {
			t.Errorf("%s: %s mm between the crosses, elsewhere %s", row.ID, d, first)
		}
		between[v("outside").Text] = d
		if twice := new(big.Rat).Mul(v("depth").si(), big.NewRat(2, 1)); twice.Cmp(v("single").si()) >= 0 {
			t.Errorf("%s: its bores meet", row.ID)
		}
	}
	if diff := cmp.Diff(map[string]string{"16": "22.0", "22": "26.0", "25": "30.0"}, between); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}
