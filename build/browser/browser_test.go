//go:build browser

package browser

import (
	"context"
	"fmt"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"

	"capspan/build"
	"capspan/build/diag"
)

// base is not "/", so that an address written without it shows as a broken link.
const base = "/joints/"

var (
	site   build.Output
	origin string          // of the served site, such as http://127.0.0.1:40123
	chrome context.Context // the browser; every test opens tabs of its own
)

func TestMain(m *testing.M) { os.Exit(run(m)) }

// worked is what the builds of these tests have worked out, for one of them at a time.
var (
	worked  = build.NewMemory()
	working sync.Mutex
)

// siteOf builds a site, with the bytes that a build without a memory gives it.
func siteOf(src build.Sources, opt build.Options) (build.Output, diag.List) {
	working.Lock()
	defer working.Unlock()
	opt.Memory = worked
	return build.Site(src, opt)
}

// run puts the site and the browser up once for all tests. The browser has no
// deadline; a tab has one.
func run(m *testing.M) int {
	out, problems := siteOf(build.Embedded(), build.Options{Base: base, Language: "en"}) // languages_test.go looks at the others
	if problems.Blocked() {
		fmt.Fprintf(os.Stderr, "the site cannot be built: %s\n%v\n", problems.Summary(), problems)
		return 1
	}
	site = out
	server := httptest.NewServer(firstVisit(build.Handler(out, base)))
	defer server.Close()
	origin = server.URL

	path, err := exec.LookPath("chromium-headless-shell")
	if err != nil {
		if path, err = exec.LookPath("chromium"); err != nil {
			fmt.Fprintln(os.Stderr, "no Chromium here: build/test.sh installs chromium-headless-shell")
			return 1
		}
	}
	profile, err := os.MkdirTemp("", "capspan-chromium-")
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer os.RemoveAll(profile)
	allocator, stop := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(path),
		chromedp.UserDataDir(profile),
		chromedp.NoSandbox, // it does not start as root otherwise; it loads our own pages only
		chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
	)...)
	defer stop()
	var closeBrowser context.CancelFunc
	chrome, closeBrowser = chromedp.NewContext(allocator)
	defer closeBrowser()
	if err := chromedp.Do(chrome); err != nil { // starts it
		fmt.Fprintf(os.Stderr, "start %s: %v\n", path, err)
		return 1
	}
	return m.Run()
}

// firstVisit gives out a site whose service worker is on its way and never there. Every tab
// has a store of its own, and one that stands for a second would fetch and keep all of the
// site: the tests of that have hosts of their own (newHost).
func firstVisit(site http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == base+"worker.js" {
			<-r.Context().Done()
			return
		}
		site.ServeHTTP(w, r)
	})
}

// tab is one page of the browser and what it complained about.
type tab struct {
	t   testing.TB
	ctx context.Context
	own string // other origins it may ask, besides that of the site, with blanks between

	mu       sync.Mutex
	requests []string
	troubles []string // errors on the console, exceptions, requests that failed
}

// patience is for one tab: the slowest test looks at every page in one, beside another test
// and on a machine that does more than this.
const patience = 5 * time.Minute

// openTab opens a tab with a store and a cache of its own, so no test meets what another left.
func openTab(t testing.TB) *tab {
	t.Helper()
	b := &tab{t: t}
	ctx, closeTab := chromedp.NewContext(chrome, chromedp.WithListener(b.hear), chromedp.WithNewBrowserContext())
	t.Cleanup(closeTab)
	ctx, cancel := context.WithTimeout(ctx, patience)
	t.Cleanup(cancel)
	b.ctx = ctx
	return b
}

// hear runs in the loop of the tab's messages: it only takes notes.
func (b *tab) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	trouble := func(format string, args ...any) { b.troubles = append(b.troubles, fmt.Sprintf(format, args...)) }
	switch e := event.(type) {
	case *network.EventRequestWillBeSent:
		b.requests = append(b.requests, e.Request.URL)
		its := slices.ContainsFunc(append(strings.Fields(b.own), origin), func(own string) bool { return strings.HasPrefix(e.Request.URL, own+"/") })
		if !its && !strings.HasPrefix(e.Request.URL, "data:") {
			trouble("asks another origin: %s", e.Request.URL)
		}
	case *network.EventResponseReceived:
		if e.Response.Status >= 400 {
			trouble("status %d: %s", e.Response.Status, e.Response.URL)
		}
	case *network.EventLoadingFailed:
		if !e.Canceled {
			trouble("not loaded: %s", e.ErrorText)
		}
	case *runtime.EventExceptionThrown:
		d := e.ExceptionDetails
		text := d.Text
		if d.Exception != nil {
			text += " " + d.Exception.Description
		}
		trouble("exception: %s", text)
	case *runtime.EventConsoleAPICalled:
		if e.Type == "error" || e.Type == "warning" || e.Type == "assert" {
			var words []string
			for _, a := range e.Args {
				words = append(words, string(a.Value)+a.Description)
			}
			trouble("console %s: %s", e.Type, strings.Join(words, " "))
		}
	case *log.EventEntryAdded:
		if e.Entry.Level == "error" || e.Entry.Level == "warning" {
			trouble("%s: %s %s", e.Entry.Source, e.Entry.Text, e.Entry.URL)
		}
	}
}

// do runs steps and ends the test when one fails.
func (b *tab) do(what string, steps ...chromedp.Action[chromedp.Void]) {
	b.t.Helper()
	if err := chromedp.Do(b.ctx, steps...); err != nil {
		b.t.Fatalf("%s: %v", what, err)
	}
}

// open goes to an address of the site, given without the base: "/identify/#hold=strap".
func (b *tab) open(address string) {
	b.t.Helper()
	b.do("open "+address, chromedp.Navigate(origin+strings.TrimSuffix(base, "/")+address))
}

// see evaluates an expression in the page.
func see[T any](b *tab, expression string) T {
	b.t.Helper()
	value, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression))
	if err != nil {
		b.t.Fatalf("evaluate %.200s: %v", expression, err)
	}
	return value
}

// until waits for an expression to hold. While one page gives way to another it may
// throw or find nobody to answer; that is only not yet.
func (b *tab) until(what, expression string) {
	b.t.Helper()
	end := time.Now().Add(10 * time.Second)
	for time.Now().Before(end) {
		if holds, err := chromedp.Run(b.ctx, chromedp.Evaluate[bool]("Boolean("+expression+")")); err == nil && holds {
			return
		}
		time.Sleep(10 * time.Millisecond)
	}
	b.t.Fatalf("%s: not within 10 s; the page says:\n%.1500s", what, see[string](b, "document.body.innerText"))
}

// calm reports what the tab complained about, and forgets it.
func (b *tab) calm(where string) {
	b.t.Helper()
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, trouble := range b.troubles {
		b.t.Errorf("%s: %s", where, trouble)
	}
	b.troubles = nil
}

// addresses are those of all pages, without the base, in the output's order.
func addresses() []string {
	var list []string
	for _, f := range site.Files {
		if dir, isIndex := strings.CutSuffix("/"+f.Path, "index.html"); isIndex {
			list = append(list, dir)
		} else if strings.HasSuffix(f.Path, ".html") && f.Path != "404.html" {
			list = append(list, "/"+f.Path)
		}
	}
	return list
}
