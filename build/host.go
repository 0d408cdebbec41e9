package build

import (
	"bytes"
	"cmp"
	"crypto/sha256"
	"fmt"
	"path"
	"regexp"
	"slices"
	"strings"
)

// This file and host_servers.go write what a host needs to publish the site well:
//
//	_headers, _redirects    the plain files many static hosts read from the root of what is published
//	hosting/nginx.conf      to include in a server block of nginx
//	hosting/Caddyfile       to import into a site block of Caddy
//	SHA256SUMS.txt          what must have arrived, for sha256sum -c
//
// All of them, and [Serve], say the same: one list of headers, one of types, one of
// redirects. None is needed for the site to work: a host that reads nothing of this
// serves every page, and only its caching and its jumps from retired rows are poorer.

// header is one field of an answer.
type header struct{ name, value string }

// headers go with every answer. A page may not say who may frame it (CSP level 3, 3.3):
// that part of the policy is a header only.
var headers = []header{
	{"Content-Security-Policy", Policy + "; frame-ancestors 'none'"},
	{"X-Content-Type-Options", "nosniff"},
	{"Referrer-Policy", "no-referrer"},
	{"Permissions-Policy", "camera=(), geolocation=(), microphone=()"},
}

// An asset is named by its content and never changes; for anything else the browser
// keeps its copy and asks whether it is still good (RFC 9111, 5.2.2.4; RFC 8246).
const (
	cacheForEver = "public, max-age=31536000, immutable"
	cacheAndAsk  = "no-cache"
)

// Redirect is an address that leads to another; both have the base in front.
type Redirect struct{ From, To string }

// redirects lead from a row that was retired to the one row that took its place. A row
// that was split or withdrawn keeps its page, which says so.
func (s *site) redirects() []Redirect {
	var list []Redirect
	for _, r := range s.set.Retired {
		if len(r.To) == 1 {
			to, _, _ := strings.Cut(placeOf(s.set.Find(r.To[0])), "#") // what stands behind # is not every host's to send
			list = append(list, Redirect{From: s.at(rowAddress(r.ID)), To: s.at(to)})
		}
	}
	slices.SortFunc(list, func(a, b Redirect) int { return cmp.Compare(a.From, b.From) })
	return list
}

var baseForm = regexp.MustCompile(`^[A-Za-z0-9._~/-]*$`)

// CheckBase refuses a base that would have to be written differently in a page, in a
// redirect file and in a server's settings.
func CheckBase(base string) error {
	if !baseForm.MatchString(base) {
		return fmt.Errorf("the base %q may hold letters, digits and . _ ~ - / only", base)
	}
	for part := range strings.SplitSeq(base, "/") {
		if part == "." || part == ".." {
			return fmt.Errorf("the base %q goes through %q; write the path that readers see, such as /joints/", base, part)
		}
	}
	return nil
}

// addHostFiles adds the files above, last the sums of all others.
func (s *site) addHostFiles() {
	to := s.redirects()
	s.add("_headers", headersFile(s.base, topFolders(s.files)), Hosting)
	s.add("_redirects", redirectsFile(to), Hosting)
	s.add("hosting/nginx.conf", nginxFile(s.base, to), Hosting)
	s.add("hosting/Caddyfile", caddyFile(s.base, to), Hosting)
	slices.SortFunc(s.files, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	s.add(sumsName, sumsFile(s.files), Hosting)
}

// sumsName lists the sums of the whole site, and in its folder those of one version's
// data, by an ending that every host knows the type of.
const sumsName = "SHA256SUMS.txt"

// sumsFile lists the files as sha256sum does.
func sumsFile(files []File) []byte {
	var b bytes.Buffer
	for _, f := range files {
		fmt.Fprintf(&b, "%x  %s\n", sha256.Sum256(f.Bytes), f.Path)
	}
	return b.Bytes()
}

// topFolders are the patterns that, together, are every file but the assets.
func topFolders(files []File) []string {
	patterns := []string{""}
	for _, f := range files {
		top, _, below := strings.Cut(f.Path, "/")
		if below {
			top += "/*"
		}
		if top != "assets/*" && !slices.Contains(patterns, top) && f.Stage != Hosting {
			patterns = append(patterns, top)
		}
	}
	slices.Sort(patterns)
	return patterns
}

// headersFile writes rules that add up: where two match an address its answer gets the
// fields of both. So no field stands in two rules that could match one address; hosts
// do not agree on which of them would win.
func headersFile(base string, others []string) []byte {
	var b bytes.Buffer
	b.WriteString("# Written by capspan build. A host that reads this file wants it at the root of what it publishes.\n")
	rule := func(pattern string, fields ...header) {
		fmt.Fprintf(&b, "%s%s\n", base, pattern)
		for _, h := range fields {
			fmt.Fprintf(&b, "  %s: %s\n", h.name, h.value)
		}
	}
	rule("*", headers...)
	rule("assets/*", header{"Cache-Control", cacheForEver})
	for _, pattern := range others {
		rule(pattern, header{"Cache-Control", cacheAndAsk})
	}
	return b.Bytes()
}

func redirectsFile(to []Redirect) []byte {
	var b bytes.Buffer
	b.WriteString("# Written by capspan build: from, to, status. Retired rows of the chart lead to what took their place.\n")
	for _, r := range to {
		fmt.Fprintf(&b, "%s %s 301\n", r.From, r.To)
		fmt.Fprintf(&b, "%s %s 301\n", strings.TrimSuffix(r.From, "/"), r.To)
	}
	return b.Bytes()
}

// types are the kinds of file a site has. No machine's own list is asked: they differ
// from one to the next.
var types = map[string]string{
	".html":        "text/html; charset=utf-8",
	".css":         "text/css; charset=utf-8",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".jsonld":      "application/ld+json",
	".csv":         "text/csv; charset=utf-8",
	".svg":         "image/svg+xml",
	".png":         "image/png",
	".ico":         "image/x-icon",
	".txt":         "text/plain; charset=utf-8",
	".xml":         "application/xml",
	".atom":        "application/atom+xml",
	".webmanifest": "application/manifest+json",
}

func contentType(name string) string {
	if t, known := types[path.Ext(name)]; known {
		return t
	}
	return "application/octet-stream"
}
