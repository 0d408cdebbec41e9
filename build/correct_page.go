package build

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"capspan/build/diag"
	"capspan/content"
	"capspan/tables"
	"capspan/templates"
)

// correctAddress is the page that makes a correction; what is to be corrected stands
// behind the #, so no server sees it.
const correctAddress = "/contribute/correct/"

// correctLink leads to the correction of a value, or of a row where no column is named.
func (s *site) correctLink(row *tables.Row, column string) string {
	at := "#table=" + row.Table.ID + "&row=" + row.ID // ids need no escaping
	if column != "" {
		at += "&column=" + column
	}
	return s.at(correctAddress) + at
}

func (s *site) correctPage(byHand *content.Page, facts map[string]string) (templates.Page, diag.Pos) {
	body := &templates.Correct{Keeper: s.keeper, ByHand: byHand.HTML, Sources: s.atRoot(facts[""]), Large: s.large(),
		Tools: s.choices("tool.", tools), Conditions: s.choices("tool.on-", conditions)}
	for _, t := range s.set.Tables {
		told := ""
		if path := facts[t.ID]; path != "" {
			told = s.atRoot(path)
		}
		body.Tables = append(body.Tables, templates.CorrectTable{ID: t.ID, Link: templates.Link{Href: s.at(tableAddress(t)), Text: t.Title},
			File: t.Pos.File, Edit: editAddress(s.keeper.Edit, t.Pos.File, 1), Facts: told,
			Values: slices.ContainsFunc(t.Rows, func(r *tables.Row) bool { return len(r.Values) > 0 })})
	}
	for _, kind := range tables.Words().Kinds {
		body.Kinds = append(body.Kinds, templates.Choice{Value: kind, Label: s.word("source-kind." + kind)})
	}
	for _, h := range holdStrip {
		label := s.holdWord(h)
		if h == tables.UnknownHold {
			label = s.word("hold.not-known")
		}
		body.Holds = append(body.Holds, templates.Choice{Value: string(h), Label: label})
	}
	for _, f := range tables.Words().Faces {
		body.Faces = append(body.Faces, templates.Choice{Value: string(f), Label: s.facesWord(f)})
	}
	scripts := []string{"measured.js", "correct.js"}
	if s.large() {
		scripts = []string{"measured.js", correctRowsScript, "correct.js"}
	}
	return templates.Page{Address: correctAddress, Title: s.word("correct.title"), Sheet: s.word("correct.sheet"), About: s.word("correct.about"),
		Scripts: scripts, Body: body}, byHand.Pos
}

// editAddress is where a line of a file is edited; empty when the keeper has not said how.
func editAddress(pattern, file string, line int) string {
	if pattern == "" {
		return ""
	}
	return strings.NewReplacer("{file}", (&url.URL{Path: file}).EscapedPath(), "{line}", strconv.Itoa(line)).Replace(pattern)
}
