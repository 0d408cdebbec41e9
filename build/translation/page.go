package translation

import (
	"regexp"
	"strings"
)

// begins is a line that begins a part of a page without a blank one before it: a heading,
// an item, a row of a table, a directive that opens.
var begins = regexp.MustCompile(`^\s*(#{1,6}\s|[-*+]\s|\d+[.)]\s|\||::+\s*\w)`)

// closes is a line that ends a directive. It belongs to what stands before it.
var closes = regexp.MustCompile(`^\s*:::+\s*$`)

var (
	fenceLine = regexp.MustCompile("^\\s*(```+|~~~+)")
	headKey   = regexp.MustCompile(`^[A-Za-z]`)
)

// pageParts splits a page into the keys of its head and the blocks of its body. How a
// paragraph is broken into lines is no part of it; fenced code is, as it stands.
func pageParts(source string) []part {
	lines := strings.Split(strings.ReplaceAll(source, "\r\n", "\n"), "\n")
	var list []part
	name, fence := "the head", ""
	fresh, head := true, lines[0] == "---" // fresh: the next line begins a part
	add := func(n int, text string) {
		list = append(list, part{name: name, text: text, line: n + 1})
	}
	join := func(text string) {
		last := &list[len(list)-1]
		last.text += "\n" + text
	}
	for n, line := range lines {
		switch opens := fenceLine.FindStringSubmatch(line); {
		case head && n == 0:
		case head && line == "---":
			head, fresh, name = false, true, "the beginning"
		case head && headKey.MatchString(line), head && fresh:
			fresh = false
			add(n, line)
		case head:
			join(line)
		case fence != "":
			join("\x00" + line)
			if opens != nil && strings.HasPrefix(strings.TrimSpace(line), fence) && strings.TrimSpace(line) == opens[1] {
				fence, fresh = "", true
			}
		case opens != nil:
			fence = opens[1]
			add(n, line)
			fresh = false
		case strings.TrimSpace(line) == "":
			fresh = true
		case closes.MatchString(line) && len(list) > 0:
			join(line)
			fresh = true
		case fresh || begins.MatchString(line):
			if strings.HasPrefix(line, "#") {
				name = strings.TrimSpace(strings.TrimLeft(line, "#"))
			}
			add(n, line)
			fresh = false
		default:
			join(line)
		}
	}
	for i := range list {
		list[i].text = folded(list[i].text)
	}
	return list
}

// folded is a text without its line breaks; a line that begins with a zero stands as it is.
func folded(text string) string {
	var b strings.Builder
	for i, line := range strings.Split(text, "\n") {
		if rest, code := strings.CutPrefix(line, "\x00"); code {
			b.WriteString("\n" + rest)
			continue
		}
		if i > 0 {
			b.WriteByte(' ')
		}
		b.WriteString(strings.Join(strings.Fields(line), " "))
	}
	return b.String()
}
