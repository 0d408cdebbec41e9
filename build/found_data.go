package build

import (
	"cmp"
	"strings"

	"golang.org/x/net/html"
	"golang.org/x/net/html/atom"

	"capspan/content"
	"capspan/tables"
)

// JSON-LD, in the terms of schema.org: a page of the guide with steps is a HowTo, the
// chart and each of its tables a Dataset. Only what stands on the page is said.

// thing is one item; the fields every type we use has in common.
type thing struct {
	Context     string `json:"@context,omitempty"` // of the outermost only
	Type        string `json:"@type"`
	Name        string `json:"name,omitempty"`
	Description string `json:"description,omitempty"`
	URL         string `json:"url,omitempty"`
	Language    string `json:"inLanguage,omitempty"`
}

const schemaOrg = "https://schema.org"

// howTo is schema.org/HowTo. The page's cautions go with its steps, as tips: steps shown
// elsewhere without them would say less than the page does.
type howTo struct {
	thing
	Step []any `json:"step"`
}

// howToStep is schema.org/HowToStep, and HowToTip, which has no position.
type howToStep struct {
	Type     string `json:"@type"`
	Position int    `json:"position,omitempty"`
	Name     string `json:"name,omitempty"`
	Text     string `json:"text"`
}

// dataset is schema.org/Dataset.
type dataset struct {
	thing
	Free         bool       `json:"isAccessibleForFree"`
	Version      string     `json:"version,omitempty"`
	Identifier   string     `json:"identifier,omitempty"` // where this very version stays
	Modified     string     `json:"dateModified,omitempty"`
	Variables    []variable `json:"variableMeasured,omitempty"`
	Distribution []download `json:"distribution"`
	Part         []dataset  `json:"hasPart,omitempty"`
	Whole        *thing     `json:"isPartOf,omitempty"`
}

// variable is schema.org/PropertyValue.
type variable struct {
	Type string `json:"@type"`
	Name string `json:"name"`
	Unit string `json:"unitText,omitempty"`
}

// download is schema.org/DataDownload.
type download struct {
	Type   string `json:"@type"`
	Format string `json:"encodingFormat"`
	URL    string `json:"contentUrl"`
}

// howToOf describes a page with steps; it is nil for a page without.
func (s *site) howToOf(p *content.Page, address string) any {
	about := howTo{thing: thing{Context: schemaOrg, Type: "HowTo", Name: p.Title, Description: p.About, URL: s.named(address), Language: s.words.Language}}
	root, err := html.Parse(strings.NewReader(string(p.HTML)))
	if err != nil {
		panic("internal error: " + err.Error()) // reads from memory
	}
	steps := 0
	for n := range root.Descendants() {
		switch {
		case n.DataAtom == atom.Li && class(n.Parent) == "steps":
			steps++
			name, text := stepWords(n)
			about.Step = append(about.Step, howToStep{"HowToStep", steps, name, text})
		case n.DataAtom == atom.Aside && class(n) == "caution":
			about.Step = append(about.Step, howToStep{Type: "HowToTip", Text: words(n)})
		}
	}
	if steps == 0 {
		return nil
	}
	return about
}

// stepWords are a step's heading and what stands under it. A step of one sentence has
// the same for both: a step must have a text.
func stepWords(li *html.Node) (name, text string) {
	for n := range li.Descendants() {
		if n.DataAtom == atom.Strong {
			name = words(n)
			break
		}
	}
	text = words(li)
	if rest := strings.TrimSpace(strings.TrimPrefix(text, name)); rest != "" {
		return name, rest
	}
	return name, text
}

func class(n *html.Node) string {
	for _, a := range n.Attr {
		if a.Key == "class" {
			return a.Val
		}
	}
	return ""
}

// words are the words of an element, a space between one and the next. What a drawing
// or a coded table says is not part of a sentence and is left out.
func words(n *html.Node) string {
	var b strings.Builder
	var walk func(*html.Node)
	walk = func(n *html.Node) {
		switch {
		case n.Type == html.TextNode:
			b.WriteString(n.Data)
		case n.DataAtom == atom.Svg, n.DataAtom == atom.Table, n.DataAtom == atom.Figure:
			return
		case n.DataAtom == atom.P, n.DataAtom == atom.Li:
			b.WriteString(" ")
		}
		for c := range n.ChildNodes() {
			walk(c)
		}
	}
	walk(n)
	return strings.Join(strings.Fields(b.String()), " ")
}

// tableData describes one table.
func (s *site) tableData(t *tables.Table) dataset {
	d := dataset{
		thing: thing{Context: schemaOrg, Type: "Dataset", Name: t.Title, Description: s.described(t),
			URL: s.named(tableAddress(t)), Language: s.words.Language},
		Free: true, Version: t.Version.Number, Modified: t.Version.Date, Identifier: s.fullRoot("/" + s.versionFolder() + t.ID + ".json"),
		Distribution: s.downloads(t.ID+".csv", t.ID+".json"),
		Whole:        &thing{Type: "Dataset", Name: s.word("site.chart-name"), Description: s.word("chart.about"), URL: s.named("/chart/")},
	}
	if s.large() { // the version's own address changes with the rows of every other table
		d.Identifier, d.Distribution = "", s.newest(t.ID+".csv", t.ID+".json")
	}
	for _, c := range t.Columns {
		d.Variables = append(d.Variables, variable{"PropertyValue", c.Label, string(c.Unit)})
	}
	return d
}

// downloads are files of the open data. What is said of a version is true of its files,
// which stay at an address of their own; a site that does not know its address names the
// newest, which lies beside the page that says so.
func (s *site) downloads(names ...string) []download {
	if s.keeper.Web == "" {
		return s.newest(names...)
	}
	var list []download
	for _, name := range names {
		list = append(list, downloadOf(name, s.fullRoot("/"+s.versionFolder()+name)))
	}
	return list
}

// newest are the same where the newest is always found.
func (s *site) newest(names ...string) []download {
	var list []download
	for _, name := range names {
		list = append(list, downloadOf(name, cmp.Or(s.fullRoot(dataAddress(name)), s.atRoot(dataAddress(name)))))
	}
	return list
}

func downloadOf(name, address string) download {
	kind, _, _ := strings.Cut(contentType(name), ";")
	return download{"DataDownload", kind, address}
}

// described adds to a table's sentence how much is in it and how well it is founded.
func (s *site) described(t *tables.Table) string {
	return t.About + " " + s.word("table.by-row", "basis", s.basisCount(t))
}

// chartData describes the whole chart.
func (s *site) chartData() dataset {
	d := dataset{
		thing: thing{Context: schemaOrg, Type: "Dataset", Name: s.word("site.chart-name"), Description: s.word("chart.about"), URL: s.named("/chart/"), Language: s.words.Language},
		Free:  true, Version: s.version.Name(), Modified: s.version.Date, Identifier: s.fullRoot("/" + s.versionFolder() + wholeName),
		Distribution: s.downloads(wholeName, packageName),
	}
	for _, t := range s.set.Tables {
		part := s.tableData(t)
		part.Context, part.Language, part.Variables, part.Whole = "", "", nil, nil
		d.Part = append(d.Part, part)
	}
	return d
}
