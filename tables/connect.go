package tables

import (
	"iter"
	"strings"

	"capspan/build/diag"
)

// connect resolves what rows say of one another when all of them are read: ids,
// retired ids, ends and twins, in that order, because each needs the one before.
func (l *loader) connect() {
	l.index()
	l.checkRetired()
	for row := range l.set.rows() {
		l.resolveEnds(row)
	}
	l.resolveTwins()
}

// rows goes through the chart in its order.
func (s *Set) rows() iter.Seq[*Row] {
	return func(yield func(*Row) bool) {
		for _, t := range s.Tables {
			for _, row := range t.Rows {
				if !yield(row) {
					return
				}
			}
		}
	}
}

// index makes the rows findable; letter case does not tell ids apart, because it
// does not tell addresses apart everywhere.
func (l *loader) index() {
	l.set.all = make([]*Row, 0, len(l.links))
	l.set.byID = make(map[string]int, len(l.links))
	for row := range l.set.rows() {
		row.at = len(l.set.all)
		l.set.all = append(l.set.all, row)
		key := strings.ToLower(row.ID)
		at, taken := l.set.byID[key]
		if !taken {
			l.set.byID[key] = row.at
			continue
		}
		first := l.set.all[at]
		l.list.Add(diag.Problem{Pos: row.Pos, Path: row.Ref(), Rule: "duplicate-id",
			Fact:  numbered("the id %q is already taken by %q", row.ID, first.Ref()),
			Notes: []diag.Note{{Text: "first defined at", Pos: first.Pos}}})
	}
}

func (l *loader) checkRetired() {
	for _, r := range l.set.Retired {
		if row := l.set.Find(r.ID); row != nil {
			l.list.Add(diag.Problem{Pos: r.Pos, Path: "retired/" + r.ID, Rule: "retired-in-use",
				Fact: numbered("the retired id %q is a row of the chart", r.ID), Hints: []string{"an id is for ever: give the row another one"},
				Notes: []diag.Note{{Text: "in use at", Pos: row.Pos}}})
		}
		for _, to := range r.To {
			if l.set.Find(to) == nil {
				l.list.Add(diag.Problem{Pos: r.Pos, Path: "retired/" + r.ID, Rule: "retired-nowhere",
					Fact: numbered("%q leads to %q, which is not in the chart", r.ID, to), Hints: l.nearRows(to)})
			}
		}
	}
}

// target finds the row an end or a twin names, by its exact id.
func (l *loader) target(id string) *Row {
	if row := l.set.byName(id); row != nil && row.ID == id {
		return row
	}
	return nil
}

// nearRows is the hint for a row that is not there: a retired id's heir, or a near name.
func (l *loader) nearRows(id string) []string {
	if old := l.set.retired(id); old != nil {
		if len(old.To) == 0 {
			return []string{numbered("%q was withdrawn: %s", old.ID, old.Why)}
		}
		return []string{numbered("%q went to %q", old.ID, strings.Join(old.To, `", "`))}
	}
	var ids []string
	for row := range l.set.rows() {
		ids = append(ids, row.ID)
	}
	return diag.Nearest(id, ids)
}

// resolveEnds gives a conversion joint the figures of the rows it names.
func (l *loader) resolveEnds(row *Row) {
	likes, reader := l.links[row.at].likes, l.readers[row.Table]
	for _, n := range likes {
		path := row.Ref() + ".ends"
		id, ok := reader.text(n, path)
		if !ok {
			continue
		}
		target := l.target(id)
		switch {
		case target == nil && l.set.retired(id) != nil:
			reader.fail(n, path, "like-retired", numbered("the row %q is retired", id), l.nearRows(id)...)
		case target == nil:
			reader.fail(n, path, "like-nowhere", numbered("the row %q is not in the chart", id), l.nearRows(id)...)
		case l.leadsBack(target, row, map[*Row]bool{}):
			reader.fail(n, path, "like-circle", numbered("an end of %q is like %q, which leads back to it", row.ID, id), "name the row that has the figures")
		case len(l.links[target.at].likes) > 0:
			reader.fail(n, path, "like-conversion", numbered("the row %q is a conversion joint itself", id), "name the row that has the end's figures")
		case len(target.Ends) != 1:
			reader.fail(n, path, "like-nowhere", numbered("the row %q has no hold, cap and across", id))
		default:
			end := target.Ends[0]
			end.Like = target
			row.Ends = append(row.Ends, end)
		}
	}
	if len(likes) > 0 && len(row.Ends) != 2 {
		row.Ends = nil // half a joint must not be compared with anything
	}
}

// leadsBack follows the ends that rows name from one row and looks for another.
func (l *loader) leadsBack(from, to *Row, seen map[*Row]bool) bool {
	if from == to {
		return true
	}
	if seen[from] {
		return false
	}
	seen[from] = true
	for _, n := range l.links[from.at].likes {
		if next := l.target(n.Value); next != nil && l.leadsBack(next, to, seen) {
			return true
		}
	}
	return false
}

// resolveTwins joins the rows that name each other, and finds those that should.
func (l *loader) resolveTwins() {
	l.named = make([][]namedTwin, len(l.links))
	for row := range l.set.rows() {
		l.resolveNamed(row)
	}
	l.nameBack(l.set.rows())
	bySpan := spansOf(l.set.all)
	l.tellUnnamed(bySpan.unnamed(l.set.all, nil))
	if l.again != nil {
		l.set.bySpan = bySpan
	}
}

// tellUnnamed warns of rows that should name each other.
func (l *loader) tellUnnamed(pairs [][2]*Row) {
	for _, pair := range pairs {
		first, second := pair[0], pair[1]
		l.list.Add(diag.Problem{Pos: second.Pos, Path: second.Ref(), Rule: "unnamed-twins",
			Fact:  numbered("a caliper cannot tell %q from %q, and they do not name each other as twins", second.Ref(), first.Ref()),
			Hints: []string{numbered("add twins: [%s] here and twins: [%s] there", first.ID, second.ID)},
			Notes: []diag.Note{{Text: numbered("%q is at", first.ID), Pos: first.Pos}}})
	}
}
