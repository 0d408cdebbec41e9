package build

import (
	"encoding/json"
	"fmt"
	"regexp"

	"capspan/build/diag"
	"capspan/tables"
)

// The open data: one CSV and one JSON a table, the whole chart with its sources as one
// JSON, and a descriptor by which programs read the CSV. It stands twice: under /data/,
// where the newest is always found, and under /data/<version>/, which never changes and
// has the sums of its files beside it.
const (
	dataFolder  = "data/"
	packageName = "datapackage.json"
	wholeName   = "whole_chart.json" // no table can take it: an id has no underscore
)

// dataAddress is where the newest edition of a file of the open data is found.
func dataAddress(name string) string { return "/" + dataFolder + name }

// ofVersion is a file whose address belongs to one version of the chart.
var ofVersion = regexp.MustCompile(`^` + dataFolder + `\d{4}-\d\d-\d\d-[0-9a-f]{7}/`)

// versionFolder is where the data of this version stays.
func (s *site) versionFolder() string { return dataFolder + s.version.Name() + "/" }

// exportData writes the open data.
func (s *site) exportData() diag.List {
	var problems diag.List
	var files []File
	exports := s.memory.openData()
	write := func(name string, pos diag.Pos, content []byte, err error) File {
		if err != nil {
			problems.Add(diag.Problem{Pos: pos, Rule: "bad-export", Fact: fmt.Sprintf("%s cannot be written: %v", name, err)})
		}
		f := s.memory.summed(name, s.spool, content)
		files = append(files, f)
		return f
	}
	csvs := map[*tables.Table]File{}
	for _, t := range s.english.Tables {
		csvs[t] = write(t.ID+".csv", t.Pos, exports.CSV(t), nil)
		content, err := exports.JSON(t)
		write(t.ID+".json", t.Pos, content, err)
	}
	folder := diag.Pos{File: "tables"}
	content, err := exports.Chart(s.english)
	write(wholeName, folder, content, err)
	about := tables.Package{Title: s.word("site.chart-name"), About: s.word("chart.about")}
	content, err = exports.Package(s.english, about, func(t *tables.Table) (int64, sum) { return csvs[t].Size(), csvs[t].sum() })
	write(packageName, folder, content, err)
	s.memory.holdData(files)
	sums := s.spool.keep(sumsName, sumsFile(files), Pages)
	for _, f := range append(files, sums) {
		name := f.Path
		if name != sumsName {
			f.Path = dataFolder + name
			s.files = append(s.files, f)
		}
		f.Path = s.versionFolder() + name // the same bytes, of which there is one copy
		s.files = append(s.files, f)
	}
	return problems
}

// chartJSON is the chart as the browser's core reads it.
func (s *site) chartJSON() []byte {
	b, err := json.Marshal(Chart(s.set))
	if err != nil {
		panic("internal error: " + err.Error()) // strings and numbers only
	}
	return b
}
