package build

import (
	"encoding/xml"
	"regexp"
	"slices"

	"capspan/templates"
)

// How the site is found. Every page goes through [site.head], which says in its head
// what search engines and previews of links want to know; the files below say it of the
// site as a whole:
//
//	sitemap.xml     the pages to be found in every language, with the date of the table behind them
//	robots.txt      that all may be read, and where the sitemap is
//	opensearch.xml  how a browser can put a question to the search page
//
// All three, canonical links and previews need the site's full address, which only its
// keeper knows ("web" in content/site.yaml). Without it none of them is written: an
// address made up would send readers away.

// The colour of the paper by day and by night, as static/parts/page/tokens.css has it.
var paper = [2]string{"#f7f5ee", "#0c1a2b"}

const (
	sitemapName    = "sitemap.xml"
	robotsName     = "robots.txt"
	openSearchName = "opensearch.xml"
)

// webForm is https, a name and perhaps a port: no path, since that is --base.
var webForm = regexp.MustCompile(`^https://[a-z0-9]([a-z0-9-]*[a-z0-9])?(\.[a-z0-9]([a-z0-9-]*[a-z0-9])?)+(:[0-9]{1,5})?$`)

// full is the full address of a rooted one; it is empty when the site does not know its own.
func (s *site) full(address string) string {
	if s.keeper.Web == "" {
		return ""
	}
	return s.keeper.Web + s.at(address)
}

// fullRoot is the same of a file that belongs to no language.
func (s *site) fullRoot(address string) string {
	if s.keeper.Web == "" {
		return ""
	}
	return s.keeper.Web + s.atRoot(address)
}

// named is an address as JSON-LD names a thing: full where the site knows its own, else
// rooted, which readers of JSON-LD resolve against the page (JSON-LD 1.1, 4.1.3).
func (s *site) named(address string) string {
	if full := s.full(address); full != "" {
		return full
	}
	return s.at(address)
}

// head fills what every page says of itself. A page that repeats another, or stands in
// for none, is kept out of search engines.
func (s *site) head(page *templates.Page) {
	switch page.Body.(type) {
	case *templates.Paper, *templates.Moved, *templates.NotKept, *templates.EmbedFrame:
		page.Head.Hidden = true
	case *templates.Home, *templates.Chart, *templates.Table, *templates.Joint, *templates.Size, *templates.Groups, *templates.Changes:
		page.Head.Feed = s.feedAddress()
	}
	if page.Address == "/404.html" {
		page.Head.Hidden = true // it is shown at any address
		return
	}
	page.Head.Canonical = s.full(page.Address)
	if page.Head.Canonical == "" || page.Head.Hidden {
		return
	}
	page.Head.Picture = s.previews[""]
	if joint, ok := page.Body.(*templates.Joint); ok && s.previews[joint.ID] != nil {
		page.Head.Picture = s.previews[joint.ID]
	}
}

// sitemapEntry is the page's line in the sitemap, empty for one that is not to be found.
func (s *site) sitemapEntry(page *templates.Page) sitemapEntry {
	if page.Head.Hidden {
		return sitemapEntry{}
	}
	return sitemapEntry{page.Head.Canonical, s.dated(page), sitemapLinks(page)}
}

// dated is the date of what stands on a page, as far as the sources have one: text has
// none, and the day of a build says nothing.
func (s *site) dated(page *templates.Page) string {
	switch body := page.Body.(type) {
	case *templates.Table:
		return body.Date
	case *templates.Joint:
		return s.set.Find(body.ID).Table.Version.Date
	case *templates.Groups:
		return body.Date
	case *templates.GroupPage:
		return body.Date
	case *templates.Size:
		date := ""
		for _, writing := range body.Writings {
			date = max(date, writing.Date)
		}
		return date
	case *templates.Chart:
		return s.version.Date
	}
	return ""
}

// sitemapEntry is one page to be found, in the words of sitemaps.org, with the same page
// in all languages.
type sitemapEntry struct {
	Location  string        `xml:"loc"`
	Date      string        `xml:"lastmod,omitempty"`
	Languages []sitemapLink `xml:"xhtml:link"`
}

type sitemapLink struct {
	Rel      string `xml:"rel,attr"`
	Language string `xml:"hreflang,attr"`
	Href     string `xml:"href,attr"`
}

func sitemapLinks(page *templates.Page) []sitemapLink {
	var links []sitemapLink
	for _, a := range page.Head.Alternates {
		links = append(links, sitemapLink{"alternate", a.Language, a.Href})
	}
	return links
}

// addFound tells browsers how to put a question to the language's search page.
func (s *site) addFound() {
	if s.openSearch() != "" {
		type address struct {
			Type     string `xml:"type,attr"`
			Template string `xml:"template,attr"`
		}
		s.addXML(openSearchName, struct {
			XMLName     xml.Name `xml:"http://a9.com/-/spec/opensearch/1.1/ OpenSearchDescription"`
			ShortName   string
			Description string
			InputEncoding,
			Language string
			URL address `xml:"Url"`
		}{ShortName: "Capspan", Description: s.word("site.search-about"), InputEncoding: "UTF-8", Language: s.words.Language,
			URL: address{"text/html", s.full(searchAddress) + "#q={searchTerms}"}})
	}
}

// openSearch is the address of the description, empty where there is none.
func (s *site) openSearch() string {
	if s.keeper.Web == "" || !s.frames.Has("search.html") {
		return ""
	}
	return s.at(openSearchName)
}

func (s *site) addXML(name string, document any) {
	b, err := xml.MarshalIndent(document, "", "")
	if err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	s.add(name, slices.Concat([]byte(xml.Header), b, []byte("\n")), Pages)
}
