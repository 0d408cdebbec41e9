package build

import (
	"html/template"

	"capspan/build/diag"
	"capspan/content"
	"capspan/content/figure"
	"capspan/tables"
	"capspan/templates"
)

// holdStrip is the order of the picture key, commonest first, with what one can see.
var holdStrip = []struct {
	hold tables.Hold
	see  string
}{
	{tables.OutsideClip, "plain caps, a ring in the yoke ear outside each cap"},
	{tables.InsideClip, "a groove round each cap near its open end, a C-shaped clip inside the ear"},
	{tables.Plate, "a bolted plate is part of each cap"},
	{tables.Strap, "caps in open half bores, held by a strap or U-bolt"},
	{tables.Wing, "caps with bolt-on wings and a key"},
	{tables.Injected, "no clip, plastic in a ring groove, often a small injection hole"},
	{tables.Staked, "metal of the ear peened over the cap"},
	{tables.UnknownHold, "choose this when you cannot tell"},
}

// facesHow says for each pair of faces where the jaws go.
var facesHow = map[tables.Faces]string{
	tables.OverCaps:     "From the end of one cap to the end of the opposite cap, clips off, caps pushed home.",
	tables.GrooveInner:  "Between the inner faces of the two clip grooves, those nearest the cross.",
	tables.GrooveOuter:  "Between the outer faces of the two clip grooves, those away from the cross.",
	tables.UnderPlates:  "Between the undersides of the two plates, where they sit on the yoke ears.",
	tables.WingOuter:    "Across the outside of the two wings, over the round of the caps.",
	tables.HoleCentres:  "From bolt hole to bolt hole across the joint, centre to centre.",
	tables.UnknownFaces: "End to end over the caps first; then say how the joint is held, so that the right faces can be named.",
}

var tools = []templates.Choice{
	{Value: "digital-caliper", Label: "Digital caliper"},
	{Value: "dial-caliper", Label: "Dial caliper"},
	{Value: "vernier-caliper", Label: "Vernier caliper, 0.02 mm"},
	{Value: "vernier-caliper-coarse", Label: "Vernier caliper, 0.05 mm"},
	{Value: "micrometer", Label: "Micrometer"},
	{Value: "steel-rule", Label: "Steel rule"},
	{Value: "tape", Label: "Tape measure"},
}

var conditions = []templates.Choice{
	{Value: "new", Label: "new"},
	{Value: "used", Label: "used, clean"},
	{Value: "worn", Label: "worn"},
	{Value: "rusted", Label: "rusted"},
}

// facesToOffer are the faces a hold may be measured between. Who cannot tell the hold
// may still know where the jaws were.
func facesToOffer(h tables.Hold) []tables.Faces {
	if faces := tables.FacesFor(h); len(faces) > 0 {
		return faces
	}
	return []tables.Faces{tables.UnknownFaces, tables.OverCaps, tables.GrooveInner, tables.GrooveOuter, tables.UnderPlates}
}

// identify is the page of the matcher. Without script it is the method by hand.
func (s *site) identify(byHand *content.Page) (templates.Page, diag.Pos) {
	body := &templates.Identify{Tools: tools, Conditions: conditions, ByHand: byHand.HTML, Holds: holdChoices(figure.Faces)}
	return templates.Page{Address: "/identify/", Title: "Identify a joint", Sheet: "Identify",
		About:   "Type caliper readings of a universal joint and learn which size it is, or that it is in no chart.",
		Scripts: []string{"matcher.js", "identify.js"}, Body: body}, byHand.Pos
}

// holdChoices is the picture key with the faces that go with each hold, drawn by draw
// from a prefix for ids, the hold and the faces.
func holdChoices(draw func(prefix, hold, faces string) template.HTML) []templates.HoldChoice {
	var list []templates.HoldChoice
	for _, h := range holdStrip {
		choice := templates.HoldChoice{Hold: string(h.hold), Label: holdWords[h.hold], See: h.see,
			Icon: figure.Hold("hold-"+string(h.hold), string(h.hold))}
		if h.hold == tables.UnknownHold {
			choice.Label = "not sure"
		}
		for _, f := range facesToOffer(h.hold) {
			choice.Faces = append(choice.Faces, templates.FacesChoice{Faces: string(f), Label: facesWords[f], How: facesHow[f],
				Figure: templates.Figure{
					SVG:     draw("faces-"+string(h.hold)+"-"+string(f), string(h.hold), string(f)),
					Caption: capital(facesWords[f])}})
		}
		list = append(list, choice)
	}
	return list
}
