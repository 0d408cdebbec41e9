package build

import (
	"bytes"
	"fmt"
	"runtime"
	"sync"

	"capspan/build/diag"
	"capspan/build/search"
	"capspan/templates"
)

// drafted is a page filled, with the place of what it is made from.
type drafted struct {
	page templates.Page
	from diag.Pos
}

// rendered is a page made, with what is to be said of it. Its bytes are in the file alone.
type rendered struct {
	address string
	from    diag.Pos
	file    File
	err     error
	shown   sitemapEntry // empty for a page that is not to be found
	entries []search.Entry
}

// fillPages fills the view of every page, on all cores: pages know nothing of each other.
func (s *site) fillPages() diag.List {
	drafts, problems := s.drafts()
	if problems.Blocked() {
		return problems
	}
	s.drafted = make([]drafted, len(drafts))
	onAllCores(len(drafts), func(n int) { s.drafted[n].page, s.drafted[n].from = drafts[n]() })
	return problems
}

// renderMany fills, renders and hands on the pages that a large chart has too many of to
// keep them all: of each only its file's place, its line in the sitemap and what it is found
// by stay. They stand in every language, and name nothing that is made of all pages.
func (s *site) renderMany(sites []*site) diag.List {
	find := s.find()
	several := len(sites) > 1
	problems := s.renderAll(len(s.many), func(n int) (*templates.Page, diag.Pos, []search.Entry) {
		page, from := s.many[n]()
		s.many[n] = nil
		if several {
			linkPage(sites, s, &page, func(*site) bool { return true })
		}
		return &page, from, s.entriesOf(find, page)
	})
	return problems
}

// renderPages renders the pages that were kept until all were known.
func (s *site) renderPages() diag.List {
	return s.renderAll(len(s.drafted), func(n int) (*templates.Page, diag.Pos, []search.Entry) {
		return &s.drafted[n].page, s.drafted[n].from, nil
	})
}

// renderAll renders pages into their files, on all cores. A frame that fails is a problem of
// that page only.
func (s *site) renderAll(count int, filled func(n int) (*templates.Page, diag.Pos, []search.Entry)) diag.List {
	var problems diag.List
	pages := make([]rendered, count)
	shared, large := s.shared(), s.large()
	onAllCores(count, func(n int) {
		page, from, entries := filled(n)
		page.Site = shared
		if large && !ofWholeChart(page.Body) {
			page.Site.Chart, page.Site.Date = "", ""
		}
		s.head(page)
		var b bytes.Buffer
		err := s.frames.Render(&b, *page)
		pages[n] = rendered{page.Address, from, s.spool.keep(s.folder+pageFile(page.Address), b.Bytes(), Pages), err, s.sitemapEntry(page), entries}
	})
	for _, p := range pages {
		problems.Add(s.place(p)...)
	}
	return problems
}

// onAllCores does a piece of work for each number below n.
func onAllCores(n int, work func(int)) {
	var group sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for n := range next {
				work(n)
			}
		})
	}
	for i := range n {
		next <- i
	}
	close(next)
	group.Wait()
}

// place gives a page its file; an address belongs to one page.
func (s *site) place(p rendered) diag.List {
	if p.err != nil {
		return diag.List{{Pos: p.from, Path: p.address, Rule: "bad-template", Fact: fmt.Sprintf("page cannot be rendered: %v", p.err)}}
	}
	if first, taken := s.places[p.address]; taken {
		return diag.List{{Pos: p.from, Path: p.address, Rule: "address-taken", Fact: "two pages want the address " + p.address,
			Notes: []diag.Note{{Text: "first used by", Pos: first}}}}
	}
	s.places[p.address] = p.from
	s.files = append(s.files, p.file)
	s.entries = append(s.entries, p.entries...)
	if p.shown.Location != "" {
		s.shown = append(s.shown, p.shown)
	}
	return nil
}

// shared is what every page of this build has in common.
func (s *site) shared() templates.Site {
	return templates.Site{
		Base: s.base, Root: s.root, Chart: s.version.Name(), Date: s.version.Date, Live: s.live,
		Style: s.atRoot(s.assets.Path("sheet.css")), More: s.atRoot(s.assets.Path("more.css")), Scripts: s.scripts(),
		Policy: Policy, Integrity: s.integrity(), Paper: s.papers(), Search: s.openSearch(),
		Worker: s.workerAddress(), Manifest: s.at(webManifestName), Own: s.ownView(),
	}
}
