package tables

import (
	"strings"
	"unicode/utf16"
)

// Place is where a cell stands in its file, for whoever writes it anew: the line, from 1,
// and the text in braces from one place of the line to the other, counted in UTF-16 units
// as a browser counts them.
type Place struct{ Line, From, To int }

// Lines splits the text of a file as the loader counts lines, without their ends.
func Lines(text string) []string {
	lines := strings.Split(text, "\n")
	for i, line := range lines {
		lines[i] = strings.TrimSuffix(line, "\r")
	}
	return lines
}

// PlaceOf finds the braces of a value in the lines of its file; ok is false where the line
// is not as the loader read it.
func PlaceOf(lines []string, v Value) (place Place, ok bool) {
	at := v.Braces
	if at.Line < 1 || at.Line > len(lines) {
		return Place{}, false
	}
	runes := []rune(lines[at.Line-1])
	if at.Col < 1 || at.Col > len(runes) {
		return Place{}, false
	}
	rest := string(runes[at.Col-1:])
	p := &flowParser{rest: rest}
	if cell := p.value(false); p.failed || cell.open != '{' {
		return Place{}, false
	}
	from := len(utf16.Encode(runes[:at.Col-1]))
	return Place{Line: at.Line, From: from, To: from + len(utf16.Encode([]rune(rest[:len(rest)-len(p.rest)])))}, true
}
