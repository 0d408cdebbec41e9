package compare

import (
	"bytes"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"
	"golang.org/x/net/html"
)

// What a stranger writes into a note stays words, to a reader of CommonMark and of the
// marks that forges add.
func TestMarkdownStaysWords(t *testing.T) {
	for _, words := range []string{
		`<script>alert(1)</script>`, `[x](javascript:alert(1))`, `![x](https://other.example/x.png)`, "`code`", `**bold** _it_ ~~gone~~`,
		`| a | b |`, `@somebody look at #1`, `# head`, `- item`, `1. item`, `&lt;b&gt;`, `\*x`, `https://other.example/`, `<https://other.example/>`,
	} {
		var b bytes.Buffer
		d := &Diff{Changes: []Change{{Kind: Changed, Table: words, Row: words, Column: words, Why: words, To: []string{words},
			Parts: []Part{{What: "note", Old: Said{Text: words, Converted: words}, New: Said{Text: words}}}}}, Form: []string{words}}
		if err := d.WriteMarkdown(&b); err != nil {
			t.Fatal(err)
		}
		if strings.ContainsAny(b.String(), "@#") && strings.Contains(strings.ReplaceAll(strings.ReplaceAll(b.String(), "&#", ""), "### ", ""), "#") {
			t.Errorf("%q: a number or a name is left: %s", words, &b)
		}
		var page bytes.Buffer
		if err := goldmark.New(goldmark.WithExtensions(extension.GFM)).Convert(b.Bytes(), &page); err != nil {
			t.Fatal(err)
		}
		doc, err := html.Parse(&page)
		if err != nil {
			t.Fatal(err)
		}
		text := ""
		for n := range doc.Descendants() {
			switch {
			case n.Type == html.TextNode:
				text += n.Data
			case n.Type == html.ElementNode && strings.Contains(" a img script code em del table h1 ", " "+n.Data+" "):
				t.Errorf("%q became <%s>: %s", words, n.Data, &b)
			}
		}
		if strings.Count(text, words) < 6 {
			t.Errorf("%q is not shown as it is: %s", words, text)
		}
	}
}
