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
	return templates.Page{Address: "/about/method/", Title: s.word("method.title"), Sheet: s.word("method.sheet"), About: s.word("method.about"),
		Body: &templates.Method{Constants: s.constants()}}, from
}

// constants are those of the identification.
func (s *site) constants() []templates.Constant {
	var list []templates.Constant
	for _, a := range s.method {
		value := s.figures(strconv.FormatFloat(a.Value, 'f', -1, 64))
		if a.Unit != "" {
			value += "\u00a0" + a.Unit
		}
		list = append(list, templates.Constant{
			Says: a.Says, Value: value, Basis: s.basisWord(tables.Basis(a.Basis)), Source: s.sourceNamed(a.Source)})
	}
	return list
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
