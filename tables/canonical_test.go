package tables

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"testing"
)

// reflected is what the hash is made of, all of it written by encoding/json: the rule that
// the writing by hand is held to, so that no chart changes its name.
func reflected(t testing.TB, s *Set) []byte {
	t.Helper()
	doc := chartOf(s)
	for _, table := range doc.Tables {
		for _, row := range table.Rows {
			for id, v := range row.Values {
				v.Combined = nil
				row.Values[id] = v
			}
			for i := range row.Ends {
				end := &row.Ends[i]
				end.Hold.Combined, end.Cap.Combined, end.Across.Combined = nil, nil, nil
			}
		}
	}
	var b bytes.Buffer
	if err := json.NewEncoder(&b).Encode(doc); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func sameCanonical(t *testing.T, name string, s *Set) {
	t.Helper()
	var b bytes.Buffer
	if err := s.writeCanonical(&b); err != nil {
		t.Fatal(err)
	}
	if got, want := b.Bytes(), reflected(t, s); !bytes.Equal(got, want) {
		at := 0
		for at < len(got) && at < len(want) && got[at] == want[at] {
			at++
		}
		from := max(at-80, 0)
		t.Fatalf("%s: differs at byte %d:\n got …%s\nwant …%s", name, at, got[from:min(at+80, len(got))], want[from:min(at+80, len(want))])
	}
}

func TestCanonicalIsJSON(t *testing.T) {
	sameCanonical(t, "the shipped chart", shippedSet(t))
	sameCanonical(t, "nothing", &Set{})
	measured := mustLoad(t, map[string]string{"x.yaml": measuredJoint})
	for _, v := range mustFind(t, measured, "a").Values {
		if v.Measured != nil {
			v.Measured.Combined = &Combined{MM: "30.013", Count: 1}
		}
	}
	sameCanonical(t, "measured", measured)
	for seed := range uint64(300) {
		sameCanonical(t, fmt.Sprintf("seed %d", seed), setByChance(rand.New(rand.NewPCG(seed, 9))))
	}
}

// The names of issues are printed and stand in addresses: the very name of a chart that
// never changes.
func TestVersionStays(t *testing.T) {
	set := mustLoad(t, map[string]string{"x.yaml": measuredJoint})
	if got, want := set.Version().Name(), "2026-11-25-a048bec"; got != want {
		t.Errorf("the chart is called %s, and was %s", got, want)
	}
}

// setByChance is a set that no file would give, with everything in it that JSON can trip over.
func setByChance(random *rand.Rand) *Set {
	pick := func(n int) bool { return random.IntN(n) == 0 }
	text := func() string {
		words := []string{"", "plain", `"`, `\`, "<b>&amp;</b>", "é", "\u2028", "\xff\xfe", "\x01\n\t", "1 3/16", "日本", "\x7f"}
		return words[random.IntN(len(words))] + words[random.IntN(len(words))]
	}
	texts := func() []string {
		var list []string
		for range random.IntN(3) {
			list = append(list, text())
		}
		return list
	}
	sources := []*Source{{ID: "a", Title: text(), Trust: text()}, {ID: text()}, {ID: "c", Where: text()}}
	named := func() []*Source { return sources[:random.IntN(len(sources)+1)] }
	quantity := func() Quantity {
		all := []string{"1 3/16", "28.50", "7", "0.938", "55/64", "12.0", "0"}
		units := []Unit{Inch, Millimetre, PoundFoot, NewtonMetre, NoUnit}
		for {
			if q, err := ParseQuantity(all[random.IntN(len(all))], units[random.IntN(len(units))]); err == nil {
				return q
			}
		}
	}
	var value func(deep int) Value
	value = func(deep int) Value {
		v := Value{State: State(random.IntN(3)), Text: text(), Faces: Faces(text()), Basis: Basis(text()), Sources: named(), At: text()}
		if pick(2) {
			v.Quantity, v.Text = quantity(), ""
		}
		if pick(4) {
			v.Quantity, v.To = quantity(), quantity()
		}
		if pick(3) {
			v.FacesBasis = Basis(text())
		}
		if pick(5) {
			v.Measured = &Measurements{List: []Measurement{{Readings: []Quantity{quantity(), quantity()}, Tool: text(), By: text()}, {}}[:random.IntN(3)],
				Combined: &Combined{MM: text()}}
		}
		for range random.IntN(deep + 1) {
			other := value(deep - 1)
			if other.Measured != nil {
				other.Measured.Combined = nil // nothing is reckoned of those
			}
			v.Others = append(v.Others, other)
		}
		return v
	}
	set := &Set{Sources: sources}
	var rows []*Row
	for range random.IntN(4) {
		table := &Table{ID: text(), Title: text(), About: text(), Version: Version{Number: "1.0.0", Date: text()}, Unit: Inch, Cautions: texts()}
		for _, id := range []string{"z", "cap", "a&b", "hold"}[:random.IntN(5)] {
			table.Columns = append(table.Columns, Column{ID: id, Label: text(), Kind: Length, Least: quantity(), Range: pick(2)})
		}
		for range random.IntN(4) {
			row := &Row{Table: table, ID: text(), Also: texts(), Values: map[string]Value{}, Basis: Basis(text()), Sources: named(), At: text(), Note: text()}
			for _, c := range table.Columns {
				if !pick(4) {
					row.Values[c.ID] = value(2)
				}
			}
			for range random.IntN(3) {
				end := End{Hold: value(1), Cap: value(1), Across: value(1)}
				if len(rows) > 0 && pick(2) {
					end.Like = rows[random.IntN(len(rows))]
				}
				row.Ends = append(row.Ends, end)
			}
			row.Twins = rows[:random.IntN(len(rows)+1)]
			rows = append(rows, row)
			table.Rows = append(table.Rows, row)
		}
		set.Tables = append(set.Tables, table)
	}
	for range random.IntN(3) {
		set.Retired = append(set.Retired, Retired{ID: text(), To: texts(), Why: text()})
	}
	return set
}
