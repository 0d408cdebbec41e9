package catalogue

import (
	"math"
	"slices"
	"strconv"

	"capspan/tables"
)

// conversion is how two sizes are joined in the chart: how each end is held, and how much
// greater the second is.
type conversion struct {
	table       string
	holds       [2]string
	cap, across float64 // logarithms of second over first
	also        int
	note        bool
	believed
}

func conversionOf(r *tables.Row) conversion {
	first, second := r.Ends[0], r.Ends[1]
	ratio := func(v, w tables.Value) float64 {
		if v.Quantity.IsZero() || w.Quantity.IsZero() {
			return 0
		}
		return math.Log(w.Quantity.Float() / v.Quantity.Float())
	}
	return conversion{table: r.Table.ID, holds: [2]string{first.Hold.Word(), second.Hold.Word()},
		cap: ratio(first.Cap, second.Cap), across: ratio(first.Across, second.Across),
		also: len(r.Also), note: r.Note != "", believed: believed{basis: r.Basis, source: len(r.Sources) > 0, at: r.At != ""}}
}

// joined makes a conversion joint of two sizes and the kits of those who list it. Where no
// two sizes are held as the pattern is, nothing is made.
func (m *maker) joined(n int) {
	c := &m.patterns.conversions[m.random.IntN(len(m.patterns.conversions))]
	first, ok := m.held(c.holds[0])
	if !ok {
		return
	}
	second, ok := m.partner(c, first)
	if !ok || m.pairs[[2]int{first, second}] || m.pairs[[2]int{second, first}] {
		return
	}
	m.pairs[[2]int{first, second}] = true
	likes := [2]string{m.sizes[first].kits[0], m.sizes[second].kits[0]}
	kits := &[]string{}
	for _, who := range m.who() {
		id := "c" + strconv.Itoa(n) + "-" + letter(who)
		*kits = append(*kits, id)
		m.rows = append(m.rows, row{id, c.table, func(b *writer) { b.joined(id, c, likes, who, *kits) }, kits})
	}
}

// looks is how many sizes are looked at for an end.
const looks = 200

// held draws a size held in that way.
func (m *maker) held(hold string) (int, bool) {
	for range looks {
		if n := m.random.IntN(len(m.sizes)); m.sizes[n].hold == hold && m.sizes[n].cap > 0 {
			return n, true
		}
	}
	return 0, false
}

// partner is of some sizes drawn the one whose figures come nearest to the pattern's.
func (m *maker) partner(c *conversion, first int) (int, bool) {
	cap, across := m.sizes[first].cap*math.Exp(c.cap), m.sizes[first].across*math.Exp(c.across)
	best, least := -1, math.Inf(1)
	for range looks {
		n := m.random.IntN(len(m.sizes))
		s := &m.sizes[n]
		if n == first || s.hold != c.holds[1] || s.cap == 0 {
			continue
		}
		if away := math.Hypot(math.Log(s.cap/cap), math.Log(s.across/across)); away < least {
			best, least = n, away
		}
	}
	return best, best >= 0
}

// without is a list of kits but for one.
func without(kits []string, id string) []string {
	return slices.DeleteFunc(slices.Clone(kits), func(k string) bool { return k == id })
}
