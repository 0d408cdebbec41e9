package tables

import (
	"slices"
	"strings"

	"capspan/build/diag"
	"go.yaml.in/yaml/v4"
)

// Format puts a file of this folder into the written order: keys as the comment at
// the head of each file lists them, two spaces of indentation, one space around what
// stands in braces, and within a row the values in braces under one another, in the
// order of the columns. Columns and rows keep their order, comments and single blank lines their place, and no
// value changes: the meaning of the result is compared with that of the source. A
// file that cannot be read is returned as it is, with its problems.
func Format(file string, src []byte) ([]byte, diag.List) {
	var list diag.List
	r := &reader{file: file, lim: shipped, list: &list}
	root := r.parseWhole(src)
	if len(list) > 0 {
		for i := range list {
			list[i].Level = levels[list[i].Rule]
		}
		list.Sort()
		return src, list
	}
	f := &formatter{lines: strings.Split(strings.ReplaceAll(string(src), "\r\n", "\n"), "\n"), columns: declared(root)}
	f.file(root)
	out := []byte(strings.Join(f.out, "\n") + "\n")
	again := (&reader{file: file, lim: shipped, list: &diag.List{}}).parseWhole(out)
	if again == nil || meaning(again) != meaning(root) {
		list.Add(diag.Problem{Pos: diag.Pos{File: file, Line: root.Line, Col: root.Column}, Rule: "bad-yaml",
			Fact: "the file is written in a way that cannot be put in order", Hints: []string{"write it as the other tables are"}})
		return src, list
	}
	return out, nil
}

// meaning is the file without comments, spacing and order of keys.
func meaning(n *node) string {
	var parts []string
	switch n.Kind {
	case yaml.MappingNode:
		for i := 0; i+1 < len(n.Content); i += 2 {
			parts = append(parts, meaning(n.Content[i])+"="+meaning(n.Content[i+1]))
		}
		slices.Sort(parts)
		return "{" + strings.Join(parts, "\x00") + "}"
	case yaml.SequenceNode:
		for _, c := range n.Content {
			parts = append(parts, meaning(c))
		}
		return "[" + strings.Join(parts, "\x00") + "]"
	}
	return n.Tag + "\x01" + n.Anchor + "\x01" + n.Value
}

// formatter copies a file line by line. Every value stands on one line (parse
// refused the rest), so a key's place tells where its text is.
type formatter struct {
	lines []string
	out   []string
	last  int // the last source line that was written, from 1

	columns []string // as the head declares them
}

// entry is one key of a block mapping, with the comments and blank lines above it.
type entry struct {
	key, value *node
	lead       []string
}

func (f *formatter) file(root *node) {
	if root.Kind != yaml.MappingNode || root.Style&yaml.FlowStyle != 0 || len(root.Content) == 0 {
		f.out = slices.Clone(f.lines)
		f.trimEnd()
		return
	}
	lead := f.lines[:root.Content[0].Line-1]
	for i := len(lead) - 1; i >= 0; i-- { // the file's own comment stays on top
		if strings.TrimSpace(lead[i]) == "" {
			f.lead(lead[:i+1], 0)
			f.last = i + 1
			break
		}
	}
	f.mapping(root, 0, headKeys, false)
	f.lead(f.lines[f.last:], 0)
	f.trimEnd()
}

func (f *formatter) trimEnd() {
	for len(f.out) > 0 && strings.TrimSpace(f.out[len(f.out)-1]) == "" {
		f.out = f.out[:len(f.out)-1]
	}
}

// lead writes comments at an indentation, and one blank line for any number of them.
func (f *formatter) lead(lines []string, indent int) {
	for _, line := range lines {
		switch text := strings.TrimSpace(line); {
		case text != "":
			f.out = append(f.out, strings.Repeat(" ", indent)+text)
		case len(f.out) > 0 && f.out[len(f.out)-1] != "":
			f.out = append(f.out, "")
		}
	}
}

// mapping writes a block mapping; as the item of a list its first line has the dash.
func (f *formatter) mapping(n *node, indent int, order []string, item bool) {
	var entries []entry
	last := f.last
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		entries = append(entries, entry{key, value, f.lines[min(last, key.Line-1) : key.Line-1]})
		last = max(key.Line, lastLine(value))
	}
	slices.SortStableFunc(entries, func(a, b entry) int { return place(order, a.key.Value) - place(order, b.key.Value) })
	width := 0
	for _, e := range entries {
		if braces(e.value) {
			width = max(width, len([]rune(e.key.Value)))
		}
	}
	for i, e := range entries {
		prefix := strings.Repeat(" ", indent)
		if item && i == 0 {
			f.lead(e.lead, indent-2)
			prefix = strings.Repeat(" ", indent-2) + "- "
		} else {
			f.lead(e.lead, indent)
		}
		f.entry(prefix, e, indent, width)
	}
	f.last = last
}

func braces(n *node) bool {
	return n.Kind == yaml.MappingNode && n.Style&yaml.FlowStyle != 0
}

func (f *formatter) entry(prefix string, e entry, indent, width int) {
	line := []rune(f.lines[e.key.Line-1])
	rest := string(line[e.key.Column-1:])
	key, text := cutKey(rest)
	block := len(e.value.Content) > 0 && e.value.Style&yaml.FlowStyle == 0
	gap := " "
	if braces(e.value) {
		gap += strings.Repeat(" ", max(0, width-len([]rune(e.key.Value))))
	}
	f.out = append(f.out, strings.TrimRight(prefix+key+":"+gap+tidy(text, flowOrder(e.key.Value)), " "))
	if !block {
		return
	}
	f.last = e.key.Line
	switch {
	case e.value.Kind == yaml.MappingNode:
		f.mapping(e.value, indent+2, nil, false)
	default:
		f.list(e.value, indent+2, e.key.Value)
	}
}

// flowOrder is the order of the keys in braces under a key.
func flowOrder(key string) []string {
	switch key {
	case "retired":
		return retiredKeys
	case "changes":
		return recordedKeys
	}
	return braceKeys
}

// braceKeys orders what stands in braces: a column's declaration, a value and a
// measurement, which share only unit and faces.
var braceKeys = []string{"label", "kind", "is", "unit", "range", "least", "greatest", "method", "match", "below",
	"readings", "tool", "condition", "faces", "faces-basis", "basis", "source", "at", "others", "measured", "on", "by"}

// list writes a block list.
func (f *formatter) list(n *node, indent int, name string) {
	order := sourceKeys
	switch name {
	case "history":
		order = releaseKeys
	case "rows":
		order = slices.Concat(rowFirst, f.columns, rowLast)
	}
	for _, item := range n.Content {
		if item.Kind == yaml.MappingNode && item.Style&yaml.FlowStyle == 0 && len(item.Content) > 0 {
			f.mapping(item, indent+2, order, true)
			continue
		}
		f.lead(f.lines[min(f.last, item.Line-1):item.Line-1], indent)
		line := []rune(f.lines[item.Line-1])
		f.out = append(f.out, strings.TrimRight(strings.Repeat(" ", indent)+"- "+tidy(string(line[item.Column-1:]), flowOrder(name)), " "))
		f.last = lastLine(item)
	}
}

// declared lists the columns of the head, in their order.
func declared(root *node) []string {
	var ids []string
	for i := 0; i+1 < len(root.Content); i += 2 {
		if columns := root.Content[i+1]; root.Content[i].Value == "columns" && columns.Kind == yaml.MappingNode {
			for j := 0; j < len(columns.Content); j += 2 {
				ids = append(ids, columns.Content[j].Value)
			}
		}
	}
	return ids
}

// cutKey splits a line behind its key's colon.
func cutKey(rest string) (key, text string) {
	p := &flowParser{rest: rest}
	if rest[0] == '"' || rest[0] == '\'' {
		key = p.scalar(true)
	} else if i := strings.Index(rest+" ", ": "); i >= 0 {
		key, p.rest = rest[:i], rest[i:]
	}
	p.next(':')
	return strings.TrimRight(key, " "), p.rest
}

// tidy gives a value its canonical spacing, or leaves it as it is.
func tidy(text string, order []string) string {
	value, comment, ok := parseFlow(text)
	if !ok {
		return strings.TrimSpace(text)
	}
	var b strings.Builder
	value.write(&b, order)
	if comment != "" {
		b.WriteString(" " + comment)
	}
	return b.String()
}
