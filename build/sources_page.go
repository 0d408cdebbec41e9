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
		body.Sources = append(body.Sources, sourceView(src))
	}
	return templates.Page{Address: sourcesAddress, Title: "Sources", Sheet: "Sources",
		About: "Every source the chart and the guide name: what kind it is, where it is, and how far it is trusted.",
		Body:  body}, diag.Pos{File: "tables/sources.yaml"}
}
