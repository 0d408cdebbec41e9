package build

import (
	"bytes"
	"net/url"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// crawled is what a page says of itself.
type crawled struct {
	ids   map[string]int
	links []string // href and src, as written
	h1    int
	text  string
}

func crawl(t *testing.T, page []byte) crawled {
	t.Helper()
	c := crawled{ids: map[string]int{}}
	z := html.NewTokenizer(bytes.NewReader(page))
	var text strings.Builder
	for {
		switch kind := z.Next(); kind {
		case html.ErrorToken:
			c.text = text.String()
			return c
		case html.TextToken:
			text.Write(z.Text())
		case html.StartTagToken, html.SelfClosingTagToken:
			token := z.Token()
			if token.Data == "h1" {
				c.h1++
			}
			if token.Data == "script" {
				z.Next() // JSON-LD: TestLinkedData reads it
			}
			for _, a := range token.Attr {
				switch {
				case a.Key == "id":
					c.ids[a.Val]++
				case a.Key == "href", a.Key == "src", a.Key == "action", strings.HasPrefix(a.Key, "data-chart") && token.Data != "script": // a script's is the chart's version
					c.links = append(c.links, a.Val)
				case a.Key == "style", strings.HasPrefix(a.Key, "on"):
					t.Errorf("<%s %s> breaks the content security policy", token.Data, a.Key)
				}
			}
		}
	}
}

// TestCrawl walks every page there is, under the root and under a sub-path: each has
// one h1, ids once, nothing left of a template, and every address leads to a file of
// the site and every fragment to an id.
func TestCrawl(t *testing.T) {
	for _, base := range []string{"/", "/sub/path/"} {
		t.Run(base, func(t *testing.T) {
			files := contents(mustSite(t, Options{Base: base}))
			pages := map[string]crawled{}
			for name, content := range files {
				if strings.HasSuffix(name, ".html") {
					pages[name] = crawl(t, content)
				}
			}
			if len(pages) < 133 {
				t.Fatalf("only %d pages", len(pages))
			}
			for name, page := range pages {
				if page.h1 != 1 {
					t.Errorf("%s has %d h1", name, page.h1)
				}
				for id, n := range page.ids {
					if n > 1 {
						t.Errorf("%s has the id %q %d times", name, id, n)
					}
				}
				words := forgesOwn.ReplaceAllString(page.text, "")
				for _, rest := range []string{"{{", "}}", "%!", "<nil>", "ZgotmplZ", "&amp;lt;", "undefined"} {
					if strings.Contains(words, rest) {
						t.Errorf("%s shows %q", name, rest)
					}
				}
				for _, link := range page.links {
					follow(t, base, name, link, files, pages)
				}
			}
		})
	}
}

// forgesOwn is what the files on the page for keepers have of a forge's own language.
var forgesOwn = regexp.MustCompile(`\$\{\{ [^{}]+ \}\}`)

// follow checks one address; only links in words may leave the site.
func follow(t *testing.T, base, name, link string, files map[string][]byte, pages map[string]crawled) {
	t.Helper()
	u, err := url.Parse(link)
	if err != nil {
		t.Errorf("%s: address %q: %v", name, link, err)
		return
	}
	if u.Scheme != "" || u.Host != "" {
		if u.Scheme != "https" && u.Scheme != "http" && u.Scheme != "mailto" && u.Scheme != "tel" {
			t.Errorf("%s: address %q leaves by %q", name, link, u.Scheme)
		}
		return
	}
	from := base + strings.TrimSuffix(name, "index.html")
	target := (&url.URL{Path: from}).ResolveReference(u)
	rest, inside := strings.CutPrefix(target.Path, base)
	if !inside {
		t.Errorf("%s: address %q is outside the base %s", name, link, base)
		return
	}
	file := rest
	if strings.HasSuffix(file, "/") || file == "" {
		file = path.Join(file, "index.html")
	}
	if _, there := files[file]; !there {
		t.Errorf("%s: address %q leads to no file", name, link)
		return
	}
	if readers := []string{"identify/index.html", "send/index.html", "contribute/correct/index.html", "order/index.html"}; target.Fragment != "" &&
		!slices.Contains(readers, strings.TrimPrefix(file, other)) && pages[file].ids[target.Fragment] == 0 {
		t.Errorf("%s: address %q: no such place on the page", name, link)
	}
}
