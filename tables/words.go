package tables

import "slices"

// The words a table may use, in the order in which they are listed to a reader.
var (
	kinds       = []Kind{Holds, Length, Torque, Count, Number, Text}
	units       = []Unit{Inch, Millimetre, PoundFoot, NewtonMetre}
	bases       = []Basis{Published, Measured, CommonPractice, Memory}
	holds       = []Hold{OutsideClip, InsideClip, Plate, Strap, Wing, Injected, Staked, UnknownHold}
	faces       = []Faces{OverCaps, GrooveInner, GrooveOuter, UnderPlates, HoleCentres, WingOuter, UnknownFaces}
	matches     = []Match{Exact, Outside, Inside, Circle}
	sourceKinds = []string{"standard", "manual", "catalogue", "article", "listing", "measurement"}
)

// facesOf says which faces an across can be measured between, the usual ones first.
var facesOf = map[Hold][]Faces{
	OutsideClip: {OverCaps},
	InsideClip:  {GrooveInner, GrooveOuter},
	Plate:       {UnderPlates},
	Strap:       {OverCaps},
	Wing:        {WingOuter, HoleCentres},
	Injected:    {OverCaps},
	Staked:      {OverCaps},
}

// FacesFor lists the faces that go with a hold, the usual ones first; none for an
// unknown hold.
func FacesFor(h Hold) []Faces { return slices.Clone(facesOf[h]) }

// Vocabulary is every word a table may use, for those who check one elsewhere.
type Vocabulary struct {
	Kinds      []string         `json:"kinds"` // of sources
	Bases      []Basis          `json:"bases"`
	Holds      map[Hold][]Faces `json:"holds"` // with the faces that go with each; none: all do
	Faces      []Faces          `json:"faces"`
	Tools      []string         `json:"tools"` // what a measurement was taken with
	Conditions []string         `json:"conditions"`
}

// Words lists them.
func Words() Vocabulary {
	v := Vocabulary{slices.Clone(sourceKinds), slices.Clone(bases), map[Hold][]Faces{}, slices.Clone(faces), slices.Clone(tools), slices.Clone(conditions)}
	for _, h := range holds {
		v.Holds[h] = append([]Faces{}, facesOf[h]...)
	}
	return v
}

// goTogether reports whether the faces can be measured on such a hold; unknown goes
// with everything.
func goTogether(h Hold, f Faces) bool {
	return h == UnknownHold || h == "" || f == UnknownFaces || f == "" || slices.Contains(facesOf[h], f)
}

// Weaker reports whether a is a weaker reason than b to believe a value.
func (b Basis) Weaker(than Basis) bool {
	return slices.Index(bases, b) > slices.Index(bases, than)
}

// The ids of the columns every joint table has.
const (
	holdColumn   = "hold"
	capColumn    = "cap"
	acrossColumn = "across"
)

// Joint reports whether the table holds joints: it has the columns hold, cap and across.
func (t *Table) Joint() bool {
	for i := range t.Columns {
		if t.Columns[i].ID == holdColumn {
			return true
		}
	}
	return false
}

// Column finds a declared column.
func (t *Table) Column(id string) (Column, bool) {
	for i := range t.Columns {
		if t.Columns[i].ID == id {
			return t.Columns[i], true
		}
	}
	return Column{}, false
}
