package tables

import (
	"slices"

	"capspan/build/diag"
)

// A table without joints is identified in by what its head declares: which columns are
// matched and how. This file reads that; package build hands it to the core.

// queryKeys are what the address of a query says beside its columns
// (static/matcher/part-address.ts), so no matched column may be called so.
var queryKeys = []string{"between", "edges", "hole-diameter", "unit", "tool", "condition", "chart", "check"}

// Matched are the columns a reading is compared with, in the table's order.
func (t *Table) Matched() []Column {
	return slices.DeleteFunc(slices.Clone(t.Columns), func(c Column) bool { return c.Match == "" })
}

// matched reads how a column is matched.
func (r *reader) matched(got map[string]field, c *Column, path string) bool {
	match, there := got["match"]
	below, nominal := got["below"]
	if there {
		var ok bool
		if c.Match, ok = word(r, match.value, path+".match", "bad-column", "way to match", matches); !ok {
			return false
		}
		if want := kindMatched(c.Match); c.Kind != want {
			r.fail(match.value, path, "bad-column", numbered("a %s is not matched %q", c.Kind, c.Match), "that is for a column of kind "+string(want))
			return false
		}
		if slices.Contains(queryKeys, c.ID) {
			r.fail(match.value, path, "bad-column", numbered("a matched column cannot be called %q: an address says something else by it", c.ID))
			return false
		}
		if c.Match == Circle && c.Range {
			r.fail(match.value, path, "bad-column", "a bolt circle is one figure and no range")
			return false
		}
	}
	if nominal {
		if c.Match != Outside {
			r.fail(below.key, path, "bad-column", "\"below\" is for a column that is matched outside", "it says how far a part may measure under a nominal figure")
			return false
		}
		var ok bool
		if c.Below, ok = r.limit(below.value, path+".below", *c); !ok {
			return false
		}
	}
	return true
}

func kindMatched(m Match) Kind {
	if m == Exact {
		return Count
	}
	return Length
}

// matchedColumns checks what only all columns together show.
func (r *reader) matchedColumns(n *node, path string, columns []Column) {
	at := map[Match][]Column{}
	joint := false
	for _, c := range columns {
		joint = joint || c.Kind == Holds
		if c.Match != "" {
			at[c.Match] = append(at[c.Match], c)
		}
	}
	refuse := func(c Column, fact string, hints ...string) {
		r.list.Add(diag.Problem{Pos: c.Pos, Path: path + "." + c.ID, Rule: "bad-column", Fact: fact, Hints: hints})
	}
	for _, m := range matches {
		for i, c := range at[m] {
			switch {
			case joint:
				refuse(c, "a table of joints is matched by hold, cap and across alone")
			case m == Circle && i > 0:
				refuse(c, "a table has one bolt circle", "the other is "+quotedID(at[m][0].ID))
			case m == Circle && len(at[Exact]) != 1:
				refuse(c, "a bolt circle needs one column of kind count that is matched exact: the number of its holes")
			}
		}
	}
}

func quotedID(id string) string { return `"` + id + `"` }

// matchRules are the same for the schema, as far as one column shows it.
func matchRules() []any {
	var rules []any
	for _, m := range matches {
		then := object{"properties": object{"kind": object{"const": kindMatched(m)}}}
		if m != Outside {
			then["not"] = object{"required": []string{"below"}}
		}
		rules = append(rules, object{"if": object{"properties": object{"match": object{"const": m}}, "required": []string{"match"}}, "then": then})
	}
	return append(rules, object{"if": object{"required": []string{"below"}}, "then": object{"required": []string{"match"}}})
}
