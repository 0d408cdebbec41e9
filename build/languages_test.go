package build

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
	"golang.org/x/net/html"

	"capspan/build/pseudo"
	"capspan/content"
)

// other is the folder of the made-up language.
const other = pseudo.Language + "/"

// bilingual are the shipped sources with a made-up language beside English.
func bilingual(t testing.TB, lines ...string) Sources {
	t.Helper()
	src := inEnglish()
	src.Content = must(pseudo.Folder(content.FS, lines...))
	return src
}

// bilingualSite is built once for all tests that only look at it.
var bilingualSite = sync.OnceValues(func() (Output, error) {
	folder, err := pseudo.Folder(content.FS, "web: https://joints.example.org")
	if err != nil {
		return Output{}, err
	}
	src := inEnglish()
	src.Content = folder
	out, problems := Site(src, Options{Base: "/sub/"})
	if len(problems) > 0 {
		return Output{}, errors.New(fmt.Sprint(problems))
	}
	return out, nil
})

func mustBilingual(t testing.TB) Output {
	t.Helper()
	out, err := bilingualSite()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// A second language is a folder of words and no code. What a reader is told without an
// accent came past it.
func TestSecondLanguage(t *testing.T) {
	files := contents(mustBilingual(t))
	say := pseudo.Words
	for name, want := range map[string][]string{
		"index.html":                   {`lang="qaa"`, ">" + say("Chart") + "</a>", `aria-label="` + say("Main") + `"`, say("A joint and a caliper"), "] íín ["},
		"joint/1310/index.html":        {say("clip outside"), `basis--common-practice">` + say("common practice"), `aria-label="` + say("Title block") + `"`},
		"chart/joints-inch/index.html": {say("Find a row: a word, or a size"), say("over the caps")},
		"measure/cap/index.html":       {`<a href="/sub/qaa/send/#take=cap">` + pseudo.Prose("Send them a link") + `</a>`},
		"identify/index.html":          {`placeholder="` + say("next reading") + `"`, say("Digital caliper"), say("groove to groove")},
		"site.webmanifest":             {`"lang": "qaa"`, say("Capspan, a chart of joint sizes"), `"scope": "/sub/qaa/"`, `"start_url": "/sub/qaa/"`},
		"opensearch.xml":               {`<Language>qaa</Language>`, "https://joints.example.org/sub/qaa/search/#q={searchTerms}"},
		"changes/feed.atom":            {"https://joints.example.org/sub/qaa/changes/"},
	} {
		for _, w := range want {
			if !strings.Contains(string(files[other+name]), w) {
				t.Errorf("%s lacks %q", other+name, w)
			}
		}
	}
	said := pseudo.Prose("Please measure a joint")
	if !slices.ContainsFunc(slices.Collect(maps.Keys(files)), func(name string) bool {
		return strings.HasPrefix(name, "assets/send.") && strings.Contains(string(files[name]), said)
	}) {
		t.Errorf("no script says %q", said)
	}
}

// One language of two is made as it is made alone, and neither changes the other.
func TestLanguagesApart(t *testing.T) {
	both := contents(mustBilingual(t))
	src := inEnglish()
	src.Content = spokenHere(t, "web: https://joints.example.org\n")
	alone := contents(mustSiteOf(t, src, Options{Base: "/sub/"}))
	for name, content := range alone {
		if ext := path.Ext(name); ext == ".html" || name == workerName || name == sitemapName || strings.HasPrefix(name, "hosting/") || name == sumsName || name[0] == '_' ||
			name == embedScript || strings.HasPrefix(name, "assets/embed.") {
			continue // these name the other language
		}
		if !bytes.Equal(both[name], content) {
			t.Errorf("%s is not what it is in one language", name)
		}
	}
	// What no language has for itself lies at the root, once.
	for name := range both {
		rest, inside := strings.CutPrefix(name, other)
		if inside && (strings.HasPrefix(rest, "assets/") || strings.HasPrefix(rest, dataFolder) || strings.HasPrefix(rest, schemaFolder) || both[rest] == nil) {
			t.Errorf("%s lies in the folder of a language", name)
		}
		if _, twin := both[other+name]; strings.HasSuffix(name, ".html") && !inside && !twin {
			t.Errorf("%s is there in English only", name)
		}
	}
	for _, kind := range []string{"sheet.", "more.", "live.", "icon-192."} {
		n := 0
		for name := range both {
			if strings.HasPrefix(name, "assets/"+kind) {
				n++
			}
		}
		if n > 1 {
			t.Errorf("%d files %s, though no word is in them", n, kind)
		}
	}
}

// spokenHere is the folder content with other details of its keeper.
func spokenHere(t testing.TB, details string) fs.FS {
	t.Helper()
	folder := mapped(t, inEnglish().Content)
	folder[keeperFile] = &fstest.MapFile{Data: append(slices.Clone(folder[keeperFile].Data), "\n"+details...)}
	return folder
}

func mustSiteOf(t testing.TB, src Sources, opt Options) Output {
	t.Helper()
	out, problems := siteOf(t, src, opt)
	if problems.Blocked() {
		t.Fatalf("problems:\n%v", problems)
	}
	return out
}

// Every page leads by a plain link to itself in the other language, and that page back;
// with an address of its own the site says the same to search engines, in the head and in
// the sitemap, where each page names all others and itself (sitemaps.org, xhtml:link).
func TestLanguageLinks(t *testing.T) {
	out := mustBilingual(t)
	files := contents(out)
	const web = "https://joints.example.org"
	alternates := map[string]map[string]string{}
	count := 0
	for _, name := range sheets(files) {
		address := "/sub/" + strings.TrimSuffix(name, "index.html")
		language, twin := "qaa", "/sub/"+other+strings.TrimPrefix(address, "/sub/")
		if strings.HasPrefix(name, other) {
			language, twin = "en", "/sub/"+strings.TrimPrefix(address, "/sub/"+other)
		}
		if strings.HasSuffix(name, "404.html") || strings.HasSuffix(name, notKeptName) {
			twin = twin[:strings.LastIndexByte(twin, '/')+1] // they are shown at any address
		}
		var links []string
		mine := map[string]string{}
		for _, tag := range tags(files[name]) {
			switch {
			case tag.Data == "a" && attr(tag, "hreflang") != "":
				links = append(links, attr(tag, "hreflang")+" "+attr(tag, "href"))
			case tag.Data == "link" && attr(tag, "rel") == "alternate" && attr(tag, "hreflang") != "":
				mine[attr(tag, "hreflang")] = attr(tag, "href")
			case tag.Data == "link" && attr(tag, "rel") == "canonical" && attr(tag, "href") != web+address:
				t.Errorf("%s: canonical is %s", name, attr(tag, "href"))
			}
		}
		if diff := cmp.Diff([]string{language + " " + twin}, links); diff != "" {
			t.Errorf("%s leads to other languages (-want +got):\n%s", name, diff)
		}
		if files[strings.TrimPrefix(pageFile(strings.TrimPrefix(twin, "/sub")), "/")] == nil {
			t.Errorf("%s: %s leads nowhere", name, twin)
		}
		if strings.HasSuffix(name, "index.html") {
			alternates[web+address] = mine
			count++
		}
	}
	if count < 200 {
		t.Fatalf("%d pages", count)
	}
	for address, list := range alternates {
		if len(list) != 3 || list["x-default"] != list["en"] || list["en"] != address && list["qaa"] != address {
			t.Errorf("%s says that it is %v", address, list)
		}
		for _, same := range list {
			if diff := cmp.Diff(list, alternates[same]); diff != "" {
				t.Errorf("%s and %s disagree:\n%s", address, same, diff)
			}
		}
	}
	var sitemap struct {
		Pages []struct {
			Location string `xml:"loc"`
			Links    []struct {
				Language string `xml:"hreflang,attr"`
				Href     string `xml:"href,attr"`
			} `xml:"http://www.w3.org/1999/xhtml link"`
		} `xml:"url"`
	}
	if err := xml.Unmarshal(files[sitemapName], &sitemap); err != nil {
		t.Fatal(err)
	}
	hidden := 0
	for _, p := range sitemap.Pages {
		list := map[string]string{}
		for _, l := range p.Links {
			list[l.Language] = l.Href
		}
		if diff := cmp.Diff(alternates[p.Location], list); diff != "" {
			t.Errorf("sitemap, %s:\n%s", p.Location, diff)
		}
		hidden++
	}
	if hidden < 150 || files[other+sitemapName] != nil || files[other+robotsName] != nil {
		t.Errorf("%d pages in the sitemap", hidden)
	}
}

// The book speaks the language too.
func TestBookOfALanguage(t *testing.T) {
	made, problems := Book(bilingual(t), BookOptions{Language: pseudo.Language})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, want := range []string{`<html lang="qaa"`, ">" + pseudo.Words("The guide") + "<", ` 000)`, `@bottom-left{content:"` + pseudo.Words("Capspan")[:4]} {
		if !strings.Contains(string(made.HTML(nil)), want) {
			t.Errorf("the book lacks %q", want)
		}
	}
}

// A page that one language has alone leads to the front page of the other and says so.
func TestPageOfOneLanguage(t *testing.T) {
	src := bilingual(t, "web: https://joints.example.org")
	folder := src.Content.(fstest.MapFS)
	folder["opening-hours.md"] = &fstest.MapFile{Data: []byte("---\ntitle: Opening hours\nabout: When.\n---\n\nMondays.\n")}
	out, problems := siteOf(t, src, Options{})
	checkFinds(t, src, problems)
	if len(problems) != 1 || problems[0].Rule != "missing-translation" || problems.Blocked() {
		t.Fatalf("problems: %v", problems)
	}
	page := string(contents(out)["opening-hours/index.html"])
	if want := `<a href="/qaa/" hreflang="qaa"><span lang="qaa">` + pseudo.Words("English") + `</span> (front page)</a>`; !strings.Contains(page, want) {
		t.Errorf("the page lacks %s", want)
	}
	if strings.Contains(page, `hreflang="qaa" href=`) {
		t.Error("the head names a page that is not there")
	}
}

// A page of the first language cannot take the folder of another.
func TestFolderOfLanguageIsTaken(t *testing.T) {
	src := bilingual(t)
	folder := src.Content.(fstest.MapFS)
	folder[pseudo.Language+".md"] = &fstest.MapFile{Data: []byte("---\ntitle: T\nabout: A.\n---\n\nText.\n")}
	_, problems := siteOf(t, src, Options{})
	checkFinds(t, src, problems)
	if len(problems) != 2 || problems[0].Rule != "missing-translation" || problems[1].Rule != "address-taken" {
		t.Errorf("problems: %v", problems)
	}
}

// Under serve every language is made, and what is remembered of one is not given to another.
func TestLanguagesUnderWatch(t *testing.T) {
	src := bilingual(t)
	memory := NewMemory()
	first := contents(mustSiteOf(t, src, Options{Live: "/_live", Memory: memory}))
	again := contents(mustSiteOf(t, src, Options{Live: "/_live", Memory: memory}))
	if diff := cmp.Diff(first, again, wholeFiles); diff != "" {
		t.Errorf("a build with a memory differs:\n%.2000s", diff)
	}
	for _, name := range []string{"index.html", other + "index.html", other + workerName} {
		if first[name] == nil {
			t.Errorf("%s is not there", name)
		}
	}
	words := src.Content.(fstest.MapFS)
	changed := strings.Replace(string(words[other+"words/frame.yaml"].Data), pseudo.Words("Chart"), "[Karto]", 1)
	words[other+"words/frame.yaml"] = &fstest.MapFile{Data: []byte(changed)}
	if page := contents(mustSiteOf(t, src, Options{Live: "/_live", Memory: memory}))[other+"index.html"]; !bytes.Contains(page, []byte(">[Karto]</a>")) {
		t.Error("a changed word is not on the page")
	}
}

// Each language has a worker of its own, below its own folder, which keeps its own pages
// and what they share, and none of the other's.
func TestWorkerOfEachLanguage(t *testing.T) {
	files := contents(mustBilingual(t))
	lists := map[string]workerSite{"": workerOf(t, files, workerName), other: workerOf(t, files, other+workerName)}
	for folder, site := range lists {
		kept := map[string]bool{}
		for _, line := range slices.Concat(site.First, site.Rest) {
			_, address, _ := strings.Cut(line, " ")
			kept[address] = true
			if name := strings.TrimSuffix(address, "/"); files[address] == nil && files[path.Join(name, "index.html")] == nil {
				t.Errorf("worker of %q: %q is no file", folder, address)
			}
			if folder == "" && strings.HasPrefix(address, other) {
				t.Errorf("the worker of the root keeps %s", address)
			}
			if ofLanguage := !strings.HasPrefix(address, "assets/") && !strings.HasPrefix(address, dataFolder) && !strings.HasPrefix(address, schemaFolder); folder != "" && ofLanguage && !strings.HasPrefix(address, folder) {
				t.Errorf("the worker of %s keeps %s", folder, address)
			}
		}
		for _, want := range []string{"", "identify/", "joint/1310/", "404.html", notKeptName, webManifestName, recordName} {
			if !kept[folder+want] {
				t.Errorf("the worker of %q does not keep %q", folder, folder+want)
			}
		}
		// All that its pages load lies in the list.
		for _, name := range []string{"index.html", "identify/index.html", "order/index.html", "chart/joints-inch/index.html"} {
			for _, link := range crawl(t, files[folder+name]).links {
				if asset := strings.TrimPrefix(link, "/sub/"); strings.HasPrefix(asset, "assets/") && !kept[asset] {
					t.Errorf("%s loads %s, which its worker does not keep", folder+name, asset)
				}
			}
		}
		if !bytes.Contains(files[folder+"index.html"], []byte(`data-worker="/sub/`+folder+workerName+`"`)) {
			t.Errorf("pages of %q register another worker", folder)
		}
	}
	if lists[""].Root != "" || lists[other].Root != "../" || !slices.Equal(lists[""].Apart, []string{other}) || lists[other].Apart != nil {
		t.Errorf("workers are told %q %v, %q %v", lists[""].Root, lists[""].Apart, lists[other].Root, lists[other].Apart)
	}
}

func workerOf(t *testing.T, files map[string][]byte, name string) workerSite {
	t.Helper()
	list, _, found := bytes.Cut(bytes.TrimPrefix(files[name], []byte("const capspanSite=")), []byte(";\n"))
	var site workerSite
	if err := json.Unmarshal(list, &site); !found || err != nil {
		t.Fatalf("%s starts with %.80q: %v", name, files[name], err)
	}
	return site
}

// All tests that walk pages walk both languages; what they hold English to, they hold the
// other to.
func TestWalkBothLanguages(t *testing.T) {
	files := contents(mustBilingual(t))
	pages := map[string]crawled{}
	titles := map[string]string{}
	for _, name := range sheets(files) {
		pages[name] = crawl(t, files[name])
		doc, err := html.Parse(bytes.NewReader(files[name]))
		if err != nil {
			t.Fatal(err)
		}
		s := structureOf(doc)
		want := "en"
		if strings.HasPrefix(name, other) {
			want = pseudo.Language
		}
		if s.lang != want {
			t.Errorf("%s: the language is %s", name, s.lang)
		}
		s.lang = "en" // faults knows no other
		for _, fault := range s.faults() {
			t.Errorf("%s: %s", name, fault)
		}
		if first, taken := titles[want+s.title]; taken {
			t.Errorf("%s and %s have the title %q", name, first, s.title)
		}
		titles[want+s.title] = name
	}
	for name, page := range pages {
		for id, n := range page.ids {
			if n > 1 || page.h1 != 1 {
				t.Errorf("%s has %d h1, the id %q %d times", name, page.h1, id, n)
			}
		}
		for _, link := range page.links {
			follow(t, "/sub/", name, link, files, pages)
			if target, inside := strings.CutPrefix(link, "/sub/"); inside && path.Ext(target) == "" && strings.HasPrefix(name, other) != strings.HasPrefix(target, other) && !leavesLanguage(files[name], link) {
				t.Errorf("%s leads to %s, in the other language", name, link)
			}
		}
	}
}

// leavesLanguage reports whether a link of the page says that it leads to another language.
func leavesLanguage(page []byte, link string) bool {
	for _, tag := range tags(page) {
		if tag.Data == "a" && attr(tag, "href") == link && attr(tag, "hreflang") != "" {
			return true
		}
	}
	return false
}
