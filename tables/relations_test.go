package tables

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"pgregory.net/rapid"
)

const jointHead = `table: x
title: Joints to try
about: Joints to compare
version: 1.0.0
date: 2026-11-25
unit: mm
columns:
  hold:   {label: Hold, kind: hold}
  cap:    {label: Cap, kind: length, least: 8, greatest: 100}
  across: {label: Across, kind: length, least: 25, greatest: 300}
rows:
`

func joint(id, hold, cap, across, more string) string {
	basis, faces := ", basis: memory", "unknown"
	if hold == "unknown" {
		basis = ""
	} else {
		faces = string(FacesFor(Hold(hold))[0])
	}
	return fmt.Sprintf("  - id: %s\n    hold:   {is: %s%s}\n    cap:    {is: %s, basis: memory}\n    across: {is: %s, faces: %s, basis: memory}\n%s",
		id, hold, basis, cap, across, faces, more)
}

func TestRelations(t *testing.T) {
	set := shippedSet(t)
	tests := []struct {
		id                      string
		same, near, conversions []string
	}{
		{"1350", []string{"1355"}, []string{"30.2x91.4"}, []string{"1310-to-1350", "1330-to-1350", "1330-big-cap-to-1350", "1350-to-1410", "7290-to-1350", "3r-to-1350"}},
		{"30.2x92", []string{"1355"}, []string{"30.2x91.4"}, []string{"1310-to-1350", "1330-to-1350", "1330-big-cap-to-1350", "1350-to-1410", "7290-to-1350", "3r-to-1350"}},
		{"1355", []string{"30.2x92", "1350"}, []string{"32x93"}, nil},
		{"S44", nil, []string{"7290"}, []string{"s44-to-1310", "s44-to-1330"}},
		{"2c", nil, []string{"3c"}, nil},
		{"s44-to-1310", nil, []string{"7290-to-1310"}, nil},
	}
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			row := mustFind(t, set, tt.id)
			for _, c := range []struct {
				what      string
				got, want []string
			}{
				{"SameFigures", ids(set.SameFigures(row)), tt.same},
				{"Near", ids(set.Near(row, 1)), tt.near},
				{"Conversions", ids(set.Conversions(row)), tt.conversions},
			} {
				if diff := cmp.Diff(c.want, c.got); diff != "" {
					t.Errorf("%s (-want +got):\n%s", c.what, diff)
				}
			}
		})
	}
}

// Twins are one size through others as well; a row of unknown hold between two holds
// belongs to neither, so that two holds never become one size.
func TestSizes(t *testing.T) {
	set := mustLoad(t, map[string]string{"x.yaml": jointHead +
		joint("a", "outside-clip", "30.2", "92", "    twins: [b, u]\n") +
		joint("b", "outside-clip", "30.24", "92.1", "    twins: [a, c, u]\n") +
		joint("c", "outside-clip", "30.28", "92.2", "    twins: [b]\n") +
		joint("s", "strap", "30.2", "92", "    twins: [u]\n") +
		joint("u", "unknown", "30.2", "92", "    twins: [a, b, s]\n") +
		joint("v", "unknown", "40", "92", "    twins: [w]\n") +
		joint("w", "strap", "40", "92", "    twins: [v]\n")})
	var got []string
	for _, size := range set.Sizes() {
		got = append(got, strings.Join(ids(size), " "))
	}
	if diff := cmp.Diff([]string{"a b c", "s", "u", "v w"}, got); diff != "" {
		t.Errorf("(-want +got):\n%s", diff)
	}
}

func TestFind(t *testing.T) {
	set := shippedSet(t)
	for id, want := range map[string]string{"3R": "joints-inside-clip/3R", "3r": "joints-inside-clip/3R", "joints-inch/1310": "joints-inch/1310",
		"JOINTS-INCH/1310": "joints-inch/1310", "joints-farm/1310": "", "131": "", "": "", "joints-inch/": ""} {
		got := ""
		if row := set.Find(id); row != nil {
			got = row.Ref()
		}
		if got != want {
			t.Errorf("Find(%q) = %q, want %q", id, got, want)
		}
	}
}

// The sorted search finds the same pairs as comparing every row with every other.
func TestUnnamedTwinsAreAllFound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		holds := []string{"outside-clip", "strap", "unknown"}
		text := jointHead
		for i := range rapid.IntRange(1, 12).Draw(t, "rows") {
			text += joint(fmt.Sprintf("r%d", i), rapid.SampledFrom(holds).Draw(t, "hold"),
				fmt.Sprintf("30.%02d", rapid.IntRange(0, 12).Draw(t, "cap")), fmt.Sprintf("92.%02d", rapid.IntRange(0, 60).Draw(t, "across")), "")
		}
		set, list := loadFiles(map[string]string{"x.yaml": text})
		rows := slices.Collect(set.rows())
		want := 0
		for i, a := range rows {
			for _, b := range rows[i+1:] {
				if SameSize(a, b) {
					want++
				}
			}
		}
		if len(list) != want {
			t.Fatalf("%d warnings for %d pairs:\n%s", len(list), want, printedAll(list))
		}
	})
}
