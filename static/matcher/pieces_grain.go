package matcher

import "slices"

// vaguer parts the sizes by the coarsest of their figures: half of its last digit, µm. What
// is printed as 1 1/2 in matters to readings a centimetre off, and where such rows lay among
// others each question would touch half the chart.
var vaguer = []int{500, 1000, 2000}

// coarsest is the most that half of a last digit is, µm, by basis.
type coarsest [4]int

func (c *coarsest) take(basis byte, half int) { c[basis] = max(c[basis], half) }

func (c *coarsest) join(d coarsest) {
	for basis, half := range d {
		c[basis] = max(c[basis], half)
	}
}

// vague is a place among vaguer, or behind the last.
func (e *entity) vague() int {
	most := 0
	for q := range e.coarse {
		most = max(most, slices.Max(e.coarse[q][:]))
	}
	n, _ := slices.BinarySearch(vaguer, most)
	return n
}

// grain is how vague the figures in some pieces may be, by basis.
type grain struct {
	Cap    map[Basis]int `json:"cap"`
	Across map[Basis]int `json:"across"`
}

// grainsOf lists what is as vague as each other, and where each piece is in that list.
func grainsOf(bounds []entity) (list []grain, of []int) {
	var vague []int
	most := map[int]*entity{}
	for n := range bounds {
		v := bounds[n].vague()
		if most[v] == nil {
			vague = append(vague, v)
			most[v] = &entity{}
		}
		for q := range bounds[n].coarse {
			most[v].coarse[q].join(bounds[n].coarse[q])
		}
	}
	slices.Sort(vague)
	list = []grain{}
	for _, v := range vague {
		list = append(list, grain{most[v].coarse[0].byBasis(), most[v].coarse[1].byBasis()})
	}
	for n := range bounds {
		of = append(of, slices.Index(vague, bounds[n].vague()))
	}
	return list, of
}

func (c coarsest) byBasis() map[Basis]int {
	out := map[Basis]int{}
	for basis, half := range c {
		if half > 0 {
			out[pieceBases[basis]] = half
		}
	}
	return out
}
