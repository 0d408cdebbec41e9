package build

import (
	"encoding/xml"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// The sitemap, in the words of sitemaps.org, lists the pages of all languages that are to be
// found. Where they are too many for one file it is an index, and the pages are in files
// named by how their addresses begin: a page more, or another date of one, changes the file
// that it is in and the index. They lie beside the index, because a sitemap speaks for its
// own folder only.

// sitemapPages is how many pages a file lists; the protocol takes 50,000, and 50 MB.
const sitemapPages = 10_000

type sitemapList struct {
	XMLName xml.Name       `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 urlset"`
	Links   string         `xml:"xmlns:xhtml,attr,omitempty"`
	Pages   []sitemapEntry `xml:"url"`
}

type sitemapIndex struct {
	XMLName xml.Name      `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 sitemapindex"`
	Files   []sitemapFile `xml:"sitemap"`
}

type sitemapFile struct {
	Location string `xml:"loc"`
	Date     string `xml:"lastmod,omitempty"` // the newest of its pages
}

// addSitemap writes it, and the file that leads to it.
func (s *site) addSitemap(sites []*site) {
	if s.keeper.Web == "" {
		return
	}
	var pages []sitemapEntry
	for _, language := range sites {
		pages = append(pages, language.shown...)
	}
	slices.SortFunc(pages, func(a, b sitemapEntry) int { return strings.Compare(a.Location, b.Location) })
	if len(pages) <= sitemapPages {
		s.addXML(sitemapName, sitemapOf(pages, len(sites)))
	} else {
		s.addXML(sitemapName, s.sitemapFiles(pages, len(sites)))
	}
	// Crawlers ask for this file at the root of a host and nowhere else (RFC 9309, 2.3).
	if s.root == "/" {
		s.add(robotsName, fmt.Appendf(nil, "User-agent: *\nAllow: /\n\nSitemap: %s\n", s.full("/"+sitemapName)), Pages)
	}
}

func sitemapOf(pages []sitemapEntry, languages int) sitemapList {
	list := sitemapList{Pages: pages}
	if languages > 1 {
		list.Links = "http://www.w3.org/1999/xhtml"
	}
	return list
}

// sitemapFiles writes the files of an index.
func (s *site) sitemapFiles(pages []sitemapEntry, languages int) sitemapIndex {
	var index sitemapIndex
	by := map[string]sitemapEntry{}
	for _, p := range pages {
		by[strings.TrimPrefix(p.Location, s.full("/"))] = p
	}
	var records []record
	for _, address := range slices.Sorted(maps.Keys(by)) {
		records = append(records, record{key: address + keyEnd})
	}
	sortIn(records, sitemapPages, func(beginning string, records []record) {
		file := sitemapFile{Location: s.full("/" + sitemapPart(beginning))}
		list := make([]sitemapEntry, len(records))
		for n, r := range records {
			list[n] = by[strings.TrimSuffix(r.key, keyEnd)]
			file.Date = max(file.Date, list[n].Date)
		}
		s.addXML(sitemapPart(beginning), sitemapOf(list, languages))
		index.Files = append(index.Files, file)
	}, nil)
	return index
}

// sitemapPart names the file of the pages whose addresses begin so. Capitals are written by
// their number too: not every disk tells them from small letters.
func sitemapPart(beginning string) string {
	var b strings.Builder
	for _, r := range strings.TrimSuffix(beginning, keyEnd) {
		switch {
		case r >= 'a' && r <= 'z', r >= '0' && r <= '9', r == '-':
			b.WriteRune(r)
		case r == '/':
			b.WriteByte('_')
		default:
			fmt.Fprintf(&b, "~%x", r)
		}
	}
	return sitemapPrefix + b.String() + ".xml"
}

const sitemapPrefix = "sitemap-"

// isSitemap reports whether a file is the sitemap or a part of it.
func isSitemap(name string) bool {
	return name == sitemapName || strings.HasPrefix(name, sitemapPrefix) && !strings.Contains(name, "/")
}
