package content

import (
	"fmt"
	"html"
	"slices"
	"strings"

	"github.com/alecthomas/chroma/v2"
	"github.com/alecthomas/chroma/v2/lexers"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// languages are what the guide shows code in. A short list keeps typing mistakes apart
// from languages.
var languages = []string{"yaml", "json", "sh", "text", "md", "go", "html"}

// checkCode wants a language of every fenced block.
func (d *document) checkCode(n *ast.FencedCodeBlock, source []byte) {
	if name := string(n.Language(source)); !slices.Contains(languages, name) {
		offset := n.Pos()
		if n.Info != nil {
			offset = n.Info.Segment.Start
		}
		d.problem(offset, "unknown-language", fmt.Sprintf("code in %q", name), hintOf(name, languages)...)
	}
}

// codeClasses are the few kinds of words the sheet colours; everything else is plain.
// A token is looked up by its own type, then its sub-category, then its category.
var codeClasses = map[chroma.TokenType]string{
	chroma.Comment: "code__comment", chroma.Keyword: "code__key", chroma.NameTag: "code__key",
	chroma.NameAttribute: "code__key", chroma.LiteralString: "code__value", chroma.LiteralNumber: "code__value",
}

func codeClass(t chroma.TokenType) string {
	for _, kind := range []chroma.TokenType{t, t.SubCategory(), t.Category()} {
		if class, ok := codeClasses[kind]; ok {
			return class
		}
	}
	return ""
}

// codeRenderer colours fenced code with classes.
type codeRenderer struct{}

func (codeRenderer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindFencedCodeBlock, func(w util.BufWriter, source []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		n := node.(*ast.FencedCodeBlock)
		var code strings.Builder
		for i := range n.Lines().Len() {
			line := n.Lines().At(i)
			code.Write(line.Value(source))
		}
		_, _ = w.WriteString(`<pre class="code" role="group" aria-label="` + nameOf(n) + `" tabindex="0"><code>` + coloured(string(n.Language(source)), code.String()) + "</code></pre>\n")
		return ast.WalkSkipChildren, nil
	})
}

// longestColoured is the most code that is coloured, in bytes. Some lexers back up over
// what they have read: 30 KB of open brackets as YAML took a minute and a half.
const longestColoured = 2000

// coloured is the code as HTML. Neighbours of one class share a span, and plain words
// and spaces get none, which halves the bytes.
func coloured(language, code string) string {
	lexer := lexers.Get(language)
	if lexer == nil || len(code) > longestColoured || language == "text" || !slices.Contains(languages, language) {
		return html.EscapeString(code)
	}
	tokens, err := chroma.Tokenise(chroma.Coalesce(lexer), nil, code)
	if err != nil {
		return html.EscapeString(code)
	}
	var b strings.Builder
	for _, token := range tokens {
		text, class := html.EscapeString(token.Value), codeClass(token.Type)
		if class == "" || strings.TrimSpace(text) == "" {
			b.WriteString(text)
			continue
		}
		b.WriteString(`<span class="` + class + `">` + text + "</span>")
	}
	return b.String()
}
