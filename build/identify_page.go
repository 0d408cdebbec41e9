package build

import (
	"html/template"

	"capspan/build/diag"
	"capspan/content"
	"capspan/content/figure"
	"capspan/tables"
	"capspan/templates"
)

// holdStrip is the order of the picture key, commonest first.
var holdStrip = []tables.Hold{tables.OutsideClip, tables.InsideClip, tables.Plate, tables.Strap, tables.Wing,
	tables.Injected, tables.Staked, tables.UnknownHold}

// yokes are the drawings of a bare yoke that go with a hold, where the core knows a
// distance on one; for the others it says what to do instead.
var yokes = map[tables.Hold]string{tables.OutsideClip: "full-round", tables.InsideClip: "inside-clip",
	tables.Injected: "inside-clip", tables.Plate: "plate", tables.Strap: "half-round"}

var tools = []string{"digital-caliper", "dial-caliper", "vernier-caliper", "vernier-caliper-coarse", "micrometer", "steel-rule", "tape"}

var conditions = []string{"new", "used", "worn", "rusted"}

// choices are the options of a list, each with the words of its key.
func (s *site) choices(prefix string, values []string) []templates.Choice {
	list := make([]templates.Choice, 0, len(values))
	for _, v := range values {
		list = append(list, templates.Choice{Value: v, Label: s.words.Say(prefix + v)})
	}
	return list
}

// facesToOffer are the faces a hold may be measured between. Who cannot tell the hold
// may still know where the jaws were.
func facesToOffer(h tables.Hold) []tables.Faces {
	if faces := tables.FacesFor(h); len(faces) > 0 {
		return faces
	}
	return []tables.Faces{tables.UnknownFaces, tables.OverCaps, tables.GrooveInner, tables.GrooveOuter, tables.UnderPlates}
}

// identify is the page of the matcher. Without script it is the method by hand. Its
// drawings are fetched when a hold is chosen, so each stands as an empty sheet first.
func (s *site) identify(byHand *content.Page) (templates.Page, diag.Pos) {
	body := &templates.Identify{Tools: s.choices("tool.", tools), Conditions: s.choices("tool.on-", conditions),
		ByHand: byHand.HTML, Holds: s.holdChoices(s.emptyFaces)}
	for i := range body.Holds {
		hold := body.Holds[i].Hold
		if kind, known := yokes[tables.Hold(hold)]; known {
			body.Holds[i].Yoke = &templates.YokeChoice{Kind: kind, Label: s.word("yoke." + hold), How: s.word("yoke." + hold + "-how"),
				Figure: templates.Figure{SVG: emptySheet(yokeKey(kind), s.drawn().Yoke("", kind))}}
		}
	}
	return templates.Page{Address: "/identify/", Title: s.word("identify.title"), Sheet: s.word("identify.sheet"), About: s.word("identify.about"),
		Scripts: append(s.coreScripts("matcher.js"), "identify.js", ownScript), Ahead: []string{"chart.json"}, Slim: true, Body: body}, byHand.Pos
}

// holdChoices is the picture key with the faces that go with each hold, drawn by draw
// from a prefix for ids, the hold and the faces.
func (s *site) holdChoices(draw func(prefix, hold, faces string) template.HTML) []templates.HoldChoice {
	var list []templates.HoldChoice
	for _, h := range holdStrip {
		choice := templates.HoldChoice{Hold: string(h), Label: s.holdWord(h), Icon: figure.HoldIcon(string(h)),
			See: s.word("hold." + string(h) + "-see"), SeeYoke: s.word("hold." + string(h) + "-yoke")}
		if h == tables.UnknownHold {
			choice.Label = s.word("hold.not-sure")
		}
		for _, f := range facesToOffer(h) {
			label := s.facesWord(f)
			choice.Faces = append(choice.Faces, templates.FacesChoice{Faces: string(f), Label: label, How: s.word("faces." + string(f) + "-how"),
				Figure: templates.Figure{SVG: draw(facesKey(h, f), string(h), string(f)), Caption: capital(label)}})
		}
		list = append(list, choice)
	}
	return list
}
