package templates

import (
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// Reading a page back: by element, never by the text of the markup.

func mustParse(t *testing.T, page string) *html.Node {
	t.Helper()
	doc, err := html.Parse(strings.NewReader(page))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// all returns the elements that fit, in document order.
func all(root *html.Node, fits func(*html.Node) bool) []*html.Node {
	var found []*html.Node
	for n := range root.Descendants() {
		if n.Type == html.ElementNode && fits(n) {
			found = append(found, n)
		}
	}
	return found
}

func tag(name string) func(*html.Node) bool {
	return func(n *html.Node) bool { return n.Data == name }
}

func withAttr(name, key, value string) func(*html.Node) bool {
	return func(n *html.Node) bool { return n.Data == name && attr(n, key) == value }
}

func hasAttr(key string) func(*html.Node) bool {
	return func(n *html.Node) bool { return attr(n, key) != "" }
}

func attr(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func text(n *html.Node) string {
	var b strings.Builder
	for d := range n.Descendants() {
		if d.Type == html.TextNode {
			b.WriteString(d.Data)
		}
	}
	return strings.TrimSpace(b.String())
}

// cells joins the text of a row's cells.
func cells(row *html.Node) string {
	var texts []string
	for _, n := range all(row, func(n *html.Node) bool { return n.Data == "td" || n.Data == "th" }) {
		texts = append(texts, text(n))
	}
	return strings.Join(texts, " ")
}
