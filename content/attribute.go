package content

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"capspan/build/diag"
)

// attribute is one word of a directive's line: a bare word, or key=value. A value with
// spaces stands in double quotes.
type attribute struct {
	key, value string // the key of a bare word is empty
	offset     int    // of the word, in the file
	at         int    // of the value, in the file
}

// attributes splits the rest of a directive's line, which begins at the offset.
func (d *document) attributes(line string, offset int) []attribute {
	var list []attribute
	for i := 0; i < len(line); {
		if line[i] == ' ' || line[i] == '\t' {
			i++
			continue
		}
		a := attribute{offset: offset + i, at: offset + i}
		start := i
		for i < len(line) && line[i] != ' ' && line[i] != '\t' && line[i] != '"' && line[i] != '=' {
			i++
		}
		a.value = line[start:i]
		if i < len(line) && line[i] == '=' {
			a.key, a.at = a.value, offset+i+1
			a.value, i = value(line, i+1)
			if i < 0 {
				d.problem(a.at, "bad-parameter", fmt.Sprintf("the value of %q has no closing quote", a.key))
				return list
			}
		} else if i == start { // a stray quote
			d.problem(a.offset, "bad-parameter", "a quote where a word was expected", `write key="a value with spaces"`)
			return list
		}
		list = append(list, a)
	}
	return list
}

// value reads a value from i on and gives the place after it; -1 when its quote never closes.
func value(line string, i int) (string, int) {
	if i < len(line) && line[i] == '"' {
		end := strings.IndexByte(line[i+1:], '"')
		if end < 0 {
			return "", -1
		}
		return line[i+1 : i+1+end], i + end + 2
	}
	rest := line[i:]
	if end := strings.IndexFunc(rest, unicode.IsSpace); end >= 0 {
		rest = rest[:end]
	}
	return rest, i + len(rest)
}

// parameters are the attributes of one directive, checked against what it takes.
type parameters struct {
	d      *document
	name   string // of the directive, for messages
	offset int    // of the directive, for what is missing
	words  []attribute
	keyed  map[string]attribute
}

// parameters reads a line. Every key must be among the known; words are the bare ones.
func (d *document) parameters(name string, offset int, list []attribute, bare int, known ...string) *parameters {
	p := &parameters{d: d, name: name, offset: offset, keyed: map[string]attribute{}}
	for _, a := range list {
		_, again := p.keyed[a.key]
		switch {
		case a.key == "" && len(p.words) < bare:
			p.words = append(p.words, a)
		case a.key == "":
			d.problem(a.offset, "bad-parameter", fmt.Sprintf("%q is one word too many for %q", a.value, name), `a value with spaces stands in quotes`)
		case !slices.Contains(known, a.key):
			d.problem(a.offset, "unknown-parameter", fmt.Sprintf("%q takes no %q", name, a.key), hintOf(a.key, known)...)
		case again:
			d.problem(a.offset, "bad-parameter", fmt.Sprintf("%q is given twice", a.key))
		default:
			p.keyed[a.key] = a
		}
	}
	return p
}

// need gives a value that must be there.
func (p *parameters) need(key string) (attribute, bool) {
	a, there := p.keyed[key]
	if !there || strings.TrimSpace(a.value) == "" {
		p.d.problem(p.offset, "missing-parameter", fmt.Sprintf("%q needs %q", p.name, key), fmt.Sprintf("write %s=...", key))
		return a, false
	}
	return a, true
}

// oneOf gives a value that must be there and be one of the words.
func (p *parameters) oneOf(key string, words []string) (string, bool) {
	a, ok := p.need(key)
	if ok && !slices.Contains(words, a.value) {
		p.d.problem(a.at, "bad-parameter", fmt.Sprintf("%q cannot be %q", key, a.value), hintOf(a.value, words)...)
		return "", false
	}
	return a.value, ok
}

// hintOf is the near miss, or else the whole list.
func hintOf(name string, known []string) []string {
	if near := diag.Nearest(name, known); len(near) > 0 {
		return near
	}
	if len(known) == 0 {
		return nil
	}
	return []string{"known are " + strings.Join(known, ", ")}
}
