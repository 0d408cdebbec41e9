package build

import (
	"cmp"
	"slices"
	"strings"

	"capspan/tables"
)

// rowsAgain is what a build with a memory makes of rows in one language, beside what the
// build before made of them. It is nil where nothing is kept, and its methods then make all.
type rowsAgain struct {
	*again
	list        []*tables.Row // as the language has them
	place       map[*tables.Row]int
	ground      sum            // of all that is made of, besides rows
	before, now map[string]any // what was made, by the name of what it is
}

// again is the memory of a language, or of what belongs to none, for the rows of a set; nil
// without a memory.
func (m *Memory) rowsAgain(of string, english, set *tables.Set, ground sum) *rowsAgain {
	compared := m.compare(english)
	if compared == nil {
		return nil
	}
	r := &rowsAgain{again: compared, place: compared.place, ground: ground, now: map[string]any{}}
	for _, t := range set.Tables {
		r.list = append(r.list, t.Rows...)
	}
	if set != english {
		r.place = make(map[*tables.Row]int, len(r.list))
		for n, row := range r.list {
			r.place[row] = n
		}
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	r.before, m.made[of] = m.made[of], r.now
	return r
}

// rememberedRows is the memory of the site's language.
func (s *site) rememberedRows() *rowsAgain {
	if s.memory == nil || s.memory.blank || s.spool != nil || !s.large() {
		return nil
	}
	return s.memory.rowsAgain(s.words.Language, s.english, s.set, s.ground())
}

func (r *rowsAgain) editionOf(row *tables.Row) int { return r.again.now.rows[r.place[row]].edition }

// sizesOf tells the number of the physical size that a joint of the set is of.
func (r *rowsAgain) sizesOf(set *tables.Set) func(*tables.Row) int {
	if r == nil {
		return set.SizeNumbers()
	}
	place, of := r.place, r.again.now.sizes
	return func(row *tables.Row) int { return of[place[row]] }
}

// inEnglish is the same for the rows of the English chart.
func (r *rowsAgain) inEnglish() *rowsAgain {
	if r == nil {
		return nil
	}
	english := *r
	english.place = r.again.place
	return &english
}

// madeThen is what a build made of each row.
type madeThen[T any] struct {
	chart  *chartThen
	ground sum
	of     []madeOf[T] // by the place of the row
}

type madeOf[T any] struct {
	also beside
	is   T
}

// beside is what something made of a row also depends on.
type beside struct {
	line int // of its file
	text string
}

// eachRow makes something of each row. What was made of it in the build before is taken when
// neither the row has changed, nor the ground, nor what it also depends on (nil for nothing).
func eachRow[T any](r *rowsAgain, what string, rows []*tables.Row, also func(n int) beside, each func(*tables.Row) T) []T {
	list := make([]T, len(rows))
	if r == nil {
		onAllCores(len(rows), func(n int) { list[n] = each(rows[n]) })
		return list
	}
	then, _ := r.before[what].(*madeThen[T])
	if then != nil && (then.chart != r.then || then.ground != r.ground) {
		then = nil
	}
	now := &madeThen[T]{r.again.now, r.ground, make([]madeOf[T], len(r.place))}
	r.now[what] = now
	var anew []int
	for n, row := range rows {
		at, depends := r.place[row], beside{}
		if also != nil {
			depends = also(n)
		}
		now.of[at].also = depends
		if was := r.was[at]; then != nil && was >= 0 && then.of[was].also == depends {
			now.of[at].is = then.of[was].is
			list[n] = now.of[at].is
		} else {
			anew = append(anew, n)
		}
	}
	onAllCores(len(anew), func(i int) {
		n := anew[i]
		list[n] = each(rows[n])
		now.of[r.place[rows[n]]].is = list[n]
	})
	return list
}

// sortedThen are the records of rows as a build sorted them.
type sortedThen struct {
	chart *chartThen
	list  []sorted
	of    [][]record // by the place of the row
}

// sorted is a record with the place of its row, and which of the row's it is.
type sorted struct {
	record
	at, nth int
}

func (a sorted) compare(b sorted) int {
	return cmp.Or(strings.Compare(a.key, b.key), a.at-b.at, a.nth-b.nth)
}

// sortRecords sorts the records of rows by their keys, those with the same key in the order of the
// rows. Where most of them were sorted before, only the others are sorted in.
func sortRecords(r *rowsAgain, what string, rows []*tables.Row, of [][]record) []record {
	var fresh []sorted
	add := func(at, n int) {
		for nth, one := range of[n] {
			fresh = append(fresh, sorted{one, at, nth})
		}
	}
	if r == nil {
		for n := range rows {
			add(n, n)
		}
		slices.SortFunc(fresh, sorted.compare)
		return recordsOf(fresh)
	}
	then, _ := r.before[what].(*sortedThen)
	if then == nil || then.chart != r.then || r.reordered {
		then = &sortedThen{}
	}
	now := &sortedThen{r.again.now, nil, make([][]record, len(r.place))}
	r.now[what] = now
	for n, row := range rows {
		at := r.place[row]
		now.of[at] = of[n]
		was := r.was[at]
		if was < 0 || then.of == nil || !slices.EqualFunc(then.of[was], of[n], func(a, b record) bool { return a.key == b.key }) {
			add(at, n)
			now.of[at] = nil // till it is sorted in
		}
	}
	slices.SortFunc(fresh, sorted.compare)
	now.list = make([]sorted, 0, len(then.list)+len(fresh))
	rest := fresh
	for _, one := range then.list {
		at := r.is[one.at]
		if at < 0 || now.of[at] == nil {
			continue
		}
		one.at, one.record = at, now.of[at][one.nth]
		for len(rest) > 0 && rest[0].compare(one) < 0 {
			now.list, rest = append(now.list, rest[0]), rest[1:]
		}
		now.list = append(now.list, one)
	}
	now.list = append(now.list, rest...)
	for n, row := range rows {
		now.of[r.place[row]] = of[n]
	}
	return recordsOf(now.list)
}

func recordsOf(list []sorted) []record {
	records := make([]record, len(list))
	for n := range list {
		records[n] = list[n].record
	}
	return records
}
