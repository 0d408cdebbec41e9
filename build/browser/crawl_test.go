//go:build browser

package browser

import (
	"net/url"
	"path"
	"strings"
	"testing"
)

// link is an address on a page, as the browser resolved it.
type link struct {
	From, To string
}

// found is what one page holds.
type found struct {
	IDs    []string
	Links  []string
	Assets []string
	Title  string
	Heads  int  // h1
	Inline bool // a script, a style or a handler inside the page
}

const look = `({
	IDs: [...document.querySelectorAll("[id]")].map(e => e.id),
	Links: [...document.querySelectorAll("a[href], area[href]")].map(e => e.href.animVal ?? e.href).map(h => new URL(h, document.baseURI).href),
	Assets: [...document.querySelectorAll("link[href], script[src], img[src]")].map(e => e.href || e.src),
	Title: document.title,
	Heads: document.querySelectorAll("h1").length,
	Inline: [...document.querySelectorAll("script")].some(s => !s.src && s.type !== "application/ld+json") || document.querySelector("style, [style]") !== null
		|| [...document.querySelectorAll("*")].some(e => [...e.attributes].some(a => a.name.startsWith("on"))),
})`

// Every page of the site: it loads with everything it asks for, asks nobody else, has
// nothing to complain about on the console, and every link on it leads to a page, a
// file or an id that is there.
func TestEveryPage(t *testing.T) {
	b := openTab(t)
	pages := addresses()
	if len(pages) < 100 {
		t.Fatalf("%d pages, want a page for each of more than a hundred rows", len(pages))
	}
	files := map[string]bool{}
	for _, f := range site.Files {
		files[base+f.Path] = true
	}
	ids := map[string]map[string]bool{} // by path
	var links []link
	titles := map[string]string{}
	for _, address := range pages {
		b.open(address)
		page := see[found](b, look)
		b.calm(address)
		at := strings.TrimSuffix(base, "/") + address
		ids[at] = map[string]bool{}
		for _, id := range page.IDs {
			if ids[at][id] {
				t.Errorf("%s: the id %q is there twice", address, id)
			}
			ids[at][id] = true
		}
		if page.Heads != 1 {
			t.Errorf("%s: %d h1, want 1", address, page.Heads)
		}
		if page.Title == "" || titles[page.Title] != "" {
			t.Errorf("%s: the title %q is also that of %q", address, page.Title, titles[page.Title])
		}
		titles[page.Title] = address
		if page.Inline {
			t.Errorf("%s: a script, style or handler stands in the page itself", address)
		}
		for _, to := range page.Links {
			links = append(links, link{From: address, To: to})
		}
		for _, to := range page.Assets {
			links = append(links, link{From: address, To: to})
		}
	}
	outside := 0
	for _, l := range links {
		to, err := url.Parse(l.To)
		if err != nil {
			t.Errorf("%s: %q is no address: %v", l.From, l.To, err)
			continue
		}
		if to.Scheme+"://"+to.Host != origin {
			if to.Scheme != "https" && to.Scheme != "http" && to.Scheme != "mailto" && to.Scheme != "sms" && to.Scheme != "data" {
				t.Errorf("%s: a link by %q: %s", l.From, to.Scheme, l.To)
			}
			outside++
			continue
		}
		file := to.Path
		if strings.HasSuffix(file, "/") {
			file += "index.html"
		}
		if !files[file] {
			t.Errorf("%s: %s leads nowhere", l.From, l.To)
			continue
		}
		// The fragments of these pages are what they are asked.
		if to.Fragment != "" && to.Path != path.Join(base, "identify")+"/" && to.Path != path.Join(base, "measure/card")+"/" && to.Path != path.Join(base, "send")+"/" && to.Path != path.Join(base, "contribute/correct")+"/" && to.Path != path.Join(base, "order")+"/" && !ids[to.Path][to.Fragment] {
			t.Errorf("%s: %s has no such place", l.From, l.To)
		}
	}
	t.Logf("%d pages, %d links and assets, %d of them out of the site", len(pages), len(links), outside)
}
