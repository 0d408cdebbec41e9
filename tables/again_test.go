package tables_test

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"reflect"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capspan/build/synth/catalogue"
	"capspan/tables"
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
	id := string(ends[s.IntN(len(ends))][1])
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

// ofList is the last entry of a row's twins.
func ofList(row string) string {
	_, list, _ := strings.Cut(row, "twins: [")
	list, _, _ = strings.Cut(list, "]")
	return list[strings.LastIndexByte(list, ' ')+1:]
}

// A folder that is loaded again and again is what it is when it is loaded once, after any
// edits: every row, every place, every problem, the name and the open data.
func TestLoadedAgain(t *testing.T) {
	whole, err := catalogue.Make(catalogue.Options{Rows: 150, Seed: 3, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	before := scribbler{rand.New(rand.NewPCG(1, 7)), whole}
	before.liked(measured)
	before.row(measured)
	names := slices.Sorted(maps.Keys(scribbles))
	taken, loads := 0, 0
	for seed := range uint64(2) {
		var r tables.Reader
		var exports tables.Exports
		known := map[uint64]bool{}
		s := scribbler{rand.New(rand.NewPCG(seed, 7)), maps.Clone(whole)}
		for step := range 2 * len(names) {
			name := "as it was"
			if s.IntN(3) > 0 { // most mistakes are mended before the next is made
				s.files = maps.Clone(whole)
			}
			if s.IntN(6) > 0 {
				name = names[(step+int(seed)*7)%len(names)]
				scribbles[name](s)
			}
			got, told := r.Load(s.files.FS())
			want, alone := tables.Load(s.files.FS())
			where := fmt.Sprintf("seed %d, step %d: %s", seed, step, name)
			if !reflect.DeepEqual(told, alone) {
				t.Fatalf("%s: told\n%v\nalone\n%v", where, told, alone)
			}
			reckon(got, step)
			reckon(want, step)
			sameChart(t, where, got, want)
			sameOpenData(t, where, &exports, got, want)
			if !told.Blocked() && tables.Contribute(got) != tables.Contribute(want) {
				t.Fatalf("%s: another row is explained", where)
			}
			loads++
			of, all := 0, 0
			for _, table := range got.Tables {
				for _, row := range table.Rows {
					all++
					if known[row.Reading()] {
						of++
					}
					known[row.Reading()] = true
				}
			}
			if 10*of > 9*all {
				taken++
			}
		}
	}
	if 3*taken < 2*loads {
		t.Errorf("of %d loads, only %d have most of their rows from before", loads, taken)
	}
}

// reckon leaves with the measurements of a chart what they come to, other each time: it is
// reckoned by scripts, which may have changed.
func reckon(set *tables.Set, step int) {
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			for _, v := range row.Values {
				if v.Measured != nil {
					v.Measured.Combined = &tables.Combined{MM: fmt.Sprint(step)}
				}
			}
		}
	}
}

// plainRow is a row with others by name.
type plainRow struct {
	tables.Row
	Like  []string
	Twins []string
}

func plainRows(t *tables.Table) []plainRow {
	var out []plainRow
	for _, row := range t.Rows {
		p := plainRow{Row: tables.Row{ID: row.ID, Also: row.Also, Values: row.Values, Basis: row.Basis, Sources: row.Sources, At: row.At, Note: row.Note, Pos: row.Pos}}
		for _, end := range row.Ends {
			if end.Like != nil {
				p.Like = append(p.Like, end.Like.Ref())
			}
			end.Like = nil
			p.Row.Ends = append(p.Row.Ends, end)
		}
		for _, twin := range row.Twins {
			p.Twins = append(p.Twins, twin.Ref())
		}
		out = append(out, p)
	}
	return out
}

func sameChart(t *testing.T, where string, got, want *tables.Set) {
	t.Helper()
	if len(got.Tables) != len(want.Tables) || !reflect.DeepEqual(got.Sources, want.Sources) || !reflect.DeepEqual(got.Retired, want.Retired) || !reflect.DeepEqual(got.History, want.History) {
		t.Fatalf("%s: the charts differ", where)
	}
	if got.Version() != want.Version() {
		t.Fatalf("%s: called %s, and alone %s", where, got.Version().Name(), want.Version().Name())
	}
	ours := map[*tables.Row]bool{}
	for _, table := range got.Tables {
		for _, row := range table.Rows {
			ours[row] = true
		}
	}
	for n, table := range want.Tables {
		one := *got.Tables[n]
		if !reflect.DeepEqual(plainRows(&one), plainRows(table)) {
			for i, row := range plainRows(table) {
				if i < len(one.Rows) && !reflect.DeepEqual(plainRows(&one)[i], row) {
					t.Fatalf("%s: %s is\n%+v, and alone\n%+v", where, row.ID, plainRows(&one)[i], row)
				}
			}
			t.Fatalf("%s: the rows of %s differ", where, table.ID)
		}
		if !slices.EqualFunc(one.RowTexts(), table.RowTexts(), bytes.Equal) || !bytes.Equal(one.Head(), table.Head()) {
			t.Fatalf("%s: the texts of %s differ", where, table.ID)
		}
		for _, row := range one.Rows {
			if row.Table != got.Tables[n] {
				t.Fatalf("%s: %s is of another table", where, row.ID)
			}
			for _, other := range row.Twins {
				if !ours[other] {
					t.Fatalf("%s: the twin %s of %s is of another chart", where, other.ID, row.ID)
				}
			}
			for _, end := range row.Ends {
				if end.Like != nil && !ours[end.Like] {
					t.Fatalf("%s: %s is like a row of another chart", where, row.ID)
				}
			}
		}
		one.Rows = nil
		head := *table
		head.Rows = nil
		if !reflect.DeepEqual(one, head) {
			t.Fatalf("%s: the head of %s is\n%+v, and alone\n%+v", where, table.ID, one, head)
		}
		for i, row := range table.Rows {
			mine := got.Tables[n].Rows[i]
			if i%7 == 0 && !slices.Equal(refs(got.Near(mine, 3), got.SameFigures(mine), got.Conversions(mine)), refs(want.Near(row, 3), want.SameFigures(row), want.Conversions(row))) {
				t.Fatalf("%s: %s has other neighbours", where, row.ID)
			}
		}
	}
}

func refs(lists ...[]*tables.Row) []string {
	var out []string
	for _, rows := range lists {
		for _, row := range rows {
			out = append(out, row.Ref())
		}
		out = append(out, "")
	}
	return out
}

// sameOpenData holds what is written of a chart by one who wrote others before to what
// somebody writes who has not.
func sameOpenData(t *testing.T, where string, exports *tables.Exports, got, want *tables.Set) {
	t.Helper()
	var alone *tables.Exports
	same := func(name string, got, want []byte, err ...error) {
		t.Helper()
		if !bytes.Equal(got, want) || err[0] != nil || err[1] != nil {
			t.Fatalf("%s: %s differs: %v", where, name, err)
		}
	}
	for n, table := range want.Tables {
		ours := got.Tables[n]
		same(table.ID+".csv", exports.CSV(ours), alone.CSV(table), nil, nil)
		first, err := exports.JSON(ours)
		second, failed := alone.JSON(table)
		same(table.ID+".json", first, second, err, failed)
	}
	first, err := exports.Chart(got)
	second, failed := alone.Chart(want)
	same("the chart", first, second, err, failed)
	sum := func(*tables.Table) (int64, [32]byte) { return 1, [32]byte{2} }
	first, err = exports.Package(got, tables.Package{Title: "x"}, sum)
	second, failed = alone.Package(want, tables.Package{Title: "x"}, sum)
	same("the package", first, second, err, failed)
}
