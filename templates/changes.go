package templates

// Changes is what every issue of the chart changed, newest first, and what is retired.
type Changes struct {
	Now      string // the chart's name
	Feed     string // address of the feed; empty where there is none
	Releases []Release
	Retired  []RetiredRow
}

// Release is one issue.
type Release struct {
	ID, Name, Date, Why string
	Tables              []string
	Changes             []ChangeLine
}

// ChangeLine is one thing that changed.
type ChangeLine struct {
	Of       Link // no Href: what has no page
	What     string
	Old, New Cell
	Why      string
}

// RowChange is a line of a row's own history.
type RowChange struct {
	Release Link
	Line    ChangeLine
}

// RetiredRow is an id that is no longer in the chart.
type RetiredRow struct {
	ID, Href, Why string
	To            []Link
}
