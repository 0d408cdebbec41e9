package matcher_test

import (
	"fmt"
	"math"
	"strconv"
	"sync"
	"testing"

	"github.com/dop251/goja"
	"pgregory.net/rapid"

	"capspan/build/diag"
	"capspan/static"
	"capspan/static/matcher"
)

// compiled are the bundles of these tests, by their text.
var compiled = map[string]*goja.Program{}

// newMatcher loads the core with a chart of the test's own.
func newMatcher(t interface {
	Helper()
	Fatal(...any)
}, bundle []byte, chart matcher.Chart) *matcher.Matcher {
	t.Helper()
	program, known := compiled[string(bundle)]
	if !known {
		var err error
		if program, err = goja.Compile("matcher.js", string(bundle), false); err != nil {
			t.Fatal(err)
		}
		compiled[string(bundle)] = program
	}
	m, err := matcher.NewOf(program, chart)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

var shippedCore = sync.OnceValues(func() ([]byte, diag.List) { return static.Core(static.FS) })

func mustBundle(t testing.TB) []byte {
	t.Helper()
	bundle, problems := shippedCore()
	if len(problems) > 0 {
		t.Fatalf("bundle the core: %v", problems)
	}
	return bundle
}

// constants of the method by their ids on the about page.
type constants map[string]float64

func mustConstants(t testing.TB) constants {
	t.Helper()
	list, err := matcher.Assumptions(static.FS)
	if err != nil {
		t.Fatal(err)
	}
	out := constants{}
	for _, a := range list {
		out[a.ID] = a.Value
	}
	return out
}

func (c constants) get(id string) float64 {
	v, ok := c[id]
	if !ok {
		panic("the method has no constant " + id)
	}
	return v
}

// smallCharts draws charts of two to seven plain rows so near each other that readings
// can seldom tell all of them apart.
func smallCharts() *rapid.Generator[matcher.Chart] {
	return rapid.Custom(func(t *rapid.T) matcher.Chart {
		chart := matcher.Chart{Format: 1, Version: "small"}
		for i := range rapid.IntRange(2, 7).Draw(t, "rows") {
			basis := rapid.SampledFrom([]matcher.Basis{"published", "measured", "common-practice", "memory"}).Draw(t, "basis")
			cap := 27 + float64(rapid.IntRange(0, 40).Draw(t, "cap"))/20
			across := 82 + float64(rapid.IntRange(0, 40).Draw(t, "across"))/10
			chart.Rows = append(chart.Rows, plainRow(i, "outside-clip", basis, cap, across, rapid.SampledFrom([]int{1, 2, 3}).Draw(t, "digits")))
		}
		return chart
	})
}

// plainRow is a row of two like ends whose figures are printed with so many digits.
func plainRow(i int, hold matcher.Hold, basis matcher.Basis, cap, across float64, digits int) matcher.ChartRow {
	value := func(mm float64) *matcher.ChartValue {
		text := strconv.FormatFloat(mm, 'f', digits, 64)
		half := strconv.FormatFloat(0.5*math.Pow10(-digits), 'f', digits+1, 64)
		return &matcher.ChartValue{MM: text, Half: half, Text: text, Unit: "mm", Basis: basis}
	}
	return matcher.ChartRow{Ref: fmt.Sprintf("small/%d", i), Name: fmt.Sprint(i), Also: []string{}, Table: "Small", Basis: basis, Size: i,
		Ends: []matcher.ChartEnd{{Hold: hold, HoldBasis: "published", Faces: facesOf[hold], FacesBasis: "published", Cap: value(cap), Across: value(across)}}}
}

// The faces each hold is measured across first.
var facesOf = map[matcher.Hold]matcher.Faces{
	"outside-clip": "over-caps", "inside-clip": "groove-inner", "plate": "under-plates",
	"strap": "over-caps", "injected": "over-caps", "staked": "over-caps",
}

// nearRow draws readings of one row of the chart, a few tenths of a millimetre off at most.
func nearRow(t *rapid.T, chart matcher.Chart, tools []matcher.Tool) matcher.Query {
	end := rapid.SampledFrom(chart.Rows).Draw(t, "row").Ends[0]
	draw := func(v *matcher.ChartValue, widest int) []string {
		var out []string
		off := rapid.IntRange(-widest, widest).Draw(t, "off")
		for range rapid.IntRange(1, 3).Draw(t, "readings") {
			out = append(out, fmt.Sprintf("%.2f mm", number(t, v.MM)+float64(off+rapid.IntRange(-3, 3).Draw(t, "scatter"))/100))
		}
		return out
	}
	return matcher.Query{
		Ends:      []matcher.QueryEnd{{Hold: end.Hold, Cap: draw(end.Cap, 15), Across: draw(end.Across, 30)}},
		Tool:      rapid.SampledFrom(tools).Draw(t, "tool"),
		Condition: rapid.SampledFrom(matcher.Conditions).Draw(t, "condition"),
	}
}

func mustFloat(text string) float64 {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	return x
}
