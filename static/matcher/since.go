package matcher

import (
	"fmt"
	"io/fs"
)

// Record is the record of changes as the core reads it, newest issue first.
type Record struct {
	Format int     `json:"format"` // 1
	Chart  string  `json:"chart"`  // the one of this edition
	Issues []Issue `json:"issues"`
}

// Issue is what one issue of the chart changed.
type Issue struct {
	Chart   string         `json:"chart"`
	From    string         `json:"from"` // the issue before it, or empty
	Date    string         `json:"date"`
	Why     string         `json:"why"`
	Changes []IssuedChange `json:"changes"`
}

// IssuedChange is one change as it was recorded. Rows are the refs of today's rows it bears on.
type IssuedChange struct {
	Of     string   `json:"of"`
	Column string   `json:"column"`
	What   string   `json:"what"`
	Old    string   `json:"old"`
	New    string   `json:"new"`
	Why    string   `json:"why"`
	Rows   []string `json:"rows"`
}

// Since says what has changed since a link was made, for the rows its answer rests on.
type Since struct {
	Standing string   `json:"standing"` // same, older, partly, newer, unknown, no-name
	Made     string   `json:"made"`
	Now      string   `json:"now"`
	Rows     []string `json:"rows"`
	Head     string   `json:"head"`
	Changes  []string `json:"changes"`
}

// sinceName is the global the core's script of it is loaded under here.
const sinceName = "CapspanChanges"

// ChangedSince asks the core what has changed since an address was made with a chart of
// that name; answer is an [Answer] or a [PartAnswer]. The files are those of package static.
func ChangedSince(fsys fs.FS, record Record, made string, answer any) (Since, error) {
	var out Since
	m, err := load(fsys, "matcher/since.ts", sinceName)
	if err != nil {
		return out, err
	}
	if err := m.call(&out, "changedSince", record, made, answer); err != nil {
		return out, fmt.Errorf("ask what has changed: %w", err)
	}
	return out, nil
}

// MadeWith is the name of the chart an address of the identify page was made with; empty
// when it names none.
func (m *Matcher) MadeWith(fragment string) (string, error) {
	var got struct {
		Chart string `json:"chart"`
	}
	err := m.call(&got, "decodeAddress", fragment)
	return got.Chart, err
}
