package build

import (
	"strings"

	"capspan/static/matcher"
	"capspan/tables"
)

// Chart compiles the joint tables into what the identification core reads: exact
// millimetres, half of the last printed digit, and one number for each size.
// Tables of other kinds have no ends and are left out.
func Chart(set *tables.Set) matcher.Chart { return chartAgain(set, nil) }

// chartAgain is the same, with what the memory has of rows.
func chartAgain(set *tables.Set, again *rowsAgain) matcher.Chart {
	var rows []*tables.Row
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if len(row.Ends) > 0 {
				rows = append(rows, row)
			}
		}
	}
	chart := matcher.Chart{Format: 1, Version: set.Version().Name(), Rows: eachRow(again, "compiled", rows, nil, chartRow)}
	sizes := again.sizesOf(set)
	for n, row := range rows {
		chart.Rows[n].Size = sizes(row)
	}
	return chart
}

// chartRow is a row but for its size, whose number hangs on all rows.
func chartRow(row *tables.Row) matcher.ChartRow {
	out := matcher.ChartRow{Ref: row.Ref(), Name: row.ID, Also: row.Also, Table: row.Table.Title, Basis: string(row.Basis)}
	for _, end := range row.Ends {
		out.Ends = append(out.Ends, chartEnd(end))
	}
	return out
}

// rowOf is the id of the row that the core names by a ref, "table/id".
func rowOf(ref string) string {
	_, id, _ := strings.Cut(ref, "/")
	return id
}

func chartEnd(end tables.End) matcher.ChartEnd {
	across := end.Across
	out := matcher.ChartEnd{
		Hold: string(tables.UnknownHold), HoldBasis: string(end.Hold.Basis),
		Faces: string(across.Faces), FacesBasis: string(across.FacesBasis),
		Cap: chartValue(end.Cap), Across: chartValue(across),
	}
	if end.Hold.State == tables.Given {
		out.Hold = end.Hold.Text
	}
	if out.HoldBasis == "" {
		out.HoldBasis = string(tables.Memory) // an unknown hold rests on nothing
	}
	if out.FacesBasis == "" {
		out.FacesBasis = string(across.Basis)
	}
	return out
}

// chartValue is nil for a figure that is unknown or does not exist.
func chartValue(v tables.Value) *matcher.ChartValue {
	if v.State != tables.Given {
		return nil
	}
	f := chartFigure(v)
	out := &matcher.ChartValue{MM: f.MM, Half: f.Half, Text: f.Text, Unit: f.Unit, Basis: f.Basis}
	for _, other := range v.Others {
		if other.State == tables.Given {
			out.Others = append(out.Others, chartFigure(other))
		}
	}
	return out
}

func chartFigure(v tables.Value) matcher.OtherValue {
	return matcher.OtherValue{MM: v.Quantity.MM(), Half: v.Quantity.HalfStepMM(), Text: v.Quantity.Text,
		Unit: string(v.Quantity.Unit), Basis: string(v.Basis)}
}
