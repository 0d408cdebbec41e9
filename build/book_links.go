package build

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"capspan/build/diag"
	"capspan/tables"
)

// PrintedBook is a book as HTML. The numbers of its pages are known only when it has been
// laid out, so it is made once without and then again with them.
type PrintedBook struct {
	Name  string // its title
	Chart tables.Version

	document []byte
	page     string // how a page is named in the running text, with pageMark for the number
}

const pageMark = "\u0000"

// Places are the ids that the book names pages of, in the order of their first mention.
func (p PrintedBook) Places() []string {
	var list []string
	for _, found := range folio.FindAllSubmatch(p.document, -1) {
		if id := string(found[2]); !slices.Contains(list, id) {
			list = append(list, id)
		}
	}
	return list
}

// HTML is the document with the page of each place; a place without one gets 000, which
// takes about the room that a number will.
func (p PrintedBook) HTML(pages map[string]int) []byte {
	return folio.ReplaceAllFunc(p.document, func(mark []byte) []byte {
		found := folio.FindSubmatch(mark)
		number := "000"
		if n := pages[string(found[2])]; n > 0 {
			number = strconv.Itoa(n)
		}
		text := number
		if string(found[1]) == runningFolio {
			text = " " + strings.ReplaceAll(p.page, pageMark, number)
		}
		return fmt.Appendf(nil, `<span class="%s" data-of="%s">%s</span>`, found[1], found[2], html.EscapeString(text))
	})
}

// A mark for a page's number stands behind each link: in a list of contents the number
// alone, elsewhere in words.
const runningFolio, listFolio = "folio", "folio folio--list"

var folio = regexp.MustCompile(`<span class="(folio[a-z -]*)" data-of="([^"]*)"></span>`)

// bound makes a piece of a page a piece of the book: its ids begin with the prefix, what
// names them follows, and its headings go down by some levels. It returns its own ids as
// they were.
func bound(piece, prefix string, down int) (string, []string) {
	body := &html.Node{Type: html.ElementNode, Data: "body", DataAtom: atom.Body}
	nodes, err := html.ParseFragment(strings.NewReader(piece), body)
	if err != nil {
		panic("internal error: reading from memory failed: " + err.Error())
	}
	var ids []string
	var out bytes.Buffer
	for _, n := range nodes {
		for e := range elements(n) {
			if level := headingLevel(e); level > 0 {
				e.Data = "h" + strconv.Itoa(min(level+down, 6))
				e.DataAtom = atom.Lookup([]byte(e.Data))
			}
			for i, a := range e.Attr {
				switch {
				case a.Key == "id":
					ids = append(ids, a.Val)
					e.Attr[i].Val = prefix + a.Val
				case a.Key == "href" && strings.HasPrefix(a.Val, "#"):
					e.Attr[i].Val = "#" + prefix + a.Val[1:]
				case a.Key == "aria-labelledby" || a.Key == "aria-describedby":
					names := strings.Fields(a.Val)
					for k := range names {
						names[k] = prefix + names[k]
					}
					e.Attr[i].Val = strings.Join(names, " ")
				default:
					e.Attr[i].Val = strings.ReplaceAll(a.Val, "url(#", "url(#"+prefix)
				}
			}
		}
		if err := html.Render(&out, n); err != nil {
			panic("internal error: writing to memory failed: " + err.Error())
		}
	}
	return out.String(), ids
}

// elements are those of a tree, from its root. Links may be changed on the way.
func elements(root *html.Node) func(yield func(*html.Node) bool) {
	return func(yield func(*html.Node) bool) {
		all := []*html.Node{root}
		for n := range root.Descendants() {
			all = append(all, n)
		}
		for _, n := range all {
			if n.Type == html.ElementNode && !yield(n) {
				return
			}
		}
	}
}

func headingLevel(n *html.Node) int {
	if len(n.Data) == 2 && n.Data[0] == 'h' && n.Data[1] >= '1' && n.Data[1] <= '6' {
		return int(n.Data[1] - '0')
	}
	return 0
}

// bind turns links to pages of the site into links to places of the book, and puts a mark
// for the page's number behind each. What the book does not have is reached by its full
// address when the site is published, and is else said without a link.
func (b *book) bind(page []byte) ([]byte, diag.List) {
	root, err := html.Parse(bytes.NewReader(page))
	if err != nil {
		panic("internal error: reading from memory failed: " + err.Error())
	}
	var problems diag.List
	ids := map[string]bool{}
	for e := range elements(root) {
		if id := attributeOf(e, "id"); id != "" {
			if ids[id] {
				problems.Add(bookProblem(fmt.Sprintf("two places are named %q", id)))
			}
			ids[id] = true
		}
	}
	for e := range elements(root) {
		if e.Data == "a" {
			problems.Add(b.bindLink(e, ids)...)
		}
		if e.Data == "details" {
			e.Attr = append(e.Attr, html.Attribute{Key: "open"})
		}
	}
	var out bytes.Buffer
	if err := html.Render(&out, root); err != nil {
		panic("internal error: writing to memory failed: " + err.Error())
	}
	return out.Bytes(), problems
}

func (b *book) bindLink(a *html.Node, ids map[string]bool) diag.List {
	href := attributeOf(a, "href")
	if place, known := b.places[href]; known {
		href = "#" + place
	}
	switch {
	case strings.HasPrefix(href, "#"):
		if !ids[href[1:]] {
			return diag.List{bookProblem(fmt.Sprintf("a link leads to %q, and no place has that name", href))}
		}
		setAttribute(a, "href", href)
		if strings.HasPrefix(href, "#source-") {
			return nil // its number says it
		}
		class := runningFolio
		for up := a.Parent; up != nil; up = up.Parent {
			if strings.HasPrefix(attributeOf(up, "class"), "toc") || strings.HasSuffix(attributeOf(up, "class"), "book__sizes") {
				class = listFolio
			}
		}
		a.Parent.InsertBefore(&html.Node{Type: html.ElementNode, Data: "span", DataAtom: atom.Span,
			Attr: []html.Attribute{{Key: "class", Val: class}, {Key: "data-of", Val: href[1:]}}}, a.NextSibling)
	case strings.HasPrefix(href, "/") && b.keeper.Web != "":
		setAttribute(a, "href", b.keeper.Web+b.published+href[1:])
	case strings.HasPrefix(href, "/identify/#"):
		a.Parent.RemoveChild(a) // a form with readings filled in is nothing on paper
	case strings.HasPrefix(href, "/"):
		for child := a.FirstChild; child != nil; child = a.FirstChild {
			a.RemoveChild(child)
			a.Parent.InsertBefore(child, a)
		}
		a.Parent.RemoveChild(a)
	}
	return nil
}

func bookProblem(fact string) diag.Problem {
	return diag.Problem{Pos: diag.Pos{File: "templates/book.html"}, Rule: "bad-book", Fact: fact}
}

func attributeOf(n *html.Node, key string) string {
	for _, a := range n.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

func setAttribute(n *html.Node, key, value string) {
	for i := range n.Attr {
		if n.Attr[i].Key == key {
			n.Attr[i].Val = value
		}
	}
}
