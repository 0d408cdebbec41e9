package matcher_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"capspan/static/matcher"
)

// Slips end to end, on rows of the shipped chart. Where a length has a source it is named;
// the rest is arithmetic on the row's own figures.
func TestSlipsEndToEnd(t *testing.T) {
	m, _ := mustMatch(t)
	mm := func(lengths ...float64) []string {
		var out []string
		for _, x := range lengths {
			out = append(out, fmt.Sprintf("%.2f mm", x))
		}
		return out
	}
	for _, c := range []struct {
		name    string
		end     matcher.QueryEnd
		tool    matcher.Tool
		slip    string
		row     string
		look    string
		guide   string
		verdict matcher.Verdict
		next    string // somewhere in what to do
	}{
		{"7260 with two clips of 1.30 mm, of the set of 1.22 to 1.38 mm (mazda-81)",
			matcher.QueryEnd{Hold: "inside-clip", Cap: mm(27.38, 27.37), Across: mm(56.58, 56.57)}, "",
			"groove-outer-faces", "joints-inside-clip/7260", "across", "/measure/groove-outer/", matcher.MeasureAgain, "between the inner groove faces"},
		{"7290 with one clip of 2.06 mm, of the set of 2.00 to 2.12 mm (datsun-521)",
			matcher.QueryEnd{Hold: "inside-clip", Cap: mm(27.38, 27.37), Across: mm(68.73, 68.75)}, "",
			"groove-outer-faces", "joints-inside-clip/7290", "across", "/measure/groove-outer/", matcher.MeasureAgain, "between the inner groove faces"},
		{"1330 over two clips of 1.486 mm (toyota-tacoma)",
			matcher.QueryEnd{Hold: "outside-clip", Cap: mm(26.97, 26.96), Across: mm(95.05, 95.04)}, "",
			"clips-included", "joints-inch/1330", "across", "/measure/over-caps/", "", "from cap end to cap end"},
		{"1610 over its plates",
			matcher.QueryEnd{Hold: "plate", Cap: mm(47.62, 47.63), Across: mm(150.00, 150.02)}, "",
			"over-plates", "joints-inch/1610", "across", "/measure/under-plates/", "", "under the plates"},
		{"7260 over its caps, 20 mm longer",
			matcher.QueryEnd{Hold: "inside-clip", Cap: mm(27.38, 27.37), Across: mm(73.98, 73.97)}, "",
			"over-caps-of-inside-clip", "joints-inside-clip/7260", "across", "/measure/groove-inner/", "", "between the inner groove faces"},
		{"1310 to the centre of its cross",
			matcher.QueryEnd{Hold: "outside-clip", Cap: mm(26.97, 26.96), Across: mm(40.9, 40.8)}, "",
			"centre-to-cap", "joints-inch/1310", "across", "/measure/cannot/", "", "across the whole joint"},
		{"1310 with the first two digits of 81.76 exchanged",
			matcher.QueryEnd{Hold: "outside-clip", Cap: mm(26.97, 26.96), Across: mm(18.76, 18.77)}, "",
			"digits-exchanged", "joints-inch/1310", "across", "/measure/good-reading/", matcher.MeasureAgain, "digit by digit"},
		{"1330 in fractions, the across 3 5/8 in read as 3 9/16",
			matcher.QueryEnd{Hold: "outside-clip", Cap: mm(26.97, 26.96), Across: []string{"3 9/16", "3 9/16"}}, "steel-rule",
			"sixteenth", "joints-inch/1330", "across", "/measure/rule/", "", "straight down on the lines"},
		{"1350 or 1355, said to have inside clips",
			matcher.QueryEnd{Hold: "inside-clip", Cap: mm(30.17, 30.16), Across: mm(92.08, 92.07)}, "",
			"wrong-hold", "joints-inch/1350", "hold", "/measure/what-holds-it/", matcher.MeasureAgain, "how it is held"},
		{"1310 in inches, called millimetres",
			matcher.QueryEnd{Hold: "outside-clip", Cap: []string{"1.062 mm"}, Across: []string{"3.219 mm"}}, "",
			"inches-for-millimetres", "joints-inch/1310", "unit", "/measure/units/", matcher.MeasureAgain, "which unit the tool shows"},
		{"one of three caps with its point misplaced",
			matcher.QueryEnd{Hold: "outside-clip", Cap: mm(26.97, 269.6, 26.96), Across: mm(81.7)}, "",
			"decimal-point", "joints-inch/1310", "cap", "/measure/units/", matcher.MeasureAgain, "with its point"},
	} {
		t.Run(c.name, func(t *testing.T) {
			a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{c.end}, Tool: c.tool})
			checkHonest(t, a)
			if len(a.Slips) == 0 || len(a.Sizes) > 0 {
				t.Fatalf("got %s, sizes %q, slips %s", a.Verdict, rows(a.Sizes), told(a.Slips))
			}
			got := a.Slips[0]
			if got.Slip != c.slip || !slices.Contains(got.Rows, c.row) || got.Look != c.look || got.Guide != c.guide {
				t.Errorf("got %s, want %s of %s", told(a.Slips), c.slip, c.row)
			}
			if c.verdict != "" && a.Verdict != c.verdict {
				t.Errorf("got %s with %s, want %s", a.Verdict, told(a.Slips), c.verdict)
			}
			if len(a.Says.Next) == 0 || !strings.Contains(a.Says.Next[0], c.next) {
				t.Errorf("got first to do %q, want %q in it", a.Says.Next, c.next)
			}
		})
	}
}

// A complaint about a length stays beside the slip that explains it.
func TestSlipKeepsTheComplaint(t *testing.T) {
	m, _ := mustMatch(t)
	a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip", Cap: []string{"81.76 mm"}, Across: []string{"26.97 mm"}}}})
	if len(a.Complaints) != 1 || len(a.Slips) != 1 || a.Slips[0].Slip != "cap-across-exchanged" {
		t.Errorf("got complaints %+v and slips %s", a.Complaints, told(a.Slips))
	}
	// What is no length at all is put right first.
	a = identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip", Cap: []string{"81.76 mm", "x"}, Across: []string{"26.97 mm"}}}})
	if len(a.Complaints) != 2 || len(a.Slips) != 0 {
		t.Errorf("got complaints %+v and slips %s", a.Complaints, told(a.Slips))
	}
}

// 3R measured over clips 0.8 mm thick is what S44 is between its inner faces: the verdict
// stands, and the faces are to be checked.
func TestFacesAreToBeChecked(t *testing.T) {
	m, _ := mustMatch(t)
	a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "inside-clip", Cap: []string{"1.125 in"}, Across: []string{"2.619 in"}}}})
	all := strings.Join(a.Says.Next, "\n")
	if a.Verdict != matcher.Possible || len(a.Slips) > 0 || !strings.Contains(all, "Check the faces") || !strings.Contains(all, "it is 3R instead") {
		t.Errorf("got %s of %q, to do:\n%s", a.Verdict, rows(a.Sizes), all)
	}
}

// Of two ends one may be good and the other a slip; two known ends that no row joins are no slip.
func TestSlipOfOneEnd(t *testing.T) {
	m, _ := mustMatch(t)
	good := matcher.QueryEnd{Hold: "outside-clip", Cap: []string{"1.062 in"}, Across: []string{"3.219 in"}}
	a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{good, {Hold: "outside-clip", Cap: []string{"1.188 mm"}, Across: []string{"3.625 mm"}}}})
	if len(a.Slips) == 0 || a.Slips[0].End != 1 || !slices.Contains(a.Slips[0].Rows, "joints-conversion/1310-to-1350") || !strings.Contains(a.Says.Head, "second end") {
		t.Errorf("got %s (%s), slips %s", a.Verdict, a.Says.Head, told(a.Slips))
	}
	a = identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{good, {Hold: "plate", Cap: []string{"1.875 in"}, Across: []string{"5.312 in"}}}})
	if len(a.Slips) > 0 || a.Verdict != matcher.NotInChart {
		t.Errorf("got %s, slips %s", a.Verdict, told(a.Slips))
	}
}
