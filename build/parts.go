package build

import (
	"fmt"
	"maps"
	"slices"

	"capspan/build/diag"
	"capspan/static/matcher"
)

// Parts returns the core of identifying in tables without joints, and those tables by name.
func Parts(src Sources) (*matcher.Parts, map[string]matcher.PartTable, diag.List) {
	set, problems := src.spoken()
	if problems.Blocked() {
		return nil, nil, problems
	}
	p, err := matcher.NewParts(src.Static)
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "static/matcher/parts.ts"}, Fact: err.Error(), Rule: "core-fails"})
		return nil, nil, problems
	}
	all := map[string]matcher.PartTable{}
	for _, t := range partTables(set) {
		all[t.ID] = PartTable(set, t)
	}
	return p, all, problems
}

// PartNames lists the tables in order.
func PartNames(all map[string]matcher.PartTable) []string { return slices.Sorted(maps.Keys(all)) }

// ChangedSince says what has changed since an address was made with a chart of that name,
// for the rows that an answer to it rests on: a [matcher.Answer] or a [matcher.PartAnswer].
func ChangedSince(src Sources, made string, answer any) (matcher.Since, error) {
	set, _, problems := src.Set()
	if problems.Blocked() {
		return matcher.Since{}, fmt.Errorf("load the tables: %s", problems.Summary())
	}
	return matcher.ChangedSince(src.Static, Record(set), made, answer)
}
