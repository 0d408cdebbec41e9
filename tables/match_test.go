package tables

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// What the heads of the shipped tables declare as matched, and what they do not: a hole
// size of which nobody knows whether hole or bolt is meant says nothing to a reading.
func TestMatchedColumns(t *testing.T) {
	want := map[string]string{
		"steering-splines": "diameter outside below 1/64 in, teeth exact, flats outside",
		"pto-shafts":       "diameter outside below 1/64 in, splines exact",
		"flanges-male":     "circle circle, pilot outside, holes exact", "flanges-female": "circle circle, pilot inside, holes exact",
		"flanges-cross-tooth": "outside outside, circle circle, holes exact", "machine-joints": "outside outside, bore inside",
	}
	for _, table := range shippedSet(t).Tables {
		var got []string
		for _, c := range table.Matched() {
			one := c.ID + " " + string(c.Match)
			if !c.Below.IsZero() {
				one += " below " + c.Below.String()
			}
			got = append(got, one)
		}
		if strings.Join(got, ", ") != want[table.ID] {
			t.Errorf("%s: %q, want %q", table.ID, got, want[table.ID])
		}
	}
}

// The words a matched column may not be called by are those the core's address has.
func TestQueryKeysAreTheCores(t *testing.T) {
	text, err := os.ReadFile("../static/matcher/part-address.ts")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, m := range regexp.MustCompile(`case ("([a-z]+)"|holeKey):`).FindAllStringSubmatch(string(text), -1) {
		if m[2] == "" {
			m[2] = "hole-diameter"
		}
		got = append(got, m[2])
	}
	got = append(got, "check") // the seal's
	slices.Sort(got)
	want := slices.Clone(queryKeys)
	slices.Sort(want)
	if !slices.Equal(got, want) {
		t.Errorf("the address knows %q, no column may be called %q", got, want)
	}
}
