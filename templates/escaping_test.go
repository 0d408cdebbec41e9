package templates

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"
)

var hostile = []string{
	`<script>alert(1)</script>`,
	`"><img src=x onerror=alert(1)>`,
	`' onmouseover='alert(1)`,
	`</td></tr></table><h1>x</h1>`,
	`javascript:alert(1)`,
	`//other.example/`,
	"a\x00b<b>",
	`&lt;b&gt; & <!-- -->`,
	`</script><script>alert(1)</script>`,
	`<!--<script>`,
	"\u2028\u2029 ]]> \\u003c/script\\u003e",
	`vbscript:msgbox(1)`,
	`data:text/html,<script>alert(1)</script>`,
}

// spoiled is the table page with the words everywhere a contributor's words can stand.
func spoiled(words string) *Table {
	link := Link{Href: words, Text: words, Note: words}
	cell := Cell{Text: words, Converted: words, Note: words, Basis: words, At: words, Others: []Cell{{Text: words}}, Sources: []Link{link}, Measured: words}
	return &Table{Title: words, About: words, Version: words, Date: words,
		Columns: []Column{{ID: words, Label: words, Unit: words, Method: link}},
		Rows: []TableRow{{Row: link, Anchor: words, Note: words, Says: []string{words}, Correct: link, Also: []string{words, words}, Cells: [][]Cell{{cell, cell}}, Basis: words,
			Search: words, Caps: []string{words}, Acrosses: []string{words}}},
		Data: []Link{link}}
}

// checkTable fails when the words became markup: the elements must be those of the
// same table with harmless words, and no address may leave the site.
func checkTable(t *testing.T, words string) {
	t.Helper()
	names := func(words string) (string, []*html.Node) {
		doc := mustParse(t, string(tableHTML(spoiled(words), &Set{words: english})))
		nodes := all(doc, func(*html.Node) bool { return true })
		var list []string
		for _, n := range nodes {
			if n.Data != "a" { // a refused address leaves its words without a link
				list = append(list, n.Data)
			}
		}
		return strings.Join(list, " "), nodes
	}
	harmless, _ := names("x")
	got, nodes := names(words)
	if words != "" && got != harmless { // an absent word leaves its element out
		t.Errorf("%q became markup:\n got %s\nwant %s", words, got, harmless)
	}
	for _, n := range nodes {
		checkPolicy(t, n)
		if href := attr(n, "href"); href != "" && !plainAddress(href) {
			t.Errorf("%q became the address %q", words, href)
		}
	}
}

func TestTableEscapes(t *testing.T) {
	for _, words := range hostile {
		checkTable(t, words)
	}
}

func FuzzTableEscapes(f *testing.F) {
	for _, words := range hostile {
		f.Add(words)
	}
	f.Fuzz(func(t *testing.T, words string) {
		checkTable(t, words)
	})
}

// The templates escape by themselves; this pins that nothing passes words as markup.
func TestTemplatesEscape(t *testing.T) {
	for _, words := range hostile {
		link := Link{Href: words, Text: words, Note: words}
		cell := Cell{Text: words, Converted: words, Note: words, Basis: words, At: words, Sources: []Link{link}, Measured: words, Correct: link}
		bodies := []any{
			&Home{Ways: []Link{link}},
			&Chart{Tables: []TableCard{{Link: link, Version: words, Basis: words}}},
			spoiled(words),
			&Joint{ID: words, Title: words, Table: words, TableLink: link, Also: []string{words}, Basis: words, Note: words,
				Ends:  []JointEnd{{Title: words, Like: link, Hold: cell, Cap: cell, Across: cell, Method: []Link{link}}},
				Twins: []Link{link}, Values: []NamedCell{{Label: words, Cell: cell}},
				Sources: []SourceView{{ID: words, Kind: words, Title: words, Where: words, Trust: words}}},
			&Method{Constants: []Constant{{Says: words, Value: words, Basis: words, Source: link}}},
			&Sources{Sources: []SourceView{{ID: words, Kind: words, Title: words, Where: words}}},
			&Identify{Holds: []HoldChoice{{Hold: words, Label: words, See: words}}, Tools: []Choice{{Value: words, Label: words}}},
			&Paper{ID: words, Row: link, Lead: words, Truth: words, Basis: words,
				Ends: []JointEnd{{Title: words, Hold: cell, Cap: cell, Across: cell}}},
			&Changes{Now: words, Feed: words, Retired: []RetiredRow{{ID: words, Href: words, Why: words, To: []Link{link}}},
				Releases: []Release{{ID: words, Name: words, Date: words, Why: words, Tables: []string{words},
					Changes: []ChangeLine{{Of: link, What: words, Old: cell, New: cell, Why: words}}}}},
			&Joint{ID: words, Title: words, History: []RowChange{{Release: link, Line: ChangeLine{What: words, Old: cell, New: cell, Why: words}}}},
			&Joint{ID: words, Title: words, Measured: []MeasuredValue{{Label: words, Says: []string{words}, List: []MeasuredOnce{{Readings: words, Worth: words, Condition: words, On: words, By: words}}}}},
			&Correct{Keeper: Keeper{Edit: words, Mail: words}, Sources: words, Tables: []CorrectTable{{ID: words, Link: link, File: words, Edit: words, Values: true, Facts: words}},
				Holds: []Choice{{Value: words, Label: words}}, Kinds: []Choice{{Value: words, Label: words}}},
			&Moved{ID: words, Why: words, To: []Link{link}},
			&Text{Next: []Link{link}},
		}
		for _, body := range bodies {
			page := Page{Site: sampleSite(), Address: "/x/", Title: words, About: words, Sheet: words, Body: body, Head: hostileHead(words)}
			page.Site.Search = words
			doc := mustParse(t, mustRender(t, page))
			checkHead(t, doc, words)
			for _, n := range all(doc, func(*html.Node) bool { return true }) {
				checkPolicy(t, n)
				if href := attr(n, "href"); strings.HasPrefix(href, "javascript:") {
					t.Errorf("%T: %q became the address %q", body, words, href)
				}
			}
			if got := len(all(doc, tag("img"))) + len(all(doc, tag("b"))); got != 0 {
				t.Errorf("%T: %q became markup", body, words)
			}
			if got := len(all(doc, tag("h1"))); got != 1 {
				t.Errorf("%T: %q: got %d h1, want 1", body, words, got)
			}
		}
	}
}

// said is JSON-LD with the words as a key and as values.
type said struct {
	Type string            `json:"@type"`
	Name string            `json:"name"`
	More map[string]string `json:"more"`
	List []string          `json:"list"`
}

func hostileHead(words string) Head {
	return Head{Canonical: words, Picture: &Picture{Address: words, Alt: words},
		Data: said{Type: "HowTo", Name: words, More: map[string]string{words: words}, List: []string{words, "</script><!--"}}}
}

// checkHead reports words that left their place in the head: the metas hold them whole,
// no link leads by a forbidden scheme, and the JSON-LD reads back as what was put in.
func checkHead(t *testing.T, doc *html.Node, words string) {
	t.Helper()
	want := strings.ToValidUTF8(strings.ReplaceAll(words, "\x00", "\uFFFD"), "\uFFFD") // as HTML reads a zero (13.2.5)
	for _, property := range []string{"og:title", "og:description", "og:url", "og:image", "og:image:alt"} {
		got := all(doc, withAttr("meta", "property", property))
		if len(got) != 1 || strings.ReplaceAll(attr(got[0], "content"), "\x00", "\uFFFD") != want {
			t.Errorf("%s of %q: got %v", property, words, got)
		}
	}
	for _, link := range all(doc, tag("link")) {
		if scheme, _, found := strings.Cut(attr(link, "href"), ":"); found && strings.EqualFold(scheme, "javascript") {
			t.Errorf("%q became the address %q of a link", words, attr(link, "href"))
		}
	}
	blocks := all(doc, withAttr("script", "type", "application/ld+json"))
	if len(blocks) != 1 || blocks[0].FirstChild == nil || blocks[0].FirstChild != blocks[0].LastChild {
		t.Fatalf("%q: %d blocks of JSON-LD", words, len(blocks))
	}
	var got said
	if err := json.Unmarshal([]byte(blocks[0].FirstChild.Data), &got); err != nil {
		t.Errorf("%q: the JSON-LD cannot be read: %v", words, err)
	}
	if diff := cmp.Diff(hostileHead(words).Data, got); diff != "" {
		t.Errorf("%q: the JSON-LD reads back as (-want +got):\n%s", words, diff)
	}
}

func TestAt(t *testing.T) {
	tests := []struct{ base, address, want string }{
		{"/", "/chart/", "/chart/"},
		{"/sub/", "/chart/", "/sub/chart/"},
		{"/", "/", "/"},
		{"/sub/", "/", "/sub/"},
		{"/", "//other.example/", "/other.example/"},
	}
	for _, tt := range tests {
		if got := at(tt.base, tt.address); got != tt.want {
			t.Errorf("at(%q, %q): got %q, want %q", tt.base, tt.address, got, tt.want)
		}
	}
}
