package matcher

import (
	"bytes"
	"cmp"
	"maps"
	"slices"
)

// standing is what a row weighs before measuring: its weakest basis, and how many of its
// holds and faces are unknown.
type standing struct{ basis, open byte }

func (s standing) compare(t standing) int {
	return cmp.Or(cmp.Compare(s.basis, t.basis), cmp.Compare(s.open, t.open))
}

func (s standing) pair() []any { return []any{pieceBases[s.basis], s.open} }

var (
	unknownHold  = byte(slices.Index(Holds, "unknown"))
	unknownFaces = byte(slices.Index(pieceFaces, "unknown"))
)

func standingOf(r *row) standing {
	stands := standing{basis: r.basis}
	for i := range r.ends {
		end := &r.ends[i]
		for q := range end.values {
			if end.values[q].there {
				stands.basis = min(stands.basis, end.values[q].lead.basis)
			}
		}
		if end.hold == unknownHold {
			stands.open++
		}
		if end.faces == unknownFaces {
			stands.open++
		}
	}
	return stands
}

// weigh counts sizes and conversion joints by what they weigh.
func (s *splitter) weigh() {
	sizes, conversions := map[int][]standing{}, map[standing]int{}
	for n := range s.rows {
		r := &s.rows[n]
		stands := standingOf(r)
		if len(r.ends) == 2 {
			conversions[stands]++
			continue
		}
		s.out.Plain++
		if !slices.Contains(sizes[r.size], stands) {
			sizes[r.size] = append(sizes[r.size], stands)
		}
	}
	s.out.Conversions = [][]any{}
	for _, stands := range slices.SortedFunc(maps.Keys(conversions), standing.compare) {
		s.out.Conversions = append(s.out.Conversions, []any{conversions[stands], stands.pair()})
	}
	groups := map[string]int{} // by the bytes of their standings
	for _, list := range sizes {
		slices.SortFunc(list, standing.compare)
		var key []byte
		for _, stands := range list {
			key = append(key, stands.basis, stands.open)
		}
		groups[string(key)]++
	}
	s.out.Sizes = [][]any{}
	for _, key := range slices.Sorted(maps.Keys(groups)) {
		group := []any{groups[key]}
		for pair := range slices.Chunk([]byte(key), 2) {
			group = append(group, standing{pair[0], pair[1]}.pair())
		}
		s.out.Sizes = append(s.out.Sizes, group)
	}
}

// faces lists each hold with its faces, in the order in which the chart has them: that is
// the order in which they are spoken of.
func (s *splitter) faces() [][]string {
	var order []byte
	found := map[byte][]byte{}
	for n := range s.rows {
		for i := range s.rows[n].ends {
			end := &s.rows[n].ends[i]
			if found[end.hold] == nil {
				order = append(order, end.hold)
			}
			if !bytes.Contains(found[end.hold], []byte{end.faces}) {
				found[end.hold] = append(found[end.hold], end.faces)
			}
		}
	}
	out := [][]string{}
	for _, hold := range order {
		list := []string{Holds[hold]}
		for _, faces := range found[hold] {
			list = append(list, pieceFaces[faces])
		}
		out = append(out, list)
	}
	return out
}
