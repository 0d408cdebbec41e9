package matcher_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/stat/distuv"
	"pgregory.net/rapid"

	"capspan/static/matcher"
)

// What lies between a used yoke and its joint: two clips of one thickness nobody has
// measured, and play. Joint = distance - 2 clips - play; mean and variance of that are
// integrated here over both unknowns, and must be what the core states.
func TestUnknownClipsByBruteForce(t *testing.T) {
	c := mustConstants(t)
	m, _ := mustMatch(t)
	clip := distuv.Uniform{Min: c.get("thinnest-clip"), Max: c.get("thickest-clip")}
	play := distuv.Uniform{Min: 0, Max: c.get("play-renew")}
	over := func(of func(clip, play float64) float64) float64 {
		return quad.Fixed(func(x float64) float64 {
			return clip.Prob(x) * quad.Fixed(func(y float64) float64 { return play.Prob(y) * of(x, y) }, play.Min, play.Max, 8, quad.Legendre{}, 0)
		}, clip.Min, clip.Max, 8, quad.Legendre{}, 0)
	}
	less := over(func(x, y float64) float64 { return 2*x + y })
	variance := over(func(x, y float64) float64 { return math.Pow(2*x+y-less, 2) })
	rapid.Check(t, func(rt *rapid.T) {
		distance := float64(rapid.IntRange(3000, 15000).Draw(rt, "hundredths")) / 100
		hold := rapid.SampledFrom([]matcher.Hold{"outside-clip", "inside-clip", "injected"}).Draw(rt, "hold")
		q := matcher.Query{Ends: []matcher.QueryEnd{{Hold: hold, Taken: "yoke", Across: []string{fmt.Sprintf("%.2f mm", distance)}}}}
		a := identify(rt, m, q)
		checkHonest(rt, a)
		got := fromBudget(a.Readings[0])
		if math.Abs(got.value-(distance-less)) > 1e-9 {
			rt.Errorf("%s, %.2f mm: the joint is put at %v, by brute force at %v", hold, distance, got.value, distance-less)
		}
		// What is known of the distance itself: the budget without its two unknowns.
		own := 0.0
		for _, line := range a.Readings[0].Budget {
			if !strings.Contains(line.Source, "clips") && !strings.Contains(line.Source, "play") {
				own += line.Standard * line.Standard
			}
		}
		if want := math.Sqrt(own + variance); own == 0 || math.Abs(got.standard-want) > 1e-9 {
			rt.Errorf("%s, %.2f mm: standard uncertainty %v, by brute force %v", hold, distance, got.standard, want)
		}
	})
}

// A measured clip counts twice, its uncertainty too: JCGM 100 5.1.3 with a sensitivity of 2.
func TestMeasuredClipCountsTwice(t *testing.T) {
	m, _ := mustMatch(t)
	ask := func(clip string) (across reading, ofClips float64, thickness reading) {
		a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{{Hold: "outside-clip", Taken: "yoke",
			Cap: []string{"27.00 mm"}, Across: []string{"84.60 mm"}, Clip: []string{clip}}}})
		checkHonest(t, a)
		for _, r := range a.Readings {
			switch r.Quantity {
			case "across":
				across = fromBudget(r)
				for _, line := range r.Budget {
					if strings.Contains(line.Source, "clip") {
						ofClips = line.Standard
					}
				}
			case "clip":
				thickness = fromBudget(r)
			}
		}
		return across, ofClips, thickness
	}
	thin, part, u := ask("1.38 mm")
	thick, _, _ := ask("1.88 mm")
	if math.Abs(thin.value-thick.value-1) > 1e-9 {
		t.Errorf("half a millimetre more of clip takes %v from the across, want 1", thin.value-thick.value)
	}
	if u.standard == 0 || math.Abs(part-2*u.standard) > 1e-12 {
		t.Errorf("clips known to %v each put %v into the budget of the across, want twice that", u.standard, part)
	}
}

// The ranges makers print (facts with their sources in the registry): mazda-81, datsun-521,
// toyota-tacoma, toyota. A clip that was not measured may be any of them, so a joint in its
// own yoke with any of them must agree with the readings of that yoke.
func TestPublishedClipRanges(t *testing.T) {
	c := mustConstants(t)
	m, _ := mustMatch(t)
	published := map[string][]float64{
		"mazda-81":      {1.22, 1.24, 1.26, 1.28, 1.30, 1.32, 1.34, 1.36, 1.38},
		"datsun-521":    {2.00, 2.02, 2.04, 2.06, 2.08, 2.10, 2.12},
		"toyota-tacoma": {1.384, 1.435, 1.486, 1.511, 1.537, 1.588, 1.638},
		"toyota":        {2.18, 2.57},
	}
	for source, clips := range published {
		for _, clip := range clips {
			if clip < c.get("thinnest-clip") || clip > c.get("thickest-clip") {
				t.Errorf("%s prints %v mm, outside %v to %v", source, clip, c.get("thinnest-clip"), c.get("thickest-clip"))
			}
			end := matcher.QueryEnd{Hold: "outside-clip", Taken: "yoke", Cap: []string{"27.00 mm"}, Across: []string{fmt.Sprintf("%.2f mm", 81.76+2*clip+0.03)}}
			a := identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{end}})
			if !slices.Contains(rows(a.Sizes), "joints-inch/1310") || a.Verdict == matcher.Identified {
				t.Errorf("a 1310 yoke with clips of %v mm (%s): %s %q", clip, source, a.Verdict, rows(a.Sizes))
			}
			end.Clip = []string{fmt.Sprintf("%.3f mm", clip), fmt.Sprintf("%.3f mm", clip)}
			a = identify(t, m, matcher.Query{Ends: []matcher.QueryEnd{end}})
			if len(a.Sizes) != 1 || !slices.Contains(rows(a.Sizes), "joints-inch/1310") {
				t.Errorf("a 1310 yoke with measured clips of %v mm (%s): %s %q", clip, source, a.Verdict, rows(a.Sizes))
			}
			checkHonest(t, a)
		}
	}
}

// A yoke and the joint that goes into it are the same size, whatever was measured of which.
func TestYokeOfAJointTakesIt(t *testing.T) {
	m, chart := mustMatch(t)
	rapid.Check(t, func(rt *rapid.T) {
		row := rapid.SampledFrom(slices.DeleteFunc(slices.Clone(chart.Rows), func(r matcher.ChartRow) bool {
			e := r.Ends[0]
			return len(r.Ends) != 1 || e.Cap == nil || e.Across == nil || !slices.Contains([]string{"outside-clip", "inside-clip", "plate", "strap"}, e.Hold)
		})).Draw(rt, "row")
		end := row.Ends[0]
		clip := 0.0
		asked := matcher.QueryEnd{Hold: end.Hold, Taken: "yoke"}
		if strings.HasSuffix(end.Hold, "clip") {
			clip = float64(rapid.IntRange(122, 257).Draw(rt, "clip")) / 100
			if rapid.Bool().Draw(rt, "measured") {
				asked.Clip = []string{fmt.Sprintf("%.2f mm", clip)}
			}
		}
		bore := number(rt, end.Cap.MM) + float64(rapid.IntRange(0, 5).Draw(rt, "bore"))/100
		play := float64(rapid.IntRange(0, 15).Draw(rt, "play")) / 100
		asked.Cap = []string{fmt.Sprintf("%.2f mm", bore)}
		asked.Across = []string{fmt.Sprintf("%.2f mm", number(rt, end.Across.MM)+2*clip+play)}
		a := identify(rt, m, matcher.Query{Ends: []matcher.QueryEnd{asked}})
		checkHonest(rt, a)
		if !slices.Contains(rows(a.Sizes), row.Ref) {
			rt.Errorf("%+v, made for %s: %s %q", asked, row.Ref, a.Verdict, rows(a.Sizes))
		}
	})
}
