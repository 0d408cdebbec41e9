package content

import (
	"bytes"
	"fmt"
	"html/template"
	"strings"
	"unicode"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	extast "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// markdown is shared by all pages. It has no state of its own between pages. Tables
// carry no alignment, which would need a style attribute; raw HTML stays off.
var markdown = goldmark.New(
	goldmark.WithExtensions(extension.NewTable(
		extension.WithTableCellAlignMethod(extension.TableCellAlignNone))),
	goldmark.WithParserOptions(
		parser.WithAutoHeadingID(),
		parser.WithBlockParsers( // before paragraphs (1000), beside code fences
			util.Prioritized(containerParser{}, 450), util.Prioritized(leafParser{}, 460)),
		parser.WithInlineParsers(util.Prioritized(inlineParser{}, 150))), // after code spans (100)
	goldmark.WithRendererOptions(renderer.WithNodeRenderers(
		util.Prioritized(directiveRenderer{}, 100),
		util.Prioritized(codeRenderer{}, 100),
		util.Prioritized(autoLinks{}, 100),
		util.Prioritized(tableFrame{}, 100))),
)

// tree parses the Markdown from the offset on. What stands before it is blanked and not cut
// off, so that goldmark's offsets are the file's; the source it returns is so blanked.
func (d *document) tree(offset int, ids parser.IDs) (ast.Node, []byte) {
	source := append(bytes.Repeat([]byte(" "), offset), d.source[offset:]...)
	for i := range offset {
		if d.source[i] == '\n' {
			source[i] = '\n'
		}
	}
	return markdown.Parser().Parse(text.NewReader(source), parser.WithContext(parser.NewContext(parser.WithIDs(ids)))), source
}

// body renders the Markdown from the offset on.
func (d *document) body(page *Page, offset int, options Options, english []heading) {
	tree, source := d.tree(offset, &lentIDs{english: english, own: headingIDs{}})
	if english != nil {
		d.alike(d.headings(tree), english)
	}
	d.inspect(page, tree, source, options)
	var out bytes.Buffer
	if err := markdown.Renderer().Render(&out, source, tree); err != nil {
		panic("internal error: writing to memory: " + err.Error())
	}
	page.HTML = template.HTML(out.String())
}

// inspect finds problems, gathers links and puts the base in front of them. It changes
// destinations only, never the shape of the tree it walks.
func (d *document) inspect(page *Page, tree ast.Node, source []byte, options Options) {
	spoken := spokenNames{options.Code, options.Table}
	r := &resolving{document: d, page: page, chart: options.Chart, base: options.Base, language: options.Language, spoken: spoken, words: options.Drawings}
	if r.words.Say == nil {
		r.words.Say = func(string, ...any) string { return "" }
	}
	_ = ast.Walk(tree, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := node.(type) {
		case *ast.Heading:
			if n.Level == 1 {
				d.problem(n.Pos(), "second-title", "a heading of the first level in the body", `the title in the head is the page's h1; start at "##"`)
			}
		case *ast.Image:
			if strings.TrimSpace(plainText(n, source)) == "" {
				d.problem(n.Pos(), "missing-alt", fmt.Sprintf("image %q has no text for those who cannot see it", n.Destination), "write what it shows between the square brackets")
			}
			n.Destination = d.link(page, n.Pos(), n.Destination, options)
		case *ast.Link:
			n.Destination = d.link(page, n.Pos(), n.Destination, options)
		case *ast.AutoLink:
			d.link(page, n.Pos(), []byte(autoAddress(n, source)), options)
		case *ast.HTMLBlock, *ast.RawHTML:
			d.problem(node.Pos(), "raw-html", "raw HTML is left out of the page", "write it in Markdown")
		case *container:
			r.container(n)
		case *leaf:
			r.leaf(n)
		case *inline:
			r.inline(n)
		case *ast.FencedCodeBlock:
			d.checkCode(n, source)
		case *ast.Paragraph:
			d.checkStray(n, source)
		}
		spoken.give(node)
		return ast.WalkContinue, nil
	})
}

// rendered is Markdown that the program wrote itself, without directives, as HTML.
func rendered(words string, spoken spokenNames) string {
	source := []byte(words)
	tree := markdown.Parser().Parse(text.NewReader(source))
	_ = ast.Walk(tree, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			spoken.give(node)
		}
		return ast.WalkContinue, nil
	})
	var out bytes.Buffer
	if err := markdown.Renderer().Render(&out, source, tree); err != nil {
		panic("internal error: writing to memory: " + err.Error())
	}
	return out.String()
}

// spokenNames are what a screen reader calls the parts that scroll by themselves.
type spokenNames struct{ code, table string }

// spokenName is the attribute of a node that holds it.
const spokenName = "name"

func (s spokenNames) give(node ast.Node) {
	switch node.(type) {
	case *ast.FencedCodeBlock:
		node.SetAttributeString(spokenName, s.code)
	case *extast.Table:
		node.SetAttributeString(spokenName, s.table)
	}
}

func nameOf(node ast.Node) string {
	name, _ := node.AttributeString(spokenName)
	words, _ := name.(string)
	return string(util.EscapeHTML([]byte(words)))
}

// link notes a link and returns the address to write. A refused one becomes "#".
func (d *document) link(page *Page, offset int, destination []byte, options Options) []byte {
	href := string(util.UnescapePunctuations(destination))
	if fact := refused(string(util.ResolveEntityNames(util.ResolveNumericReferences([]byte(href))))); fact != "" {
		d.problem(offset, "forbidden-link", fact, allowedLinks)
		return []byte("#")
	}
	page.Links = append(page.Links, Link{Href: href, Pos: d.place(offset)})
	return []byte(options.based(href))
}

// plainText is the words of a node without their marks.
func plainText(node ast.Node, source []byte) string {
	var b strings.Builder
	for child := node.FirstChild(); child != nil; child = child.NextSibling() {
		if leaf, ok := child.(*ast.Text); ok {
			b.Write(leaf.Value(source))
			continue
		}
		b.WriteString(plainText(child, source))
	}
	return b.String()
}

// headingIDs makes ids from headings: letters and digits of any language in lower
// case, one dash for everything else. A second heading of the same name gets "-2".
type headingIDs map[string]bool

func (h headingIDs) Generate(value []byte, _ ast.NodeKind) []byte {
	words := strings.FieldsFunc(strings.ToLower(string(value)), func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	id := strings.Join(words, "-")
	if id == "" {
		id = "part"
	}
	unique := id
	for n := 2; h[unique]; n++ {
		unique = fmt.Sprintf("%s-%d", id, n)
	}
	h[unique] = true
	return []byte(unique)
}

func (h headingIDs) Put(value []byte) { h[string(value)] = true }

// tableFrame puts a table into its own scroller, so that a phone scrolls the table and
// not the page. The scroller takes the keyboard's focus.
type tableFrame struct{}

func (tableFrame) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(extast.KindTable, func(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			_, _ = w.WriteString("<div class=\"scroll\" role=\"group\" aria-label=\"" + nameOf(node) + "\" tabindex=\"0\">\n<table>\n")
		} else {
			_, _ = w.WriteString("</table>\n</div>\n")
		}
		return ast.WalkContinue, nil
	})
	r.Register(extast.KindTableCell, func(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
		start, end := "<td>", "</td>\n"
		if node.Parent().Kind() == extast.KindTableHeader {
			start, end = `<th scope="col">`, "</th>\n"
		}
		if entering {
			_, _ = w.WriteString(start)
		} else {
			_, _ = w.WriteString(end)
		}
		return ast.WalkContinue, nil
	})
}
