package content

import (
	"errors"
	"html/template"

	"capspan/build/diag"
	"capspan/content/figure"
)

// Resolver is what pages may ask of the chart. Package build supplies it, since this
// package knows neither tables nor the core. A function that is nil is not asked: its
// directives are left out and unchecked, as when the tables themselves have problems.
//
// A name that the chart does not have comes back as a [Refusal].
type Resolver struct {
	Row     func(id string) (Row, error)
	Table   func(id string, rows []string) (template.HTML, error) // no rows: all of them
	Figure  func(row string) (figure.JointDrawing, error)
	Answer  func(address string) (Answer, error)           // a query as /identify/ takes it, without "#"
	Reading func(text string) (Reading, error)             // "1.062 in", "1 1/16 in", "27.0 mm"
	Apart   func(instrument string) (template.HTML, error) // the sizes an instrument cannot tell apart

	Contributing func(part string) (string, error) // what a contributor looks up, as Markdown without directives
}

// Row is a row of the chart as a sentence names it.
type Row struct {
	Name    string
	Href    string // with the base
	Figures string // "1.062 in × 3.219 in, clip outside"
}

// Reading is a length in both units.
type Reading struct{ Given, Converted string }

// Answer is what the core concludes from a query.
type Answer struct {
	Verdict string
	Rows    []string // ids of all rows that are left
	HTML    template.HTML
}

// Refusal says why a resolver has no answer. The known names serve the hint.
type Refusal struct {
	Rule, Fact string
	Name       string
	Known      []string
}

func (r *Refusal) Error() string { return r.Fact }

// refuse reports what a resolver said at the place of the directive's word.
func (d *document) refuse(offset int, err error) {
	var refusal *Refusal
	if errors.As(err, &refusal) {
		d.problem(offset, refusal.Rule, refusal.Fact, diag.Nearest(refusal.Name, refusal.Known)...)
		return
	}
	d.problem(offset, "bad-directive", err.Error())
}
