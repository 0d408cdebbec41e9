package templates

import "html/template"

// What only a large chart has: pages of sizes, and tables in groups.

// Size is the page of the joints that are written with the same figures.
type Size struct {
	ID                                    string // its figures in one line
	Converted                             string // the known ones in the other unit; empty for none
	Kits                                  int
	TableLink, GroupLink                  Link
	Cautions                              []string // of the tables its joints stand in
	Confirm                               string   // ConfirmAll, ConfirmSome or nothing: must be confirmed before ordering
	Figures                               []Figure
	Writings                              []Writing
	Method                                []Link
	Life                                  template.HTML // one to one; empty when no figure is known
	Paper                                 string        // address of the sheet to print
	Twins, SameFigures, Near, Conversions []Link        // sizes
	History                               []RowChange
	Measured                              []MeasuredValue
	Own                                   []NamedCell // what the keeper adds
	OwnTitle                              string      // whose word that is
	Sources                               []SourceView
}

// How many joints of a size rest on memory.
const (
	ConfirmAll  = "all"
	ConfirmSome = "some"
)

// Writing is joints of a size that a table has with the same digits and evidence.
type Writing struct {
	Table         Link
	Version, Date string // the table's
	First         string // the id of the first of them
	Ends          []JointEnd
	Values        []NamedCell // columns beyond hold, cap and across
	Basis         string      // in words, as a sentence
	Note          string      // what is noted of all of them
	Apart         bool        // each names its own sources
	Kits          []Kit
}

// Kit is one joint of them; its id marks it on the page.
type Kit struct {
	ID       string
	Also     []string
	Note     string
	Formerly []string // which retired rows lead here and why, as sentences
	From     []KitSource
	Correct  []Link // where to correct its values; Note says what it is. None where the figures lead there
}

// KitSource is what values of a kit rest on.
type KitSource struct {
	Of      string // which values
	Sources []Link
	At      string // the place in the source
}

// Groups is the page of a table in groups.
type Groups struct {
	*Table
	ID          string
	Sizes, Kits int
	Units       []Choice // of lengths, the table's own first
	Holds       []Choice
	Groups      []Group
}

// Group is one of them.
type Group struct {
	Link            Link
	Name, Note      string // as its address has it; what it holds
	Sizes, Kits     int
	Holds           []string
	Says            string // how many sizes have which hold
	Least, Greatest string // across, in mm; empty where none is known
}

// GroupPage is one group of a table, a line for each size.
type GroupPage struct {
	*Table
	Of            string // the table and the group, for the script that reads the page
	Caps, Note    string
	TableLink     Link
	Before, After Link // its neighbours; no Href at the ends
}
