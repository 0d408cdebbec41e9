package content

import (
	"net/url"
	"strings"
	"testing"

	"golang.org/x/net/html"
	"pgregory.net/rapid"
)

// asBrowser is the scheme a browser finds in an address, by the first steps of the basic
// URL parser (URL Standard, 4.4): control characters and blanks at the ends go, tabs and
// line ends go everywhere; "" for an address without one, "//" for one that names a host.
func asBrowser(href string) string {
	href = strings.TrimFunc(href, func(r rune) bool { return r <= ' ' })
	href = strings.NewReplacer("\t", "", "\n", "", "\r", "", `\`, "/").Replace(href)
	if strings.HasPrefix(href, "//") {
		return "//"
	}
	for i, r := range href {
		switch {
		case 'a' <= r && r <= 'z', 'A' <= r && r <= 'Z':
		case i > 0 && ('0' <= r && r <= '9' || strings.ContainsRune("+-.", r)):
		case i > 0 && r == ':':
			return strings.ToLower(href[:i])
		default:
			return ""
		}
	}
	return ""
}

// checkPage fails when a page made from Markdown has a link that a browser would follow
// by another scheme than the four, or an element that Markdown cannot make.
func checkPage(t interface{ Errorf(string, ...any) }, source string) (refusals int) {
	page, problems := Parse("extra.md", []byte("---\ntitle: T\nabout: A.\n---\n\n"+source+"\n"), Options{})
	for _, p := range problems {
		if p.Rule == "forbidden-link" {
			refusals++
		}
	}
	if page == nil {
		return refusals
	}
	z := html.NewTokenizer(strings.NewReader(string(page.HTML)))
	for z.Next() != html.ErrorToken {
		token := z.Token()
		if token.Type == html.TextToken || token.Type == html.CommentToken {
			continue
		}
		if token.Data == "script" || token.Data == "iframe" || token.Data == "style" {
			t.Errorf("%q became <%s>", source, token.Data)
		}
		for _, a := range token.Attr {
			if strings.HasPrefix(a.Key, "on") || a.Key == "style" {
				t.Errorf("%q became the attribute %s", source, a.Key)
			}
			if a.Key != "href" && a.Key != "src" {
				continue
			}
			switch scheme := asBrowser(a.Val); scheme {
			case "", "http", "https", "mailto", "tel":
			default:
				t.Errorf("%q became a link by %q: %q", source, scheme, a.Val)
			}
		}
	}
	return refusals
}

// Every way known to hide a scheme: letters of either case, control characters before
// and inside it, entities by name and number, escapes, a host without a scheme.
func TestHostileLinks(t *testing.T) {
	addresses := []string{
		"javascript:alert(1)", "JaVaScRiPt:alert(1)", "vbscript:msgbox(1)", "data:text/html,alert(1)",
		"data:image/svg+xml;base64,PHN2Zy8+", "file:///etc/passwd", "blob:https://example.org/x", "about:blank", "intent://x#Intent;end",
		"view-source:https://example.org/", "filesystem:https://example.org/", "ftp://example.org/", "sms:+15550100",
		"java\tscript:alert(1)", "java\rscript:alert(1)", "\tjavascript:alert(1)", "\x01javascript:alert(1)", "\x1fjavascript:alert(1)",
		"\x00javascript:alert(1)", "java\x00script:alert(1)", " javascript:alert(1)", "\u00a0javascript:alert(1)", "javascript\t:alert(1)",
		"&#106;avascript:alert(1)", "&#x6A;avascript:alert(1)", "&#x000006a;avascript:alert(1)", "javascript&colon;alert(1)", "javascript&#58;alert(1)",
		"java&Tab;script:alert(1)", "java&#9;script:alert(1)", "java&NewLine;script:alert(1)", "&#1;javascript:alert(1)", "\\javascript:alert(1)", "javascript\\:alert(1)",
		"//other.example/", "/\\other.example/", "\\\\other.example/", "/\t/other.example/", "&sol;&sol;other.example/", "/&#9;/other.example/", "\x01//other.example/",
	}
	for _, address := range addresses {
		for _, form := range []string{"[a](<%>)", "[a](%)", "![a](<%>)", "[a][b]\n\n[b]: <%>", "[a][b]\n\n[b]: %", "<%>", "| a |\n|---|\n| [a](<%>) |"} {
			checkPage(t, strings.ReplaceAll(form, "%", address))
		}
		if n := checkPage(t, "[a](<"+address+">)"); n == 0 && asBrowser(html.UnescapeString(address)) != "" {
			t.Errorf("the link to %q is not reported", address)
		}
	}
	for _, address := range []string{"https://example.org/a?b=c&d#e", "http://example.org", "mailto:a@example.org", "tel:+15550100", "/chart/", "../cap/", "#float"} {
		if n := checkPage(t, "[a](<"+address+">)"); n != 0 {
			t.Errorf("the link to %q is refused", address)
		}
	}
}

// Whatever is written as a link, a browser follows it by one of the four schemes or
// inside the site.
func TestAnyLink(t *testing.T) {
	piece := rapid.SampledFrom([]string{"javascript", "JAVASCRIPT", "data", "vbscript", ":", "&colon;", "&#58;", "&#x3a;", "\t", "&Tab;", "\r", "\x01", "\x00", " ", "\\", "/", "//", "&sol;",
		"https", "tel", "mailto", "@", "#", "?", "(", ")", "<", ">", "\"", "'", "a", "%0a", "%3a", "&", ";", "\u2028", "ſ", "K"})
	rapid.Check(t, func(t *rapid.T) {
		address := strings.Join(rapid.SliceOfN(piece, 1, 9).Draw(t, "pieces"), "")
		form := rapid.SampledFrom([]string{"[a](<%>)", "[a](%)", "![a](%)", "[a]: %\n\n[a]", "<%>"}).Draw(t, "form")
		checkPage(t, strings.ReplaceAll(form, "%", address))
	})
}

// The helper above must know what it is asked to find.
func TestAsBrowser(t *testing.T) {
	for href, want := range map[string]string{"java\nscript:x": "javascript", " \x01JAVASCRIPT:x": "javascript", "/a:b": "", "a/b:c": "", "#a:b": "", "//x": "//", "/\t/x": "//", `\\x`: "//", "tel:1": "tel", "%6aavascript:x": ""} {
		if got := asBrowser(href); got != want {
			t.Errorf("asBrowser(%q) = %q, want %q", href, got, want)
		}
	}
	if u, err := url.Parse("mailto:a@example.org"); err != nil || u.Scheme != asBrowser("mailto:a@example.org") {
		t.Errorf("net/url thinks otherwise: %v, %v", u, err)
	}
}
