package driveline

import "capspan/static/matcher"

// Report is all that comes of a calculation.
type Report struct {
	Calculation string       `json:"calculation"` // its name
	Title       string       `json:"title"`
	Fragment    string       `json:"fragment"` // what was given, in canonical form
	Given       []Given      `json:"given"`
	Asked       []string     `json:"asked"`
	Lines       []Line       `json:"lines"`
	Limits      []LimitLine  `json:"limits"`
	Parts       []PartReport `json:"parts"`
	Refusals    []Refusal    `json:"refusals"`
	Unchecked   []string     `json:"unchecked"`
	Cautions    []string     `json:"cautions"`
}

// Given is one input as it was filled.
type Given struct {
	ID    string `json:"id"`
	Label string `json:"label"`
	Value string `json:"value"`
	Unit  string `json:"unit"`
}

// Ground is what a figure rests on.
type Ground struct {
	Basis  string `json:"basis"`
	Source string `json:"source"` // key of a [Document], or empty
	At     string `json:"at,omitempty"`
}

// Line is one figure of the result, as it is printed.
type Line struct {
	ID      string   `json:"id"`
	Part    string   `json:"part"`
	Label   string   `json:"label"`
	Value   string   `json:"value"`
	Unit    string   `json:"unit"`
	Also    string   `json:"also,omitempty"`
	Formula string   `json:"formula"`
	Source  []Ground `json:"source"`
	Valid   string   `json:"valid,omitempty"`
	Rows    []string `json:"rows,omitempty"` // of the chart, named after the value
}

// LimitLine is one published limit beside what was reckoned.
type LimitLine struct {
	Part   string   `json:"part"`
	Of     string   `json:"of"`
	Limit  string   `json:"limit"`
	Says   string   `json:"says"`
	Stands []Stand  `json:"stands"`
	Source []Ground `json:"source"`
}

// Stand is a value beside a limit.
type Stand struct {
	Of    string `json:"of"`
	Value string `json:"value"`
	Met   string `json:"met"` // within, above, below, not known
}

// PartReport is what one part concludes beside its lines.
type PartReport struct {
	ID       string    `json:"id"`
	Title    string    `json:"title"`
	Missing  []string  `json:"missing"` // labels of inputs
	Says     []string  `json:"says"`
	Pictures []Picture `json:"pictures"`
}

// Picture is a plot or drawing, and the same in figures.
type Picture struct {
	ID    string  `json:"id"`
	Title string  `json:"title"`
	Tree  Element `json:"tree"`
	Table *Table  `json:"table,omitempty"`
}

// Table is a plot in figures.
type Table struct {
	Head []string   `json:"head"`
	Rows [][]string `json:"rows"`
}

// Refusal is what is wrong with one input.
type Refusal struct {
	Input string `json:"input"`
	Label string `json:"label"`
	Text  string `json:"text"`
	Says  string `json:"says"`
}

// Described is a calculation with its words.
type Described struct {
	Name      string   `json:"name"`
	Title     string   `json:"title"`
	About     string   `json:"about"`
	Purpose   []string `json:"purpose"`
	Groups    []Named  `json:"groups"`
	Inputs    []Input  `json:"inputs"`
	Cautions  []string `json:"cautions"`
	Unchecked []string `json:"unchecked"`
	Example   Example  `json:"example"`
}

// Named is an id and what it is called.
type Named struct {
	ID    string `json:"id"`
	Title string `json:"title"`
}

// Example is the worked example of a calculation.
type Example struct {
	Says     string `json:"says"`
	Fragment string `json:"fragment"`
}

// Input is one input of a calculation.
type Input struct {
	ID          string   `json:"id"`
	Kind        string   `json:"kind"` // number, choice, text
	Group       string   `json:"group"`
	Label       string   `json:"label"`
	Hint        string   `json:"hint"`
	Usual       string   `json:"usual"` // its range, in words
	Units       []Unit   `json:"units"`
	Options     []Option `json:"options"`
	Preset      string   `json:"preset"`
	Optional    bool     `json:"optional"`
	Example     string   `json:"example"` // what the worked example has, in words
	ExampleText string   `json:"exampleText"`
	ExampleUnit string   `json:"exampleUnit"`
}

// Unit is a unit an input can be given in.
type Unit struct {
	Name string `json:"name"` // in addresses and on the command line
	Sign string `json:"sign"` // in print
}

// Option is one choice.
type Option struct {
	Value string `json:"value"`
	Label string `json:"label"`
}

// Document is what a figure was printed in.
type Document struct {
	Key       string `json:"key"`
	Title     string `json:"title"`
	Publisher string `json:"publisher"`
	Where     string `json:"where"`
	Trust     string `json:"trust"`
}

// Provided is what the calculations take from the chart.
type Provided struct {
	Chart     *matcher.Chart  `json:"chart,omitempty"` // for joining two ends
	Fasteners []Fastener      `json:"fasteners"`
	Documents []Document      `json:"documents"` // what those rows name
	Rows      []string        `json:"rows"`      // ids and other names of the joints
	Ratings   []PublishedRate `json:"ratings"`   // torque ratings of rows
}

// Fastener is a row of the chart's table of fasteners, N·m.
type Fastener struct {
	ID     string         `json:"id"`
	Item   string         `json:"item"`
	Series string         `json:"series"`
	Thread string         `json:"thread"`
	Least  float64        `json:"least"`
	Most   float64        `json:"most"`
	Ground FastenerGround `json:"ground"`
}

// FastenerGround is why its torque is believed; the sources are ids of the chart's registry.
type FastenerGround struct {
	Basis  string   `json:"basis"`
	Source []string `json:"source"`
}

// PublishedRate is a published torque rating of a row, N·m.
type PublishedRate struct {
	Row    string  `json:"row"`
	Torque float64 `json:"torque"`
	Source string  `json:"source"`
}
