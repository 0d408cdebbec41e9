package build

import (
	"encoding/json"
	"errors"
	"fmt"

	"capspan/build/diag"
	"capspan/static/matcher"
)

// Identifier is the core with the chart of some sources, for whoever asks it a few
// questions and goes.
type Identifier struct {
	*matcher.Matcher
	// Kept tells that the chart was compiled and is kept for the next question.
	Kept bool

	src    Sources
	folder string
	record func() (matcher.Record, error)
}

// NewIdentifier returns the identification core with the chart of the sources in it. What
// is compiled of a chart of some hundred rows or more is kept in the folder, and taken from
// there while tables and program are the same; "" for a folder keeps nothing. A folder that
// cannot be read or written does no harm.
func NewIdentifier(src Sources, folder string) (*Identifier, diag.List) {
	out := &Identifier{src: src, folder: folder}
	key := ""
	if folder != "" {
		key, _ = keptKey(src) // what cannot be read is told by the loader
	}
	if key != "" && out.open(key) == nil {
		return out, nil
	}
	return out, out.compile(key)
}

// open takes a chart that was kept.
func (d *Identifier) open(key string) error {
	kept, err := openKept(d.folder, key)
	if err != nil {
		return err
	}
	d.Matcher, err = kept.matcher()
	d.record = kept.record
	return err
}

// compile reads the tables, and keeps what it made of the chart under a key, if there is one.
func (d *Identifier) compile(key string) diag.List {
	set, problems := d.src.spoken()
	if problems.Blocked() {
		return problems
	}
	chart := Chart(set)
	d.record = func() (matcher.Record, error) { return Record(set), nil }
	core, more := coreFor(d.src.Static, len(chart.Rows))
	problems.Add(more...)
	if problems.Blocked() {
		return problems
	}
	if err := d.take(core, chart, key); err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "static/matcher/index.ts"}, Fact: err.Error(), Rule: "core-fails"})
	}
	return problems
}

func (d *Identifier) take(core []byte, chart matcher.Chart, key string) error {
	made := compiled{core: core}
	var err error
	if len(chart.Rows) > largeRows {
		made.chart, made.pieces, err = atHand(chart)
	} else {
		made.chart, err = json.Marshal(chart)
	}
	if err != nil {
		return err
	}
	if key != "" {
		record, err := d.record()
		if err != nil {
			return err
		}
		if made.record, err = json.Marshal(record); err != nil {
			return fmt.Errorf("write the record of changes: %w", err)
		}
		d.Kept = writeKept(d.folder, key, made) == nil // without it the next question takes as long as this one
	}
	d.Matcher, err = made.matcher()
	return err
}

// Identify is [matcher.Matcher.Identify]. A kept chart that turns out to be spoilt is
// compiled again.
func (d *Identifier) Identify(q matcher.Query) (matcher.Answer, error) {
	answer, err := d.Matcher.Identify(q)
	if !errors.Is(err, errNotWhole) {
		return answer, err
	}
	key, err := keptKey(d.src)
	if err != nil {
		return answer, err
	}
	if problems := d.compile(key); problems.Blocked() {
		return answer, fmt.Errorf("load the tables: %s", problems.Summary())
	}
	return d.Matcher.Identify(q)
}

// ChangedSince says what has changed since an address was made with a chart of that name,
// for the rows that the answer rests on.
func (d *Identifier) ChangedSince(made string, answer matcher.Answer) (matcher.Since, error) {
	record, err := d.record()
	if err != nil { // the record that was kept is spoilt
		if problems := d.compile(""); problems.Blocked() {
			return matcher.Since{}, fmt.Errorf("load the tables: %s", problems.Summary())
		}
		if record, err = d.record(); err != nil {
			return matcher.Since{}, err
		}
	}
	return matcher.ChangedSince(d.src.Static, record, made, answer)
}
