package build

import (
	"encoding/json"
	"io/fs"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"capspan/tables"
)

// correction is what the page makes of a row: its facts, and the patch of a new cell.
type correctedRow struct {
	Row   map[string]any
	Patch string
}

// What comes of the drawers is what the whole facts of a table say, row by row and cell by
// cell, and the patch that comes of it is the same to the byte.
func TestCorrectionsOfRows(t *testing.T) {
	src, err := madeMany()
	if err != nil {
		t.Fatal(err)
	}
	files, set := mustMany(t)
	p := newPage(t, files, map[string]string{"parts/correct/rows.ts": "Facts", "parts/correct/correction.ts": "correction"})
	p.run(`var byRow = Facts.open("/sub/contribute/correct/index.json");
		function made(facts, id, column) {
			const row = facts.rows.find((r) => r.id === id);
			if (row === undefined || Object.keys(row.cells).length === 0) return {};
			const braces = correction.cellText({...row.cells[column], is: "999"});
			return {Row: row, Patch: correction.patchOf([correction.editCell(facts, row.cells[column], braces)])};
		}`)
	random := rand.New(rand.NewPCG(3, 3))
	compared := 0
	for _, table := range set.Tables {
		whole, err := factsOf(src.Tables, table)
		if err != nil {
			t.Fatal(err)
		}
		p.mustAsk(new(int), "{ globalThis.whole = a[0]; return 0; }", whole)
		for n := range 14 {
			row := whole.Rows[random.IntN(len(whole.Rows))]
			switch n { // the first and the last, whose lines stand at an end
			case 0:
				row = whole.Rows[0]
			case 1:
				row = whole.Rows[len(whole.Rows)-1]
			}
			for column := range row.Cells {
				var is, want correctedRow
				p.mustAsk(&is, "made(await byRow.table(a[0], a[1]), a[1], a[2])", table.ID, row.ID, column)
				p.mustAsk(&want, "made(whole, a[0], a[1])", row.ID, column)
				if diff := cmp.Diff(want, is); diff != "" || want.Patch == "" {
					t.Fatalf("%s/%s %s (-whole +drawer):\n%s", table.ID, row.ID, column, diff)
				}
				compared++
			}
			if len(row.Cells) == 0 {
				var is map[string]any
				p.mustAsk(&is, "made(await byRow.table(a[0], a[1]), a[1], 'cap')", table.ID, row.ID)
				if len(is) > 0 {
					t.Errorf("%s/%s has no cell of its own, and %v can be corrected", table.ID, row.ID, is)
				}
			}
		}
	}
	if compared < 200 {
		t.Errorf("%d cells compared", compared)
	}

	var none struct{ Rows []json.RawMessage }
	for _, id := range []string{"", "no-such-row", "__proto__"} {
		if p.mustAsk(&none, "byRow.table(a[0], a[1])", "joints-inch", id); len(none.Rows) > 0 {
			t.Errorf("%q is a row", id)
		}
	}
	// A drawer that does not come is no row that is not there.
	p.gone = func(file string) bool { return strings.HasPrefix(file, correctFolder+"rows/") }
	if err := p.ask(&none, "byRow.table(a[0], a[1])", set.Tables[0].ID, set.Tables[0].Rows[0].ID+"q"); err == nil {
		t.Error("a drawer that did not come was taken for one without the row")
	}
}

// factsOf are the facts of one table, as a small chart has them in one file.
func factsOf(fsys fs.FS, t *tables.Table) (tableFacts, error) {
	facts, err := headFactsOf(fsys, t)
	if err == nil {
		facts.addRows(t)
	}
	return facts, err
}
