package translation

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// token is a word, a number, a text in quotes, or a sign of TypeScript. Comments and
// spaces are none.
type token struct {
	text      string
	line, col int // from 1
}

// tokens splits a source. What is not TypeScript comes out as signs: the bundler reports it.
func tokens(source string) []token {
	var list []token
	line, start := 1, 0 // of the line that is read
	for i := 0; i < len(source); {
		rest := source[i:]
		n := 0
		switch c := rest[0]; {
		case strings.HasPrefix(rest, "//"):
			n = len(rest)
			if end := strings.IndexByte(rest, '\n'); end >= 0 {
				n = end
			}
		case strings.HasPrefix(rest, "/*"):
			n = len(rest)
			if end := strings.Index(rest[2:], "*/"); end >= 0 {
				n = end + 4
			}
		case c == ' ' || c == '\t' || c == '\r' || c == '\n':
			n = 1
		default:
			switch {
			case c == '"' || c == '\'':
				n = quoted(rest, c)
			case c == '`':
				n = template(rest)
			case c == '/' && regexAfter(list):
				n = expression(rest)
			case wordSign(rest):
				n = strings.IndexFunc(rest, func(r rune) bool { return !inWord(r) })
				if n < 0 {
					n = len(rest)
				}
			case strings.ContainsRune("=<>!", rune(c)):
				n = len(rest) - len(strings.TrimLeft(rest, "=<>!")) // =>, ===: no single one
			default:
				_, n = utf8.DecodeRuneInString(rest)
			}
			list = append(list, token{rest[:n], line, i - start + 1})
		}
		if breaks := strings.Count(rest[:n], "\n"); breaks > 0 {
			line += breaks
			start = i + strings.LastIndexByte(rest[:n], '\n') + 1
		}
		i += n
	}
	return list
}

func inWord(r rune) bool {
	return r == '_' || r == '$' || r == '#' || unicode.IsLetter(r) || unicode.IsDigit(r)
}

func wordSign(rest string) bool {
	r, _ := utf8.DecodeRuneInString(rest)
	return inWord(r)
}

// quoted is how long the text in quotes is that a source begins with.
func quoted(source string, quote byte) int {
	for i := 1; i < len(source); i++ {
		switch source[i] {
		case '\\':
			i++
		case quote, '\n':
			return i + 1
		}
	}
	return len(source)
}

// template is the same of a template, with what stands in its braces.
func template(source string) int {
	for i := 1; i < len(source); i++ {
		switch {
		case source[i] == '\\':
			i++
		case source[i] == '`':
			return i + 1
		case strings.HasPrefix(source[i:], "${"):
			i += braced(source[i+1:])
		}
	}
	return len(source)
}

// braced is how long what stands in braces is, with them.
func braced(source string) int {
	depth := 0
	for i := 0; i < len(source); i++ {
		switch c := source[i]; c {
		case '"', '\'':
			i += quoted(source[i:], c) - 1
		case '`':
			i += template(source[i:]) - 1
		case '{':
			depth++
		case '}':
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
	return len(source)
}

// regexAfter reports whether a slash behind these tokens begins a regular expression.
func regexAfter(before []token) bool {
	if len(before) == 0 {
		return true
	}
	last := before[len(before)-1].text
	if last == "return" {
		return true
	}
	r, _ := utf8.DecodeLastRuneInString(last)
	return !inWord(r) && !strings.ContainsRune(")]}\"'`", r)
}

// expression is how long the regular expression is that a source begins with.
func expression(source string) int {
	class := false
	for i := 1; i < len(source); i++ {
		switch c := source[i]; {
		case c == '\\':
			i++
		case c == '\n':
			return 1 // it was a slash alone
		case c == '[':
			class = true
		case c == ']':
			class = false
		case c == '/' && !class:
			return i + 1
		}
	}
	return 1
}
