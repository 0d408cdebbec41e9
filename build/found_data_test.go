package build

import (
	"bytes"
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"testing"

	"capspan/tables"
	"golang.org/x/net/html"
)

// terms are the types used, with the properties that schema.org has for each and what a
// value of it may be. A property of a parent type (Thing, CreativeWork, MediaObject,
// ListItem) is one of its children's too. Package browser holds every page to the whole
// published vocabulary (TestSchemaOrg); here it is held to the part we mean to use.
var terms = map[string]map[string][]string{
	"HowTo": {
		"name": {"text"}, "description": {"text"}, "url": {"address"}, // Thing
		"inLanguage": {"text"},                          // CreativeWork
		"step":       {"HowToStep", "HowToTip", "list"}, // HowTo: CreativeWork, HowToSection, HowToStep or Text
	},
	"HowToStep": {
		"name": {"text"}, "text": {"text"}, // Thing, CreativeWork
		"position": {"integer"}, // ListItem
	},
	"HowToTip": {"text": {"text"}},
	"Dataset": {
		"name": {"text"}, "description": {"text"}, "url": {"address"}, // Thing
		"inLanguage": {"text"}, "isAccessibleForFree": {"boolean"}, "version": {"text"}, "dateModified": {"date"}, // CreativeWork
		"identifier": {"address"},                                  // Thing: PropertyValue, Text or URL
		"hasPart":    {"Dataset", "list"}, "isPartOf": {"Dataset"}, // CreativeWork
		"variableMeasured": {"PropertyValue", "list"}, "distribution": {"DataDownload", "list"}, // Dataset
	},
	"DataDownload":  {"encodingFormat": {"text"}, "contentUrl": {"address"}}, // MediaObject
	"PropertyValue": {"name": {"text"}, "unitText": {"text"}},                // Thing, PropertyValue
}

// required is what a reader of each type cannot do without. schema.org itself requires
// nothing. For Dataset these are the required properties, with a description of 50 to
// 5,000 characters, and for its downloads contentUrl, of "Dataset structured data" in the
// documentation of Google Search, as remembered; a HowTo without steps, and a step
// without words, would say nothing.
var required = map[string][]string{
	"HowTo": {"name", "step"}, "HowToStep": {"text"}, "HowToTip": {"text"},
	"Dataset": {"name", "description"}, "DataDownload": {"contentUrl"}, "PropertyValue": {"name"},
}

// linkedData reads the JSON-LD of a page, nil where there is none.
func linkedData(t *testing.T, name string, page []byte) map[string]any {
	t.Helper()
	z := html.NewTokenizer(bytes.NewReader(page))
	var read map[string]any
	for z.Next() != html.ErrorToken {
		token := z.Token()
		if token.Type != html.StartTagToken || token.Data != "script" || attr(token, "type") != "application/ld+json" {
			continue
		}
		z.Next()
		if read != nil {
			t.Errorf("%s has two", name)
		}
		if err := json.Unmarshal([]byte(z.Token().Data), &read); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	return read
}

// checkTerms reports what is not of schema.org's terms. Addresses must be under one of
// the starts given.
func checkTerms(t *testing.T, where string, value map[string]any, under string) {
	t.Helper()
	kind, _ := value["@type"].(string)
	known := terms[kind]
	if known == nil {
		t.Errorf("%s: unknown type %q", where, kind)
		return
	}
	for _, name := range required[kind] {
		if value[name] == nil || value[name] == "" {
			t.Errorf("%s: %s without %s", where, kind, name)
		}
	}
	if about, _ := value["description"].(string); kind == "Dataset" && (len(about) < 50 || len(about) > 5000) {
		t.Errorf("%s: a description of %d characters: %s", where, len(about), about)
	}
	for name, v := range value {
		if strings.HasPrefix(name, "@") {
			continue
		}
		may, ok := known[name]
		if !ok {
			t.Errorf("%s: %s has no property %q", where, kind, name)
			continue
		}
		list, isList := v.([]any)
		if isList != slices.Contains(may, "list") || isList && len(list) == 0 {
			t.Errorf("%s: %s.%s is %v", where, kind, name, v)
		}
		if !isList {
			list = []any{v}
		}
		for n, item := range list {
			at := fmt.Sprintf("%s: %s.%s[%d]", where, kind, name, n)
			switch item := item.(type) {
			case map[string]any:
				if of, _ := item["@type"].(string); !slices.Contains(may, of) {
					t.Errorf("%s is of type %q", at, of)
				}
				checkTerms(t, at, item, under)
			case string:
				text := slices.Contains(may, "text") || slices.Contains(may, "date") && len(item) == len("2026-11-25")
				address := slices.Contains(may, "address") && strings.HasPrefix(item, under)
				if !text && !address || item == "" || item != strings.TrimSpace(item) {
					t.Errorf("%s is %q", at, item)
				}
			case bool:
				if !slices.Contains(may, "boolean") {
					t.Errorf("%s is %v", at, item)
				}
			case float64:
				if !slices.Contains(may, "integer") || item != float64(int(item)) {
					t.Errorf("%s is %v", at, item)
				}
			default:
				t.Errorf("%s is %v", at, item)
			}
		}
	}
}

// Every page of the guide with steps is a HowTo with the very steps and cautions it
// shows, the chart and every table a Dataset whose downloads are files of the site.
func TestLinkedData(t *testing.T) {
	set, _ := tables.Load(tables.FS)
	tableCount := len(set.Tables)
	for _, test := range []struct {
		out   Output
		under string
	}{
		{mustSite(t, Options{Base: "/sub/"}), "/sub/"},
		{published(t, Options{}), web + "/"},
	} {
		files := contents(test.out)
		found := map[string]int{}
		for _, name := range htmlPages(files) {
			steps, cautions, table := 0, 0, 0
			inSteps := false
			for _, tag := range tags(files[name]) {
				switch {
				case tag.Data == "ol":
					inSteps = attr(tag, "class") == "steps"
				case tag.Data == "li" && inSteps && strings.HasPrefix(name, "measure/"):
					steps++
				case tag.Data == "ul":
					inSteps = false
				case tag.Data == "aside" && attr(tag, "class") == "caution":
					cautions++
				case attr(tag, "data-table") != "":
					table++
				}
			}
			data := linkedData(t, name, files[name])
			kind, _ := data["@type"].(string)
			found[kind]++
			isTable := name == "chart/index.html" || strings.HasPrefix(name, "chart/")
			switch {
			case data == nil:
				if steps > 0 || isTable {
					t.Errorf("%s has %d steps and says nothing of them", name, steps)
				}
				continue
			case isTable != (kind == "Dataset"), !isTable != (kind == "HowTo"):
				t.Errorf("%s is a %q", name, kind)
			}
			if data["@context"] != "https://schema.org" {
				t.Errorf("%s: the context is %v", name, data["@context"])
			}
			checkTerms(t, name, data, test.under)
			if kind == "HowTo" {
				said := map[string]int{}
				for n, step := range data["step"].([]any) {
					step := step.(map[string]any)
					said[step["@type"].(string)]++
					if p, ok := step["position"].(float64); ok && int(p) != said["HowToStep"] {
						t.Errorf("%s: item %d is step %v, want %d", name, n, p, said["HowToStep"])
					}
				}
				if said["HowToStep"] != steps || said["HowToTip"] != cautions {
					t.Errorf("%s shows %d steps and %d cautions, and says %v", name, steps, cautions, said)
				}
			}
			parts, _ := data["hasPart"].([]any)
			for _, d := range append(parts, data) {
				downloads, _ := d.(map[string]any)["distribution"].([]any)
				for _, download := range downloads {
					address := download.(map[string]any)["contentUrl"].(string)
					if files[strings.TrimPrefix(address, test.under)] == nil {
						t.Errorf("%s: the download %s is no file", name, address)
					}
				}
			}
		}
		if found["HowTo"] < 15 || found["Dataset"] != 1+tableCount {
			t.Errorf("got %v, want 15 pages with steps, %d tables and the chart", found, tableCount)
		}
	}
}
