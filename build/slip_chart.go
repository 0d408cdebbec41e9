package build

import (
	"iter"
	"slices"
	"strings"

	"capspan/tables"
	"capspan/templates"
)

// The chart as an enquiry slip shows it: what stands on the rows' pages, figure by
// figure with its evidence, in one file that the page of the slip fetches. It is not in
// the core's chart, which a first visit loads and which has no words.
// static/order/chart.ts reads it.

type slipChart struct {
	Format  int       `json:"format"`
	Version string    `json:"version"`
	Rows    []slipRow `json:"rows"`
}

type slipRow struct {
	ID        string     `json:"id"`
	Ref       string     `json:"ref"`
	Also      []string   `json:"also"`
	Basis     string     `json:"basis"`
	Confirm   bool       `json:"confirm"`
	Ends      []slipEnd  `json:"ends"`
	Values    []slipCell `json:"values"`
	Fasteners []slipCell `json:"fasteners"`
	Twins     []string   `json:"twins,omitempty"` // of a conversion joint of a large chart: places of the others of its size
}

type slipEnd struct {
	Title  string   `json:"title"`
	Like   string   `json:"like,omitempty"`
	Hold   slipCell `json:"hold"`
	Cap    slipCell `json:"cap"`
	Across slipCell `json:"across"`
}

type slipCell struct {
	Label     string     `json:"label,omitempty"`
	Text      string     `json:"text"`
	Converted string     `json:"converted,omitempty"`
	Note      string     `json:"note,omitempty"`
	Basis     string     `json:"basis,omitempty"`
	From      []string   `json:"from,omitempty"`
	Others    []slipCell `json:"others,omitempty"`
}

// slipIndex is the directory of a large chart's rows: they lie in drawers by the size they
// are of, since a slip names a size with all its kits and those nearest to it, and their
// names in others, which lead to the size. static/parts/order/slips.ts reads it.
type slipIndex struct {
	Format  int     `json:"format"`
	Version string  `json:"version"`
	Sizes   drawers `json:"sizes"` // of slipRow, by the size's key
	Names   drawers `json:"names"` // of lists, by plain names: id, key of the size, other names
}

const (
	slipDirectory = "order/slips.json" // below the language's folder
	slipFolder    = "assets/slips/"
	// sizesDrawer is how much a drawer of sizes holds. Their keys are long and their rows much
	// alike, so that fewer and fuller ones cost less, with the directory, than many.
	sizesDrawer = 160_000
)

// addSlips writes the file that slip and record fetch, or the drawers of a large chart.
func (s *site) addSlips() {
	if !s.large() {
		s.slips = s.addAsset("assets/slips", ".json", s.slipJSON())
		return
	}
	joints, threads, twins := s.jointList(), s.threads(), s.conversionTwins()
	others := func(n int) beside { // what a slip has of other rows
		row := joints[n]
		if threads[row.ID] == nil && twins[row] == nil {
			return beside{}
		}
		return beside{text: string(mustJSON([]any{threads[row.ID], twins[row]}))}
	}
	made := eachRow(s.again, "slips", joints, others, func(row *tables.Row) slipRecords {
		key := s.keyOf(row)
		shown := s.slipRow(row, threads)
		shown.Twins = twins[row]
		records := slipRecords{rows: []record{recordOf(key, shown)}}
		for _, name := range append([]string{row.ID}, row.Also...) {
			records.names = append(records.names, recordOf(plainName(name), append([]string{row.ID, key}, row.Also...)))
		}
		return records
	})
	rows, names := make([][]record, len(made)), make([][]record, len(made))
	for n, records := range made {
		rows[n], names[n] = records.rows, records.names
	}
	sizes, byName := sortRecords(s.again, "slips sorted", joints, rows), sortRecords(s.again, "slips by name", joints, names)
	files := s.drawersIn(slipFolder, "slips")
	s.add(slipDirectory, mustJSON(slipIndex{2, s.version.Name(), files.addAll("sizes", sizes, sizesDrawer), files.addAll("names", byName, drawerSize)}), Pages)
	s.slips = s.folder + slipDirectory
}

// slipRecords are those of a row.
type slipRecords struct{ rows, names []record }

// conversionTwins are the places of the rows that are one size with a conversion joint, which
// the pieces of the chart do not tell: there it is in the pieces of both its ends.
func (s *site) conversionTwins() map[*tables.Row][]string {
	sizeOf := s.again.sizesOf(s.set)
	var conversions []*tables.Row
	of := map[int][]*tables.Row{} // the sizes that have one
	for row := range s.joints() {
		if len(row.Ends) > 1 {
			conversions = append(conversions, row)
			of[sizeOf(row)] = nil
		}
	}
	for row := range s.joints() {
		if list, has := of[sizeOf(row)]; has {
			of[sizeOf(row)] = append(list, row)
		}
	}
	twins := map[*tables.Row][]string{}
	for _, row := range conversions {
		for _, other := range of[sizeOf(row)] {
			if other != row {
				twins[row] = append(twins[row], sizeAddress(s.keyOf(other))[1:]+"#"+other.ID)
			}
		}
	}
	return twins
}

// joints are the rows that are identified by their ends.
func (s *site) joints() iter.Seq[*tables.Row] {
	return func(yield func(*tables.Row) bool) {
		for _, table := range s.set.Tables {
			for _, row := range table.Rows {
				if table.Joint() && !yield(row) {
					return
				}
			}
		}
	}
}

func (s *site) jointList() []*tables.Row { return slices.Collect(s.joints()) }

// plainName is a name as whoever types it may write it: static/order/add.ts makes the same.
func plainName(name string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(strings.ToLower(name), "×", "x")), "")
}

// slipJSON is the file of a small chart.
func (s *site) slipJSON() []byte {
	chart := slipChart{Format: 1, Version: s.version.Name(), Rows: []slipRow{}}
	threads := s.threads()
	for row := range s.joints() {
		chart.Rows = append(chart.Rows, s.slipRow(row, threads))
	}
	return mustJSON(chart)
}

func (s *site) slipRow(row *tables.Row, threads map[string][]slipCell) slipRow {
	out := slipRow{ID: row.ID, Ref: row.Ref(), Also: slices.Clone(row.Also), Basis: s.basisWord(row.Basis), Confirm: row.Basis == tables.Memory,
		Values: []slipCell{}, Fasteners: threads[row.ID]}
	if out.Also == nil {
		out.Also = []string{}
	}
	if out.Fasteners == nil {
		out.Fasteners = []slipCell{}
	}
	for n, end := range row.Ends {
		view := s.jointEnd(row, n, end)
		out.Ends = append(out.Ends, slipEnd{Title: view.Title, Like: view.Like.Text,
			Hold: slipCellOf(view.Hold), Cap: slipCellOf(view.Cap), Across: slipCellOf(view.Across)})
	}
	for _, value := range s.valuesOf(row) {
		c := slipCellOf(value.Cell)
		c.Label = value.Label
		out.Values = append(out.Values, c)
	}
	out.Values = append(out.Values, s.slipOwn(row)...)
	return out
}

func slipCellOf(c templates.Cell) slipCell {
	out := slipCell{Text: c.Text, Converted: c.Converted, Note: c.Note, Basis: c.Basis}
	for _, source := range c.Sources {
		out.From = append(out.From, source.Text)
	}
	for _, other := range c.Others {
		out.Others = append(out.Others, slipCellOf(other))
	}
	return out
}

// threads are those that a table with the columns item, series and thread lists for the very
// name of a row; what it says of a neighbour says nothing of the row.
func (s *site) threads() map[string][]slipCell {
	of := map[string][]slipCell{}
	for _, table := range s.set.Tables {
		if _, threads := table.Column("thread"); !threads {
			continue
		}
		for _, fastener := range table.Rows {
			item, ok1 := fastener.Values["item"]
			series, ok2 := fastener.Values["series"]
			thread, ok3 := fastener.Values["thread"]
			if !ok1 || !ok2 || !ok3 || thread.State != tables.Given {
				continue
			}
			names := strings.Split(series.Text, ", ")
			slices.Sort(names)
			for _, name := range slices.Compact(names) {
				c := slipCellOf(s.cell(thread))
				c.Label = capital(item.Text)
				of[name] = append(of[name], c)
			}
		}
	}
	return of
}
