package build

import (
	"bytes"
	"strings"
	"testing"

	"capspan/tables"
)

// Every row has its sheet, with the ruler and the words that say how to check it; a
// drawing stands on it unless the row has nothing to draw from.
func TestPaperPages(t *testing.T) {
	files := contents(mustSite(t, Options{}))
	set, _ := tables.Load(tables.FS)
	sheets := 0
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if !table.Joint() {
				continue
			}
			sheets++
			sheet := files[pageFile(paperAddress(row.ID))]
			for _, want := range []string{`data-part="bar-mm"`, "Print at 100 %", "never “fit to page”", english.basisSentence(row)} {
				if !bytes.Contains(sheet, []byte(want)) {
					t.Errorf("the sheet of %s lacks %q", row.ID, want)
				}
			}
			drawn := bytes.Contains(sheet, []byte(`class="paper__drawing"`))
			if !drawn && !bytes.Contains(sheet, []byte("nothing true to draw")) {
				t.Errorf("the sheet of %s has no drawing and does not say why", row.ID)
			}
			if page := files[pageFile(rowAddress(row.ID))]; !bytes.Contains(page, []byte(`href="`+paperAddress(row.ID)+`"`)) {
				t.Errorf("the page of %s does not lead to its sheet", row.ID)
			}
		}
	}
	if sheets < 100 {
		t.Errorf("%d sheets, want one for each of more than a hundred rows", sheets)
	}
}

// The sheet claims no more than the chart knows.
func TestTruth(t *testing.T) {
	known, unknown := tables.Value{State: tables.Given}, tables.Value{State: tables.Unknown}
	for _, test := range []struct {
		name string
		ends []tables.End
		want string
	}{
		{"both known", []tables.End{{Cap: known, Across: known}}, "Cap diameter and across follow the chart;"},
		{"no cap", []tables.End{{Cap: unknown, Across: known}}, "Acrosses follow the chart; a cap that is not known is drawn by habit"},
		{"no across", []tables.End{{Cap: known, Across: unknown}}, "Cap diameters follow the chart; an across that is not known"},
		{"a different figure missing at each end", []tables.End{{Cap: known, Across: unknown}, {Cap: unknown, Across: known}}, "Only the figures given below"},
		{"wing", []tables.End{{Hold: tables.Value{State: tables.Given, Text: string(tables.Wing)}, Cap: tables.Value{State: tables.None}, Across: known}}, "On a wing joint the marked faces follow the chart; the shape"},
	} {
		t.Run(test.name, func(t *testing.T) {
			if got := english.truth(&tables.Row{Ends: test.ends}); !strings.HasPrefix(got, test.want) {
				t.Errorf("got %q, want it to begin %q", got, test.want)
			}
		})
	}
}
