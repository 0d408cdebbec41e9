package build

import (
	"html/template"
	"path"
	"strings"
	"sync"

	"capspan/build/diag"
	"capspan/content"
	"capspan/tables"
	"capspan/templates"
)

// Content pages with these slugs have no address of their own: they are the words
// of a page that is made from data.
const (
	homeText    = "home"
	byHandText  = "by-hand"
	correctText = "correct-by-hand"
	missingText = "not-found"
)

// draft fills the view of one page and says which source it comes from.
type draft func() (templates.Page, diag.Pos)

// drafts lists the pages of the site, each still to be filled, but for those that a large
// chart has very many of (manyDrafts).
func (s *site) drafts() ([]draft, diag.List) {
	var problems diag.List
	words := map[string]*content.Page{}
	for _, p := range s.pages {
		words[p.Slug] = p
	}
	for _, slug := range []string{homeText, byHandText, correctText, missingText} {
		if words[slug] == nil {
			problems.Add(diag.Problem{Pos: diag.Pos{File: "content/" + slug + ".md"}, Rule: "missing-page",
				Fact: "the site needs this page and it is not there"})
		}
	}
	if problems.Blocked() {
		return nil, problems
	}

	var drafts []draft
	add := func(d draft) { drafts = append(drafts, d) }
	add(func() (templates.Page, diag.Pos) { return s.home(words[homeText]) })
	add(func() (templates.Page, diag.Pos) { return s.identify(words[byHandText]) })
	facts, wrong := s.addFacts()
	problems.Add(wrong...)
	add(func() (templates.Page, diag.Pos) { return s.correctPage(words[correctText], facts) })
	add(s.sendPage)
	add(s.cardPage)
	add(s.orderPage)
	add(s.shaftPage)
	add(s.chartIndex)
	add(s.sourcesPage)
	add(s.methodPage)
	add(s.changesPage)
	drafts = append(drafts, s.drivelineDrafts()...)
	add(s.notKept)
	if s.embed.path != "" {
		add(s.embedPage)
	}
	s.az = &templates.AZ{} // filled from all pages by addSearch
	add(s.searchPage)
	add(s.azPage)
	if list := partTables(s.set); len(list) > 0 {
		add(s.partsPage)
		for _, table := range list {
			add(func() (templates.Page, diag.Pos) { return s.partPage(table) })
		}
	}
	for _, table := range s.set.Tables {
		if s.large() && table.Joint() {
			add(func() (templates.Page, diag.Pos) { return s.groupsPage(table, s.groups()[table]) })
			continue
		}
		add(func() (templates.Page, diag.Pos) { return s.tablePage(table) })
		if table.Joint() {
			drafts = append(drafts, s.rowDrafts(table)...)
		}
	}
	for _, retired := range s.set.Retired {
		add(func() (templates.Page, diag.Pos) { return s.retiredPage(retired) })
	}
	for _, p := range s.pages {
		switch p.Slug {
		case homeText, byHandText, correctText:
		case missingText:
			add(func() (templates.Page, diag.Pos) {
				page, from := s.textPage(p, "/404.html")
				page.Lost = s.large()
				return page, from
			})
		default:
			add(func() (templates.Page, diag.Pos) { return s.textPage(p, "/"+p.Slug+"/") })
		}
	}
	return drafts, problems
}

// rowDrafts are the pages and paper sheets of a table's joints.
func (s *site) rowDrafts(table *tables.Table) []draft {
	var list []draft
	for _, row := range table.Rows {
		life := sync.OnceValue(func() template.HTML { return s.drawn().LifeSize("life", s.drawing(row)) })
		list = append(list,
			func() (templates.Page, diag.Pos) { return s.jointPage(row, life) },
			func() (templates.Page, diag.Pos) { return s.paperPage(row, life) })
	}
	return list
}

// manyDrafts are the pages that a large chart has very many of: of its sizes, of the groups
// of its tables, and of its names.
func (s *site) manyDrafts() []rowDraft {
	if !s.large() {
		return nil
	}
	list := s.sizeDrafts()
	for _, table := range s.set.Tables {
		if table.Joint() {
			list = append(list, s.groupDrafts(table)...)
		}
	}
	return append(list, s.namesDrafts()...)
}

// pageFile is the file a page address is served from: /chart/ is chart/index.html.
func pageFile(address string) string {
	if strings.HasSuffix(address, "/") {
		return path.Join(address, "index.html")[1:]
	}
	return address[1:]
}

func (s *site) home(words *content.Page) (templates.Page, diag.Pos) {
	rows := 0
	for _, t := range s.set.Tables {
		rows += len(t.Rows)
	}
	return templates.Page{
		Address: "/", Title: words.Title, About: words.About, Sheet: s.word("home.sheet"),
		Body: &templates.Home{Ways: s.ways(), Text: words.HTML, Rows: rows, Tables: len(s.set.Tables), Own: s.ownLinks()},
	}, words.Pos
}

// ways are the three things a reader may have in hand.
func (s *site) ways() []templates.Link {
	return []templates.Link{
		{Href: s.at("/identify/"), Text: s.word("home.caliper"), Note: s.word("home.caliper-note")},
		{Href: s.at("/measure/"), Text: s.word("home.no-readings"), Note: s.word("home.no-readings-note")},
		{Href: s.at("/chart/"), Text: s.word("home.name"), Note: s.word("home.name-note")},
	}
}

func (s *site) textPage(p *content.Page, address string) (templates.Page, diag.Pos) {
	next := make([]templates.Link, 0, len(p.Next))
	for _, n := range p.Next {
		next = append(next, s.nextLink(n))
	}
	return templates.Page{
		Address: address, Title: p.Title, About: p.About, Sheet: p.Title,
		Head: templates.Head{Data: s.howToOf(p, address)}, Body: &templates.Text{HTML: p.HTML, Next: next},
	}, p.Pos
}

// nextLink turns a page's "next" into a link with the target's own title.
func (s *site) nextLink(target string) templates.Link {
	slug := strings.Trim(target, "/")
	for _, p := range s.pages {
		if p.Slug == slug {
			return templates.Link{Href: s.at("/" + slug + "/"), Text: p.Title, Note: p.About}
		}
	}
	for _, d := range s.driveline.described {
		if "/"+slug+"/" == calculationAddress(d.Name) {
			return s.calculationLink(d)
		}
	}
	titles := map[string]string{"": s.word("home.link"), "identify": s.word("identify.title"), "chart": s.word("chart.title"),
		"driveline": s.word("driveline.title")}
	text, known := titles[slug]
	if !known {
		text = target
	}
	return templates.Link{Href: s.at("/" + slug + "/"), Text: text}
}

// retiredPage stands at the address of a row that is no longer in the chart.
func (s *site) retiredPage(r tables.Retired) (templates.Page, diag.Pos) {
	body := &templates.Moved{ID: r.ID, Why: r.Why}
	for _, id := range r.To {
		body.To = append(body.To, s.rowLink(s.set.Find(id)))
	}
	return templates.Page{Address: rowAddress(r.ID), Title: s.word("moved.title", "id", r.ID), Sheet: s.word("moved.sheet"),
		About: s.word("moved.about"), Body: body}, r.Pos
}
