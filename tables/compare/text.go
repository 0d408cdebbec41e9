package compare

import (
	"fmt"
	"io"
	"strings"
)

// WriteText writes the difference for a terminal: a line of counts, then table by table.
func (d *Diff) WriteText(w io.Writer) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s → %s: %s\n", d.Old, d.New, d.summary())
	for _, s := range d.sections() {
		fmt.Fprintf(&b, "\n%s", s.title)
		if s.step != nil {
			fmt.Fprintf(&b, ": %s", s.step.words())
		}
		b.WriteString("\n")
		for _, it := range s.items {
			fmt.Fprintf(&b, "  %s %s", it.mark, strings.Join(it.names, ", "))
			if len(it.words) > 0 {
				fmt.Fprintf(&b, ": %s", strings.Join(it.words, "; "))
			}
			b.WriteString("\n")
			for _, c := range it.calls {
				fmt.Fprintf(&b, "      ! %s: please explain\n", c)
			}
		}
	}
	if len(d.Form) > 0 {
		fmt.Fprintf(&b, "\nformatting only: %s\n", strings.Join(d.Form, ", "))
	}
	_, err := io.WriteString(w, b.String())
	return err
}
