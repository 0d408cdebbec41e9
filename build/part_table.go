package build

import (
	"capspan/static/matcher"
	"capspan/tables"
)

// PartTable compiles a table without joints into what the core identifies in: its matched
// columns as exact millimetres and counts, and what the other columns say as text.
func PartTable(set *tables.Set, t *tables.Table) matcher.PartTable {
	out := matcher.PartTable{Format: 1, Version: set.Version().Name(), ID: t.ID, Title: t.Title,
		Cautions: append([]string{}, t.Cautions...), Columns: []matcher.PartColumn{}, Rows: []matcher.PartRow{}}
	for _, c := range t.Matched() {
		column := matcher.PartColumn{ID: c.ID, Label: c.Label, Match: string(c.Match), Least: c.Least.MM(), Greatest: c.Greatest.MM()}
		if !c.Below.IsZero() {
			column.Below, column.BelowText = c.Below.MM(), c.Below.String()
		}
		out.Columns = append(out.Columns, column)
	}
	for _, row := range t.Rows {
		view := matcher.PartRow{Ref: row.Ref(), Name: row.ID, Also: append([]string{}, row.Also...), Values: map[string]any{}, Beside: []matcher.Beside{}}
		for _, c := range t.Columns {
			v := row.Values[c.ID]
			if c.Match == "" {
				view.Beside = append(view.Beside, matcher.Beside{Label: c.Label, Text: partText(v)})
			} else {
				view.Values[c.ID] = partValue(v)
			}
		}
		out.Rows = append(out.Rows, view)
	}
	return out
}

func partValue(v tables.Value) any {
	switch v.State {
	case tables.Unknown:
		return "unknown"
	case tables.None:
		return "none"
	}
	out := partFigure(v)
	for _, other := range v.Others {
		if other.State == tables.Given {
			out.Others = append(out.Others, partFigure(other))
		}
	}
	return out
}

func partFigure(v tables.Value) matcher.PartFigure {
	f := matcher.PartFigure{Is: v.Quantity.MM(), Half: v.Quantity.HalfStepMM(), Text: partText(v), Basis: string(v.Basis)}
	if v.IsRange() {
		f.To = v.To.MM()
	}
	return f
}

// partText is a cell as the chart has it, with its length in the other unit behind it.
func partText(v tables.Value) string {
	if v.State != tables.Given || v.Figure() == "" {
		return v.Word()
	}
	if converted := v.Converted(); converted != "" {
		return v.Figure() + " (≈ " + converted + ")"
	}
	return v.Figure()
}

// partTables are the tables a part can be identified in.
func partTables(set *tables.Set) []*tables.Table {
	var list []*tables.Table
	for _, t := range set.Tables {
		if len(t.Matched()) > 0 {
			list = append(list, t)
		}
	}
	return list
}
