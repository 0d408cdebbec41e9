package tables

import "testing"

// alone writes as if nothing had been written before.
var alone *Exports

func jsonOf(t testing.TB, table *Table) []byte {
	t.Helper()
	text, err := alone.JSON(table)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func chartJSONOf(t testing.TB, s *Set) []byte {
	t.Helper()
	text, err := alone.Chart(s)
	if err != nil {
		t.Fatal(err)
	}
	return text
}

// The open data as it is made without writing anything by hand: encoding/json writes what
// these give.

func chartOf(s *Set) chartJSON {
	doc := chartJSON{Tables: []tableJSON{}, Sources: []sourceJSON{}, Retired: []retiredJSON{}}
	for _, t := range s.Tables {
		doc.Tables = append(doc.Tables, tableOf(t))
	}
	doc.besides(s)
	return doc
}

func tableOf(t *Table) tableJSON {
	doc := headOf(t)
	for _, r := range t.Rows {
		row := rowJSON{ID: r.ID, Also: r.Also, Basis: r.Basis, Sources: sourceIDs(r.Sources), At: r.At, Twins: ids(r.Twins), Note: r.Note}
		if len(r.Values) > 0 {
			row.Values = map[string]valueJSON{}
		}
		for id, v := range r.Values {
			row.Values[id] = valueOf(v)
		}
		for _, e := range r.Ends {
			if e.Like != nil {
				row.Ends = append(row.Ends, endJSON{e.Like.Ref(), valueOf(e.Hold), valueOf(e.Cap), valueOf(e.Across)})
			}
		}
		doc.Rows = append(doc.Rows, row)
	}
	return doc
}

func valueOf(v Value) valueJSON {
	out := valueJSON{Is: v.Word(), Faces: v.Faces, FacesBasis: v.FacesBasis, Basis: v.Basis, Sources: sourceIDs(v.Sources), At: v.At}
	out.figure(v.Quantity)
	if v.IsRange() {
		out.To = &valueJSON{Is: v.To.Text}
		out.To.figure(v.To)
	}
	for _, o := range v.Others {
		out.Others = append(out.Others, valueOf(o))
	}
	out.measured(v.Measured)
	return out
}

// figure sets the number in both units of its kind.
func (out *valueJSON) figure(q Quantity) {
	switch out.Unit = q.Unit; q.Unit {
	case Inch, Millimetre:
		out.MM, out.In = q.decimalIn(Millimetre), q.decimalIn(Inch)
	case PoundFoot, NewtonMetre:
		out.Nm, out.Lbfft = q.decimalIn(NewtonMetre), q.decimalIn(PoundFoot)
	}
}

// measured sets what was measured.
func (out *valueJSON) measured(m *Measurements) {
	if m == nil {
		return
	}
	out.Measured = measurementsOf(m)
	if c := m.Combined; c != nil {
		out.Combined = &combinedJSON{c.MM, c.Uncertainty, c.Count, c.Readings, c.Birge, c.Consistent, c.Agrees}
	}
}

func measurementsOf(m *Measurements) []measurementJSON {
	var list []measurementJSON
	for _, one := range m.List {
		doc := measurementJSON{Tool: one.Tool, Condition: one.Condition, Faces: one.Faces, On: one.On, By: one.By}
		for _, q := range one.Readings {
			reading := valueJSON{Is: q.Text}
			reading.figure(q)
			doc.Readings = append(doc.Readings, reading)
		}
		list = append(list, doc)
	}
	return list
}
