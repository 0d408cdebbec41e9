package main

import (
	"cmp"
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"

	"capspan/static/matcher"
)

// denseRows is how many rows the dense chart has.
const denseRows = 10_000

// What the dense chart is made of. Caps come in standard sizes that many joints share, as
// in the shipped chart; what tells joints of one cap apart is mostly the across. The
// shares are judged from the shipped chart, with more of what is known well.
var (
	denseCaps = []float64{ // mm
		15, 16, 18, 19, 20, 22, 23.8, 24, 25, 26, 27, 28, 28.575, 30.2, 32, 33.3, 34.9, 35, 36, 38, 39.6,
		41.3, 42, 44, 45, 47.6, 48, 49.2, 50, 52, 53, 55, 57, 59, 60, 62, 63, 65, 68, 72, 74, 77, 80, 83,
	}
	denseHolds = []choice{{"outside-clip", 45}, {"inside-clip", 27}, {"plate", 8}, {"strap", 8}, {"injected", 4}, {"unknown", 8}}
	denseBasis = []choice{{"published", 60}, {"common-practice", 25}, {"memory", 15}}
	denseFaces = map[string]string{"outside-clip": "over-caps", "inside-clip": "groove-inner", "plate": "under-plates",
		"strap": "over-caps", "injected": "groove-inner", "unknown": "unknown"}
	// How a figure is printed: unit and decimals.
	densePrint = []choice{{"in 3", 30}, {"mm 1", 40}, {"mm 2", 15}, {"mm 0", 15}}
)

// Twins are printed again with other digits, this share of the rows.
const denseTwins = 0.06

type choice struct {
	name  string
	share int
}

func pick(r *rand.Rand, from []choice) string {
	total := 0
	for _, c := range from {
		total += c.share
	}
	at := r.IntN(total)
	for _, c := range from {
		if at -= c.share; at < 0 {
			return c.name
		}
	}
	panic("internal error: shares do not add up")
}

type shape struct {
	hold        string
	cap, across float64 // mm
}

// denseChart is a chart of so many rows, the same for the same seed.
func denseChart(rows int, seed uint64) matcher.Chart {
	r := rand.New(rand.NewPCG(seed, 0x7275746874))
	chart := matcher.Chart{Format: 1, Version: "dense"}
	var shapes []shape
	for n := range rows {
		s := shape{hold: pick(r, denseHolds)}
		if n > 0 && r.Float64() < denseTwins {
			s = shapes[r.IntN(n)]
		} else {
			s.cap = denseCaps[r.IntN(len(denseCaps))]
			if r.Float64() < 0.3 {
				s.cap += math.Round(20*(r.Float64()-0.5)) / 10 // a make of its own, within 1 mm
			}
			s.across = s.cap * (1.6 + 2.6*r.Float64())
		}
		shapes = append(shapes, s)
		chart.Rows = append(chart.Rows, denseRow(r, n, s))
	}
	number(chart.Rows)
	return chart
}

func denseRow(r *rand.Rand, n int, s shape) matcher.ChartRow {
	basis, print := pick(r, denseBasis), pick(r, densePrint)
	held := basis
	if s.hold == "unknown" {
		held = "memory"
	}
	return matcher.ChartRow{
		Ref: fmt.Sprintf("dense/%d", n), Name: strconv.Itoa(n), Also: []string{}, Table: "Dense", Basis: basis,
		Ends: []matcher.ChartEnd{{
			Hold: s.hold, HoldBasis: held, Faces: denseFaces[s.hold], FacesBasis: held,
			Cap: printed(s.cap, print, basis), Across: printed(s.across, print, basis),
		}},
	}
}

// printed writes a length as the row prints it: "in 3" is inches with three decimals.
func printed(mm float64, how, basis string) *matcher.ChartValue {
	unit, scale := how[:2], 1.0
	if unit == "in" {
		scale = 25.4
	}
	decimals := int(how[3] - '0')
	text := strconv.FormatFloat(mm/scale, 'f', decimals, 64)
	shown, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("internal error: " + err.Error()) // FormatFloat wrote it
	}
	exact := func(x float64) string { return strconv.FormatFloat(math.Round(x*1e6)/1e6, 'f', -1, 64) }
	return &matcher.ChartValue{MM: exact(shown * scale), Half: exact(scale / 2 / math.Pow10(decimals)), Text: text, Unit: unit, Basis: basis}
}

// number gives each row its size. The rule is the shipped chart's (tables.SameSize): holds
// and faces alike or unknown, caps within 0.05 mm and acrosses within 0.15 mm; what hangs
// together is one size.
func number(rows []matcher.ChartRow) {
	parent := make([]int, len(rows))
	for i := range parent {
		parent[i] = i
	}
	var root func(int) int
	root = func(i int) int {
		if parent[i] != i {
			parent[i] = root(parent[i])
		}
		return parent[i]
	}
	mm := make([][2]float64, len(rows))
	order := make([]int, len(rows))
	for i, row := range rows {
		mm[i] = [2]float64{float(row.Ends[0].Cap.MM), float(row.Ends[0].Across.MM)}
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Or(cmp.Compare(mm[a][0], mm[b][0]), a-b) })
	for at, i := range order {
		for _, j := range order[at+1:] {
			if mm[j][0]-mm[i][0] > 0.05+1e-9 {
				break
			}
			if math.Abs(mm[j][1]-mm[i][1]) <= 0.15+1e-9 && alike(rows[i].Ends[0], rows[j].Ends[0]) {
				parent[root(i)] = root(j)
			}
		}
	}
	for i := range rows {
		rows[i].Size = root(i)
	}
}

func alike(a, b matcher.ChartEnd) bool {
	return a.Hold == b.Hold || a.Hold == "unknown" || b.Hold == "unknown"
}

func float(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("internal error: " + err.Error()) // this program wrote it
	}
	return x
}
