package content

import (
	"cmp"
	"fmt"
	"io/fs"
	"path"
	"regexp"

	"github.com/yuin/goldmark/ast"

	"capspan/build/diag"
)

// English is the language of the pages as they stand in this folder. Those of another
// language are in a folder of their own, under the same names: es/measure/cap.md.
const English = "en"

var languageForm = regexp.MustCompile(`^[a-z]{2,3}(-[A-Za-z0-9]{2,8})*$`)

// LanguageFolder reports whether a folder of that name holds a language and no pages of the
// site's own: two or three small letters, and what else the attribute lang takes (es, pt-BR).
func LanguageFolder(name string) bool { return name != English && languageForm.MatchString(name) }

// folderOf is the folder of a language: where its pages lie, seen from the folder content.
func folderOf(language string) string {
	if cmp.Or(language, English) == English {
		return "."
	}
	return language
}

// heading is one of a page: its level, the id it is found under, and where it stands.
type heading struct {
	level int
	id    string
	at    diag.Pos
}

// headings of a tree, in order.
func (d *document) headings(tree ast.Node) []heading {
	list := []heading{}
	_ = ast.Walk(tree, func(node ast.Node, entering bool) (ast.WalkStatus, error) {
		if h, ok := node.(*ast.Heading); ok && entering {
			id, _ := h.AttributeString("id")
			text, _ := id.([]byte)
			list = append(list, heading{h.Level, string(text), d.place(h.Pos())})
		}
		return ast.WalkContinue, nil
	})
	return list
}

// englishHeadings are those of the English page that a file of another language
// translates; nil when there is none, or it cannot be read.
func englishHeadings(fsys fs.FS, name string) []heading {
	source, err := readPage(fsys, name)
	if err != nil || len(source) > biggestPage {
		return nil
	}
	d := newDocument(path.Join(folder, name), slug(name), source)
	_, _, body, _ := d.split()
	tree, _ := d.tree(body, headingIDs{})
	return d.headings(tree)
}

// lentIDs gives the headings of a translated page the ids of the English ones, in order, so
// that an address with a place in the page leads there in every language.
type lentIDs struct {
	english []heading
	own     headingIDs
	given   int
}

func (l *lentIDs) Generate(value []byte, kind ast.NodeKind) []byte {
	l.given++
	if l.given <= len(l.english) {
		l.own.Put([]byte(l.english[l.given-1].id))
		return []byte(l.english[l.given-1].id)
	}
	return l.own.Generate(value, kind)
}

func (l *lentIDs) Put(value []byte) { l.own.Put(value) }

// alike holds the headings of a translated page to the English ones.
func (d *document) alike(mine, english []heading) {
	for i := range max(len(mine), len(english)) {
		switch {
		case i >= len(mine):
			d.problemAt(english[i].at, "other-headings", fmt.Sprintf("the heading has none in its place in %q", d.file), "addresses lead to headings: a translated page has the same ones, in order")
		case i >= len(english):
			d.problemAt(mine[i].at, "other-headings", "the English page has no heading in this place", "a translated page has the same headings, in order")
		case mine[i].level != english[i].level:
			d.problems.Add(diag.Problem{Pos: mine[i].at, Path: d.slug, Rule: "other-headings",
				Fact:  fmt.Sprintf("is a heading of level %d, and the English one of level %d", mine[i].level, english[i].level),
				Hints: []string{"a translated page has the same headings, in order"},
				Notes: []diag.Note{{Text: "in English at", Pos: english[i].at}}})
		default:
			continue
		}
		return
	}
}
