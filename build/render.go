package build

import (
	"bytes"
	"fmt"
	"maps"
	"path"
	"reflect"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"

	"capspan/build/diag"
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
}

// counter counts the pages that are made.
type counter struct {
	made, all atomic.Int64
	tell      func(made, all int) // nil: nobody wants to know
}

func (c *counter) one() {
	if made := c.made.Add(1); c.tell != nil {
		c.tell(int(made), int(c.all.Load()))
	}
}

// fillPages fills the view of every page, on all cores: pages know nothing of each other.
func (s *site) fillPages() diag.List {
	var err error
	if s.driveline, err = s.calculating(); err != nil {
		return diag.List{drivelineProblem(err)}
	}
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
// by stay. They stand in every language, and name nothing that is made of all pages. With a
// memory, one that would come out the same is not made again.
func (s *site) renderMany(sites []*site) diag.List {
	drafts := s.many
	if len(drafts) == 0 {
		return nil
	}
	s.many = nil
	shared := s.steady(s.shared())
	known, noted := s.known(shared)
	pages := make([]rendered, len(drafts))
	kept := make([]remembered, len(drafts))
	onAllCores(len(drafts), func(n int) {
		d := drafts[n]
		drafts[n] = rowDraft{} // what it holds may go
		defer s.progress.one()
		if len(sites) > 1 {
			d.beside = append(slices.Clip(d.beside), s.standsIn(d.address, sites)...)
		}
		if before, is := known.pages[d.address]; is && s.unchanged(known, before, d) {
			pages[n] = rendered{d.address, d.from, before.file, nil, before.shown}
			kept[n] = before
			return
		}
		one := s.seeing()
		page, from := d.fill(one)
		if len(sites) > 1 {
			linkPage(sites, s, &page, func(other *site) bool { return other.has[page.Address] })
		}
		pages[n] = s.render(&page, from, shared)
		if noted {
			kept[n] = s.remember(d, one.seen, pages[n])
		}
	})
	if noted {
		next := pageMemory{known.rest, s.again.again.now, make(map[string]remembered, len(kept))}
		for n, p := range pages {
			if p.err == nil {
				next.pages[p.address] = kept[n]
			}
		}
		s.memory.pages[s.words.Language] = next
	}
	return s.placeAll(pages)
}

// known is what the memory has of the pages of rows, if all they have in common is as it was,
// and whether they are to be remembered.
func (s *site) known(shared templates.Site) (pageMemory, bool) {
	if s.again == nil || len(s.previews) > 0 {
		return pageMemory{}, false
	}
	rest := s.rest(shared)
	if before := s.memory.pages[s.words.Language]; before.rest == rest {
		return before, true
	}
	return pageMemory{rest: rest}, true
}

// standsIn are the other languages that have a page of rows.
func (s *site) standsIn(address string, sites []*site) []string {
	var list []string
	for _, other := range sites {
		if other != s && other.has[address] {
			list = append(list, other.words.Language)
		}
	}
	return list
}

// renderPages renders the pages that were kept until all were known.
func (s *site) renderPages() diag.List {
	pages := make([]rendered, len(s.drafted))
	shared := s.shared()
	steady := s.steady(shared)
	then := s.again.viewsThen()
	s.progress.all.Add(int64(len(pages)))
	onAllCores(len(pages), func(n int) {
		defer s.progress.one()
		page, site := &s.drafted[n].page, shared
		if !ofWholeChart(page.Body) {
			site = steady
		}
		s.complete(page, site)
		if before, is := then[page.Address]; is && reflect.DeepEqual(before.page, *page) {
			pages[n] = rendered{page.Address, s.drafted[n].from, before.file, nil, s.sitemapEntry(page)}
		} else {
			pages[n] = s.rendered(page, s.drafted[n].from)
		}
	})
	if s.again != nil && s.tableWords == nil {
		s.again.keepViews(s.drafted, pages)
	}
	return s.placeAll(pages)
}

// render renders a page into its file.
func (s *site) render(page *templates.Page, from diag.Pos, shared templates.Site) rendered {
	s.complete(page, shared)
	return s.rendered(page, from)
}

// complete adds to a page what it has in common with others, and what it says of itself.
func (s *site) complete(page *templates.Page, shared templates.Site) {
	page.Site = shared
	s.head(page)
}

// scratch is what pages are rendered in; a file has its own bytes, and no more of them than it
// needs.
var scratch = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// rendered renders a page that is complete. A frame that fails is a problem of that page only.
func (s *site) rendered(page *templates.Page, from diag.Pos) rendered {
	b := scratch.Get().(*bytes.Buffer)
	defer scratch.Put(b)
	b.Reset()
	err := s.frames.Render(b, *page)
	return rendered{page.Address, from, s.spool.keepCopy(s.folder+pageFile(page.Address), b.Bytes(), Pages), err, s.sitemapEntry(page)}
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

func (s *site) placeAll(pages []rendered) diag.List {
	var problems diag.List
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
	s.files = append(s.files, p.file)
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

// steady is what pages share that are not about the whole chart: of a large one without its
// version, and without the names of files that change with any row.
func (s *site) steady(shared templates.Site) templates.Site {
	if !s.large() {
		return shared
	}
	shared.Chart, shared.Date = "", ""
	shared.Scripts = maps.Clone(shared.Scripts)
	maps.DeleteFunc(shared.Scripts, func(name, address string) bool {
		return path.Ext(name) == ".json" && address != s.atRoot(s.index)
	})
	return shared
}
