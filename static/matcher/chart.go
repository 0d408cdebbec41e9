package matcher

// Chart is what the core compares with; package build makes it from the tables.
type Chart struct {
	Format  int        `json:"format"` // 1
	Version string     `json:"version"`
	Rows    []ChartRow `json:"rows"`
}

// ChartRow is one row: one end when both are alike, two for a conversion joint.
type ChartRow struct {
	Ref   string     `json:"ref"`  // "joints-inch/1310"
	Name  string     `json:"name"` // "1310"
	Also  []string   `json:"also"`
	Table string     `json:"table"` // the table's title
	Basis Basis      `json:"basis"` // weakest of its dimensions, or a conversion row's own
	Size  int        `json:"size"`  // twins share it
	Ends  []ChartEnd `json:"ends"`
}

// ChartEnd is one pair of caps. Cap and Across are nil where the chart says none or unknown.
type ChartEnd struct {
	Hold       Hold        `json:"hold"`
	HoldBasis  Basis       `json:"holdBasis"`
	Faces      Faces       `json:"faces"`
	FacesBasis Basis       `json:"facesBasis"`
	Cap        *ChartValue `json:"cap"`
	Across     *ChartValue `json:"across"`
}

// ChartValue is one figure with the digits it is printed with.
type ChartValue struct {
	MM     string       `json:"mm"`   // exact decimal millimetres
	Half   string       `json:"half"` // half of the last printed digit, mm
	Text   string       `json:"text"` // as printed, without the unit
	Unit   Unit         `json:"unit"`
	Basis  Basis        `json:"basis"`
	Others []OtherValue `json:"others,omitempty"`
}

// OtherValue is what else is printed or said for the same figure.
type OtherValue struct {
	MM    string `json:"mm"`
	Half  string `json:"half"`
	Text  string `json:"text"`
	Unit  Unit   `json:"unit"`
	Basis Basis  `json:"basis"`
}
