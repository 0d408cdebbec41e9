package build

import (
	"fmt"
	"io/fs"
	"math"
	"regexp"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
)

// The keeper's colours. Each stands for one of the shipped ones by its name; whatever is
// not given stays. They are held to the contrast that WCAG 2.2 asks for, over every pair
// that the style sheet sets side by side.

// tokensFile has the shipped colours, those by day first.
const tokensFile = "parts/page/tokens.css"

// colourNames are those that a keeper may set, as the style sheet calls them.
var colourNames = []string{"paper", "sheet", "ink", "pencil", "hair", "line", "mark", "good", "wash", "focus", "on-ink"}

// times are the two sets of colours, as media queries name them.
var times = [2]string{"light", "dark"}

// rgb is a colour of sRGB.
type rgb [3]uint8

func (c rgb) String() string { return fmt.Sprintf("#%02x%02x%02x", c[0], c[1], c[2]) }

// palette is a keeper's colours by name, by day and by night; empty where none is given.
type palette [2]map[string]rgb

// colourPairs are what is written or drawn on what, and the least contrast of the two:
// words after criterion 1.4.3, lines and what shows the keyboard after 1.4.11.
var colourPairs = []struct {
	inks, grounds []string
	least         float64
	what          string
}{
	{[]string{"ink", "pencil", "mark", "good"}, []string{"paper", "sheet", "wash"}, 4.5, "words"},
	{[]string{"on-ink"}, []string{"ink"}, 4.5, "words"},
	{[]string{"line", "focus"}, []string{"paper", "sheet", "wash"}, 3, "lines"},
}

// luminance is the relative luminance of WCAG 2.2, from 0 for black to 1 for white.
func (c rgb) luminance() float64 {
	linear := func(v uint8) float64 {
		x := float64(v) / 255
		if x <= 0.04045 {
			return x / 12.92
		}
		return math.Pow((x+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(c[0]) + 0.7152*linear(c[1]) + 0.0722*linear(c[2])
}

// contrast is the contrast ratio of WCAG 2.2, from 1 to 21.
func contrast(a, b rgb) float64 {
	one, two := a.luminance(), b.luminance()
	return (max(one, two) + 0.05) / (min(one, two) + 0.05)
}

// ratio writes a contrast with two decimals, never more than it is.
func ratio(c float64) string { return fmt.Sprintf("%.2f:1", math.Floor(c*100)/100) }

var colourForm = regexp.MustCompile(`^#([0-9A-Fa-f]{3}|[0-9A-Fa-f]{6})$`)

// parseColour reads #rgb or #rrggbb.
func parseColour(text string) (c rgb, ok bool) {
	if !colourForm.MatchString(text) {
		return c, false
	}
	if len(text) == 4 {
		text = string([]byte{'#', text[1], text[1], text[2], text[2], text[3], text[3]})
	}
	_, err := fmt.Sscanf(text, "#%02x%02x%02x", &c[0], &c[1], &c[2])
	return c, err == nil
}

var tokenForm = regexp.MustCompile(`--([a-z-]+): (#[0-9a-f]{6});`)

// shippedColours are those of the style sheet.
func shippedColours(static fs.FS) palette {
	var p palette
	sheet, err := fs.ReadFile(static, tokensFile)
	if err != nil {
		return p // told by the bundler
	}
	day, night, _ := strings.Cut(string(sheet), "@media (prefers-color-scheme: dark)")
	for i, part := range []string{day, night} {
		p[i] = map[string]rgb{}
		for _, m := range tokenForm.FindAllStringSubmatch(part, -1) {
			if c, ok := parseColour(m[2]); ok {
				p[i][m[1]] = c
			}
		}
	}
	return p
}

// readColours reads "colours" of site.yaml: light and dark, each with names and colours.
func (o *own) readColours(static fs.FS, n *yaml.Node) diag.List {
	k := keeperReader{file: keeperFile}
	if n == nil {
		return nil
	}
	places := [2]map[string]*yaml.Node{{}, {}}
	o.colours = palette{{}, {}}
	k.each(n, "colours", times[:], func(key, value *yaml.Node) {
		time := slices.Index(times[:], key.Value)
		path := "colours." + key.Value
		k.each(value, path, colourNames, func(key, value *yaml.Node) {
			c, ok := parseColour(value.Value)
			if value.Kind != yaml.ScalarNode || !ok {
				k.fail(value, path+"."+key.Value, "bad-colour", fmt.Sprintf("%s is %q, which is no colour", key.Value, value.Value),
					`write it as "#13203a", in quotes: without them # begins a comment`)
				return
			}
			o.colours[time][key.Value], places[time][key.Value] = c, value
		})
	})
	if len(k.problems) > 0 {
		return k.problems
	}
	shipped := shippedColours(static)
	for time, name := range times {
		k.contrasts(name, o.colours[time], shipped[time], places[time])
	}
	return k.problems
}

// contrasts holds the colours of one time to each other; a pair of which neither is the
// keeper's is ours.
func (k *keeperReader) contrasts(time string, own, shipped map[string]rgb, places map[string]*yaml.Node) {
	colour := func(name string) rgb {
		if c, given := own[name]; given {
			return c
		}
		return shipped[name]
	}
	for _, pair := range colourPairs {
		for _, ink := range pair.inks {
			for _, ground := range pair.grounds {
				at, second := places[ink], places[ground]
				if at == nil {
					at, second = second, nil
				}
				got := contrast(colour(ink), colour(ground))
				if at == nil || got >= pair.least {
					continue
				}
				k.fail(at, "colours."+time, "colour-contrast", fmt.Sprintf("%s %s on %s %s has a contrast of %s, and %s need %s", ink, colour(ink), ground, colour(ground),
					ratio(got), pair.what, ratio(pair.least)), "make one of the two darker or lighter (WCAG 2.2, 1.4.3 and 1.4.11)")
				if second != nil {
					last := &k.problems[len(k.problems)-1]
					last.Notes = []diag.Note{{Text: "the other is given at", Pos: diag.Pos{File: k.file, Line: second.Line, Col: second.Column}}}
				}
			}
		}
	}
}

// css writes the colours for screens; on paper and in forced colours ours stay.
func (p palette) css() string {
	var b strings.Builder
	for i, time := range times {
		if len(p[i]) == 0 {
			continue
		}
		fmt.Fprintf(&b, "@media screen and (forced-colors: none) and (prefers-color-scheme: %s){:root{", time)
		for _, name := range colourNames {
			if c, given := p[i][name]; given {
				fmt.Fprintf(&b, "--%s:%s;", name, c)
			}
		}
		b.WriteString("}}\n")
	}
	return b.String()
}

// papers are the colours of the paper by day and by night.
func (s *site) papers() [2]string {
	both := paper
	if s.own != nil {
		for i := range both {
			if c, given := s.own.colours[i]["paper"]; given {
				both[i] = c.String()
			}
		}
	}
	return both
}
