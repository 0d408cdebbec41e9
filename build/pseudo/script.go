package pseudo

import "strings"

// script translates what a part of a page says by itself: the strings with a space or a
// capital, on lines that import nothing and declare no type.
func script(text string) string {
	lines := strings.SplitAfter(text, "\n")
	for i, line := range lines {
		if strings.HasPrefix(line, "import ") || strings.HasPrefix(line, "//") || strings.HasPrefix(line, "export type") || strings.Contains(line, " from \"") {
			continue
		}
		r := &reader{rest: line}
		r.code("")
		lines[i] = r.b.String()
	}
	return strings.Join(lines, "")
}

// reader walks through a line; what it has passed is in b.
type reader struct {
	rest string
	b    strings.Builder
}

// take passes the next bytes as they are.
func (r *reader) take(n int) {
	r.b.WriteString(r.rest[:n])
	r.rest = r.rest[n:]
}

// code passes everything until a sign that ends it, and says the strings on the way.
func (r *reader) code(end string) {
	depth := 0
	for r.rest != "" {
		switch c := r.rest[0]; {
		case end != "" && depth == 0 && strings.HasPrefix(r.rest, end):
			return
		case c == '"' || c == '`':
			r.take(1)
			r.said(c)
			continue
		case c == '{':
			depth++
		case c == '}':
			depth--
		}
		r.take(1)
	}
}

// said says a string, if it is no key, until the quote that ends it; code within it is passed.
func (r *reader) said(quote byte) {
	start := r.rest
	from := 0
	say := func() {
		text := start[:from]
		if strings.Contains(text, " ") || text != strings.ToLower(text) {
			text = Prose(text)
		}
		r.b.WriteString(text)
		r.rest = start[from:]
	}
	for from < len(start) {
		switch {
		case start[from] == '\\':
			from += 2
			continue
		case start[from] == quote:
			if strings.HasPrefix(start[from+1:], ":") {
				r.take(from) // a key, which is no word
			} else {
				say()
			}
			r.take(1)
			return
		case quote == '`' && strings.HasPrefix(start[from:], "${"):
			say()
			r.take(2)
			r.code("}")
			start, from = r.rest, 0
			continue
		}
		from++
	}
	from = min(from, len(start))
	say()
}
