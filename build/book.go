package build

import (
	"bytes"
	"cmp"
	"fmt"
	"html/template"
	"io/fs"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/content"
	"capspan/tables"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// BookOptions say how the book is made.
type BookOptions struct {
	Language string // as in [Options]
	Sheet    string // "a4" or "letter"; "" means A4
	Base     string // the path the published site lives under; "" means "/"
}

// BookSheets are the papers a book can be made for, as CSS names them.
var BookSheets = []string{"a4", "letter"}

// Book makes the whole chart and guide one document to print: the same pages, tables and
// drawings as the site, from the same sources, with places of its own instead of addresses.
// It is no part of the site. What it needs, it has in itself; no script is in it.
func Book(src Sources, opt BookOptions) (PrintedBook, diag.List) {
	all, problems := load(src, Options{Language: cmp.Or(opt.Language, catalogue.English)})
	if problems.Blocked() {
		return PrintedBook{}, problems
	}
	in := all[0]
	if problem, large := tooLargeToPrint(in); large {
		problems.Add(problem)
		return PrintedBook{}, problems
	}
	b := &book{site: newSite(in, Options{}), places: map[string]string{}, numbers: map[string]int{}, published: basePath(opt.Base)}
	style, err := fs.ReadFile(src.Static, bookStyle)
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "static/" + bookStyle}, Fact: err.Error(), Rule: "unreadable"})
		return PrintedBook{}, problems
	}
	view := b.view(opt, style)
	var page bytes.Buffer
	if err := in.frames.Book(&page, view); err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "templates/book.html"}, Fact: err.Error(), Rule: "bad-template"})
		return PrintedBook{}, problems
	}
	document, more := b.bind(page.Bytes())
	problems.Add(more...)
	return PrintedBook{document: document, Name: b.word("book.title"), Chart: b.version, page: b.word("book.page", "n", pageMark)}, problems
}

// tooLargeToPrint refuses the book of a large chart: with a drawing for each joint it would be
// a case of paper, which nobody opens.
func tooLargeToPrint(in inputs) (diag.Problem, bool) {
	rows := jointRows(in.set)
	return diag.Problem{Pos: diag.Pos{File: "tables"}, Rule: "book-too-large",
		Fact: fmt.Sprintf("the chart has %d rows of joints, and a book is printed of %d at most", rows, largeRows),
		Hints: []string{"print a book of some tables: --root with a folder in which tables/ has only those",
			"the page of each size has a sheet of its own to print, and each table is there as CSV"}}, rows > largeRows
}

// bookStyle is read as it is: no page of the site loads it.
const bookStyle = "parts/book/book.css"

// evidence are the words for why a figure is believed, the best first.
var evidence = []string{string(tables.Published), string(tables.Measured), string(tables.CommonPractice), string(tables.Memory), "judgement"}

// book is a book under way.
type book struct {
	*site
	places    map[string]string // from an address of the site, without the base, to an id in the book
	numbers   map[string]int    // of the sources, by id
	published string            // the path the published site lives under
}

// view fills the book, chapter by chapter.
func (b *book) view(opt BookOptions, style []byte) *templates.Book {
	for n, src := range b.set.Sources {
		b.numbers[src.ID] = n + 1
		b.places[sourcesAddress+"#source-"+src.ID] = "source-" + src.ID
	}
	view := &templates.Book{
		Chart: b.version.Name(), Date: b.version.Date, Keeper: b.keeper,
		Style: template.CSS(slices.Concat(b.assets.Bytes("sheet.css"), b.assets.Bytes("more.css"), style)) + b.paperStyle(opt.Sheet), // ours, none of a contributor
	}
	if b.keeper.Web != "" {
		view.Web = b.keeper.Web + b.published
	}
	for _, basis := range evidence {
		view.Bases = append(view.Bases, templates.NamedBasis{Basis: b.word("basis." + basis), Says: b.word("book.why-" + basis)})
	}
	sources := templates.BookChapter{ID: "sources", Title: b.word("sources.title"), About: b.word("sources.about")}
	for _, src := range b.set.Sources {
		sources.Sources = append(sources.Sources, templates.BookSource{N: b.numbers[src.ID], SourceView: b.sourceView(src)})
	}
	method := templates.BookChapter{ID: "method", Title: b.word("method.title"), About: b.word("method.about")}
	method.Constants = b.constants()
	for i := range method.Constants {
		c := &method.Constants[i]
		c.Source = b.numbered([]templates.Link{c.Source})[0]
	}
	b.places[sourcesAddress], b.places["/about/method/"] = sources.ID, method.ID
	view.Chapters = []templates.BookChapter{b.guideChapter(), b.chartChapter(), b.sizesChapter(), b.namesChapter(), method, sources}
	return view
}

// paperStyle says which paper it is, and what stands under every page.
func (b *book) paperStyle(sheet string) template.CSS {
	foot := b.word("book.foot", "chart", b.version.Name(), "date", b.version.Date)
	foot = strings.NewReplacer(`\`, `\5c `, `"`, `\22 `, "<", `\3c `, "\n", " ").Replace(foot) // CSS Syntax 3, 4.3.7
	return template.CSS(fmt.Sprintf(`@page{size:%s;@bottom-left{content:"%s"}}`, cmp.Or(sheet, BookSheets[0]), foot))
}

// guideChapter is the guide in the order of its first page, the comparison by hand, and
// what the chart knows.
func (b *book) guideChapter() templates.BookChapter {
	chapter := templates.BookChapter{ID: "guide", Title: b.word("book.guide")}
	for _, p := range b.guidePages() {
		id := "guide-" + strings.ReplaceAll(p.Slug, "/", "-")
		address := "/" + p.Slug + "/"
		if p.Slug == byHandText {
			address = "/identify/"
		}
		text, ids := bound(string(p.HTML), id+"-", 1)
		b.places[address] = id
		for _, own := range ids {
			b.places[address+"#"+own] = id + "-" + own
		}
		chapter.Sections = append(chapter.Sections, templates.BookSection{ID: id, Title: p.Title, About: p.About, HTML: template.HTML(text)})
	}
	return chapter
}

// guidePages follow the links of the guide's first page, one after the other; those it
// does not name come after, by their names.
func (b *book) guidePages() []*content.Page {
	bySlug := map[string]*content.Page{}
	for _, p := range b.pages {
		if p.Slug == "measure" || strings.HasPrefix(p.Slug, "measure/") || p.Slug == byHandText || p.Slug == "about" {
			bySlug[p.Slug] = p
		}
	}
	var list []*content.Page
	take := func(slug string) {
		if p := bySlug[slug]; p != nil {
			list = append(list, p)
			delete(bySlug, slug)
		}
	}
	for _, slug := range []string{"measure", "measure/examples"} {
		p := bySlug[slug]
		take(slug)
		if p == nil {
			continue
		}
		for _, link := range p.Links {
			if to := strings.Trim(link.Href, "/"); to != "measure/examples" && to != "measure/glossary" && to != byHandText && to != "about" {
				take(to)
			}
		}
	}
	last := []string{byHandText, "about"}
	for _, p := range b.pages { // by slug
		if !slices.Contains(last, p.Slug) {
			take(p.Slug)
		}
	}
	for _, slug := range last {
		take(slug)
	}
	return list
}

// numbered puts the number of a source in the place of its title: the last chapter has
// the title.
func (b *book) numbered(links []templates.Link) []templates.Link {
	for i, link := range links {
		for id, n := range b.numbers {
			if link.Href == b.at(sourcesAddress+"#source-"+id) {
				links[i].Text = sourceMark(n)
			}
		}
	}
	return links
}

// numberedCell does so in a cell, and in what is printed elsewhere.
func (b *book) numberedCell(c templates.Cell) templates.Cell {
	c.Sources = b.numbered(c.Sources)
	for i, other := range c.Others {
		c.Others[i] = b.numberedCell(other)
	}
	return c
}

// rowPlace is where a row stands in the book.
func rowPlace(row *tables.Row) string { return rowAnchor(row.ID) }
