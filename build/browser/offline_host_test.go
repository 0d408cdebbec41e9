//go:build browser

package browser

import (
	"fmt"
	"net"
	"net/http"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"capspan/build"
)

// host is a machine that can really go away and come back under its address, and that
// can be given another site meanwhile.
type host struct {
	t       testing.TB
	address string // 127.0.0.1:port
	server  *http.Server

	mu      sync.Mutex
	handler http.Handler
	asked   []string
}

func newHost(t testing.TB, handler http.Handler) *host {
	h := &host{t: t, address: "127.0.0.1:0", handler: handler}
	h.up()
	t.Cleanup(h.down)
	return h
}

// up opens the port, down closes it with every connection that is open.
func (h *host) up() {
	h.t.Helper()
	listener, err := net.Listen("tcp", h.address)
	if err != nil {
		h.t.Fatal(err)
	}
	h.address = listener.Addr().String()
	h.server = &http.Server{Handler: h}
	go h.server.Serve(listener) // ends with an error that means it was closed
}

func (h *host) down() { h.server.Close() }

func (h *host) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h.mu.Lock()
	h.asked = append(h.asked, r.URL.Path)
	handler := h.handler
	h.mu.Unlock()
	handler.ServeHTTP(w, r)
}

// publish puts another site up.
func (h *host) publish(handler http.Handler) {
	h.mu.Lock()
	defer h.mu.Unlock()
	h.handler = handler
}

// hears reports whether an address was asked for since the last call, and forgets.
func (h *host) hears(part string) bool {
	h.mu.Lock()
	defer h.mu.Unlock()
	found := false
	for _, path := range h.asked {
		found = found || strings.Contains(path, part)
	}
	h.asked = nil
	return found
}

func (h *host) origin() string { return "http://" + h.address }

// visit opens an address of the host, with the base.
func (b *tab) visit(h *host, address string) {
	b.t.Helper()
	b.do("visit "+address, chromedp.Navigate(h.origin()+address))
}

// promised waits for a promise to give true; as with until, a page that gives way to
// another is only not yet.
func (b *tab) promised(what, expression string) {
	b.t.Helper()
	end := time.Now().Add(40 * time.Second)
	for time.Now().Before(end) {
		if holds, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool](expression, chromedp.EvalAwaitPromise)); err == nil && holds {
			return
		}
		time.Sleep(20 * time.Millisecond)
	}
	b.t.Fatalf("%s: not within 40 s; the page says:\n%.500s", what, see[string](b, "document.body.innerText"))
}

// kept waits until the worker of the page has kept n files, and the note of the pages
// that were open when it began.
func (b *tab) kept(n int) {
	b.t.Helper()
	b.promised(fmt.Sprintf("%d files to be kept", n), fmt.Sprintf(`(async () => {
		const registration = await navigator.serviceWorker.getRegistration();
		// Below another chart on one host the worker of that one answers until there is an own.
		if (registration?.active?.scriptURL !== new URL(document.querySelector("[data-worker]").dataset.worker, location.href).href) return false;
		let files = 0;
		for (const name of await caches.keys())
			if (name.startsWith("capspan " + registration.scope + " "))
				files = Math.max(files, (await (await caches.open(name)).keys()).filter((r) => !r.url.includes("?")).length);
		return files >= %d;
	})()`, n))
}

// heading is the h1 of the page that is shown.
func (b *tab) heading() string {
	b.t.Helper()
	return see[string](b, `document.querySelector("h1")?.innerText ?? ""`)
}

// keptFiles are the files of a site that a reader's device keeps, by the rule of the
// worker's list but without looking at it: all that a reader can ask for, except the
// worker itself, which the browser keeps.
func keptFiles(out build.Output) []build.File {
	var list []build.File
	for _, f := range out.Files {
		switch {
		case f.Stage == build.Hosting, f.Path == "worker.js", f.Path == "sitemap.xml", f.Path == "robots.txt", f.Path == "opensearch.xml":
		case strings.HasPrefix(f.Path, "embed/"), strings.HasPrefix(f.Path, "assets/embed"): // of the finder, for pages of others
		case strings.HasPrefix(f.Path, "data/"+out.Chart.Name()+"/"): // the same again, for programs
		case strings.HasSuffix(f.Path, ".png") && f.Stage != build.Assets: // previews of links
		default:
			list = append(list, f)
		}
	}
	return list
}

// addressOf is the address of a file, with the base.
func addressOf(out build.Output, f build.File) string {
	return out.Base + strings.TrimSuffix(f.Path, "index.html")
}
