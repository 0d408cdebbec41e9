package tables

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"
)

// The open data is what encoding/json writes of the same, indented and without escaping for
// HTML, whatever stands in the chart.
func TestOpenDataIsJSON(t *testing.T) {
	sets := map[string]*Set{"the shipped chart": shippedSet(t), "nothing": {}, "measured": mustLoad(t, map[string]string{"x.yaml": measuredJoint})}
	for _, v := range mustFind(t, sets["measured"], "a").Values {
		if v.Measured != nil {
			v.Measured.Combined = &Combined{MM: "30.013", Uncertainty: "0.022", Count: 12, Readings: 14, Birge: "1.10", Consistent: true}
		}
	}
	for seed := range uint64(300) {
		sets[fmt.Sprintf("seed %d", seed)] = setByChance(rand.New(rand.NewPCG(seed, 9)))
	}
	for name, set := range sets {
		version := set.Version()
		doc := chartOf(set)
		doc.Version, doc.Date = version.Name(), version.Date
		sameJSON(t, name, chartJSONOf(t, set), doc)
		for _, table := range set.Tables {
			doc := tableOf(table)
			for _, s := range sourcesOf(table) {
				doc.Sources = append(doc.Sources, sourceOf(s))
			}
			sameJSON(t, name+"/"+table.ID, jsonOf(t, table), doc)
		}
	}
}

func sameJSON(t *testing.T, name string, got []byte, doc any) {
	t.Helper()
	var want bytes.Buffer
	if err := encode(&want, doc); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want.Bytes()) {
		t.Fatalf("%s: got\n%s\nwant\n%s", name, got, want.Bytes())
	}
}
