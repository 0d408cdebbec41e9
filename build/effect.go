package build

import (
	"errors"
	"fmt"
	"hash/fnv"
	"io/fs"
	"math"
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"sync"

	"capspan/build/diag"
	"capspan/static/matcher"
	"capspan/tables"
	"capspan/tables/compare"
)

// Comparison is what a change of the chart means and does.
type Comparison struct {
	*compare.Diff
	Shifts   compare.Shifts  `json:"shifts"`
	Queries  int             `json:"queries"` // that there are: each row's own figures, and seeded readings about them
	Near     int             `json:"near"`    // of them, near enough to a changed row to be answered otherwise
	Asked    int             `json:"asked"`   // of those
	Verdicts []VerdictChange `json:"verdicts"`
}

// VerdictChange is a query that both charts answer differently: a link that carries
// such readings means something else than when it was sent.
type VerdictChange struct {
	Of      string        `json:"of"`   // the row it was made from
	Asks    string        `json:"asks"` // the readings, in words
	Address string        `json:"address"`
	Query   matcher.Query `json:"query"`
	Old     Concluded     `json:"old"`
	New     Concluded     `json:"new"`
}

// Concluded is an answer in short; rows have the names of today.
type Concluded struct {
	Verdict matcher.Verdict `json:"verdict"`
	Rows    []string        `json:"rows"`
}

// Compare tells the difference between two folders of tables, and its effect, which the
// core of the newer sources works out for both. What does not load is told side by
// side, by the name of each.
// With every, all queries are asked, also those no change can reach.
func Compare(older fs.FS, newer Sources, every bool) (*Comparison, [2]diag.List, error) {
	sets, problems := tables.LoadPair(older, newer.Tables)
	was, is := sets[0], sets[1]
	if problems[0].Blocked() || problems[1].Blocked() {
		return nil, problems, nil
	}
	var group sync.WaitGroup
	group.Go(func() { was.Version() }) // both are asked for, and take long
	is.Version()
	group.Wait()
	d := compare.Sets(was, is)
	if err := d.Formatting(older, newer.Tables); err != nil {
		return nil, problems, err
	}
	c := &Comparison{Diff: d, Shifts: d.Shifts(), Verdicts: []VerdictChange{}}
	problems = [2]diag.List{nil, d.Problems()}
	var charts [2]matcher.Chart
	group.Go(func() { charts[0] = Chart(was) })
	group.Go(func() { charts[1] = Chart(is) })
	group.Wait()
	asked := c.choose(charts[0], charts[1], every)
	if len(asked) == 0 {
		return c, problems, nil
	}
	core, wrong := coreFor(newer.Static, max(len(charts[0].Rows), len(charts[1].Rows)))
	if wrong.Blocked() {
		problems[1].Add(wrong...)
		return c, problems, nil
	}
	return c, problems, c.ask(core, charts, asked)
}

// One query in words, before it is put.
type putQuery struct {
	of    string
	rank  int // what is asked first when not all is
	query matcher.Query
	mm    []endMM
}

// seeded readings for each row beside its own figures: a careful one, a poor one, and one
// by somebody who does not know the hold. The numbers are standard deviations in mm; the
// readings of a row depend on its id alone, so that a row added moves no other's.
var seeded = []struct {
	cap, across float64
	hold        bool
}{{0.03, 0.15, true}, {0.15, 0.6, true}, {0.03, 0.15, false}}

// mostAsked of the queries near a change are put to both charts unless every one is
// asked for: a query takes the core about 10 ms with 133 rows and 20 ms with ten thousand
// (BenchmarkEffectQuery), and a keeper waits for the answer.
const mostAsked = 24

// choose makes the queries and picks those to ask: without every, those that a change
// can reach, and of these the plain rows' own figures first.
func (c *Comparison) choose(was, is matcher.Chart, every bool) []putQuery {
	changed, everywhere := c.touched(was, is)
	about := reachOf(changed)
	var picked []putQuery
	seen := map[string]bool{}
	add := func(row matcher.ChartRow, rank int, ends []matcher.QueryEnd, mm []endMM) {
		key := keyOf(ends)
		if len(ends) == 0 || seen[key] {
			return
		}
		seen[key] = true
		q := putQuery{row.Name, rank, matcher.Query{Ends: ends}, mm}
		near := everywhere && about.ends > 0 || about.near(mm)
		c.Queries++
		if near {
			c.Near++
		}
		if near || every {
			picked = append(picked, q)
		}
	}
	made := map[string]bool{}
	for _, chart := range []matcher.Chart{was, is} {
		for _, row := range chart.Rows {
			ends, mm := queryEnds(row, nil, 0, 0, true)
			add(row, len(row.Ends), ends, mm)
			if made[row.Name] || len(row.Ends) == 2 {
				continue // readings about a figure that moved stay about the older; two ends are rows of their own
			}
			made[row.Name] = true
			hash := fnv.New64a()
			hash.Write([]byte(row.Name))
			random := rand.New(rand.NewPCG(hash.Sum64(), 20))
			for _, s := range seeded {
				ends, mm := queryEnds(row, random, s.cap, s.across, s.hold)
				add(row, 3, ends, mm)
			}
		}
	}
	slices.SortStableFunc(picked, func(a, b putQuery) int { return a.rank - b.rank })
	if !every {
		picked = picked[:min(len(picked), mostAsked)]
	}
	c.Asked = len(picked)
	return picked
}

// keyOf is another text for other readings.
func keyOf(ends []matcher.QueryEnd) string {
	var b strings.Builder
	for _, end := range ends {
		for _, word := range slices.Concat([]string{end.Hold, end.Faces}, end.Cap, []string{""}, end.Across) {
			b.WriteString(word)
			b.WriteByte(0)
		}
		b.WriteByte(1)
	}
	return b.String()
}

// queryEnds turns a row into readings: its own digits, or off by chance.
func queryEnds(row matcher.ChartRow, random *rand.Rand, cap, across float64, hold bool) ([]matcher.QueryEnd, []endMM) {
	reading := func(v *matcher.ChartValue, off float64) ([]string, float64) {
		switch {
		case v == nil:
			return nil, math.NaN()
		case random == nil:
			return []string{v.Text + " " + v.Unit}, millimetres(v.MM)
		}
		mm := max(0.1, millimetres(v.MM)+random.NormFloat64()*off)
		return []string{strconv.FormatFloat(mm, 'f', 2, 64) + " mm"}, mm
	}
	var ends []matcher.QueryEnd
	var at []endMM
	for _, end := range row.Ends {
		q, mm := matcher.QueryEnd{Hold: end.Hold, Faces: end.Faces}, endMM{}
		q.Cap, mm.cap = reading(end.Cap, cap)
		q.Across, mm.across = reading(end.Across, across)
		if !hold {
			q.Hold = string(tables.UnknownHold)
		}
		if len(q.Cap)+len(q.Across) > 0 {
			ends, at = append(ends, q), append(at, mm)
		}
	}
	return ends, at
}

func millimetres(text string) float64 {
	mm, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("internal error: " + err.Error()) // tables writes decimals
	}
	return mm
}

// touched lists the ends that are not the same in both charts, also those of the sizes
// that gained or lost a twin. Everywhere is true when holds and faces came or went: the
// core then refuses, or stops refusing, readings of any size.
func (c *Comparison) touched(was, is matcher.Chart) (ends []matcher.ChartEnd, everywhere bool) {
	older, newer := c.described(was, c.NowCalled), c.described(is, func(id string) string { return id })
	for _, side := range []struct {
		mine, other map[string]described
	}{{older, newer}, {newer, older}} {
		for id, d := range side.mine {
			if o, there := side.other[id]; !there || o.size != d.size || !sameToCore(o.row, d.row) {
				ends = append(ends, d.row.Ends...)
			}
		}
	}
	return ends, holdsAndFaces(was) != holdsAndFaces(is)
}

// described is all that the core reads of a row, in today's names.
type described struct {
	row  *matcher.ChartRow
	size string // the names of the rows that are its size
}

func (c *Comparison) described(chart matcher.Chart, called func(string) string) map[string]described {
	names := map[int][]string{}
	for i := range chart.Rows {
		row := &chart.Rows[i]
		names[row.Size] = append(names[row.Size], called(row.Name))
	}
	sizes := make(map[int]string, len(names))
	for size, list := range names {
		slices.Sort(list)
		sizes[size] = strings.Join(list, "\x00")
	}
	out := make(map[string]described, len(chart.Rows))
	for i := range chart.Rows {
		row := &chart.Rows[i]
		out[called(row.Name)] = described{row, sizes[row.Size]}
	}
	return out
}

// sameToCore reports two rows of the same name that the core takes for the same.
func sameToCore(a, b *matcher.ChartRow) bool {
	return a.Basis == b.Basis && slices.EqualFunc(a.Ends, b.Ends, func(e, f matcher.ChartEnd) bool {
		caps, acrosses := sameInCore(e.Cap, f.Cap), sameInCore(e.Across, f.Across)
		e.Cap, e.Across, f.Cap, f.Across = nil, nil, nil, nil
		return caps && acrosses && e == f
	})
}

func sameInCore(v, w *matcher.ChartValue) bool {
	if v == nil || w == nil {
		return v == w
	}
	return v.MM == w.MM && v.Half == w.Half && v.Text == w.Text && v.Unit == w.Unit && v.Basis == w.Basis && slices.Equal(v.Others, w.Others)
}

// holdsAndFaces are the pairs of them that a chart has.
func holdsAndFaces(chart matcher.Chart) string {
	all := map[string]bool{}
	for _, row := range chart.Rows {
		for _, end := range row.Ends {
			all[end.Hold+" "+end.Faces] = true
		}
	}
	list := make([]string, 0, len(all))
	for kind := range all {
		list = append(list, kind)
	}
	slices.Sort(list)
	return strings.Join(list, ",")
}

// ask puts the queries to both charts at once, one machine each.
func (c *Comparison) ask(core []byte, charts [2]matcher.Chart, asked []putQuery) error {
	var answers [2][]Concluded
	var failed [2]error
	var addresses []string
	var group sync.WaitGroup
	for n, chart := range charts {
		called := func(id string) string { return id }
		if n == 0 {
			called = c.NowCalled
		}
		group.Go(func() {
			m, err := newMatcher(core, chart)
			for i := 0; err == nil && i < len(asked); i++ {
				var a matcher.Answer
				if a, err = m.Identify(asked[i].query); err == nil {
					answers[n] = append(answers[n], concluded(a, called))
				}
				if err == nil && n == 1 {
					var address string
					address, err = m.Address(asked[i].query)
					addresses = append(addresses, address)
				}
			}
			failed[n] = err
		})
	}
	group.Wait()
	if err := errors.Join(failed[:]...); err != nil {
		return fmt.Errorf("work out the effect: %w", err)
	}
	for i, q := range asked {
		was, is := answers[0][i], answers[1][i]
		if was.Verdict != is.Verdict || !slices.Equal(was.Rows, is.Rows) {
			c.Verdicts = append(c.Verdicts, VerdictChange{q.of, asks(q.query), "/identify/#" + addresses[i], q.query, was, is})
		}
	}
	return nil
}

func concluded(a matcher.Answer, called func(string) string) Concluded {
	out := Concluded{Verdict: a.Verdict, Rows: []string{}}
	for _, size := range a.Sizes {
		for _, ref := range size.Rows {
			out.Rows = append(out.Rows, called(rowOf(ref)))
		}
	}
	slices.Sort(out.Rows)
	out.Rows = slices.Compact(out.Rows) // a joint of two like ends agrees either way round
	return out
}

// asks is a query in words: "outside-clip, cap 1.062 in, across 3.219 in".
func asks(q matcher.Query) string {
	var ends []string
	for _, end := range q.Ends {
		words := []string{end.Hold}
		if len(end.Cap) > 0 {
			words = append(words, "cap "+end.Cap[0])
		}
		if len(end.Across) > 0 {
			words = append(words, "across "+end.Across[0])
		}
		ends = append(ends, strings.Join(words, ", "))
	}
	return strings.Join(ends, "; and ")
}
