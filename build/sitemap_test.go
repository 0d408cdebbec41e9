package build

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"regexp"
	"strings"
	"testing"

	"capspan/templates"
)

// manyPages is a site of 25,000 pages to be found; the date of one is given.
func manyPages(t *testing.T, date string) map[string][]byte {
	t.Helper()
	s := &site{root: "/sub/", base: "/sub/", inputs: inputs{keeper: templates.Keeper{Web: "https://joints.example.org"}}}
	add := func(address, date string) {
		s.shown = append(s.shown, sitemapEntry{Location: s.full(address), Date: date})
	}
	add("/", "")
	for n := range 25_000 {
		when := "2026-11-25"
		if n == 7_000 {
			when = date
		}
		add(fmt.Sprintf("/size/%s-%d.%dx80.0/", []string{"outside-clip", "inside-clip", "Plate"}[n%3], n/10, n%10), when)
	}
	s.addSitemap([]*site{s})
	return contents(Output{Files: s.files})
}

// By the rules of sitemaps.org: an index in its namespace that leads to files beside it, each
// with at most 50,000 addresses and 50 MB, which together are all pages, each once. One date
// changes one of them.
func TestSitemapOfManyPages(t *testing.T) {
	files := manyPages(t, "2026-11-25")
	var index struct {
		XMLName xml.Name
		Files   []struct {
			Loc     string `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 loc"`
			LastMod string `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 lastmod"`
		} `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 sitemap"`
	}
	if err := xml.Unmarshal(files[sitemapName], &index); err != nil {
		t.Fatal(err)
	}
	if want := (xml.Name{Space: "http://www.sitemaps.org/schemas/sitemap/0.9", Local: "sitemapindex"}); index.XMLName != want || len(index.Files) < 3 || len(index.Files) > 200 {
		t.Fatalf("the root is %v with %d files", index.XMLName, len(index.Files))
	}
	seen := map[string]bool{}
	for _, f := range index.Files {
		name, beside := strings.CutPrefix(f.Loc, "https://joints.example.org/sub/")
		if !beside || strings.Contains(name, "/") || !isSitemap(name) || !regexp.MustCompile(`^[a-z0-9._~-]+$`).MatchString(name) {
			t.Errorf("a part at %q", f.Loc)
		}
		var list struct {
			XMLName xml.Name `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 urlset"`
			URL     []struct {
				Loc string `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 loc"`
			} `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 url"`
		}
		if err := xml.Unmarshal(files[name], &list); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		if len(list.URL) > sitemapPages || len(list.URL) > 50_000 || len(files[name]) > 50<<20 {
			t.Errorf("%s lists %d pages in %d bytes", name, len(list.URL), len(files[name]))
		}
		for _, u := range list.URL {
			if seen[u.Loc] {
				t.Errorf("%s is listed twice", u.Loc)
			}
			seen[u.Loc] = true
		}
	}
	if len(seen) != 25_001 || len(files) != len(index.Files)+1 {
		t.Errorf("%d pages in %d files, of which the index names %d", len(seen), len(files), len(index.Files))
	}
	changed := 0
	for name, content := range manyPages(t, "2026-11-28") {
		if !bytes.Equal(files[name], content) {
			changed++
		}
	}
	if changed != 2 {
		t.Errorf("one date changes %d files: that of its page, and the index", changed)
	}
}
