package build

import (
	"math"
	"strconv"
	"strings"

	"capspan/build/diag"
	"capspan/static/matcher"
	"capspan/tables"
	"capspan/templates"
)

// reckon works out by the core what readers measured comes to, value by value, and leaves
// it with the measurements, for pages and, in the first language, for the open data.
func (in *inputs) reckon(first bool) diag.List {
	var problems diag.List
	var core *matcher.Measuring // nil until something was measured: loading it takes time
	in.measured = map[*tables.Measurements]matcher.MeasuredAnswer{}
	for _, t := range in.set.Tables {
		for _, row := range t.Rows {
			for _, c := range t.Columns {
				if c.Kind != tables.Length {
					continue // nothing else is measured
				}
				v := row.Values[c.ID]
				if v.Measured == nil {
					continue
				}
				var err error
				if core == nil {
					core, err = matcher.NewMeasuring(in.script("measured.js"))
				}
				if err == nil {
					in.measured[v.Measured], err = core.ComesTo(measuredQuestion(v, c, t.Joint()))
				}
				if err != nil {
					problems.Add(diag.Problem{Pos: v.Pos, Path: row.Ref() + "." + c.ID, Rule: "core-fails", Fact: err.Error()})
					return problems
				}
				if first {
					v.Measured.Combined = combinedOf(in.measured[v.Measured])
				}
			}
		}
	}
	return problems
}

// measuredQuestion puts a value's measurements to the core. A value that rests on them has
// nothing printed to compare them with.
func measuredQuestion(v tables.Value, c tables.Column, joint bool) matcher.MeasuredQuestion {
	q := matcher.MeasuredQuestion{Column: "length", Faces: matcher.Faces(v.Faces)}
	if joint && (c.ID == "cap" || c.ID == "across") {
		q.Column = c.ID
	}
	if v.State == tables.Given && v.Basis != tables.Measured {
		half, _ := strconv.ParseFloat(v.Quantity.HalfStepMM(), 64)
		q.Printed = &matcher.PrintedValue{Text: v.Figure(), Least: v.Quantity.Float(), Greatest: v.Quantity.Float(), Half: half}
		if v.IsRange() {
			q.Printed.Greatest = v.To.Float()
		}
	}
	for _, m := range v.Measured.List {
		q.Measurements = append(q.Measurements, matcher.MeasurementTold{Readings: readingsOf(m), Tool: matcher.Tool(m.Tool),
			Condition: matcher.Condition(m.Condition), Faces: matcher.Faces(m.Faces)})
	}
	return q
}

// combinedOf writes what the core says with as many digits as its uncertainty allows.
func combinedOf(a matcher.MeasuredAnswer) *tables.Combined {
	if a.Combined == nil {
		return nil
	}
	c := a.Combined
	digits := digitsOf(c.Uncertainty)
	out := &tables.Combined{MM: strconv.FormatFloat(c.MM, 'f', digits, 64), Uncertainty: strconv.FormatFloat(c.Uncertainty, 'f', digits, 64),
		Count: c.Count, Readings: c.Readings, Consistent: c.Consistent, Agrees: c.Agrees, Says: a.Says}
	if c.Count > 1 {
		out.Birge = strconv.FormatFloat(c.Ratio, 'f', 2, 64)
	}
	return out
}

// digitsOf are the decimals that leave two digits of an uncertainty (JCGM 100, 7.2.6).
func digitsOf(uncertainty float64) int {
	return min(max(1-int(math.Floor(math.Log10(uncertainty))), 0), 6)
}

const mmPerInch = 25.4 // by definition, since 1959

// measuredShort is what was measured in a few words: the mean in the unit of the column.
func (s *site) measuredShort(m *tables.Measurements, unit tables.Unit) string {
	if m == nil || m.Combined == nil {
		return ""
	}
	a := s.measured[m].Combined
	mm := m.Combined.MM + " ± " + m.Combined.Uncertainty + " mm"
	digits := digitsOf(a.Uncertainty / mmPerInch)
	in := strconv.FormatFloat(a.MM/mmPerInch, 'f', digits, 64) + " ± " + strconv.FormatFloat(a.Uncertainty/mmPerInch, 'f', digits, 64) + " in"
	if unit == tables.Inch {
		mm, in = in, mm
	}
	said := s.word("cell.measured", "figure", s.figures(mm), "converted", s.figures(in))
	switch {
	case m.Combined.Agrees == "yes":
		return said + ", " + s.word("cell.measured-agrees")
	case m.Combined.Agrees == "no":
		return said + ", " + s.word("cell.measured-differs")
	case !m.Combined.Consistent:
		return said + ", " + s.word("cell.measured-apart")
	}
	return said
}

// measuredValues are the measurements of a row, for its page.
func (s *site) measuredValues(row *tables.Row) []templates.MeasuredValue {
	var list []templates.MeasuredValue
	for _, c := range row.Table.Columns {
		m := row.Values[c.ID].Measured
		if m == nil {
			continue
		}
		answer := s.measured[m]
		view := templates.MeasuredValue{Label: c.Label, Says: answer.Says}
		for i, one := range m.List {
			once := templates.MeasuredOnce{Readings: s.figures(readingsInWords(one)), On: one.On, By: one.By, Worth: answer.Each[i].Says}
			if one.Condition != "" {
				once.Condition = s.word("tool.on-" + one.Condition)
			}
			view.List = append(view.List, once)
		}
		list = append(list, view)
	}
	return list
}

func readingsInWords(m tables.Measurement) string { return strings.Join(readingsOf(m), ", ") }
