package build

import (
	"encoding/json"
	"slices"
	"strings"

	"capspan/tables"
	"capspan/templates"
)

// The chart as an enquiry slip shows it: what stands on the rows' pages, figure by
// figure with its evidence, in one file that the page of the slip fetches. It is not in
// the core's chart, which a first visit loads and which has no words.
// static/order/chart.ts reads it.

type slipChart struct {
	Format  int       `json:"format"`
	Version string    `json:"version"`
	Rows    []slipRow `json:"rows"`
}

type slipRow struct {
	ID        string     `json:"id"`
	Ref       string     `json:"ref"`
	Also      []string   `json:"also"`
	Basis     string     `json:"basis"`
	Confirm   bool       `json:"confirm"`
	Ends      []slipEnd  `json:"ends"`
	Values    []slipCell `json:"values"`
	Fasteners []slipCell `json:"fasteners"`
}

type slipEnd struct {
	Title  string   `json:"title"`
	Like   string   `json:"like,omitempty"`
	Hold   slipCell `json:"hold"`
	Cap    slipCell `json:"cap"`
	Across slipCell `json:"across"`
}

type slipCell struct {
	Label     string     `json:"label,omitempty"`
	Text      string     `json:"text"`
	Converted string     `json:"converted,omitempty"`
	Note      string     `json:"note,omitempty"`
	Basis     string     `json:"basis,omitempty"`
	From      []string   `json:"from,omitempty"`
	Others    []slipCell `json:"others,omitempty"`
}

// slipJSON is that file.
func (s *site) slipJSON() []byte {
	chart := slipChart{Format: 1, Version: s.version.Name(), Rows: []slipRow{}}
	for _, table := range s.set.Tables {
		if !table.Joint() {
			continue
		}
		for _, row := range table.Rows {
			chart.Rows = append(chart.Rows, s.slipRow(row))
		}
	}
	text, err := json.Marshal(chart)
	if err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	return text
}

func (s *site) slipRow(row *tables.Row) slipRow {
	out := slipRow{ID: row.ID, Ref: row.Ref(), Also: slices.Clone(row.Also), Basis: s.basisWord(row.Basis), Confirm: row.Basis == tables.Memory,
		Values: []slipCell{}, Fasteners: s.slipFasteners(row)}
	if out.Also == nil {
		out.Also = []string{}
	}
	for n, end := range row.Ends {
		view := s.jointEnd(row, n, end)
		out.Ends = append(out.Ends, slipEnd{Title: view.Title, Like: view.Like.Text,
			Hold: slipCellOf(view.Hold), Cap: slipCellOf(view.Cap), Across: slipCellOf(view.Across)})
	}
	for _, value := range s.valuesOf(row) {
		c := slipCellOf(value.Cell)
		c.Label = value.Label
		out.Values = append(out.Values, c)
	}
	out.Values = append(out.Values, s.slipOwn(row)...)
	return out
}

func slipCellOf(c templates.Cell) slipCell {
	out := slipCell{Text: c.Text, Converted: c.Converted, Note: c.Note, Basis: c.Basis}
	for _, source := range c.Sources {
		out.From = append(out.From, source.Text)
	}
	for _, other := range c.Others {
		out.Others = append(out.Others, slipCellOf(other))
	}
	return out
}

// slipFasteners are the threads that a table with the columns item, series and thread
// lists for the row's very name; what it says of a neighbour says nothing of the row.
func (s *site) slipFasteners(row *tables.Row) []slipCell {
	list := []slipCell{}
	for _, table := range s.set.Tables {
		if _, threads := table.Column("thread"); !threads {
			continue
		}
		for _, fastener := range table.Rows {
			item, ok1 := fastener.Values["item"]
			series, ok2 := fastener.Values["series"]
			thread, ok3 := fastener.Values["thread"]
			if !ok1 || !ok2 || !ok3 || thread.State != tables.Given || !slices.Contains(strings.Split(series.Text, ", "), row.ID) {
				continue
			}
			c := slipCellOf(s.cell(thread))
			c.Label = capital(item.Text)
			list = append(list, c)
		}
	}
	return list
}
