package build

import (
	"encoding/json"
	"fmt"
	"io"
	"maps"
	"strings"
	"testing"

	"github.com/piprate/json-gold/ld"
)

// schemaContext stands for the context at https://schema.org, of which it has what our
// pages use: names without a prefix are schema.org's, and these are addresses. A test
// asks no host; that the terms are there is tested with the published vocabulary.
const schemaContext = `{"@context": {"@vocab": "https://schema.org/", "url": {"@type": "@id"}, "contentUrl": {"@type": "@id"},
	"dateModified": {"@type": "https://schema.org/Date"}}}`

type schemaLoader struct{}

func (schemaLoader) LoadDocument(address string) (*ld.RemoteDocument, error) {
	if address != "https://schema.org" {
		return nil, fmt.Errorf("asks for %s", address)
	}
	doc, err := ld.DocumentFromReader(strings.NewReader(schemaContext))
	return &ld.RemoteDocument{DocumentURL: address, Document: doc}, err
}

// A general processor of JSON-LD 1.1 understands every page: nothing said is dropped on
// the way to statements, and addresses lead, from the page that says them, to files of
// the site. Where the site knows its own address, those of a dataset are of its version.
func TestLinkedDataIsProcessed(t *testing.T) {
	for _, test := range []struct {
		name string
		out  Output
		root string
	}{
		{"rooted", mustSite(t, Options{Base: "/sub/"}), "https://elsewhere.example/sub/"},
		{"with an address of its own", published(t, Options{}), web + "/"},
	} {
		t.Run(test.name, func(t *testing.T) {
			files, datasets := contents(test.out), 0
			for _, name := range htmlPages(files) {
				data := linkedData(t, name, files[name])
				if data == nil {
					continue
				}
				options := ld.NewJsonLdOptions(test.root + strings.TrimSuffix(name, "index.html"))
				options.DocumentLoader = schemaLoader{}
				rdf, err := ld.NewJsonLdProcessor().ToRDF(data, options)
				if err != nil {
					t.Errorf("%s: %v", name, err)
					continue
				}
				said := 0
				for _, quad := range rdf.(*ld.RDFDataset).Graphs["@default"] {
					said++
					property := strings.TrimPrefix(quad.Predicate.GetValue(), "https://schema.org/")
					if property != "url" && property != "contentUrl" && property != "identifier" {
						continue
					}
					file, inside := strings.CutPrefix(quad.Object.GetValue(), test.root)
					if file == "" || strings.HasSuffix(file, "/") {
						file += "index.html"
					}
					if !inside || files[file] == nil {
						t.Errorf("%s: %s is %q, which is no file of the site", name, property, quad.Object.GetValue())
					}
					if ofVersion.MatchString(file) != (property != "url" && test.root == web+"/") {
						t.Errorf("%s: %s is %q", name, property, quad.Object.GetValue())
					}
				}
				if want := statements(data); said != want {
					t.Errorf("%s says %d things, and %d are understood", name, want, said)
				}
				if data["@type"] == "Dataset" {
					datasets++
				}
			}
			if datasets < 8 {
				t.Errorf("%d datasets", datasets)
			}
		})
	}
}

// statements is how many statements a document makes: one for each type, and for each
// value of each property.
func statements(value any) int {
	switch v := value.(type) {
	case map[string]any:
		n := 0
		for name, of := range maps.All(v) {
			switch list, many := of.([]any); {
			case name == "@context":
			case name == "@type":
				n++
			case many:
				n += len(list) + statements(list)
			default:
				n += 1 + statements(of)
			}
		}
		return n
	case []any:
		n := 0
		for _, of := range v {
			n += statements(of)
		}
		return n
	}
	return 0
}

// The processor drops what no vocabulary has, and the count above notices.
func TestProcessorDropsTheUnknown(t *testing.T) {
	var data map[string]any
	if err := json.NewDecoder(io.LimitReader(strings.NewReader(`{"@context": {"name": "https://schema.org/name"}, "name": "a", "nmae": "b"}`), 1000)).Decode(&data); err != nil {
		t.Fatal(err)
	}
	rdf, err := ld.NewJsonLdProcessor().ToRDF(data, ld.NewJsonLdOptions(""))
	if err != nil {
		t.Fatal(err)
	}
	if got, want := len(rdf.(*ld.RDFDataset).Graphs["@default"]), statements(data); got != 1 || want != 2 {
		t.Errorf("%d statements are understood of %d", got, want)
	}
}
