package build

import (
	"bytes"
	"fmt"
	"runtime"
	"sync"

	"capspan/build/diag"
	"capspan/templates"
)

// rendered is a page made, with what is to be said of it.
type rendered struct {
	address string
	from    diag.Pos
	bytes   []byte
	err     error
	shown   sitemapEntry // empty for a page that is not to be found
}

// renderPages fills and renders every page into its file, on all cores: pages know
// nothing of each other. A frame that fails is a problem of that page only.
func (s *site) renderPages() diag.List {
	drafts, problems := s.drafts()
	if problems.Blocked() {
		return problems
	}
	views, from := make([]templates.Page, len(drafts)), make([]diag.Pos, len(drafts))
	onAllCores(len(drafts), func(n int) { views[n], from[n] = drafts[n]() })
	s.addSearch(views) // every page names the index, which is made from all of them

	pages := make([]rendered, len(drafts))
	shared := s.shared()
	onAllCores(len(drafts), func(n int) {
		page := &views[n]
		page.Site = shared
		s.head(page)
		var b bytes.Buffer
		err := s.frames.Render(&b, *page)
		pages[n] = rendered{page.Address, from[n], b.Bytes(), err, s.sitemapEntry(page)}
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
		return diag.List{addressTaken(p.address, p.from, first)}
	}
	s.places[p.address] = p.from
	s.add(pageFile(p.address), p.bytes, Pages)
	if p.shown.Location != "" {
		s.shown = append(s.shown, p.shown)
	}
	return nil
}

func addressTaken(address string, by, first diag.Pos) diag.Problem {
	return diag.Problem{Pos: by, Path: address, Rule: "address-taken", Fact: "two pages want the address " + address,
		Notes: []diag.Note{{Text: "first used by", Pos: first}}}
}

// shared is what every page of this build has in common.
func (s *site) shared() templates.Site {
	return templates.Site{
		Base: s.base, Chart: s.version.Name(), Date: s.version.Date, Live: s.live,
		Style: s.at(s.assets.Path("sheet.css")), More: s.at(s.assets.Path("more.css")), Scripts: s.scripts(),
		Policy: Policy, Integrity: s.integrity(), Paper: paper, Search: s.openSearch(),
		Worker: s.workerAddress(), Manifest: s.at(webManifestName),
	}
}
