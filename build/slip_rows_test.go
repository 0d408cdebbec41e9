package build

import (
	"encoding/json"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"capspan/tables"
)

// Of every row the page gets, by its name and by its place, the rows of its size as the whole
// file has them.
func TestSlipsOfRows(t *testing.T) {
	files, _ := mustMany(t)
	whole := map[string]slipRow{}
	bySize := map[string][]string{}
	byID := map[string]*tables.Row{}
	var rows []*tables.Row
	twins := map[*tables.Row][]string{}
	for _, size := range manySite().set.Sizes() {
		for _, row := range size {
			if len(row.Ends) == 2 {
				twins[row] = names(size)
			}
		}
	}
	conversions := 0
	for row := range manySite().joints() {
		whole[row.Ref()] = manySite().slipRow(row, manySite().threads())
		bySize[sizeKey(row)] = append(bySize[sizeKey(row)], row.Ref())
		rows = append(rows, row)
		byID[row.ID] = row
	}
	p := newPage(t, files, map[string]string{"parts/order/slips.ts": "Slips"})
	random := rand.New(rand.NewPCG(5, 5))
	for n := range 60 {
		row := rows[random.IntN(len(rows))]
		name := strings.ToUpper(row.ID)
		if len(row.Also) > 0 && n%2 == 0 {
			name = " " + strings.ToUpper(row.Also[0])
		}
		var is struct {
			Places []string
			Rows   []slipRow
		}
		p.asked = nil
		p.mustAsk(&is, `{ const slips = await Slips.openSlips("/sub/order/slips.json");
			const Places = await slips.named(a[0]);
			await slips.fetch(Places);
			return {Places, Rows: slips.chart.rows}; }`, name)
		if want := "size/" + sizeKey(row) + "/#" + row.ID; !slices.Contains(is.Places, want) {
			t.Fatalf("%q leads to %q, and not to %s", name, is.Places, want)
		}
		got := map[string]slipRow{}
		for _, r := range is.Rows {
			got[r.Ref] = r
		}
		for _, ref := range bySize[sizeKey(row)] {
			want := roundTrip(t, whole[ref])
			// Those of its size that the pieces do not tell.
			others := []string{want.ID}
			for _, place := range got[ref].Twins {
				_, id, _ := strings.Cut(place, "#")
				others = append(others, id)
				if at, ok := byID[id]; !ok || place != "size/"+sizeKey(at)+"/#"+id {
					t.Fatalf("%s is said to be one size with %s", ref, place)
				}
			}
			if len(byID[want.ID].Ends) == 2 {
				conversions++
				slices.Sort(others)
				if all := slices.Sorted(slices.Values(twins[byID[want.ID]])); !slices.Equal(others, all) {
					t.Errorf("%s is one size with %q, want %q", ref, others, all)
				}
			}
			want.Twins = got[ref].Twins
			if diff := cmp.Diff(want, got[ref]); diff != "" {
				t.Fatalf("%s (-whole +drawer):\n%s", ref, diff)
			}
		}
		if len(p.asked) > 3 || len(got) == len(whole) {
			t.Errorf("%q takes %q, with %d rows of %d", name, p.asked, len(got), len(whole))
		}
	}

	if conversions == 0 {
		t.Error("no conversion joint was asked for")
	}
	var places []string
	for _, name := range []string{"", "no such name", "__proto__", "constructor"} {
		if p.mustAsk(&places, `(await Slips.openSlips("/sub/order/slips.json")).named(a[0])`, name); len(places) > 0 {
			t.Errorf("%q is the name of %q", name, places)
		}
	}
	p.gone = func(file string) bool { return strings.HasPrefix(file, slipFolder) }
	if err := p.ask(&places, `(await Slips.openSlips("/sub/order/slips.json")).named(a[0])`, rows[0].ID+"q"); err == nil {
		t.Error("a drawer that did not come was taken for one without the name")
	}
}

func roundTrip(t *testing.T, row slipRow) slipRow {
	t.Helper()
	var out slipRow
	if err := json.Unmarshal(mustJSON(row), &out); err != nil {
		t.Fatal(err)
	}
	return out
}
