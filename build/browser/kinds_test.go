//go:build browser

package browser

import (
	"bytes"
	"cmp"
	"slices"
	"strings"
	"sync"
	"testing"

	"golang.org/x/net/html"

	"capspan/build"
)

// kinds has one address for each kind of page there is. Nobody keeps the list: a kind is
// what a page shows that no other shows, so pages are taken until every sort of element
// of any page is on one of them. A new sort of page brings itself in.
func kinds(t testing.TB) []string {
	t.Helper()
	list := cover()
	if len(list) < 10 {
		t.Fatalf("%d kinds of pages: %v", len(list), list)
	}
	return list
}

// cover takes, again and again, the page that shows most of what is not yet shown. Big
// pages are taken for much that is new only: axe is slow on them.
var cover = sync.OnceValue(func() []string { return coverOf(site, "") })

// coverOf does so for the pages of one language, in that folder.
func coverOf(out build.Output, folder string) []string {
	type page struct {
		address string
		sorts   map[string]bool
		size    int
	}
	var pages []page
	missing := map[string]bool{}
	for _, f := range out.Files {
		if !strings.HasSuffix(f.Path, "index.html") || !strings.HasPrefix(f.Path, folder) {
			continue
		}
		if strings.HasSuffix(f.Path, "embed/frame/index.html") {
			continue // what is round it is another page's, and all of it stands in a shadow: the tests of the finder
		}
		p := page{address: "/" + strings.TrimSuffix(f.Path, "index.html"), sorts: map[string]bool{}, size: len(f.Bytes)}
		doc, err := html.Parse(bytes.NewReader(f.Bytes))
		if err != nil {
			continue // from memory; TestValidHTML says what is wrong with it
		}
		for n := range doc.Descendants() {
			if n.Type == html.ElementNode && (n.Namespace == "" || n.Data == "svg") && n.Data != "link" && n.Data != "meta" {
				p.sorts[sortOf(n)], missing[sortOf(n)] = true, true
			}
		}
		pages = append(pages, p)
	}
	var list []string
	for len(missing) > 0 {
		worth := func(p page) float64 {
			fresh := 0
			for s := range p.sorts {
				if missing[s] {
					fresh++
				}
			}
			return float64(fresh) / float64(20_000+p.size)
		}
		best := slices.MaxFunc(pages, func(a, b page) int { return cmp.Compare(worth(a), worth(b)) })
		for s := range best.sorts {
			delete(missing, s)
		}
		list = append(list, best.address)
	}
	slices.Sort(list)
	return list
}

// sortOf is what tells one sort of element from another: its name, its classes, what it
// is to those who do not see it, and the script's hooks, which bring it to life.
func sortOf(n *html.Node) string {
	sort := []string{n.Data}
	for _, a := range n.Attr {
		switch {
		case a.Key == "class", a.Key == "role", a.Key == "type":
			sort = append(sort, a.Key+"="+a.Val)
		case strings.HasPrefix(a.Key, "data-") && n.Data != "tr":
			sort = append(sort, a.Key)
		}
	}
	slices.Sort(sort)
	return strings.Join(sort, " ")
}
