package build

import (
	"slices"
	"strings"

	"capspan/static/matcher"
)

// touched is what is not the same in two charts, to the core.
type touched struct {
	ends []matcher.ChartEnd // of rows that changed, also of those whose size gained or lost a twin
	// everywhere is true when holds and faces came or went: the core then refuses, or stops
	// refusing, readings of any size.
	everywhere bool
	asBefore   map[string]bool // rows of the newer chart, by name, that are the same to the core and touched by nothing
}

func (c *Comparison) touched(was, is matcher.Chart) touched {
	out := touched{everywhere: holdsAndFaces(was) != holdsAndFaces(is), asBefore: make(map[string]bool, len(is.Rows))}
	now := make(map[string]int, len(is.Rows))
	for i := range is.Rows {
		now[is.Rows[i].Name] = i
	}
	older, newer := sizesOf(was), sizesOf(is)
	// The sizes that have the very same rows, in the names of today.
	same := make([]bool, len(older))
	for size, rows := range older {
		for n, i := range rows {
			j, there := now[c.NowCalled(was.Rows[i].Name)]
			if !there || n > 0 && is.Rows[j].Size != is.Rows[now[c.NowCalled(was.Rows[rows[0]].Name)]].Size {
				same[size] = false
				break
			}
			same[size] = len(newer[is.Rows[j].Size]) == len(rows)
		}
	}
	for i := range was.Rows {
		row := &was.Rows[i]
		j, there := now[c.NowCalled(row.Name)]
		if there && same[row.Size] && sameToCore(row, &is.Rows[j]) {
			out.asBefore[is.Rows[j].Name] = true
			continue
		}
		out.ends = append(out.ends, row.Ends...)
	}
	for i := range is.Rows {
		if row := &is.Rows[i]; !out.asBefore[row.Name] {
			out.ends = append(out.ends, row.Ends...)
		}
	}
	return out
}

// sizesOf lists the rows of each size of a chart.
func sizesOf(chart matcher.Chart) [][]int {
	most := 0
	for i := range chart.Rows {
		most = max(most, chart.Rows[i].Size+1)
	}
	sizes := make([][]int, most)
	for i := range chart.Rows {
		sizes[chart.Rows[i].Size] = append(sizes[chart.Rows[i].Size], i)
	}
	return sizes
}

// sameToCore reports two rows of the same name that the core takes for the same.
func sameToCore(a, b *matcher.ChartRow) bool {
	return a.Basis == b.Basis && slices.EqualFunc(a.Ends, b.Ends, func(e, f matcher.ChartEnd) bool {
		caps, acrosses := sameInCore(e.Cap, f.Cap), sameInCore(e.Across, f.Across)
		e.Cap, e.Across, f.Cap, f.Across = nil, nil, nil, nil
		return caps && acrosses && e == f
	})
}

func sameInCore(v, w *matcher.ChartValue) bool {
	if v == nil || w == nil {
		return v == w
	}
	return v.MM == w.MM && v.Half == w.Half && v.Text == w.Text && v.Unit == w.Unit && v.Basis == w.Basis && slices.Equal(v.Others, w.Others)
}

// holdsAndFaces are the pairs of them that a chart has.
func holdsAndFaces(chart matcher.Chart) string {
	all := map[string]bool{}
	for _, row := range chart.Rows {
		for _, end := range row.Ends {
			all[end.Hold+" "+end.Faces] = true
		}
	}
	list := make([]string, 0, len(all))
	for kind := range all {
		list = append(list, kind)
	}
	slices.Sort(list)
	return strings.Join(list, ",")
}
