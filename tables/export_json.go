package tables

import (
	"encoding/json"
	"io"
)

// The open data as JSON. Every figure is text, because its digits are data: "is" and
// "unit" as the chart has them, "mm" exact, "in" rounded when it is converted.

type chartJSON struct {
	Version string        `json:"version,omitempty"`
	Date    string        `json:"date,omitempty"`
	Tables  []tableJSON   `json:"tables"`
	Sources []sourceJSON  `json:"sources"`
	Retired []retiredJSON `json:"retired"`
}

type tableJSON struct {
	ID       string       `json:"table"`
	Title    string       `json:"title"`
	About    string       `json:"about"`
	Version  string       `json:"version"`
	Date     string       `json:"date"`
	Unit     Unit         `json:"unit,omitempty"`
	Cautions []string     `json:"cautions,omitempty"`
	Columns  []columnJSON `json:"columns"`
	Rows     []rowJSON    `json:"rows"`
	Sources  []sourceJSON `json:"sources,omitempty"` // of a table standing alone: those it names
}

type columnJSON struct {
	ID       string `json:"id"`
	Label    string `json:"label"`
	Kind     Kind   `json:"kind"`
	Unit     Unit   `json:"unit,omitempty"`
	Range    bool   `json:"range,omitempty"`
	Least    string `json:"least,omitempty"`
	Greatest string `json:"greatest,omitempty"`
	Method   string `json:"method,omitempty"`
	Match    Match  `json:"match,omitempty"`
	Below    string `json:"below,omitempty"`
}

type rowJSON struct {
	ID      string               `json:"id"`
	Also    []string             `json:"also,omitempty"`
	Values  map[string]valueJSON `json:"values,omitempty"`
	Ends    []endJSON            `json:"ends,omitempty"` // of a conversion joint
	Basis   Basis                `json:"basis"`
	Sources []string             `json:"sources,omitempty"`
	At      string               `json:"at,omitempty"`
	Twins   []string             `json:"twins,omitempty"`
	Note    string               `json:"note,omitempty"`
}

type endJSON struct {
	Like   string    `json:"like"`
	Hold   valueJSON `json:"hold"`
	Cap    valueJSON `json:"cap"`
	Across valueJSON `json:"across"`
}

type valueJSON struct {
	Is         string      `json:"is"`
	Unit       Unit        `json:"unit,omitempty"`
	MM         string      `json:"mm,omitempty"`
	In         string      `json:"in,omitempty"`
	Nm         string      `json:"nm,omitempty"`
	Lbfft      string      `json:"lbfft,omitempty"`
	To         *valueJSON  `json:"to,omitempty"` // the upper end of a range; the fields above are the lower
	Faces      Faces       `json:"faces,omitempty"`
	FacesBasis Basis       `json:"facesBasis,omitempty"`
	Basis      Basis       `json:"basis,omitempty"`
	Sources    []string    `json:"sources,omitempty"`
	At         string      `json:"at,omitempty"`
	Others     []valueJSON `json:"others,omitempty"`

	Measured []measurementJSON `json:"measured,omitempty"`
	Combined *combinedJSON     `json:"combined,omitempty"`
}

type sourceJSON struct {
	ID        string `json:"id"`
	Kind      string `json:"kind"`
	Title     string `json:"title"`
	Publisher string `json:"publisher"`
	Edition   string `json:"edition,omitempty"`
	Date      string `json:"date,omitempty"`
	Where     string `json:"where,omitempty"`
	Trust     string `json:"trust,omitempty"`
}

type retiredJSON struct {
	ID  string   `json:"id"`
	To  []string `json:"to,omitempty"`
	Why string   `json:"why"`
}

func encode(w io.Writer, doc any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(doc)
}

// besides adds what stands beside the tables.
func (doc *chartJSON) besides(s *Set) {
	for _, src := range s.Sources {
		doc.Sources = append(doc.Sources, sourceOf(src))
	}
	for _, r := range s.Retired {
		doc.Retired = append(doc.Retired, retiredJSON{r.ID, r.To, r.Why})
	}
}

func sourceOf(s *Source) sourceJSON {
	return sourceJSON{s.ID, s.Kind, s.Title, s.Publisher, s.Edition, s.Date, s.Where, s.Trust}
}

// headOf is a table without its rows.
func headOf(t *Table) tableJSON {
	doc := tableJSON{ID: t.ID, Title: t.Title, About: t.About, Version: t.Version.Number, Date: t.Version.Date,
		Unit: t.Unit, Cautions: t.Cautions, Columns: []columnJSON{}, Rows: []rowJSON{}}
	for _, c := range t.Columns {
		doc.Columns = append(doc.Columns, columnJSON{c.ID, c.Label, c.Kind, c.Unit, c.Range, c.Least.Text, c.Greatest.Text, c.Method, c.Match, c.Below.Text})
	}
	return doc
}

// decimalIn is the number in a unit, for programs: exact in its own unit, in millimetres
// and in newton metres, rounded as by [Quantity.In] in the others. A count has no unit.
func (q Quantity) decimalIn(unit Unit) string {
	switch {
	case unit == Millimetre || unit == NewtonMetre:
		return q.MM()
	case q.Unit == unit:
		return q.Decimal()
	}
	return q.In(unit)
}

func sourceIDs(sources []*Source) []string {
	var out []string
	for _, s := range sources {
		out = append(out, s.ID)
	}
	return out
}

func ids(rows []*Row) []string {
	var out []string
	for _, r := range rows {
		out = append(out, r.ID)
	}
	return out
}
