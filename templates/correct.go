package templates

import "html/template"

// Correct is the page that makes a correction of one value.
type Correct struct {
	Keeper     Keeper
	Tables     []CorrectTable
	Sources    string        // address of the registry's facts; of a large chart of the directory of all
	Large      bool          // rows are named, not chosen from a list
	ByHand     template.HTML // what to do without script
	Holds      []Choice
	Faces      []Choice
	Tools      []Choice
	Conditions []Choice
	Kinds      []Choice // of sources
}

// CorrectTable is a table whose values can be corrected.
type CorrectTable struct {
	ID     string
	Link   Link
	File   string // from the root of the repository
	Edit   string // where it is edited; empty when the keeper has not said
	Values bool   // it has values of its own, and not only other rows' ends
	Facts  string // address of what the page's script is told of it
}

// MeasuredValue is what readers measured of one value.
type MeasuredValue struct {
	Label string
	Says  []string // what it comes to
	List  []MeasuredOnce
}

// MeasuredOnce is one measurement.
type MeasuredOnce struct {
	Readings  string
	Worth     string // its mean and uncertainty, in a sentence
	Condition string
	On, By    string
}
