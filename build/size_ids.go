package build

import (
	"fmt"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/tables"
)

// sizePageIDs are the ids that a page of a size has besides those of its rows: of its frame,
// of its parts and drawings, and of the search that opens over it. A test finds them on the
// pages and in the scripts.
var sizePageIDs = []string{"main", "life", "life-head", "life-title", "life-desc", "joint-title", "joint-desc", "own-head", "measured", "history", "search-title", "search-field"}

// ofSource begins the id of a source on a page.
const ofSource = "source-"

// takenIDs refuses rows of a large chart that are called what their page has already: their
// address would lead to something else.
func takenIDs(set *tables.Set) diag.List {
	var problems diag.List
	if set == nil || jointRows(set) <= largeRows {
		return nil
	}
	for _, t := range set.Tables {
		for _, row := range t.Rows {
			if t.Joint() && (slices.Contains(sizePageIDs, row.ID) || strings.HasPrefix(row.ID, ofSource)) {
				problems.Add(diag.Problem{Pos: row.Pos, Path: row.Ref(), Rule: "taken-id",
					Fact:  fmt.Sprintf("a page of a large chart has a part of its own that is called %q", row.ID),
					Hints: []string{"call the row something else; the old id then goes into tables/retired.yaml, with the new one behind to:"}})
			}
		}
	}
	return problems
}
