// Package diag holds the one shape of message that a contributor can act on.
//
// A [Problem] says where (file, line, column), what (the path through the data and
// one fact), which rule, and how to mend it. Packages that read tables, pages or
// scripts return a [List] beside their result; only the command and the build
// print it. Every problem is collected, none stops the search for the next one.
package diag

import (
	"cmp"
	"fmt"
	"io"
	"slices"
	"strings"
)

// Pos is a place in a file: a slash-separated path from the project's root, and
// 1-based line and column counted in characters. The zero Line means "the file".
type Pos struct {
	File string `json:"file"`
	Line int    `json:"line,omitempty"`
	Col  int    `json:"col,omitempty"`
}

// String gives file:line:col, leaving out what is not known.
func (p Pos) String() string {
	switch {
	case p.Line == 0:
		return p.File
	case p.Col == 0:
		return fmt.Sprintf("%s:%d", p.File, p.Line)
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Col)
}

// Compare orders places by file, line and column.
func (p Pos) Compare(q Pos) int {
	return cmp.Or(strings.Compare(p.File, q.File), cmp.Compare(p.Line, q.Line), cmp.Compare(p.Col, q.Col))
}

// Level tells what a problem blocks.
type Level int

const (
	Error   Level = iota // the site is not built
	Warning              // shown, blocks nothing
)

// MarshalText writes the level as a word, for the problems as JSON.
func (l Level) MarshalText() ([]byte, error) {
	if l == Warning {
		return []byte("warning"), nil
	}
	return []byte("error"), nil
}

// Note is a second place that explains a problem, such as "first defined at".
type Note struct {
	Text string `json:"text"`
	Pos  Pos    `json:"pos"`
}

// Problem is one thing to mend.
type Problem struct {
	Pos   Pos      `json:"pos"`
	Path  string   `json:"path,omitempty"` // table/row.column, or a page's address
	Fact  string   `json:"fact"`           // lower case, no full stop, offender quoted
	Rule  string   `json:"rule"`           // what is wrong, such as "unknown-source"
	Hints []string `json:"hints,omitempty"`
	Notes []Note   `json:"notes,omitempty"`
	Level Level    `json:"level"`
}

// String gives the problem as the command prints it, hints and notes on lines of
// their own.
func (p Problem) String() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: ", p.Pos)
	if p.Level == Warning {
		b.WriteString("warning: ")
	}
	if p.Path != "" {
		fmt.Fprintf(&b, "%s: ", p.Path)
	}
	fmt.Fprintf(&b, "%s [%s]", p.Fact, p.Rule)
	for _, h := range p.Hints {
		fmt.Fprintf(&b, "\n    hint: %s", h)
	}
	for _, n := range p.Notes {
		fmt.Fprintf(&b, "\n    note: %s %s", n.Text, n.Pos)
	}
	return b.String()
}

// List is a set of problems in the order they were found until [List.Sort].
type List []Problem

// Add appends problems.
func (l *List) Add(p ...Problem) { *l = append(*l, p...) }

// Sort orders by place, then path, rule and fact, so that two runs print alike.
func (l List) Sort() {
	slices.SortStableFunc(l, func(a, b Problem) int {
		return cmp.Or(a.Pos.Compare(b.Pos), strings.Compare(a.Path, b.Path),
			strings.Compare(a.Rule, b.Rule), strings.Compare(a.Fact, b.Fact))
	})
}

// Count returns how many problems have the level.
func (l List) Count(level Level) int {
	n := 0
	for _, p := range l {
		if p.Level == level {
			n++
		}
	}
	return n
}

// Blocked reports whether any problem stops a build.
func (l List) Blocked() bool { return l.Count(Error) > 0 }

// Summary is the closing line: "2 errors, 1 warning", or "no problems".
func (l List) Summary() string {
	part := func(n int, word string) string {
		if n == 1 {
			return "1 " + word
		}
		return fmt.Sprintf("%d %ss", n, word)
	}
	errors, warnings := l.Count(Error), l.Count(Warning)
	switch {
	case errors > 0 && warnings > 0:
		return part(errors, "error") + ", " + part(warnings, "warning")
	case errors > 0:
		return part(errors, "error")
	case warnings > 0:
		return part(warnings, "warning")
	}
	return "no problems"
}

// Print writes each problem on its own line or lines.
func (l List) Print(w io.Writer) error {
	for _, p := range l {
		if _, err := fmt.Fprintln(w, p); err != nil {
			return err
		}
	}
	return nil
}
