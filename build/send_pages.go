package build

import (
	"capspan/build/diag"
	"capspan/content/figure"
	"capspan/tables"
	"capspan/templates"
)

// The two pages between a shop and its customer: /send/ makes a link that asks for
// measurements, /measure/card/ opens it and makes the link that answers. Both links
// carry everything behind the #, so no server sees any of it.

func (s *site) sendPage() (templates.Page, diag.Pos) {
	body := &templates.Send{Keeper: s.keeper}
	for _, h := range holdStrip {
		if h.hold != tables.UnknownHold {
			body.Holds = append(body.Holds, templates.Choice{Value: string(h.hold), Label: holdWords[h.hold]})
		}
	}
	return templates.Page{Address: "/send/", Title: "Ask somebody to measure", Sheet: "Request",
		About:   "Say what you need to know and get a link to send. Whoever opens it is led step by step and sends one link back.",
		Scripts: []string{"matcher.js", "send.js"}, Body: body}, diag.Pos{File: "content/" + keeperFile}
}

func (s *site) cardPage() (templates.Page, diag.Pos) {
	return templates.Page{Address: "/measure/card/", Title: "Measure a joint, step by step", Sheet: "Measuring card",
		About:   "One thing at a time. Nothing you type leaves this device until you send it.",
		Scripts: []string{"matcher.js", "card.js"},
		Body:    &templates.Card{Keeper: s.keeper, Holds: holdChoices(figure.Jaws), Tools: tools}}, diag.Pos{File: "content/" + keeperFile}
}
