package build

import (
	"encoding/json"
	"fmt"
	"html/template"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/static"
	"capspan/static/driveline"
	"capspan/tables"
	"capspan/templates"
)

// Addresses of the driveline pages.
const (
	drivelineAddress = "/driveline/"
	documentsAddress = "/driveline/sources/"
)

// fastenersTable is the table whose rows the calculation of tightening torques looks at.
const fastenersTable = "fasteners"

func calculationAddress(name string) string { return drivelineAddress + name + "/" }

// Driveline returns the calculations with what they take from the chart of the sources.
func Driveline(src Sources) (*driveline.Machine, diag.List) {
	set, problems := src.spoken()
	cut := cutOnce(set)
	bundle, calculating := static.Core, static.Driveline
	if cut != nil {
		bundle, calculating = static.Pieced, static.DrivelinePieced
	}
	core, more := bundle(src.Static)
	problems.Add(more...)
	scripts, more := calculating(src.Static)
	problems.Add(more...)
	if problems.Blocked() {
		return nil, problems
	}
	m, err := calculations(core, scripts, set, cut)
	if err != nil {
		problems.Add(drivelineProblem(err))
		return nil, problems
	}
	return m, problems
}

func drivelineProblem(err error) diag.Problem {
	return diag.Problem{Pos: diag.Pos{File: "static/driveline/frame.ts"}, Fact: err.Error(), Rule: "core-fails"}
}

func calculations(core, scripts []byte, set *tables.Set, cut func() (*chartPieces, error)) (*driveline.Machine, error) {
	m, err := driveline.New(core, scripts)
	if err != nil {
		return nil, err
	}
	provided := drivelineRows(set)
	if cut != nil {
		pieces, err := cut()
		if err != nil {
			return nil, err
		}
		return m, m.ProvidePieces(provided, pieces.in(set), pieces.fetch)
	}
	chart := Chart(set)
	provided.Chart = &chart
	return m, m.Provide(provided)
}

// drivelineRows is what the calculations take from the chart: published torques of bolts,
// the names of joints, and what ratings of joints are published.
func drivelineRows(set *tables.Set) driveline.Provided {
	p := driveline.Provided{Fasteners: []driveline.Fastener{}, Documents: []driveline.Document{}, Rows: []string{}, Ratings: []driveline.PublishedRate{}}
	for _, table := range set.Tables {
		rated := slices.ContainsFunc(table.Columns, func(c tables.Column) bool { return c.Kind == tables.Torque })
		for _, row := range table.Rows {
			if table.ID == fastenersTable {
				p.Fasteners = append(p.Fasteners, fastenerOf(row))
				for _, src := range row.Values["torque"].Sources {
					if !slices.ContainsFunc(p.Documents, func(d driveline.Document) bool { return d.Key == src.ID }) {
						p.Documents = append(p.Documents, driveline.Document{Key: src.ID, Title: src.Title, Publisher: src.Publisher, Where: src.Where, Trust: src.Trust})
					}
				}
			}
			if len(row.Ends) == 0 {
				continue
			}
			p.Rows = append(append(p.Rows, row.ID), row.Also...)
			if rated {
				p.Ratings = append(p.Ratings, ratingsOf(row)...)
			}
		}
	}
	return p
}

func fastenerOf(row *tables.Row) driveline.Fastener {
	torque := row.Values["torque"]
	text := func(column string) string {
		if v := row.Values[column]; v.State == tables.Given {
			return v.Text
		}
		return ""
	}
	f := driveline.Fastener{ID: row.ID, Item: text("item"), Series: text("series"), Thread: text("thread"),
		Ground: driveline.FastenerGround{Basis: string(torque.Basis), Source: []string{}}}
	if torque.State == tables.Given {
		f.Least = torque.Quantity.Float()
		f.Most = f.Least
		if torque.To.Text != "" {
			f.Most = torque.To.Float()
		}
	}
	for _, src := range torque.Sources {
		f.Ground.Source = append(f.Ground.Source, src.ID)
	}
	return f
}

// ratingsOf are the published torques of a joint's row: any column of that kind, once a
// table of joints has one.
func ratingsOf(row *tables.Row) []driveline.PublishedRate {
	var list []driveline.PublishedRate
	for _, column := range row.Table.Columns {
		v := row.Values[column.ID]
		if column.Kind != tables.Torque || v.State != tables.Given || v.Basis != tables.Published {
			continue
		}
		rate := driveline.PublishedRate{Row: row.ID, Torque: v.Quantity.Float()}
		if len(v.Sources) > 0 {
			rate.Source = v.Sources[0].ID
		}
		list = append(list, rate)
	}
	return list
}

// calculated is the driveline part of a site, worked out once.
type calculated struct {
	described []driveline.Described
	results   map[string]template.HTML // of the worked examples, by name
	documents []driveline.Document
	stale     bool // of an earlier chart; only in a hasty build
}

// calculate works the examples out with the very scripts the pages load.
func calculate(core, scripts []byte, set *tables.Set, cut func() (*chartPieces, error)) (calculated, error) {
	c := calculated{results: map[string]template.HTML{}}
	m, err := calculations(core, scripts, set, cut)
	if err != nil {
		return c, err
	}
	if c.described, err = m.Described(); err != nil {
		return c, err
	}
	for _, d := range c.described {
		if c.results[d.Name], err = m.Result(d.Name, d.Example.Fragment); err != nil {
			return c, fmt.Errorf("the example of %s: %w", d.Name, err)
		}
	}
	c.documents, err = m.Documents()
	return c, err
}

// drivelineDrafts are the pages of the calculations, their list, and what they cite.
func (s *site) drivelineDrafts() []draft {
	drafts := []draft{s.drivelineIndex, s.documentsPage}
	for _, d := range s.driveline.described {
		drafts = append(drafts, func() (templates.Page, diag.Pos) { return s.calculationPage(d) })
	}
	return drafts
}

func (s *site) drivelineIndex() (templates.Page, diag.Pos) {
	body := &templates.Driveline{Documents: s.documentsLink()}
	for _, d := range s.driveline.described {
		body.Calculations = append(body.Calculations, s.calculationLink(d))
	}
	return templates.Page{Address: drivelineAddress, Title: s.word("driveline.title"), Sheet: s.word("driveline.sheet"),
		About: s.word("driveline.about"), Body: body}, diag.Pos{File: "static/driveline/frame.ts"}
}

func (s *site) calculationLink(d driveline.Described) templates.Link {
	return templates.Link{Href: s.at(calculationAddress(d.Name)), Text: d.Title, Note: d.About}
}

func (s *site) documentsLink() templates.Link { return templates.Link{Href: s.at(documentsAddress)} }

// documentsPage lists what the calculations cite, as the registry of the chart's sources
// is listed.
func (s *site) documentsPage() (templates.Page, diag.Pos) {
	body := &templates.Sources{}
	for _, d := range s.driveline.documents {
		body.Sources = append(body.Sources, templates.SourceView{ID: d.Key, Kind: s.word("driveline.source-kind"), Title: d.Title,
			Publisher: d.Publisher, Where: d.Where, Trust: d.Trust})
	}
	return templates.Page{Address: documentsAddress, Title: s.word("driveline.sources-title"), Sheet: s.word("driveline.sources-title"),
		About: s.word("driveline.sources-about"), Body: body}, diag.Pos{File: "static/driveline/sources.ts"}
}

func (s *site) calculationPage(d driveline.Described) (templates.Page, diag.Pos) {
	from := diag.Pos{File: "static/driveline/calculation-" + d.Name + ".ts"}
	body := &templates.Calculation{Name: d.Name, Purpose: d.Purpose, Cautions: d.Cautions, Example: d.Example.Says,
		Result: s.driveline.results[d.Name], Provided: s.providedTo(d.Name), Documents: s.documentsLink()}
	for _, g := range d.Groups {
		group := templates.InputGroup{Title: g.Title}
		for _, in := range d.Inputs {
			if in.Group == g.ID {
				group.Inputs = append(group.Inputs, inputView(in))
			}
		}
		body.Groups = append(body.Groups, group)
	}
	for _, other := range s.driveline.described {
		if other.Name != d.Name {
			body.Onward = append(body.Onward, s.calculationLink(other))
		}
	}
	page := templates.Page{Address: calculationAddress(d.Name), Title: d.Title, Sheet: d.Title, About: d.About,
		Scripts: []string{"driveline.js", static.CalculationScript(d.Name), "calculation.js"}, Body: body}
	if d.Name == joiningEnds {
		body.Chart = true
		page.Scripts = append(s.coreScripts("matcher.js", "matcher-late.js"), page.Scripts...)
		page.Ahead = []string{"chart.json"}
	}
	return page, from
}

// joiningEnds is the calculation that asks the identification core.
const joiningEnds = "ends"

// providedTo is what a calculation's page carries of the chart, as JSON: only what its
// calculation looks at.
func (s *site) providedTo(name string) string {
	part := map[string]any{}
	switch name {
	case "fasteners":
		all := drivelineRows(s.set)
		part["fasteners"], part["documents"] = all.Fasteners, all.Documents
	case "torque":
		all := drivelineRows(s.set)
		part["rows"], part["ratings"] = all.Rows, all.Ratings
	}
	text, err := json.Marshal(part)
	if err != nil {
		panic("internal error: " + err.Error()) // strings and numbers only
	}
	return string(text)
}

func inputView(in driveline.Input) templates.CalculationInput {
	view := templates.CalculationInput{ID: in.ID, Kind: in.Kind, Label: in.Label, Hint: in.Hint, Usual: in.Usual, Preset: in.Preset,
		Optional: in.Optional, Signed: strings.HasPrefix(in.Usual, "−"), Example: in.Example}
	for _, u := range in.Units {
		view.Units = append(view.Units, templates.Choice{Value: u.Name, Label: u.Sign})
	}
	for _, o := range in.Options {
		view.Options = append(view.Options, templates.Choice{Value: o.Value, Label: o.Label})
	}
	return view
}
