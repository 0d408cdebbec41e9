package matcher

import (
	"cmp"
	"maps"
	"math"
	"slices"
)

// entity is what comes into one piece together: the rows of a size, or a conversion joint
// for one of its ends.
type entity struct {
	rows   []int   // places in the chart
	spans  [2]span // of cap and across
	coarse [2]coarsest
}

// span is from the least to the greatest figure, mm. Open is one in which a figure is
// missing, which may be anything.
type span struct {
	from, to float64
	open     bool
}

var nowhere = span{from: math.Inf(1), to: math.Inf(-1)}

func (s span) with(v *value) span {
	if !v.there {
		s.open = true
		return s
	}
	s.from, s.to = min(s.from, v.lead.mm), max(s.to, v.lead.mm)
	for _, other := range v.others {
		s.from, s.to = min(s.from, other.mm), max(s.to, other.mm)
	}
	return s
}

func (s span) join(t span) span {
	return span{from: min(s.from, t.from), to: max(s.to, t.to), open: s.open || t.open}
}

// least and greatest are in hundredths of a millimetre, outwards; -1 for any. The little
// more is for what multiplying rounds away.
func (s span) least() int {
	if s.open {
		return -1
	}
	return int(math.Floor(s.from*100 - 1e-6))
}

func (s span) greatest() int {
	if s.open {
		return -1
	}
	return int(math.Ceil(s.to*100 + 1e-6))
}

func (s span) middle() float64 { return (s.from + s.to) / 2 }

// take widens an entity by ends.
func (e *entity) take(ends []end, coarse []int) {
	for i := range ends {
		for q := range ends[i].values {
			v := &ends[i].values[q]
			e.spans[q] = e.spans[q].with(v)
			if v.there {
				e.coarse[q].take(v.lead.basis, coarse[v.lead.as])
			}
			for _, other := range v.others {
				e.coarse[q].take(other.basis, coarse[other.as])
			}
		}
	}
}

// entities lists a chart's sizes and the ends of its conversion joints, in the chart's order.
func (s *splitter) entities() []*entity {
	coarse := make([]int, len(s.ways))
	for n, way := range s.ways {
		coarse[n] = way.coarse()
	}
	var list []*entity
	bySize := map[int]*entity{}
	for n := range s.rows {
		r := &s.rows[n]
		if len(r.ends) == 2 {
			for i := range r.ends {
				e := &entity{rows: []int{n}, spans: [2]span{nowhere, nowhere}}
				e.take(r.ends[i:i+1], coarse)
				list = append(list, e)
			}
			continue
		}
		e := bySize[r.size]
		if e == nil {
			e = &entity{spans: [2]span{nowhere, nowhere}}
			bySize[r.size] = e
			list = append(list, e)
		}
		e.rows = append(e.rows, n)
		e.take(r.ends, coarse)
	}
	return list
}

// inPart is how many full pieces a part of the directory has; there are up to twice as many
// in it, as many of them are not full.
const inPart = 12

// cut lists the pieces, of at most so many rows, part by part of the directory. What is as
// vague as each other lies by itself, and so does what lacks a figure.
func cut(list []*entity, most int) [][][]*entity {
	groups := map[int]map[int][]*entity{} // by how vague, and by what is missing
	for _, e := range list {
		vague := e.vague()
		if groups[vague] == nil {
			groups[vague] = map[int][]*entity{}
		}
		groups[vague][e.open()] = append(groups[vague][e.open()], e)
	}
	var out [][][]*entity
	for _, vague := range slices.Sorted(maps.Keys(groups)) {
		out = append(out, cutAlike(groups[vague], most)...)
	}
	return out
}

// cutAlike cuts what is as vague as each other: into one part where that is enough for all.
func cutAlike(groups map[int][]*entity, most int) (parts [][][]*entity) {
	var all [][]*entity
	rows := 0
	for _, open := range slices.Sorted(maps.Keys(groups)) {
		for _, part := range halve(groups[open], inPart*most) {
			pieces := halve(part, most)
			parts, all = append(parts, pieces), append(all, pieces...)
			rows += rowsOf(part)
		}
	}
	if rows <= inPart*most {
		return [][][]*entity{all}
	}
	return parts
}

// open is a bit for each quantity of which a figure is missing.
func (e *entity) open() int {
	which := 0
	for q, s := range e.spans {
		if s.open {
			which += 1 << q
		}
	}
	return which
}

func rowsOf(list []*entity) int {
	rows := 0
	for _, e := range list {
		rows += len(e.rows)
	}
	return rows
}

// halve halves a list until no part has more rows than that, by cap or across, whichever is
// spread farther.
func halve(list []*entity, most int) [][]*entity {
	if rowsOf(list) <= most || len(list) == 1 {
		return [][]*entity{list}
	}
	spans := boundsOf(list).spans
	by := 0
	// Caps come in few sizes and are spread less: a millimetre of them is worth more of across.
	if spans[0].open || !spans[1].open && spans[1].to-spans[1].from > 2*(spans[0].to-spans[0].from) {
		by = 1
	}
	slices.SortStableFunc(list, func(a, b *entity) int { return cmp.Compare(a.spans[by].middle(), b.spans[by].middle()) })
	half := len(list) / 2
	return append(halve(list[:half:half], most), halve(list[half:], most)...)
}

func boundsOf(list []*entity) entity {
	out := entity{spans: [2]span{nowhere, nowhere}}
	for _, e := range list {
		for q := range out.spans {
			out.spans[q] = out.spans[q].join(e.spans[q])
			out.coarse[q].join(e.coarse[q])
		}
	}
	return out
}
