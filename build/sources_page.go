package build

import (
	"capspan/build/diag"
	"capspan/templates"
)

// sourcesAddress is where the registry is shown; every value's sources link into it.
const sourcesAddress = "/about/sources/"

// sourcesPage shows the registry, so that a reader can look a figure up.
func (s *site) sourcesPage() (templates.Page, diag.Pos) {
	body := &templates.Sources{}
	for _, src := range s.set.Sources {
		body.Sources = append(body.Sources, s.sourceView(src))
	}
	return templates.Page{Address: sourcesAddress, Title: s.word("sources.title"), Sheet: s.word("sources.title"), About: s.word("sources.about"),
		Body: body}, diag.Pos{File: "tables/sources.yaml"}
}
