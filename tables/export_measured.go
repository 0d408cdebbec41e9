package tables

// Measurements in the open data: the readings as they were taken, and, where somebody has
// reckoned it, what they come to together.

type measurementJSON struct {
	Readings  []valueJSON `json:"readings"`
	Tool      string      `json:"tool"`
	Condition string      `json:"condition,omitempty"`
	Faces     Faces       `json:"faces,omitempty"`
	On        string      `json:"on,omitempty"`
	By        string      `json:"by,omitempty"`
}

type combinedJSON struct {
	MM          string `json:"mm"`
	Uncertainty string `json:"uncertaintyMm"` // expanded, about 95 %
	Count       int    `json:"measurements"`
	Readings    int    `json:"readings"`
	Birge       string `json:"birge,omitempty"`
	Consistent  bool   `json:"consistent"`
	Agrees      string `json:"agrees,omitempty"`
}

// measuredParts are the columns that a measured column of the chart becomes besides.
var measuredParts = []string{"_measured", "_measured_mm", "_measured_uncertainty_mm", "_measured_birge"}

// allParts are the parts of each column of a table. They are asked for once a table: every
// row is looked at.
func allParts(t *Table) [][]string {
	out := make([][]string, len(t.Columns))
	for i, c := range t.Columns {
		out[i] = partsOf(t, c)
	}
	return out
}

// partsOf are the parts of a column in a table: those of measuring come with the table's
// first measurement in it.
func partsOf(t *Table, c Column) []string {
	for _, r := range t.Rows {
		if r.Values[c.ID].Measured != nil {
			return append(parts(c), measuredParts...)
		}
	}
	return parts(c)
}

// measuredPart is a figure of what measurements come to; ok is false for any other part.
func measuredPart(v Value, part string) (cell string, ok bool) {
	var c Combined
	if v.Measured != nil && v.Measured.Combined != nil {
		c = *v.Measured.Combined
	}
	switch part {
	case "_measured_mm":
		return c.MM, true
	case "_measured_uncertainty_mm":
		return c.Uncertainty, true
	case "_measured_birge":
		return c.Birge, true
	}
	return "", false
}
