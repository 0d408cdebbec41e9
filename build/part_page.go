package build

import (
	"encoding/json"
	"math"
	"strconv"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

// The pages that identify a row of a table without joints. Each has an address of its own
// below /identify/, not a form on the page of its table: at the bench the form comes first,
// its link can be sent, and neither the table nor the first visit of /identify/ gets heavier.
const partsAddress = "/identify/part/"

func partAddress(t *tables.Table) string { return partsAddress + t.ID + "/" }

// partData is the plain name of a table as the core reads it.
func partData(t *tables.Table) string { return "part-" + t.ID + ".json" }

func (s *site) partJSON(t *tables.Table) []byte {
	text, err := json.Marshal(PartTable(s.set, t))
	if err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	return text
}

// partsPage lists what can be identified besides joints.
func (s *site) partsPage() (templates.Page, diag.Pos) {
	body := &templates.Parts{}
	for _, t := range partTables(s.set) {
		body.Tables = append(body.Tables, templates.Link{Href: s.at(partAddress(t)), Text: t.Title, Note: t.About})
	}
	return templates.Page{Address: partsAddress, Title: s.word("part.title"), Sheet: s.word("part.sheet"), About: s.word("part.about"),
		Body: body}, diag.Pos{File: "tables"}
}

// partPage is the form for one table. Without script it says what to count and measure.
func (s *site) partPage(t *tables.Table) (templates.Page, diag.Pos) {
	body := &templates.Part{Cautions: t.Cautions, Data: s.atRoot(s.parts[partData(t)]), Unit: string(t.Unit),
		Chart: templates.Link{Href: s.at(tableAddress(t)), Text: t.Title},
		Tools: s.choices("tool.", tools), Conditions: s.choices("tool.on-", conditions)}
	for _, c := range countsFirst(t.Matched()) {
		view := templates.PartColumn{ID: c.ID, Label: c.Label, How: s.howToMatch(c), Count: c.Match == tables.Exact, Circle: c.Match == tables.Circle}
		if view.Circle {
			body.Factors = chordFactors()
		}
		body.Columns = append(body.Columns, view)
	}
	return templates.Page{Address: partAddress(t), Title: s.word("part.one", "title", t.Title), Sheet: t.Title,
		About: s.word("part.one-about", "title", t.Title), Scripts: []string{"parts.js", "part.js", ownScript}, Ahead: []string{partData(t)}, Body: body}, t.Pos
}

func (s *site) howToMatch(c tables.Column) string {
	switch {
	case c.Match == tables.Exact:
		return s.word("part.exact")
	case c.Match == tables.Inside:
		return s.word("part.inside")
	case c.Match == tables.Circle:
		return s.word("part.circle")
	case !c.Below.IsZero():
		return s.word("part.outside-below", "below", s.figures(c.Below.String()+" (≈ "+c.Below.Converted()+")"))
	}
	return s.word("part.outside")
}

// countsFirst puts what is counted in front: a bolt circle needs it, and it is done soonest.
func countsFirst(columns []tables.Column) []tables.Column {
	var counts, others []tables.Column
	for _, c := range columns {
		if c.Match == tables.Exact {
			counts = append(counts, c)
		} else {
			others = append(others, c)
		}
	}
	return append(counts, others...)
}

// chordFactors is the table for doing it by hand, as machinists' handbooks have it; a test
// holds it to the core's own.
func chordFactors() []templates.ChordFactor {
	var list []templates.ChordFactor
	for _, holes := range []int{3, 4, 5, 6, 8, 10, 12} {
		factor := func(on int) string {
			return strconv.FormatFloat(math.Sin(math.Pi*float64(on)/float64(holes)), 'f', 5, 64)
		}
		list = append(list, templates.ChordFactor{Holes: holes, Next: factor(1), Farthest: factor(holes / 2)})
	}
	return list
}
