package build

import (
	"hash/fnv"
	"hash/maphash"
	"math"
	"math/rand/v2"
	"runtime"
	"slices"
	"strconv"

	"capspan/static/matcher"
	"capspan/tables"
)

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
// (BenchmarkEffectQuery), and a keeper waits for the answer. In a large chart a reading is
// near hundreds of kits, and takes the longer.
const mostAsked, mostAskedOfMany = 24, 4

func mostToAsk(rows int) int {
	if rows > largeRows {
		return mostAskedOfMany
	}
	return mostAsked
}

// choose makes the queries and picks those to ask: without every, those that a change
// can reach, and of these the own figures of the rows that changed first, then those of
// plain rows. Of a large chart nearly all queries are far away, and only told apart.
func (c *Comparison) choose(was, is matcher.Chart, every bool) []putQuery {
	changes := c.touched(was, is)
	about := reachOf(changes.ends)
	near := func(mm []endMM) bool { return changes.everywhere && about.ends > 0 || about.near(mm) }
	var picked []putQuery
	seen := make(map[[2]uint64]int, 4*len(is.Rows)) // the place among the picked; -1 for one that is not
	made := make(map[string]bool, len(was.Rows))
	for n, chart := range []matcher.Chart{was, is} {
		asBefore := func(row *matcher.ChartRow) bool {
			name := row.Name
			if n == 0 {
				name = c.NowCalled(name)
			}
			return changes.asBefore[name]
		}
		skip := func(row *matcher.ChartRow) (own, more bool) {
			// Readings about a figure that moved stay about the older; two ends are rows of their own.
			return n == 1 && asBefore(row), made[row.Name] || len(row.Ends) == 2
		}
		rank := func(row *matcher.ChartRow) int {
			if asBefore(row) {
				return len(row.Ends)
			}
			return 0
		}
		for _, part := range queriesOf(chart, skip, rank, near, every) {
			next := 0 // of those that may be asked
			for _, query := range part.made {
				var put *putQuery
				if query.put {
					put = &part.put[next]
					next++
				}
				if at, known := seen[query.key]; known {
					if at >= 0 {
						picked[at].rank = min(picked[at].rank, query.rank)
					}
					continue
				}
				seen[query.key] = -1
				c.Queries++
				if query.near {
					c.Near++
				}
				if put != nil {
					seen[query.key] = len(picked)
					picked = append(picked, *put)
				}
			}
		}
		for i := range chart.Rows {
			if row := &chart.Rows[i]; len(row.Ends) != 2 {
				made[row.Name] = true
			}
		}
	}
	slices.SortStableFunc(picked, func(a, b putQuery) int { return a.rank - b.rank })
	if !every {
		picked = picked[:min(len(picked), mostToAsk(max(len(was.Rows), len(is.Rows))))]
	}
	c.Asked = len(picked)
	return picked
}

// madeQuery is a query by a key that tells its readings from others. It is put into words when
// it may be asked.
type madeQuery struct {
	key       [2]uint64
	rank      int
	near, put bool
}

// queriesOf makes the queries of a chart, in its order, on all cores. It leaves out the
// rows' own figures, or the readings about them, where skip says so.
func queriesOf(chart matcher.Chart, skip func(*matcher.ChartRow) (own, more bool), rank func(*matcher.ChartRow) int, near func([]endMM) bool, every bool) []queryMaker {
	parts := make([]queryMaker, runtime.GOMAXPROCS(0)*4)
	onAllCores(len(parts), func(n int) {
		rows := chart.Rows[n*len(chart.Rows)/len(parts) : (n+1)*len(chart.Rows)/len(parts)]
		m := queryMaker{near: near, every: every, made: make([]madeQuery, 0, len(rows)*(1+len(seeded)))}
		source := rand.NewPCG(0, 0)
		random := rand.New(source)
		for i := range rows {
			row := &rows[i]
			own, more := skip(row)
			if !own {
				m.add(row, rank(row), nil, 0, 0, true)
			}
			if more {
				continue
			}
			hash := fnv.New64a()
			hash.Write([]byte(row.Name))
			source.Seed(hash.Sum64(), 20)
			for _, s := range seeded {
				m.add(row, 3, random, s.cap, s.across, s.hold)
			}
		}
		parts[n] = m
	})
	return parts
}

// queryMaker makes queries one after the other.
type queryMaker struct {
	near     func([]endMM) bool
	every    bool
	made     []madeQuery
	put      []putQuery // in the order of the made
	readings []endReadings
	mm       []endMM
	text     []byte
}

// The seeds of two hashes: together they take no two texts for the same in a lifetime.
var oneSeed, otherSeed = maphash.MakeSeed(), maphash.MakeSeed()

// add makes the query of a row with readings as [drawn] gives them; nobody asks one without any.
func (m *queryMaker) add(row *matcher.ChartRow, rank int, random *rand.Rand, cap, across float64, hold bool) {
	m.readings = drawn(m.readings[:0], row, random, cap, across)
	mm, text := m.mm[:0], m.text[:0]
	for i, r := range m.readings {
		if r.nothing() {
			continue
		}
		mm = append(mm, endMM{r.cap.mm, r.across.mm})
		text = append(append(text, r.hold(row.Ends[i], hold)...), 0)
		text = append(append(text, row.Ends[i].Faces...), 0)
		text = append(r.across.append(append(r.cap.append(text), 0)), 1)
	}
	m.mm, m.text = mm, text
	if len(mm) == 0 {
		return
	}
	near := m.near(mm)
	m.made = append(m.made, madeQuery{[2]uint64{maphash.Bytes(oneSeed, text), maphash.Bytes(otherSeed, text)}, rank, near, near || m.every})
	if near || m.every {
		m.put = append(m.put, putQuery{row.Name, rank, matcher.Query{Ends: queryEnds(row, m.readings, hold)}, slices.Clone(mm)})
	}
}

// endReadings are what is read at an end.
type endReadings struct{ cap, across oneReading }

func (r endReadings) nothing() bool { return r.cap.of == nil && r.across.of == nil }

func (r endReadings) hold(end matcher.ChartEnd, known bool) string {
	if known {
		return end.Hold
	}
	return string(tables.UnknownHold)
}

// oneReading is of a figure of the chart: its own digits, or off by chance.
type oneReading struct {
	of  *matcher.ChartValue // nil when nothing was measured
	mm  float64             // NaN then
	off bool
}

// append writes the reading as somebody types it.
func (r oneReading) append(b []byte) []byte {
	switch {
	case r.of == nil:
		return b
	case r.off:
		return append(strconv.AppendFloat(b, r.mm, 'f', 2, 64), " mm"...)
	}
	return append(append(append(b, r.of.Text...), ' '), r.of.Unit...)
}

func (r oneReading) list() []string {
	if r.of == nil {
		return nil
	}
	return []string{string(r.append(nil))}
}

// drawn appends the readings of a row: its own digits, or off by chance.
func drawn(out []endReadings, row *matcher.ChartRow, random *rand.Rand, cap, across float64) []endReadings {
	reading := func(v *matcher.ChartValue, off float64) oneReading {
		switch {
		case v == nil:
			return oneReading{mm: math.NaN()}
		case random == nil:
			return oneReading{v, millimetres(v.MM), false}
		}
		return oneReading{v, max(0.1, millimetres(v.MM)+random.NormFloat64()*off), true}
	}
	for i := range row.Ends {
		read := reading(row.Ends[i].Cap, cap) // before the other: chance has an order
		out = append(out, endReadings{read, reading(row.Ends[i].Across, across)})
	}
	return out
}

// queryEnds puts the readings of a row into words.
func queryEnds(row *matcher.ChartRow, readings []endReadings, hold bool) []matcher.QueryEnd {
	var ends []matcher.QueryEnd
	for i, r := range readings {
		if !r.nothing() {
			end := row.Ends[i]
			ends = append(ends, matcher.QueryEnd{Hold: r.hold(end, hold), Faces: end.Faces, Cap: r.cap.list(), Across: r.across.list()})
		}
	}
	return ends
}

func millimetres(text string) float64 {
	mm, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("internal error: " + err.Error()) // tables writes decimals
	}
	return mm
}
