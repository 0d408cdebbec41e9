package compare

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"
	"testing/fstest"

	"capspan/build/synth/catalogue"
	"capspan/tables"
)

// manyFiles is an invented catalogue of more rows than are ever compared one by one.
func manyFiles(t *testing.T) fstest.MapFS {
	t.Helper()
	made, err := catalogue.Make(catalogue.Options{Rows: 2100, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	out := fstest.MapFS{}
	for name, data := range made {
		out[name] = &fstest.MapFile{Data: data}
	}
	return out
}

// With many rows, too, a diff is empty exactly when both charts have the same hash, two
// issues read together are those read one by one, and what comes together and apart is what
// comparing every joint with every other finds.
func TestManyRowsArePlainlyCompared(t *testing.T) {
	files := manyFiles(t)
	base := mustLoad(t, files)
	random := rand.New(rand.NewPCG(9, 3))
	changed, same, pairs := 0, 0, 0
	for n := range 40 {
		e := edits[n%len(edits)]
		edited, where := edit(files, e.was, e.is, random)
		if edited == nil {
			continue
		}
		set, problems := tables.Load(edited)
		if problems.Blocked() {
			continue
		}
		together, found := tables.LoadPair(files, edited)
		if found[0].Blocked() || found[1].Blocked() || together[0].Version() != base.Version() || together[1].Version() != set.Version() {
			t.Fatalf("%s: read together, the issues are others", where)
		}
		d := Sets(together[0], together[1])
		if alike := base.Version().Hash == set.Version().Hash; d.Empty() != alike {
			t.Errorf("%s: same hash %t, empty %t", where, alike, d.Empty())
		} else if alike {
			same++
		} else {
			changed++
		}
		for _, side := range []struct {
			set, other *tables.Set
		}{{d.older, d.newer}, {d.newer, d.older}} {
			moved := d.moved(side.set, side.other, side.set == d.older)
			got, want := d.close(side.set, moved), closePlainly(d, side.set, moved)
			if !slices.Equal(got, want) {
				t.Errorf("%s: %d pairs, plainly %d", where, len(got), len(want))
			}
			pairs += len(want)
		}
	}
	if changed < 5 || same < 2 || pairs == 0 {
		t.Errorf("%d edits changed something, %d nothing, %d pairs were close: too few to prove anything", changed, same, pairs)
	}
}

func closePlainly(d *Diff, set *tables.Set, moved map[*tables.Row]bool) []Pair {
	var rows []*tables.Row
	for _, t := range set.Tables {
		rows = append(rows, t.Rows...)
	}
	seen := map[Pair]bool{}
	var out []Pair
	for _, a := range rows {
		if !moved[a] {
			continue
		}
		for _, b := range rows {
			if a == b || len(a.Ends) == 0 || len(b.Ends) == 0 || !tables.SameSize(a, b) {
				continue
			}
			if p := d.pair(set, a, b); !seen[p] {
				seen[p] = true
				out = append(out, p)
			}
		}
	}
	slices.SortFunc(out, func(p, q Pair) int { return cmp.Or(cmp.Compare(p.A, q.A), cmp.Compare(p.B, q.B)) })
	return out
}
