package translation

import (
	"slices"
	"strings"
)

// level parts the names in the path of a key: a name may have a point in it, "8.8".
const level = "\x00"

// scriptParts splits a script into its entries: every constant and function, and of one
// that is an object in braces every property, however deep. Comments, line breaks, imports
// and types are no part of any: the type check holds a translation to those. The key of an
// entry that another file can import is its path; of one for the file's own use it is empty.
func scriptParts(source string) []part {
	var list []part
	for _, s := range statements(tokens(source)) {
		exported := len(s) > 1 && s[0].text == "export"
		if exported {
			s = s[1:]
		}
		kind, name := s[0].text, ""
		switch {
		case kind == "import" || kind == "interface" || kind == "type" || kind == "declare" || kind == "{" || kind == "*" || kind == ";":
			continue
		case kind == "async" && len(s) > 2:
			name = s[2].text
		case len(s) > 1:
			name = s[1].text
		}
		key := ""
		if exported {
			key = name
		}
		if object := objectOf(s); kind == "const" && object != nil {
			list = append(list, properties(object, name, key)...)
			continue
		}
		list = append(list, entry(s, name, key))
	}
	return list
}

// statements splits the tokens of a file. One ends with a semicolon, and a function or type
// with the brace behind which the next begins at the left edge.
func statements(all []token) [][]token {
	var list [][]token
	depth, begin := 0, 0
	end := func(i int) {
		list = append(list, all[begin:i+1])
		begin = i + 1
	}
	for i, t := range all {
		depth += nesting(t)
		switch {
		case depth > 0 || i < begin:
		case t.text == ";":
			end(i)
		case t.text == "}" && bodied(all[begin:i]) && (i+1 == len(all) || all[i+1].col == 1):
			end(i)
		}
	}
	if begin < len(all) {
		end(len(all) - 1)
	}
	return list
}

func nesting(t token) int {
	switch t.text {
	case "(", "[", "{":
		return 1
	case ")", "]", "}":
		return -1
	}
	return 0
}

// bodied reports whether a statement ends with a brace: no constant does.
func bodied(s []token) bool {
	for _, t := range s[:min(len(s), 3)] {
		if slices.Contains([]string{"function", "interface", "class", "enum"}, t.text) {
			return true
		}
	}
	return false
}

// objectOf is the inside of the braces that a constant is, nil when it is something else.
func objectOf(s []token) []token {
	depth := 0
	for i, t := range s {
		if t.text == "=" && depth == 0 {
			return inside(s[i+1:])
		}
		depth += nesting(t)
	}
	return nil
}

// inside is what stands between braces, when the tokens begin with some that hold anything.
// Behind them only "as const", "satisfies" and a type may follow.
func inside(s []token) []token {
	if len(s) < 3 || s[0].text != "{" {
		return nil
	}
	depth := 0
	for i, t := range s {
		if depth += nesting(t); depth > 0 {
			continue
		}
		if i == 1 || i+1 < len(s) && !slices.Contains([]string{";", "as", "satisfies", ","}, s[i+1].text) {
			return nil
		}
		return s[1:i]
	}
	return nil
}

// properties splits the inside of an object.
func properties(object []token, name, key string) []part {
	var list []part
	depth, begin := 0, 0
	end := func(i int) {
		p := object[begin:i]
		begin = i + 1
		if len(p) == 0 {
			return
		}
		of := strings.Trim(p[0].text, `"'`)
		under, underKey := name+"."+of, ""
		if key != "" {
			underKey = key + level + of
		}
		if len(p) > 2 && p[1].text == ":" {
			if nested := inside(p[2:]); nested != nil {
				list = append(list, properties(nested, under, underKey)...)
				return
			}
		}
		list = append(list, entry(p, under, underKey))
	}
	for i, t := range object {
		if t.text == "," && depth == 0 {
			end(i)
		}
		depth += nesting(t)
	}
	end(len(object))
	return list
}

// entry makes a part of tokens. A comma in front of a closing bracket is left out, as it
// comes and goes with the form.
func entry(s []token, name, key string) part {
	var b strings.Builder
	for i, t := range s {
		if t.text == "," && i+1 < len(s) && nesting(s[i+1]) < 0 {
			continue
		}
		b.WriteString(t.text + " ")
	}
	return part{name: name, key: key, text: b.String(), line: s[0].line}
}
