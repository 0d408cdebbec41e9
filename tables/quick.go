package tables

import (
	"strings"
	"sync"

	"go.yaml.in/yaml/v4"
)

// Reading YAML is most of the work of loading a large chart, and nearly all lines of it are
// written in a few ways. quickParse reads those, into the very nodes that the YAML library
// makes of them, in a fraction of the time. At the first thing that is not so plain it gives
// up, and the whole file goes to the library: what is wrong with a file, it alone says.
// quick_test.go holds both to the same nodes, by hand, by chance and by a fuzzer.
//
// What it knows is: printable ASCII; comments on lines of their own; block mappings and
// lists whose items are indented; mappings and lists in brackets on one line; values in
// double quotes without a backslash; and plain values that begin with a letter or a digit
// and hold none of the characters that mean something.
//
// The nodes are the reader's own: once done is called, others are made in their place.
func quickParse(src []byte) (root *node, done func(), ok bool) {
	return quickly(src, 0, func(q *quickReader) *node {
		if q.indent != 0 {
			panic(gaveUp{})
		}
		return q.mapping(0, 0)
	})
}

// quickly does so with lines behind others, of which so many are before them.
func quickly(src []byte, before int, read func(*quickReader) *node) (root *node, done func(), ok bool) {
	if !allPlain(src) {
		return nil, nil, false
	}
	q := &quickReader{text: string(src), number: before, room: rooms.Get().(*[][]node)}
	done = func() { rooms.Put(q.room) }
	defer func() {
		if stop := recover(); stop != nil {
			if _, gaveUp := stop.(gaveUp); !gaveUp {
				panic(stop)
			}
			done()
			root, done, ok = nil, nil, false
		}
	}()
	q.next()
	if q.ended {
		panic(gaveUp{})
	}
	root = read(q)
	if !q.ended {
		panic(gaveUp{})
	}
	return root, done, true
}

// rooms are where nodes of files read before stood: a large chart has millions, and those
// of one file are of no use after it.
var rooms = sync.Pool{New: func() any { return new([][]node) }}

// atOnce is how many nodes room is made for.
const atOnce = 512

// gaveUp ends quickParse from within.
type gaveUp struct{}

// quickReader goes through the lines that say something.
type quickReader struct {
	text   string
	line   string // from the first character that is no space to the last
	number int    // of the line, from 1
	indent int
	ended  bool
	deep   int // brackets that are open

	room  *[][]node // for nodes, of which so many are made
	made  int
	stack []*node // children of nodes that are not complete yet
}

// next goes to the next line that is neither blank nor a comment.
func (q *quickReader) next() {
	for q.text != "" {
		line := q.text
		if end := strings.IndexByte(line, '\n'); end >= 0 {
			line, q.text = line[:end], line[end+1:]
		} else {
			q.text = ""
		}
		q.number++
		q.indent = 0
		for q.indent < len(line) && line[q.indent] == ' ' {
			q.indent++
		}
		line = line[q.indent:]
		if line == "" || line[0] == '#' {
			continue
		}
		for line[len(line)-1] == ' ' {
			line = line[:len(line)-1]
		}
		q.line = line
		return
	}
	q.ended = true
}

// make gives a node at a place of the line, counted from its first character.
func (q *quickReader) make(kind yaml.Kind, at int) *node {
	if q.made == len(*q.room)*atOnce {
		*q.room = append(*q.room, make([]node, atOnce))
	}
	n := &(*q.room)[q.made/atOnce][q.made%atOnce]
	q.made++
	// What else a node has, nobody sets: it stays as it was made.
	n.Kind, n.Style, n.Value, n.Content = kind, 0, "", n.Content[:0]
	n.Line, n.Column = q.number, q.indent+at+1
	return n
}

// open begins a node in brackets.
func (q *quickReader) open(kind yaml.Kind, at int) *node {
	if q.deep++; q.deep > deepest {
		panic(gaveUp{})
	}
	n := q.make(kind, at)
	n.Style = yaml.FlowStyle
	return n
}

// deepest is more than the tables allow.
const deepest = 16

// close gives a node the children that were put on the stack since.
func (q *quickReader) close(n *node, since int) *node {
	n.Content = append(n.Content, q.stack[since:]...)
	q.stack = q.stack[:since]
	return n
}

func (q *quickReader) push(n *node) { q.stack = append(q.stack, n) }

// mapping reads the keys of a block mapping whose first stands at that place of the line.
// The lines of the others are indented as far.
func (q *quickReader) mapping(at, indent int) *node {
	n, since := q.make(yaml.MappingNode, at), len(q.stack)
	for first := true; first || !q.ended && q.indent == indent; first = false {
		if !first {
			at = 0
		}
		end := q.key(q.line, at)
		q.push(q.scalar(at, q.line[at:end]))
		if end+1 == len(q.line) {
			q.push(q.below(indent))
			continue
		}
		value := q.space(end + 1)
		v, end := q.value(value, false)
		if end != len(q.line) {
			panic(gaveUp{})
		}
		q.push(v)
		q.next()
	}
	if !q.ended && q.indent > indent {
		panic(gaveUp{})
	}
	return q.close(n, since)
}

// below reads the value of a key on the lines under it.
func (q *quickReader) below(indent int) *node {
	q.next()
	switch {
	case q.ended || q.indent <= indent:
		panic(gaveUp{})
	case strings.HasPrefix(q.line, "- "):
		return q.list(q.indent)
	}
	return q.mapping(0, q.indent)
}

// list reads a block list.
func (q *quickReader) list(indent int) *node {
	n, since := q.make(yaml.SequenceNode, 0), len(q.stack)
	for !q.ended && q.indent == indent {
		if len(q.line) < 3 || q.line[:2] != "- " || q.line[2] == ' ' {
			panic(gaveUp{})
		}
		if keyEnd(q.line, 2) > 0 {
			q.push(q.mapping(2, indent+2))
			continue
		}
		item, end := q.value(2, false)
		if end != len(q.line) {
			panic(gaveUp{})
		}
		q.push(item)
		q.next()
	}
	if !q.ended && q.indent > indent {
		panic(gaveUp{})
	}
	return q.close(n, since)
}

// longestKey is less than YAML allows of a key on one line.
const longestKey = 100

// keyEnd finds the colon behind a key; 0 when there is no plain one.
func keyEnd(line string, at int) int {
	end := at
	for end < len(line) && plainIn(line[end]) && line[end] != ' ' {
		end++
	}
	if end == at || end-at > longestKey || !starts(line[at]) || end == len(line) || line[end] != ':' {
		return 0
	}
	if end+1 < len(line) && line[end+1] != ' ' {
		return 0
	}
	return end
}

func (q *quickReader) key(line string, at int) int {
	end := keyEnd(line, at)
	if end == 0 || isNull(line[at:end]) {
		panic(gaveUp{})
	}
	return end
}

// space skips spaces, of which there must be one, and finds what stands behind them.
func (q *quickReader) space(at int) int {
	if at >= len(q.line) || q.line[at] != ' ' {
		panic(gaveUp{})
	}
	return q.spaces(at)
}

func (q *quickReader) spaces(at int) int {
	for at < len(q.line) && q.line[at] == ' ' {
		at++
	}
	if at == len(q.line) {
		panic(gaveUp{})
	}
	return at
}

// value reads what stands on the line from that place, and tells where it ends.
func (q *quickReader) value(at int, inside bool) (n *node, end int) {
	switch q.line[at] {
	case '{':
		return q.braces(at)
	case '[':
		return q.brackets(at)
	case '"':
		length := strings.IndexByte(q.line[at+1:], '"')
		if length < 0 || strings.IndexByte(q.line[at+1:at+1+length], '\\') >= 0 {
			panic(gaveUp{})
		}
		n = q.scalar(at, q.line[at+1:at+1+length])
		n.Style = yaml.DoubleQuotedStyle
		return n, at + length + 2
	}
	end = at
	for end < len(q.line) && (plainIn(q.line[end]) || !inside && q.line[end] == ',') {
		end++
	}
	text := strings.TrimRight(q.line[at:end], " ")
	if text == "" || !starts(text[0]) || isNull(text) {
		panic(gaveUp{})
	}
	return q.scalar(at, text), end
}

// braces reads {key: value, key: value}.
func (q *quickReader) braces(at int) (*node, int) {
	n, since := q.open(yaml.MappingNode, at), len(q.stack)
	for {
		at = q.spaces(at + 1)
		end := q.key(q.line, at)
		q.push(q.scalar(at, q.line[at:end]))
		v, end := q.value(q.space(end+1), true)
		q.push(v)
		switch at = q.spaces(end); q.line[at] {
		case ',':
		case '}':
			q.deep--
			return q.close(n, since), at + 1
		default:
			panic(gaveUp{})
		}
	}
}

// brackets reads [value, value], or a list of nothing.
func (q *quickReader) brackets(at int) (*node, int) {
	n, since := q.open(yaml.SequenceNode, at), len(q.stack)
	if q.line[q.spaces(at+1)] == ']' {
		q.deep--
		return n, q.spaces(at+1) + 1
	}
	for {
		v, end := q.value(q.spaces(at+1), true)
		q.push(v)
		switch at = q.spaces(end); q.line[at] {
		case ',':
		case ']':
			q.deep--
			return q.close(n, since), at + 1
		default:
			panic(gaveUp{})
		}
	}
}

// scalar is a plain value. Its tag is left empty: of tags the loader asks only for that of
// a value left out, which is none of these.
func (q *quickReader) scalar(at int, text string) *node {
	n := q.make(yaml.ScalarNode, at)
	n.Value = text
	return n
}

// starts are the characters that a plain value or a key may begin with.
func starts(c byte) bool {
	return 'a' <= c && c <= 'z' || '0' <= c && c <= '9' || 'A' <= c && c <= 'Z'
}

// plainIn are those that mean nothing within one, anywhere.
func plainIn(c byte) bool {
	return starts(c) || strings.IndexByte(" .-/()+;=_$", c) >= 0
}

func isNull(text string) bool { return text == "null" || text == "Null" || text == "NULL" }
