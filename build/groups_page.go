package build

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

// A table of joints of a large chart is shown in groups of sizes: one for each whole
// millimetre of the cap, as the name of the size says it, and one where the cap is unknown
// or is none. A conversion joint stands in the group of each of its ends. Which group a row
// is in hangs on nothing but the row, so the addresses stay; and because no table is longer
// than a file of the chart may be, a group is never too long for a page.

// groupsScript filters and sorts over the pages of the groups.
const groupsScript = "groups.js"

// noCap is the group of joints without a known cap.
const noCap = "u"

// groupsOf are the groups a row stands in: one, or two where the caps of its ends differ.
func groupsOf(row *tables.Row) []string {
	var list []string
	for _, end := range row.Ends {
		if name := groupOf(end); !slices.Contains(list, name) {
			list = append(list, name)
		}
	}
	return list
}

// groupOf is the group of an end.
func groupOf(end tables.End) string {
	whole, _, _ := strings.Cut(tenths(end.Cap), ".")
	return whole
}

func groupAddress(t *tables.Table, name string) string { return tableAddress(t) + name + "/" }

// sizeGroup is one group of a table.
type sizeGroup struct {
	name  string
	sizes [][]*tables.Row // the rows of the table, size by size
}

// groupsOfTables are the groups of the chart's tables of joints.
func (s *site) groupsOfTables() map[*tables.Table][]sizeGroup {
	groups := make([][]sizeGroup, len(s.set.Tables))
	onAllCores(len(groups), func(n int) {
		if s.set.Tables[n].Joint() {
			groups[n] = s.tableGroups(s.set.Tables[n])
		}
	})
	of := map[*tables.Table][]sizeGroup{}
	for n, t := range s.set.Tables {
		of[t] = groups[n]
	}
	return of
}

// tableGroups are the groups of a table in the order of their caps, the unknown last; in
// each, sizes stand by cap and then across, those of the end by which they are in the group.
func (s *site) tableGroups(t *tables.Table) []sizeGroup {
	type grouped struct {
		rows []*tables.Row
		end  *tables.End
	}
	var names []string
	in := map[string][]grouped{}
	seen := map[*size]bool{}
	for _, row := range t.Rows {
		z := s.sizes().of[row]
		if seen[z] {
			continue
		}
		seen[z] = true
		rows := z.in(t)
		var here []string
		for i := range rows[0].Ends {
			name := groupOf(rows[0].Ends[i])
			if slices.Contains(here, name) {
				continue
			}
			here = append(here, name)
			if in[name] == nil {
				names = append(names, name)
			}
			in[name] = append(in[name], grouped{rows, &rows[0].Ends[i]})
		}
	}
	groups := make([]sizeGroup, 0, len(names))
	for _, name := range names {
		slices.SortStableFunc(in[name], func(a, b grouped) int {
			return cmp.Or(bySize(a.end.Cap, b.end.Cap), bySize(a.end.Across, b.end.Across))
		})
		group := sizeGroup{name: name}
		for _, one := range in[name] {
			group.sizes = append(group.sizes, one.rows)
		}
		groups = append(groups, group)
	}
	slices.SortFunc(groups, func(a, b sizeGroup) int { return cmp.Compare(a.millimetres(), b.millimetres()) })
	return groups
}

// millimetres are those of the group's caps; the unknown come last.
func (g sizeGroup) millimetres() float64 {
	n, err := strconv.Atoi(g.name)
	if err != nil {
		return math.Inf(1)
	}
	return float64(n)
}

// groupTitle says which caps are in a group: "Caps of 27 mm".
func (s *site) groupTitle(name string) string {
	if name == noCap {
		return s.word("group.no-cap")
	}
	return s.word("group.caps", "n", name)
}

// groupCaps says from where to where the caps of a group reach, in both units.
func (s *site) groupCaps(name string) string {
	n, err := strconv.Atoi(name)
	if err != nil {
		return ""
	}
	inch := func(mm float64) string { return fmt.Sprintf("%.2f", mm/mmPerInch) }
	last := float64(n) + 0.9
	return s.figures(s.word("group.span", "least", fmt.Sprintf("%d.0", n), "greatest", fmt.Sprintf("%.1f", last), "from", inch(float64(n)), "to", inch(last)))
}

func (s *site) groupLink(t *tables.Table, name string) templates.Link {
	return templates.Link{Href: s.at(groupAddress(t, name)), Text: s.groupTitle(name)}
}

// groupDrafts are the pages of the groups of a table.
func (s *site) groupDrafts(t *tables.Table) []rowDraft {
	var list []rowDraft
	groups := s.groups()[t]
	for n, group := range groups {
		d := rowDraft{address: groupAddress(t, group.name), from: t.Pos, rows: slices.Concat(group.sizes...),
			fill: func(s *site) (templates.Page, diag.Pos) { return s.groupPage(t, groups, n) }}
		for _, next := range groups[max(n-1, 0):min(n+2, len(groups))] {
			d.beside = append(d.beside, next.name)
		}
		list = append(list, d)
	}
	return list
}

// groupsPage is the table as a list of its groups.
func (s *site) groupsPage(t *tables.Table, groups []sizeGroup) (templates.Page, diag.Pos) {
	body := &templates.Groups{Table: s.tableView(t), ID: t.ID, Kits: len(t.Rows)}
	units := []tables.Unit{tables.Millimetre, tables.Inch}
	if t.Unit == tables.Inch {
		slices.Reverse(units)
	}
	for _, unit := range units {
		body.Units = append(body.Units, templates.Choice{Value: string(unit), Label: string(unit)})
	}
	all := map[*size]bool{}
	holds := map[tables.Hold]bool{}
	for _, group := range groups {
		view := templates.Group{Link: s.groupLink(t, group.name), Name: group.name, Note: s.groupCaps(group.name), Sizes: len(group.sizes)}
		if group.name != noCap {
			view.Link.Text = s.word("group.millimetres", "n", group.name)
		}
		least, greatest := math.Inf(1), 0.0
		count := map[tables.Hold]int{}
		for _, rows := range group.sizes {
			view.Kits += len(rows)
			all[s.sizes().of[rows[0]]] = true
			here := map[tables.Hold]bool{}
			for _, end := range rows[0].Ends {
				here[tables.Hold(holdKind(end.Hold))] = true
			}
			for hold := range here {
				count[hold]++
				holds[hold] = true
			}
			for _, row := range rows {
				for _, end := range row.Ends {
					if end.Across.State == tables.Given {
						least, greatest = min(least, end.Across.Quantity.Float()), max(greatest, end.Across.Quantity.Float())
					}
				}
			}
		}
		if greatest > 0 {
			view.Least, view.Greatest = strconv.FormatFloat(least, 'f', -1, 64), strconv.FormatFloat(greatest, 'f', -1, 64)
		}
		var says []string
		for _, hold := range holdStrip {
			if n := count[hold]; n > 0 {
				view.Holds = append(view.Holds, string(hold))
				says = append(says, s.word("group.of-hold", "hold", s.holdName(hold), "n", n))
			}
		}
		view.Says = strings.Join(says, ", ")
		body.Groups = append(body.Groups, view)
	}
	body.Sizes = len(all)
	for _, hold := range holdStrip {
		if holds[hold] {
			body.Holds = append(body.Holds, templates.Choice{Value: string(hold), Label: s.holdName(hold)})
		}
	}
	return templates.Page{Address: tableAddress(t), Title: t.Title, About: t.About, Sheet: t.Title, Scripts: []string{groupsScript},
		Sheets: []string{largeSheet}, Head: templates.Head{Data: s.tableData(t)}, Body: body}, t.Pos
}

// holdName is what a list calls a hold.
func (s *site) holdName(h tables.Hold) string {
	if h == tables.UnknownHold {
		return s.word("hold.not-known")
	}
	return s.holdWord(h)
}

// groupPage lists the sizes of a group, a line each. The script of the table's page reads
// these lines, so whatever filters and sorts a small table stands in them.
func (s *site) groupPage(t *tables.Table, groups []sizeGroup, n int) (templates.Page, diag.Pos) {
	group := groups[n]
	name := s.groupTitle(group.name)
	table := s.tableView(t)
	table.Title = s.word("group.title", "table", t.Title, "caps", name)
	for _, rows := range group.sizes {
		table.Rows = append(table.Rows, s.groupRow(t, rows))
	}
	body := &templates.GroupPage{Table: table, Of: t.ID + "/" + group.name, Note: s.groupCaps(group.name),
		TableLink: templates.Link{Href: s.at(tableAddress(t)), Text: t.Title}, Caps: name}
	if n > 0 {
		body.Before = s.groupLink(t, groups[n-1].name)
	}
	if n+1 < len(groups) {
		body.After = s.groupLink(t, groups[n+1].name)
	}
	return templates.Page{Address: groupAddress(t, group.name), Title: table.Title, Sheet: table.Title,
		About:   s.word("group.about", "table", t.Title, "caps", name),
		Scripts: []string{"table.js"}, Sheets: []string{largeSheet}, Body: body}, t.Pos
}

// groupRow is the line of a size: of the kits that the table has of it, the first one's
// figures and the names of all.
func (s *site) groupRow(t *tables.Table, rows []*tables.Row) templates.TableRow {
	view := s.tableRow(t, rows[0])
	view.Row.Href = s.at(sizeAddress(s.sizes().of[rows[0]].key))
	view.Says = nil
	words := []string{view.Search}
	for _, row := range rows[1:] {
		words = append(words, strings.ToLower(row.ID))
		for _, also := range row.Also {
			words = append(words, strings.ToLower(also))
		}
		for _, own := range s.ownLines(row) {
			words = append(words, strings.ToLower(own))
		}
	}
	view.Search = strings.Join(words, " ")
	if more := len(rows) - 1; more > 0 {
		view.Row.Text = s.word("size.and-more", "names", rows[0].ID, "n", more)
		view.Also = names(rows[1:min(len(rows), 2*namedKits)])
		if more >= 2*namedKits {
			view.Also = append(view.Also, "…")
		}
	}
	view.Basis = s.basisWord(weakest(rows).Basis)
	for _, end := range rows[0].Ends {
		view.Holds = append(view.Holds, holdKind(end.Hold))
	}
	return view
}
