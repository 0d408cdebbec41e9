package tables

import (
	"slices"
	"strings"
)

// The text of a value on its line, kept as written: numbers, quotes and spaces inside
// a scalar are never touched, only the spaces and the order around them.

// flow is a piece of a line: a scalar as written, a list, or a mapping.
type flow struct {
	raw   string // of a scalar
	open  byte   // '[' or '{', 0 for a scalar
	items []flow // of a list
	pairs []pair // of a mapping
}

type pair struct {
	key   string
	value *flow // nil for a key alone
}

// parseFlow reads what stands behind a key: the value and the comment after it. ok
// is false for anything unusual, which is then left as it is.
func parseFlow(line string) (value flow, comment string, ok bool) {
	p := &flowParser{rest: strings.TrimSpace(line)}
	value = p.value(false)
	p.space()
	if p.failed || (p.rest != "" && p.rest[0] != '#') {
		return flow{}, "", false
	}
	return value, p.rest, true
}

type flowParser struct {
	rest   string
	depth  int
	failed bool
}

func (p *flowParser) space() { p.rest = strings.TrimLeft(p.rest, " ") }

func (p *flowParser) next(c byte) bool {
	p.space()
	if p.rest == "" || p.rest[0] != c {
		return false
	}
	p.rest = p.rest[1:]
	return true
}

func (p *flowParser) value(inside bool) flow {
	p.depth++
	defer func() { p.depth-- }()
	switch {
	case p.failed || p.depth > shipped.depth:
		p.failed = true
	case p.next('['):
		return p.list()
	case p.next('{'):
		return p.mapping()
	}
	return flow{raw: p.scalar(inside)}
}

func (p *flowParser) list() flow {
	f := flow{open: '['}
	for !p.failed {
		if p.next(']') {
			return f
		}
		f.items = append(f.items, p.value(true))
		if !p.next(',') {
			p.failed = p.failed || !p.next(']')
			return f
		}
	}
	return f
}

func (p *flowParser) mapping() flow {
	f := flow{open: '{'}
	for !p.failed {
		if p.next('}') {
			return f
		}
		entry := pair{key: p.scalar(true)}
		if p.next(':') {
			value := p.value(true)
			entry.value = &value
		}
		f.pairs = append(f.pairs, entry)
		if !p.next(',') {
			p.failed = p.failed || !p.next('}')
			return f
		}
	}
	return f
}

// scalar takes a quoted or plain scalar as written.
func (p *flowParser) scalar(inside bool) string {
	p.space()
	end := plainEnd(p.rest, inside)
	if p.rest != "" && (p.rest[0] == '"' || p.rest[0] == '\'') {
		end = quotedEnd(p.rest)
	}
	if end <= 0 {
		p.failed = true
		return ""
	}
	raw := strings.TrimRight(p.rest[:end], " ")
	p.rest = p.rest[end:]
	return raw
}

// quotedEnd is where a quoted scalar ends, 0 when it does not.
func quotedEnd(s string) int {
	for i := 1; i < len(s); i++ {
		switch {
		case s[0] == '"' && s[i] == '\\':
			i++
		case s[i] == s[0] && s[0] == '\'' && i+1 < len(s) && s[i+1] == '\'':
			i++
		case s[i] == s[0]:
			return i + 1
		}
	}
	return 0
}

// plainEnd is where a plain scalar ends: before a comment, and inside brackets before
// a separator or the colon of a key.
func plainEnd(s string, inside bool) int {
	for i := range len(s) {
		switch {
		case s[i] == '#' && (i == 0 || s[i-1] == ' '):
			return i
		case !inside:
		case strings.IndexByte(",[]{}", s[i]) >= 0:
			return i
		case s[i] == ':' && (i+1 == len(s) || strings.IndexByte(" ,[]{}", s[i+1]) >= 0):
			return i
		}
	}
	return len(s)
}

// write gives the canonical text, with the keys of mappings in the given order and
// unknown ones after them.
func (f flow) write(b *strings.Builder, order []string) {
	switch f.open {
	case '[':
		b.WriteByte('[')
		for i, item := range f.items {
			if i > 0 {
				b.WriteString(", ")
			}
			item.write(b, order)
		}
		b.WriteByte(']')
	case '{':
		b.WriteByte('{')
		sorted := slices.Clone(f.pairs)
		slices.SortStableFunc(sorted, func(x, y pair) int { return place(order, x.key) - place(order, y.key) })
		for i, p := range sorted {
			if i > 0 {
				b.WriteString(", ")
			}
			b.WriteString(p.key)
			if p.value != nil {
				b.WriteString(": ")
				p.value.write(b, order)
			}
		}
		b.WriteByte('}')
	default:
		b.WriteString(f.raw)
	}
}

// place is a key's rank; what is not in the order comes last.
func place(order []string, key string) int {
	if i := slices.Index(order, key); i >= 0 {
		return i
	}
	return len(order)
}
