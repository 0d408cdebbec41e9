package build

import (
	"math"

	"capspan/static/matcher"
)

// Beyond this far from a changed row its figures count for next to nothing: what the
// core allows a caliper, a worn cap and a figure from memory is less.
const capNear, acrossNear = 1.0, 2.5 // mm

// reach finds readings near ends that changed. Figures are put into boxes as wide as
// near is, and a reading looks into its own box and those round it: up to twice as far
// as needed, at the same cost for one changed row and for ten thousand.
type reach struct {
	ends       int
	both       map[[2]int]bool // by cap and across
	caps       map[int]bool    // of all ends that have one
	acrosses   map[int]bool
	openCap    map[int]bool // by across, of ends without a cap: it may be anything
	openAcross map[int]bool
	openBoth   bool
}

func reachOf(ends []matcher.ChartEnd) *reach {
	r := &reach{len(ends), map[[2]int]bool{}, map[int]bool{}, map[int]bool{}, map[int]bool{}, map[int]bool{}, false}
	for _, end := range ends {
		caps, acrosses := boxes(end.Cap, capNear), boxes(end.Across, acrossNear)
		for _, c := range caps {
			r.caps[c] = true
			for _, a := range acrosses {
				r.both[[2]int{c, a}] = true
			}
			if len(acrosses) == 0 {
				r.openAcross[c] = true
			}
		}
		for _, a := range acrosses {
			r.acrosses[a] = true
			if len(caps) == 0 {
				r.openCap[a] = true
			}
		}
		r.openBoth = r.openBoth || len(caps)+len(acrosses) == 0
	}
	return r
}

func boxes(v *matcher.ChartValue, wide float64) []int {
	if v == nil {
		return nil
	}
	out := []int{box(millimetres(v.MM), wide)}
	for _, o := range v.Others {
		out = append(out, box(millimetres(o.MM), wide))
	}
	return out
}

func box(mm, wide float64) int { return int(math.Floor(mm / wide)) }

// endMM is a measured end; NaN where nothing was measured.
type endMM struct{ cap, across float64 }

// near reports whether one of the ends is near one that changed.
func (r *reach) near(ends []endMM) bool {
	for _, end := range ends {
		if r.nearEnd(end) {
			return true
		}
	}
	return false
}

func (r *reach) nearEnd(end endMM) bool {
	c, a := box(end.cap, capNear), box(end.across, acrossNear)
	noCap, noAcross := math.IsNaN(end.cap), math.IsNaN(end.across)
	if r.openBoth || noCap && len(r.openCap) > 0 || noAcross && len(r.openAcross) > 0 {
		return true
	}
	for i := -1; i <= 1; i++ {
		switch {
		case noCap && r.acrosses[a+i], noAcross && r.caps[c+i]:
			return true
		case !noCap && !noAcross && (r.openCap[a+i] || r.openAcross[c+i]):
			return true
		}
		for k := -1; k <= 1 && !noCap && !noAcross; k++ {
			if r.both[[2]int{c + i, a + k}] {
				return true
			}
		}
	}
	return false
}
