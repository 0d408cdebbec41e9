package build

import (
	"encoding/json"
	"io/fs"
	"strconv"
	"testing"
	"testing/fstest"

	"github.com/dop251/goja"

	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// everyAddress is put beside the core: the address of each row of a chart in pieces.
const everyAddress = `
import { add, nameOf, open, type Pieced } from "./pieces";
import type { Directory, Entries, Piece, Roll } from "./pieces-types";
import { addressOf } from "./size-key";

export function everyAddress(directory: Directory, files: Record<string, Piece | Roll | Entries>): Record<string, string> {
  const chart: Pieced = open(directory);
  const { pieces, parts } = chart.files;
  const take = (n: number): void => add(chart, n, files[nameOf(chart, n) ?? ""]!);
  for (let n = 0; n < parts; n++) take(2 * pieces + n);
  for (let n = 0; n < 2 * pieces; n++) take(n);
  const at: Record<string, string> = {};
  for (const part of chart.here.values()) for (const row of part.rows()) at[row.row.ref] = addressOf(row);
  return at;
}
`

// The core leads from a row of a chart in pieces to the page that the build makes for it.
func TestAddressesOfSizesAreAlike(t *testing.T) {
	for _, c := range []struct {
		name string
		set  func(*testing.T) *tables.Set
	}{{"shipped", shippedSet}, {"invented", func(t *testing.T) *tables.Set { return manySet(t) }}} {
		t.Run(c.name, func(t *testing.T) {
			set := c.set(t)
			at := addressesInPieces(t, Chart(set))
			n := 0
			for _, table := range set.Tables {
				for _, row := range table.Rows {
					if !table.Joint() {
						continue
					}
					n++
					if want, got := sizeAddress(sizeKey(row))+"#"+row.ID, "/"+at[row.Ref()]; got != want {
						t.Errorf("%s: the core says %s, the build %s", row.Ref(), got, want)
					}
				}
			}
			if n == 0 || n != len(at) {
				t.Errorf("the core has %d rows, the chart %d", len(at), n)
			}
		})
	}
}

func shippedSet(t *testing.T) *tables.Set {
	t.Helper()
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return set
}

func addressesInPieces(t *testing.T, chart matcher.Chart) map[string]string {
	t.Helper()
	pieces := map[string]matcher.Piece{}
	directory, err := matcher.Split(chart, 50, func(p matcher.Piece) (string, error) {
		name := strconv.Itoa(len(pieces))
		pieces[name] = p
		return name, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	core, problems := static.Core(static.FS)
	beside := fstest.MapFS{"matcher/every-address.ts": {Data: []byte(everyAddress)}}
	names, err := fs.Glob(static.FS, "matcher/*.ts")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		text, err := fs.ReadFile(static.FS, name)
		if err != nil {
			t.Fatal(err)
		}
		beside[name] = &fstest.MapFile{Data: text}
	}
	script, more := static.Script(beside, "matcher/every-address.ts", "Every")
	problems.Add(more...)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	vm := goja.New()
	for _, text := range [][]byte{core, script} {
		if _, err := vm.RunString(string(text)); err != nil {
			t.Fatal(err)
		}
	}
	given, err := json.Marshal([]any{directory, pieces})
	if err != nil {
		t.Fatal(err)
	}
	if err := vm.Set("given", string(given)); err != nil {
		t.Fatal(err)
	}
	said, err := vm.RunString("JSON.stringify(Every.everyAddress(...JSON.parse(given)))")
	if err != nil {
		t.Fatal(err)
	}
	at := map[string]string{}
	if err := json.Unmarshal([]byte(said.String()), &at); err != nil {
		t.Fatal(err)
	}
	return at
}
