package content

import (
	"bytes"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
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
	name, rest string
	at         int // of the rest, in the file
	colons     int
	closed     bool
	html       string // what stands before its own text
}

var kindContainer = ast.NewNodeKind("Container")

func (c *container) Kind() ast.NodeKind { return kindContainer }

func (c *container) Dump(source []byte, level int) {
	ast.DumpHelper(c, source, level, map[string]string{"Name": c.name}, nil)
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

// fence counts the colons a line starts with, gives what follows them and its place in
// the file. Fewer colons than the least mean that the line is no fence.
func fence(reader text.Reader, least int) (colons int, rest string, at int) {
	line, segment := reader.PeekLine()
	indent, start := util.IndentWidth(line, reader.LineOffset())
	if indent > 3 {
		return 0, "", 0
	}
	end := start
	for end < len(line) && line[end] == ':' {
		end++
	}
	if end-start < least {
		return 0, "", 0
	}
	trimmed := bytes.TrimLeft(line[end:], " \t")
	return end - start, string(bytes.TrimSpace(trimmed)), segment.Start + len(line) - len(trimmed)
}

func (containerParser) Open(_ ast.Node, reader text.Reader, _ parser.Context) (ast.Node, parser.State) {
	colons, rest, at := fence(reader, 3)
	if colons == 0 || rest == "" {
		return nil, parser.NoChildren
	}
	c := &container{colons: colons}
	c.name, c.rest, c.at = word(rest, at)
	skipLine(reader)
	return c, parser.HasChildren
}

func (containerParser) Continue(node ast.Node, reader text.Reader, _ parser.Context) parser.State {
	c := node.(*container)
	if colons, rest, _ := fence(reader, 3); colons >= c.colons && rest == "" {
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

// renderContainer writes a caution as an aside, a figure with its text as the caption,
// and steps that follow each other as one numbered list. An unknown container is a
// problem and shows only what is in it.
func renderContainer(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
	c := node.(*container)
	switch {
	case c.name == "caution" && entering:
		_, _ = w.WriteString("<aside class=\"caution\">\n")
	case c.name == "caution":
		_, _ = w.WriteString("</aside>\n")
	case c.name == "step" && entering:
		if !isStep(c.PreviousSibling()) {
			_, _ = w.WriteString("<ol class=\"steps\">\n")
		}
		_, _ = w.WriteString("<li>\n")
		if c.html != "" {
			_, _ = w.WriteString("<p><strong>" + c.html + "</strong></p>\n")
		}
	case c.name == "step":
		_, _ = w.WriteString("</li>\n")
		if !isStep(c.NextSibling()) {
			_, _ = w.WriteString("</ol>\n")
		}
	case c.name == "figure" && c.html == "": // its problem is reported
		return ast.WalkSkipChildren, nil
	case c.name == "figure" && entering:
		_, _ = w.WriteString(c.html)
		if c.HasChildren() {
			_, _ = w.WriteString("<figcaption>\n")
		}
	case c.name == "figure":
		if c.HasChildren() {
			_, _ = w.WriteString("</figcaption>\n")
		}
		_, _ = w.WriteString("</figure>\n")
	}
	return ast.WalkContinue, nil
}

func isStep(node ast.Node) bool {
	c, ok := node.(*container)
	return ok && c.name == "step"
}
