package main

import (
	"fmt"
	"io"
	"strings"

	"capspan/build"
	"capspan/static/matcher"
	"capspan/templates/words"
)

// runPart answers a query about a spline, a flange or another part, in the core's own words.
func (v *identifyVerb) runPart(t *terminal, src build.Sources, in *words.Catalogue, q asked) error {
	p, all, problems := build.Parts(src)
	if problems.Blocked() {
		return printed(t, problems)
	}
	table, known := all[q.part]
	if !known {
		return misuse("nothing can be identified in a table %q\n    hint: known: %s", q.part, strings.Join(build.PartNames(all), ", "))
	}
	query, made := q.parts, ""
	if q.address != "" {
		var lost []matcher.PartComplaint
		var err error
		if query, made, lost, err = p.Decode(table, q.address); err != nil {
			return err
		}
		if len(lost) > 0 {
			return misuse("%s", partComplaints(in, lost))
		}
	}
	answer, err := p.Identify(table, query)
	if err != nil {
		return err
	}
	since, err := told(made, func() (matcher.Since, error) { return build.ChangedSince(src, made, answer) })
	if err != nil {
		return err
	}
	whole := struct {
		matcher.PartAnswer
		Since *matcher.Since `json:"since,omitempty"`
	}{answer, since}
	if err := v.print(t, whole, answer.Verdict, len(answer.Complaints) > 0, func() error { return printPart(t.out, in, answer, since) }); err != nil {
		return err
	}
	if len(answer.Complaints) > 0 {
		return misuse("%s", partComplaints(in, answer.Complaints))
	}
	return nil
}

// partFlags reads --read and what goes with it.
func (v *identifyVerb) partFlags() (asked, error) {
	q := matcher.PartQuery{Table: v.Part, Values: map[string][]string{}, Between: v.Between, Edges: v.Edges, Hole: trim(v.HoleDiameter),
		Unit: v.Unit, Tool: v.Tool, Condition: v.Condition}
	for _, one := range v.Read {
		column, reading, split := strings.Cut(one, "=")
		column = strings.TrimSpace(column)
		if !split || column == "" {
			return asked{}, misuse("--read %q names no column\n    hint: write a column, = and a reading, such as 'diameter=34.80 mm'", one)
		}
		q.Values[column] = append(q.Values[column], strings.TrimSpace(reading))
	}
	if len(q.Values) == 0 {
		return asked{}, misuse("there is no reading\n    hint: give --read, such as --part pto-shafts --read splines=6 --read 'diameter=34.80 mm'")
	}
	return asked{part: v.Part, parts: q}, nil
}

// partJSON reads a query from standard input.
func (v *identifyVerb) partJSON(in io.Reader) (asked, error) {
	text, err := io.ReadAll(io.LimitReader(in, matcher.MaxQuery+1))
	if err != nil {
		return asked{}, fmt.Errorf("read the query: %w", err)
	}
	q, err := matcher.DecodePartQuery(text)
	if err != nil {
		return asked{}, misuse("%v\n    hint: such as {\"table\": \"pto-shafts\", \"values\": {\"splines\": [\"6\"], \"diameter\": [\"34.80 mm\"]}}", err)
	}
	return asked{part: v.Part, parts: q}, nil
}

func partComplaints(in *words.Catalogue, list []matcher.PartComplaint) string {
	p := &printer{words: in}
	lines := make([]string, len(list))
	for i, c := range list {
		lines[i] = c.Column + ": " + c.Says
		if c.Text != "" && c.Column != "query" {
			lines[i] = p.word("flag-reading", "flag", c.Column, "at", c.Index+1) + ": " + c.Says
		}
	}
	return strings.Join(lines, "\ncapspan: ")
}

// printPart writes the core's own words.
func printPart(w io.Writer, in *words.Catalogue, a matcher.PartAnswer, since *matcher.Since) error {
	p := &printer{words: in}
	p.verdict(a.Verdict)
	p.para("", a.Says.Head)
	for _, s := range a.Says.Because {
		p.para("  ", s)
	}
	p.parts(p.word("rows"), a.Rows)
	if len(a.Readings) > 0 {
		p.title(p.word("readings"))
		for _, r := range a.Readings {
			text := p.counted(r.Used)
			if r.Unit == "mm" {
				text = p.word("from", "result", p.worth(r.Value, r.Uncertainty), "readings", text)
			}
			if len(r.SetAside) > 0 {
				text = p.word("set-aside", "result", text, "readings", p.counted(r.SetAside))
			}
			p.item("  "+r.Column+": ", text)
			if r.Unit == "mm" {
				p.item("    ", r.Why)
			}
		}
	}
	p.parts(p.word("near"), a.Near)
	if len(a.Says.Next) > 0 {
		p.title(p.word("next"))
		for i, s := range a.Says.Next {
			p.item(fmt.Sprintf("  %d. ", i+1), s)
		}
	}
	if len(a.Cautions) > 0 {
		p.title(p.word("caution"))
		for _, s := range a.Cautions {
			p.item("  - ", s)
		}
	}
	p.since(since)
	p.title(p.word("chart", "version", a.Chart.Version))
	_, err := w.Write(p.b.Bytes())
	return err
}

func (p *printer) parts(title string, rows []matcher.PartFound) {
	if len(rows) == 0 {
		return
	}
	p.title(title)
	for _, r := range rows {
		p.item("  ", fmt.Sprintf("%s (%s), %s", r.Name, r.Ref, p.basis(r.Basis)))
		p.item("    ", r.Because)
	}
}
