package build

import (
	"bytes"
	"fmt"
	"html/template"
	"maps"
	"regexp"
	"slices"

	"capspan/tables"
)

// The identify page shows one drawing out of many, so its drawings lie in a file of
// their own: an SVG document with a group for each, which the page's script fetches
// once, when the first drawing is wanted. The page holds an empty sheet of the same
// size for each, so that nothing moves when the lines arrive.

// facesKey and yokeKey name a drawing in that file.
func facesKey(h tables.Hold, f tables.Faces) string { return "faces-" + string(h) + "-" + string(f) }
func yokeKey(kind string) string                    { return "yoke-" + kind }

// sheetSize finds how large a drawing is.
var sheetSize = regexp.MustCompile(`viewBox="[^"]*" width="[^"]*" height="[^"]*"`)

// emptySheet is a drawing without its lines.
func emptySheet(key string, drawn template.HTML) template.HTML {
	return template.HTML(fmt.Sprintf(`<svg class="drawing" %s data-drawing="%s" aria-hidden="true"></svg>`,
		sheetSize.FindString(string(drawn)), key))
}

func (s *site) emptyFaces(key, hold, faces string) template.HTML {
	return emptySheet(key, s.drawn().Faces(key, hold, faces))
}

// addDrawings writes the file, named by its content.
func (s *site) addDrawings() {
	var b bytes.Buffer
	b.WriteString(`<svg xmlns="http://www.w3.org/2000/svg">`)
	put := func(key string, drawn template.HTML) { fmt.Fprintf(&b, "\n<g id=\"%s\">%s</g>", key, drawn) }
	for _, h := range holdStrip {
		for _, f := range facesToOffer(h) {
			key := facesKey(h, f)
			put(key, s.drawn().Faces(key, string(h), string(f)))
		}
	}
	for _, kind := range slices.Compact(slices.Sorted(maps.Values(yokes))) {
		put(yokeKey(kind), s.drawn().Yoke(yokeKey(kind), kind))
	}
	b.WriteString("\n</svg>\n")
	s.drawings = s.addAsset("assets/drawings", ".svg", b.Bytes())
}
