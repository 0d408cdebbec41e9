package build

import (
	"strconv"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

// methodPage prints every constant of the identification with what it rests on, as the
// core itself declares them.
func (s *site) methodPage() (templates.Page, diag.Pos) {
	from := diag.Pos{File: "static/matcher/method.ts"}
	body := &templates.Method{}
	for _, a := range s.method {
		value := strconv.FormatFloat(a.Value, 'f', -1, 64)
		if a.Unit != "" {
			value += "\u00a0" + a.Unit
		}
		body.Constants = append(body.Constants, templates.Constant{
			Says: a.Says, Value: value, Basis: methodBasis(a.Basis), Source: s.sourceNamed(a.Source)})
	}
	return templates.Page{Address: "/about/method/", Title: "How a verdict is reckoned", Sheet: "Method",
		About: "Every figure the identification rests on: the limits of instruments, what is allowed for wear, and our own judgement where nothing is published.",
		Body:  body}, from
}

// methodBasis says a constant's basis; a judgement of ours is no basis the chart knows.
func methodBasis(basis string) string {
	if basis == "judgement" {
		return "our judgement"
	}
	return basisWords[tables.Basis(basis)]
}

// sourceNamed links a key of the registry; a standard's clause is left as words.
func (s *site) sourceNamed(name string) templates.Link {
	for _, src := range s.set.Sources {
		if src.ID == name {
			return s.sourceLinks([]*tables.Source{src})[0]
		}
	}
	return templates.Link{Text: name}
}
