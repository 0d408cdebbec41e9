package tables

import (
	"bytes"
	"crypto/sha256"
	"fmt"
	"strings"
)

// packageName is the descriptor's file without its ending; no table may have it.
const packageName = "datapackage"

// The descriptor is a Tabular Data Package (Frictionless, specification 1.0): programs that
// know it read each CSV with its columns' types and check it by its sum.

type packageJSON struct {
	Profile     string          `json:"profile"`
	Name        string          `json:"name"`
	Title       string          `json:"title"`
	Description string          `json:"description"`
	Version     string          `json:"version"`
	Created     string          `json:"created"`
	Resources   []resourceJSON  `json:"resources"`
	Sources     []packageSource `json:"sources,omitempty"`
}

type packageSource struct {
	Title string `json:"title"`
}

type resourceJSON struct {
	Profile     string     `json:"profile"`
	Name        string     `json:"name"`
	Title       string     `json:"title"`
	Description string     `json:"description"`
	Path        string     `json:"path"`
	Format      string     `json:"format"`
	Mediatype   string     `json:"mediatype"`
	Encoding    string     `json:"encoding"`
	Bytes       int64      `json:"bytes"`
	Hash        string     `json:"hash"`
	Schema      schemaJSON `json:"schema"`
}

type schemaJSON struct {
	Fields        []fieldJSON `json:"fields"`
	PrimaryKey    string      `json:"primaryKey"`
	MissingValues []string    `json:"missingValues"`
}

type fieldJSON struct {
	Name        string          `json:"name"`
	Type        string          `json:"type"`
	Title       string          `json:"title,omitempty"`
	Constraints map[string]bool `json:"constraints,omitempty"`
}

// Package is what the descriptor says of the chart as a whole.
type Package struct {
	Title, About string
}

// Package writes datapackage.json for the CSV files that lie beside it; csv gives the length
// and the SHA-256 of each table's file.
func (e *Exports) Package(s *Set, about Package, csv func(*Table) (size int64, sum [sha256.Size]byte)) ([]byte, error) {
	version := s.Version()
	doc := packageJSON{Profile: "tabular-data-package", Name: "chart", Title: about.Title, Description: about.About,
		Version: version.Name(), Created: version.Date + "T00:00:00Z", Resources: []resourceJSON{}}
	for _, t := range s.Tables {
		size, sum := csv(t)
		r := resourceJSON{Profile: "tabular-data-resource", Name: strings.ToLower(t.ID), Title: t.Title, Description: t.About,
			Path: t.ID + ".csv", Format: "csv", Mediatype: "text/csv", Encoding: "utf-8",
			Bytes: size, Hash: fmt.Sprintf("sha256:%x", sum),
			Schema: schemaJSON{PrimaryKey: "id", MissingValues: []string{""}}}
		for _, c := range t.Cautions {
			r.Description += " " + c
		}
		for _, f := range e.csvFields(t) {
			field := fieldJSON{Name: f.Name, Type: "string", Title: f.Label}
			if f.Number {
				field.Type = "number"
			}
			if f.Name == "id" {
				field.Constraints = map[string]bool{"required": true, "unique": true}
			}
			r.Schema.Fields = append(r.Schema.Fields, field)
		}
		doc.Resources = append(doc.Resources, r)
	}
	for _, source := range s.Sources {
		doc.Sources = append(doc.Sources, packageSource{source.Title})
	}
	var b bytes.Buffer
	err := encode(&b, doc)
	return b.Bytes(), err
}

// csvFields are those of the CSV that was written last, when it was of these rows.
func (e *Exports) csvFields(t *Table) []csvField {
	if before := e.of(t); before.csv.same(t.Rows) != nil {
		return before.fields
	}
	return newCSVLines(t).fields
}
