package main

import (
	"fmt"
	"io"
	"net/url"
	"slices"
	"strings"
	"text/tabwriter"

	"capspan/build"
	"capspan/static/driveline"
	"capspan/templates/words"
)

type drivelineVerb struct {
	rootFlag
	languageFlag
	JSON    bool     `name:"json" help:"Print the result as JSON."`
	Example bool     `help:"Work out the calculation's own example."`
	Name    string   `arg:"" optional:"" help:"angles, speed, torque, life, ends, length, clips, fasteners or balance. Left out: list them."`
	Inputs  []string `arg:"" optional:"" placeholder:"input=value" help:"What goes in, such as gearbox=3deg or 'length=1450 mm'. Left out: say what can."`
}

// Help is shown below the one-line help.
func (drivelineVerb) Help() string {
	return `The same figures and sentences as the pages under /driveline/, by the same code.
A number takes a unit, or the first of its input; an input that is not given and
has no value of its own leaves out the parts that need it. Figures that cannot be
used exit with 2. Nothing printed here says that a shaft is fit for use.

Examples:
  capspan driveline
  capspan driveline angles
  capspan driveline angles gearbox=3deg shaft=7.5deg axle=2deg speed=1500rpm
  capspan driveline speed outside='3 in' wall=0.083in length=50in speed=3000rpm
  capspan driveline fasteners thread=3/8-24 grade=SAE-8 --json`
}

// Run works out one calculation.
func (v *drivelineVerb) Run(t *terminal) error {
	src, _, err := v.sources(false)
	if err != nil {
		return err
	}
	src, in, err := v.speaking(t, src)
	if err != nil {
		return err
	}
	m, problems := build.Driveline(src)
	if problems.Blocked() {
		if err := problems.Print(t.err); err != nil {
			return err
		}
		return problemsFound
	}
	described, err := m.Described()
	if err != nil {
		return err
	}
	if v.Name == "" {
		return v.list(t.out, described)
	}
	at := slices.IndexFunc(described, func(d driveline.Described) bool { return d.Name == v.Name })
	if at < 0 {
		return misuse("there is no calculation %q\n    hint: capspan driveline lists them", v.Name)
	}
	d := described[at]
	fragment := d.Example.Fragment
	switch {
	case v.Example && len(v.Inputs) > 0:
		return misuse("the example and inputs at once\n    hint: leave --example out, or the inputs")
	case len(v.Inputs) > 0:
		if fragment, err = fragmentOf(v.Inputs); err != nil {
			return err
		}
	case !v.Example:
		return v.inputs(t.out, in, d)
	}
	report, err := m.Reckon(v.Name, fragment)
	if err != nil {
		return err
	}
	documents, err := m.Documents()
	if err != nil {
		return err
	}
	if v.JSON {
		err = printJSON(t.out, report)
	} else {
		err = printReport(t.out, in, report, documents)
	}
	if err != nil {
		return err
	}
	if len(report.Refusals) > 0 {
		return misuse("%s", refusals(report.Refusals))
	}
	return nil
}

// fragmentOf writes inputs as the address of the page has them. A word without "=" belongs
// to the value before it, as in length=1450 mm.
func fragmentOf(inputs []string) (string, error) {
	var pairs []string
	for _, input := range inputs {
		key, value, pair := strings.Cut(input, "=")
		switch {
		case pair:
			pairs = append(pairs, url.QueryEscape(strings.TrimSpace(key))+"="+url.QueryEscape(strings.TrimSpace(value)))
		case len(pairs) == 0:
			return "", misuse("what is %q?\n    hint: give inputs as name=value, such as gearbox=3deg", input)
		default:
			pairs[len(pairs)-1] += "+" + url.QueryEscape(input)
		}
	}
	return strings.Join(pairs, "&"), nil
}

// refusals lists what cannot be used, each with its place; the calculation's own words say
// what to write instead.
func refusals(list []driveline.Refusal) string {
	lines := make([]string, len(list))
	for i, r := range list {
		place := r.Input
		if place == "" {
			place = "inputs"
		}
		lines[i] = fmt.Sprintf("%s: %s", place, r.Says)
	}
	return strings.Join(lines, "\ncapspan: ")
}

// list names the calculations.
func (v *drivelineVerb) list(w io.Writer, all []driveline.Described) error {
	if v.JSON {
		return printJSON(w, all)
	}
	p := &printer{}
	for _, d := range all {
		p.item(fmt.Sprintf("%-10s ", d.Name), d.Title+". "+d.About)
	}
	_, err := w.Write(p.b.Bytes())
	return err
}

// inputs says what a calculation can be given.
func (v *drivelineVerb) inputs(w io.Writer, says *words.Catalogue, d driveline.Described) error {
	if v.JSON {
		return printJSON(w, d)
	}
	p := &printer{words: says}
	p.para("", d.Title+". "+d.About)
	for _, group := range d.Groups {
		p.title(group.Title)
		for _, in := range d.Inputs {
			if in.Group == group.ID {
				p.item("  "+in.ID+"  ", p.inputLine(in))
			}
		}
	}
	p.b.WriteString("\n")
	p.para("", p.word("example", "command", "capspan driveline "+d.Name+" --example"))
	_, err := w.Write(p.b.Bytes())
	return err
}

func (p *printer) inputLine(in driveline.Input) string {
	parts := []string{in.Label + "."}
	var names []string
	for _, o := range in.Options {
		names = append(names, o.Value+" ("+o.Label+")")
	}
	for _, u := range in.Units {
		if u.Name != "" {
			names = append(names, u.Name)
		}
	}
	if len(names) > 0 {
		parts = append(parts, strings.Join(names, ", ")+".")
	}
	if in.Usual != "" {
		parts = append(parts, p.word("usual", "range", in.Usual))
	}
	switch {
	case in.Preset != "":
		parts = append(parts, p.word("preset", "value", p.number(in.Preset)))
	case in.Optional:
		parts = append(parts, p.word("optional"))
	}
	return strings.Join(parts, " ")
}

// printReport writes the calculation's own words with its figures.
func printReport(w io.Writer, in *words.Catalogue, r driveline.Report, documents []driveline.Document) error {
	names := map[string]string{}
	for _, d := range documents {
		names[d.Key] = d.Publisher + ", " + d.Title
	}
	p := &printer{words: in}
	p.para("", r.Title)
	for _, g := range r.Given {
		p.item("  ", g.Label+": "+withUnit(p.number(g.Value), g.Unit))
	}
	for _, part := range r.Parts {
		p.title(part.Title)
		if len(part.Missing) > 0 {
			p.para("  ", p.word("needed", "inputs", strings.Join(part.Missing, ", ")))
		}
		from := ""
		for _, line := range r.Lines {
			if line.Part == part.ID {
				from = p.line(line, from, names)
			}
		}
		for _, says := range part.Says {
			p.para("  ", says)
		}
		p.limits(r.Limits, part.ID, names)
		for _, picture := range part.Pictures {
			p.plotted(picture)
		}
	}
	p.list(p.word("unchecked"), r.Unchecked)
	p.list(p.word("before-work"), r.Cautions)
	p.title("/driveline/" + r.Calculation + "/#" + r.Fragment)
	_, err := w.Write(p.b.Bytes())
	return err
}

func (p *printer) list(title string, items []string) {
	p.title(title)
	for _, item := range items {
		p.item("  - ", item)
	}
}

// withUnit puts a unit behind a number; the sign of degrees stands close.
func withUnit(value, unit string) string {
	if unit == "" || unit == "°" {
		return value + unit
	}
	return value + " " + unit
}

// line writes a figure, then what it rests on unless the one above rests on the same.
func (p *printer) line(line driveline.Line, above string, names map[string]string) (from string) {
	value := withUnit(p.number(line.Value), line.Unit)
	if line.Also != "" {
		value += " (≈ " + p.number(line.Also) + ")"
	}
	p.item("  ", strings.TrimSpace(line.Label+": "+strings.TrimSpace(value+" "+strings.Join(line.Rows, ", "))))
	from = line.Formula
	if len(line.Source) > 0 {
		from = strings.TrimSpace(from + " [" + p.grounds(line.Source, names) + "]")
	}
	if from != "" && from != above {
		p.para("      ", from)
		if line.Valid != "" {
			p.para("      ", line.Valid)
		}
	}
	return from
}

// grounds say why a figure is believed.
func (p *printer) grounds(list []driveline.Ground, names map[string]string) string {
	var said []string
	for _, g := range list {
		text := p.basis(g.Basis)
		if g.Source != "" {
			text += ": " + names[g.Source]
			if names[g.Source] == "" {
				text += g.Source
			}
		}
		if g.At != "" {
			text += ", " + g.At
		}
		said = append(said, text)
	}
	return strings.Join(said, "; ")
}

// limits writes each limit with the word and the value beside it.
func (p *printer) limits(all []driveline.LimitLine, part string, names map[string]string) {
	of := ""
	for _, l := range all {
		if l.Part != part {
			continue
		}
		if l.Of != of {
			of = l.Of
			var stands []string
			for _, s := range l.Stands {
				stands = append(stands, strings.TrimSpace(s.Of+" "+p.number(s.Value)))
			}
			p.para("  ", of+": "+strings.Join(stands, ", "))
		}
		var met []string
		for _, s := range l.Stands {
			met = append(met, strings.TrimSpace(s.Of+" "+p.word("met-"+strings.ReplaceAll(s.Met, " ", "-"))))
		}
		text := l.Limit + ": " + strings.Join(met, ", ")
		if l.Says != "" {
			text += "; " + l.Says
		}
		p.item("    ", text+" ["+p.grounds(l.Source, names)+"]")
	}
}

// plotted writes a plot in figures.
func (p *printer) plotted(picture driveline.Picture) {
	if picture.Table == nil {
		return
	}
	p.para("  ", picture.Title+":")
	t := tabwriter.NewWriter(&p.b, 0, 0, 2, ' ', tabwriter.AlignRight)
	for _, row := range append([][]string{picture.Table.Head}, picture.Table.Rows...) {
		fmt.Fprintf(t, "    %s\t\n", p.number(strings.Join(row, "\t")))
	}
	t.Flush() // into a buffer: it cannot fail
}
