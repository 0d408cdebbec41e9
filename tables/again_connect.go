package tables

import (
	"maps"
	"slices"
)

// Of a chart that was loaded before, nearly all rows are as they were, and so is what they
// make of each other. When nothing was wrong between the rows then, and there are the same
// rows now, only those that changed are joined anew, and those they meet: what is told is what
// connect tells, and the chart is the one it makes (again_test.go).

// connectAgain is connect for a chart of which few rows are others than before; false when it
// is not, and nothing is done.
func (l *loader) connectAgain(before *Set) bool {
	if before == nil || len(l.links) != len(before.all) {
		return false
	}
	all := make([]*Row, 0, len(l.links))
	changed := map[int]bool{}
	for row := range l.set.rows() {
		row.at = len(all)
		old := before.all[row.at]
		if row.reading != old.reading {
			if row.ID != old.ID || row.Table.ID != old.Table.ID {
				return false
			}
			changed[row.at] = true
		}
		all = append(all, row)
	}
	for _, row := range all {
		for _, like := range before.all[row.at].Ends {
			if like.Like != nil && changed[like.Like.at] {
				changed[row.at] = true
			}
		}
	}
	if len(changed) > mostUnnamed { // more could be of one size than are told
		return false
	}
	l.set.all, l.set.byID = all, before.byID
	l.checkRetired()
	for _, row := range all {
		l.resolveEndsAgain(row, before, changed[row.at])
	}
	l.resolveTwinsAgain(before, changed)
	return true
}

// resolveEndsAgain gives a conversion joint the ends of the rows it had, as they stand in this
// chart: they may have moved in their file.
func (l *loader) resolveEndsAgain(row *Row, before *Set, changed bool) {
	switch likes := l.links[row.at].likes; {
	case len(likes) == 0:
	case changed:
		l.resolveEnds(row)
	default:
		row.Ends = make([]End, 0, len(likes))
		for _, old := range before.all[row.at].Ends {
			target := l.set.all[old.Like.at]
			end := target.Ends[0]
			end.Like = target
			row.Ends = append(row.Ends, end)
		}
	}
}

// resolveTwinsAgain joins the rows that changed with those that name them or are named by
// them; between others nothing is new.
func (l *loader) resolveTwinsAgain(before *Set, changed map[int]bool) {
	l.named = make([][]namedTwin, len(l.links))
	met := maps.Clone(changed)
	for at := range changed {
		for _, twin := range before.all[at].Twins {
			met[twin.at] = true
		}
	}
	for at, old := range before.all {
		if len(old.Twins) == 0 || met[at] {
			continue
		}
		twins := make([]*Row, len(old.Twins))
		for i, twin := range old.Twins {
			twins[i] = l.set.all[twin.at]
		}
		l.set.all[at].Twins = twins
	}
	rows := make([]*Row, 0, len(met))
	for _, at := range slices.Sorted(maps.Keys(met)) {
		rows = append(rows, l.set.all[at])
	}
	for _, row := range rows {
		l.resolveNamed(row)
	}
	for _, row := range rows { // whom these name is asked whether it names back
		for _, n := range l.named[row.at] {
			if !met[n.row.at] && l.named[n.row.at] == nil {
				l.resolveNamed(n.row)
			}
		}
	}
	l.nameBack(slices.Values(rows))
	l.set.bySpan = before.bySpan.again(l.set.all, changed)
	l.tellUnnamed(l.set.bySpan.unnamed(l.set.all, changed))
}
