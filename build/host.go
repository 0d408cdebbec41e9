package build

import (
	"bytes"
	"cmp"
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

// headers go with every answer.
var headers = []header{
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

// Fields are the two fields of an answer that differ from file to file: its type, and
// how long a browser may keep it.
func Fields(name string) (kind, caching string) {
	if StageOf(name) == Assets {
		return contentType(name), cacheForEver
	}
	return contentType(name), cacheAndAsk
}

// area is a part of the site whose answers carry fields of their own beside [headers].
type area struct {
	name     string // in the settings of servers
	folder   string // below the base; empty for all the rest
	language string // the folder of the language it belongs to, whose page says that nothing is there
	fields   []header
}

// A page may not say who may frame it (CSP level 3, 3.3): that part of the policy is a
// header only. One page may stand in a frame: the finder's.
var (
	unframed = header{"Content-Security-Policy", Policy + "; frame-ancestors 'none'"}
	framed   = header{"Content-Security-Policy", Policy + "; frame-ancestors *"}
)

// Pages of other origins may read what the finder is made of, also those that shut out
// whatever does not allow it (Fetch, 3.3 and 3.7; HTML, 7.1.4). There is nothing in these
// files that depends on who asks, and no cookie anywhere.
var (
	readable = header{"Access-Control-Allow-Origin", "*"}
	loadable = header{"Cross-Origin-Resource-Policy", "cross-origin"}
	isolated = header{"Cross-Origin-Embedder-Policy", "require-corp"}
)

// areasOf are the parts of a site with languages in these folders; the first whose folder
// an address lies in is its own.
func areasOf(folders []string) []area {
	rest := []header{unframed, {"Cache-Control", cacheAndAsk}}
	list := []area{{"assets", "assets/", "", []header{unframed, {"Cache-Control", cacheForEver}, readable, loadable}}}
	for _, folder := range append(slices.Clone(folders), "") {
		name := strings.TrimSuffix(folder, "/")
		list = append(list,
			area{"frame" + name, folder + embedFrame, folder, []header{framed, {"Cache-Control", cacheAndAsk}, loadable, isolated}},
			area{"embed" + name, folder + embedFolder, folder, []header{unframed, {"Cache-Control", cacheAndAsk}, readable, loadable}})
		if folder != "" {
			list = append(list, area{"language" + name, folder, folder, rest})
		}
	}
	return append(list, area{"rest", "", "", rest})
}

// areaOf is the area of an address below the base.
func areaOf(areas []area, address string) area {
	n := slices.IndexFunc(areas, func(p area) bool { return strings.HasPrefix(address, p.folder) })
	return areas[n] // the last takes all
}

// Redirect is an address that leads to another; both have the base in front.
type Redirect struct{ From, To string }

// redirects lead from a row that was retired to the one row that took its place. A row
// that was split or withdrawn keeps its page, which says so.
func (s *site) redirects() []Redirect {
	var list []Redirect
	for _, r := range s.set.Retired {
		if len(r.To) == 1 {
			to, _, _ := strings.Cut(s.placeOf(s.set.Find(r.To[0])), "#") // what stands behind # is not every host's to send
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
func (out *Output) addHostFiles() {
	add := func(name string, content []byte) {
		out.Files = append(out.Files, File{Path: name, Bytes: content, Stage: Hosting})
	}
	to, folders := out.Redirects, out.folders()
	add("_headers", headersFile(out.Base, areasOf(folders), patterns(out.Files, folders)))
	add("_redirects", redirectsFile(out.Base, to, folders))
	add("hosting/nginx.conf", nginxFile(out.Base, to, folders))
	add("hosting/Caddyfile", caddyFile(out.Base, to, folders))
	slices.SortFunc(out.Files, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	add(sumsName, sumsFile(out.Files))
}

// folders are those of the languages that do not stand at the root. Each has a page of its
// own for addresses that lead nowhere.
func (out *Output) folders() []string {
	var list []string
	for _, language := range out.Languages {
		if language.Folder != "" {
			list = append(list, language.Folder)
		}
	}
	return list
}

// sumsName lists the sums of the whole site, and in its folder those of one version's
// data, by an ending that every host knows the type of.
const sumsName = "SHA256SUMS.txt"

// sumsFile lists the files as sha256sum does.
func sumsFile(files []File) []byte {
	var b bytes.Buffer
	for _, f := range files {
		fmt.Fprintf(&b, "%x  %s\n", f.sum(), f.Path)
	}
	return b.Bytes()
}

// patterns are those that, together, are every file, and of which no two take the same.
// Beside the frame, the files of the finder stand one by one.
func patterns(files []File, folders []string) []string {
	list := append([]string{""}, folders...)
	for _, f := range files {
		language := ""
		for _, folder := range folders {
			if strings.HasPrefix(f.Path, folder) {
				language = folder
			}
		}
		rest := strings.TrimPrefix(f.Path, language)
		pattern, _, below := strings.Cut(rest, "/")
		switch {
		case strings.HasPrefix(rest, embedFrame):
			pattern = embedFrame + "*"
		case strings.HasPrefix(rest, embedFolder):
			pattern = rest
		case below:
			pattern += "/*"
		}
		pattern = language + pattern
		if !slices.Contains(list, pattern) && f.Stage != Hosting {
			list = append(list, pattern)
		}
	}
	slices.Sort(list)
	return list
}

// headersFile writes rules that add up: where two match an address its answer gets the
// fields of both. So no field stands in two rules that could match one address; hosts
// do not agree on which of them would win.
//
// What no pattern takes is an address without a file: the page that says so has its own
// policy in it.
func headersFile(base string, areas []area, patterns []string) []byte {
	var b bytes.Buffer
	b.WriteString("# Written by capspan build. A host that reads this file wants it at the root of what it publishes.\n")
	rule := func(pattern string, fields ...header) {
		fmt.Fprintf(&b, "%s%s\n", base, pattern)
		for _, h := range fields {
			fmt.Fprintf(&b, "  %s: %s\n", h.name, h.value)
		}
	}
	rule("*", headers...)
	for _, pattern := range patterns {
		rule(pattern, areaOf(areas, pattern).fields...)
	}
	return b.Bytes()
}

func redirectsFile(base string, to []Redirect, folders []string) []byte {
	var b bytes.Buffer
	b.WriteString("# Written by capspan build: from, to, status. Retired rows of the chart lead to what took their place.\n")
	for _, r := range to {
		fmt.Fprintf(&b, "%s %s 301\n", r.From, r.To)
		fmt.Fprintf(&b, "%s %s 301\n", strings.TrimSuffix(r.From, "/"), r.To)
	}
	if len(folders) > 0 {
		b.WriteString("# What leads nowhere below a language is told so in it.\n")
	}
	for _, folder := range folders {
		fmt.Fprintf(&b, "%s%s* %s%s404.html 404\n", base, folder, base, folder)
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
