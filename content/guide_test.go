package content

import (
	"regexp"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// guidePages are the shipped pages under /measure/.
func guidePages(t *testing.T) []*Page { return guideOf(t, English) }

func guideOf(t *testing.T, language string) []*Page {
	t.Helper()
	var guide []*Page
	for _, p := range loaded(t, language) {
		if strings.HasPrefix(p.Slug, "measure") {
			guide = append(guide, p)
		}
	}
	if len(guide) < 25 {
		t.Fatalf("only %d guide pages", len(guide))
	}
	return guide
}

func loaded(t *testing.T, language string) []*Page {
	t.Helper()
	list, problems := Load(FS, Options{Base: "/", Language: language})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return list
}

// block is a paragraph, list item or table cell of a page, in words, and the number of the
// section it stands in. Headings begin sections.
type block struct {
	kind    string // p, li, td, th, h2 ...
	text    string
	section int
}

func blocks(t *testing.T, p *Page) []block {
	t.Helper()
	root, err := html.Parse(strings.NewReader(string(p.HTML)))
	if err != nil {
		t.Fatal(err)
	}
	var list []block
	section := 0
	var walk func(n *html.Node)
	walk = func(n *html.Node) {
		if n.Type == html.ElementNode {
			switch n.Data {
			case "svg", "pre":
				return
			case "h2":
				section++
				list = append(list, block{n.Data, words(n), section})
				return
			case "p", "td", "th", "li":
				if n.Data != "li" || !holdsParagraph(n) {
					list = append(list, block{n.Data, words(n), section})
					return
				}
			}
		}
		for c := n.FirstChild; c != nil; c = c.NextSibling {
			walk(c)
		}
	}
	walk(root)
	return list
}

func holdsParagraph(n *html.Node) bool {
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		if c.Type == html.ElementNode && (c.Data == "p" || c.Data == "ul" || c.Data == "ol" || c.Data == "figure" || c.Data == "aside") {
			return true
		}
	}
	return false
}

// words is the text of a node on one line.
func words(n *html.Node) string { return strings.Join(strings.Fields(rawWords(n)), " ") }

func rawWords(n *html.Node) string {
	if n.Type == html.TextNode {
		return n.Data
	}
	var b strings.Builder
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		b.WriteString(rawWords(c))
	}
	return b.String()
}

// The guide must be plain: each page scores 60 or more, "standard", by the reading ease
// of Rudolf Flesch, A new readability yardstick, Journal of Applied Psychology 32 (1948):
//
//	206.835 - 1.015 words a sentence - 84.6 syllables a word
//
// Paragraphs and list items that hold a sentence count; titles, labels and tables do not. As Flesch has it, a
// sentence is a unit of thought marked off by a full stop, a colon or a semicolon.
func TestReadingEase(t *testing.T) {
	checkEase(t, guidePages(t), readingEase)
}

// checkEase holds each page to a reading ease of 60.
func checkEase(t *testing.T, pages []*Page, easeOf func(prose []string) float64) {
	t.Helper()
	for _, p := range pages {
		var prose []string
		for _, b := range blocks(t, p) {
			if (b.kind == "p" || b.kind == "li") && sentenceEnd.MatchString(b.text) {
				prose = append(prose, b.text)
			}
		}
		if ease := easeOf(prose); ease < 60 {
			t.Errorf("%s: reading ease %.1f, want 60 or more", p.Slug, ease)
		} else if testing.Verbose() {
			t.Logf("%s: %.1f", p.Slug, ease)
		}
	}
}

var (
	figureWithUnit = regexp.MustCompile(`\d ?(mm|in|lb|kg|N·m|lbf·ft)\b|\d+ micr[oó]met(re|ro)s`)
	basisNamed     = regexp.MustCompile(`(?i)common practice|memory|invented|our judgement|this chart's|by definition|by its make|worked out|one owner|` +
		`DIN 86|JIS B 7516|S\.I\. 2016|ISO \d|ASME|ETMA|Dana|Freightliner|Land Rover|Toyota|Nissan|Mazda|Federal-Mogul|TM 5-3820|` +
		`Randy's Driveshaft|a seller's note|repair guide|OSHA|CFR`)
)

// Every external figure names its basis: where a section gives a length, a force or a
// mass, the same section says what it rests on.
func TestFiguresNameTheirBasis(t *testing.T) {
	checkBasis(t, guidePages(t), basisNamed)
}

func checkBasis(t *testing.T, pages []*Page, basisNamed *regexp.Regexp) {
	t.Helper()
	for _, p := range pages {
		given, named := map[int]string{}, map[int]bool{}
		for _, b := range blocks(t, p) {
			if found := figureWithUnit.FindString(b.text); found != "" && given[b.section] == "" {
				given[b.section] = b.text
			}
			named[b.section] = named[b.section] || basisNamed.MatchString(b.text)
		}
		for section, text := range given {
			if !named[section] {
				t.Errorf("%s, section %d: no basis for the figure in %q", p.Slug, section, text)
			}
		}
	}
}

// Pages about taking apart, pressing and tightening carry cautions.
func TestGuideCautions(t *testing.T) {
	careful := map[string][]string{ // and what the caution, or the page, must say
		"measure":               {"wheels chocked", "rated stands", "neutral", "46 kg", "out of phase"},
		"measure/what-holds-it": {"eye protection", "in line with the press", "No heat"},
		"measure/cap":           {"eye protection", "in line with the press", "No heat"},
		"measure/across":        {"eye protection", "wheels chocked", "phase"},
		"measure/over-caps":     {"eye protection"},
		"measure/groove-inner":  {"eye protection"},
		"measure/groove-outer":  {"eye protection"},
		"measure/under-plates":  {"46 kg", "used once"},
		"measure/half-round":    {"46 kg", "used once"},
		"measure/wing":          {"46 kg", "wheels chocked", "used once"},
		"measure/bare-yoke":     {"scrapped", "driveline shop"},
		"measure/conversion":    {"phase", "eye protection"},
		"measure/cannot":        {"No heat", "eye protection"},
		"measure/removing":      {"eye protection", "wheels chocked", "46 kg", "No heat", "out of phase", "29 CFR 1928.57", "49 CFR 393.89", "ISO 5674", "scrapped"},
		"measure/fitting":       {"eye protection", "No heat", "Balance and welding", "phase"},
		"measure/clips":         {"eye protection"},
		"measure/tightening":    {"used once", "wheels chocked", "memory"},
	}
	checkCautions(t, guidePages(t), careful)
}

// checkCautions wants the words on the pages that are named, and a caution on each.
func checkCautions(t *testing.T, pages []*Page, careful map[string][]string) {
	t.Helper()
	seen := 0
	for _, p := range pages {
		wants, listed := careful[p.Slug]
		if !listed {
			continue
		}
		seen++
		text := strings.ToLower(strings.Join(strings.Fields(string(p.HTML)), " "))
		if !strings.Contains(text, `<aside class="caution">`) {
			t.Errorf("%s: no caution", p.Slug)
		}
		for _, want := range wants {
			if !strings.Contains(text, strings.ToLower(want)) {
				t.Errorf("%s: does not say %q", p.Slug, want)
			}
		}
	}
	if seen != len(careful) {
		t.Errorf("%d of %d pages with cautions are there", seen, len(careful))
	}
}
