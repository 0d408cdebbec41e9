package build

import (
	"bytes"
	"encoding/xml"
	"io"
	"regexp"
	"strings"
	"testing"
)

// Every empty sheet of the identify page has its drawing, of the same size, in the file
// the page fetches; otherwise the page would jump when it comes. Nothing is in the file
// that no sheet asks for.
func TestDrawingsOfIdentify(t *testing.T) {
	site := mustSite(t, Options{})
	file := func(prefix, suffix string) []byte {
		for _, f := range site.Files {
			if strings.HasPrefix(f.Path, prefix) && strings.HasSuffix(f.Path, suffix) {
				return f.Bytes
			}
		}
		t.Fatalf("the site has no file %s*%s", prefix, suffix)
		return nil
	}
	drawn := sizesDrawn(t, file("assets/drawings.", ".svg"))
	sheets := regexp.MustCompile(`<svg class="drawing" viewBox="([^"]*)"[^>]* data-drawing="([^"]*)"`)
	asked := map[string]bool{}
	for _, m := range sheets.FindAllSubmatch(file("identify/index.html", ""), -1) {
		size, key := string(m[1]), string(m[2])
		asked[key] = true
		if drawn[key] != size {
			t.Errorf("%s: the empty sheet has the size %q, its drawing %q", key, size, drawn[key])
		}
	}
	if len(asked) < 10 {
		t.Errorf("the page asks for %d drawings: %v", len(asked), asked)
	}
	for key := range drawn {
		if !asked[key] {
			t.Errorf("no sheet asks for the drawing %s", key)
		}
	}
}

// sizesDrawn reads the file as XML and returns each drawing's view box by its group.
func sizesDrawn(t *testing.T, text []byte) map[string]string {
	t.Helper()
	attr := func(e xml.StartElement, name string) string {
		for _, a := range e.Attr {
			if a.Name.Local == name {
				return a.Value
			}
		}
		return ""
	}
	sizes := map[string]string{}
	key, depth := "", 0
	for d := xml.NewDecoder(bytes.NewReader(text)); ; {
		token, err := d.Token()
		if err == io.EOF {
			return sizes
		}
		if err != nil {
			t.Fatalf("the drawings are no XML: %v", err)
		}
		switch e := token.(type) {
		case xml.StartElement:
			switch depth++; {
			case depth == 2:
				key = attr(e, "id")
			case depth == 3:
				sizes[key] = attr(e, "viewBox")
			}
		case xml.EndElement:
			depth--
		}
	}
}
