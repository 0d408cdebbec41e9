// Package tables owns the chart: the YAML tables in this folder and everything that
// reads, checks, formats and exports them. Nobody else parses those files.
//
// [Load] reads a folder into a [Set] and reports every problem at once. A Set holds
// [Table]s; a table declares its [Column]s and holds [Row]s; a row holds one [Value]
// for each column, and each value says why it is believed. A row of a joint table
// also has [End]s: one when both ends of the cross are alike, two for a conversion
// joint, whose ends name other rows ("like") and are resolved by Load.
//
// Numbers are never floats here: [Quantity] keeps the digits somebody wrote and the
// exact rational they stand for.
package tables

import (
	"embed"
	"sync"

	"capspan/build/diag"
)

// FS holds the shipped tables. Load never uses it by itself: the caller passes it.
//
//go:embed *.yaml
var FS embed.FS

// Set is the whole chart.
type Set struct {
	Tables  []*Table  // in the order of their file names
	Sources []*Source // in the order of the registry
	Retired []Retired
	History []Release // newest first, as recorded

	all    []*Row         // its rows, in their order; of a sample, those of the whole chart
	byID   map[string]int // the place among them by id in lower case
	bySpan spans          // of what a Reader read
	of     *Set           // the chart it says in another language; nil for the chart itself
	whole  *Set           // the chart it is a sample of; nil where nothing was left out
	beside neighbours
	memory *setMemory // nil of a set that is loaded once
	named  struct {
		once sync.Once
		as   Version
	}
	sized struct {
		once sync.Once
		list [][]*Row
	}
}

// Version names a table's or the chart's issue.
type Version struct {
	Number string // major.minor.patch; empty for the chart as a whole
	Date   string // YYYY-MM-DD
	Hash   string // first 7 hex digits of the content's SHA-256; set for the chart

	NumberPos, DatePos diag.Pos // where a table says them
}

// Table is one YAML file of rows of the same kind.
type Table struct {
	ID      string // the file's name without .yaml
	Title   string
	About   string // one or two sentences
	Version Version
	Unit    Unit
	// Cautions go wherever the rows are shown: what a reader must know before using them.
	Cautions []string
	Columns  []Column
	Rows     []*Row
	Pos      diag.Pos

	source []byte // the file as it was read, to which the places of the rows belong
}

// Kind says what a column holds.
type Kind string

const (
	Length Kind = "length" // a Quantity in the column's unit
	Torque Kind = "torque" // the same, of a tightening torque
	Count  Kind = "count"  // a whole number
	Number Kind = "number" // a decimal without unit
	Text   Kind = "text"
	Holds  Kind = "hold" // one of the holds
)

// Column is declared in a table's head.
type Column struct {
	ID       string
	Label    string
	Kind     Kind
	Unit     Unit     // for lengths and torques: the table's unless given
	Range    bool     // a cell may hold a range, such as 26-35
	Least    Quantity // least and greatest plausible value
	Greatest Quantity
	Method   string // the guide page that tells how to measure it: a slug under /measure/
	Match    Match  // how a reading is compared with it; empty: the column is not matched
	// Below is how far a part may measure under an outside figure that is a nominal one, a
	// name more than a size; without digits when the figure is the size.
	Below Quantity
	Pos   diag.Pos
}

// Match is how readings are compared with a column of a table that holds no joints, so
// that its rows can be identified (match.go).
type Match string

const (
	Exact   Match = "exact"   // a count: the same or not
	Outside Match = "outside" // a length over the outside: wear reads short
	Inside  Match = "inside"  // a bore or recess: wear reads long
	Circle  Match = "circle"  // the circle holes lie on: read from hole to hole
)

// Row is one entry; its ID is unique in the whole chart and never changes.
type Row struct {
	Table  *Table
	ID     string
	Also   []string         // other names the trade uses
	Values map[string]Value // by column ID; a conversion row has none for hold, cap, across
	Ends   []End            // joints only: 1 for like ends, 2 for a conversion joint
	Basis  Basis            // the weakest basis of its dimensions, or the row's own for a conversion joint
	// Sources and At are the row's own, given beside its basis; a value's own are in Value.
	Sources []*Source
	At      string
	Note    string
	Twins   []*Row // rows of the same size, named on either side
	Pos     diag.Pos

	at int // its place among all rows of the chart
	// reading is the number under which a Reader read it; 0 when none did.
	reading  uint64
	measured bool // somebody measured a value of it; known of what a Reader read
}

// Ref is the row's name in queries and answers: "table/id".
func (r *Row) Ref() string { return r.Table.ID + "/" + r.ID }

// End is one pair of opposite caps.
type End struct {
	Like   *Row // the row a conversion joint names; nil on a plain joint
	Hold   Value
	Cap    Value
	Across Value
}

// State tells a figure from the two words for its absence.
type State int

const (
	Given   State = iota
	Unknown       // exists, not found yet
	None          // does not exist
)

// Basis is why a value is believed, from weakest to strongest.
type Basis string

const (
	Memory         Basis = "memory"
	CommonPractice Basis = "common-practice"
	Measured       Basis = "measured"
	Published      Basis = "published"
)

// Hold is how an end is retained.
type Hold string

const (
	OutsideClip Hold = "outside-clip"
	InsideClip  Hold = "inside-clip"
	Plate       Hold = "plate"
	Strap       Hold = "strap"
	Wing        Hold = "wing"
	Injected    Hold = "injected"
	Staked      Hold = "staked"
	UnknownHold Hold = "unknown"
)

// Faces are what an across is measured between.
type Faces string

const (
	OverCaps     Faces = "over-caps"
	GrooveInner  Faces = "groove-inner"
	GrooveOuter  Faces = "groove-outer"
	UnderPlates  Faces = "under-plates"
	HoleCentres  Faces = "hole-centres"
	WingOuter    Faces = "wing-outer"
	UnknownFaces Faces = "unknown"
)

// Value is one cell and its evidence.
type Value struct {
	State    State
	Quantity Quantity // of a numeric column; the lower end of a range
	To       Quantity // the upper end of a range; zero for a single number
	Text     string   // text and hold columns: the word as written
	Faces    Faces    // across only
	// FacesBasis is why the faces are believed when that differs from the figure's own basis.
	FacesBasis Basis
	Basis      Basis
	Sources    []*Source
	At         string  // the place inside the source
	Others     []Value // what else is printed or said; the leading value comes first
	// Measured is what readers measured; nil for nothing, and among Others.
	Measured *Measurements
	Pos      diag.Pos // of the figure or word
	Braces   diag.Pos // where the cell begins
}

// Hold reads the value of a hold column.
func (v Value) Hold() Hold { return Hold(v.Text) }

// Source is an entry of the registry.
type Source struct {
	ID        string
	Kind      string // standard, manual, catalogue, article, listing, measurement
	Title     string
	Publisher string
	Edition   string
	Date      string
	Where     string
	Trust     string // one sentence on known faults
	Pos       diag.Pos
}

// Retired says where an id that is no longer in the chart went.
type Retired struct {
	ID  string
	To  []string // one: moved; several: split; none: withdrawn
	Why string
	Pos diag.Pos
}
