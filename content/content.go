// Package content owns the Markdown pages and turns them into HTML.
//
// [Load] reads every .md file of a folder into [Page]s and reports every problem at
// once. A page is a head between two lines of three dashes (title, about, next) and a
// body in Markdown: CommonMark, tables as GitHub writes them, and our own directives in
// three shapes. A container holds text, a leaf is one line, an inline stands in a sentence:
//
//	::: caution
//	Wear eye protection.
//	:::
//
//	::: step Zero it
//	Close the jaws and press zero.
//	:::
//
//	::: figure faces hold=inside-clip faces=groove-inner alt="Jaws in the two clip grooves"
//	The caption.
//	:::
//
//	:: table joints-wing rows=2C,3C
//	:: answer expect=identified rows=1310 query="hold=outside-clip&cap=1.062in&across=3.219in"
//	:: apart tool=steel-rule
//
//	A cap of {reading 1.062 in} belongs to {row 1310}.
//
// What they show comes from package figure and, through the [Resolver] in the options,
// from the chart and the core, so that no page holds a figure that can go stale. An outer
// container takes more colons than the one inside it. Fenced code is coloured by classes. Raw HTML is dropped, since pages come from strangers; links go to
// http, https, mailto and tel, to a place in the site ("/chart/", "../cap/") or in the
// page ("#float"). The title becomes the page's only h1, so a body starts at "##".
//
// Links and their places are handed on in [Page.Links]: only the build knows which
// addresses exist.
package content

import (
	"embed"
	"fmt"
	"html/template"
	"io"
	"io/fs"
	"path"
	"strings"

	"capspan/build/diag"
	"capspan/content/figure"
)

// FS holds the shipped pages. Load never uses it by itself.
//
//go:embed *.md about contribute measure site.yaml ??
var FS embed.FS

// Page is one Markdown file, rendered.
type Page struct {
	Slug  string // "about", "measure/cap"; measure/index.md has the slug "measure"
	Title string
	About string   // one sentence for the page's head
	Next  []string // slugs or addresses to go to next
	HTML  template.HTML
	Links []Link // every link written in it, with its place, for the build to check
	Pos   diag.Pos
}

// Link is an address a page points to, as written: without the base, and also for an
// image or an entry of the head's next list.
type Link struct {
	Href string
	Pos  diag.Pos
}

// Options say where the pages will live.
type Options struct {
	// Language is that of the pages; empty means English. A page of another language has the
	// slug of the English one, and its headings have the ids of the English ones.
	Language string

	Base  string   // path the site lives under, with both slashes; empty means "/"
	Chart Resolver // what directives ask

	// Root is where the whole site lives, when that is not where its pages in this language
	// do, and Shared are the folders at the root that belong to no language: "/data/".
	Root   string
	Shared []string

	Table, Code string       // what those who cannot see a table or a piece of code are told it is
	Drawings    figure.Words // what drawings say; without words they are drawn mute
}

// biggestPage is the most a page may hold, in bytes. The longest guide page is a
// twentieth of it; more is a mistake or mischief.
const biggestPage = 256 << 10

// Load reads every page of a language under fsys, ordered by slug. A page with problems is
// still returned when it could be rendered. Folders named testdata, and folders whose name
// starts with "." or "_", hold no pages.
func Load(fsys fs.FS, options Options) ([]*Page, diag.List) {
	var pages []*Page
	var problems diag.List
	err := Walk(fsys, options.Language, func(name string) error {
		source, err := readPage(fsys, path.Join(folderOf(options.Language), name))
		if err != nil {
			return err
		}
		var english []heading
		if folderOf(options.Language) != "." {
			english = englishHeadings(fsys, name)
		}
		page, found := parse(name, source, options, english)
		problems.Add(found...)
		if page != nil {
			pages = append(pages, page)
		}
		return nil
	})
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: folder}, Fact: err.Error(), Rule: "unreadable-page"})
	}
	problems.Sort()
	return pages, problems
}

// Walk visits the pages of a language in order, each by its name below the language's folder.
func Walk(fsys fs.FS, language string, visit func(name string) error) error {
	root := folderOf(language)
	return fs.WalkDir(fsys, root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			base := path.Base(name)
			if name != root && (base == "testdata" || strings.ContainsAny(base[:1], "._") || root == "." && LanguageFolder(name)) {
				return fs.SkipDir
			}
			return nil
		}
		if path.Ext(name) != ".md" {
			return nil
		}
		return visit(strings.TrimPrefix(name, root+"/"))
	})
}

// readPage reads no more of a file than shows that it is too big.
func readPage(fsys fs.FS, name string) ([]byte, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, biggestPage+1))
}

// folder is where the pages live in the project, so that positions start at its root.
const folder = "content"

// Parse turns one file into a page. The name is relative to the folder of the language; the
// page is nil when the file cannot be read as one at all.
func Parse(name string, source []byte, options Options) (*Page, diag.List) {
	return parse(name, source, options, nil)
}

// parse does so for a page whose headings take the ids of English ones, if there are any.
func parse(name string, source []byte, options Options, english []heading) (*Page, diag.List) {
	d := newDocument(path.Join(folder, folderOf(options.Language), name), slug(name), source)
	if len(source) > biggestPage {
		d.problem(0, "page-too-big", fmt.Sprintf("more than %d bytes", biggestPage), "split the page")
		return nil, d.problems
	}
	page := &Page{Slug: d.slug, Pos: diag.Pos{File: d.file}}
	body := d.head(page)
	d.body(page, body, options, english)
	d.problems.Sort()
	return page, d.problems
}

// slug is the page's address without slashes at its ends.
func slug(name string) string {
	s := strings.TrimSuffix(name, ".md")
	if s == "index" {
		return ""
	}
	return strings.TrimSuffix(s, "/index")
}
