package main

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"

	"capspan/static/matcher"
)

// One answer with a reading set aside, a difference that rounds to nothing, and a
// sentence longer than a line.
func TestPrintAnswer(t *testing.T) {
	a := matcher.Answer{
		Verdict: matcher.Possible,
		Says: matcher.Says{Head: "This may be the A size.",
			Because: []string{"Cap and across agree, and the figures of the chart are recalled by somebody, which is not enough to order on."},
			Next:    []string{"Measure the other pair of caps."}},
		Sizes: []matcher.Size{{Rows: []string{"t/a"}, Names: []string{"A"}, Probability: 0.9996, Basis: "memory", Hold: "unknown",
			Because: "Cap and across agree.", Ends: []matcher.ComparedEnd{{
				Cap:    &matcher.Comparison{Measured: 25.4, Chart: 25.4004, ChartText: "1.000 in", Difference: -0.0004, Uncertainty: 0.254, Unit: "mm"},
				Across: &matcher.Comparison{Measured: 101.6, Chart: 76.2, ChartText: "76.20 mm", Difference: 25.4, Uncertainty: 0.508, Unit: "mm"},
			}}}},
		Near: []matcher.Size{{Rows: []string{"t/b"}, Names: []string{"B"}, Basis: "published", Hold: "strap", Because: "Cap 2 mm larger than yours."}},
		Readings: []matcher.Estimate{{Quantity: "cap", Used: []string{"1.000 in", "1.000 in", "1.001 in"}, SetAside: []string{"1.2 in"},
			Value: 25.4, Uncertainty: 0.0508, Unit: "mm", Why: "Set aside: wider than the others."}},
	}
	a.Chart.Version = "2026-11-25-0000000"
	const want = `Verdict: possible
This may be the A size.
  Cap and across agree, and the figures of the chart are recalled by somebody,
  which is not enough to order on.

Possible, to be confirmed
  A (t/a), hold not known, memory
    Cap and across agree.
            measured     chart        difference   within
    cap     1.0000 in    1.000 in     0.0000 in    yes: ±0.0100 in
            ≈ 25.40 mm   ≈ 25.40 mm   ≈ 0.00 mm    ≈ ±0.25 mm
    across  101.60 mm    76.20 mm     +25.40 mm    no: over ±0.51 mm
            ≈ 4.0000 in  ≈ 3.0000 in  ≈ +1.0000 in  ≈ ±0.0200 in

Readings
  cap: 25.40 mm ± 0.05 mm (≈ 1.0000 in ± 0.0020 in) from 1.000 in (2 times),
       1.001 in; set aside: 1.2 in
    Set aside: wider than the others.

Nearest in the chart, NOT matching
  B (t/b), strap or U-bolt (half-round), published
    Cap 2 mm larger than yours.

Next
  1. Measure the other pair of caps.

Chart 2026-11-25-0000000
`
	var got bytes.Buffer
	if err := printAnswer(&got, english(t), a, nil, nil); err != nil {
		t.Fatal(err)
	}
	// The width of the gaps is tabwriter's.
	squeeze := func(text string) []string {
		var lines []string
		for line := range strings.Lines(text) {
			lines = append(lines, strings.Join(strings.Fields(line), " "))
		}
		return lines
	}
	if diff := cmp.Diff(squeeze(want), squeeze(got.String())); diff != "" {
		t.Errorf("text (-want +got):\n%s", diff)
	}
	for line := range strings.Lines(got.String()) {
		if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > columns {
			t.Errorf("%d columns: %s", n, line)
		}
	}
}

// Slips, what parts the sizes left, and ways to join two ends, each sentence once.
func TestPrintDoubts(t *testing.T) {
	a := matcher.Answer{
		Verdict: matcher.NotInChart,
		Says: matcher.Says{Head: "No row has this.", Because: []string{"It may be inches.", "The first end agrees with A.", "The chart is not complete."},
			Next: []string{"Look at the unit.", "Measure a clip.", "Clean the caps."}},
		Ends:      []matcher.EndFound{{Says: "The first end agrees with A."}, {Says: "The second end agrees with B."}},
		Slips:     []matcher.SlipFound{{Slip: "inches-for-millimetres", Look: "unit", Says: "It may be inches.", Next: "Look at the unit.", Guide: "/measure/units/"}},
		TellApart: []matcher.TellApart{{Between: []string{"t/a", "t/b"}, Measure: "clip", Says: "Measure a clip."}},
		Ways: []matcher.Way{{Joint: "t/a", Keeps: []int{0}, Change: 1, To: []string{"t/a", "t/c"}, Says: "Keep the yoke of the first end."},
			{Joint: "t/b", Says: "Change both."}},
	}
	a.Chart.Version = "2026-11-25-0000000"
	const want = `Verdict: not-in-chart
No row has this.

A slip to look for
  - It may be inches.
    Look at the unit.
    See /measure/units/

  The first end agrees with A.
  The chart is not complete.
  The second end agrees with B.

Ways to join these ends
  - Keep the yoke of the first end.
    joint t/a; a yoke for end 2 that takes t/a, t/c
  - Change both.
    joint t/b

Next
  1. Measure a clip.
  2. Clean the caps.

Chart 2026-11-25-0000000
`
	var got bytes.Buffer
	if err := printAnswer(&got, english(t), a, nil, nil); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want, got.String()); diff != "" {
		t.Errorf("text (-want +got):\n%s", diff)
	}
}
