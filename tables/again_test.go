package tables_test

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"capspan/build/synth/catalogue"
	"capspan/tables"
)

// A folder that is loaded again and again is what it is when it is loaded once, after any
// edits: every row, every place, every problem, the name and the open data.
func TestLoadedAgain(t *testing.T) {
	whole, err := catalogue.Make(catalogue.Options{Rows: 150, Seed: 3, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	// Of two conversion joints that are twins, one is like another row of the size.
	conversions := whole["joints-conversion.yaml"]
	whole["joints-conversion.yaml"] = bytes.Replace(conversions, []byte("id: c17-c\n    ends: [{like: s9-d}"), []byte("id: c17-c\n    ends: [{like: s9-e}"), 1)
	if bytes.Equal(conversions, whole["joints-conversion.yaml"]) {
		t.Fatal("c17-c is not there, or not like s9-d")
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
