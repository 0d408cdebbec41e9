package build

import (
	"crypto/sha512"
	"encoding/base64"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"

	"capspan/static"
)

// Every script and every style sheet on every page carries the SHA-384 of the bytes it
// leads to (Subresource Integrity, W3C, 3.5), reckoned here from those bytes.
func TestIntegrity(t *testing.T) {
	for _, opt := range []Options{{Base: "/sub/"}, {Live: "/live"}} {
		out := mustSite(t, opt)
		files, checked := contents(out), map[string]bool{}
		for _, name := range htmlPages(files) {
			for _, tag := range tags(files[name]) {
				address := attr(tag, "src")
				if tag.Data == "link" && slices.Contains([]string{"stylesheet", "preload", "modulepreload"}, attr(tag, "rel")) && attr(tag, "as") != "fetch" && attr(tag, "as") != "image" {
					address = attr(tag, "href")
				} else if tag.Data != "script" || attr(tag, "type") == "application/ld+json" {
					continue
				}
				file := files[strings.TrimPrefix(address, out.Base)]
				sum := sha512.Sum384(file)
				want := "sha384-" + base64.StdEncoding.EncodeToString(sum[:])
				if got := attr(tag, "integrity"); len(file) == 0 || got != want {
					t.Errorf("%s: %s has the integrity %q, want %q", name, address, got, want)
				}
				checked[address] = true
			}
		}
		// What a script fetches late it names with its sum (static/asset.go).
		late := regexp.MustCompile(`file:"([^"]+\.(?:js|css))",integrity:"([^"]+)"`)
		for name, script := range files {
			if path.Ext(name) != ".js" {
				continue
			}
			for _, m := range late.FindAllSubmatch(script, -1) {
				sum := sha512.Sum384(files["assets/"+string(m[1])])
				if want := "sha384-" + base64.StdEncoding.EncodeToString(sum[:]); string(m[2]) != want || files["assets/"+string(m[1])] == nil {
					t.Errorf("%s fetches %s by the sum %s, want %s", name, m[1], m[2], want)
				}
				checked[string(m[1])] = true
			}
			by := strings.Count(string(script), `createElement("script")`) + strings.Count(string(script), "importScripts")
			if strings.Contains(string(script), "capspanEmbed") { // the finder gives each a sum, but for the one of another language
				by -= strings.Count(string(script), ".integrity=")
			}
			if by > 0 {
				t.Errorf("%s makes %d scripts without a sum", name, by)
			}
		}
		if len(checked) < 11 {
			t.Errorf("only %d scripts and styles on the pages: %v", len(checked), checked)
		}
	}
}

// The policy allows nothing written into a page (CSP level 3, 'unsafe-inline'), stands
// before anything it should hold for, and is the same on every page.
func TestPolicyOnEveryPage(t *testing.T) {
	for _, word := range []string{"unsafe", "http:", "https:", "*", "blob:"} {
		if strings.Contains(Policy, word) {
			t.Errorf("the policy allows %s", word)
		}
	}
	if !strings.HasPrefix(Policy, "default-src 'none'; ") {
		t.Error("the policy does not start from nothing")
	}
	files := contents(mustSite(t, Options{}))
	for _, name := range htmlPages(files) {
		list := tags(files[name])
		if got := one(t, name, "policy", named(list, "meta", "http-equiv", "Content-Security-Policy")); got != Policy {
			t.Errorf("%s: the policy is %q", name, got)
		}
		for _, tag := range list {
			if attr(tag, "http-equiv") == "Content-Security-Policy" {
				break
			}
			if tag.Data == "script" || tag.Data == "link" || tag.Data == "style" {
				t.Errorf("%s: <%s> stands before the policy", name, tag.Data)
			}
		}
	}
}

// No page loads anything from elsewhere, by markup or by style sheet, and no script of
// ours knows cookies. Links in words may leave the site, and the head may name its own address.
func TestNothingFromOthers(t *testing.T) {
	out := published(t, Options{Base: "/sub/", Previews: true})
	files := contents(out)
	loading := map[string][]string{"src": nil, "srcset": nil, "poster": nil, "data": nil, "action": nil, "formaction": nil, "background": nil, "ping": nil}
	for _, name := range htmlPages(files) {
		for _, tag := range tags(files[name]) {
			for _, a := range tag.Attr {
				_, loads := loading[a.Key]
				switch {
				case loads, tag.Data == "link" && a.Key == "href" && attr(tag, "rel") != "canonical", a.Key == "xlink:href", tag.Data == "use" && a.Key == "href":
					if !strings.HasPrefix(a.Val, "/sub/") && !strings.HasPrefix(a.Val, "#") && !strings.HasPrefix(a.Val, "mailto:") {
						t.Errorf("%s: <%s %s=%q> leaves the site", name, tag.Data, a.Key, a.Val)
					}
				}
			}
			if slices.Contains([]string{"iframe", "object", "embed", "base"}, tag.Data) {
				t.Errorf("%s has <%s>", name, tag.Data)
			}
		}
	}
	for name, content := range files {
		text := string(content)
		switch path.Ext(name) {
		case ".css":
			for _, m := range regexp.MustCompile(`(?i)url\(\s*["']?([^)"']*)|@import`).FindAllStringSubmatch(text, -1) {
				if !strings.HasPrefix(m[1], "./") && !strings.HasPrefix(m[1], "data:") && !strings.HasPrefix(m[1], "#") {
					t.Errorf("%s loads %q", name, m[0])
				}
			}
		case ".js":
			for _, word := range []string{".cookie", "sendBeacon", "WebSocket", "XMLHttpRequest"} {
				if strings.Contains(text, word) {
					t.Errorf("%s knows %s", name, word)
				}
			}
			for _, address := range regexp.MustCompile(`https?://[^"'`+"`"+` ]+`).FindAllString(text, -1) {
				if address != "http://www.w3.org/2000/svg" { // the name of a namespace, never asked for
					t.Errorf("%s has the address %s", name, address)
				}
			}
		}
	}
}

// The colours of the browser's own bars are the paper's, by day and by night.
func TestThemeColour(t *testing.T) {
	tokens, err := fs.ReadFile(static.FS, "parts/page/tokens.css")
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, m := range regexp.MustCompile(`--paper: (#[0-9a-f]{6});`).FindAllStringSubmatch(string(tokens), -1) {
		got = append(got, m[1])
	}
	if !slices.Equal(got, paper[:]) {
		t.Errorf("the style sheet's paper is %q, the head's %q", got, paper)
	}
}
