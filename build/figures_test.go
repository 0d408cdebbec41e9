package build

import (
	"strings"
	"testing"

	"capspan/tables"
)

func TestFigures(t *testing.T) {
	words := mustWords(t, "qaa")
	for text, want := range map[string]string{
		"30.2 mm": "30,2 mm", "1.062 in (≈ 26.97 mm)": "1,062 in (≈ 26,97 mm)", ".5 in": ",5 in", "26-35 lbf.ft": "26-35 lbf.ft",
		"12 mm.": "12 mm.", "1.2.3": "1,2,3", "": "", "3 1/8 in": "3 1/8 in",
	} {
		if got := words.figures(text); got != want {
			t.Errorf("%q is written %q, want %q", text, got, want)
		}
		if got := english.figures(text); got != text {
			t.Errorf("%q is written %q in English", text, got)
		}
	}
}

// mustWords is a site that knows the words of the made-up language and nothing else.
func mustWords(t *testing.T, language string) *site {
	t.Helper()
	part := readLanguage(bilingual(t), language, Options{}, func() bool { return false })
	if part.problems.Blocked() {
		t.Fatal(part.problems)
	}
	return &site{inputs: part.inputs}
}

// Figures on the pages have the sign of the language; what scripts read, addresses, names
// and data keep the point.
func TestFiguresOfPages(t *testing.T) {
	files := contents(mustBilingual(t))
	for name, wants := range map[string][]string{
		"joint/23.8x61.3/index.html":   {"<h1>23.8x61.3</h1>", "#table=joints-farm&amp;row=23.8x61.3&amp;column=cap"},
		"chart/joints-inch/index.html": {`data-caps="26.9748"`, "1.062 in 1,062 in"},
		"measure/caliper/index.html":   {"26,98", "26 mm + 49 × 0,02 mm = 26,98 mm"},
		"about/method/index.html":      {"0,03"},
	} {
		for _, want := range wants {
			if !strings.Contains(string(files[other+name]), want) {
				t.Errorf("%s lacks %q", other+name, want)
			}
		}
	}
	set, _ := tables.Load(tables.FS)
	seen := 0
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if !table.Joint() || row.Note != "" { // notes have translators of their own
				continue
			}
			for _, name := range []string{"joint/" + row.ID + "/index.html", "joint/" + row.ID + "/paper/index.html"} {
				text := crawl(t, files[other+name]).text
				for _, end := range row.Ends {
					for _, v := range []tables.Value{end.Cap, end.Across} {
						figure := v.Quantity.String()
						local := strings.Replace(figure, ".", ",", 1)
						if v.State != tables.Given || local == figure {
							continue
						}
						seen++
						if strings.Contains(text, figure) || !strings.Contains(text, local) {
							t.Errorf("%s shows %q, want %q", other+name, figure, local)
						}
					}
				}
			}
		}
	}
	if seen < 100 {
		t.Errorf("only %d figures were looked at", seen)
	}
}
