package tables

import (
	"bytes"
	"fmt"
	"slices"
	"strings"

	"capspan/build/diag"
)

// Contributing is what somebody who corrects a table wants to look up, each part as
// Markdown: the README and the site's page for contributors are written from the same.
type Contributing struct {
	Row     string // a row of the chart as it stands in its file, each line explained
	Sources string // what counts as a source, by kind
	Rules   string // every rule of the tables
}

// Contribute explains the format by the columns that the tables declare and the rules they
// are held to. The set was loaded without a problem.
func Contribute(set *Set) Contributing {
	return Contributing{Row: explainedRow(set), Sources: kindList(), Rules: ruleList()}
}

// counts says what is a source of each kind, and what to name as the place in it.
var counts = map[string]string{
	"standard":    "a standard or a law, with its number and year; the place is a clause or table. An extract is one when `trust` says so.",
	"manual":      "what a maker prints for whoever fits or services the part, with its number; the place is a page or table.",
	"catalogue":   "a maker's list of parts, with its issue; the place is a page or part number.",
	"article":     "what a magazine, a book or a shop explains under its name; the place is a page or heading.",
	"listing":     "what a seller prints beside a part. Such figures are often copied, and `trust` says that it is no drawing.",
	"measurement": "readings of a real part by somebody who can be asked: which instrument, how many readings, when.",
}

func kindList() string {
	var b strings.Builder
	for _, kind := range sourceKinds {
		b.WriteString(item(fmt.Sprintf("`%s`: %s", kind, counts[kind])))
	}
	return b.String()
}

func ruleList() string {
	var b strings.Builder
	for _, r := range rules {
		end := "."
		if r.Level == diag.Warning {
			end = " (a warning)."
		}
		b.WriteString(item(fmt.Sprintf("`%s`: %s%s", r.ID, r.What, end)))
	}
	return b.String()
}

// widest is how long a line of the Markdown may be.
const widest = 118

// item is an entry of a list, its further lines put in.
func item(text string) string { return wrapped("-", " ", text, widest) }

// comment is one of YAML; narrower, because it is read in a box that scrolls.
func comment(indent, text string) string { return wrapped(indent+"#", indent+"#", text, 66) }

func wrapped(first, further, text string, most int) string {
	var b strings.Builder
	line := first
	for _, word := range strings.Fields(text) {
		if len([]rune(line))+1+len([]rune(word)) > most {
			b.WriteString(line + "\n")
			line = further
		}
		line += " " + word
	}
	return b.String() + line + "\n"
}

// explainedRow is the plain joint that uses most of what a row can say, the first of
// several; a chart without joints has none to show.
func explainedRow(set *Set) string {
	var best richRow
	var of *Table
	for _, t := range set.Tables {
		if one := set.memory.richest(t); t.Joint() && one.wealth > best.wealth {
			best, of = one, t
		}
	}
	if of == nil {
		return ""
	}
	return explained(strings.Split(strings.ReplaceAll(string(best.text), "\r\n", "\n"), "\n"), of)
}

// richRow is the plain joint of a table that uses most of what a row can say.
type richRow struct {
	source []byte // the file it stands in
	text   []byte // of the row, there
	wealth int
}

// richest is that of a table, the first of several.
func (m *setMemory) richest(t *Table) richRow {
	if m == nil {
		return t.richest()
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	before := m.rich[t.ID]
	if len(before.source) == 0 || len(before.source) != len(t.source) || &before.source[0] != &t.source[0] {
		before = t.richest()
		if m.rich == nil {
			m.rich = map[string]richRow{}
		}
		m.rich[t.ID] = before
	}
	return before
}

func (t *Table) richest() richRow {
	best := richRow{source: t.source}
	var keys wealth
	rest, line := t.source, 1
	for _, row := range t.Rows {
		for ; line < row.Pos.Line; line++ {
			rest = rest[bytes.IndexByte(rest, '\n')+1:]
		}
		text := rowText(rest)
		if len(row.Ends) != 1 || bytes.Count(text, []byte(": ")) <= best.wealth {
			continue // no key is without one
		}
		if found := keys.in(text); found > best.wealth {
			best.text, best.wealth = text, found
		}
	}
	return best
}

// wealth counts the different keys that a row uses, those inside braces among them.
type wealth struct{ keys [][]byte }

func (w *wealth) in(row []byte) int {
	w.keys = w.keys[:0]
	for line := range bytes.Lines(row) {
		for {
			before, rest, found := bytes.Cut(line, []byte(": "))
			if !found {
				break
			}
			line = rest
			at := len(before) - 1
			for at >= 0 && (before[at] >= 'a' && before[at] <= 'z' || before[at] == '-') {
				at--
			}
			if at < 0 || at+1 == len(before) || bytes.IndexByte([]byte("{ ,"), before[at]) < 0 {
				continue
			}
			key := before[at+1:]
			if !slices.ContainsFunc(w.keys, func(k []byte) bool { return bytes.Equal(k, key) }) {
				w.keys = append(w.keys, key)
			}
		}
	}
	return len(w.keys)
}

// rowText is the text of the row that begins with the first line, without the last line's end.
func rowText(text []byte) []byte {
	end := bytes.IndexByte(text, '\n')
	for end >= 0 && bytes.HasPrefix(text[end+1:], []byte("    ")) {
		next := bytes.IndexByte(text[end+1:], '\n')
		if next < 0 {
			return text
		}
		end += 1 + next
	}
	if end < 0 {
		return text
	}
	return bytes.TrimSuffix(text[:end], []byte("\r"))
}

const inBraces = "in braces: is, the digits as they are printed; unit, when it is not the table's; basis (published, measured, " +
	"common-practice or memory); source, ids of sources.yaml; at, the place in it; others, what else is printed or said"

// explained puts a comment over each line of a row: the column's own declaration, or what
// every row may have. What this row has not is named at the end.
func explained(row []string, t *Table) string {
	var b strings.Builder
	b.WriteString(comment("", "from "+t.ID+".yaml: "+t.Title))
	b.WriteString(comment("", inBraces))
	says := map[string]string{
		"id":    "the row's name, for ever: letters and digits joined by single hyphens or points",
		"also":  "other names the trade uses",
		"twins": "rows of the same size, which name this one back",
		"note":  "what else a reader should know, one line",
	}
	order := []string{"id", "also"}
	for _, c := range t.Columns {
		says[c.ID] = declaredAs(c)
		order = append(order, c.ID)
	}
	order = append(order, "twins", "note")
	has := map[string]bool{}
	for _, line := range row {
		key, _, _ := strings.Cut(strings.TrimLeft(line, " -"), ":")
		has[key] = true
		b.WriteString(comment("    ", says[key]) + line + "\n")
	}
	for _, key := range order {
		if !has[key] {
			b.WriteString(comment("    ", fmt.Sprintf("may have %s too: %s", key, says[key])))
		}
	}
	return b.String()
}

// declaredAs is what a column takes, in words.
func declaredAs(c Column) string {
	takes := "one line of text"
	switch {
	case c.Kind == Holds:
		takes = oneOf(holds)
	case c.Kind.numeric():
		takes = "a number as printed"
		if !c.Least.IsZero() && !c.Greatest.IsZero() {
			takes += fmt.Sprintf(" from %s to %s", c.Least.Text, c.Greatest)
		}
		takes += ", or unknown or none"
	}
	out := c.Label + ": " + takes
	if c.ID == acrossColumn {
		out += "; faces: " + oneOf(faces)
	}
	return out
}

func oneOf[T ~string](words []T) string {
	var list []string
	for _, w := range slices.DeleteFunc(slices.Clone(words), func(w T) bool { return w == "unknown" }) {
		list = append(list, string(w))
	}
	return strings.Join(append(list, "or unknown"), ", ")
}
