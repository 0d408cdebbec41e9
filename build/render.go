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
}

// renderPages fills and renders every page into its file, on all cores: pages know
// nothing of each other. A frame that fails is a problem of that page only.
func (s *site) renderPages() diag.List {
	drafts, problems := s.drafts()
	if problems.Blocked() {
		return problems
	}
	pages := make([]rendered, len(drafts))
	shared := s.shared()
	var group sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for n := range next {
				page, from := drafts[n]()
				page.Site = shared
				var b bytes.Buffer
				err := s.frames.Render(&b, page)
				pages[n] = rendered{page.Address, from, b.Bytes(), err}
			}
		})
	}
	for n := range drafts {
		next <- n
	}
	close(next)
	group.Wait()

	s.places = map[string]diag.Pos{}
	for _, p := range pages {
		problems.Add(s.place(p)...)
	}
	return problems
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
	return nil
}

// shared is what every page of this build has in common.
func (s *site) shared() templates.Site {
	return templates.Site{
		Base: s.base, Chart: s.version.Name(), Date: s.version.Date, Live: s.live,
		Style: s.at(s.assets.Path("sheet.css")), Scripts: s.scripts(),
	}
}
