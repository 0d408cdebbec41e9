package build

import (
	"cmp"
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
	ends := 0
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if len(row.Ends) > 0 {
				rows, ends = append(rows, row), ends+len(row.Ends)
			}
		}
	}
	chart := matcher.Chart{Format: 1, Version: set.Version().Name()}
	if again != nil {
		chart.Rows = eachRow(again, "compiled", rows, nil, func(row *tables.Row) matcher.ChartRow {
			var w chartWriter // its own: what is kept of a row must not keep others
			return w.row(row)
		})
	} else {
		w := chartWriter{ends: make([]matcher.ChartEnd, 0, ends), values: make([]matcher.ChartValue, 0, 2*ends)}
		chart.Rows = make([]matcher.ChartRow, len(rows))
		for n, row := range rows {
			chart.Rows[n] = w.row(row)
		}
	}
	sizes := again.sizesOf(set)
	for n, row := range rows {
		chart.Rows[n].Size = sizes(row)
	}
	return chart
}

// rowOf is the id of the row that the core names by a ref, "table/id".
func rowOf(ref string) string {
	_, id, _ := strings.Cut(ref, "/")
	return id
}

// chartWriter has the room for a chart's ends and figures: a large one has hundreds of
// thousands, each of which would be a piece of memory by itself.
type chartWriter struct {
	ends   []matcher.ChartEnd
	values []matcher.ChartValue
}

// row is a row but for its size, whose number hangs on all rows.
func (w *chartWriter) row(row *tables.Row) matcher.ChartRow {
	return matcher.ChartRow{Ref: row.Ref(), Name: row.ID, Also: row.Also, Table: row.Table.Title, Basis: string(row.Basis), Ends: w.rowEnds(row)}
}

func (w *chartWriter) rowEnds(row *tables.Row) []matcher.ChartEnd {
	first := len(w.ends)
	for i := range row.Ends {
		w.ends = append(w.ends, w.end(&row.Ends[i]))
	}
	return w.ends[first:len(w.ends):len(w.ends)]
}

func (w *chartWriter) end(end *tables.End) matcher.ChartEnd {
	across := &end.Across
	out := matcher.ChartEnd{
		Hold: string(tables.UnknownHold), HoldBasis: string(end.Hold.Basis),
		Faces: string(across.Faces), FacesBasis: string(across.FacesBasis),
		Cap: w.value(&end.Cap), Across: w.value(across),
	}
	if end.Hold.State == tables.Given {
		out.Hold = end.Hold.Text
	}
	if out.HoldBasis == "" {
		out.HoldBasis = string(tables.Memory) // an unknown hold rests on nothing
	}
	if out.Faces == "" {
		out.Faces = string(tables.UnknownFaces) // nothing is measured between any
	}
	if out.FacesBasis == "" {
		out.FacesBasis = cmp.Or(string(across.Basis), string(tables.Memory))
	}
	return out
}

// value is nil for a figure that is unknown or does not exist.
func (w *chartWriter) value(v *tables.Value) *matcher.ChartValue {
	if v.State != tables.Given {
		return nil
	}
	f := chartFigure(v)
	w.values = append(w.values, matcher.ChartValue{MM: f.MM, Half: f.Half, Text: f.Text, Unit: f.Unit, Basis: f.Basis})
	out := &w.values[len(w.values)-1]
	for i := range v.Others {
		if v.Others[i].State == tables.Given {
			out.Others = append(out.Others, chartFigure(&v.Others[i]))
		}
	}
	return out
}

func chartFigure(v *tables.Value) matcher.OtherValue {
	return matcher.OtherValue{MM: v.Quantity.MM(), Half: v.Quantity.HalfStepMM(), Text: v.Quantity.Text,
		Unit: string(v.Quantity.Unit), Basis: string(v.Basis)}
}
