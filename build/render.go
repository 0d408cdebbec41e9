package build

import (
	"bytes"
	"fmt"
	"runtime"
	"sync"

	"capspan/build/diag"
	"capspan/templates"
)

// drafted is a page filled, with the place of what it is made from.
type drafted struct {
	page templates.Page
	from diag.Pos
}

// rendered is a page made, with what is to be said of it.
type rendered struct {
	address string
	from    diag.Pos
	bytes   []byte
	err     error
	shown   sitemapEntry // empty for a page that is not to be found
}

// fillPages fills the view of every page, on all cores: pages know nothing of each other.
func (s *site) fillPages() diag.List {
	drafts, problems := s.drafts()
	if problems.Blocked() {
		return problems
	}
	s.drafted = make([]drafted, len(drafts))
	onAllCores(len(drafts), func(n int) { s.drafted[n].page, s.drafted[n].from = drafts[n]() })
	s.addSearch() // every page names the index, which is made from all of them
	return problems
}

// renderPages renders every page into its file. A frame that fails is a problem of that
// page only.
func (s *site) renderPages() diag.List {
	var problems diag.List
	pages := make([]rendered, len(s.drafted))
	shared, large := s.shared(), s.large()
	onAllCores(len(pages), func(n int) {
		page := &s.drafted[n].page
		page.Site = shared
		if large && !ofWholeChart(page.Body) {
			page.Site.Chart, page.Site.Date = "", ""
		}
		s.head(page)
		var b bytes.Buffer
		err := s.frames.Render(&b, *page)
		pages[n] = rendered{page.Address, s.drafted[n].from, b.Bytes(), err, s.sitemapEntry(page)}
	})

	s.places = map[string]diag.Pos{}
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
	s.add(pageFile(p.address), p.bytes, Pages)
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
