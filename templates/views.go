package templates

import (
	"html/template"
	"slices"
)

// Site is what every page shares.
type Site struct {
	Base    string            // path this language lives under, with both slashes: "/" or "/sub/es/"
	Root    string            // path the whole site lives under; empty where that is the same
	Chart   string            // the chart's version name, such as 2026-11-25-3f9a1c2; empty on most pages of a large chart
	Date    string            // the chart's date
	Style   string            // address of sheet.css
	More    string            // address of more.css, which a slim page does without
	Scripts map[string]string // addresses of matcher.js, identify.js, table.js, live.js, chart.json, drawings.svg and icon.svg by plain name
	Live    string            // address the page listens to under serve; empty in a published site

	Policy    string            // the Content-Security-Policy
	Integrity map[string]string // by the address of a script or style: what its bytes must hash to
	Paper     [2]string         // the colour of the paper, by day and by night
	Search    string            // address of the OpenSearch description; empty without an address of the site
	Worker    string            // address of the service worker; empty where pages register none
	Manifest  string            // address of the web application manifest
	Own       *Own              // the keeper of a site made from a folder of their own; nil for none
}

// Page is the frame's view: one of the bodies below goes inside it.
type Page struct {
	Site    Site
	Address string // "/chart/", without the base
	Title   string
	About   string   // one sentence for the head, shown under the heading too
	Sheet   string   // what the title block calls this sheet
	Scripts []string // plain names of the scripts it needs, in order
	Sheets  []string // plain names of style sheets that few pages need, in order
	Ahead   []string // plain names of the data its scripts fetch at once, to be on its way before they are
	Slim    bool     // needs the first style sheet alone
	Lost    bool     // stands at any address, also where a kit had its page before the chart grew large
	Bare    bool     // stands in a frame of another page: no header, no title block, no sheet
	// Languages lead to the page in the other languages of the site.
	Languages []LanguageLink
	Head      Head
	Body      any // *Home, *Identify, *Chart, *Table, *Joint, *Sources, *Text, *Moved, *Send, *Card, *Search, *AZ ...
}

// Head is what a page tells those who do not read it: search engines and the previews
// of links. Full addresses are empty as long as the site does not know its own.
type Head struct {
	Canonical string // full address of this page
	// Alternates are the page in all languages of the site, itself among them; none where there is one.
	Alternates []Alternate
	Hidden     bool     // search engines shall pass it over: it repeats another, or stands in for none
	Picture    *Picture // what a preview shows; nil for none
	Feed       string   // address of the feed of changes, on pages that it tells of
	Data       any      // JSON-LD; nil for none
}

// LanguageLink leads to a page in another language.
type LanguageLink struct {
	Language, Name string // as in the attribute lang, and as its speakers call it
	Href           string
	Same           bool // it is the same page; else the front page, since there is no such page
}

// Alternate is the full address of the same page in one language, or in "x-default".
type Alternate struct{ Language, Href string }

// Picture is a drawing that a preview can show, with its full address and its words.
type Picture struct {
	Address, Alt  string
	Width, Height int
}

// Link is a place to go. Its address has the base in front, as every address in a view.
type Link struct{ Href, Text, Note string }

// Figure is a drawing with the words that go with it.
type Figure struct {
	SVG     template.HTML // made by package figure, never by a contributor
	Caption string
}

// Cell is one value in both units, with its evidence in words.
type Cell struct {
	Text      string // the chart's own digits with unit, or a word
	Converted string // "30.18 mm"; empty when there is nothing to convert
	Note      string // faces, or what else goes with the figure
	Basis     string // "published", "common practice", "memory", "measured"
	Sources   []Link
	At        string
	Others    []Cell
	Measured  string // what readers measured, in a few words
	Correct   Link   // where to correct it; Note says what it is
}

// Home is the front page.
type Home struct {
	Ways         []Link // what have you got in your hand?
	Text         template.HTML
	Rows, Tables int
	Own          []Link // pages and tables of the keeper's own
}

// HoldChoice is one picture of the hold strip.
type HoldChoice struct {
	Hold, Label  string
	See, SeeYoke string // what one can see of a joint, and of a bare yoke
	Icon         template.HTML
	Faces        []FacesChoice
	Yoke         *YokeChoice // nil where a bare yoke has no distance, and on a page that asks for joints only
}

// YokeChoice is the distance to measure on a bare yoke of that hold.
type YokeChoice struct {
	Kind       string // of the drawing
	Label, How string
	Figure     Figure
}

// FacesChoice is one pair of faces with the drawing that shows them.
type FacesChoice struct {
	Faces, Label, How string
	Figure            Figure
}

// Choice is an option of a list.
type Choice struct{ Value, Label string }

// Identify is the page of the form; ByHand is what is shown without script.
type Identify struct {
	Holds      []HoldChoice
	Tools      []Choice
	Conditions []Choice
	ByHand     template.HTML
}

// EmbedFrame is the finder alone, for an iframe of another page.
type EmbedFrame struct{}

// Keeper is who keeps the chart. Every detail may be empty.
type Keeper struct {
	Demo                bool // the details are an invented example
	Name, Mail, Address string
	Phone, Dial         string   // as written, and as a link dials it
	Units               string   // "in" or "mm": what a request asks for first
	Web                 string   // where the site is published, "https://example.org"; no slash at the end
	Edit                string   // where a file of the chart is edited, with places for {file} and {line}
	Languages           []string // of the site, the one at its root first; none: English alone
}

// Send is the counter's page: a link that asks somebody to measure.
type Send struct {
	Keeper Keeper
	Holds  []Choice
}

// Card is the customer's page: one picture and one input at a time.
type Card struct {
	Keeper Keeper
	Holds  []HoldChoice
	Tools  []Choice
}

// Order is the page of the enquiry slip.
type Order struct {
	Keeper Keeper
	Rows   string // address that rows of joints have their pages below
}

// Shaft is the page of the shaft record.
type Shaft struct {
	Calculations []Link // pages whose results a record can keep
	Rows         string // address that rows of joints have their pages below
}

// Chart lists the tables.
type Chart struct {
	Tables []TableCard
	Data   []Link // all of it for programs
}

// TableCard is one table in the list.
type TableCard struct {
	Link    Link
	Rows    int
	Version string
	Basis   string // "9 published, 40 common practice, 12 memory"
}

// Table is the page of one table.
type Table struct {
	Title, About, Version, Date string
	Cautions                    []string
	Columns                     []Column
	Rows                        []TableRow
	Data                        []Link // JSON and CSV
	Identify                    string // address of the page that identifies a row of it; empty for none
}

// Column is a head cell.
type Column struct {
	ID, Label, Unit string
	Method          Link
}

// TableRow is one line; Cells go with the columns.
type TableRow struct {
	Row     Link
	Anchor  string // where the row has no page of its own: its line then names sources and note too
	Note    string
	Also    []string
	Says    []string // what readers measured in it, of a row without a page
	Correct Link     // where to correct a value of it, of a row without a page
	Cells   [][]Cell // by column; two in a cell where the ends of a conversion joint differ
	Basis   string
	Search  string   // words the filter looks in, folded
	Holds   []string // of a line that stands for a size: which it has
	// Caps and Acrosses in mm let the filter understand a size such as "27 x 82".
	Caps, Acrosses []string
}

// Sized reports whether a size can find a row of it: only joints have one.
func (t *Table) Sized() bool {
	return slices.ContainsFunc(t.Rows, func(r TableRow) bool { return len(r.Caps)+len(r.Acrosses) > 0 })
}

// Joint is the page of one row.
type Joint struct {
	ID, Title, Table                      string
	Lead                                  string // its figures in one line
	TableLink                             Link
	Also                                  []string
	Formerly                              []string // which retired rows lead here and why, as sentences
	Ends                                  []JointEnd
	Figures                               []Figure
	Basis                                 string // in words, as a sentence
	Confirm                               bool   // a row from memory: must be confirmed before ordering
	Twins, SameFigures, Near, Conversions []Link
	Values                                []NamedCell // columns beyond hold, cap and across
	Sources                               []SourceView
	Note                                  string
	Life                                  template.HTML // one to one; empty when no figure is known
	Paper                                 string        // address of the sheet to print
	History                               []RowChange
	Measured                              []MeasuredValue
	Own                                   []NamedCell // what the keeper adds
	OwnTitle                              string      // whose word that is
}

// JointEnd is one end's figures.
type JointEnd struct {
	Title             string
	Like              Link
	Hold, Cap, Across Cell
	Method            []Link
}

// NamedCell is a labelled value.
type NamedCell struct {
	Label string
	Cell  Cell
}

// SourceView is a source in words. Figures name it by its mark, such as [1], on a page that
// names it often.
type SourceView struct{ ID, Kind, Title, Publisher, Edition, Date, Where, Trust, Mark string }

// Sources is the page of the registry; each entry has the id "source-<ID>".
type Sources struct{ Sources []SourceView }

// Method is the page of the identification's constants.
type Method struct{ Constants []Constant }

// Constant is a figure the identification rests on.
type Constant struct {
	Says, Value string
	Basis       string
	Source      Link // no Href: a standard's clause
}

// Text is a Markdown page: guide, about, not found.
type Text struct {
	HTML template.HTML
	Next []Link
}

// Moved stands at the address of a row that is no longer in the chart.
type Moved struct {
	ID  string
	Why string
	To  []Link // none: withdrawn; several: split
}

// NotKept is what a reader without a network sees in the place of a page that is missing
// from what the device keeps.
type NotKept struct{}

// Paper is the sheet that shows one row life size, for one printed page.
type Paper struct {
	ID             string
	Size           bool // it is a size of a large chart, not a row
	Row            Link // the row's page
	Lead           string
	Drawing, Ruler template.HTML // one to one; no drawing when no figure of the row is known
	Truth          string        // what on the drawing is true, as a sentence
	Ends           []JointEnd
	Basis          string // in words, as a sentence
}

// Search is the page that asks; its script fills it.
type Search struct{}

// AZ lists everything by name; of a large chart the names of its rows are on pages of their own.
type AZ struct {
	Letters []Letter
	Names   []Link // to those pages
}

// Names lists the rows of a large chart whose names begin alike, or leads on where they are too many.
type Names struct {
	Up    Link // to where it is listed
	Parts []Link
	Lines []NamesLine
}

// NamesLine is one size under those of its names that stand side by side, or another name of one row.
type NamesLine struct {
	Rows []Link
	Note string
}

// Letter is a heading of that list.
type Letter struct {
	Name, ID string
	Links    []Link
}
