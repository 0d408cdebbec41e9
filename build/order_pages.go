package build

import (
	"capspan/build/diag"
	"capspan/templates"
)

// What a job leaves behind: /order/ writes the enquiry for the counter. Its address
// carries what was chosen and measured; what the chart knows is looked up there.

func (s *site) orderPage() (templates.Page, diag.Pos) {
	return templates.Page{Address: "/order/", Title: s.word("order.title"), Sheet: s.word("order.sheet"), About: s.word("order.about"),
		Scripts: []string{"matcher.js", "matcher-late.js", "order.js"}, Ahead: []string{"chart.json", "slips.json"},
		Body: &templates.Order{Keeper: s.keeper}}, diag.Pos{File: "content/" + keeperFile}
}
