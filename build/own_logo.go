package build

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image/png"
	"io"
	"io/fs"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
)

// The keeper's logo is put on every page, and may come from anywhere: an SVG is read
// element by element, and whatever could run, fetch or reach outside the drawing is refused
// with its place; a PNG is decoded to the end.

const (
	biggestLogo = 32 << 10 // bytes: every page of a first visit carries it
	widestLogo  = 2000     // pixels a side, of a PNG
)

// ownKeys are what site.yaml of a keeper's folder holds besides.
var ownKeys = []string{"logo", "colours"}

// logo is a picture that may be shown; empty when there is none.
type logo struct {
	ending        string // ".svg" or ".png"
	bytes         []byte
	width, height int // as large as it is shown, in CSS pixels
}

// shown is the height of a logo on a page, in CSS pixels.
const shown = 44

// readLogo reads the file that "logo" of site.yaml names.
func (o *own) readLogo(fsys fs.FS, n *yaml.Node) diag.List {
	if n == nil {
		return nil
	}
	k := keeperReader{file: keeperFile}
	if n.Kind != yaml.ScalarNode || n.Value != "logo.svg" && n.Value != "logo.png" {
		k.fail(n, "logo", "bad-logo", fmt.Sprintf("logo is %q", n.Value), "lay the picture beside site.yaml and write logo: logo.svg or logo: logo.png")
		return k.problems
	}
	text, err := readSome(fsys, n.Value, biggestLogo)
	if err != nil {
		k.fail(n, "logo", "bad-logo", fmt.Sprintf("%s cannot be read: %v", n.Value, err), "lay it beside site.yaml, or take the line out")
		return k.problems
	}
	if len(text) > biggestLogo {
		return diag.List{{Pos: diag.Pos{File: n.Value}, Rule: "bad-logo", Fact: fmt.Sprintf("the picture is larger than %d bytes", biggestLogo),
			Hints: []string{"save it smaller: every page carries it"}}}
	}
	o.logo = logo{ending: n.Value[len("logo"):], bytes: text}
	var wide, high float64
	var problems diag.List
	if o.logo.ending == ".png" {
		wide, high, problems = pngSize(text)
	} else {
		wide, high, problems = checkSVG(text)
	}
	if !problems.Blocked() {
		o.logo.height = shown
		o.logo.width = min(max(int(wide/high*shown+0.5), 1), 8*shown)
	}
	return problems
}

// readSome reads no more than shows that a file is too large.
func readSome(fsys fs.FS, name string, most int) ([]byte, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, int64(most)+1))
}

func pngSize(text []byte) (wide, high float64, problems diag.List) {
	bad := func(fact string) diag.List {
		return diag.List{{Pos: diag.Pos{File: "logo.png"}, Rule: "bad-logo", Fact: fact, Hints: []string{"save the picture as PNG again"}}}
	}
	config, err := png.DecodeConfig(bytes.NewReader(text))
	if err != nil {
		return 0, 0, bad("the file is no PNG: " + err.Error())
	}
	if config.Width > widestLogo || config.Height > widestLogo || config.Width < 1 || config.Height < 1 {
		return 0, 0, bad(fmt.Sprintf("the picture has %d × %d pixels; at most %d a side are shown", config.Width, config.Height, widestLogo))
	}
	if _, err := png.Decode(bytes.NewReader(text)); err != nil {
		return 0, 0, bad("the picture is damaged: " + err.Error())
	}
	return float64(config.Width), float64(config.Height), nil
}

const svgSpace = "http://www.w3.org/2000/svg"

// Elements and attributes of a drawing that stands by itself. There is no style, no link, no
// animation, no picture in the picture and no text of another language among them.
var (
	svgElements = strings.Fields("svg g path rect circle ellipse line polyline polygon text tspan title desc defs clipPath linearGradient radialGradient stop use")
	svgPlain    = strings.Fields("id class version viewBox preserveAspectRatio width height x y x1 y1 x2 y2 cx cy r rx ry fx fy d points dx dy transform " +
		"offset gradientUnits gradientTransform spreadMethod clipPathUnits text-anchor textLength lengthAdjust " +
		"fill fill-opacity fill-rule stroke stroke-width stroke-opacity stroke-linecap stroke-linejoin stroke-miterlimit stroke-dasharray stroke-dashoffset " +
		"opacity color stop-color stop-opacity clip-path clip-rule font-family font-size font-weight font-style letter-spacing vector-effect role aria-label")
	// within leads to a place of the drawing itself.
	within = regexp.MustCompile(`^#[A-Za-z][A-Za-z0-9._-]*$`)
	// without is what an address, an escape or an entity of CSS would need.
	without  = regexp.MustCompile(`[\\<>&@;{}]|/\*|//|:`)
	urlWords = regexp.MustCompile(`(?i)url\(\s*([^)]*?)\s*\)`)
)

// checkSVG walks a drawing and returns its size.
func checkSVG(text []byte) (wide, high float64, problems diag.List) {
	d := xml.NewDecoder(bytes.NewReader(text))
	d.Strict = true
	line, col := 1, 1
	fail := func(fact, hint string) {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "logo.svg", Line: line, Col: col}, Rule: "bad-logo", Fact: fact, Hints: []string{hint}})
	}
	depth := 0
	for {
		line, col = d.InputPos()
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			fail("the file is no sound XML: "+err.Error(), "save it as plain SVG")
			return 0, 0, problems
		}
		switch token := token.(type) {
		case xml.StartElement:
			depth++
			for _, fact := range svgFaults(token, depth) {
				fail(fact, "save it as plain SVG, with shapes and words alone")
			}
			if depth == 1 {
				wide, high = svgSize(token)
			}
		case xml.EndElement:
			depth--
		case xml.Directive:
			fail("a declaration such as <!DOCTYPE stands in it", "take it out")
		case xml.ProcInst:
			if token.Target != "xml" {
				fail(fmt.Sprintf("the instruction <?%s stands in it", token.Target), "take it out")
			}
		}
	}
	if len(problems) == 0 && (wide <= 0 || high <= 0) {
		line, col = 1, 1
		fail("the drawing does not say how large it is", `write viewBox="0 0 width height" into its first element`)
	}
	return wide, high, problems
}

// svgFaults are what may not be in an element.
func svgFaults(e xml.StartElement, depth int) []string {
	if e.Name.Space != svgSpace || !slices.Contains(svgElements, e.Name.Local) || depth == 1 && e.Name.Local != "svg" {
		return []string{fmt.Sprintf("the element %q is not taken", e.Name.Local)}
	}
	var faults []string
	for _, a := range e.Attr {
		name := a.Name.Local
		switch {
		case a.Name.Space == "xmlns" || a.Name.Space == "" && name == "xmlns":
		case name == "href" && e.Name.Local == "use" || name == "href" && strings.HasSuffix(e.Name.Local, "Gradient"):
			if !within.MatchString(a.Value) {
				faults = append(faults, fmt.Sprintf("the address %q leads out of the drawing", a.Value))
			}
		case a.Name.Space == "http://www.w3.org/XML/1998/namespace" && name == "space":
		case a.Name.Space != "" || !slices.Contains(svgPlain, name):
			faults = append(faults, fmt.Sprintf("the attribute %q of %q is not taken", name, e.Name.Local))
		case !plainValue(a.Value):
			faults = append(faults, fmt.Sprintf("the attribute %q of %q says %q", name, e.Name.Local, a.Value))
		}
	}
	return faults
}

// plainValue reports whether a value reaches nothing but a place of the drawing.
func plainValue(value string) bool {
	rest := value
	for _, m := range urlWords.FindAllStringSubmatch(value, -1) {
		if !within.MatchString(m[1]) {
			return false
		}
		rest = strings.ReplaceAll(rest, m[0], "")
	}
	return !without.MatchString(rest) && !strings.Contains(strings.ToLower(rest), "url(")
}

// svgSize is what the first element says: its viewBox, else width and height in pixels.
func svgSize(e xml.StartElement) (wide, high float64) {
	for _, a := range e.Attr {
		number := func(text string) float64 {
			n, err := strconv.ParseFloat(strings.TrimSuffix(text, "px"), 64)
			if err != nil || n > 1e6 {
				return 0
			}
			return n
		}
		switch a.Name.Local {
		case "viewBox":
			if f := strings.FieldsFunc(a.Value, func(r rune) bool { return r == ' ' || r == ',' }); len(f) == 4 {
				return number(f[2]), number(f[3])
			}
		case "width":
			wide = number(a.Value)
		case "height":
			high = number(a.Value)
		}
	}
	return wide, high
}
