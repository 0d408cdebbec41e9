package templates

// Parts lists the tables other than joints that something can be identified in.
type Parts struct{ Tables []Link }

// Part identifies a row of one table by counting and measuring.
type Part struct {
	Cautions          []string
	Columns           []PartColumn
	Data              string // address of the table as the core reads it
	Unit              string // in or mm: what most of its figures are in
	Chart             Link   // the table's page
	Tools, Conditions []Choice
	Factors           []ChordFactor // of a table with a bolt circle
}

// PartColumn is one thing to count or to measure.
type PartColumn struct {
	ID, Label, How string
	Count, Circle  bool
}

// ChordFactor is by what the distance between two holes is divided to give the bolt circle.
type ChordFactor struct {
	Holes          int
	Next, Farthest string
}
