package tables

import (
	"math/big"
	"slices"
	"strings"
	"testing"
)

func shippedSet(t testing.TB) *Set {
	t.Helper()
	set, list := Load(FS)
	if len(list) > 0 {
		t.Fatalf("the shipped tables have problems:\n%s", printedAll(list))
	}
	return set
}

func mustFind(t testing.TB, set *Set, id string) *Row {
	t.Helper()
	row := set.Find(id)
	if row == nil {
		t.Fatalf("no row %q", id)
	}
	return row
}

// Rows are for ever: a smaller number means that some were lost.
func TestShippedRowCounts(t *testing.T) {
	want := map[string]int{"joints-inch": 24, "joints-inside-clip": 6, "joints-conversion": 22, "joints-farm": 17, "joints-metric": 55, "joints-wing": 9,
		"flanges-male": 10, "flanges-female": 3, "flanges-cross-tooth": 4, "machine-joints": 7, "machine-joint-factors": 3, "pto-shafts": 4, "steering-splines": 8, "fasteners": 18}
	set, total := shippedSet(t), 0
	for _, table := range set.Tables {
		if len(table.Rows) < want[table.ID] {
			t.Errorf("%s has %d rows, had %d", table.ID, len(table.Rows), want[table.ID])
		}
		total += len(table.Rows)
	}
	for id := range want {
		if !slices.ContainsFunc(set.Tables, func(t *Table) bool { return t.ID == id }) {
			t.Errorf("the table %q is gone", id)
		}
	}
	if total < 190 {
		t.Errorf("%d rows, had 190", total)
	}
	if len(set.Sources) < 36 {
		t.Errorf("%d sources, had 36", len(set.Sources))
	}
}

// Every row says what it is by its name as well: metric and farm rows are called by
// cap and across, conversion joints by their ends, half-round builds by the last
// digit of the clip series (trade usage).
func TestShippedRows(t *testing.T) {
	set := shippedSet(t)
	for row := range set.rows() {
		t.Run(row.Ref(), func(t *testing.T) {
			if set.Find(row.ID) != row || set.Find(row.Ref()) != row {
				t.Error("cannot be found by its id and its ref")
			}
			if row.Basis == "" || row.Table.Joint() != (len(row.Ends) > 0) {
				t.Fatalf("basis %q, %d ends", row.Basis, len(row.Ends))
			}
			switch row.Table.ID {
			case "joints-farm", "joints-metric":
				if got := row.Ends[0].Cap.Word() + "x" + row.Ends[0].Across.Word(); got != row.ID {
					t.Errorf("is %s", got)
				}
			case "joints-conversion":
				if len(row.Ends) != 2 {
					t.Fatalf("%d ends", len(row.Ends))
				}
				if got := row.Ends[0].Like.ID + "-to-" + row.Ends[1].Like.ID; !strings.EqualFold(got, row.ID) {
					t.Errorf("joins %s", got)
				}
			case "joints-inch":
				if clip := row.ID[:3] + "0"; len(row.ID) == 4 && row.ID[3] == '5' {
					other := mustFind(t, set, clip)
					if row.Ends[0].Hold.Hold() != Strap || !endsAgree(row, other, func(e, f *End) bool { return figuresAgree(e, f, false) }) {
						t.Errorf("is not the half-round build of %s", clip)
					}
				}
			}
			for _, end := range row.Ends {
				for _, v := range []Value{end.Hold, end.Cap, end.Across} {
					if v.State == Given && v.Basis == "" {
						t.Errorf("%s without a basis", v.Word())
					}
				}
			}
		})
	}
}

// Trade facts: farm sizes 6, 7 and 8 are the inch 1350, 1410 and 1480, and a caliper
// cannot tell 23.8 x 61.2 from 23.8 x 61.3; but 1355 is held otherwise than 1350.
func TestShippedTwins(t *testing.T) {
	set := shippedSet(t)
	for _, pair := range [][2]string{{"30.2x92", "1350"}, {"30.2x106.5", "1410"}, {"34.9x106.5", "1480"}, {"27x74.6", "1300"}, {"23.8x61.2", "23.8x61.3"}} {
		a, b := mustFind(t, set, pair[0]), mustFind(t, set, pair[1])
		if !SameSize(a, b) || len(a.Twins) != 1 || a.Twins[0] != b {
			t.Errorf("%s and %s are not twins", pair[0], pair[1])
		}
	}
	for _, pair := range [][2]string{{"1350", "1355"}, {"1610", "1610-half-round"}, {"1310", "1330"}, {"22x54", "22x54.8"}} {
		if a, b := mustFind(t, set, pair[0]), mustFind(t, set, pair[1]); CouldBeTwins(a, b) {
			t.Errorf("%s and %s could be twins", pair[0], pair[1])
		}
	}
	a, b := mustFind(t, set, "22x54.8"), mustFind(t, set, "22x55")
	if SameSize(a, b) || !CouldBeTwins(a, b) {
		t.Error("22x54.8 and 22x55 are twins by their printed digits, not by the caliper's limit")
	}
}

// The farm list (agri-list: PTO shaft parts list of Agri Supply) prints its sizes 1 to
// 3 in millimetres and in fractions of an inch to 1/64; both must be one size within
// half of a 64th.
func TestFarmListAgreesWithItself(t *testing.T) {
	set := shippedSet(t)
	half64 := big.NewRat(254, 10*128)
	for size, want := range map[string][2]string{"22x54": {"55/64", "2 1/8"}, "23.8x61.3": {"15/16", "2 13/32"}, "27x70": {"1 1/16", "2 3/4"}} {
		end := mustFind(t, set, size).Ends[0]
		for i, v := range []Value{end.Cap, end.Across} {
			if len(v.Others) != 1 || v.Others[0].Quantity.Text != want[i] || v.Others[0].Sources[0].ID != "agri-list" || v.Sources[0].ID != "agri-list" {
				t.Errorf("%s: %v does not quote %s of the list", size, v.Others, want[i])
				continue
			}
			if d := difference(&v, &v.Others[0]); d.Cmp(half64) > 0 {
				t.Errorf("%s: %s and %s are %s mm apart", size, v.Quantity, v.Others[0].Quantity, d.FloatString(3))
			}
		}
	}
}

// The inch sizes are written to three decimals of fractions of an inch: each cap is a
// 64th within the rounding (trade usage: 1.062 for 1 1/16, 1.188 for 1 3/16).
func TestInchCapsAre64ths(t *testing.T) {
	set := shippedSet(t)
	for _, table := range set.Tables {
		if !table.Joint() || table.Unit != Inch || table.ID == "joints-conversion" {
			continue
		}
		for _, row := range table.Rows {
			q := row.Ends[0].Cap.Quantity
			parts := new(big.Rat).Mul(q.value(), big.NewRat(64, 1))
			near, _ := new(big.Int).SetString(parts.FloatString(0), 10)
			d := new(big.Rat).Sub(q.value(), new(big.Rat).SetFrac(near, big.NewInt(64)))
			if d.Abs(d).Cmp(big.NewRat(1, 1000)) > 0 {
				t.Errorf("%s: %s is no 64th of an inch", row.Ref(), q)
			}
		}
	}
}

// Each file lists its keys at its head, for those who never see this code.
func TestShippedFilesListTheirKeys(t *testing.T) {
	for name, src := range shippedFiles(t) {
		keys := headKeys
		switch name {
		case registryFile:
			keys = sourceKeys
		case retiredFile:
			keys = retiredKeys
		case historyFile:
			keys = slices.Concat(releaseKeys, recordedKeys)
		}
		for _, key := range keys {
			if !strings.Contains(string(src), "\n# "+key+" ") && !strings.HasPrefix(string(src), "# "+key+" ") {
				t.Errorf("%s does not explain %q", name, key)
			}
		}
	}
}

// Load with every check has 100 ms at most on the shipped tables.
func BenchmarkLoad(b *testing.B) {
	for b.Loop() {
		if _, list := Load(FS); len(list) > 0 {
			b.Fatal(list)
		}
	}
}
