package tables

import (
	"crypto/sha256"
	"encoding/hex"
	"slices"
)

// Name is how an issue is called in print and in addresses: the date and the hash of
// the chart (2026-11-25-3f9a1c2), or a table's number.
func (v Version) Name() string {
	if v.Hash != "" {
		return v.Date + "-" + v.Hash
	}
	return v.Number
}

// Version names the chart as a whole: the date of its newest table and a hash of
// what it says. Comments, order of keys and spacing do not change the hash; any
// value, source, note or retired id does.
func (s *Set) Version() Version {
	if s.of != nil {
		return s.of.Version()
	}
	s.named.once.Do(func() { s.named.as = s.version() })
	return s.named.as
}

func (s *Set) version() Version {
	var v Version
	for _, t := range s.Tables {
		v.Date = max(v.Date, t.Version.Date) // YYYY-MM-DD sorts as text
	}
	sum := sha256.New()
	if err := s.writeCanonical(sum); err != nil {
		panic("internal error: " + err.Error()) // strings and lists only
	}
	v.Hash = hex.EncodeToString(sum.Sum(nil))[:7]
	return v
}

// AllSources lists every source the row rests on or quotes, each once: its own, then
// those of its columns in order, then those of its ends.
func (r *Row) AllSources() []*Source {
	var out []*Source
	r.eachSource(func(s *Source) {
		if !slices.Contains(out, s) {
			out = append(out, s)
		}
	})
	return out
}

// eachSource visits them as they stand, one named twice twice.
func (r *Row) eachSource(visit func(*Source)) {
	all := func(sources []*Source) {
		for _, s := range sources {
			visit(s)
		}
	}
	value := func(v *Value) {
		all(v.Sources)
		for i := range v.Others {
			all(v.Others[i].Sources)
		}
	}
	all(r.Sources)
	for i := range r.Table.Columns {
		v := r.Values[r.Table.Columns[i].ID]
		value(&v)
	}
	for i := range r.Ends {
		value(&r.Ends[i].Hold)
		value(&r.Ends[i].Cap)
		value(&r.Ends[i].Across)
	}
}
