package tables_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"runtime"
	"slices"
	"testing"

	"capspan/build/diag"
	"capspan/build/synth/catalogue"
	"capspan/tables"
	"capspan/tables/compare"
)

// spoiled is a catalogue of two thousand rows with a digit changed here and there, so that
// twins come apart, ids are taken twice and files break.
func spoiled(t *testing.T, seed uint64, edits int) catalogue.Files {
	t.Helper()
	files, err := catalogue.Make(catalogue.Options{Rows: 2000, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	random := rand.New(rand.NewPCG(seed, 0))
	names := files.Names()
	for range edits {
		text := files[names[random.IntN(len(names))]]
		for at := random.IntN(len(text)); at < len(text); at++ {
			if '0' <= text[at] && text[at] <= '9' {
				text[at] = '0' + (text[at]-'0'+3)%10
				break
			}
		}
	}
	return files
}

// What is told of a folder is the same on one core and on several, and read again.
func TestLoadingSideBySideTellsTheSame(t *testing.T) {
	files := spoiled(t, 3, 60)
	cores := runtime.GOMAXPROCS(1)
	alone, told := tables.Load(files.FS())
	runtime.GOMAXPROCS(max(cores, 4))
	defer runtime.GOMAXPROCS(cores)
	for range 3 {
		set, again := tables.Load(files.FS())
		if !equal(told, again) || set.Version() != alone.Version() {
			t.Fatalf("%d problems of %s and %d of %s", len(told), alone.Version().Name(), len(again), set.Version().Name())
		}
	}
	if len(told) < 20 {
		t.Errorf("only %d problems are told", len(told))
	}
}

func equal(a, b diag.List) bool {
	return slices.EqualFunc(a, b, func(p, q diag.Problem) bool { return p.String() == q.String() })
}

// A pair that is read together is what each is alone: sets, problems and what differs.
func TestLoadPair(t *testing.T) {
	whole := spoiled(t, 0, 0)
	for seed := range uint64(6) {
		older, newer := whole, spoiled(t, seed, int(seed*seed))
		if seed == 5 { // another registry: nothing may be shared
			newer["sources.yaml"] = bytes.Replace(newer["sources.yaml"], []byte("publisher: nobody"), []byte("publisher: no one"), 1)
		}
		if seed%2 == 1 {
			older, newer = newer, older
		}
		sets, problems := tables.LoadPair(older.FS(), newer.FS())
		var alone [2]*tables.Set
		for n, files := range []catalogue.Files{older, newer} {
			var told diag.List
			alone[n], told = tables.Load(files.FS())
			if !equal(problems[n], told) {
				t.Errorf("seed %d, %d: %d problems, alone %d", seed, n, len(problems[n]), len(told))
			}
			if got, want := sets[n].Version(), alone[n].Version(); got != want {
				t.Errorf("seed %d, %d: %s, alone %s", seed, n, got.Name(), want.Name())
			}
			for _, table := range sets[n].Tables {
				for _, row := range table.Rows {
					if row.Table != table || sets[n].Find(row.ID) != row && len(told) == 0 {
						t.Fatalf("%s is of the other set", row.Ref())
					}
					for _, source := range row.AllSources() {
						if !slices.Contains(sets[n].Sources, source) {
							t.Fatalf("%s names a source of the other set", row.Ref())
						}
					}
				}
			}
		}
		got, want := compare.Sets(sets[0], sets[1]), compare.Sets(alone[0], alone[1])
		if fmt.Sprint(got.Changes, got.Shifts()) != fmt.Sprint(want.Changes, want.Shifts()) {
			t.Errorf("seed %d: what differs is not what differs alone", seed)
		}
	}
}
