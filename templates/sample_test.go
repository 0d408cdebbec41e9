package templates

import "html/template"

// The values below are made by hand and only have to look like a chart's.

func sampleSite() Site {
	return Site{
		Base: "/sub/", Chart: "2026-11-25-3f9a1c2", Date: "2026-11-25", Style: "/sub/assets/sheet.css", More: "/sub/assets/more.css",
		Policy: "default-src 'none'", Paper: [2]string{"#f7f5ee", "#0c1a2b"},
		Worker: "/sub/worker.js", Manifest: "/sub/site.webmanifest",
		Integrity: map[string]string{"/sub/assets/sheet.css": "sha384-oqVu", "/sub/assets/more.css": "sha384-AAAA",
			"/sub/assets/matcher.js": "sha384-BBBB", "/sub/assets/identify.js": "sha384-CCCC", "/sub/assets/frame.js": "sha384-DDDD"},
		Scripts: map[string]string{
			"matcher.js": "/sub/assets/matcher.js", "identify.js": "/sub/assets/identify.js",
			"table.js": "/sub/assets/table.js", "send.js": "/sub/assets/send.js", "card.js": "/sub/assets/card.js", "measured.js": "/sub/assets/measured.js", "correct.js": "/sub/assets/correct.js",
			"live.js":  "/sub/assets/live.js",
			"frame.js": "/sub/assets/frame.js", "search-index.json": "/sub/assets/search-index.json",
			"drawings.svg": "/sub/assets/drawings.svg",
			"chart.json":   "/sub/assets/chart.json", "icon.svg": "/sub/assets/icon.svg",
		},
	}
}

const sampleSVG = template.HTML(`<svg class="drawing" viewBox="0 0 84 52" width="84" height="52" role="img" aria-label="drawing"><path class="c" d="M2 26H82"/></svg>`)

// samples returns one page for each template, by the template's name.
func samples() map[string]Page {
	rowLink := Link{Href: "/sub/joint/1350/", Text: "1350", Note: "1.188 in × 3.625 in, clip outside"}
	capCell := Cell{Text: "1.062 in", Converted: "26.97 mm", Basis: "common practice"}
	across := Cell{Text: "3.219 in", Converted: "81.76 mm", Note: "over the caps", Basis: "published", At: "table 1",
		Sources: []Link{{Href: "/sub/about/sources/#maker-list", Text: "A maker's list"}},
		Others:  []Cell{{Text: "3.218 in", Converted: "81.74 mm", Basis: "memory"}}}
	hold := Cell{Text: "clip outside", Basis: "common practice"}
	pages := map[string]Page{
		"home": {Address: "/", Title: "What have you got in your hand?", About: "A driveline joint chart.", Body: &Home{
			Ways: []Link{{Href: "/sub/identify/", Text: "A joint and a caliper", Note: "identify it"}},
			Text: "<p>Words.</p>", Rows: 133, Tables: 6}},
		"identify": {Address: "/identify/", Title: "Identify a joint", Scripts: []string{"matcher.js", "identify.js"}, Slim: true, Body: &Identify{
			Holds: []HoldChoice{
				{Hold: "outside-clip", Label: "clip outside", See: "a ring outside each cap", SeeYoke: "a groove in each bore", Icon: sampleSVG, Faces: []FacesChoice{
					{Faces: "over-caps", Label: "over the caps", How: "From end to end.", Figure: Figure{SVG: sampleSVG}}},
					Yoke: &YokeChoice{Kind: "full-round", Label: "groove to groove", How: "Between the grooves.", Figure: Figure{SVG: sampleSVG}}},
				{Hold: "inside-clip", Label: "clip inside", Icon: sampleSVG, Faces: []FacesChoice{
					{Faces: "groove-inner", Label: "between the inner groove faces", Figure: Figure{SVG: sampleSVG}},
					{Faces: "groove-outer", Label: "between the outer groove faces", Figure: Figure{SVG: sampleSVG}}}},
				{Hold: "unknown", Label: "not sure", Icon: sampleSVG}},
			Tools:      []Choice{{Value: "digital-caliper", Label: "Digital caliper"}},
			Conditions: []Choice{{Value: "used", Label: "used, clean"}},
			ByHand:     "<p>Measure a cap.</p>"}},
		"parts": {Address: "/identify/part/", Title: "Identify something else", About: "Count and measure.", Body: &Parts{
			Tables: []Link{{Href: "/sub/identify/part/hubs/", Text: "Hubs", Note: "Round ones."}}}},
		"part": {Address: "/identify/part/hubs/", Title: "Identify: Hubs", About: "Count and measure.", Scripts: []string{"parts.js", "part.js"}, Body: &Part{
			Cautions: []string{"Stop the engine."}, Data: "/sub/assets/part-hubs.json", Unit: "mm", Chart: Link{Href: "/sub/chart/hubs/", Text: "Hubs"},
			Columns: []PartColumn{{ID: "studs", Label: "Studs", How: "Count.", Count: true}, {ID: "ring", Label: "Stud circle", How: "From hole to hole.", Circle: true},
				{ID: "spigot", Label: "Spigot", How: "Over the outside."}},
			Tools: []Choice{{Value: "digital-caliper", Label: "Digital caliper"}}, Conditions: []Choice{{Value: "used", Label: "used, clean"}},
			Factors: []ChordFactor{{Holes: 4, Next: "0.70711", Farthest: "1.00000"}}}},
		"chart": {Address: "/chart/", Title: "The chart", Body: &Chart{Tables: []TableCard{
			{Link: Link{Href: "/sub/chart/joints-inch/", Text: "Inch-series joints"}, Rows: 1, Version: "1.0.0", Basis: "1 memory"}}}},
		"table": {Address: "/chart/joints-inch/", Title: "Inch-series joints", Scripts: []string{"table.js"}, Body: &Table{
			Title: "Inch-series joints", About: "Series named by number.", Version: "1.0.0", Date: "2026-11-25",
			Columns: []Column{{ID: "hold", Label: "Hold"}, {ID: "cap", Label: "Cap", Unit: "in", Method: Link{Href: "/sub/measure/cap/"}},
				{ID: "across", Label: "Across", Unit: "in"}},
			Rows: []TableRow{
				{Row: Link{Href: "/sub/joint/1310/", Text: "1310"}, Also: []string{"1260", "1280"}, Basis: "common practice",
					Search: "1310 1260 1280", Caps: []string{"26.9748"}, Acrosses: []string{"81.7626"},
					Cells: [][]Cell{{hold}, {capCell}, {across}}},
				{Row: Link{Href: "/sub/joint/a-to-b/", Text: "a-to-b"}, Basis: "memory",
					Cells: [][]Cell{{hold, hold}, {capCell, {Text: "not known"}}, {across, across}}}},
			Data: []Link{{Href: "/sub/data/joints-inch.csv", Text: "this table as CSV"}}, Identify: "/sub/identify/part/joints-inch/"}},
		"joint": {Address: "/joint/1310/", Title: "1310", Body: &Joint{ID: "1310", Title: "1310", Table: "Inch-series joints",
			TableLink: Link{Href: "/sub/chart/joints-inch/", Text: "Inch-series joints"}, Also: []string{"1260"}, Confirm: true,
			Formerly: []string{"It took the place of 1310-old, which is no longer in the chart. It was misspelt."},
			Ends: []JointEnd{{Title: "Both ends", Hold: hold, Across: across,
				Cap: Cell{Text: "1.062 in", Basis: "common practice", Measured: "measured 1.0619 ± 0.0014 in, agrees",
					Correct: Link{Href: "/sub/contribute/correct/#table=joints-inch&row=1310&column=cap", Text: "correct this value", Note: "Cap of 1310"}},
				Method: []Link{{Href: "/sub/measure/cap/", Text: "Cap"}}}},
			Measured: []MeasuredValue{{Label: "Cap", Says: []string{"Measured: 26.97 mm."}, List: []MeasuredOnce{
				{Readings: "1.061 in, 1.062 in", Worth: "26.96 mm.", Condition: "used, clean", On: "2026-11-20", By: "red-shed"}, {Readings: "27 mm", Worth: "27.00 mm."}}}},
			Figures: []Figure{{SVG: sampleSVG, Caption: "Drawn to its own scale."}}, Basis: "The figures are recalled.",
			Twins: []Link{rowLink}, SameFigures: []Link{rowLink}, Near: []Link{rowLink}, Conversions: []Link{rowLink},
			Values:  []NamedCell{{Label: "Weight", Cell: Cell{Text: "not known"}}},
			Sources: []SourceView{{ID: "maker-list", Kind: "catalogue", Title: "A maker's list", Date: "1984", Trust: "Rounded."}},
			Note:    "The commonest light series.",
			History: []RowChange{{Release: Link{Href: "/sub/changes/#chart-x", Text: "2026-12-01"}, Line: ChangeLine{What: "cap", Old: across, New: capCell}}}}},
		"size": {Address: "/size/outside-clip-27.0x81.8/", Title: "1.062 in × 3.219 in, clip outside", Sheets: []string{"large.css"}, Body: &Size{
			ID: "1.062 in × 3.219 in, clip outside", Converted: "26.97 mm × 81.76 mm", Kits: 3, Confirm: ConfirmSome, Cautions: []string{"Stop the engine."},
			TableLink: Link{Href: "/sub/chart/joints-inch/", Text: "Inch-series joints"}, GroupLink: Link{Href: "/sub/chart/joints-inch/27/", Text: "Caps of 27 mm"},
			Figures: []Figure{{SVG: sampleSVG, Caption: "Drawn to its own scale."}}, Method: []Link{{Href: "/sub/measure/cap/", Text: "Cap"}},
			Writings: []Writing{
				{Table: Link{Href: "/sub/chart/joints-inch/", Text: "Inch-series joints"}, Version: "1.0.0", Date: "2026-11-25", First: "1310", Basis: "The figures are recalled.", Note: "The commonest.",
					Ends: []JointEnd{{Title: "Both ends", Hold: hold, Cap: capCell, Across: across}}, Kits: []Kit{{ID: "1310", Also: []string{"1260"}, Formerly: []string{"It took the place of 1310-old."}}}},
				{Table: Link{Href: "/sub/chart/joints-mm/", Text: "Metric joints"}, Version: "1.1.0", Date: "2026-11-26", First: "m-27", Basis: "The figures are published.", Apart: true,
					Ends: []JointEnd{{Title: "Both ends", Hold: hold, Cap: capCell, Across: capCell}}, Values: []NamedCell{{Label: "Weight", Cell: Cell{Text: "not known"}}},
					Kits: []Kit{{ID: "m-27", Note: "With a nipple.", From: []KitSource{{Of: "Cap", Sources: []Link{{Href: "#source-maker-list", Text: "[1]"}}, At: "page 3"}, {Of: "Across", At: "page 4"}},
						Correct: []Link{{Href: "/sub/contribute/correct/#table=joints-mm&row=m-27&column=cap", Text: "Cap", Note: "Cap of m-27"}}},
						{ID: "m-27b", From: []KitSource{{Of: "Cap", Sources: []Link{{Href: "#source-maker-list", Text: "[1]"}}}}}}}},
			Life: sampleSVG, Paper: "/sub/size/outside-clip-27.0x81.8/paper/", Near: []Link{{Href: "/sub/size/outside-clip-30.2x92.1/", Text: "1.188 in × 3.625 in, clip outside", Note: "1 kit: 1350"}},
			Sources: []SourceView{{ID: "maker-list", Kind: "catalogue", Title: "A maker's list", Mark: "[1]"}}}},
		"groups": {Address: "/chart/joints-inch/", Title: "Inch-series joints", Scripts: []string{"groups.js"}, Sheets: []string{"large.css"}, Body: &Groups{
			Table: &Table{Title: "Inch-series joints", About: "Series named by number.", Version: "1.0.0", Date: "2026-11-25", Cautions: []string{"Stop the engine."}},
			ID:    "joints-inch", Sizes: 3, Kits: 12, Units: []Choice{{Value: "in", Label: "in"}, {Value: "mm", Label: "mm"}}, Holds: []Choice{{Value: "outside-clip", Label: "clip outside"}},
			Groups: []Group{{Link: Link{Href: "/sub/chart/joints-inch/27/", Text: "27 mm"}, Name: "27", Note: "27.0 to 27.9 mm", Sizes: 2, Kits: 9, Holds: []string{"outside-clip", "plate"}, Says: "clip outside 2", Least: "81.7", Greatest: "92.5"},
				{Link: Link{Href: "/sub/chart/joints-inch/u/", Text: "Caps not known, or none"}, Name: "u", Sizes: 1, Kits: 3, Holds: []string{"wing"}, Says: "wing 1"}}}},
		"group": {Address: "/chart/joints-inch/27/", Title: "Inch-series joints: Caps of 27 mm", Scripts: []string{"table.js"}, Sheets: []string{"large.css"}, Body: &GroupPage{
			Table: &Table{Title: "Inch-series joints: Caps of 27 mm", Version: "1.0.0", Date: "2026-11-25", Columns: []Column{{ID: "hold", Label: "Hold"}, {ID: "cap", Label: "Cap", Unit: "in"}},
				Rows: []TableRow{{Row: Link{Href: "/sub/size/outside-clip-27.0x81.8/", Text: "1310 and 2 more"}, Also: []string{"m-27", "m-27b"}, Basis: "memory", Search: "1310 m-27 m-27b",
					Holds: []string{"outside-clip"}, Caps: []string{"26.9748"}, Acrosses: []string{"81.7626"}, Cells: [][]Cell{{hold}, {capCell}}}}},
			Of: "joints-inch/27", Caps: "Caps of 27 mm", Note: "27.0 to 27.9 mm", TableLink: Link{Href: "/sub/chart/joints-inch/", Text: "Inch-series joints"},
			After: Link{Href: "/sub/chart/joints-inch/30/", Text: "Caps of 30 mm"}}},
		"changes": {Address: "/changes/", Title: "Changes of the chart", Body: &Changes{Now: "2026-12-01-0123abc", Feed: "/sub/changes/feed.atom",
			Releases: []Release{{ID: "chart-2026-12-01-0123abc", Name: "2026-12-01-0123abc", Date: "2026-12-01", Why: "Somebody measured it.", Tables: []string{"joints-inch 1.1.0"},
				Changes: []ChangeLine{{Of: rowLink, What: "cap", Old: Cell{Text: "1.187 in", Converted: "30.15 mm"}, New: capCell},
					{Of: Link{Text: "a-maker"}, What: "retired", Why: "Its list was withdrawn."}}}},
			Retired: []RetiredRow{{ID: "1351", Href: "/sub/joint/1351/", Why: "The name was misspelt.", To: []Link{rowLink}}}}},
		"sources": {Address: "/about/sources/", Title: "Sources", Body: &Sources{Sources: []SourceView{
			{ID: "maker-list", Kind: "catalogue", Title: "A maker's list", Publisher: "A maker", Where: "page 3"}}}},
		"method": {Address: "/about/method/", Title: "How a verdict is reckoned", About: "Every constant.", Body: &Method{Constants: []Constant{
			{Says: "A digital caliper to 100 mm.", Value: "0.02 mm", Basis: "published", Source: Link{Href: "/sub/about/sources/#source-din862", Text: "DIN 862"}},
			{Says: "Wear is allowed for.", Value: "0.05 mm", Basis: "our judgement", Source: Link{Text: "clause 4"}}}}},
		"text": {Address: "/measure/cap/", Title: "The cap", Body: &Text{HTML: "<p>Wipe it.</p>",
			Next: []Link{{Href: "/sub/measure/across/", Text: "Across", Note: "next"}}}},
		"paper": {Address: "/joint/1310/paper/", Title: "1310 on paper", Body: &Paper{ID: "1310",
			Row: Link{Href: "/sub/joint/1310/", Text: "1310"}, Lead: "1.062 in × 3.219 in, clip outside", Drawing: sampleSVG, Ruler: sampleSVG,
			Truth: "Cap diameter and across follow the chart.", Ends: []JointEnd{{Title: "Both ends", Hold: hold, Cap: capCell, Across: across}},
			Basis: "The figures are recalled."}},
		"send": {Address: "/send/", Title: "Ask somebody to measure", Scripts: []string{"matcher.js", "send.js"}, Body: &Send{
			Keeper: Keeper{Demo: true, Name: "The shed", Phone: "+1 555 0100", Dial: "+15550100", Mail: "shed@example.org", Units: "mm"},
			Holds:  []Choice{{Value: "outside-clip", Label: "clip outside"}}}},
		"correct": {Address: "/contribute/correct/", Title: "Correct a value", Scripts: []string{"measured.js", "correct.js"}, Body: &Correct{
			Keeper: Keeper{Demo: true, Mail: "shed@example.org", Edit: "https://code.example.org/edit/{file}#L{line}"}, Sources: "/sub/assets/correct/_sources.json", ByHand: "<p>Find the line.</p>",
			Tables: []CorrectTable{{ID: "joints-inch", Link: Link{Href: "/sub/chart/joints-inch/", Text: "Inch-series joints"}, File: "tables/joints-inch.yaml",
				Edit: "https://code.example.org/edit/tables/joints-inch.yaml#L1", Values: true, Facts: "/sub/assets/correct/joints-inch.json"},
				{ID: "joints-conversion", Link: Link{Href: "/sub/chart/joints-conversion/", Text: "Conversion joints"}, File: "tables/joints-conversion.yaml", Facts: "/sub/assets/correct/joints-conversion.json"}},
			Holds: []Choice{{Value: "outside-clip", Label: "clip outside"}}, Faces: []Choice{{Value: "over-caps", Label: "over the caps"}, {Value: "unknown", Label: "faces not known"}},
			Tools: []Choice{{Value: "micrometer", Label: "Micrometer"}}, Conditions: []Choice{{Value: "used", Label: "used, clean"}}, Kinds: []Choice{{Value: "catalogue", Label: "a catalogue"}}}},
		"card": {Address: "/measure/card/", Title: "Measure a joint, step by step", Scripts: []string{"matcher.js", "card.js"}, Body: &Card{
			Keeper: Keeper{Name: "The shed", Mail: "shed@example.org", Units: "in"},
			Holds: []HoldChoice{{Hold: "inside-clip", Label: "clip inside", See: "a groove in each cap", Icon: sampleSVG, Faces: []FacesChoice{
				{Faces: "groove-inner", Label: "between the inner groove faces", How: "Inside.", Figure: Figure{SVG: sampleSVG}},
				{Faces: "groove-outer", Label: "between the outer groove faces", How: "Outside.", Figure: Figure{SVG: sampleSVG}}}}},
			Tools: []Choice{{Value: "digital-caliper", Label: "Digital caliper"}}}},
		"order": {Address: "/order/", Title: "Enquiry slip", Scripts: []string{"matcher.js"}, Body: &Order{Rows: "/joint/",
			Keeper: Keeper{Name: "The shed", Phone: "+1 555 0100", Mail: "shed@example.org"}}},
		"shaft": {Address: "/shaft/", Title: "Shaft record", Scripts: []string{"matcher.js"}, Body: &Shaft{Rows: "/joint/",
			Calculations: []Link{{Href: "/sub/driveline/angles/", Text: "Angles"}}}},
		"search": {Address: "/search/", Title: "Search", About: "Rows, pages, words and sources.", Body: &Search{}},
		"a-z": {Address: "/a-z/", Title: "From A to Z", About: "Everything, by name.", Body: &AZ{Letters: []Letter{
			{Name: "0–9", ID: "letter-0", Links: []Link{rowLink, {Href: "/sub/joint/1350/", Text: "1351", Note: "another name of 1350"}}},
			{Name: "C", ID: "letter-c", Links: []Link{{Href: "/sub/measure/cap/", Text: "Cap"}}}}}},
		"names": {Address: "/a-z/13/", Title: "Names that begin with 13", About: "Rows of the chart, by name.", Body: &Names{
			Up: Link{Href: "/sub/a-z/", Text: "From A to Z"}, Parts: []Link{{Href: "/sub/a-z/131/", Text: "131…", Note: "900 names"}},
			Lines: []NamesLine{{Rows: []Link{rowLink, {Href: "/sub/joint/1311/", Text: "1311"}}, Note: "1.062 in x 3.219 in"},
				{Rows: []Link{{Href: "/sub/joint/1350/", Text: "13-X"}}, Note: "another name of 1350"}}}},
		"notkept": {Address: "/not-kept.html", Title: "This page is not at hand", Sheet: "Without a network", Head: Head{Hidden: true}, Body: &NotKept{}},
		"driveline": {Address: "/driveline/", Title: "Shaft and driveline", Body: &Driveline{Calculations: []Link{
			{Href: "/sub/driveline/angles/", Text: "Angles of the shaft", Note: "What each joint runs at."}}, Documents: Link{Href: "/sub/driveline/sources/"}}},
		"calculation": {Address: "/driveline/angles/", Title: "Angles of the shaft", About: "What each joint runs at.",
			Scripts: []string{"matcher.js"}, Body: &Calculation{Name: "angles", Purpose: []string{"Two joints cancel."}, Cautions: []string{"The maker’s manual comes first."},
				Groups: []InputGroup{{Title: "The shaft", Inputs: []CalculationInput{
					{ID: "joints", Kind: "choice", Label: "Joints", Hint: "Cross joints.", Preset: "2", Options: []Choice{{Value: "2", Label: "two"}, {Value: "1", Label: "one"}}, Example: "two"},
					{ID: "gearbox", Kind: "number", Label: "Driving end", Hint: "Falling is positive.", Usual: "−80 to 80°", Signed: true, Units: []Choice{{Value: "deg", Label: "°"}, {Value: "mm/m", Label: "mm/m"}}, Example: "3°"},
					{ID: "turn", Kind: "number", Label: "Yokes turned by", Hint: "In line is 0.", Usual: "0 to 80°", Preset: "0", Optional: true, Units: []Choice{{Value: "deg", Label: "°"}}},
					{ID: "row", Kind: "text", Label: "Row", Hint: "Such as 1310.", Optional: true}}}},
				Example: "An invented trolley.", Result: "<p>4.50°</p>", Provided: `{"rows":["1310"]}`, Chart: true,
				Documents: Link{Href: "/sub/driveline/sources/"}, Onward: []Link{{Href: "/sub/driveline/speed/", Text: "Speed", Note: "How fast."}}}},
		"moved": {Address: "/joint/old/", Title: "old is no longer in the chart", Body: &Moved{ID: "old", Why: "It was split.",
			To: []Link{rowLink, rowLink}}},
	}
	for name, page := range pages {
		page.Site = sampleSite()
		pages[name] = page
	}
	return pages
}
