package templates

import (
	"io/fs"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
	"text/template/parse"
	"unicode"

	"golang.org/x/net/html"

	"capspan/templates/words"
)

// Nothing a reader is told stands in a template itself, or a second language would have
// to change it. These may, for the reason given.
var sameEverywhere = map[string]string{
	"Capspan":   "the name of the program",
	"· Capspan": "the name of the program",
}

// told are the attributes that a reader sees or hears.
var told = map[string]bool{"aria-label": true, "title": true, "placeholder": true, "alt": true, "aria-description": true}

func TestNoWordsInTemplates(t *testing.T) {
	files, err := fs.Glob(FS, "*.html")
	if err != nil || len(files) < 10 {
		t.Fatalf("%d templates, %v", len(files), err)
	}
	for _, name := range files {
		t.Run(name, func(t *testing.T) {
			source, err := fs.ReadFile(FS, name)
			if err != nil {
				t.Fatal(err)
			}
			for _, found := range literalWords(t, name, string(source)) {
				t.Errorf("%q stands in the template: put it into words/en and say it by its key", found)
			}
		})
	}
}

// The test above finds each kind of literal.
func TestNoWordsInTemplatesFinds(t *testing.T) {
	for source, want := range map[string]string{
		`<p>Words</p>`:                                 "Words",
		`<p>{{.Title}} and {{.About}}</p>`:             "and",
		`<p>{{if .Title}}one{{else}}two{{end}}</p>`:    "onetwo",
		`<input placeholder="27 x 82">`:                "27 x 82",
		`<b aria-label="{{.Title}}, table"></b>`:       ", table",
		`{{define "x"}}<i title="Close">×</i>{{end}}`:  "Close",
		`{{template "x" (links "More of it" "" nil)}}`: "More of it",
		`{{counted 3 "row"}}`:                          "row",
		`<title>{{.Title}} · Capspan</title>`:          "",
		`<p class="a b" data-x="y z">≈ {{.Title}}</p>`: "",
		`<p>{{word "joint.also" "names" .Title}}</p>`:  "",
	} {
		if got := strings.Join(literalWords(t, "x.html", source), "|"); got != want {
			t.Errorf("%s: got %q, want %q", source, got, want)
		}
	}
}

// literalWords returns what a template says without the catalogue.
func literalWords(t *testing.T, name, source string) []string {
	t.Helper()
	tree := parse.New(name)
	tree.Mode = parse.SkipFuncCheck
	trees := map[string]*parse.Tree{}
	if _, err := tree.Parse(source, "", "", trees); err != nil {
		t.Fatal(err)
	}
	var found []string
	for _, tree := range trees {
		var markup strings.Builder
		walk(tree.Root, func(n parse.Node) {
			switch n := n.(type) {
			case *parse.TextNode:
				markup.Write(n.Text)
			case *parse.CommandNode:
				found = append(found, literalArguments(n)...)
			}
		})
		found = append(found, literalMarkup(markup.String())...)
	}
	return found
}

// literalMarkup finds letters between tags and in the attributes that are told.
func literalMarkup(markup string) []string {
	var found []string
	note := func(text string) {
		text = strings.TrimSpace(text)
		if _, same := sameEverywhere[text]; !same && strings.ContainsFunc(text, unicode.IsLetter) {
			found = append(found, text)
		}
	}
	for z := html.NewTokenizer(strings.NewReader(markup)); z.Next() != html.ErrorToken; {
		token := z.Token()
		if token.Type == html.TextToken {
			note(token.Data)
		}
		for _, a := range token.Attr {
			if told[a.Key] {
				note(a.Val)
			}
		}
	}
	return found
}

var twoWords = regexp.MustCompile(`\pL[,.:]? \pL`)

// literalArguments finds words given to a function: several, or one that is counted.
func literalArguments(call *parse.CommandNode) []string {
	var found []string
	for n, arg := range call.Args {
		text, ok := arg.(*parse.StringNode)
		if ok && (twoWords.MatchString(text.Text) || n > 0 && call.Args[0].String() == "counted") {
			found = append(found, text.Text)
		}
	}
	return found
}

// walk visits every node in the order of the source.
func walk(n parse.Node, visit func(parse.Node)) {
	branch := func(b *parse.BranchNode) {
		walk(b.Pipe, visit)
		walk(b.List, visit)
		if b.ElseList != nil {
			walk(b.ElseList, visit)
		}
	}
	switch n := n.(type) {
	case *parse.ListNode:
		for _, inner := range n.Nodes {
			walk(inner, visit)
		}
	case *parse.IfNode:
		branch(&n.BranchNode)
	case *parse.WithNode:
		branch(&n.BranchNode)
	case *parse.RangeNode:
		branch(&n.BranchNode)
	case *parse.ActionNode:
		walk(n.Pipe, visit)
	case *parse.TemplateNode:
		if n.Pipe != nil {
			walk(n.Pipe, visit)
		}
	case *parse.PipeNode:
		for _, command := range n.Cmds {
			walk(command, visit)
		}
	case *parse.CommandNode:
		visit(n)
		for _, arg := range n.Args {
			if inner, ok := arg.(*parse.PipeNode); ok {
				walk(inner, visit)
			}
		}
	default:
		visit(n)
	}
}

// Words are put where they are said, as text, and values by where they stand.
func TestSayInTemplates(t *testing.T) {
	fsys := fstest.MapFS{
		"words/en/x.yaml": {Data: []byte(`tag: "<b>\"Fish\" & 'chips'</b>"
named: "{id}'s page"
rows: {one: "1 row", other: "{n} rows"}
prose: "Go to [the <list>](list), **now & here**, {chart}."
`)},
		"frame.html": {Data: []byte(`<p>{{.Main}}</p>`)},
		"search.html": {Data: []byte(`{{define "num"}}<i>{{.}}</i>{{end -}}
<b title="{{word "x.tag"}}">{{word "x.tag"}}</b>
<b title="{{word "x.named" "id" .Title}}">{{word "x.named" "id" .Title}}</b>
{{with word "x.named" "id" .Title}}{{.}}{{end}} {{word "x.rows" "n" (len .Title)}} {{printf "%q" (word "x.rows" "n" 1)}}
{{prose "x.prose" "list" (at .Address) "chart" (part "num" .Title)}}`)},
	}
	english, problems := words.Load(fsys, nil, words.English)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	set, err := New(fsys, english)
	if err != nil {
		t.Fatal(err)
	}
	if problems := english.Check(set.uses); len(problems) > 0 {
		t.Error(problems)
	}
	var b strings.Builder
	if err := set.Render(&b, Page{Site: Site{Base: "/sub/"}, Address: `/a"b/`, Title: `<i>"`, Body: &Search{}}); err != nil {
		t.Fatal(err)
	}
	want := `<p><b title="&lt;b&gt;&#34;Fish&#34; &amp; 'chips'&lt;/b&gt;">&lt;b&gt;&#34;Fish&#34; &amp; 'chips'&lt;/b&gt;</b>
<b title="&lt;i&gt;&#34;'s page">&lt;i&gt;&#34;'s page</b>
&lt;i&gt;&#34;&#39;s page 4 rows &#34;1 row&#34;
Go to <a href="/sub/a%22b/">the &lt;list&gt;</a>, <strong>now &amp; here</strong>, <i>&lt;i&gt;&#34;</i>.</p>`
	if b.String() != want {
		t.Errorf("got\n%s\nwant\n%s", &b, want)
	}
}

func TestSayRefuses(t *testing.T) {
	for source, want := range map[string]string{
		`{{word .Title}}`:                                "word and prose take a key, then names and values by turns",
		`{{word "x.a" "id"}}`:                            "word and prose take a key, then names and values by turns",
		`{{word "x.a" .Title .About}}`:                   "the name before .About is no string",
		`{{template "y" (prose "x.a")}}`:                 "prose stands by itself",
		`{{if prose "x.a"}}{{end}}{{define "y"}}{{end}}`: "prose stands by itself",
	} {
		fsys := fstest.MapFS{"x.html": {Data: []byte(source)}, "words/en/x.yaml": {Data: []byte("a: b")}}
		english, _ := words.Load(fsys, nil, words.English)
		_, err := New(fsys, english)
		if err == nil || !strings.Contains(err.Error(), want) || !strings.HasPrefix(err.Error(), "x.html:1:") {
			t.Errorf("%s: got %v, want %q", source, err, want)
		}
	}
}

// The place of a use is the place in the template.
func TestUses(t *testing.T) {
	fsys := fstest.MapFS{"x.html": {Data: []byte("<p>{{.Title}}</p>\n<p>{{if .Title}}{{word \"x.b\" \"id\" .Title}}{{end}}</p>")},
		"words/en/x.yaml": {Data: []byte("a: b")}}
	english, _ := words.Load(fsys, nil, words.English)
	set, err := New(fsys, english)
	if err != nil {
		t.Fatal(err)
	}
	problems := english.Check(set.uses)
	if len(problems) != 2 || !strings.HasPrefix(problems[1].String(), `templates/x.html:2:19: x.b: no words are called "x.b" [unknown-words]`) {
		t.Errorf("got %v", problems)
	}
}
