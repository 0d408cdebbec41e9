package main

import (
	"bytes"
	"cmp"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"capspan/build"
	"capspan/static/matcher"
	"capspan/templates/words"
)

// columns is the width everything is wrapped to.
const columns = 80

const mmPerInch = 25.4

// printAnswer writes the core's own words with its figures in tables. A length stands
// in millimetres and in inches; the chart's own digits come first, and a converted
// one has ≈ before it.
func printAnswer(w io.Writer, in *words.Catalogue, a matcher.Answer, since *matcher.Since, own []build.OwnWords) error {
	p := &printer{words: in}
	p.verdict(a.Verdict)
	p.para("", a.Says.Head)
	p.slips(a.Slips)
	var told []string // a sentence stands once
	for _, s := range a.Slips {
		told = append(told, s.Says, s.Next)
	}
	because := slices.Clone(a.Says.Because)
	for _, e := range a.Ends {
		because = append(because, e.Says)
	}
	for _, s := range because {
		if !slices.Contains(told, s) {
			p.para("  ", s)
			told = append(told, s)
		}
	}
	p.sizes(p.sizesTitle(a), a.Sizes, true)
	p.own(own)
	p.ways(a.Ways)
	p.readings(a.Readings)
	// What is not the answer says so in a sentence and gets no table that looks like one.
	p.sizes(p.word("near"), a.Near, false)
	p.sizes(p.word("same-figures"), a.SameFigures, false)
	if len(a.Conversions) > 0 {
		p.title(p.word("conversions"))
		p.para("  ", strings.Join(a.Conversions, ", "))
	}
	var next []string
	for _, t := range a.TellApart {
		next = append(next, t.Says)
	}
	for _, s := range a.Says.Next {
		if !slices.Contains(next, s) && !slices.Contains(told, s) {
			next = append(next, s)
		}
	}
	if len(next) > 0 {
		p.title(p.word("next"))
		for i, s := range next {
			p.item(fmt.Sprintf("  %d. ", i+1), s)
		}
	}
	p.since(since)
	p.title(p.word("chart", "version", a.Chart.Version))
	_, err := w.Write(p.b.Bytes())
	return err
}

// verdict writes the first line.
func (p *printer) verdict(v matcher.Verdict) {
	p.para("", p.word("verdict", "verdict", p.word(string(v))))
}

// own writes what the keeper of a folder of one's own says of the rows.
func (p *printer) own(own []build.OwnWords) {
	for n, said := range own {
		if n == 0 {
			p.title(said.Title)
		}
		p.item("  "+said.Row+": ", said.String())
	}
}

func (p *printer) sizesTitle(a matcher.Answer) string {
	switch {
	case a.Verdict == matcher.Identified:
		return p.word("the-size")
	case len(a.Sizes) == 1:
		return p.word("possible-size")
	}
	return p.word("sizes-left")
}

// printer collects the text, in the words of a language.
type printer struct {
	b     bytes.Buffer
	words *words.Catalogue
}

func (p *printer) title(text string) { fmt.Fprintf(&p.b, "\n%s\n", text) }

// para writes a text wrapped and indented.
func (p *printer) para(indent, text string) { p.item(indent, text) }

// item writes a text whose first line has a lead; the others are indented as far.
func (p *printer) item(lead, text string) {
	indent := strings.Repeat(" ", utf8.RuneCountInString(lead))
	at, line := 0, lead
	for word := range strings.FieldsSeq(text) {
		width := utf8.RuneCountInString(word)
		switch {
		case at == 0:
			line += word
			at = utf8.RuneCountInString(lead) + width
		case at+1+width > columns:
			p.b.WriteString(line + "\n")
			line, at = indent+word, utf8.RuneCountInString(indent)+width
		default:
			line += " " + word
			at += 1 + width
		}
	}
	if at > 0 {
		p.b.WriteString(line + "\n")
	}
}

// slips writes what may have gone wrong, what to measure again, and the page that shows
// how. Nothing is put right by itself.
func (p *printer) slips(slips []matcher.SlipFound) {
	if len(slips) == 0 {
		return
	}
	p.title(p.word("slip"))
	for _, s := range slips {
		p.item("  - ", s.Says)
		p.para("    ", s.Next)
		if s.Guide != "" {
			p.para("    ", p.word("see", "page", s.Guide))
		}
	}
	p.b.WriteString("\n")
}

// ways writes how two ends that no listed joint joins can be joined all the same.
func (p *printer) ways(ways []matcher.Way) {
	if len(ways) == 0 {
		return
	}
	p.title(p.word("ways"))
	for _, w := range ways {
		rows := p.word("way", "joint", w.Joint)
		if len(w.To) > 0 {
			rows = p.word("way-yoke", "joint", w.Joint, "end", w.Change+1, "rows", strings.Join(w.To, ", "))
		}
		p.item("  - ", w.Says)
		p.para("    ", rows)
	}
}

// sizes writes each size with its rows and its evidence, and with figures a table of
// what was measured beside what the chart says.
func (p *printer) sizes(title string, sizes []matcher.Size, figures bool) {
	if len(sizes) == 0 {
		return
	}
	p.title(title)
	for _, s := range sizes {
		hold := p.words.Say("hold." + string(s.Hold))
		if s.Hold == "unknown" {
			hold = p.words.Say("hold.not-known")
		}
		head := strings.Join(s.Names, " = ") + " (" + strings.Join(s.Rows, ", ") + "), " +
			hold + ", " + p.basis(string(s.Basis))
		p.item("  ", head)
		p.item("    ", s.Because)
		if figures {
			p.comparisons(s.Ends)
		}
	}
}

// comparisons writes two lines for each figure: in the chart's unit, then in the other.
func (p *printer) comparisons(ends []matcher.ComparedEnd) {
	var table bytes.Buffer
	t := tabwriter.NewWriter(&table, 0, 0, 2, ' ', 0)
	rows := 0
	row := func(end int, name string, c *matcher.Comparison) {
		if c == nil {
			return
		}
		if rows++; rows == 1 {
			fmt.Fprintf(t, "    \t%s\t%s\t%s\t%s\n", p.word("measured"), p.word("in-chart"), p.word("difference"), p.word("within"))
		}
		if len(ends) > 1 {
			name = p.word("of-end", "end", end+1, "quantity", name)
		}
		own, other := p.millimetres, p.inches
		if strings.HasSuffix(c.ChartText, "in") {
			own, other = p.inches, p.millimetres
		}
		bound := func(text string) string {
			if math.Abs(c.Difference) > c.Uncertainty {
				return p.word("outside", "by", text)
			}
			return p.word("inside", "by", text)
		}
		fmt.Fprintf(t, "    %s\t%s\t%s\t%s\t%s\n", name, own(c.Measured, ""), cmp.Or(p.number(c.ChartText), own(c.Chart, "")),
			own(c.Difference, "+"), bound(own(c.Uncertainty, "")))
		fmt.Fprintf(t, "    \t≈ %s\t≈ %s\t≈ %s\t%s\n", other(c.Measured, ""), other(c.Chart, ""),
			other(c.Difference, "+"), "≈ ±"+other(c.Uncertainty, ""))
	}
	for i, e := range ends {
		row(i, p.word("cap"), e.Cap)
		row(i, p.word("across"), e.Across)
	}
	t.Flush() // into a buffer: it cannot fail
	for line := range strings.Lines(table.String()) {
		p.b.WriteString(strings.TrimRight(line, " \n") + "\n")
	}
}

func (p *printer) millimetres(mm float64, sign string) string {
	return p.number(length(mm, sign, 2)) + " mm"
}

func (p *printer) inches(mm float64, sign string) string {
	return p.number(length(mm/mmPerInch, sign, 4)) + " in"
}

// length rounds first, so that no difference reads -0.00.
func length(value float64, sign string, decimals int) string {
	scale := math.Pow10(decimals)
	value = math.Round(value*scale) / scale
	if value == 0 {
		return fmt.Sprintf("%.*f", decimals, 0.0)
	}
	return fmt.Sprintf("%"+sign+".*f", decimals, value)
}

// counted lists readings, those that came several times in a row once.
func (p *printer) counted(readings []string) string {
	var parts []string
	for i := 0; i < len(readings); {
		n := 1
		for i+n < len(readings) && readings[i+n] == readings[i] {
			n++
		}
		parts = append(parts, p.word("times", "n", n, "reading", readings[i]))
		i += n
	}
	return strings.Join(parts, ", ")
}

// readings writes what the readings came to and what was set aside.
func (p *printer) readings(list []matcher.Estimate) {
	if len(list) == 0 {
		return
	}
	p.title(p.word("readings"))
	ends := 0
	for _, e := range list {
		ends = max(ends, e.End+1)
	}
	for _, e := range list {
		name := p.word(string(e.Quantity))
		if ends > 1 {
			name = p.word("of-end", "end", e.End+1, "quantity", name)
		}
		text := p.worth(e.Value, e.Uncertainty)
		if len(e.Used) > 0 {
			text = p.word("from", "result", text, "readings", p.counted(e.Used))
		}
		if len(e.SetAside) > 0 {
			text = p.word("set-aside", "result", text, "readings", p.counted(e.SetAside))
		}
		p.item("  "+name+": ", text)
		p.item("    ", e.Why)
	}
}

// worth is what readings came to, in both units.
func (p *printer) worth(mm, uncertainty float64) string {
	return fmt.Sprintf("%s ± %s (≈ %s ± %s)", p.millimetres(mm, ""), p.millimetres(uncertainty, ""), p.inches(mm, ""), p.inches(uncertainty, ""))
}
