package build

import (
	"slices"

	"capspan/tables"
	"capspan/templates"
)

// size is the joints of a large chart that are written with the same figures, in the
// chart's order; they share a page.
type size struct {
	key  string
	rows []*tables.Row
}

// sizeIndex is the chart by sizes.
type sizeIndex struct {
	list []*size // in the order of their first rows
	of   map[*tables.Row]*size
}

// newSizeIndex lists the sizes that the set has rows of, each with all its rows in the chart.
func newSizeIndex(set *tables.Set, keyOf func(*tables.Row) string) sizeIndex {
	index := sizeIndex{of: map[*tables.Row]*size{}}
	byKey := map[string]*size{}
	for _, t := range set.Whole().Tables {
		if !t.Joint() {
			continue
		}
		for _, row := range t.Rows {
			key := keyOf(row)
			one := byKey[key]
			if one == nil {
				one = &size{key: key}
				byKey[key] = one
				index.list = append(index.list, one)
			}
			one.rows = append(one.rows, row)
			index.of[row] = one
		}
	}
	if set.Whole() == set {
		return index
	}
	sampled := map[*size]bool{}
	for _, t := range set.Tables {
		for _, row := range t.Rows {
			sampled[index.of[row]] = true
		}
	}
	index.list = slices.DeleteFunc(index.list, func(z *size) bool { return !sampled[z] })
	return index
}

// keyOf is the name of the page of a row's size.
func (s *site) keyOf(row *tables.Row) string {
	if s.again != nil {
		if at, is := s.again.place[row]; is {
			return s.again.again.now.rows[at].key
		}
	}
	return sizeKey(row)
}

// in are the rows of a size that stand in a table.
func (z *size) in(t *tables.Table) []*tables.Row {
	var rows []*tables.Row
	for _, row := range z.rows {
		if row.Table.ID == t.ID { // of a sample, the table is another
			rows = append(rows, row)
		}
	}
	return rows
}

// names are the ids of rows.
func names(rows []*tables.Row) []string {
	list := make([]string, 0, len(rows))
	for _, row := range rows {
		list = append(list, row.ID)
	}
	return list
}

// bases are those of evidence, the weakest first.
var bases = []tables.Basis{tables.Memory, tables.CommonPractice, tables.Measured, tables.Published}

// weakest is the row of a list that is least well founded.
func weakest(rows []*tables.Row) *tables.Row {
	return slices.MinFunc(rows, func(a, b *tables.Row) int { return slices.Index(bases, a.Basis) - slices.Index(bases, b.Basis) })
}

// sizeLink leads to the page of a size and says how many kits it has.
func (s *site) sizeLink(z *size) templates.Link {
	rows := s.ask("size", z.rows[0])
	return templates.Link{Href: s.at(sizeAddress(z.key)), Text: capital(s.figuresOf(rows[0])), Note: s.kitsOf(rows)}
}

// namedKits is how many kits of a list are named before they are only counted.
const namedKits = 3

// kitsOf names the kits of a size, or some of them and the number of the others.
func (s *site) kitsOf(rows []*tables.Row) string {
	list := s.word("size.kits", "n", len(rows)) + ": "
	for i, row := range rows[:min(namedKits, len(rows))] {
		if i > 0 {
			list += ", "
		}
		list += row.ID
	}
	if more := len(rows) - namedKits; more > 0 {
		return s.word("size.and-more", "names", list, "n", more)
	}
	return list
}

// sizesOf are the sizes of rows, each once and without that one, in the order of the rows.
func (s *site) sizesOf(rows []*tables.Row, but *size) []*size {
	var list []*size
	for _, row := range rows {
		s.see(row)
		if one := s.sizes().of[row]; one != but && !slices.Contains(list, one) {
			list = append(list, one)
		}
	}
	return list
}

func (s *site) sizeLinks(sizes []*size) []templates.Link {
	links := make([]templates.Link, 0, len(sizes))
	for _, z := range sizes {
		links = append(links, s.sizeLink(z))
	}
	return links
}
