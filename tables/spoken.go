package tables

import (
	"slices"
	"strings"
	"unicode"
)

// Spoken is the chart with its words in another language: titles, abouts, cautions, labels,
// notes, values in words, what a source may be wrong about, and why something changed, each
// as say gives it. Figures, ids, the names of documents and the places in them stay as they
// are; so does the version, which is that of the chart it is made of.
func (s *Set) Spoken(say func(english string) string) *Set {
	p := &speaking{say: func(english string) string {
		if english == "" {
			return ""
		}
		return say(english)
	}, rows: map[*Row]*Row{}, sources: map[*Source]*Source{}}
	out := &Set{of: s, byID: s.byID}
	for _, source := range s.Sources {
		spoken := *source
		spoken.Trust = p.say(source.Trust)
		p.sources[source] = &spoken
		out.Sources = append(out.Sources, &spoken)
	}
	for row := range s.rows() { // all of them first: they name each other
		p.rows[row] = &Row{}
	}
	for _, table := range s.Tables {
		out.Tables = append(out.Tables, p.table(table))
	}
	for _, row := range s.all {
		out.all = append(out.all, p.rows[row])
	}
	for _, gone := range s.Retired {
		gone.Why = p.say(gone.Why)
		out.Retired = append(out.Retired, gone)
	}
	for _, release := range s.History {
		release.Why = p.say(release.Why)
		release.Changes = slices.Clone(release.Changes)
		for i := range release.Changes {
			release.Changes[i].Why = p.say(release.Changes[i].Why)
		}
		out.History = append(out.History, release)
	}
	return out
}

// InWords reports whether a value of the column is words, which a language says in its own
// way; a thread such as "M8" is the same in all.
func (c Column) InWords(v Value) bool {
	return c.Kind == Text && v.State == Given && strings.ContainsFunc(v.Text, unicode.IsLower)
}

// speaking is a chart being said in another language.
type speaking struct {
	say     func(english string) string // of nothing, nothing
	rows    map[*Row]*Row
	sources map[*Source]*Source
}

func (p *speaking) table(table *Table) *Table {
	out := *table
	out.Title, out.About = p.say(table.Title), p.say(table.About)
	out.Cautions = nil
	for _, caution := range table.Cautions {
		out.Cautions = append(out.Cautions, p.say(caution))
	}
	out.Columns = slices.Clone(table.Columns)
	for i := range out.Columns {
		out.Columns[i].Label = p.say(out.Columns[i].Label)
	}
	out.Rows = nil
	for _, row := range table.Rows {
		spoken := p.rows[row]
		*spoken = *row
		spoken.Table, spoken.Note, spoken.Sources = &out, p.say(row.Note), p.sourcesOf(row.Sources)
		spoken.Values = map[string]Value{}
		for id, value := range row.Values {
			column, _ := table.Column(id)
			spoken.Values[id] = p.value(column, value)
		}
		spoken.Ends = slices.Clone(row.Ends)
		for i, end := range spoken.Ends {
			spoken.Ends[i] = End{Like: p.rows[end.Like], Hold: p.value(Column{}, end.Hold), Cap: p.value(Column{}, end.Cap), Across: p.value(Column{}, end.Across)}
		}
		spoken.Twins = nil
		for _, twin := range row.Twins {
			spoken.Twins = append(spoken.Twins, p.rows[twin])
		}
		out.Rows = append(out.Rows, spoken)
	}
	return &out
}

func (p *speaking) value(c Column, v Value) Value {
	if c.InWords(v) {
		v.Text = p.say(v.Text)
	}
	v.Sources = p.sourcesOf(v.Sources)
	v.Others = slices.Clone(v.Others)
	for i, other := range v.Others {
		v.Others[i] = p.value(c, other)
	}
	return v
}

func (p *speaking) sourcesOf(sources []*Source) []*Source {
	var out []*Source
	for _, source := range sources {
		out = append(out, p.sources[source])
	}
	return out
}
