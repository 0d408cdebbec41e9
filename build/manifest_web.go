package build

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"fmt"

	"capspan/build/diag"
)

const webManifestName = "site.webmanifest"

// webManifest is what a device wants to know before it puts the site among its programs
// (Web Application Manifest, W3C).
type webManifest struct {
	ID          string    `json:"id"`
	Name        string    `json:"name"`
	ShortName   string    `json:"short_name"`
	Description string    `json:"description"`
	Lang        string    `json:"lang"`
	StartURL    string    `json:"start_url"`
	Scope       string    `json:"scope"`
	Display     string    `json:"display"`
	Background  string    `json:"background_color"`
	Theme       string    `json:"theme_color"`
	Icons       []webIcon `json:"icons"`
}

type webIcon struct {
	Src     string `json:"src"`
	Sizes   string `json:"sizes"`
	Type    string `json:"type"`
	Purpose string `json:"purpose"`
}

// pictures of the icon that devices ask for: 192 and 512 pixels as they are, and one
// that a device may cut to a circle or a rounded square of its own.
var iconPictures = []struct {
	name, purpose string
	size          int
}{
	{"icon-192", "any", 192},
	{"icon-512", "any", 512},
	{"icon-whole", "maskable", 512},
}

// addWebManifest draws the icon's pictures and writes the manifest. An icon of another
// keeper may hold more than lines along the axes; it is then shown as it is.
func (s *site) addWebManifest() diag.List {
	m := webManifest{
		ID: s.base, Name: s.word("site.app-name"), ShortName: "Capspan", Lang: s.words.Language,
		Description: s.word("site.app-about"),
		StartURL:    s.base, Scope: s.base, Display: "standalone", Background: s.papers()[0], Theme: s.papers()[0],
	}
	var problems diag.List
	source := s.assets.Bytes("icon.svg")
	if source != nil {
		m.Icons = append(m.Icons, webIcon{s.atRoot(s.assets.Path("icon.svg")), "any", types[".svg"], "any"})
		drawing, err := readIcon(source)
		if err != nil {
			problems.Add(diag.Problem{Pos: diag.Pos{File: "static/icons/icon.svg"}, Rule: "icon-not-drawn", Level: diag.Warning,
				Fact: fmt.Sprintf("cannot be drawn as a picture, so some devices show none: %v", err)})
		} else {
			for _, p := range iconPictures {
				picture := s.memory.picture(pictureKey{sha256.Sum256(source), p.size, p.purpose}, func() []byte {
					return drawing.png(p.size, p.purpose == "maskable")
				})
				name := s.addAsset("assets/"+p.name, ".png", picture)
				m.Icons = append(m.Icons, webIcon{s.atRoot(name), fmt.Sprintf("%dx%d", p.size, p.size), types[".png"], p.purpose})
			}
		}
	}
	var b bytes.Buffer
	encoder := json.NewEncoder(&b)
	encoder.SetEscapeHTML(false)
	encoder.SetIndent("", " ")
	if err := encoder.Encode(m); err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	s.add(webManifestName, b.Bytes(), Pages)
	return problems
}
