package content

import (
	"bytes"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// leaf is a directive of one line: two colons, a name and its parameters.
type leaf struct {
	ast.BaseBlock
	name, rest string
	at         int // of the rest, in the file
	html       string
}

var kindLeaf = ast.NewNodeKind("Leaf")

func (l *leaf) Kind() ast.NodeKind { return kindLeaf }

func (l *leaf) Dump(source []byte, level int) {
	ast.DumpHelper(l, source, level, map[string]string{"Name": l.name}, nil)
}

// leafParser reads leaves.
type leafParser struct{}

func (leafParser) Trigger() []byte { return []byte{':'} }

func (leafParser) Open(_ ast.Node, reader text.Reader, _ parser.Context) (ast.Node, parser.State) {
	colons, rest, at := fence(reader, 2)
	if colons != 2 || rest == "" {
		return nil, parser.NoChildren
	}
	l := &leaf{}
	l.name, l.rest, l.at = word(rest, at)
	skipLine(reader)
	return l, parser.NoChildren
}

func (leafParser) Continue(ast.Node, text.Reader, parser.Context) parser.State { return parser.Close }

func (leafParser) Close(ast.Node, text.Reader, parser.Context) {}

func (leafParser) CanInterruptParagraph() bool { return true }

func (leafParser) CanAcceptIndentedLine() bool { return false }

// inline is a directive in a sentence: {name words}.
type inline struct {
	ast.BaseInline
	name, rest string
	from, at   int // of the brace and of the rest, in the file
	html       string
}

var kindInline = ast.NewNodeKind("InlineDirective")

func (n *inline) Kind() ast.NodeKind { return kindInline }

func (n *inline) Dump(source []byte, level int) {
	ast.DumpHelper(n, source, level, map[string]string{"Name": n.name}, nil)
}

// inlineParser reads inlines. A brace without a word and a second word behind it is text,
// and so is one behind a backslash.
type inlineParser struct{}

func (inlineParser) Trigger() []byte { return []byte{'{'} }

func (inlineParser) Parse(_ ast.Node, block text.Reader, _ parser.Context) ast.Node {
	line, segment := block.PeekLine()
	end := bytes.IndexByte(line, '}')
	if end < 0 {
		return nil
	}
	name, rest, found := strings.Cut(string(line[1:end]), " ")
	if !found || strings.TrimSpace(rest) == "" || strings.Trim(name, "abcdefghijklmnopqrstuvwxyz") != "" || name == "" {
		return nil
	}
	block.Advance(end + 1)
	return &inline{name: name, rest: strings.TrimSpace(rest), from: segment.Start, at: segment.Start + len(name) + 2}
}

// word splits the name off a directive's line and says where the rest begins.
func word(line string, at int) (name, rest string, restAt int) {
	name, rest, _ = strings.Cut(line, " ")
	trimmed := strings.TrimLeft(rest, " \t")
	return name, trimmed, at + len(line) - len(trimmed)
}

// directiveRenderer writes what was made of the directives.
type directiveRenderer struct{}

func (directiveRenderer) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(kindContainer, renderContainer)
	r.Register(kindLeaf, func(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering && node.(*leaf).html != "" {
			_, _ = w.WriteString(node.(*leaf).html + "\n")
		}
		return ast.WalkContinue, nil
	})
	r.Register(kindInline, func(w util.BufWriter, _ []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
		if entering {
			_, _ = w.WriteString(node.(*inline).html)
		}
		return ast.WalkContinue, nil
	})
}
