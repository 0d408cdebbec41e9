package compare

import (
	"fmt"
	"strings"
)

// section is one table's changes, or the registry's, ready to be written as text or
// as Markdown.
type section struct {
	title string
	step  *Step
	items []item
}

type item struct {
	mark  string // + added, - gone, > renamed, ~ changed
	names []string
	words []string
	calls []Call
}

// mostNames of rows that changed alike are named; the rest are counted.
const mostNames = 12

func (d *Diff) sections() []section {
	var out []section
	at := map[string]int{}
	section := func(title string) *section {
		n, there := at[title]
		if !there {
			n = len(out)
			at[title] = n
			out = append(out, section{title: title})
		}
		return &out[n]
	}
	for _, g := range d.Groups() {
		title := g.Table
		if title == "" {
			title, _, _ = strings.Cut(g.Row, "/")
		}
		s := section(title)
		s.items = append(s.items, itemOf(g))
	}
	for i := range d.Steps {
		section(d.Steps[i].Table).step = &d.Steps[i]
	}
	return out
}

func itemOf(g Group) item {
	it := item{mark: map[Kind]string{Added: "+", Retired: "-", Renamed: ">", Changed: "~"}[g.Kind], names: g.Paths, calls: g.Calls}
	if g.Row == "" && g.Column == "" {
		it.names = []string{"the table"}
	}
	if len(it.names) > mostNames {
		it.names = append(append([]string{}, it.names[:mostNames]...), fmt.Sprintf("and %d more", len(g.Paths)-mostNames))
	}
	for _, p := range g.Parts {
		it.words = append(it.words, partWords(g.Kind, p))
	}
	switch {
	case g.Kind == Renamed:
		it.words = append(it.words, "is now "+strings.Join(g.To, ", "))
	case g.Kind == Retired && len(g.To) > 0:
		it.words = append(it.words, "see "+strings.Join(g.To, ", "))
	case g.Kind == Retired && g.Why != "":
		it.words = append(it.words, "withdrawn")
	}
	if g.Why != "" {
		it.words = append(it.words, "why: "+g.Why)
	}
	return it
}

// partWords tells one part; where only one side is, that side alone.
func partWords(kind Kind, p Part) string {
	switch {
	case p.Old.Text == "" && p.New.Text == "":
		return p.What
	case kind == Added:
		return p.What + " " + p.New.words()
	case kind == Retired:
		return "was " + p.What + " " + p.Old.words()
	}
	return p.What + " " + p.Old.words() + " → " + p.New.words()
}

// words are both units, the converted one marked as such.
func (s Said) words() string {
	switch {
	case s.Text == "":
		return "nothing"
	case s.Converted == "":
		return s.Text
	}
	return s.Text + " (≈ " + s.Converted + ")"
}

// words say what the version did.
func (s *Step) words() string {
	switch {
	case s.Old == "":
		return "new, version " + s.New
	case s.New == "":
		return "gone, was version " + s.Old
	}
	step := "version " + s.Old + " → " + s.New
	if s.Old == s.New {
		step = "version " + s.Old
	}
	switch {
	case s.Needs == NoBump && s.Enough:
		return step + ", which nothing in its meaning asks for"
	case s.Enough:
		return fmt.Sprintf("%s, %s needed", step, s.Needs)
	}
	return fmt.Sprintf("%s, too low: at least %s (%s)", step, s.AtLeast, s.Needs)
}

// summary counts in one line.
func (d *Diff) summary() string {
	if d.Empty() {
		return "no meaning changed"
	}
	values, rows := map[Kind]int{}, map[Kind]int{}
	for _, c := range d.Changes {
		switch {
		case c.Table != "" && c.Row != "" && c.Column == "" && c.Kind != Changed:
			rows[c.Kind]++
		case c.Row != "" && parts(c.Parts).has("value"):
			values[c.Kind]++
		default:
			rows[""]++
		}
	}
	var words []string
	say := func(n int, one, more string) {
		switch {
		case n == 1:
			words = append(words, "1 "+one)
		case n > 1:
			words = append(words, fmt.Sprintf("%d %s", n, more))
		}
	}
	say(values[Changed], "value changed", "values changed")
	say(rows[Added], "row added", "rows added")
	say(rows[Retired], "row gone", "rows gone")
	say(rows[Renamed], "row renamed", "rows renamed")
	say(rows[""], "other change", "other changes")
	return strings.Join(words, ", ")
}
