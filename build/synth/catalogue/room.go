package catalogue

import (
	"math"

	"capspan/tables"
)

// room is where sizes are: what a caliper would take for one of them is taken.
type room struct{ cells map[[2]int][]taken }

// taken is a printed row of a size.
type taken struct {
	cap, across float64 // mm; a cap of 0 does not exist
	hold        string
	faces       tables.Faces
}

// What a caliper cannot tell apart is what tables.SameSize says, and a little more, so
// that no rounding of a float matters here.
const (
	capApart    = 0.0501 // mm
	acrossApart = 0.1501 // mm
)

func newRoom() *room { return &room{map[[2]int][]taken{}} }

func (t taken) cell() [2]int {
	return [2]int{int(math.Floor(t.cap / capApart)), int(math.Floor(t.across / acrossApart))}
}

// same reports that a caliper could take one for the other.
func (t taken) same(u taken) bool {
	const unknown = string(tables.UnknownHold)
	return math.Abs(t.cap-u.cap) <= capApart && math.Abs(t.across-u.across) <= acrossApart &&
		(t.hold == u.hold || t.hold == unknown || u.hold == unknown) &&
		(t.faces == u.faces || t.faces == tables.UnknownFaces || u.faces == tables.UnknownFaces)
}

func (r *room) free(t taken) bool {
	at := t.cell()
	for i := -1; i <= 1; i++ {
		for k := -1; k <= 1; k++ {
			for _, u := range r.cells[[2]int{at[0] + i, at[1] + k}] {
				if t.same(u) {
					return false
				}
			}
		}
	}
	return true
}

func (r *room) take(t taken) {
	at := t.cell()
	r.cells[at] = append(r.cells[at], t)
}
