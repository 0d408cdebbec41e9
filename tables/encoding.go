package tables

import (
	"bytes"
	"fmt"
	"unicode"
	"unicode/utf8"

	"capspan/build/diag"
)

// mostRaw bounds the problems with a file's raw characters: one saved as UTF-16 would
// else have one in every second byte.
const mostRaw = 50

// clean checks the raw characters of a file, comments included, and returns text
// that the YAML parser reads with the same lines and columns: a byte that is no
// UTF-8, a tab and an invisible character each become one character.
func (r *reader) clean(src []byte) []byte {
	if allPlain(src) {
		return src
	}
	at := diag.Pos{File: r.file, Line: 1, Col: 1}
	reports := 0
	report := func(rule, fact, hint string) {
		if reports++; reports > mostRaw {
			return
		}
		r.list.Add(diag.Problem{Pos: at, Rule: rule, Fact: fact, Hints: []string{hint}})
	}
	if bytes.HasPrefix(src, []byte("\xef\xbb\xbf")) {
		report("encoding", "the file starts with a byte order mark", "save it as UTF-8 without one")
		src = src[3:]
	}
	out := make([]byte, 0, len(src))
	tabbed := 0 // the line of the last tab: one report a line is enough
	for len(src) > 0 {
		c, size := utf8.DecodeRune(src)
		switch {
		case c == utf8.RuneError && size == 1:
			report("encoding", fmt.Sprintf("the byte 0x%02X is not UTF-8", src[0]), notUTF8(src[0]))
			out = utf8.AppendRune(out, utf8.RuneError)
		case c == '\t':
			if tabbed != at.Line {
				report("tab", "a tab", "use spaces")
			}
			tabbed = at.Line
			out = append(out, ' ')
		case c == '\r' && len(src) > 1 && src[1] == '\n': // Windows line ends are fine
		case c != '\n' && invisible(c):
			report("control-character", fmt.Sprintf("the invisible character U+%04X", c), "delete it")
			out = append(out, ' ')
		default:
			out = utf8.AppendRune(out, c)
		}
		at.Col++
		if c == '\n' {
			at.Line, at.Col = at.Line+1, 1
		}
		src = src[size:]
	}
	return out
}

// allPlain reports a text of printable ASCII and line ends: nothing in it needs cleaning.
func allPlain(src []byte) bool {
	for _, c := range src {
		if (c < ' ' || c > '~') && c != '\n' {
			return false
		}
	}
	return true
}

func notUTF8(b byte) string {
	if b >= 0xA0 { // printable in Latin-1
		return fmt.Sprintf("it is %q in Latin-1; save the file as UTF-8", rune(b))
	}
	return "save the file as UTF-8"
}

// invisible reports characters that show nothing but change what is read: controls,
// line separators that only some programs break at, and the format characters, among
// them those that turn the direction of text (Unicode UAX #9).
func invisible(c rune) bool {
	if ' ' <= c && c <= '~' {
		return false
	}
	return unicode.Is(unicode.Cc, c) || unicode.Is(unicode.Cf, c) || unicode.Is(unicode.Zl, c) || unicode.Is(unicode.Zp, c)
}
