package compare

import (
	"fmt"
	"io"
	"strings"
)

// WriteMarkdown writes the difference as a comment for a forge. Whatever a contributor
// wrote is escaped: it stays words, whatever it looks like.
func (d *Diff) WriteMarkdown(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "**%s → %s**: %s\n", Escape(d.Old), Escape(d.New), d.summary())
	for _, s := range d.sections() {
		fmt.Fprintf(&b, "\n### %s\n\n", Escape(s.title))
		if s.step != nil {
			mark := ""
			if !s.step.Enough {
				mark = "**"
			}
			fmt.Fprintf(&b, "%s%s%s\n\n", mark, Escape(s.step.words()), mark)
		}
		for _, it := range s.items {
			fmt.Fprintf(&b, "- %s **%s**", inWords[it.mark], Escape(strings.Join(it.names, ", ")))
			if len(it.words) > 0 {
				fmt.Fprintf(&b, ": %s", Escape(strings.Join(it.words, "; ")))
			}
			for _, c := range it.calls {
				fmt.Fprintf(&b, " — **%s**, please explain", c)
			}
			b.WriteString("\n")
		}
	}
	if len(d.Form) > 0 {
		fmt.Fprintf(&b, "\nFormatting only: %s\n", Escape(strings.Join(d.Form, ", ")))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// inWords are the marks, which would begin lists of their own.
var inWords = map[string]string{"+": "added", "-": "gone", ">": "renamed", "~": "changed"}

// Escape makes words of whatever Markdown would read as a mark: all its punctuation
// (CommonMark 0.31, 2.4), and the @ and # that forges turn into names and numbers.
func Escape(text string) string {
	var b strings.Builder
	for _, c := range text {
		switch {
		case c == '<':
			b.WriteString("&lt;")
		case c == '>':
			b.WriteString("&gt;")
		case c == '&':
			b.WriteString("&amp;")
		case c == '@' || c == '#':
			fmt.Fprintf(&b, "&#%d;", c)
		case c == '\n' || c == '\r':
			b.WriteByte(' ')
		case strings.ContainsRune("\\`*_{}[]()!|~+-:/", c) && !plain(c):
			b.WriteRune('\\')
			b.WriteRune(c)
		default:
			b.WriteRune(c)
		}
	}
	return b.String()
}

// plain marks begin nothing inside a line; a colon and slashes do: they make links.
func plain(c rune) bool { return strings.ContainsRune("()-", c) }
