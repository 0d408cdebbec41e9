package templates

import "html/template"

// Driveline lists the calculations.
type Driveline struct {
	Calculations []Link
	Documents    Link // what they cite
}

// Calculation is the page of one: complete without script, its result that of the worked
// example; with script the form shows and answers.
type Calculation struct {
	Name      string
	Purpose   []string
	Cautions  []string
	Groups    []InputGroup
	Example   string        // whose figures the example has
	Result    template.HTML // of the example, made by the calculations themselves
	Provided  string        // JSON: what the calculation takes from the chart
	Chart     bool          // it asks the identification core
	Documents Link
	Onward    []Link
}

// InputGroup is a field set of the form.
type InputGroup struct {
	Title  string
	Inputs []CalculationInput
}

// CalculationInput is one input with its words.
type CalculationInput struct {
	ID, Kind, Label, Hint string
	Usual                 string // its range in words
	Preset                string // what it is unless given
	Optional              bool
	Signed                bool // may be less than nothing
	Units                 []Choice
	Options               []Choice
	Example               string // what the worked example has
}
