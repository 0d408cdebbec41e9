package build

import (
	"capspan/build/search"
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

// namedRows are the joints as search and list find them, one for each row.
func (s *site) namedRows() []*search.Named {
	var rows []*search.Named
	for row := range s.joints() {
		also := append(row.Also[:len(row.Also):len(row.Also)], s.ownNames(row)...)
		rows = append(rows, search.NewNamed(row.ID, capital(s.figuresOf(row)), s.placeOf(row), also))
	}
	return rows
}

// addSearchRows writes the drawers and the directory.
func (s *site) addSearchRows(entries string) {
	files := s.drawersIn(searchFolder)
	index := searchIndex{Format: 2, Base: s.base, Chart: s.atRoot(s.chart), Entries: s.atRoot(entries),
		Rows: drawers{Folder: s.atRoot(searchFolder), Files: map[string]string{}}, First: map[string]string{}}
	var records []record
	of := map[string]*search.Named{} // by what is written of it
	for _, row := range s.byName {
		text := mustJSON(row)
		of[string(text)] = row
		for _, key := range row.Keys() {
			records = append(records, record{key, text})
		}
	}
	sortIn(records, drawerSize,
		func(beginning string, records []record) { index.Rows.Files[beginning] = files.add(listOf(records)) },
		func(beginning string, records []record) {
			if beginning == "" {
				return
			}
			begun := make([]*search.Named, len(records))
			for n, r := range records {
				begun[n] = of[string(r.json)]
			}
			index.First[beginning] = files.add(mustJSON(search.FirstOf(beginning, begun, firstRows)))
		})
	index.Words = files.add(mustJSON(search.RowWords(s.byName)))
	s.add(searchDirectory, mustJSON(index), Pages)
	s.index = s.folder + searchDirectory
}
