package tables

// Sample is the chart with some of its rows left out of the tables, for whoever looks at one
// row of each kind. The rows that stay are the very same: they name the others as before,
// and [Set.Find] finds those too. Its version is its own.
func (s *Set) Sample(keep func(*Row) bool) *Set {
	out := &Set{Sources: s.Sources, Retired: s.Retired, History: s.History, all: s.all, byID: s.byID, whole: s.Whole()}
	for _, table := range s.Tables {
		part := *table
		part.Rows = nil
		for _, row := range table.Rows {
			if keep(row) {
				part.Rows = append(part.Rows, row)
			}
		}
		out.Tables = append(out.Tables, &part)
	}
	return out
}

// Whole is the chart that this is a sample of: the chart itself, where nothing was left out.
func (s *Set) Whole() *Set {
	if s.whole != nil {
		return s.whole
	}
	return s
}
