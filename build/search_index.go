package build

import (
	"slices"
	"strings"

	"golang.org/x/text/language"

	"capspan/build/diag"
	"capspan/build/search"
	"capspan/templates"
)

// Addresses of the two pages for finding things: one asks, one lists.
const (
	searchAddress = "/search/" // which reads the words behind #q=
	azAddress     = "/a-z/"
)

// glossaryText is the page whose list items are entries of their own.
const glossaryText = "measure/glossary"

func (s *site) searchPage() (templates.Page, diag.Pos) {
	return templates.Page{Address: searchAddress, Title: s.word("search.title"), Sheet: s.word("search.title"), About: s.word("search.about"),
		Body: &templates.Search{}}, diag.Pos{File: "templates/search.html"}
}

func (s *site) azPage() (templates.Page, diag.Pos) {
	return templates.Page{Address: azAddress, Title: s.word("a-z.title"), Sheet: s.word("a-z.title"), About: s.word("a-z.about"),
		Body: s.az}, diag.Pos{File: "templates/a-z.html"}
}

// find folds words as the language of the site does.
func (s *site) find() *search.Language {
	return search.In(language.Make(s.words.Language), s.word("search.passing"))
}

// addSearch makes the index of all pages, once they are filled, and with it the page
// from A to Z. A page added later is found by being there.
func (s *site) addSearch() {
	find := s.find()
	var entries []search.Entry
	for _, d := range s.drafted {
		entries = append(entries, s.entriesOf(find, d.page)...)
	}
	switch text := s.indexOf(find, entries); {
	case s.large():
		s.addSearchRows(s.addAsset("assets/search-index", ".json", text))
	case s.live == "":
		s.index = s.addAsset("assets/search-index", ".json", text)
	default: // nothing is kept under serve, and a new name would change every page with the words of one
		s.index = "assets/" + strings.ReplaceAll(s.folder, "/", "-") + "search-index.json"
		s.addRoot(s.index, text, Assets)
	}
	s.az.Names = s.names
	for _, letter := range find.Letters(entries) {
		view := templates.Letter{Name: letter.Name, ID: letter.ID}
		for _, line := range letter.Lines {
			link := templates.Link{Href: s.base + line.Entry.Address, Text: line.Text, Note: line.Entry.Note}
			if line.Also {
				link.Note = s.word("a-z.also", "name", line.Entry.Title)
			}
			view.Links = append(view.Links, link)
		}
		s.az.Letters = append(s.az.Letters, view)
	}
}

// indexOf is the index of a small chart, or what a large one's has beside its rows.
func (s *site) indexOf(find *search.Language, entries []search.Entry) []byte {
	if s.large() {
		return mustJSON(find.NewIndex(s.base, "", entries))
	}
	return mustJSON(find.NewIndex(s.base, s.atRoot(s.chart), entries))
}

// entriesOf lists what a page is found by.
func (s *site) entriesOf(find *search.Language, page templates.Page) []search.Entry {
	if !strings.HasSuffix(page.Address, "/") {
		return nil // stands in for a page that is not there
	}
	sheet := find.New(search.Sheet, page.Address, page.Title, page.About, nil, "")
	switch body := page.Body.(type) {
	case *templates.Search, *templates.AZ, *templates.Names, *templates.Paper, *templates.EmbedFrame:
		return nil // paper sheets are reached from their rows, and a frame from other pages
	case *templates.Joint:
		row := s.set.Find(body.ID)
		text := strings.Join(append([]string{body.Note}, s.ownLines(row)...), " ")
		return []search.Entry{find.New(search.Row, page.Address, body.ID, body.Lead, slices.Concat(body.Also, s.ownNames(row)), text)}
	case *templates.GroupPage:
		return nil // its lines are sizes, which have pages
	case *templates.Size:
		var entries []search.Entry
		for _, writing := range body.Writings {
			for _, kit := range writing.Kits {
				row := s.set.Find(kit.ID)
				text := strings.Join(append([]string{sentence(row.Note)}, s.ownLines(row)...), " ")
				entries = append(entries, find.New(search.Row, page.Address+"#"+kit.ID, kit.ID, body.ID, slices.Concat(kit.Also, s.ownNames(row)), text))
			}
		}
		return entries
	case *templates.Table:
		return append([]search.Entry{sheet}, s.otherRows(find, page.Address, body)...)
	case *templates.Sources:
		entries := []search.Entry{sheet}
		for _, source := range body.Sources {
			entries = append(entries, find.New(search.Source, page.Address+"#source-"+source.ID, source.Title,
				joined(source.Publisher, source.Edition, source.Kind), nil, source.ID+" "+source.Trust))
		}
		return entries
	case *templates.Text:
		of := [3]string{page.Title, page.About, string(body.HTML)}
		return keep(s.again, "found on "+page.Address, of, func() []search.Entry { return s.textEntries(find, page, of[2]) })
	}
	return []search.Entry{sheet}
}

// textEntries are a page in words, its headings, and the words it explains.
func (s *site) textEntries(find *search.Language, page templates.Page, html string) []search.Entry {
	sections := search.Sections(html)
	entries := []search.Entry{find.New(search.Guide, page.Address, page.Title, page.About, nil, page.Address+" "+sections[0].Text)}
	if page.Address == "/"+glossaryText+"/" {
		for _, term := range search.Terms(html) {
			entries = append(entries, find.New(search.Word, page.Address+"#"+term.Section, term.Name, capital(term.Says), nil, ""))
		}
		return entries
	}
	for _, section := range sections[1:] {
		entries = append(entries, find.New(search.Guide, page.Address+"#"+section.ID, section.Heading,
			s.word("a-z.in", "page", page.Title), nil, section.Text))
	}
	return entries
}

// otherRows are the rows of a table that have no pages of their own.
func (s *site) otherRows(find *search.Language, address string, table *templates.Table) []search.Entry {
	var entries []search.Entry
	for _, row := range table.Rows {
		if row.Row.Href == "" {
			entries = append(entries, find.New(search.Row, address+"#"+row.Anchor, row.Row.Text, s.word("a-z.in", "page", table.Title),
				slices.Concat(row.Also, s.ownNames(s.set.Find(row.Row.Text))), row.Search))
		}
	}
	return entries
}

// joined puts what is known of a source into one line.
func joined(parts ...string) string {
	var known []string
	for _, part := range parts {
		if part != "" {
			known = append(known, part)
		}
	}
	return strings.Join(known, ", ")
}
