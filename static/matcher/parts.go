package matcher

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"

	"github.com/dop251/goja"

	"capspan/static"
)

// The types below mirror part-types.ts: identifying in a table that holds no joints, by
// the columns its head declares as matched.

// PartTable is such a table as the core reads it.
type PartTable struct {
	Format   int          `json:"format"` // 1
	Version  string       `json:"version"`
	ID       string       `json:"id"`
	Title    string       `json:"title"`
	Cautions []string     `json:"cautions"`
	Columns  []PartColumn `json:"columns"` // the matched ones
	Rows     []PartRow    `json:"rows"`
}

// PartColumn is a matched column; lengths are exact decimals of a millimetre.
type PartColumn struct {
	ID        string `json:"id"`
	Label     string `json:"label"`
	Match     string `json:"match"` // exact, outside, inside, circle
	Least     string `json:"least"`
	Greatest  string `json:"greatest"`
	Below     string `json:"below,omitempty"`
	BelowText string `json:"belowText,omitempty"`
}

// PartRow is one row. A value is a [PartFigure], or "unknown" or "none".
type PartRow struct {
	Ref    string         `json:"ref"`
	Name   string         `json:"name"`
	Also   []string       `json:"also"`
	Values map[string]any `json:"values"`
	Beside []Beside       `json:"beside"`
}

// PartFigure is one figure: Is and To in millimetres, or a count.
type PartFigure struct {
	Is     string       `json:"is"`
	To     string       `json:"to,omitempty"`
	Half   string       `json:"half"`
	Text   string       `json:"text"`
	Basis  Basis        `json:"basis"`
	Others []PartFigure `json:"others,omitempty"`
}

// Beside is what a column says that is not matched.
type Beside struct {
	Label string `json:"label"`
	Text  string `json:"text"`
}

// PartQuery is what somebody counted and measured on a part.
type PartQuery struct {
	Table     string              `json:"table"`
	Values    map[string][]string `json:"values"`            // by column
	Between   string              `json:"between,omitempty"` // next, farthest; empty: next
	Edges     string              `json:"edges,omitempty"`   // outer, inner, same, centres; empty: outer
	Hole      []string            `json:"hole,omitempty"`    // diameter of a hole, where the edges need it
	Unit      Unit                `json:"unit,omitempty"`
	Tool      Tool                `json:"tool,omitempty"`
	Condition Condition           `json:"condition,omitempty"`
}

// PartAnswer is what the core concludes. Lengths are millimetres.
type PartAnswer struct {
	Verdict    Verdict         `json:"verdict"`
	Says       Says            `json:"says"`
	Rows       []PartFound     `json:"rows"` // what is left, best first
	Near       []PartFound     `json:"near"` // nearest that do not match
	Readings   []PartReading   `json:"readings"`
	Complaints []PartComplaint `json:"complaints"`
	Cautions   []string        `json:"cautions"`
	Chart      struct {
		Version string `json:"version"`
	} `json:"chart"`
}

// PartFound is a row with what was compared.
type PartFound struct {
	Ref      string           `json:"ref"`
	Name     string           `json:"name"`
	Basis    Basis            `json:"basis"`
	Compared []PartComparison `json:"compared"`
	Because  string           `json:"because"`
}

// PartComparison is a reading beside a figure: Difference is 0 inside a range, else to its
// nearer end; Uncertainty is expanded (about 99 %), 0 of a count.
type PartComparison struct {
	Column      string  `json:"column"`
	Label       string  `json:"label"`
	Measured    float64 `json:"measured"`
	ChartText   string  `json:"chartText"`
	Difference  float64 `json:"difference"`
	Uncertainty float64 `json:"uncertainty"`
	Unit        string  `json:"unit"` // mm; empty of a count
	Agrees      bool    `json:"agrees"`
}

// PartReading is what the readings of one column came to; of a bolt circle its diameter.
type PartReading struct {
	Column      string   `json:"column"`
	Label       string   `json:"label"`
	Used        []string `json:"used"`
	SetAside    []string `json:"setAside"`
	Value       float64  `json:"value"`
	Uncertainty float64  `json:"uncertainty"`
	Unit        string   `json:"unit"`
	Why         string   `json:"why"`
}

// PartComplaint is a reading, or a word of the query, that could not be understood.
type PartComplaint struct {
	Column string `json:"column"` // a column, "hole-diameter", or "query"
	Index  int    `json:"index"`
	Text   string `json:"text"`
	Says   string `json:"says"`
}

// Parts is the core of identifying in tables without joints. Use it from one goroutine at a time.
type Parts struct{ m *Matcher }

// NewParts loads the bundle the pages get; the files are those of package static.
func NewParts(fsys fs.FS) (*Parts, error) {
	m, err := load(fsys, "matcher/parts.ts", static.PartsName)
	if err != nil {
		return nil, err
	}
	return &Parts{m}, nil
}

// load makes a machine of one source with its exports under a global name.
func load(fsys fs.FS, source, global string) (*Matcher, error) {
	bundle, problems := static.Script(fsys, source, global)
	if problems.Blocked() {
		return nil, fmt.Errorf("bundle %s: %v", source, problems)
	}
	vm := goja.New()
	if _, err := vm.RunScript(source, string(bundle)); err != nil {
		return nil, fmt.Errorf("load %s: %w", source, err)
	}
	return &Matcher{vm: vm, core: vm.Get(global).ToObject(vm)}, nil
}

// Identify puts a query to the core. A query the core cannot use is no error: the answer
// then says to measure again and carries complaints.
func (p *Parts) Identify(table PartTable, q PartQuery) (PartAnswer, error) {
	var a PartAnswer
	err := p.m.call(&a, "identifyPart", table, q)
	return a, err
}

// Address returns the fragment, without "#", that stands for a query on the table's page.
func (p *Parts) Address(table PartTable, q PartQuery) (string, error) {
	var s string
	err := p.m.call(&s, "encodePart", table, q, table.Version)
	return s, err
}

// Decode reads such a fragment, with or without "#". What cannot be read comes back as
// complaints beside the rest; version is that of the chart it was made with, or empty.
func (p *Parts) Decode(table PartTable, fragment string) (q PartQuery, version string, complaints []PartComplaint, err error) {
	var got struct {
		Query      PartQuery       `json:"query"`
		Chart      string          `json:"chart"`
		Complaints []PartComplaint `json:"complaints"`
	}
	err = p.m.call(&got, "decodePart", table, fragment)
	return got.Query, got.Chart, got.Complaints, err
}

// ChordFactor is the distance from a hole to its neighbour, or to the farthest, on a bolt
// circle of diameter 1.
func (p *Parts) ChordFactor(holes int, between string) (float64, error) {
	var f float64
	err := p.m.call(&f, "chordFactor", holes, between)
	return f, err
}

// call hands plain data to an export of the core, as a browser does.
func (m *Matcher) call(out any, name string, args ...any) error {
	values := make([]goja.Value, len(args))
	for i, arg := range args {
		text, err := json.Marshal(arg)
		if err != nil {
			return fmt.Errorf("write what %s is asked: %w", name, err)
		}
		if values[i], err = m.parse(text); err != nil {
			return err
		}
	}
	return m.into(out, name, values...)
}

// DecodePartQuery reads one query from JSON as [DecodeQuery] does.
func DecodePartQuery(text []byte) (PartQuery, error) {
	var q PartQuery
	if len(text) > MaxQuery {
		return q, fmt.Errorf("the query has %d bytes, at most %d are read", len(text), MaxQuery)
	}
	d := json.NewDecoder(bytes.NewReader(text))
	d.DisallowUnknownFields()
	if err := d.Decode(&q); err != nil {
		return PartQuery{}, queryError(text, d.InputOffset(), err)
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		line, col := place(text, d.InputOffset())
		return PartQuery{}, fmt.Errorf("query:%d:%d: something follows the query, want one JSON object", line, col)
	}
	return q, nil
}
