package content

import (
	"bytes"
	"fmt"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// A container is opened by three colons or more and a word, and closed by at least as
// many colons alone on a line, as code fences are:
//
//	:::: caution
//	::: caution
//	inner
//	:::
//	outer
//	::::

// container is the block between the two lines.
type container struct {
	ast.BaseBlock
	name   string
	colons int
	closed bool
}

var kindContainer = ast.NewNodeKind("Container")

func (c *container) Kind() ast.NodeKind { return kindContainer }

func (c *container) Dump(source []byte, level int) {
	ast.DumpHelper(c, source, level, map[string]string{"Name": c.name}, nil)
}

// checkContainer reports a name nobody renders and a container that never ends.
func (d *document) checkContainer(c *container) {
	if c.name != "caution" {
		d.problem(c.Pos(), "unknown-directive", fmt.Sprintf("unknown directive %q", c.name), `the only one is "caution"`)
	}
	if !c.closed {
		d.problem(c.Pos(), "unclosed-directive", fmt.Sprintf("directive %q is not closed", c.name),
			fmt.Sprintf("end it with a line of %q", strings.Repeat(":", c.colons)))
	}
}

// checkStray reports a paragraph that was meant to be the end, or the start, of a
// container.
func (d *document) checkStray(p *ast.Paragraph, source []byte) {
	for i := range p.Lines().Len() {
		segment := p.Lines().At(i)
		if bytes.HasPrefix(bytes.TrimSpace(segment.Value(source)), []byte(":::")) {
			d.problem(segment.Start, "stray-directive", "this line opens and closes nothing",
				`a container starts with ":::" and a word, and ends with as many colons alone`)
		}
	}
}

// containerParser reads containers.
type containerParser struct{}

func (containerParser) Trigger() []byte { return []byte{':'} }

// fence counts the colons a line starts with and gives what follows them. No colons
// mean that the line is no fence.
func fence(reader text.Reader) (colons int, rest string) {
	line, _ := reader.PeekLine()
	indent, start := util.IndentWidth(line, reader.LineOffset())
	if indent > 3 {
		return 0, ""
	}
	line = line[start:]
	for colons < len(line) && line[colons] == ':' {
		colons++
	}
	if colons < 3 {
		return 0, ""
	}
	return colons, string(bytes.TrimSpace(line[colons:]))
}

func (containerParser) Open(_ ast.Node, reader text.Reader, _ parser.Context) (ast.Node, parser.State) {
	colons, name := fence(reader)
	if colons == 0 || name == "" {
		return nil, parser.NoChildren
	}
	skipLine(reader)
	return &container{name: name, colons: colons}, parser.HasChildren
}

func (containerParser) Continue(node ast.Node, reader text.Reader, _ parser.Context) parser.State {
	c := node.(*container)
	if colons, rest := fence(reader); colons >= c.colons && rest == "" {
		c.closed = true
		skipLine(reader)
		return parser.Close
	}
	return parser.Continue | parser.HasChildren
}

func (containerParser) Close(ast.Node, text.Reader, parser.Context) {}

func (containerParser) CanInterruptParagraph() bool { return true }

func (containerParser) CanAcceptIndentedLine() bool { return false }

// skipLine moves to the end of the line and leaves the line's end to goldmark.
func skipLine(reader text.Reader) {
	line, segment := reader.PeekLine()
	newline := 0
	if bytes.HasSuffix(line, []byte("\n")) {
		newline = 1
	}
	reader.Advance(segment.Len() - newline)
}

// containerRenderer writes a caution as an aside. An unknown container is a problem
// and shows only what is in it.
type containerRenderer struct{}

func (containerRenderer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(kindContainer, func(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
		switch {
		case node.(*container).name != "caution":
		case entering:
			_, _ = w.WriteString("<aside class=\"caution\">\n")
		default:
			_, _ = w.WriteString("</aside>\n")
		}
		return ast.WalkContinue, nil
	})
}
