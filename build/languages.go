package build

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// A site is made in every language that content/site.yaml names. The first stands at the
// root, each other in a folder of its own, with all its pages, its index, feed, manifest
// and worker:
//
//	/chart/     /worker.js      the first language
//	/es/chart/  /es/worker.js   another
//	/assets/ /data/ /schema/    what belongs to none
//
// Addresses below the folder, and all that stands behind a #, are the same in every
// language. What two languages have alike is one file, because assets are named by their
// content and lie at the root.

// languagesOf are the languages to make the site in, the first one first.
func languagesOf(keeper templates.Keeper, opt Options) []string {
	if opt.Language != "" {
		return []string{opt.Language}
	}
	if len(keeper.Languages) == 0 {
		return []string{catalogue.English}
	}
	return keeper.Languages
}

// link tells every page where it stands in the other languages.
func link(sites []*site) {
	if len(sites) == 1 {
		return
	}
	for _, other := range sites[1:] {
		sites[0].apart = append(sites[0].apart, other.folder)
	}
	has := make([]map[string]bool, len(sites))
	for n, s := range sites {
		has[n] = map[string]bool{}
		for _, d := range s.drafted {
			has[n][d.page.Address] = true
		}
	}
	for _, s := range sites {
		for i := range s.drafted {
			page := &s.drafted[i].page
			linkPage(sites, s, page, func(other *site) bool { return has[slices.Index(sites, other)][page.Address] })
		}
	}
}

// linkPage tells one page of a site where it stands in the other languages; has says whether
// a language has it.
func linkPage(sites []*site, s *site, page *templates.Page, has func(*site) bool) {
	for _, other := range sites {
		there := has(other) && strings.HasSuffix(page.Address, "/") // no page stands in for others
		if other != s {
			page.Languages = append(page.Languages, other.languageLink(page.Address, there))
		}
		if there && s.keeper.Web != "" {
			page.Head.Alternates = append(page.Head.Alternates, templates.Alternate{Language: other.words.Language, Href: other.full(page.Address)})
		}
	}
	if has(sites[0]) && len(page.Head.Alternates) > 0 {
		page.Head.Alternates = append(page.Head.Alternates, templates.Alternate{Language: "x-default", Href: sites[0].full(page.Address)})
	}
}

// languageLink leads to the same page in the site's language, or to its front page.
func (s *site) languageLink(address string, there bool) templates.LanguageLink {
	link := templates.LanguageLink{Language: s.words.Language, Name: s.word("site.language"), Href: s.at("/")}
	if there {
		link.Href, link.Same = s.at(address), true
	}
	return link
}

// share gives a language the files of the first that belong to none and that its pages
// lead to: the open data and the published forms.
func (s *site) share(first *site) {
	if s == first {
		return
	}
	for _, f := range first.files {
		if strings.HasPrefix(f.Path, dataFolder) || strings.HasPrefix(f.Path, schemaFolder) {
			s.files = append(s.files, f)
		}
	}
}

// together makes one output of all languages: each file once.
func together(sites []*site) (Output, diag.List) {
	first := sites[0]
	out := Output{Chart: first.version, Base: first.root}
	var problems diag.List
	files := map[string]File{}
	for _, s := range sites {
		out.Languages = append(out.Languages, Language{s.words.Language, s.folder})
		out.Redirects = append(out.Redirects, s.redirects()...)
		out.Stale = out.Stale || s.core != nil && s.core.stale || s.driveline.stale
		for _, f := range s.files {
			before, taken := files[f.Path]
			switch {
			case !taken:
				files[f.Path] = f
				out.Files = append(out.Files, f)
			case before.sum() != f.sum():
				problems.Add(diag.Problem{Pos: diag.Pos{File: "content/" + keeperFile}, Path: "/" + f.Path, Rule: "address-taken",
					Fact:  fmt.Sprintf("a page of the first language has the address of the language %q", s.words.Language),
					Hints: []string{"give the page another name"}})
			}
		}
	}
	slices.SortFunc(out.Redirects, func(a, b Redirect) int { return cmp.Compare(a.From, b.From) })
	return out, problems
}

// saidOnce leaves out what was said before: languages share their sources, and each says what
// is wrong with them.
func saidOnce(problems diag.List) diag.List {
	problems.Sort()
	return slices.CompactFunc(problems, func(a, b diag.Problem) bool { return a.String() == b.String() })
}
