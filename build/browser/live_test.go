//go:build browser

package browser

import (
	"context"
	"io/fs"
	"net/http"
	"net/http/httptest"
	"net/http/httputil"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/chromedp"

	"capspan/build"
)

// A page open under serve: a spoiled table is told over it and nothing else changes;
// a changed page comes up by itself.
func TestLiveReload(t *testing.T) {
	dir, src := t.TempDir(), build.Embedded()
	must := func(err error) {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
	}
	must(os.CopyFS(filepath.Join(dir, "tables"), src.Tables))
	must(os.CopyFS(filepath.Join(dir, "content"), src.Content))
	must(os.CopyFS(filepath.Join(dir, "static"), src.Static))
	must(os.CopyFS(filepath.Join(dir, "templates"), src.Templates))

	ctx, stop := context.WithCancel(context.Background())
	ready, ended := make(chan string, 1), make(chan error, 1)
	go func() {
		ended <- build.Serve(ctx, build.ServeOptions{Sources: build.Folder(dir), Watch: dir, Addr: "127.0.0.1:0",
			Ready: func(address string) { ready <- address }})
	}()
	defer func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	}()
	b := openTab(t)
	b.do("open about", chromedp.Navigate(<-ready+"about/"))
	b.until("the live script", `document.querySelector("script[data-live]")`)

	save := func(name, old, new string) {
		t.Helper()
		name = filepath.Join(dir, name)
		text, err := os.ReadFile(name)
		must(err)
		changed := strings.Replace(string(text), old, new, 1)
		if changed == string(text) {
			t.Fatalf("%s does not hold %q", name, old)
		}
		must(os.WriteFile(name, []byte(changed), 0o644))
	}
	before := see[string](b, `document.querySelector("main").innerHTML`)
	save("tables/joints-inch.yaml", "rows:", "rows: spoiled\nrows:")
	b.until("the problem", `document.querySelector(".live-problems")?.textContent.includes("tables/joints-inch.yaml:")`)
	if see[string](b, `document.querySelector("main").innerHTML`) != before {
		t.Error("the page itself changed")
	}
	save("tables/joints-inch.yaml", "rows: spoiled\n", "")
	b.until("the problem to go", `document.querySelector(".live-problems") === null`)
	save("content/about.md", "\n---\n", "\n---\n\nA new paragraph.\n")
	b.until("the changed page", `document.querySelector("main").innerText.includes("A new paragraph.")`)
}

// A page that was loaded while a change was being built, and listens only when it is up,
// shows it all the same: the answer it came with says which edition it is.
func TestLiveReloadOfALatePage(t *testing.T) {
	dir, src := t.TempDir(), build.Embedded()
	for name, folder := range map[string]fs.FS{"tables": src.Tables, "content": src.Content, "static": src.Static, "templates": src.Templates} {
		if err := os.CopyFS(filepath.Join(dir, name), folder); err != nil {
			t.Fatal(err)
		}
	}
	ctx, stop := context.WithCancel(context.Background())
	ready, ended, built := make(chan string, 1), make(chan error, 1), make(chan build.Built, 8)
	go func() {
		ended <- build.Serve(ctx, build.ServeOptions{Sources: build.Folder(dir), Watch: dir, Addr: "127.0.0.1:0",
			Ready: func(address string) { ready <- address }, Built: func(b build.Built) { built <- b }})
	}()
	defer func() {
		stop()
		if err := <-ended; err != nil {
			t.Error(err)
		}
	}()
	address := <-ready
	<-built
	held, release := make(chan struct{}), make(chan struct{})
	var once sync.Once
	target, err := url.Parse(address)
	if err != nil {
		t.Fatal(err)
	}
	forward := &httputil.ReverseProxy{FlushInterval: -1, Rewrite: func(r *httputil.ProxyRequest) { r.SetURL(target) }}
	slow := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.URL.Path == "/_live" {
			once.Do(func() { close(held) })
			<-release
		}
		forward.ServeHTTP(w, r)
	}))
	defer slow.Close()
	defer slow.CloseClientConnections() // the page listens for ever

	b := openTab(t)
	b.do("open about", chromedp.Navigate(slow.URL+"/about/"))
	<-held
	name := filepath.Join(dir, "content", "about.md")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(name, []byte(strings.Replace(string(text), "\n---\n", "\n---\n\nA new paragraph.\n", 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	<-built
	close(release)
	b.until("the changed page", `document.querySelector("main").innerText.includes("A new paragraph.")`)
}
