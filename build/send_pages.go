package build

import (
	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

// The two pages between a shop and its customer: /send/ makes a link that asks for
// measurements, /measure/card/ opens it and makes the link that answers. Both links
// carry everything behind the #, so no server sees any of it.

func (s *site) sendPage() (templates.Page, diag.Pos) {
	body := &templates.Send{Keeper: s.keeper}
	for _, h := range holdStrip {
		if h != tables.UnknownHold {
			body.Holds = append(body.Holds, templates.Choice{Value: string(h), Label: s.holdWord(h)})
		}
	}
	return templates.Page{Address: "/send/", Title: s.word("send.title"), Sheet: s.word("send.sheet"), About: s.word("send.about"),
		Scripts: []string{"matcher.js", "send.js"}, Body: body}, diag.Pos{File: "content/" + keeperFile}
}

func (s *site) cardPage() (templates.Page, diag.Pos) {
	return templates.Page{Address: "/measure/card/", Title: s.word("card.title"), Sheet: s.word("card.sheet"), About: s.word("card.about"),
		Scripts: []string{"matcher.js", "card.js"},
		Body:    &templates.Card{Keeper: s.keeper, Holds: s.holdChoices(s.drawn().Jaws), Tools: s.choices("tool.", tools)}}, diag.Pos{File: "content/" + keeperFile}
}
