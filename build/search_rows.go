package build

import (
	"maps"
	"slices"
	"sync"

	"capspan/build/search"
	"capspan/tables"
)

// What the search of a large chart is told. Pages, words, sources and the rows of small
// tables are in one index as ever; the joints lie in drawers, under all their names. A
// beginning that too many names have has a file of its own: the first of them, and how many
// there are. All of it is named by one directory, at an address that stays.

const (
	searchDirectory = "search/index.json" // below the language's folder
	searchFolder    = "assets/rows/"
	// searchRowsScript is what opens the drawers; the site of a small chart is without it.
	searchRowsScript = "search-rows.js"
	// firstRows are as many as the search shows: static/parts/search/panel.ts.
	firstRows = 20
)

// searchIndex is that directory; static/parts/search/rows.ts reads it.
type searchIndex struct {
	Format  int               `json:"format"`
	Base    string            `json:"base"`
	Chart   string            `json:"chart"`
	Entries string            `json:"entries"` // address of the index of all but the joints
	Rows    drawers           `json:"rows"`
	First   map[string]string `json:"first"` // files by the beginnings that too many names have
	Words   string            `json:"words"` // the file of the words in names
}

// namedRow is a joint as search and list find it.
type namedRow struct {
	*search.Named
	found  []record // in the drawers of the search
	listed []record // in the list from A to Z
	words  []string // in its names
}

// namedRows are those of the chart, in its order.
func (s *site) namedRows() []namedRow {
	return eachRow(s.again, "named", s.jointList(), nil, func(row *tables.Row) namedRow {
		also := append(row.Also[:len(row.Also):len(row.Also)], s.ownNames(row)...)
		named := namedRow{Named: search.NewNamed(row.ID, capital(s.figuresOf(row)), s.placeOf(row), also)}
		text := mustJSON(named.Named)
		for _, key := range named.Keys() {
			named.found = append(named.found, record{key + keyEnd, text})
		}
		named.listed = s.nameRecords(row, named.Named)
		named.words = search.RowWords([]*search.Named{named.Named})
		return named
	})
}

// addSearchRows writes the drawers and the directory.
func (s *site) addSearchRows(entries string) {
	files := s.drawersIn(searchFolder, "search")
	index := searchIndex{Format: 2, Base: s.base, Chart: s.atRoot(s.chart), Entries: s.atRoot(entries),
		Rows: drawers{Folder: s.atRoot(searchFolder), Files: map[string]string{}}, First: map[string]string{}}
	found := make([][]record, len(s.byName))
	words := map[string]bool{}
	named := sync.OnceValue(s.namedBy)
	for n, row := range s.byName {
		found[n] = row.found
		for _, word := range row.words {
			words[word] = true
		}
	}
	takeApart(sortRecords(s.again, "search sorted", s.jointList(), found), "", drawerSize,
		func(beginning string, records []record) {
			index.Rows.Files[beginning] = files.addOf("drawer "+beginning, records, func() []byte { return listOf(records) })
		},
		func(beginning string, records []record) {
			if beginning == "" {
				return
			}
			index.First[beginning] = files.addOf("first of "+beginning, records, func() []byte {
				begun := make([]*search.Named, len(records))
				for n, r := range records {
					begun[n] = named()[string(r.json)]
				}
				return mustJSON(search.FirstOf(beginning, begun, firstRows))
			})
		})
	list := slices.AppendSeq([]string{}, maps.Keys(words))
	slices.Sort(list)
	index.Words = files.add(mustJSON(list))
	s.add(searchDirectory, mustJSON(index), Pages)
	s.index = s.folder + searchDirectory
}

// namedBy are the joints by what is written of them.
func (s *site) namedBy() map[string]*search.Named {
	of := map[string]*search.Named{}
	for _, row := range s.byName {
		if len(row.found) > 0 {
			of[string(row.found[0].json)] = row.Named
		}
	}
	return of
}
