package tables

import (
	"crypto/sha256"
	"fmt"
	"io"
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
	Bytes       int        `json:"bytes"`
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

// WritePackage writes datapackage.json for the CSV files that lie beside it; csv gives
// the bytes of each table's file.
func WritePackage(w io.Writer, s *Set, about Package, csv func(*Table) []byte) error {
	version := s.Version()
	doc := packageJSON{Profile: "tabular-data-package", Name: "chart", Title: about.Title, Description: about.About,
		Version: version.Name(), Created: version.Date + "T00:00:00Z", Resources: []resourceJSON{}}
	for _, t := range s.Tables {
		content := csv(t)
		r := resourceJSON{Profile: "tabular-data-resource", Name: strings.ToLower(t.ID), Title: t.Title, Description: t.About,
			Path: t.ID + ".csv", Format: "csv", Mediatype: "text/csv", Encoding: "utf-8",
			Bytes: len(content), Hash: fmt.Sprintf("sha256:%x", sha256.Sum256(content)),
			Schema: schemaJSON{PrimaryKey: "id", MissingValues: []string{""}}}
		for _, c := range t.Cautions {
			r.Description += " " + c
		}
		for _, f := range csvFields(t) {
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
	return encode(w, doc)
}
