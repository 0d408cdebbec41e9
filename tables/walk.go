package tables

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"capspan/build/diag"
	"go.yaml.in/yaml/v4"
)

// The strict walker: YAML is read into nodes and every node is asked for as what it
// must be. Nothing is decoded, because decoding resolves aliases, reads 012 as ten
// and 2024-01-02 as a day, and stops at the first error.

type node = yaml.Node

// reader reads one file.
type reader struct {
	file   string
	source []byte // of a file of the folder
	lim    limits
	list   *diag.List

	// The keys of rows and cells of one table, worked out once.
	ofRow  []string
	ofCell map[string]cellKeys // by column

	spare []map[string]field // for mappings to come
	rows  *quickRows         // of a table that is read row by row
	first diag.Pos           // of the first row, when rows are what stands last in the file
}

// forget takes back what fields gave, once nobody looks at it any more.
func (r *reader) forget(got map[string]field) {
	clear(got)
	r.spare = append(r.spare, got)
}

// room is a map for the keys of a mapping.
func (r *reader) room(keys int) map[string]field {
	if last := len(r.spare) - 1; last >= 0 {
		out := r.spare[last]
		r.spare = r.spare[:last]
		return out
	}
	return make(map[string]field, keys)
}

// cellKeys are those of a figure among others, and of a whole cell.
type cellKeys struct{ figure, whole []string }

func (r *reader) rowKeys(t *Table) []string {
	if r.ofRow == nil {
		r.ofRow = slices.Concat(rowFirst, columnIDs(t), rowLast)
	}
	return r.ofRow
}

func (r *reader) cellKeys(c Column, across bool) (figure, whole []string) {
	keys, known := r.ofCell[c.ID]
	if !known {
		keys.figure = keysFor(c, across)
		keys.whole = append(slices.Clone(keys.figure), "others")
		if c.Kind == Length {
			keys.whole = append(keys.whole, "measured")
		}
		if r.ofCell == nil {
			r.ofCell = map[string]cellKeys{}
		}
		r.ofCell[c.ID] = keys
	}
	return keys.figure, keys.whole
}

func numbered(format string, args ...any) string { return fmt.Sprintf(format, args...) }

func (r *reader) pos(n *node) diag.Pos {
	return diag.Pos{File: r.file, Line: n.Line, Col: n.Column}
}

func (r *reader) fail(n *node, path, rule, fact string, hints ...string) *diag.Problem {
	r.list.Add(diag.Problem{Pos: r.pos(n), Path: path, Rule: rule, Fact: fact, Hints: hints})
	return &(*r.list)[len(*r.list)-1]
}

// plain refuses what no node may be: an alias, an anchor, a tag.
func (r *reader) plain(n *node, path string) bool {
	switch {
	case n.Kind == yaml.AliasNode:
		r.fail(n, path, "alias", numbered("the alias %q", "*"+n.Value), "write the value here")
		return false
	case n.Anchor != "":
		r.fail(n, path, "alias", numbered("the anchor %q", "&"+n.Anchor), "write the value where it is used")
	case n.Style&yaml.TaggedStyle != 0:
		r.fail(n, path, "tag", numbered("the tag %q", n.Tag), "leave it out")
	}
	return true
}

func kindWord(n *node) string {
	switch n.Kind {
	case yaml.MappingNode:
		return "a mapping"
	case yaml.SequenceNode:
		return "a list"
	}
	return fmt.Sprintf("%q", n.Value)
}

// empty reports a value left out, and says so.
func (r *reader) empty(n *node, path string) bool {
	nothing := n.Kind == yaml.ScalarNode && (n.Tag == "!!null" || strings.TrimSpace(n.Value) == "")
	if !nothing {
		return false
	}
	if n.Value == "" {
		r.fail(n, path, "empty-value", "the value is empty", "write unknown or none, or leave the key out")
	} else {
		r.fail(n, path, "empty-value", numbered("%q is an empty value", n.Value), "write unknown or none, or leave the key out")
	}
	return true
}

// text reads a scalar; ok is false when a problem was reported.
func (r *reader) text(n *node, path string) (text string, ok bool) {
	if !r.plain(n, path) || r.empty(n, path) {
		return "", false
	}
	if n.Kind != yaml.ScalarNode {
		r.fail(n, path, "wrong-shape", kindWord(n)+" where a plain value is expected")
		return "", false
	}
	if length := utf8.RuneCountInString(n.Value); length > r.lim.text {
		r.fail(n, path, "text-length", numbered("the text has %d characters; at most %d are read", length, r.lim.text))
		return "", false
	}
	for _, c := range n.Value {
		if invisible(c) {
			r.fail(n, path, "control-character", numbered("the invisible character U+%04X", c), "write one line, without escapes")
			return "", false
		}
	}
	return n.Value, true
}

// items reads a list; an empty one is a problem unless it may be.
func (r *reader) items(n *node, path string, mayBeEmpty bool) []*node {
	if !r.plain(n, path) || r.empty(n, path) {
		return nil
	}
	if n.Kind != yaml.SequenceNode {
		hint := "put it in brackets: [" + n.Value + "]"
		if n.Kind == yaml.MappingNode {
			hint = "put a list there: [...]"
		}
		r.fail(n, path, "wrong-shape", kindWord(n)+" where a list is expected", hint)
		return nil
	}
	if len(n.Content) == 0 && !mayBeEmpty {
		r.fail(n, path, "empty-value", "the list is empty", "leave the key out")
	}
	return n.Content
}

// texts reads a list of plain values.
func (r *reader) texts(n *node, path string) []string {
	var out []string
	for _, item := range r.items(n, path, false) {
		if text, ok := r.text(item, path); ok {
			out = append(out, text)
		}
	}
	return out
}

// field is a key of a mapping and its value.
type field struct{ key, value *node }

// fields reads a mapping's keys: no key twice, none that is not in known. The
// optional say function gives a hint for an unknown key.
func (r *reader) fields(n *node, path string, known []string, say func(key string) string) (map[string]field, bool) {
	if !r.plain(n, path) || r.empty(n, path) {
		return nil, false
	}
	if n.Kind != yaml.MappingNode {
		r.fail(n, path, "wrong-shape", kindWord(n)+" where a mapping is expected")
		return nil, false
	}
	out := r.room(len(n.Content) / 2)
	for i := 0; i+1 < len(n.Content); i += 2 {
		key, value := n.Content[i], n.Content[i+1]
		switch first, twice := out[key.Value]; {
		case key.Tag == "!!merge" || key.Value == "<<":
			r.fail(key, path, "alias", "the merge key \"<<\"", "write the keys here")
		case !r.plain(key, path):
		case key.Kind != yaml.ScalarNode:
			r.fail(key, path, "wrong-shape", kindWord(key)+" where a key is expected")
		case twice:
			p := r.fail(key, path, "duplicate-key", numbered("the key %q is written twice", key.Value))
			p.Notes = []diag.Note{{Text: "first written at", Pos: r.pos(first.key)}}
		case !slices.Contains(known, key.Value):
			r.fail(key, path, "unknown-key", numbered("unknown key %q", key.Value), keyHints(key.Value, known, say)...)
		default:
			out[key.Value] = field{key, value}
		}
	}
	return out, true
}

func keyHints(key string, known []string, say func(string) string) []string {
	if say != nil {
		if hint := say(key); hint != "" {
			return []string{hint}
		}
	}
	if hints := diag.Nearest(key, known); hints != nil {
		return hints
	}
	return []string{"known here: " + strings.Join(known, ", ")}
}

// need reports keys that must be there and are not.
func (r *reader) need(n *node, path string, got map[string]field, keys ...string) bool {
	complete := true
	for _, key := range keys {
		if _, there := got[key]; !there {
			r.fail(n, path, "missing-key", numbered("the key %q is missing", key))
			complete = false
		}
	}
	return complete
}

// optional reads a plain value that may be left out.
func (r *reader) optional(got map[string]field, key, path string) string {
	if f, there := got[key]; there {
		text, _ := r.text(f.value, path)
		return text
	}
	return ""
}

// inline reports a value in braces that is not on one line. Comparing lines, each
// value then has its own history.
func (r *reader) inline(n *node, path string) bool {
	if n.Kind == yaml.MappingNode && (n.Style&yaml.FlowStyle == 0 || lastLine(n) != n.Line) {
		r.fail(n, path, "one-line", "the value is spread over several lines", "write it on one line in braces: {is: ..., basis: ...}")
		return false
	}
	return true
}

func lastLine(n *node) int {
	last := n.Line
	for _, c := range n.Content {
		last = max(last, lastLine(c))
	}
	return last
}

const longestID = 40

var idShape = regexp.MustCompile(`^[A-Za-z0-9]+([.-][A-Za-z0-9]+)*$`)

// id reads an id: it becomes part of an address, so only what needs no escaping.
func (r *reader) id(n *node, path string) (string, bool) {
	id, ok := r.text(n, path)
	switch {
	case !ok:
		return "", false
	case len(id) > longestID:
		r.fail(n, path, "text-length", numbered("the id has %d characters; at most %d are read", len(id), longestID))
		return "", false
	case !idShape.MatchString(id):
		r.fail(n, path, "bad-id", numbered("%q is not letters and digits joined by single hyphens or points", id), lookAlike(id)...)
		return "", false
	}
	return id, true
}

// lookAlike names the first letter that is none of the plain ones: in a Cyrillic a or a
// full-width 1 nobody sees what is wrong.
func lookAlike(id string) []string {
	for _, c := range id {
		if c > unicode.MaxASCII {
			return []string{numbered("the character %q is U+%04X, not a plain letter or digit, whatever it looks like", c, c)}
		}
	}
	return nil
}

// word reads one of a list of words.
func word[W ~string](r *reader, n *node, path, rule, what string, words []W) (W, bool) {
	text, ok := r.text(n, path)
	if !ok {
		return "", false
	}
	if slices.Contains(words, W(text)) {
		return W(text), true
	}
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = string(w)
	}
	hints := diag.Nearest(text, list)
	if hints == nil {
		hints = []string{"known: " + strings.Join(list, ", ")}
	}
	r.fail(n, path, rule, numbered("unknown %s %q", what, text), hints...)
	return "", false
}
