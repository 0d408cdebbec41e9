package build

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/dop251/goja"
	"golang.org/x/net/html"

	"capspan/static"
	"capspan/tables"
)

// findLine is a line of a group's page as the script reads it.
type findLine struct {
	Href     string   `json:"href"`
	Group    string   `json:"group"`
	Words    string   `json:"words"`
	Caps     []string `json:"caps"`
	Acrosses []string `json:"acrosses"`
	Holds    []string `json:"holds"`
}

// What the form of a table in groups finds is what a plain look at the chart's rows finds:
// no group is left unread that holds a size that is asked for, and no line passes that is not.
func TestFindInGroups(t *testing.T) {
	files, set := mustLarge(t)
	vm := goja.New()
	for name, source := range map[string]string{"find": "parts/table/find.ts", "filter": "parts/table/filter.ts"} {
		script, problems := static.Script(static.FS, source, name)
		if problems.Blocked() {
			t.Fatal(problems)
		}
		if _, err := vm.RunString(string(script)); err != nil {
			t.Fatal(err)
		}
	}
	if _, err := vm.RunString(`
function ask(lines, groups, text, hold, unit, ends) {
	const [a, b, c, d] = ends.map((end) => find.parseLength(end, unit));
	const wanted = { text: filter.parseFilter(text), hold, cap: { from: a, to: b }, across: { from: c, to: d } };
	const read = groups.filter((g) => find.groupCan(wanted, g)).map((g) => g.name);
	const fit = lines.filter((line) => find.lineFits(wanted, line));
	return JSON.stringify({ read: read.length, all: fit.map((line) => line.href), found: fit.filter((line) => read.includes(line.group)).map((line) => line.href) });
}`); err != nil {
		t.Fatal(err)
	}
	ask, _ := goja.AssertFunction(vm.Get("ask"))
	random := rand.New(rand.NewPCG(1, 2))
	asked, found, spared := 0, 0, 0
	for _, table := range set.Tables {
		if !table.Joint() {
			continue
		}
		lines, groups := linesOf(t, files, table)
		for name, value := range map[string]any{"lines": lines, "groups": groups} {
			text, err := json.Marshal(value)
			if err != nil {
				t.Fatal(err)
			}
			if err := vm.Set(name, string(text)); err != nil {
				t.Fatal(err)
			}
			if _, err = vm.RunString(name + " = JSON.parse(" + name + `, (k, v) => k === "caps" || k === "acrosses" ? v.map(Number) : v)`); err != nil {
				t.Fatal(err)
			}
		}
		for range 60 {
			row := table.Rows[random.IntN(len(table.Rows))]
			end := row.Ends[random.IntN(len(row.Ends))]
			text, hold, unit, ends := "", "", []string{"mm", "in"}[random.IntN(2)], []string{"", "", "", ""}
			inUnit := func(v tables.Value, more float64) string {
				if v.State != tables.Given || random.IntN(3) == 0 {
					return ""
				}
				mm := v.Quantity.Float() + more*random.Float64()
				if unit == "in" {
					return fmt.Sprintf("%.4f", mm/mmPerInch)
				}
				return strings.Replace(fmt.Sprintf("%.2f", mm), ".", ",", random.IntN(2))
			}
			switch random.IntN(4) {
			case 0:
				text = row.ID
			case 1:
				if end.Cap.State == tables.Given && end.Across.State == tables.Given {
					text = strings.Fields(end.Cap.Quantity.Text)[0] + " x " + strings.Fields(end.Across.Quantity.Text)[0]
				}
			default:
				ends = []string{inUnit(end.Cap, -2), inUnit(end.Cap, 2), inUnit(end.Across, -9), inUnit(end.Across, 9)}
			}
			if random.IntN(2) == 0 {
				hold = holdKind(end.Hold)
			}
			answer, err := ask(goja.Undefined(), vm.Get("lines"), vm.Get("groups"), vm.ToValue(text), vm.ToValue(hold), vm.ToValue(unit), vm.ToValue(ends))
			if err != nil {
				t.Fatal(err)
			}
			var got struct {
				Read       int
				All, Found []string
			}
			if err := json.Unmarshal([]byte(answer.String()), &got); err != nil {
				t.Fatal(err)
			}
			asked++
			found += len(got.Found)
			spared += len(groups) - got.Read
			question := fmt.Sprintf("%s: %q, %q, %v %s", table.ID, text, hold, ends, unit)
			if !slices.Equal(unique(got.All), unique(got.Found)) {
				t.Errorf("%s: in groups that were not read: %v, found %v", question, got.All, got.Found)
			}
			if self := "/size/" + sizeKey(row) + "/"; !slices.Contains(got.Found, self) {
				t.Errorf("%s: does not find %s, of whose row it was made", question, self)
			}
			if text == "" {
				if want := plainLook(table, hold, unit, ends); !slices.Equal(unique(got.Found), want) {
					t.Errorf("%s: found %v, want %v", question, unique(got.Found), want)
				}
			}
		}
	}
	if asked < 300 || found < asked || spared < asked {
		t.Errorf("%d questions found %d lines and spared %d groups", asked, found, spared)
	}
}

func unique(list []string) []string { return slices.Compact(slices.Sorted(slices.Values(list))) }

// linesOf are the lines of a table's groups, and the groups, as its pages have them.
func linesOf(t *testing.T, files map[string][]byte, table *tables.Table) ([]findLine, []map[string]any) {
	t.Helper()
	var lines []findLine
	var groups []map[string]any
	for n := range parsed(t, files["chart/"+table.ID+"/index.html"]).Descendants() {
		if n.Data != "tr" || attribute(n, "data-group") == "" {
			continue
		}
		_, name, _ := strings.Cut(attribute(n, "data-group"), "/")
		group := map[string]any{"name": name, "millimetre": nil, "holds": strings.Fields(attribute(n, "data-holds")), "across": map[string]any{"from": nil, "to": nil}}
		if least := attribute(n, "data-least"); least != "" {
			group["across"] = map[string]any{"from": json.Number(least), "to": json.Number(attribute(n, "data-greatest"))}
		}
		if name != noCap {
			group["millimetre"] = json.Number(name)
		}
		groups = append(groups, group)
		for line := range parsed(t, files["chart/"+table.ID+"/"+name+"/index.html"]).Descendants() {
			if line.Data != "tr" || attribute(line, "data-words") == "" {
				continue
			}
			one := findLine{Group: name, Words: attribute(line, "data-words"), Caps: strings.Fields(attribute(line, "data-caps")),
				Acrosses: strings.Fields(attribute(line, "data-acrosses")), Holds: strings.Fields(attribute(line, "data-holds"))}
			for a := range line.Descendants() {
				if a.Data == "a" && one.Href == "" {
					one.Href = attribute(a, "href")
				}
			}
			lines = append(lines, one)
		}
	}
	return lines, groups
}

func parsed(t *testing.T, page []byte) *html.Node {
	t.Helper()
	doc, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// plainLook finds the sizes of a table by the figures of their first rows, with no groups.
func plainLook(table *tables.Table, hold, unit string, ends []string) []string {
	within := func(v tables.Value, from, to string) bool {
		if from == "" && to == "" {
			return true
		}
		mm := func(text string) float64 {
			var value float64
			fmt.Sscan(strings.Replace(text, ",", ".", 1), &value)
			if unit == "in" {
				value *= mmPerInch
			}
			return value
		}
		return v.State == tables.Given && (from == "" || v.Quantity.Float() >= mm(from)) && (to == "" || v.Quantity.Float() <= mm(to))
	}
	first := map[string]*tables.Row{}
	for _, row := range table.Rows {
		if key := "/size/" + sizeKey(row) + "/"; first[key] == nil {
			first[key] = row
		}
	}
	fits := func(_ string, row *tables.Row) bool {
		held := hold == "" || slices.ContainsFunc(row.Ends, func(e tables.End) bool { return holdKind(e.Hold) == hold })
		return held && slices.ContainsFunc(row.Ends, func(e tables.End) bool { return within(e.Cap, ends[0], ends[1]) && within(e.Across, ends[2], ends[3]) })
	}
	maps.DeleteFunc(first, func(key string, row *tables.Row) bool { return !fits(key, row) })
	return slices.Sorted(maps.Keys(first))
}
