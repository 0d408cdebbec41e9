package build

import (
	"bytes"
	"image"
	"image/png"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/static"
)

// Whatever is wrong in a keeper's folder is told with its real place and what to do, and
// nothing is built.
func TestOwnProblems(t *testing.T) {
	page := "---\ntitle: T\nabout: A.\n---\n\n"
	memory := NewMemory() // the scripts are the same for all
	for _, c := range []struct {
		name    string
		changed map[string]string
		want    []string
	}{
		{"a mail address that is a script", map[string]string{"site.yaml": "counter@example.org => javascript:alert(1)"}, []string{`site.yaml:23:7: site.mail: mail is "javascript:alert(1)" [bad-mail]`}},
		{"a mail address that brings more", map[string]string{"site.yaml": "counter@example.org => \"a@example.org?body=<script>\""}, []string{"[bad-mail]"}},
		{"a key nobody knows", map[string]string{"site.yaml": "colours: => colors:"}, []string{`site.yaml:27:1: site: unknown key "colors"`, "logo and colours"}},
		{"a colour that is a word", map[string]string{"site.yaml": `"#1f2a18" => red`}, []string{`site.yaml:29:10: site.colours.light.ink: ink is "red", which is no colour [bad-colour]`}},
		{"a colour that is more than a colour", map[string]string{"site.yaml": `"#1f2a18" => "#fff;}body{display:none"`}, []string{"[bad-colour]"}},
		{"a colour without quotes", map[string]string{"site.yaml": `"#1f2a18" => #1f2a18`}, []string{`ink is "", which is no colour [bad-colour]`, "in quotes"}},
		{"colours that are one word", map[string]string{"site.yaml": "colours: red\n"}, []string{"site.yaml:1:10: site.colours: colours must be keys"}},
		{"a name of no colour", map[string]string{"site.yaml": "    ink: =>     tint:"}, []string{`unknown key "tint"`, "paper, sheet, ink"}},
		{"colours that are no colours", map[string]string{"site.yaml": "  light: =>   - light:"}, []string{"[bad-yaml]"}},
		{"too little contrast", map[string]string{"site.yaml": `"#1f2a18" => "#777777"`},
			[]string{"site.yaml:29:10: site.colours.light: ink #777777 on paper #f7f5ee has a contrast of 4.10:1, and words need 4.50:1 [colour-contrast]", "ink #777777 on wash #e8eede has a contrast of 3.77:1", "note: the other is given at site.yaml:31:11"}},
		{"a ground that is too dark", map[string]string{"site.yaml": "    wash: \"#e8eede\" =>     sheet: \"#888888\""}, []string{"site.yaml:31:12: site.colours.light: pencil #555d6b on sheet #888888 has a contrast of 1.87:1"}},
		{"a picture that is elsewhere", map[string]string{"site.yaml": "logo: logo.svg => logo: ../logo.svg"}, []string{`site.yaml:26:7: site.logo: logo is "../logo.svg" [bad-logo]`}},
		{"a picture that is not there", map[string]string{"site.yaml": "logo: logo.svg => logo: logo.png"}, []string{"site.yaml:26:7: site.logo: logo.png cannot be read"}},
		{"a picture with a script", map[string]string{"logo.svg": "<title> => <script>alert(1)</script><title>"}, []string{`logo.svg:2:3: the element "script" is not taken [bad-logo]`}},
		{"a page of ours", map[string]string{"pages/measure/cap.md": page + "Ours.\n"}, []string{"pages/measure/cap.md:1:1: the program ships a file of the name \"measure/cap.md\" [page-shipped]", "note: the shipped one is content/measure/cap.md:1:1"}},
		{"an address that is made", map[string]string{"pages/identify.md": page + "Ours.\n"}, []string{"pages/identify.md: /identify/: two pages want the address /identify/ [address-taken]", "note: first used by content/by-hand.md"}},
		{"a link that leads nowhere", map[string]string{"pages/extra.md": page + "See [this](/nowhere/).\n"}, []string{"pages/extra.md:6:5: /extra/: link \"/nowhere/\" leads to no page [broken-link]"}},
		{"a page with a row that is not there", map[string]string{"pages/extra.md": page + "A {row 9999}.\n"}, []string{"pages/extra.md:6:8: extra: no joint of the chart is called"}},
		{"a table of ours", map[string]string{"tables/joints-inch.yaml": "table: joints-inch\n"}, []string{"tables/joints-inch.yaml:1:1: the program ships a file of the name \"joints-inch.yaml\" [table-shipped]", "note: the shipped one is tables/joints-inch.yaml:1:1"}},
		{"a registry of ours", map[string]string{"tables/sources.yaml": "sources: []\n"}, []string{"[table-shipped]", "tables/own-sources.yaml"}},
		{"a row of ours", map[string]string{"tables/counter-tools.yaml": "id: tool-caliper-150 => id: \"1310\""}, []string{`tables/counter-tools.yaml:15:9: counter-tools/1310: the id "1310" is already taken by "joints-inch/1310"`, "note: first defined at tables/joints-inch.yaml:"}},
		{"words nobody says", map[string]string{"words/en/joint.yaml": "enquiree: \"Ask\"\n"}, []string{`words/en/joint.yaml:1:1: joint.enquiree: no words are called "joint.enquiree" [unknown-words]`, `did you mean "joint.enquiry"?`}},
		{"words that leave a value out", map[string]string{"words/en/joint.yaml": "also: \"Also called so.\"\n"}, []string{"words/en/joint.yaml:1:1: joint.also: has the values [], and the words it replaces have [\"names\"] [other-values]", "note: the shipped words are at templates/words/en/joint.yaml:"}},
		{"words with marks where none can be", map[string]string{"words/en/joint.yaml": "enquiry: \"**Ask**\"\n"}, []string{"words/en/joint.yaml:1:1: joint.enquiry: links and ** cannot be shown where it is said [marks-not-here]"}},
		{"an overlay of a row that is nowhere", map[string]string{"overlay/counter.yaml": "  1330: =>   1331x:"}, []string{"overlay/counter.yaml:25:3: counter/1331x: no row \"1331x\" is in the chart [overlay-nowhere]"}},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := schoolFolder(t, c.changed)
			out, problems := Site(src, Options{Memory: memory})
			checkFinds(t, src, problems)
			if !problems.Blocked() || len(out.Files) > 0 {
				t.Fatalf("a site of %d files: %v", len(out.Files), problems)
			}
			var text strings.Builder
			if err := problems.Print(&text); err != nil {
				t.Fatal(err)
			}
			for _, want := range c.want {
				if !strings.Contains(text.String(), want) {
					t.Errorf("lacks %s:\n%s", want, &text)
				}
			}
		})
	}
}

// A name that is written almost like one that is read is told; others are the keeper's business.
func TestMisspeltInFolder(t *testing.T) {
	_, _, problems := loadOwn(schoolFolder(t, map[string]string{"overlays/x.yaml": "x", "dist/index.html": "x", "README.md": "x", "logo.svg": "</svg> => </svg>\n"}))
	if len(problems) != 1 || problems.Blocked() || problems[0].Pos.File != "overlays" || problems[0].Rule != "unread" {
		t.Errorf("%v", problems)
	}
}

// The ratio is WCAG's: black on white 21, and greys whose contrast on white is well known
// (#767676 is the lightest that passes 4.5, #949494 the lightest that passes 3).
func TestContrast(t *testing.T) {
	white := rgb{255, 255, 255}
	for text, want := range map[string]string{"#000000": "21.00:1", "#767676": "4.54:1", "#777777": "4.47:1", "#949494": "3.03:1", "#959595": "2.99:1", "#f00": "3.99:1", "#0000ff": "8.59:1", "#fff": "1.00:1"} {
		c, ok := parseColour(text)
		if got := ratio(contrast(c, white)); !ok || got != want || ratio(contrast(white, c)) != want {
			t.Errorf("%s on white: %s, want %s", text, got, want)
		}
	}
	for _, text := range []string{"", "#", "#12", "#1234", "#12345", "#1234567", "red", "rgb(0 0 0)", "#12345g", " #123456", "#123456 ", "#123456;", "#12345\n6", "#１２３"} {
		if c, ok := parseColour(text); ok {
			t.Errorf("%q is %v", text, c)
		}
	}
}

// The names a keeper may set are those of the style sheet, all but the one that is see-through;
// the shipped colours pass; and every ink and ground that the sheets use is among the pairs.
func TestColoursAreOfTheStyle(t *testing.T) {
	shipped := shippedColours(static.FS)
	k := keeperReader{}
	for i, time := range times {
		names := slices.Clone(colourNames)
		for name := range shipped[i] {
			names = slices.DeleteFunc(names, func(n string) bool { return n == name })
			if !slices.Contains(colourNames, name) {
				t.Errorf("no keeper can set %s", name)
			}
		}
		if len(names) > 0 {
			t.Errorf("%s has no %v", time, names)
		}
		k.contrasts(time, nil, shipped[i], nil)
		for _, pair := range colourPairs {
			for _, ink := range pair.inks {
				for _, ground := range pair.grounds {
					if got := contrast(shipped[i][ink], shipped[i][ground]); got < pair.least {
						t.Errorf("%s: %s on %s has %s", time, ink, ground, ratio(got))
					}
				}
			}
		}
	}
	paired := func(ink, ground string) bool {
		for _, pair := range colourPairs {
			if slices.Contains(pair.inks, ink) && slices.Contains(pair.grounds, ground) {
				return true
			}
		}
		return false
	}
	rule := regexp.MustCompile(`\{[^{}]*\}`)
	ink, ground := regexp.MustCompile(`[^-]color:\s*var\(--([a-z-]+)\)`), regexp.MustCompile(`background(?:-color)?:\s*var\(--([a-z-]+)\)`)
	found, both := 0, 0
	assets, _ := static.Bundle(static.FS)
	for _, f := range assets.Files {
		if !strings.HasSuffix(f.Path, ".css") {
			continue
		}
		for _, block := range rule.FindAllString(string(f.Bytes), -1) {
			on := ground.FindStringSubmatch(block)
			if on != nil && !slices.ContainsFunc([]string{"ink", "pencil", "line", "on-ink"}, func(ink string) bool { return paired(ink, on[1]) }) && on[1] != "line" {
				t.Errorf("%s: nothing is paired with the ground %s", f.Path, on[1])
			}
			of := ink.FindStringSubmatch(block)
			if of == nil || of[1] == "tone" {
				continue
			}
			found++
			if on == nil {
				on = []string{"", map[bool]string{true: "ink", false: "paper"}[of[1] == "on-ink"]}
			} else {
				both++
			}
			if !paired(of[1], on[1]) {
				t.Errorf("%s: %s on %s is in no pair", f.Path, of[1], on[1])
			}
		}
	}
	if found < 20 || both < 3 {
		t.Errorf("only %d inks and %d pairs were found", found, both)
	}
}

// A logo is taken when it is a drawing and nothing else.
func TestLogo(t *testing.T) {
	const open = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20">`
	for _, good := range []string{
		open + `<path d="M0 0h40"/></svg>`,
		`<?xml version="1.0"?>` + "\n<!-- ours -->\n" + open + `<g transform="rotate(3 4 5)"><circle r="3"/></g></svg>`,
		`<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" width="40px" height="20"><defs><linearGradient id="a"><stop offset="0" stop-color="#fff"/></linearGradient></defs><rect fill="url(#a)"/><use xlink:href="#a"/></svg>`,
	} {
		wide, high, problems := checkSVG([]byte(good))
		if len(problems) > 0 || wide != 40 || high != 20 {
			t.Errorf("%s: %v × %v, %v", good, wide, high, problems)
		}
	}
	for _, bad := range []string{
		open + `<script>alert(1)</script></svg>`,
		open + `<SCRIPT>alert(1)</SCRIPT></svg>`,
		open + `<x:script xmlns:x="http://www.w3.org/1999/xhtml">alert(1)</x:script></svg>`,
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1 1" onload="alert(1)"/>`,
		open + `<path d="M0 0" onclick="alert(1)"/></svg>`,
		open + `<foreignObject><p xmlns="http://www.w3.org/1999/xhtml">x</p></foreignObject></svg>`,
		open + `<image href="https://example.org/x.png"/></svg>`,
		open + `<a href="javascript:alert(1)"><path d="M0 0"/></a></svg>`,
		open + `<use href="https://example.org/x.svg#y"/></svg>`,
		open + `<use xmlns:l="http://www.w3.org/1999/xlink" l:href="data:image/svg+xml,x"/></svg>`,
		open + `<rect fill="url(https://example.org/x#y)"/></svg>`,
		open + `<rect fill="URL( '//example.org/x' )"/></svg>`,
		open + `<rect fill="u\72l(x)"/></svg>`,
		open + `<rect fill="url(#a"/></svg>`,
		open + `<rect style="fill:red"/></svg>`,
		open + `<style>@import "https://example.org/x";</style></svg>`,
		open + `<set attributeName="href" to="javascript:alert(1)"/></svg>`,
		open + `<animate attributeName="x"/></svg>`,
		open + `<filter id="f"/></svg>`,
		`<!DOCTYPE svg [<!ENTITY a "x">]>` + open + `<text>&a;</text></svg>`,
		`<?xml-stylesheet href="https://example.org/x.css"?>` + open + `</svg>`,
		open + `<path d="M0 0"></svg>`,
		`<path xmlns="http://www.w3.org/2000/svg" d="M0 0"/>`,
		`<html><script>alert(1)</script></html>`,
		`<svg viewBox="0 0 1 1"/>`,
		`<svg xmlns="http://www.w3.org/2000/svg"/>`,
		`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 0 0"/>`,
		``,
	} {
		if _, _, problems := checkSVG([]byte(bad)); !problems.Blocked() || problems[0].Pos.File != "logo.svg" || problems[0].Pos.Line != 1 {
			t.Errorf("%s is taken: %v", bad, problems)
		}
	}
	var picture bytes.Buffer
	if err := png.Encode(&picture, image.NewGray(image.Rect(0, 0, 30, 10))); err != nil {
		t.Fatal(err)
	}
	var huge bytes.Buffer
	if err := png.Encode(&huge, image.NewGray(image.Rect(0, 0, widestLogo+1, 1))); err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		name string
		text []byte
		good bool
	}{
		{"a picture", picture.Bytes(), true},
		{"half a picture", picture.Bytes()[:picture.Len()-14], false},
		{"another file", []byte("GIF89a"), false},
		{"a wide one", huge.Bytes(), false},
		{"a large one", slices.Concat(picture.Bytes(), make([]byte, biggestLogo)), false},
	} {
		src := schoolFolder(t, map[string]string{"site.yaml": "logo: logo.svg => logo: logo.png"})
		src.Own.(fstest.MapFS)["logo.png"] = &fstest.MapFile{Data: c.text}
		_, o, problems := loadOwn(src)
		if problems.Blocked() == c.good {
			t.Errorf("%s: %v", c.name, problems)
		}
		if c.good && (o.logo.width != 132 || o.logo.height != 44) {
			t.Errorf("%s is %d × %d", c.name, o.logo.width, o.logo.height)
		}
	}
}

// A base that leaves where it stands is refused; dots in a name are none.
func TestBaseStaysInside(t *testing.T) {
	for base, good := range map[string]bool{"/": true, "/a/b/": true, "": true, "/a.b/": true, "/..a/": true, "/a/../b/": false, "..": false, "/./": false, "/a/..": false, "/a b/": false} {
		if err := CheckBase(base); (err == nil) != good {
			t.Errorf("%q: %v", base, err)
		}
	}
}
