package matcher

import (
	"cmp"
	"math"
	"slices"
	"strconv"
)

// entity is what comes into one piece together: the rows of a size, or a conversion joint
// for one of its ends.
type entity struct {
	rows        []int // places in the chart
	cap, across span
}

// span is from the least to the greatest figure, mm. Open is one in which a figure is
// missing, which may be anything.
type span struct {
	from, to float64
	open     bool
}

var nowhere = span{from: math.Inf(1), to: math.Inf(-1)}

func (s span) with(v *ChartValue) span {
	if v == nil {
		s.open = true
		return s
	}
	s = s.reach(v.MM)
	for _, other := range v.Others {
		s = s.reach(other.MM)
	}
	return s
}

func (s span) reach(text string) span {
	mm, err := strconv.ParseFloat(text, 64)
	if err != nil {
		s.open = true // found wherever it is looked for; the core will say what is wrong with it
		return s
	}
	s.from, s.to = min(s.from, mm), max(s.to, mm)
	return s
}

func (s span) join(t span) span {
	return span{from: min(s.from, t.from), to: max(s.to, t.to), open: s.open || t.open}
}

// least and greatest are in µm, outwards; nil for any.
func (s span) least() any {
	if s.open {
		return nil
	}
	return int(math.Floor(s.from * 1000))
}

func (s span) greatest() any {
	if s.open {
		return nil
	}
	return int(math.Ceil(s.to * 1000))
}

func (s span) middle() float64 { return (s.from + s.to) / 2 }

// entities lists a chart's sizes and the ends of its conversion joints, in the chart's order.
func (s *splitter) entities() []*entity {
	var list []*entity
	bySize := map[int]*entity{}
	for n, row := range s.chart.Rows {
		if len(row.Ends) == 2 {
			for _, end := range row.Ends {
				list = append(list, &entity{rows: []int{n}, cap: nowhere.with(end.Cap), across: nowhere.with(end.Across)})
			}
			continue
		}
		e := bySize[row.Size]
		if e == nil {
			e = &entity{cap: nowhere, across: nowhere}
			bySize[row.Size] = e
			list = append(list, e)
		}
		e.rows = append(e.rows, n)
		for _, end := range row.Ends {
			e.cap, e.across = e.cap.with(end.Cap), e.across.with(end.Across)
		}
	}
	return list
}

// cut halves a list until no part has more rows than that: what lacks a figure by itself,
// the rest by cap or across, whichever is spread farther.
func cut(list []*entity, most int) [][]*entity {
	var groups [4][]*entity
	for _, e := range list {
		which := 0
		if e.cap.open {
			which++
		}
		if e.across.open {
			which += 2
		}
		groups[which] = append(groups[which], e)
	}
	var out [][]*entity
	for _, group := range groups {
		if len(group) > 0 {
			out = append(out, halve(group, most)...)
		}
	}
	return out
}

func halve(list []*entity, most int) [][]*entity {
	rows := 0
	for _, e := range list {
		rows += len(e.rows)
	}
	if rows <= most || len(list) == 1 {
		return [][]*entity{list}
	}
	b := boundsOf(list)
	by := func(e *entity) float64 { return e.cap.middle() }
	// Caps come in few sizes and are spread less: a millimetre of them is worth more of across.
	if b.cap.open || !b.across.open && b.across.to-b.across.from > 2*(b.cap.to-b.cap.from) {
		by = func(e *entity) float64 { return e.across.middle() }
	}
	slices.SortStableFunc(list, func(a, b *entity) int { return cmp.Compare(by(a), by(b)) })
	half := len(list) / 2
	return append(halve(list[:half:half], most), halve(list[half:], most)...)
}

func boundsOf(list []*entity) entity {
	out := entity{cap: nowhere, across: nowhere}
	for _, e := range list {
		out.cap, out.across = out.cap.join(e.cap), out.across.join(e.across)
	}
	return out
}
