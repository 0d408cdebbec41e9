package tables

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"capspan/build/diag"
)

// historyFile says what every issue of the chart changed. It is no part of the chart:
// its hash does not depend on it.
const historyFile = "history.yaml"

// Release is what one issue of the chart changed against the one before.
type Release struct {
	Chart   string // the name
	From    string // the name of the issue before, which it was compared with; empty in entries that do not say
	Date    string
	Why     string
	Tables  []string // "joints-inch 1.1.0": the versions that rose
	Changes []Recorded
	Pos     diag.Pos
}

// Recorded is one thing that changed, in the words of package compare.
type Recorded struct {
	Of     string // "joints-inch/1310", "joints-inch", "sources/some-manual"
	Column string // of a cell
	What   string // value, basis, source ... or added, retired, renamed
	Old    string // with its unit
	New    string
	Why    string // of a row that was retired
	Pos    diag.Pos
}

// RowID is the id of the row it is about, empty when it is about none.
func (c Recorded) RowID() string {
	table, id, _ := strings.Cut(c.Of, "/")
	if table == "sources" || table == "retired" {
		return ""
	}
	return id
}

// The keys of the file, in the order in which Format writes them.
var (
	releaseKeys  = []string{"chart", "from", "date", "why", "tables", "changes"}
	recordedKeys = []string{"of", "column", "what", "old", "new", "why"}
)

// releaseNeeds are the keys every entry has.
func releaseNeeds() []string {
	return slices.DeleteFunc(slices.Clone(releaseKeys), func(key string) bool { return key == "from" })
}

var chartName = regexp.MustCompile(`^\d{4}-\d\d-\d\d-[0-9a-f]{7}$`)

// readHistory reads history.yaml.
func (l *loader) readHistory(r *reader, root *node) {
	top, ok := r.fields(root, "history", []string{"history"}, nil)
	if !ok || !r.need(root, "history", top, "history") {
		return
	}
	for i, n := range r.items(top["history"].value, "history", true) {
		path := numbered("history/entry %d", i+1)
		if name := peek(n, "chart"); name != "" {
			path = "history/" + name
		}
		got, ok := r.fields(n, path, releaseKeys, nil)
		if !ok || !r.need(n, path, got, releaseNeeds()...) {
			continue
		}
		release := Release{Why: r.optional(got, "why", path), Tables: []string{}, Pos: r.pos(n)}
		for _, item := range r.items(got["tables"].value, path+".tables", true) {
			if text, ok := r.text(item, path+".tables"); ok {
				release.Tables = append(release.Tables, text)
			}
		}
		release.Chart = r.shaped(got, "chart", path, "bad-version", "the name of a chart such as 2026-11-25-3f9a1c2", chartName.MatchString)
		release.From = r.shaped(got, "from", path, "bad-version", "the name of a chart such as 2026-11-25-3f9a1c2", chartName.MatchString)
		release.Date = r.shaped(got, "date", path, "bad-date", "a day such as 2026-11-25", isDay)
		for _, item := range r.items(got["changes"].value, path+".changes", false) {
			if c, ok := r.recorded(item, path+".changes"); ok {
				release.Changes = append(release.Changes, c)
			}
		}
		for _, before := range l.set.History {
			if before.Chart == release.Chart && release.Chart != "" {
				p := r.fail(got["chart"].value, path, "duplicate-id", numbered("the chart %q is already recorded", release.Chart))
				p.Notes = []diag.Note{{Text: "first recorded at", Pos: before.Pos}}
			}
		}
		l.set.History = append(l.set.History, release)
	}
}

func (r *reader) recorded(n *node, path string) (Recorded, bool) {
	got, ok := r.fields(n, path, recordedKeys, nil)
	if !ok || !r.inline(n, path) || !r.need(n, path, got, "of", "what") {
		return Recorded{}, false
	}
	c := Recorded{Pos: r.pos(n)}
	for key, into := range map[string]*string{"of": &c.Of, "column": &c.Column, "what": &c.What, "old": &c.Old, "new": &c.New, "why": &c.Why} {
		*into = r.optional(got, key, path)
	}
	return c, true
}

// Record puts a release in front of the others in the text of a history file, leaving
// the rest as it is.
func Record(history []byte, release Release) ([]byte, error) {
	if len(bytes.TrimSpace(history)) == 0 {
		history = []byte("history: []\n")
	}
	lines := strings.Split(string(history), "\n")
	for i, line := range lines {
		switch strings.TrimRight(line, " \r") {
		case "history:":
			return []byte(strings.Join(lines[:i+1], "\n") + "\n" + release.yaml() + "\n" + strings.Join(lines[i+1:], "\n")), nil
		case "history: []":
			return []byte(strings.Join(lines[:i], "\n") + strings.Repeat("\n", min(i, 1)) + "history:\n" + release.yaml() + strings.Join(lines[i+1:], "\n")), nil
		}
	}
	return nil, errors.New(folder + historyFile + " has no line \"history:\" or \"history: []\"")
}

// CheckHistory reports what Load would find in such a history file: too long, recorded
// twice, a text it refuses.
func CheckHistory(text []byte) diag.List {
	l := &loader{set: &Set{}, lim: shipped}
	r := &reader{file: folder + historyFile, lim: l.lim, list: &l.list}
	if len(text) > l.lim.bytes {
		l.list.Add(diag.Problem{Pos: diag.Pos{File: r.file}, Rule: "file-size", Fact: numbered("the file would be larger than %d bytes", l.lim.bytes),
			Hints: []string{"move old entries out of it"}})
	} else if root := r.parse(text); root != nil {
		l.readHistory(r, root)
	}
	l.list.Sort()
	return l.list
}

// yaml writes every text in quotes, so that none is read as something else.
func (r Release) yaml() string {
	var b strings.Builder
	fmt.Fprintf(&b, "  - chart: %s\n", r.Chart)
	if r.From != "" {
		fmt.Fprintf(&b, "    from: %s\n", r.From)
	}
	fmt.Fprintf(&b, "    date: %s\n    why: %s\n", r.Date, quoted(r.Why))
	list := make([]string, len(r.Tables))
	for i, t := range r.Tables {
		list[i] = quoted(t)
	}
	fmt.Fprintf(&b, "    tables: [%s]\n    changes:\n", strings.Join(list, ", "))
	for _, c := range r.Changes {
		var parts []string
		for i, text := range []string{c.Of, c.Column, c.What, c.Old, c.New, c.Why} {
			if text != "" {
				parts = append(parts, recordedKeys[i]+": "+quoted(text))
			}
		}
		fmt.Fprintf(&b, "      - {%s}\n", strings.Join(parts, ", "))
	}
	return b.String()
}

// quoted is a text as YAML reads it back: it holds no control characters, which the
// loader refuses everywhere.
func quoted(text string) string {
	return `"` + strings.NewReplacer(`\`, `\\`, `"`, `\"`).Replace(text) + `"`
}
