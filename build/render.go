package build

import (
	"bytes"
	"fmt"
	"runtime"
	"sync"

	"capspan/build/diag"
	"capspan/templates"
)

// renderPages renders every draft into its file, on all cores: pages know nothing of
// each other. A frame that fails is a problem of that page only.
func (s *site) renderPages() diag.List {
	drafts, problems := s.drafts()
	problems.Add(s.claimAddresses(drafts)...)
	if problems.Blocked() {
		return problems
	}
	shared := s.shared()
	files := make([]File, len(drafts))
	failed := make([]error, len(drafts))
	var group sync.WaitGroup
	next := make(chan int)
	for range runtime.GOMAXPROCS(0) {
		group.Go(func() {
			for n := range next {
				page := drafts[n].page
				page.Site = shared
				var b bytes.Buffer
				failed[n] = s.frames.Render(&b, page)
				files[n] = File{Path: pageFile(page.Address), Bytes: b.Bytes(), Stage: Pages}
			}
		})
	}
	for n := range drafts {
		next <- n
	}
	close(next)
	group.Wait()

	s.files = append(s.files, files...)
	for n, err := range failed {
		if err != nil {
			problems.Add(diag.Problem{Pos: drafts[n].from, Path: drafts[n].page.Address, Rule: "bad-template",
				Fact: fmt.Sprintf("page cannot be rendered: %v", err)})
		}
	}
	return problems
}

// shared is what every page of this build has in common.
func (s *site) shared() templates.Site {
	return templates.Site{
		Base: s.base, Chart: s.version.Name(), Date: s.version.Date, Live: s.live,
		Style: s.at(s.assets.Path("sheet.css")), Scripts: s.scripts(),
	}
}

// claimAddresses gives each address to one page.
func (s *site) claimAddresses(drafts []draft) diag.List {
	var problems diag.List
	s.places = map[string]diag.Pos{}
	for _, d := range drafts {
		address := d.page.Address
		if first, taken := s.places[address]; taken {
			problems.Add(diag.Problem{Pos: d.from, Path: address, Rule: "address-taken",
				Fact:  "two pages want the address " + address,
				Notes: []diag.Note{{Text: "first used by", Pos: first}}})
			continue
		}
		s.places[address] = d.from
	}
	return problems
}
