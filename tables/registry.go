package tables

import (
	"strings"

	"capspan/build/diag"
)

// The keys of the registry and of the list of retired ids, in the order in which
// Format writes them.
var (
	sourceKeys  = []string{"id", "kind", "title", "publisher", "edition", "date", "where", "trust"}
	retiredKeys = []string{"id", "to", "why"}
)

// readRegistry reads sources.yaml.
func (l *loader) readRegistry(r *reader, root *node) {
	top, ok := r.fields(root, "sources", []string{"sources"}, nil)
	if !ok || !r.need(root, "sources", top, "sources") {
		return
	}
	for i, n := range r.items(top["sources"].value, "sources", true) {
		path := numbered("sources/entry %d", i+1)
		if id := peek(n, "id"); id != "" {
			path = "sources/" + id
		}
		got, ok := r.fields(n, path, sourceKeys, nil)
		if !ok || !r.need(n, path, got, "id", "kind", "title", "publisher") {
			continue
		}
		s := &Source{Title: r.optional(got, "title", path), Publisher: r.optional(got, "publisher", path),
			Edition: r.optional(got, "edition", path), Where: r.optional(got, "where", path),
			Trust: r.optional(got, "trust", path), Pos: r.pos(got["id"].value)}
		s.Kind, _ = word(r, got["kind"].value, path, "unknown-kind", "kind of source", sourceKinds)
		s.Date = r.shaped(got, "date", path, "bad-date", "a day such as 2026-11-25", isDay)
		if s.ID, ok = r.id(got["id"].value, path); !ok {
			continue
		}
		if first, taken := l.sources[s.ID]; taken {
			p := r.fail(got["id"].value, path, "duplicate-id", numbered("the id %q is already taken", s.ID))
			p.Notes = []diag.Note{{Text: "first defined at", Pos: first.Pos}}
			continue
		}
		l.sources[s.ID] = s
		l.set.Sources = append(l.set.Sources, s)
	}
}

// readRetired reads retired.yaml.
func (l *loader) readRetired(r *reader, root *node) {
	top, ok := r.fields(root, "retired", []string{"retired"}, nil)
	if !ok || !r.need(root, "retired", top, "retired") {
		return
	}
	for i, n := range r.items(top["retired"].value, "retired", true) {
		path := numbered("retired/entry %d", i+1)
		if id := peek(n, "id"); id != "" {
			path = "retired/" + id
		}
		got, ok := r.fields(n, path, retiredKeys, nil)
		if !ok || !r.inline(n, path) || !r.need(n, path, got, "id", "why") {
			continue
		}
		entry := Retired{Why: r.optional(got, "why", path), Pos: r.pos(got["id"].value)}
		if entry.ID, ok = r.id(got["id"].value, path); !ok {
			continue
		}
		if f, there := got["to"]; there {
			entry.To = r.texts(f.value, path)
		}
		if first := l.set.retired(entry.ID); first != nil {
			p := r.fail(got["id"].value, path, "duplicate-id", numbered("the id %q is already retired", entry.ID))
			p.Notes = []diag.Note{{Text: "first defined at", Pos: first.Pos}}
			continue
		}
		l.set.Retired = append(l.set.Retired, entry)
	}
}

// retired finds the entry of a retired id, letter case ignored.
func (s *Set) retired(id string) *Retired {
	for i := range s.Retired {
		if strings.EqualFold(s.Retired[i].ID, id) {
			return &s.Retired[i]
		}
	}
	return nil
}
