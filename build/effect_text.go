package build

import (
	"fmt"
	"io"
	"strings"

	"capspan/tables/compare"
)

// mostShown lines of each kind of effect are written out; JSON has all of them.
const mostShown = 20

// WriteText writes the difference and its effect for a terminal.
func (c *Comparison) WriteText(w io.Writer) error {
	if err := c.Diff.WriteText(w); err != nil {
		return err
	}
	return c.writeEffect(w, "\n%s:\n", func(words string) string { return "  " + words })
}

// WriteMarkdown writes both as a comment for a forge.
func (c *Comparison) WriteMarkdown(w io.Writer) error {
	if err := c.Diff.WriteMarkdown(w); err != nil {
		return err
	}
	return c.writeEffect(w, "\n### %s\n\n", func(words string) string { return "- " + compare.Escape(words) })
}

func (c *Comparison) writeEffect(w io.Writer, head string, line func(string) string) error {
	var b strings.Builder
	list := func(title string, lines []string) {
		if len(lines) == 0 {
			return
		}
		fmt.Fprintf(&b, head, title)
		for n, words := range lines {
			if n == mostShown {
				words = fmt.Sprintf("and %d more", len(lines)-n)
			}
			b.WriteString(line(words) + "\n")
			if n == mostShown {
				break
			}
		}
	}
	pairs := func(all []compare.Pair) []string {
		var lines []string
		for _, p := range all {
			words := p.A + " and " + p.B
			if p.Twins {
				words += ", which name each other as twins"
			}
			lines = append(lines, words)
		}
		return lines
	}
	list("a caliper can no longer tell apart", pairs(c.Shifts.Together))
	list("a caliper can now tell apart", pairs(c.Shifts.Apart))
	var moves, verdicts []string
	for _, m := range c.Shifts.Conversions {
		moves = append(moves, fmt.Sprintf("%s, end like %s: %s %s → %s", m.Row, m.Like, m.What, both(m.Old), both(m.New)))
	}
	list("conversion joints that moved", moves)
	for _, v := range c.Verdicts {
		verdicts = append(verdicts, fmt.Sprintf("%s: %s → %s (of %s)", v.Asks, v.Old.words(), v.New.words(), v.Of))
	}
	list("readings, and links with such readings, that now mean something else", verdicts)
	switch {
	case c.Empty():
	case c.Near == 0 && c.Asked == 0:
		list("effect", []string{fmt.Sprintf("none of %d queries lies near the change", c.Queries)})
	default:
		words := fmt.Sprintf("%d of %d queries were asked; %d lie near the change", c.Asked, c.Queries, c.Near)
		if c.Asked < c.Near {
			words += ", and --every asks them all"
		}
		if len(c.Verdicts) == 0 {
			words += "; none of those asked is answered otherwise"
		}
		list("effect", []string{words})
	}
	_, err := io.WriteString(w, b.String())
	return err
}

func both(s compare.Said) string {
	if s.Converted == "" {
		return s.Text
	}
	return s.Text + " (≈ " + s.Converted + ")"
}

func (c Concluded) words() string {
	if len(c.Rows) == 0 {
		return c.Verdict
	}
	return c.Verdict + " " + strings.Join(c.Rows, ", ")
}
