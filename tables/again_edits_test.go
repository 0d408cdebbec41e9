package tables_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"

	"capspan/build/synth/catalogue"
)

// rowBreak stands before every row but for its dash.
const rowBreak = "\n  - id: "

// scribbler edits the files of a chart as somebody may, well and badly.
type scribbler struct {
	*rand.Rand
	files catalogue.Files
}

// file picks a table, the long ones of joints more often.
func (s scribbler) file() string {
	names := slices.DeleteFunc(s.files.Names(), func(name string) bool {
		return name == "sources.yaml" || s.IntN(3) > 0 && !strings.HasPrefix(name, "joints-")
	})
	return names[s.IntN(len(names))]
}

// rows has a table's rows changed: how is given the head and then each row, from the id on.
func (s scribbler) rows(how func(rows []string) []string) {
	name := s.file()
	rows := strings.Split(string(s.files[name]), rowBreak)
	if len(rows) > 2 {
		s.files[name] = []byte(strings.Join(how(rows), rowBreak))
	}
}

// row changes the text of one.
func (s scribbler) row(how func(string) string) {
	s.rows(func(rows []string) []string {
		n := 1 + s.IntN(len(rows)-1)
		rows[n] = how(rows[n])
		return rows
	})
}

var likeOf = regexp.MustCompile(`like: ([^}]+)}`)

// liked changes a row that a conversion joint is like, if there is one.
func (s scribbler) liked(how func(string) string) {
	ends := likeOf.FindAllSubmatch(s.files["joints-conversion.yaml"], -1)
	if len(ends) == 0 {
		return
	}
	s.named(string(ends[s.IntN(len(ends))][1]), how)
}

// named changes the row of that id, if there is one.
func (s scribbler) named(id string, how func(string) string) {
	for _, name := range s.files.Names() {
		before, row, found := strings.Cut(string(s.files[name]), rowBreak+id+"\n")
		if !found {
			continue
		}
		row, after, more := strings.Cut(row, rowBreak)
		if more {
			after = rowBreak + after
		}
		s.files[name] = []byte(before + rowBreak + how(id+"\n"+row) + after)
	}
}

// head changes what stands before the rows of a table.
func (s scribbler) head(before, after string) {
	s.rows(func(rows []string) []string {
		rows[0] = strings.Replace(rows[0], before, after, 1)
		return rows
	})
}

// alike makes a row one of the size that another is of.
func (s scribbler) alike() {
	s.rows(func(rows []string) []string {
		n := 1 + s.IntN(len(rows)-1)
		rows[n] = withFiguresOf(rows[n], rows[1+s.IntN(len(rows)-1)])
		return rows
	})
}

func replace(before, after string) func(string) string {
	return func(text string) string { return strings.Replace(text, before, after, 1) }
}

func more(line string) func(string) string {
	return func(text string) string { return strings.TrimRight(text, "\n") + "\n" + line + "\n" }
}

func measured(row string) string {
	at := strings.Index(row, "cap:")
	if end := strings.IndexByte(row[max(at, 0):], '}'); at >= 0 && end >= 0 {
		return row[:at+end] + ", measured: [{readings: [24 mm], tool: tape, condition: new}]" + row[at+end:]
	}
	return row
}

func (s scribbler) digit(text string) string {
	at := strings.Index(text, "is: ") + 4 + s.IntN(60)
	for ; at < len(text); at++ {
		if '0' <= text[at] && text[at] <= '9' {
			return text[:at] + string('0'+(text[at]-'0'+1)%10) + text[at+1:]
		}
	}
	return text
}

// scribbles are what may be done, by name.
var scribbles = map[string]func(scribbler){
	"figure":      func(s scribbler) { s.row(s.digit) },
	"digit more":  func(s scribbler) { s.row(replace(", faces:", "1, faces:")) },
	"two figures": func(s scribbler) { s.row(s.digit); s.row(s.digit) },
	"many figures": func(s scribbler) {
		for range 30 {
			s.row(s.digit)
		}
	},
	"note":         func(s scribbler) { s.row(more(`    note: "edited"`)) },
	"other letter": func(s scribbler) { s.row(more(`    note: "größer"`)) },
	"tab":          func(s scribbler) { s.row(more("    note: \tx")) },
	"two lines":    func(s scribbler) { s.row(more("    note: some\n      more")) },
	"anchor":       func(s scribbler) { s.row(more("    note: &a x")) },
	"comment":      func(s scribbler) { s.row(more("# said to nobody\n\n")) },
	"dash comment": func(s scribbler) { s.row(more("    #\n  # - id: x")) },
	"broken":       func(s scribbler) { s.row(more("  {")) },
	"key twice": func(s scribbler) {
		s.row(func(row string) string { return row + "\n    twins: [x]\n    twins: [y]\n" })
	},
	"unknown key": func(s scribbler) { s.row(more("    colour: red")) },
	"deep":        func(s scribbler) { s.row(more("    note: [[[[[[[[x]]]]]]]]")) },
	"stray line":  func(s scribbler) { s.row(more("stray: 1")) },
	"no id": func(s scribbler) {
		s.row(func(row string) string { return "\n" + row[strings.IndexByte(row, '\n')+1:] })
	},
	"basis":                                func(s scribbler) { s.row(replace("basis: memory", "basis: common-practice")) },
	"no basis":                             func(s scribbler) { s.row(replace(", basis: memory", "")) },
	"hold":                                 func(s scribbler) { s.row(replace("hold:   {is: ", "hold:   {is: unknown, at: ")) },
	"plate":                                func(s scribbler) { s.row(replace("{is: outside-clip", "{is: strap")) },
	"measured":                             func(s scribbler) { s.row(measured) },
	"figure of a row that others are like": func(s scribbler) { s.liked(s.digit) },
	"figure of a row that one of two twins is like": func(s scribbler) { s.named("s9-e", s.digit) },
	"more of a row that others are like": func(s scribbler) {
		s.liked(replace(", faces:", "1, faces:"))
	},
	"measured, and others are like it": func(s scribbler) { s.liked(measured) },
	"twins gone":                       func(s scribbler) { s.row(replace("    twins: [", "    # [")) },
	"twin gone": func(s scribbler) {
		s.row(func(row string) string {
			before, after, _ := strings.Cut(row, "twins: [")
			if _, rest, several := strings.Cut(after, ", "); several {
				return before + "twins: [" + rest
			}
			return row
		})
	},
	"twin nowhere": func(s scribbler) { s.row(replace("twins: [", "twins: [nowhere, ")) },
	"twin again": func(s scribbler) {
		s.row(func(row string) string { return replace("twins: [", "twins: ["+ofList(row)+", ")(row) })
	},
	"like another": func(s scribbler) { s.row(replace("{like: s3-a}", "{like: s0-a}")) },
	"like nowhere": func(s scribbler) { s.row(replace("{like: s", "{like: x")) },
	"new name":     func(s scribbler) { s.row(func(row string) string { return "new-" + row }) },
	"large name":   func(s scribbler) { s.row(func(row string) string { return strings.ToUpper(row[:1]) + row[1:] }) },
	"row gone": func(s scribbler) {
		s.rows(func(r []string) []string { n := 1 + s.IntN(len(r)-1); return slices.Delete(r, n, n+1) })
	},
	"row twice": func(s scribbler) {
		s.rows(func(r []string) []string { n := 1 + s.IntN(len(r)-1); return slices.Insert(r, n, r[n]) })
	},
	"row copied": func(s scribbler) {
		s.rows(func(r []string) []string {
			n := 1 + s.IntN(len(r)-1)
			return slices.Insert(r, 1+s.IntN(len(r)-1), "copied-"+strings.Replace(r[n], "    twins: [", "    # [", 1))
		})
	},
	"rows change places": func(s scribbler) {
		s.rows(func(r []string) []string {
			a, b := 1+s.IntN(len(r)-1), 1+s.IntN(len(r)-1)
			r[a], r[b] = r[b], r[a]
			return r
		})
	},
	"figures of another":  func(s scribbler) { s.alike() },
	"figures of others":   func(s scribbler) { s.alike(); s.alike(); s.alike() },
	"table as conversion": func(s scribbler) { s.row(more("    ends: [{like: s0-a}, {like: s3-a}]")) },
	"label":               func(s scribbler) { s.head(`label: "Cap"`, `label: "Cup"`) },
	"limits":              func(s scribbler) { s.head("least: 1.0", "least: 40.0") },
	"day":                 func(s scribbler) { s.head("date: 2026-11-25", "date: 2026-11-26") },
	"line above":          func(s scribbler) { s.head("columns:", "# one more\ncolumns:") },
	"column gone":         func(s scribbler) { s.head("\n  across: {", "\n  # {") },
	"rows first": func(s scribbler) {
		name := s.file()
		before, after, _ := strings.Cut(string(s.files[name]), "\nabout: ")
		about, rest, _ := strings.Cut(after, "\n")
		s.files[name] = []byte(before + "\n" + rest + "\nabout: " + about + "\n")
	},
	"end of line gone": func(s scribbler) { name := s.file(); s.files[name] = bytes.TrimRight(s.files[name], "\n") },
	"two bytes a line": func(s scribbler) {
		name := s.file()
		s.files[name] = bytes.ReplaceAll(s.files[name], []byte("\n"), []byte("\r\n"))
	},
	"table gone": func(s scribbler) { delete(s.files, s.file()) },
	"empty":      func(s scribbler) { s.files[s.file()] = nil },
	"new table": func(s scribbler) {
		name := s.file()
		text := strings.ReplaceAll(string(s.files[name]), rowBreak, rowBreak+"other-")
		s.files["other-"+name] = []byte(strings.Replace(text, "\ntable: ", "\ntable: other-", 1))
	},
	"source": func(s scribbler) {
		s.files["sources.yaml"] = bytes.Replace(s.files["sources.yaml"], []byte("    title: "), []byte("    title: Edited "), 1)
	},
	"retired": func(s scribbler) {
		id := "gone"
		s.row(func(row string) string { id = row[:strings.IndexByte(row, '\n')]; return row })
		s.files["retired.yaml"] = fmt.Appendf(nil, "retired:\n  - {id: %s, to: [s0-a, nowhere], why: invented}\n", id)
	},
}

var figureLine = regexp.MustCompile(`(?m)^    (hold|cap|across): .*$`)

// withFiguresOf is a row of the size that another is of, and names no twins.
func withFiguresOf(row, other string) string {
	lines := figureLine.FindAllString(other, -1)
	if len(lines) != len(figureLine.FindAllString(row, -1)) {
		return row
	}
	n := 0
	row = figureLine.ReplaceAllStringFunc(row, func(string) string { n++; return lines[n-1] })
	return strings.Replace(row, "    twins: [", "    # [", 1)
}

// ofList is the last entry of a row's twins.
func ofList(row string) string {
	_, list, _ := strings.Cut(row, "twins: [")
	list, _, _ = strings.Cut(list, "]")
	return list[strings.LastIndexByte(list, ' ')+1:]
}
