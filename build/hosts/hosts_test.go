//go:build hosts

package hosts

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"net"
	"net/http"
	"path"
	"strings"
	"testing"

	"github.com/andybalholm/brotli"

	"capspan/build"
	"capspan/build/pseudo"
)

// TestHosts looks at the whole site behind each server, at the root and under a sub-path.
func TestHosts(t *testing.T) {
	for _, base := range []string{"/", "/sub/path/"} {
		p := publish(t, base)
		t.Run("nginx"+base, func(t *testing.T) { look(t, p, p.nginx(t, "")) })
		t.Run("caddy"+base, func(t *testing.T) { look(t, p, p.caddy(t)) })
	}
}

func look(t *testing.T, p published, address string) {
	v := visitor{t: t, p: p, address: address}
	t.Run("every file", v.everyFile)
	t.Run("packed", v.packed)
	t.Run("caching", v.caching)
	t.Run("missing and hidden", v.missing)
	t.Run("redirects", v.redirects)
	t.Run("escape", v.escape)
}

type visitor struct {
	t       *testing.T
	p       published
	address string
}

type answer struct {
	status int
	head   http.Header
	body   []byte
}

var client = &http.Client{
	Transport:     &http.Transport{DisableCompression: true, MaxIdleConnsPerHost: 4},
	CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
}

// ask gets a path below the base; fields are "Name: value".
func (v visitor) ask(t *testing.T, below string, fields ...string) answer {
	t.Helper()
	return v.askRooted(t, v.p.base+below, fields...)
}

func (v visitor) askRooted(t *testing.T, address string, fields ...string) answer {
	t.Helper()
	q, err := http.NewRequest("GET", "http://"+v.address+address, nil)
	must(t, err)
	for _, f := range fields {
		name, value, _ := strings.Cut(f, ": ")
		q.Header.Set(name, value)
	}
	r, err := client.Do(q)
	must(t, err)
	defer r.Body.Close()
	body, err := io.ReadAll(r.Body)
	must(t, err)
	return answer{r.StatusCode, r.Header, body}
}

// types are the media types of the registry (iana.org, media types) for the endings of
// the site, written out here again: the snippets are made from the build's list.
var types = map[string]string{
	".html": "text/html; charset=utf-8", ".css": "text/css; charset=utf-8", ".js": "text/javascript; charset=utf-8",
	".json": "application/json", ".csv": "text/csv; charset=utf-8", ".svg": "image/svg+xml", ".png": "image/png",
	".txt": "text/plain; charset=utf-8", ".xml": "application/xml", ".atom": "application/atom+xml", ".webmanifest": "application/manifest+json",
	".jsonld": "application/ld+json",
}

func below(f build.File) string {
	if dir, ok := strings.CutSuffix(f.Path, "index.html"); ok {
		return dir
	}
	return f.Path
}

// readable are the files a reader is sent under their own address.
func (v visitor) readable() []build.File {
	var list []build.File
	for _, f := range v.p.out.Files {
		ending, moved := path.Ext(f.Path), false
		for _, r := range v.p.out.Redirects {
			moved = moved || r.From == v.p.base+below(f)
		}
		if f.Stage != build.Hosting && ending != ".br" && ending != ".gz" && !moved {
			list = append(list, f)
		}
	}
	return list
}

func (v visitor) everyFile(t *testing.T) {
	for _, f := range v.readable() {
		a := v.ask(t, below(f))
		if a.status != 200 || !bytes.Equal(a.body, f.Bytes) {
			t.Errorf("%s: status %d, %d bytes, want 200 and %d bytes", f.Path, a.status, len(a.body), len(f.Bytes))
		}
		want, known := types[path.Ext(f.Path)]
		if !known {
			t.Errorf("%s: this test knows no type for it", f.Path)
		}
		if got := a.head.Get("Content-Type"); !strings.EqualFold(got, want) {
			t.Errorf("%s: type %q, want %q", f.Path, got, want)
		}
		cache := "no-cache"
		if f.Stage == build.Assets {
			cache = "public, max-age=31536000, immutable"
		}
		v.guarded(t, f.Path, a, cache)
	}
	a := v.ask(t, "SHA256SUMS.txt")
	if a.status != 200 || !strings.EqualFold(a.head.Get("Content-Type"), types[".txt"]) || !bytes.Contains(a.body, []byte("  index.html\n")) {
		t.Errorf("SHA256SUMS.txt: status %d, type %q", a.status, a.head.Get("Content-Type"))
	}
}

// crossed are the fields by which a file is for other origins, one behind the other.
func crossed(name string, head http.Header) (got, want string) {
	for _, field := range []string{"Access-Control-Allow-Origin", "Cross-Origin-Resource-Policy", "Cross-Origin-Embedder-Policy"} {
		got += strings.Join(head.Values(field), ",") + ";"
	}
	name = strings.TrimPrefix(name, pseudo.Language+"/")
	switch {
	case strings.HasPrefix(name, "assets/"), name == "embed/capspan.js", name == "embed/chart.json":
		return got, "*;cross-origin;;"
	case name == "embed/frame/index.html":
		return got, ";cross-origin;require-corp;"
	}
	return got, ";;;"
}

// framers are who may put a file of the site into a frame.
func framers(name string) string {
	if strings.TrimPrefix(name, pseudo.Language+"/") == "embed/frame/index.html" {
		return "*"
	}
	return "'none'"
}

// guarded checks the fields that go with every answer, each given once.
func (v visitor) guarded(t *testing.T, name string, a answer, cache string) {
	t.Helper()
	if got, want := crossed(name, a.head); got != want {
		t.Errorf("%s: fields for other origins are %q, want %q", name, got, want)
	}
	for field, want := range map[string]string{
		"Cache-Control":           cache,
		"X-Content-Type-Options":  "nosniff",
		"Referrer-Policy":         "no-referrer",
		"Content-Security-Policy": build.Policy + "; frame-ancestors " + framers(name),
	} {
		if got := a.head.Values(field); len(got) != 1 || got[0] != want {
			t.Errorf("%s: %s is %q, want %q", name, field, got, want)
		}
	}
}

// A packed file is sent to those who take it, and unpacks to the very bytes.
func (v visitor) packed(t *testing.T) {
	sent := 0
	for _, f := range v.readable() {
		if path.Ext(f.Path) == ".png" {
			continue
		}
		for encoding, unpack := range map[string]func(io.Reader) (io.Reader, error){
			"br":   func(r io.Reader) (io.Reader, error) { return brotli.NewReader(r), nil },
			"gzip": func(r io.Reader) (io.Reader, error) { return gzip.NewReader(r) },
		} {
			a := v.ask(t, below(f), "Accept-Encoding: "+encoding)
			if a.head.Get("Content-Encoding") == "" {
				// Only files so small that packing makes them larger.
				if len(f.Bytes) > 300 || !bytes.Equal(a.body, f.Bytes) {
					t.Errorf("%s is not sent as %s", f.Path, encoding)
				}
				continue
			}
			r, err := unpack(bytes.NewReader(a.body))
			must(t, err)
			body, err := io.ReadAll(r)
			must(t, err)
			if got := a.head.Get("Content-Encoding"); got != encoding || !bytes.Equal(body, f.Bytes) || len(a.body) >= len(f.Bytes) {
				t.Errorf("%s as %s: encoding %q, %d bytes that unpack to %d, want %d", f.Path, encoding, got, len(a.body), len(body), len(f.Bytes))
			}
			if got := a.head.Get("Vary"); !strings.EqualFold(got, "Accept-Encoding") {
				t.Errorf("%s as %s: Vary is %q; a cache between would mix them up", f.Path, encoding, got)
			}
			if got := a.head.Get("Content-Type"); !strings.EqualFold(got, types[path.Ext(f.Path)]) {
				t.Errorf("%s as %s: type %q", f.Path, encoding, got)
			}
			sent++
		}
	}
	if sent < 600 {
		t.Errorf("only %d packed answers", sent)
	}
}

func (v visitor) caching(t *testing.T) {
	whole := v.ask(t, "")
	tag := whole.head.Get("ETag")
	if tag == "" {
		t.Fatal("no ETag")
	}
	if a := v.ask(t, "", "If-None-Match: "+tag); a.status != http.StatusNotModified || len(a.body) != 0 {
		t.Errorf("the page I have: status %d, %d bytes, want 304 and none", a.status, len(a.body))
	}
	if a := v.ask(t, "", `If-None-Match: "another"`); a.status != 200 {
		t.Errorf("a page I do not have: status %d, want 200", a.status)
	}
	if a := v.ask(t, "", "Range: bytes=5-14"); a.status != http.StatusPartialContent || !bytes.Equal(a.body, whole.body[5:15]) {
		t.Errorf("ten bytes: status %d, body %q", a.status, a.body)
	}
}

func (v visitor) missing(t *testing.T) {
	page, other := v.ask(t, "404.html").body, v.ask(t, pseudo.Language+"/404.html").body
	for _, below := range []string{"nowhere", "joint/9999/", "joint/"} {
		a := v.ask(t, pseudo.Language+"/"+below)
		if a.status != 404 || !bytes.Equal(a.body, other) || bytes.Equal(a.body, page) || a.head.Get("Content-Security-Policy") == "" {
			t.Errorf("%s in the other language: status %d, %d bytes, want 404 and the page of that language", below, a.status, len(a.body))
		}
	}
	for _, below := range []string{
		"nowhere", "joint/9999/", "assets/", "assets/none.js", "data/", "joint/",
		"_headers", "_redirects", "hosting/", "hosting/nginx.conf", "hosting/Caddyfile", ".capspan-files", ".capspan-lock", "joint/.capspan-new-1",
	} {
		a := v.ask(t, below)
		if a.status != 404 || !bytes.Equal(a.body, page) || !strings.HasPrefix(a.head.Get("Content-Type"), "text/html") {
			t.Errorf("%s: status %d, type %q, %d bytes, want 404 and the site's page", below, a.status, a.head.Get("Content-Type"), len(a.body))
		}
		if got := a.head.Get("Content-Security-Policy"); got == "" {
			t.Errorf("%s: the page that says so has no policy", below)
		}
	}
}

func (v visitor) redirects(t *testing.T) {
	base := v.p.base
	tests := []struct {
		from, to string
		status   []int
	}{
		{base + "chart", base + "chart/", []int{301, 308}},
		{base + "joint/1310/paper", base + "joint/1310/paper/", []int{301, 308}},
		{base + "joint/old-1310/", base + "joint/1310/", []int{301}},
		{base + "joint/old-1310", base + "joint/1310/", []int{301}},
	}
	if base != "/" {
		tests = append(tests, struct {
			from, to string
			status   []int
		}{strings.TrimSuffix(base, "/"), base, []int{301}})
	}
	for _, test := range tests {
		a := v.askRooted(t, test.from)
		to := strings.TrimPrefix(a.head.Get("Location"), "http://"+v.address)
		if !strings.Contains(fmt.Sprint(test.status), fmt.Sprint(a.status)) || to != test.to {
			t.Errorf("%s: status %d to %q, want %v to %q", test.from, a.status, to, test.status, test.to)
		}
	}
	for _, id := range []string{"old-pair", "old-gone"} {
		if a := v.ask(t, "joint/"+id+"/"); a.status != 200 || !bytes.Contains(a.body, []byte("no longer in the chart")) {
			t.Errorf("%s: status %d, want its page", id, a.status)
		}
	}
}

// What no browser would send: the request line is written by hand.
func (v visitor) escape(t *testing.T) {
	for _, target := range []string{
		"/../../../../etc/passwd", "/%2e%2e/%2e%2e/%2e%2e/%2e%2e/etc/passwd", "/..%2f..%2f..%2f..%2fetc/passwd",
		v.p.base + "../nginx.conf", v.p.base + "%2e%2e/nginx.conf", v.p.base + "..%2fnginx.conf", v.p.base + "assets/..%2f..%2fnginx.conf",
		v.p.base + "assets../nginx.conf", strings.TrimSuffix(v.p.base, "/") + "../nginx.conf", v.p.base + `..\nginx.conf`, v.p.base + "%00",
	} {
		c, err := net.Dial("tcp", v.address)
		must(t, err)
		fmt.Fprintf(c, "GET %s HTTP/1.1\r\nHost: %s\r\nConnection: close\r\n\r\n", target, v.address)
		r, err := http.ReadResponse(bufio.NewReader(c), nil)
		if err != nil {
			c.Close()
			continue // the server hung up, which is an answer
		}
		body, err := io.ReadAll(r.Body)
		must(t, err)
		c.Close()
		// Caddy answers what no block of its settings claims with 200 and nothing.
		if r.StatusCode < 300 && len(body) > 0 || bytes.Contains(body, []byte("root:")) || bytes.Contains(body, []byte("worker_processes")) {
			t.Errorf("%s: status %d:\n%.200s", target, r.StatusCode, body)
		}
	}
}
