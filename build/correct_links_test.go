package build

import (
	"bytes"
	"encoding/json"
	"net/url"
	"path"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// Every value on every row's page, and every row of the tables without pages, has a way to
// its correction, and each way names a cell that the page of corrections knows.
func TestEveryValueLeadsToItsCorrection(t *testing.T) {
	files := contents(mustSite(t, Options{Base: "/sub/"}))
	facts := map[string]tableFacts{}
	for name, content := range files {
		if strings.HasPrefix(name, correctFolder) && !strings.Contains(name, "_sources") {
			var one tableFacts
			if err := json.Unmarshal(content, &one); err != nil {
				t.Fatalf("%s: %v", name, err)
			}
			facts[one.Table] = one
		}
	}
	known := func(table, row, column string) bool {
		for _, r := range facts[table].Rows {
			if _, own := r.Cells[column]; r.ID == row && (own || column == "") {
				return true
			}
		}
		return false
	}
	links := 0
	for name, content := range files {
		kind := strings.Split(name, "/")[0]
		if path.Base(name) != "index.html" || strings.Contains(name, "/paper/") || kind != "joint" && kind != "chart" {
			continue
		}
		doc, err := html.Parse(bytes.NewReader(content))
		if err != nil {
			t.Fatal(err)
		}
		here, values, names := 0, 0, map[string]bool{}
		for n := range doc.Descendants() {
			if n.Data == "table" && kind == "joint" && attribute(n, "class") == "figures" {
				values += strings.Count(markup(n), `<th scope="row">`)
			}
			if n.Data == "tr" && strings.HasPrefix(attribute(n, "id"), "row-") {
				values++
			}
			if n.Data != "a" || attribute(n, "class") != "correct" {
				continue
			}
			here++
			to, err := url.Parse(attribute(n, "href"))
			if err != nil || to.Path != "/sub"+correctAddress {
				t.Errorf("%s: %s", name, attribute(n, "href"))
				continue
			}
			at, _ := url.ParseQuery(to.Fragment)
			if !known(at.Get("table"), at.Get("row"), at.Get("column")) {
				t.Errorf("%s: %s names no value", name, to)
			}
			if label := attribute(n, "aria-label"); !strings.HasPrefix(label, n.FirstChild.Data+": ") || names[to.Fragment+label] {
				t.Errorf("%s: %q does not say what it corrects, or says it twice", name, label)
			} else {
				names[to.Fragment+label] = true
			}
		}
		if kind == "joint" && strings.Contains(string(content), `http-equiv="refresh"`) {
			continue
		}
		if here != values {
			t.Errorf("%s: %d values, %d ways to correct one", name, values, here)
		}
		links += here
	}
	if links < 400 {
		t.Errorf("only %d ways", links)
	}
}

func markup(n *html.Node) string {
	var b strings.Builder
	if err := html.Render(&b, n); err != nil {
		return ""
	}
	return b.String()
}
