package build

import (
	"fmt"
	"hash/fnv"
	"io/fs"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"capspan/static/matcher"
	"capspan/tables"
	"capspan/tables/compare"
)

// choosePlainly is what [Comparison.choose] does, one row after the other and with nothing
// left out.
func choosePlainly(c *Comparison, was, is matcher.Chart, every bool) []putQuery {
	changed, everywhere, rows := touchedPlainly(c, was, is)
	about := reachOf(changed)
	var picked []putQuery
	seen := map[string]int{}
	add := func(row matcher.ChartRow, rank int, readings []endReadings, hold bool) {
		ends := queryEnds(&row, readings, hold)
		key := fmt.Sprintf("%q", ends)
		at, known := seen[key]
		if known && at >= 0 {
			picked[at].rank = min(picked[at].rank, rank)
		}
		if known || len(ends) == 0 {
			return
		}
		seen[key] = -1
		var mm []endMM
		for _, r := range readings {
			if !r.nothing() {
				mm = append(mm, endMM{r.cap.mm, r.across.mm})
			}
		}
		c.Queries++
		near := everywhere && about.ends > 0 || about.near(mm)
		if near {
			c.Near++
		}
		if near || every {
			seen[key] = len(picked)
			picked = append(picked, putQuery{row.Name, rank, matcher.Query{Ends: ends}, mm})
		}
	}
	made := map[string]bool{}
	for n, chart := range []matcher.Chart{was, is} {
		for _, row := range chart.Rows {
			rank := len(row.Ends)
			if rows[n][row.Name] {
				rank = 0
			}
			add(row, rank, drawn(nil, &row, nil, 0, 0), true)
			if made[row.Name] || len(row.Ends) == 2 {
				continue
			}
			made[row.Name] = true
			hash := fnv.New64a()
			hash.Write([]byte(row.Name))
			random := rand.New(rand.NewPCG(hash.Sum64(), 20))
			for _, s := range seeded {
				add(row, 3, drawn(nil, &row, random, s.cap, s.across), s.hold)
			}
		}
	}
	slices.SortStableFunc(picked, func(a, b putQuery) int { return a.rank - b.rank })
	if !every {
		most := 24
		if len(was.Rows) > 2000 || len(is.Rows) > 2000 {
			most = 4
		}
		picked = picked[:min(len(picked), most)]
	}
	c.Asked = len(picked)
	return picked
}

// touchedPlainly compares every row with its like, and the names of all that are its size.
// The names of the rows are those each side calls them by.
func touchedPlainly(c *Comparison, was, is matcher.Chart) (ends []matcher.ChartEnd, everywhere bool, rows [2]map[string]bool) {
	type side struct {
		chart  matcher.Chart
		called func(string) string
	}
	sides := []side{{was, c.NowCalled}, {is, func(id string) string { return id }}}
	size := func(s side, n int) string {
		var names []string
		for _, row := range s.chart.Rows {
			if row.Size == n {
				names = append(names, s.called(row.Name))
			}
		}
		slices.Sort(names)
		return strings.Join(names, " ")
	}
	for n, mine := range sides {
		other := sides[1-n]
		rows[n] = map[string]bool{}
		for _, row := range mine.chart.Rows {
			at := slices.IndexFunc(other.chart.Rows, func(o matcher.ChartRow) bool { return other.called(o.Name) == mine.called(row.Name) })
			if at < 0 || !sameToCore(&row, &other.chart.Rows[at]) || size(mine, row.Size) != size(other, other.chart.Rows[at].Size) {
				ends = append(ends, row.Ends...)
				rows[n][row.Name] = true
			}
		}
	}
	return ends, holdsAndFaces(was) != holdsAndFaces(is), rows
}

// chosen holds the fast way to the plain one.
func chosen(t *testing.T, older, newer fs.FS) int {
	t.Helper()
	was, is := mustLoadTables(t, older), mustLoadTables(t, newer)
	charts := [2]matcher.Chart{Chart(was), Chart(is)}
	near := 0
	for _, every := range []bool{false, true} {
		fast, plain := &Comparison{Diff: compare.Sets(was, is)}, &Comparison{Diff: compare.Sets(was, is)}
		got, want := fast.choose(charts[0], charts[1], every), choosePlainly(plain, charts[0], charts[1], every)
		if diff := cmp.Diff(want, got, cmp.AllowUnexported(putQuery{}, endMM{}), cmpopts.EquateNaNs()); diff != "" {
			t.Fatalf("every %t: other queries are chosen (-plainly +fast):\n%.3000s", every, diff)
		}
		if fast.Queries != plain.Queries || fast.Near != plain.Near || fast.Asked != plain.Asked {
			t.Fatalf("every %t: %d queries, %d near, %d asked; plainly %d, %d, %d", every, fast.Queries, fast.Near, fast.Asked, plain.Queries, plain.Near, plain.Asked)
		}
		near = fast.Near
	}
	return near
}

// The queries are those of the plain way, whatever changed: a figure, a name, a hold, a row
// that comes or goes, twins.
func TestChosenAsPlainly(t *testing.T) {
	_, across := inchRow(t, "1330")
	for name, files := range map[string]fstest.MapFS{
		"nothing": changedTables(t),
		"a title": changedTables(t, "joints-inch.yaml: title: Inch-series joints => title: Joints in inches"),
		"a row":   moveAcross(t, "1310", across.Quantity.Text),
		"a basis": changedTables(t, "joints-farm.yaml: basis: common-practice => basis: memory"),
		"a name": changedTables(t, "joints-farm.yaml: id: 22x54 => id: 22-by-54",
			"retired.yaml: retired: [] => retired:\n  - {id: 22x54, to: [22-by-54], why: spelt out}"),
	} {
		if near := chosen(t, tables.FS, files); near > 0 != (name != "nothing" && name != "a title" && name != "a name") {
			t.Errorf("%s: %d queries are near", name, near)
		}
		chosen(t, files, tables.FS)
	}
}

// So it is with many rows, of which some are changed by chance.
func TestChosenAsPlainlyOfMany(t *testing.T) {
	src, err := manyJoints()
	if err != nil {
		t.Fatal(err)
	}
	figure := regexp.MustCompile(`is: [0-9.]+[0-9],`)
	for seed := range uint64(3) {
		random := rand.New(rand.NewPCG(seed, 6))
		files := mapped(t, src.Tables)
		changed := 0
		for try := 0; changed < 3 && try < 50; try++ {
			name := []string{"joints-metric.yaml", "joints-inch.yaml", "joints-farm.yaml"}[random.IntN(3)]
			before := files[name]
			lines := strings.Split(string(before.Data), "\n")
			at := random.IntN(len(lines))
			lines[at] = figure.ReplaceAllStringFunc(lines[at], func(was string) string { return was[:len(was)-2] + fmt.Sprint(random.IntN(10)) + "," })
			files[name] = &fstest.MapFile{Data: []byte(strings.Join(lines, "\n"))}
			if _, problems := tables.Load(files); problems.Blocked() {
				files[name] = before
			} else if lines[at] != strings.Split(string(before.Data), "\n")[at] {
				changed++
			}
		}
		if near := chosen(t, src.Tables, files); near == 0 {
			t.Errorf("seed %d: nothing is near %d changes", seed, changed)
		}
	}
}
