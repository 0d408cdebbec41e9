package content

import (
	"bytes"
	"fmt"
	"html"
	"slices"
	"strconv"
	"strings"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/parser"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/text"
	"github.com/yuin/goldmark/util"
)

// The names of the directives, by their shape.
var (
	containers = []string{"caution", "figure", "step"}
	leaves     = []string{"answer", "apart", "table"}
	inlines    = []string{"reading", "row"}
)

// resolving is the work on one page: the figures are numbered, so that their ids differ.
type resolving struct {
	*document
	page    *Page
	chart   Resolver
	base    string
	figures int
}

// container checks a container's line and makes what needs the chart or the drawings.
func (r *resolving) container(c *container) {
	switch c.name {
	case "caution":
		r.parameters(c.name, c.Pos(), r.attributes(c.rest, c.at), 0)
	case "step":
		c.html = html.EscapeString(c.rest)
	case "figure":
		r.figure(c)
	default:
		hints := hintOf(c.name, containers)
		if slices.Contains(leaves, c.name) {
			hints = []string{fmt.Sprintf(`%q holds no text: write it on one line with two colons, ":: %s ..."`, c.name, c.name)}
		}
		r.problem(c.Pos(), "unknown-directive", fmt.Sprintf("unknown directive %q", c.name), hints...)
	}
	if !c.closed {
		r.problem(c.Pos(), "unclosed-directive", fmt.Sprintf("directive %q is not closed", c.name),
			fmt.Sprintf("end it with a line of %q", strings.Repeat(":", c.colons)))
	}
}

// leaf checks a directive of one line and asks the chart for what it shows.
func (r *resolving) leaf(l *leaf) {
	list := r.attributes(l.rest, l.at)
	switch l.name {
	case "table":
		r.table(l, list)
	case "answer":
		r.answer(l, list)
	case "apart":
		p := r.parameters(l.name, l.Pos(), list, 0, "tool")
		if tool, ok := p.need("tool"); ok && r.chart.Apart != nil {
			made, err := r.chart.Apart(tool.value)
			if err != nil {
				r.refuse(tool.at, err)
				return
			}
			l.html = string(made)
		}
	default:
		hints := hintOf(l.name, leaves)
		if slices.Contains(containers, l.name) {
			hints = []string{fmt.Sprintf(`%q holds text: open it with three colons and close it`, l.name)}
		}
		r.problem(l.Pos(), "unknown-directive", fmt.Sprintf("unknown directive %q", l.name), hints...)
	}
}

// table is a shipped table, or the rows of it that are named.
func (r *resolving) table(l *leaf, list []attribute) {
	p := r.parameters(l.name, l.Pos(), list, 1, "rows")
	if len(p.words) == 0 {
		r.problem(l.Pos(), "missing-parameter", `"table" needs the id of a table`, "write :: table joints-wing")
		return
	}
	var rows []string
	if a, given := p.keyed["rows"]; given {
		rows = strings.Split(a.value, ",")
	}
	if r.chart.Table == nil {
		return
	}
	made, err := r.chart.Table(p.words[0].value, rows)
	if err != nil {
		r.refuse(p.words[0].at, err)
		return
	}
	l.html = string(made)
}

// answer puts a query to the core. The verdict the text counts on is written beside
// it: when the core concludes something else, the page is wrong and does not build.
func (r *resolving) answer(l *leaf, list []attribute) {
	p := r.parameters(l.name, l.Pos(), list, 0, "expect", "rows", "query")
	expect, expected := p.oneOf("expect", verdicts)
	query, asked := p.need("query")
	if !expected || !asked || r.chart.Answer == nil {
		return
	}
	answer, err := r.chart.Answer(query.value)
	if err != nil {
		r.refuse(query.at, err)
		return
	}
	if answer.Verdict != expect {
		r.problem(p.keyed["expect"].at, "stale-answer", fmt.Sprintf("the text counts on %q and the core says %q", expect, answer.Verdict),
			"mend the text around it, then the word")
	}
	if rows, given := p.keyed["rows"]; given {
		for _, row := range strings.Split(rows.value, ",") {
			if !slices.Contains(answer.Rows, row) {
				r.problem(rows.at, "stale-answer", fmt.Sprintf("the text counts on row %q, and the core leaves %q", row, answer.Rows))
			}
		}
	}
	l.html = string(answer.HTML)
}

// verdicts are what the core concludes.
var verdicts = []string{"identified", "possible", "between", "not-in-chart", "measure-again"}

// inline makes a length in both units, or a link to a row with its figures.
func (r *resolving) inline(n *inline) {
	switch n.name {
	case "reading":
		if r.chart.Reading == nil {
			return
		}
		reading, err := r.chart.Reading(n.rest)
		if err != nil {
			r.refuse(n.at, err)
			return
		}
		n.html = fmt.Sprintf(`<span class="num">%s (≈ %s)</span>`,
			html.EscapeString(unbroken(reading.Given)), html.EscapeString(unbroken(reading.Converted)))
	case "row":
		if r.chart.Row == nil {
			return
		}
		row, err := r.chart.Row(n.rest)
		if err != nil {
			r.refuse(n.at, err)
			return
		}
		n.html = fmt.Sprintf(`<a href="%s">%s</a> (%s)`, html.EscapeString(row.Href), html.EscapeString(row.Name), html.EscapeString(row.Figures))
	default:
		r.problem(n.from, "unknown-directive", fmt.Sprintf("unknown directive %q", n.name), hintOf(n.name, inlines)...)
	}
}

// unbroken keeps a number and its unit on one line.
func unbroken(s string) string { return strings.ReplaceAll(s, " ", "\u00a0") }

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

// ordinal names the prefix of a figure's ids.
func ordinal(n int) string { return "fig" + strconv.Itoa(n) }
