package build

import (
	"bytes"
	"net/http"
	"slices"
	"strings"
	"sync/atomic"
	"time"

	"capspan/build/diag"
)

// server answers requests from the last good build.
type server struct {
	opt      ServeOptions
	base     string
	pages    atomic.Pointer[pages]
	problems atomic.Pointer[diag.List] // of the last build, when they stopped it
	live     *hub
	memory   *Memory
}

// pages is one build, ready to be served.
type pages struct {
	files map[string]page   // by path, "chart/index.html"
	moved map[string]string // addresses that lead to another
	areas []area            // which fields belong to which
	count int               // pages among the files
	sum   string            // of all names and bytes
}

type page struct {
	bytes []byte
	tag   string // the ETag, with its quotes
}

func newServer(opt ServeOptions) *server {
	return &server{opt: opt, base: basePath(opt.Base), live: newHub(), memory: NewMemory()}
}

// Handler serves one output without watching or reloading: tests look at a site
// through it just as a reader does under [Serve].
func Handler(out Output, base string) http.Handler {
	s := newServer(ServeOptions{Base: base})
	s.pages.Store(newPages(out))
	return s
}

// ServeHTTP answers with files of the site only; there are no listings, and no path
// reaches the disk.
func (s *server) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	head := w.Header()
	address, below := strings.CutPrefix(r.URL.Path, s.base)
	areas := areasOf(nil)
	if site := s.pages.Load(); site != nil {
		areas = site.areas
	}
	for _, h := range slices.Concat(headers, areaOf(areas, address).fields) {
		head.Set(h.name, h.value)
	}
	head.Set("Cache-Control", cacheAndAsk) // assets too: a keeper who edits wants no memory

	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		head.Set("Allow", "GET, HEAD")
		http.Error(w, "only GET and HEAD are answered here", http.StatusMethodNotAllowed)
		return
	}
	switch {
	case r.URL.Path+"/" == s.base, r.URL.Path == "/" && s.base != "/":
		http.Redirect(w, r, s.base, http.StatusFound)
		return
	case !below:
		s.missing(w, "")
		return
	case address == liveName && s.opt.Watch != "":
		s.stream(w, r)
		return
	}
	site := s.pages.Load()
	if site == nil {
		s.unbuilt(w)
		return
	}
	if to, moved := site.moved[r.URL.Path]; moved {
		http.Redirect(w, r, to, http.StatusFound) // for now only: the row may come back while its keeper edits
		return
	}
	name := fileAt(address)
	if file, found := site.files[name]; found {
		head.Set("Content-Type", contentType(name))
		head.Set("ETag", file.tag)
		if s.opt.Watch != "" {
			head.Set("Server-Timing", "edition;desc="+file.tag) // what a page can read of its own answer (W3C Server Timing)
		}
		http.ServeContent(w, r, "", time.Time{}, bytes.NewReader(file.bytes))
		return
	}
	// /chart leads to /chart/. The address is one of ours, so that it cannot be bent
	// into the address of another machine.
	if _, found := site.files[address+"/index.html"]; found {
		http.Redirect(w, r, s.base+address+"/", http.StatusFound)
		return
	}
	s.missing(w, address)
}

// fileAt is the file behind an address, both without the base.
func fileAt(address string) string {
	if address == "" || strings.HasSuffix(address, "/") {
		return address + "index.html"
	}
	return address
}

// missing answers with the site's own page for addresses that lead nowhere, in the language
// of the address.
func (s *server) missing(w http.ResponseWriter, address string) {
	if site := s.pages.Load(); site != nil {
		folder, _, _ := strings.Cut(address, "/")
		for _, name := range []string{folder + "/404.html", "404.html"} {
			if file, found := site.files[name]; found {
				w.Header().Set("Content-Type", contentType(name))
				w.WriteHeader(http.StatusNotFound)
				w.Write(file.bytes)
				return
			}
		}
	}
	http.Error(w, "there is no page at this address", http.StatusNotFound)
}

// unbuilt tells why there is no site yet: the very first build found problems.
func (s *server) unbuilt(w http.ResponseWriter) {
	text := "The site could not be built yet.\n"
	if problems := s.problems.Load(); problems != nil {
		text += "\n" + problemText(*problems)
	}
	http.Error(w, text, http.StatusServiceUnavailable)
}

func problemText(problems diag.List) string {
	var b strings.Builder
	for _, p := range problems {
		if p.Level == diag.Error {
			b.WriteString(p.String() + "\n")
		}
	}
	return b.String() + problems.Summary()
}
