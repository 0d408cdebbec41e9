package build

import (
	"html"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"
)

// hostileWords stand in this test wherever a contributor's or a keeper's words can.
const hostileWords = `</script></title><img src=x onerror=alert(1)>"' javascript:alert(1)`

// hostileSources are the shipped ones with hostile words in titles, notes, sources,
// places, pages and the keeper's details.
func hostileSources(t *testing.T) Sources {
	t.Helper()
	quoted := "'" + strings.ReplaceAll(hostileWords, "'", "''") + "'"
	src := spoiled(t, map[string]string{
		keeperFile: "name: " + quoted + "\naddress: " + quoted + "\nweb: " + web + "\n",
		"extra.md": "---\ntitle: " + quoted + "\nabout: " + quoted + "\n---\n\n::: step " + hostileWords + "\nWords.\n:::\n\n[a](tel:+15550100)\n",
	})
	tables := mapped(t, src.Tables)
	words := regexp.MustCompile(`(?m)^(\s*(?:- )?(?:title|about|publisher|edition|where|trust|note|why): ).*$`)
	for _, file := range tables {
		file.Data = words.ReplaceAll(file.Data, []byte("${1}"+strings.ReplaceAll(quoted, "$", "$$")))
	}
	tables["hostile.yaml"] = &fstest.MapFile{Data: []byte(strings.NewReplacer("WORDS", quoted).Replace(`table: hostile
title: WORDS
about: WORDS
version: 1.0.0
date: 2026-11-25
cautions: [WORDS]
columns:
  said: {label: WORDS, kind: text}
  also-said: {label: WORDS, kind: text}
rows:
  - id: hostile-row
    also: [WORDS]
    said: {is: WORDS, basis: published, source: [etma], at: WORDS, others: [{is: WORDS, basis: memory}]}
    also-said: {is: "=cmd()", basis: memory}
    note: WORDS
`))}
	src.Tables = tables
	return src
}

// Words from tables, pages and the keeper stay words in every place they reach, the head
// and the JSON-LD among them: every page has the elements of the shipped one, no address
// leaves by another scheme than the four, and the words come out as they went in.
func TestHostileWords(t *testing.T) {
	src := hostileSources(t)
	out, problems := siteOf(t, src, Options{Previews: true})
	checkFinds(t, src, problems)
	for _, p := range problems {
		t.Error(p)
	}
	files := contents(out)
	if len(files) == 0 {
		t.Fatalf("nothing was built: %v", problems)
	}
	reached := 0
	for _, name := range htmlPages(files) {
		page := files[name]
		if strings.Contains(string(page), "ZgotmplZ") {
			t.Errorf("%s has a value that was refused where it stands", name)
		}
		for _, tag := range tags(page) {
			if tag.Data == "img" && attr(tag, "src") == "x" || tag.Data == "iframe" {
				t.Errorf("%s: words became <%s>", name, tag.Data)
			}
			for _, a := range tag.Attr {
				if strings.HasPrefix(a.Key, "on") {
					t.Errorf("%s: words became the attribute %s of <%s>", name, a.Key, tag.Data)
				}
				if a.Val == hostileWords {
					reached++
				}
				switch a.Key {
				case "href", "src", "action", "formaction", "xlink:href":
					checkScheme(t, name, a.Val)
				}
			}
		}
		if data := linkedData(t, name, page); data != nil {
			checkTerms(t, name, data, web)
			if name == "extra/index.html" && (data["name"] != hostileWords || data["description"] != hostileWords) {
				t.Errorf("%s: the JSON-LD reads back as %v", name, data)
			}
		}
	}
	page := string(files["chart/hostile/index.html"])
	if shown := strings.Count(page, html.EscapeString(hostileWords)); shown < 8 {
		t.Errorf("the words stand %d times on the page of a table that holds little else", shown)
	}
	if sheet := string(files["data/hostile.csv"]); !strings.Contains(sheet, "'=cmd()") {
		t.Errorf("a sheet program would run the CSV: %s", sheet)
	}
	if reached == 0 {
		t.Error("the words reached no attribute: the test looks at nothing")
	}
}

var schemeForm = regexp.MustCompile(`^[a-z][a-z0-9+.-]*:`)

// checkScheme looks at an address as a browser does (URL Standard, 4.4).
func checkScheme(t *testing.T, name, address string) {
	t.Helper()
	seen := strings.NewReplacer("\t", "", "\n", "", "\r", "", `\`, "/").Replace(strings.ToLower(address))
	seen = strings.TrimFunc(seen, func(r rune) bool { return r <= ' ' })
	scheme := schemeForm.FindString(seen)
	switch scheme {
	case "", "http:", "https:", "mailto:", "tel:":
	default:
		t.Errorf("%s: the address %q leaves by %s", name, address, scheme)
	}
	if strings.HasPrefix(seen, "//") {
		t.Errorf("%s: the address %q names a host without a scheme", name, address)
	}
}

// Every page that ships, looked at the same way.
func TestSchemesOnEveryPage(t *testing.T) {
	files := contents(published(t, Options{}))
	for _, name := range htmlPages(files) {
		if strings.Contains(string(files[name]), "ZgotmplZ") {
			t.Errorf("%s has a value that was refused where it stands", name)
		}
		for _, tag := range tags(files[name]) {
			for _, a := range tag.Attr {
				if a.Key == "href" || a.Key == "src" || a.Key == "action" || a.Key == "formaction" {
					checkScheme(t, name, a.Val)
				}
			}
		}
	}
}

// The keeper's details that become links are refused unless they are what they say.
func TestHostileKeeper(t *testing.T) {
	for _, bad := range []string{
		"phone: javascript:alert(1)", "phone: \"+1 555 0100\\u0001\"", "phone: \"+15550100;ext=javascript:x\"", "phone: data:text/html,1",
		"mail: javascript:alert(1)@example.org", "mail: \"a@example.org?subject=x\"", "mail: \"a@example.org%0aBcc:b@example.org\"", "mail: \"<script>@example.org\"", "mail: \"a@example.org\\u0001\"",
		"web: javascript:alert(1)", "web: data:text/html,1", "web: vbscript:x", "web: http://example.org", "web: https://example.org/joints/", "web: https://example.org/",
		"web: \"https://example.org\\u0001\"", "web: \"https://a@example.org\"", "web: \"https://example.org?x\"", "web: \"https://example.org#x\"", "web: \"https://\"><script>\"",
		"web: \" https://example.org\"", "web: //example.org", "web: https&colon;//example.org", "web: https://EXAMPLE.org", "web: https://-a.example.org", "web: https://localhost",
	} {
		_, problems := loadKeeper(fstest.MapFS{keeperFile: {Data: []byte(bad + "\n")}})
		if !problems.Blocked() {
			t.Errorf("%s is taken", bad)
		}
	}
	for _, good := range []string{"web: https://example.org", "web: https://joints.example.co.uk", "web: https://xn--bcher-kva.example:8443"} {
		k, problems := loadKeeper(fstest.MapFS{keeperFile: {Data: []byte(good + "\n")}})
		if problems.Blocked() || "web: "+k.Web != good {
			t.Errorf("%s: %+v, %v", good, k, problems)
		}
	}
}
