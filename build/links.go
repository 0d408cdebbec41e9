package build

import (
	"bytes"
	"fmt"
	"net/url"
	"path"
	"strings"

	"golang.org/x/net/html"

	"capspan/build/diag"
)

// checkLinks follows what contributors wrote: links in Markdown, the "next" of a
// page, the method of a column. Each must lead to a file of this site and, with a
// fragment, to an id on that page. Links out of the site are left alone: the live
// web is never a reason not to build.
func (s *site) checkLinks() diag.List {
	files := map[string]File{}
	for _, f := range s.files {
		files[strings.TrimPrefix(f.Path, s.folder)] = f // as a page of this language is linked to
	}
	var problems diag.List
	check := func(pos diag.Pos, from, href string) {
		address, fragment, inside := resolve(from, href)
		if !inside {
			return
		}
		file, there := files[pageFile(address)]
		switch {
		case !there:
			problems.Add(diag.Problem{Pos: pos, Path: from, Rule: "broken-link",
				Fact: fmt.Sprintf("link %q leads to no page", href), Hints: s.nearAddress(address)})
		case fragment != "" && !hasID(file.mustRead(), fragment):
			problems.Add(diag.Problem{Pos: pos, Path: from, Rule: "broken-fragment",
				Fact: fmt.Sprintf("link %q: the page has no place named %q", href, fragment)})
		}
	}
	for _, p := range s.pages {
		from := "/" + p.Slug + "/"
		for _, link := range p.Links {
			check(link.Pos, from, link.Href)
		}
	}
	for _, t := range s.set.Tables {
		for _, c := range t.Columns {
			if c.Method != "" {
				check(c.Pos, tableAddress(t), "/measure/"+c.Method+"/")
			}
		}
	}
	return problems
}

// resolve turns a link on a page into an address of this site without the base.
func resolve(from, href string) (address, fragment string, inside bool) {
	u, err := url.Parse(href)
	if err != nil || u.Scheme != "" || u.Host != "" {
		return "", "", false
	}
	target := (&url.URL{Path: from}).ResolveReference(u)
	// The identify page reads its own fragment; it names no place on the page.
	if target.Path == "/identify/" {
		return target.Path, "", true
	}
	return target.Path, target.Fragment, true
}

// nearAddress offers the one page whose last part is the wanted one's.
func (s *site) nearAddress(address string) []string {
	var near []string
	for known := range s.places {
		if path.Base(known) == path.Base(address) {
			near = append(near, "did you mean "+known+"?")
		}
	}
	if len(near) != 1 {
		return nil
	}
	return near
}

// hasID reports whether a page has an element of that id.
func hasID(page []byte, id string) bool {
	z := html.NewTokenizer(bytes.NewReader(page))
	for {
		switch z.Next() {
		case html.ErrorToken:
			return false
		case html.StartTagToken, html.SelfClosingTagToken:
			for {
				key, value, more := z.TagAttr()
				if string(key) == "id" && string(value) == id {
					return true
				}
				if !more {
					break
				}
			}
		}
	}
}
