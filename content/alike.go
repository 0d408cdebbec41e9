package content

import (
	"cmp"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"

	"github.com/yuin/goldmark/ast"
	extast "github.com/yuin/goldmark/extension/ast"

	"capspan/build/diag"
)

// Alike compares a page in another language with the page it is made of. Both names are
// relative to the content folder: "measure/cap.md" and "es/measure/cap.md".
//
// A translation has the same parts in the same order: headings, directives with their
// parameters, tables with their rows, code. Between two parts it has the same inline
// directives, links, code spans and figures, in any order. Words are its own, and so are
// the text of an image or a drawing, a comment in code, code in Markdown, and the place
// in a page that a link leads to, since that is named after a heading. A figure may have
// a comma where the other page has a point.
func Alike(name string, source []byte, translatedName string, translated []byte) diag.List {
	from, to := outlined(name, source), outlined(translatedName, translated)
	from.compareHead(to)
	from.compareParts(to)
	to.problems.Sort()
	return to.problems
}

// outline is what two pages have in common: the head, and the parts in order.
type outline struct {
	*document
	page  *Page
	parts []part
	at    int // the last offset that is known
}

// part is a heading, a directive, a table, a row of one or a piece of code, and what
// stands from its beginning to the next part.
type part struct {
	what   string
	pos    diag.Pos
	things []thing
}

// thing is an inline directive, a link, a code span or a figure, as it is shown in a message.
type thing struct {
	what string
	pos  diag.Pos
}

// outlined reads a page without asking the chart. What is wrong with the page itself is
// for [Parse] to say.
func outlined(name string, source []byte) *outline {
	o := &outline{document: newDocument(path.Join(folder, name), slug(name), source), page: &Page{}}
	body := o.head(o.page)
	o.part("the beginning", body+len("\n"))
	tree, text := o.tree(body, headingIDs{})
	_ = ast.Walk(tree, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		return o.visit(node, text, entering), nil
	})
	o.part("the end", len(source))
	o.problems = nil
	return o
}

func (o *outline) visit(node ast.Node, text []byte, entering bool) ast.WalkStatus {
	if c, ok := node.(*container); ok && !entering {
		o.part("the end of ::: "+c.name, -1)
	}
	if !entering {
		return ast.WalkContinue
	}
	switch n := node.(type) {
	case *ast.Heading:
		o.part(fmt.Sprintf("a heading of level %d", n.Level), n.Pos())
	case *container:
		o.container(n)
	case *leaf:
		o.part(strings.TrimSpace(":: "+n.name+" "+n.rest), n.Pos())
	case *extast.Table:
		o.part("a table", n.Pos())
	case *extast.TableHeader:
		o.part(fmt.Sprintf("a table's head of %d columns", n.ChildCount()), n.Pos())
	case *extast.TableRow:
		o.part(fmt.Sprintf("a table's row of %d cells", n.ChildCount()), n.Pos())
	case *ast.FencedCodeBlock:
		o.part(codeOf(n, text), n.Pos())
	case *inline:
		o.thing("{"+n.name+" "+n.rest+"}", n.from)
	case *ast.Link:
		o.thing("a link to "+placeless(string(n.Destination)), n.Pos())
	case *ast.AutoLink:
		o.thing("a link to "+autoAddress(n, text), n.Pos())
	case *ast.Image:
		o.thing("the image "+string(n.Destination), n.Pos())
	case *ast.CodeSpan:
		o.thing("`"+plainText(n, text)+"`", n.Pos())
		return ast.WalkSkipChildren
	case *ast.Text:
		o.figures(string(n.Segment.Value(text)), n.Segment.Start)
	}
	return ast.WalkContinue
}

// container is a part with its parameters but alt. The words of a step, and those of alt,
// count as text.
func (o *outline) container(c *container) {
	if c.name == "step" {
		o.part("::: step", c.Pos())
		o.figures(c.rest, c.at)
		return
	}
	what := "::: " + c.name
	var alt attribute
	for _, a := range o.attributes(c.rest, c.at) {
		switch a.key {
		case "alt":
			alt = a
		case "":
			what += " " + a.value
		default:
			what += " " + a.key + "=" + a.value
		}
	}
	o.part(what, c.Pos())
	o.figures(alt.value, alt.at+len(`"`))
}

// part begins the next part.
func (o *outline) part(what string, offset int) {
	o.parts = append(o.parts, part{what: what, pos: o.near(offset)})
}

func (o *outline) thing(what string, offset int) {
	last := &o.parts[len(o.parts)-1]
	last.things = append(last.things, thing{what, o.near(offset)})
}

// near is the place of an offset, or the last one when the parser keeps none (-1).
func (o *outline) near(offset int) diag.Pos {
	if offset >= 0 {
		o.at = offset
	}
	return o.place(o.at)
}

// number is a figure in a sentence, with a point or a comma, or as a fraction.
var number = regexp.MustCompile(`\d+(?:[.,/]\d+)*`)

func (o *outline) figures(words string, offset int) {
	for _, at := range number.FindAllStringIndex(words, -1) {
		o.thing("the figure "+strings.ReplaceAll(words[at[0]:at[1]], ",", "."), offset+at[0])
	}
}

// placeless cuts off the place in a page of this site.
func placeless(href string) string {
	if _, outside := schemeOf(href); outside {
		return href
	}
	page, _, anchored := strings.Cut(href, "#")
	if anchored {
		return page + "#"
	}
	return page
}

// comment is the end of a line of code that readers read. YAML and shell begin it alike.
var comment = regexp.MustCompile(`(?m)(^|\s+)# .*$`)

// codeOf is a piece of code with its comments cut off. Markdown is text for people.
func codeOf(n *ast.FencedCodeBlock, text []byte) string {
	language := string(n.Language(text))
	if language == "md" {
		return "code in md"
	}
	return "code in " + language + ": " + comment.ReplaceAllString(string(n.Lines().Value(text)), "")
}

// compareHead wants the same pages to go to next, and a sentence about the page where the
// other has one.
func (o *outline) compareHead(to *outline) {
	note := diag.Note{Text: "the page it is made of:", Pos: diag.Pos{File: o.file, Line: 1}}
	differ := func(fact string) {
		to.problems.Add(diag.Problem{Pos: to.place(0), Path: to.slug, Fact: fact, Rule: "translation-differs", Notes: []diag.Note{note}})
	}
	if !slices.Equal(o.page.Next, to.page.Next) {
		differ(fmt.Sprintf(`"next" is %q here, and %q in the page it is made of`, to.page.Next, o.page.Next))
	}
	if (o.page.About == "") != (to.page.About == "") {
		differ(`only one of the two pages has "about"`)
	}
}

// compareParts goes through both pages part by part. It stops where the parts differ, as
// all that follows would differ too.
func (o *outline) compareParts(to *outline) {
	for i, want := range o.parts[:min(len(o.parts), len(to.parts))] {
		got := to.parts[i]
		if got.what != want.what {
			to.problems.Add(diag.Problem{Pos: got.pos, Path: to.slug, Rule: "translation-differs",
				Fact:  fmt.Sprintf("%q stands where the page it is made of has %q", brief(got.what), brief(want.what)),
				Hints: []string{"keep the parts of the page, their order and their parameters; translate the words"},
				Notes: []diag.Note{{Text: "the page it is made of:", Pos: want.pos}}})
			return
		}
		for _, lost := range without(want.things, got.things) {
			to.problems.Add(diag.Problem{Pos: got.pos, Path: to.slug, Rule: "translation-loses",
				Fact:  lost.what + " is not between here and the next part",
				Notes: []diag.Note{{Text: "the page it is made of:", Pos: lost.pos}}})
		}
		for _, more := range without(got.things, want.things) {
			to.problems.Add(diag.Problem{Pos: more.pos, Path: to.slug, Rule: "translation-adds",
				Fact:  more.what + " is not in this part of the page it is made of",
				Notes: []diag.Note{{Text: "the page it is made of:", Pos: want.pos}}})
		}
	}
}

// brief is the first line of what a part is.
func brief(what string) string {
	line, rest, _ := strings.Cut(strings.TrimSpace(what), "\n")
	if rest != "" {
		line += " ..."
	}
	return line
}

// without is the list less one of its own for each of the others.
func without(list, others []thing) []thing {
	left := map[string]int{}
	for _, t := range others {
		left[t.what]++
	}
	var rest []thing
	for _, t := range list {
		if left[t.what]--; left[t.what] < 0 {
			rest = append(rest, t)
		}
	}
	slices.SortFunc(rest, func(a, b thing) int { return cmp.Or(a.pos.Compare(b.pos), strings.Compare(a.what, b.what)) })
	return rest
}
