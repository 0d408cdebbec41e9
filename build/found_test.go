package build

import (
	"bytes"
	"encoding/xml"
	"image/png"
	"io/fs"
	"net/url"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

const web = "https://joints.example.org"

// published builds the shipped site as a keeper's who said where it is.
func published(t *testing.T, opt Options) Output {
	t.Helper()
	out, problems := siteOf(t, keptAt(t, web), opt)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return out
}

func keptAt(t *testing.T, web string) Sources {
	t.Helper()
	shipped, err := fs.ReadFile(inEnglish().Content, keeperFile)
	if err != nil {
		t.Fatal(err)
	}
	return spoiled(t, map[string]string{keeperFile: string(shipped) + "web: " + web + "\n"})
}

// tags are the elements of a page with their attributes, in order.
func tags(page []byte) []html.Token {
	var list []html.Token
	z := html.NewTokenizer(bytes.NewReader(page))
	for {
		switch z.Next() {
		case html.ErrorToken:
			return list
		case html.StartTagToken, html.SelfClosingTagToken:
			list = append(list, z.Token())
		}
	}
}

func attr(t html.Token, key string) string {
	for _, a := range t.Attr {
		if a.Key == key {
			return a.Val
		}
	}
	return ""
}

// named finds what the head says under a name: of a meta its content, of a link its address.
func named(list []html.Token, element, key, value string) []string {
	var found []string
	for _, t := range list {
		if t.Data != element || attr(t, key) != value {
			continue
		}
		if element == "link" {
			found = append(found, attr(t, "href"))
		} else {
			found = append(found, attr(t, "content"))
		}
	}
	return found
}

// one is for what must be there once.
func one(t *testing.T, page, what string, found []string) string {
	t.Helper()
	if len(found) != 1 || found[0] == "" {
		t.Errorf("%s: %s: got %q, want one", page, what, found)
		return ""
	}
	return found[0]
}

func htmlPages(files map[string][]byte) []string {
	var names []string
	for name := range files {
		if strings.HasSuffix(name, ".html") {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	return names
}

// sheets are the pages but for the finder's, which stand in frames: what is round them is
// another page's.
func sheets(files map[string][]byte) []string {
	return slices.DeleteFunc(htmlPages(files), func(name string) bool { return strings.HasSuffix(name, embedFrame+"index.html") })
}

// Every page there is tells who does not read it what it is: its language and its
// description; its one address (RFC 6596) unless it is not to be found; and the four
// properties that the Open Graph protocol requires (ogp.me: title, type, image, url).
func TestHeads(t *testing.T) {
	for _, base := range []string{"/", "/sub/path/"} {
		t.Run(base, func(t *testing.T) {
			out := published(t, Options{Base: base, Previews: true})
			files := contents(out)
			listed := sitemap(t, files)
			abouts, pictures, found := map[string]string{}, map[string]string{}, 0
			for _, name := range htmlPages(files) {
				list := tags(files[name])
				address := web + base + strings.TrimSuffix(name, "index.html")
				if got := attr(list[0], "lang"); got != "en" {
					t.Errorf("%s: the language is %q", name, got)
				}
				about := one(t, name, "description", named(list, "meta", "name", "description"))
				if colours := named(list, "meta", "name", "theme-color"); len(colours) != 2 && name != embedFrame+"index.html" {
					t.Errorf("%s: theme colours %q", name, colours)
				}
				_, inSitemap := listed[address]
				delete(listed, address)
				if hidden := named(list, "meta", "name", "robots"); len(hidden) > 0 {
					if hidden[0] != "noindex" || inSitemap || !slices.ContainsFunc([]string{"404.html", "not-kept.html", "paper/index.html", embedFrame + "index.html"}, func(end string) bool { return strings.HasSuffix(name, end) }) {
						t.Errorf("%s is hidden by %q; in the sitemap: %v", name, hidden, inSitemap)
					}
					continue
				}
				found++
				if !inSitemap {
					t.Errorf("%s is not in the sitemap", name)
				}
				if before := abouts[about]; before != "" {
					t.Errorf("%s and %s have one description: %s", name, before, about)
				}
				abouts[about] = name
				if got := one(t, name, "canonical", named(list, "link", "rel", "canonical")); got != address {
					t.Errorf("%s: the canonical link is %q, want %q", name, got, address)
				}
				og := map[string]string{}
				for _, property := range []string{"og:title", "og:type", "og:image", "og:url", "og:description"} {
					og[property] = one(t, name, property, named(list, "meta", "property", property))
				}
				if og["og:url"] != address || og["og:description"] != about {
					t.Errorf("%s: the preview says %v", name, og)
				}
				picture, inside := strings.CutPrefix(og["og:image"], web+base)
				config, err := png.DecodeConfig(bytes.NewReader(files[picture]))
				if !inside || err != nil || config.Width != 1200 || config.Height != 630 {
					t.Errorf("%s: the picture %q: %v, %+v", name, og["og:image"], err, config)
				}
				if row := strings.HasPrefix(name, "joint/"); row {
					if before := pictures[picture]; before != "" {
						t.Errorf("%s and %s have one picture", name, before)
					}
					pictures[picture] = name
				}
			}
			for address := range listed {
				t.Errorf("the sitemap names %s, which is no page", address)
			}
			if found < 150 || len(pictures) < 130 {
				t.Errorf("%d pages to be found, %d pictures of rows", found, len(pictures))
			}
		})
	}
}

// sitemap reads the sitemap by the rules of sitemaps.org: its namespace, full addresses
// under its own place, dates as W3C writes them, no more than 50,000.
func sitemap(t *testing.T, files map[string][]byte) map[string]string {
	t.Helper()
	var read struct {
		XMLName xml.Name
		URL     []struct {
			Loc     string `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 loc"`
			LastMod string `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 lastmod"`
		} `xml:"http://www.sitemaps.org/schemas/sitemap/0.9 url"`
	}
	if err := xml.Unmarshal(files["sitemap.xml"], &read); err != nil {
		t.Fatal(err)
	}
	if want := (xml.Name{Space: "http://www.sitemaps.org/schemas/sitemap/0.9", Local: "urlset"}); read.XMLName != want || len(read.URL) > 50_000 {
		t.Errorf("the root is %v with %d addresses", read.XMLName, len(read.URL))
	}
	listed := map[string]string{}
	for _, u := range read.URL {
		if _, twice := listed[u.Loc]; twice {
			t.Errorf("the sitemap has %s twice", u.Loc)
		}
		if parsed, err := url.Parse(u.Loc); err != nil || parsed.Scheme+"://"+parsed.Host != web {
			t.Errorf("the sitemap has the address %q", u.Loc)
		}
		if u.LastMod != "" && !regexp.MustCompile(`^\d{4}-\d\d-\d\d$`).MatchString(u.LastMod) {
			t.Errorf("%s: the date is %q", u.Loc, u.LastMod)
		}
		listed[u.Loc] = u.LastMod
	}
	return listed
}

// No page shows the pictures of previews, so no device keeps them.
func TestPreviewsAreNotKept(t *testing.T) {
	files := contents(published(t, Options{Previews: true}))
	worker := string(files[workerName])
	if worker == "" || strings.Contains(worker, previewFolder) {
		t.Error("there is no worker, or it keeps the pictures of previews")
	}
}

// A site that does not know its address names none.
func TestNoAddressKnown(t *testing.T) {
	files := contents(mustSite(t, Options{Previews: true}))
	for _, name := range []string{sitemapName, robotsName, openSearchName} {
		if files[name] != nil {
			t.Errorf("%s is written", name)
		}
	}
	for _, name := range htmlPages(files) {
		for _, tag := range tags(files[name]) {
			if attr(tag, "rel") == "canonical" || attr(tag, "rel") == "search" || strings.HasPrefix(attr(tag, "property"), "og:") {
				t.Errorf("%s: %v", name, tag)
			}
		}
	}
	for name := range files {
		if strings.HasPrefix(name, previewFolder) {
			t.Errorf("%s is drawn for nobody", name)
		}
	}
}

// Under serve nothing is drawn for others.
func TestNoPreviewsUnderServe(t *testing.T) {
	for name := range contents(published(t, Options{Live: "/live"})) {
		if strings.HasPrefix(name, previewFolder) {
			t.Errorf("%s is drawn", name)
		}
	}
}

// RFC 9309: the file lies at the root of the host, with groups of user-agent and rules;
// sitemaps.org: a line "Sitemap:" with a full address.
func TestRobots(t *testing.T) {
	files := contents(published(t, Options{}))
	if got, want := string(files["robots.txt"]), "User-agent: *\nAllow: /\n\nSitemap: "+web+"/sitemap.xml\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	if contents(published(t, Options{Base: "/sub/"}))["robots.txt"] != nil {
		t.Error("written where no crawler asks for it")
	}
}

// OpenSearch 1.1 draft 6: ShortName of at most 16 characters, Description of at most
// 1024, and a Url whose template holds {searchTerms}.
func TestOpenSearch(t *testing.T) {
	const space = "http://a9.com/-/spec/opensearch/1.1/"
	files := contents(published(t, Options{Base: "/sub/"}))
	var read struct {
		XMLName     xml.Name
		ShortName   string `xml:"http://a9.com/-/spec/opensearch/1.1/ ShortName"`
		Description string `xml:"http://a9.com/-/spec/opensearch/1.1/ Description"`
		URL         []struct {
			Type     string `xml:"type,attr"`
			Template string `xml:"template,attr"`
		} `xml:"http://a9.com/-/spec/opensearch/1.1/ Url"`
	}
	if err := xml.Unmarshal(files["opensearch.xml"], &read); err != nil {
		t.Fatal(err)
	}
	if read.XMLName != (xml.Name{Space: space, Local: "OpenSearchDescription"}) || len(read.URL) != 1 {
		t.Fatalf("got %+v", read)
	}
	if n := len(read.ShortName); n == 0 || n > 16 || strings.ContainsAny(read.ShortName+read.Description, "<>&") {
		t.Errorf("the short name is %q, the description %q", read.ShortName, read.Description)
	}
	if n := len(read.Description); n == 0 || n > 1024 {
		t.Errorf("the description has %d characters", n)
	}
	u := read.URL[0]
	page, rest, _ := strings.Cut(u.Template, "#")
	inside, ours := strings.CutPrefix(page, web+"/sub/")
	if u.Type != "text/html" || rest != "q={searchTerms}" || !ours || files[path.Join(inside, "index.html")] == nil {
		t.Errorf("the address %q of type %q leads to no page of ours", u.Template, u.Type)
	}
	for _, name := range sheets(files) {
		if got := one(t, name, "search", named(tags(files[name]), "link", "rel", "search")); got != "/sub/opensearch.xml" {
			t.Errorf("%s: the description is at %q", name, got)
		}
	}
}
