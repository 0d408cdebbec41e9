package build

import (
	"bytes"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// In another language the chart speaks it wherever a reader meets it, and what has no words
// in it is marked as the English it is. What programs read, and what corrections are written
// into, stays as it is.
func TestSpokenTables(t *testing.T) {
	all, problems := load(inEnglish(), Options{Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	in := all[0]
	left := map[string]bool{"Metric joints": true, "a seller's listing, not a drawing": true, "straps are used once": true, "Joint series": true, "plain": true,
		"Flanges after ISO 8667 whose faces carry teeth of 70 degrees in a cross.": true}
	texts := map[string]bool{}
	in.speakTables(func(english string) string {
		texts[english] = true
		if left[english] {
			return english
		}
		return "«" + english + "»"
	})
	s := newSite(in, Options{})
	s.bundle()
	if problems := s.fillPages(); problems.Blocked() {
		t.Fatal(problems)
	}
	if problems := s.renderPages(); problems.Blocked() {
		t.Fatal(problems)
	}
	if problems := s.exportData(); problems.Blocked() {
		t.Fatal(problems)
	}
	marked := map[string]bool{}
	for _, f := range s.files {
		if strings.HasPrefix(f.Path, dataFolder) {
			if bytes.Contains(f.Bytes, []byte("«")) {
				t.Errorf("%s is not as the tables are written", f.Path)
			}
			continue
		}
		if !strings.HasSuffix(f.Path, ".html") || strings.HasPrefix(f.Path, "driveline/") || strings.HasPrefix(f.Path, "measure/") {
			continue // the calculations and the guide have texts of their own
		}
		for _, shown := range shownIn(t, f.Bytes) {
			said := shown.text
			for _, written := range []string{strings.TrimSuffix(said, "."), strings.ToLower(said[:1]) + strings.TrimSuffix(said[1:], ".")} {
				if texts[written] {
					said = written
				}
			}
			switch {
			case shown.english && left[said]:
				marked[said] = true
			case shown.english:
				t.Errorf("%s: %q is marked as English", f.Path, shown.text)
			case texts[said] && len(strings.Fields(said)) > 2 || left[said] && said != "plain":
				t.Errorf("%s: %q is in another language than the page", f.Path, shown.text)
			}
		}
	}
	for text := range left {
		if !marked[text] {
			t.Errorf("%q is marked nowhere", text)
		}
	}
	files := contents(Output{Files: s.files})
	for stem, want := range map[string]string{
		"assets/part-pto-shafts.":     `"label":"«Diameter»"`,
		"assets/chart.":               `«Inch-series joints»`,
		"assets/slips.":               `"label":"«bearing plate bolt»"`,
		"assets/correct/fasteners.":   `"is":"bearing plate bolt"`,
		"assets/correct/joints-wing.": `"label":"«Key width»"`,
	} {
		found := false
		for path, text := range files {
			found = found || strings.HasPrefix(path, stem) && strings.Contains(string(text), want)
		}
		if !found {
			t.Errorf("%s*.json lacks %s", stem, want)
		}
	}
	if table, err := s.guideTable("flanges-male", nil); err != nil || !strings.Contains(string(table), "«Bolt circle»") {
		t.Errorf("a table in the guide: %v, %.300s", err, table)
	}
}

// seenText is a text of a page, and whether it says that it is English on a page that is not.
type seenText struct {
	text    string
	english bool
}

func shownIn(t *testing.T, page []byte) []seenText {
	t.Helper()
	doc, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	var list []seenText
	var walk func(n *html.Node, english bool)
	walk = func(n *html.Node, english bool) {
		if n.Type == html.ElementNode {
			if n.Data == "script" || n.Data == "title" {
				return
			}
			for _, a := range n.Attr {
				english = english || a.Key == "lang" && n.Data != "html"
			}
		}
		if text := strings.TrimSpace(n.Data); n.Type == html.TextNode && text != "" {
			list = append(list, seenText{text, english})
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c, english)
		}
	}
	walk(doc, false)
	return list
}
