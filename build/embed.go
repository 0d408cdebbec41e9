package build

import (
	"bytes"
	"encoding/json"
	"html/template"
	"strings"

	"capspan/build/diag"
	"capspan/content/figure"
	"capspan/static"
	"capspan/templates"
)

// The finder, <joint-finder>, is the identification in other people's pages. Its files are
//
//	embed/capspan.js          the one script line: makes the element; at an address that stays
//	assets/embed.<sum>.js     the same bytes under a name made of them, for pages that name a sum
//	assets/embed-core.<sum>.js  the core, the form, its markup and its sheet
//	assets/embed-late.<sum>.js  the late part of the core
//	embed/chart.json          the chart, at an address that stays; of a large one its directory
//	embed/frame/              a page with the element alone, for an iframe
//
// A script in somebody else's page must leave no global name behind, and the core has one.
// So the very bytes of matcher.js stand inside a function, which is handed over to who
// fetched them. Which parts belong together is written in front of the small script, with
// their sums: a page that names the sum of that one has them all. The chart is no part of
// it. A page that pins the code still gets corrected figures.

// Where the finder lies, below the base.
const (
	embedFolder = "embed/"
	embedScript = embedFolder + "capspan.js"
	embedChart  = embedFolder + "chart.json"
	embedFrame  = embedFolder + "frame/"
	embedCore   = "assets/embed-core"
)

// embedPart is a script as static/parts/embed/edition.ts reads of it.
type embedPart struct {
	File      string `json:"file"`
	Integrity string `json:"integrity"`
}

// embedEdition is what is written in front of the finder's script.
type embedEdition struct {
	Language  string            `json:"language"`
	Direction string            `json:"direction"`
	Folder    string            `json:"folder"`    // of the language, below the base
	Languages map[string]string `json:"languages"` // the folders of the others
	Core      embedPart         `json:"core"`
	Late      embedPart         `json:"late"`
}

// addEmbed writes the finder. A chart of one's own may do without the part.
func (s *site) addEmbed() diag.List {
	script := s.assets.Bytes(static.EmbedName)
	if script == nil {
		return nil
	}
	markup, err := s.embedMarkup()
	if err != nil {
		return diag.List{{Pos: diag.Pos{File: "templates/embed.html"}, Rule: "bad-template", Fact: err.Error()}}
	}
	core := inOrder("()=>{const capspanSheet=", scriptText(string(s.assets.Bytes(static.EmbedSheetName))), ",capspanMarkup=", scriptText(markup), ";\n")
	for _, name := range append(s.coreScripts("matcher.js"), static.EmbedFormName) {
		core = inOrder(core, s.assets.Bytes(name), "\n")
	}
	core = inOrder(core, "return ", static.EmbedFormGlobal, "}")
	late := inOrder(static.CoreName, "=>{", s.assets.Bytes("matcher-late.js"), "}")
	edition := embedEdition{Language: s.words.Language, Direction: "ltr", Folder: s.folder, Languages: s.others,
		Core: s.addEmbedPart(embedCore, core), Late: s.addEmbedPart("assets/embed-late", late)}
	front, err := json.Marshal(edition)
	if err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	whole := inOrder("(capspanEmbed=>{", script, "})(", front, ");\n")
	s.embed.path, s.embed.integrity = s.addAsset("assets/embed", ".js", whole), static.File{Bytes: whole}.Integrity()
	s.add(embedScript, whole, Pages)
	s.add(embedChart, s.chartFile(), Pages)
	return nil
}

// addEmbedPart adds a script that hands a function over, as an event at its own element.
func (s *site) addEmbedPart(stem string, function []byte) embedPart {
	content := inOrder(`document.currentScript.dispatchEvent(new CustomEvent("joint-finder-part",{detail:`, function, "}));\n")
	path := s.addAsset(stem, ".js", content)
	return embedPart{path, static.File{Bytes: content}.Integrity()}
}

// isEmbed reports whether a file is the finder's alone. No page of the site asks for it
// but the frame, so it is not kept on readers' devices.
func (s *site) isEmbed(name string) bool {
	return strings.HasPrefix(name, s.folder+embedFolder) || strings.HasPrefix(name, "assets/embed")
}

// embedMarkup is the form of the finder: the same words, icons and pieces as on the
// identify page, without drawings.
func (s *site) embedMarkup() (string, error) {
	body := &templates.Identify{Tools: s.choices("tool.", tools), Conditions: s.choices("tool.on-", conditions),
		Holds: s.holdChoices(func(string, string, string) template.HTML { return "" })}
	for i := range body.Holds {
		body.Holds[i].Icon = template.HTML(lighten.Replace(string(figure.HoldIcon(body.Holds[i].Hold))))
	}
	var b bytes.Buffer
	err := s.frames.Fragment(&b, s.base, "embed.html", body)
	return strings.ReplaceAll(b.String(), "\n", ""), err
}

// lighten takes off an icon what only a file of its own needs.
var lighten = strings.NewReplacer(` xmlns="http://www.w3.org/2000/svg"`, "", ` data-part="cap"`, "", ` data-part="clip"`, "",
	` data-end="0"`, "", ` fill="currentColor" stroke="none"`, "")

// embedPage is the page for an iframe.
func (s *site) embedPage() (templates.Page, diag.Pos) {
	return templates.Page{Address: "/" + embedFrame, Title: s.word("embed.title"), About: s.word("embed.about"), Sheet: s.word("embed.title"),
			Scripts: []string{"embed-frame.js", static.EmbedName}, Bare: true, Body: &templates.EmbedFrame{}},
		diag.Pos{File: "templates/embed-frame.html"}
}

// scriptText is a text as a script writes it.
func scriptText(text string) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false) // it stands in a file of its own, not in a page
	if err := e.Encode(text); err != nil {
		panic("internal error: " + err.Error()) // a string only
	}
	return bytes.TrimSpace(b.Bytes())
}

// inOrder puts texts and bytes one behind the other.
func inOrder(parts ...any) []byte {
	var all []byte
	for _, part := range parts {
		switch p := part.(type) {
		case string:
			all = append(all, p...)
		case []byte:
			all = append(all, p...)
		}
	}
	return all
}
