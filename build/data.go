package build

import (
	"bytes"
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
	csvs := map[*tables.Table][]byte{}
	write := func(name string, pos diag.Pos, into func(*bytes.Buffer) error) []byte {
		var b bytes.Buffer
		if err := into(&b); err != nil {
			problems.Add(diag.Problem{Pos: pos, Rule: "bad-export", Fact: fmt.Sprintf("%s cannot be written: %v", name, err)})
		}
		files = append(files, File{Path: name, Bytes: b.Bytes(), Stage: Pages})
		return b.Bytes()
	}
	for _, t := range s.english.Tables {
		csvs[t] = write(t.ID+".csv", t.Pos, func(b *bytes.Buffer) error { return tables.WriteCSV(b, t) })
		write(t.ID+".json", t.Pos, func(b *bytes.Buffer) error { return tables.WriteJSON(b, t) })
	}
	write(wholeName, diag.Pos{File: "tables"}, func(b *bytes.Buffer) error { return tables.WriteChartJSON(b, s.english) })
	write(packageName, diag.Pos{File: "tables"}, func(b *bytes.Buffer) error {
		about := tables.Package{Title: s.word("site.chart-name"), About: s.word("chart.about")}
		return tables.WritePackage(b, s.english, about, func(t *tables.Table) []byte { return csvs[t] })
	})
	files = append(files, File{Path: sumsName, Bytes: sumsFile(files)})
	for _, f := range files {
		if f.Path != sumsName {
			s.addRoot(dataFolder+f.Path, f.Bytes, Pages)
		}
		s.addRoot(s.versionFolder()+f.Path, f.Bytes, Pages)
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
