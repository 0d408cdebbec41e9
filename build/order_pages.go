package build

import (
	"capspan/build/diag"
	"capspan/templates"
)

// What a job leaves behind: /order/ writes the enquiry for the counter, whose address
// carries what was chosen and measured; /shaft/ keeps the record of one shaft on the
// reader's device. It is not below /driveline/, for it holds joints and clips as well as
// calculations, and is no calculation itself. What the chart knows is looked up on the pages.

func (s *site) orderPage() (templates.Page, diag.Pos) {
	return templates.Page{Address: "/order/", Title: s.word("order.title"), Sheet: s.word("order.sheet"), About: s.word("order.about"),
		Scripts: append(s.coreScripts("matcher.js", "matcher-late.js"), "order.js"), Ahead: s.aheadWhole("chart.json", "slips.json"),
		Body: &templates.Order{Keeper: s.keeper, Rows: s.rowsBelow()}}, diag.Pos{File: "content/" + keeperFile}
}

func (s *site) shaftPage() (templates.Page, diag.Pos) {
	body := &templates.Shaft{Rows: s.rowsBelow()}
	for _, d := range s.driveline.described {
		body.Calculations = append(body.Calculations, s.calculationLink(d))
	}
	return templates.Page{Address: "/shaft/", Title: s.word("shaft.title"), Sheet: s.word("shaft.sheet"), About: s.word("shaft.about"),
		Scripts: append(s.coreScripts("matcher.js", "matcher-late.js"), "shaft.js"), Ahead: s.aheadWhole("chart.json", "slips.json"),
		Body: body}, diag.Pos{File: "templates/shaft.html"}
}

// rowsBelow is where the pages begin what a joint leads to: its own, or that of its size, whose
// address the chart tells from the root on.
func (s *site) rowsBelow() string {
	if s.large() {
		return "/"
	}
	return "/joint/"
}
