//go:build browser

package browser

import (
	"bytes"
	"context"
	"fmt"
	"io/fs"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/chromedp/chromedp"

	"capspan/build"
)

// changedRow is a row that no page of the guide counts on, with its across before and
// after the change.
const changedRow, oldAcross, newAcross = "22x54", "54 mm", "53.8 mm"

// mapped is a folder as a map, whose files can be changed.
func mapped(t testing.TB, dir fs.FS) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(dir, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(dir, name)
		files[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// changed is the site after somebody corrected one figure of the chart.
func changed(t testing.TB) build.Output {
	t.Helper()
	src := build.Embedded()
	spoiled := mapped(t, src.Tables)
	table := spoiled["joints-farm.yaml"]
	table.Data = bytes.Replace(table.Data, []byte("across: {is: 54, "), []byte("across: {is: 53.8, "), 1)
	src.Tables = spoiled
	out, problems := siteOf(src, build.Options{Base: base, Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	if out.Chart.Name() == site.Chart.Name() {
		t.Fatal("the chart did not change")
	}
	return out
}

// window opens another page in the same browser store.
func (b *tab) window() *tab {
	b.t.Helper()
	other := &tab{t: b.t}
	ctx, closeTab := chromedp.NewContext(b.ctx)
	b.t.Cleanup(closeTab)
	other.ctx = ctx
	return other
}

const (
	offered = `document.querySelector(".newer [role=status]")?.textContent`
	across  = `document.querySelector("main").innerText`
)

// chartShown is the chart's version in the title block.
func (b *tab) chartShown() string {
	b.t.Helper()
	return see[string](b, `[...document.querySelectorAll(".titleblock div")].find((d) => d.querySelector("dt").textContent === "Chart").querySelector("dd").textContent`)
}

// A chart is corrected while pages are open. Whoever began with the old one sees it on
// every page, with and without a network, until the newer is asked for; then all is new.
func TestUpdateIsOffered(t *testing.T) {
	newer := changed(t)
	h := newHost(t, build.Handler(site, base))
	b := openTab(t)
	row := base + "joint/" + changedRow + "/"
	b.visit(h, base)
	b.kept(len(keptFiles(site)))
	other := b.window()
	other.visit(h, row)
	b.visit(h, base+"identify/#"+reading1310)
	b.until("the verdict", `/verdict--identified/.test(document.querySelector("[data-verdict-head]")?.innerHTML)`)
	if said := see[bool](b, `document.querySelector(".newer") !== null`); said {
		t.Error("something is offered although nothing changed")
	}

	h.publish(build.Handler(newer, base))
	b.visit(h, row)
	b.until("the offer", offered+`?.includes(`+quote(newer.Chart.Name())+`)`)
	said := see[string](b, offered)
	if !strings.Contains(said, site.Chart.Name()) || !strings.Contains(said, "Another open page") {
		t.Errorf("the offer does not say which chart is in use and what is open: %s", said)
	}
	// Every kind of page is still of the chart that the reader began with.
	for _, address := range kinds(t) {
		b.visit(h, strings.TrimSuffix(base, "/")+address)
		if got := b.chartShown(); got != site.Chart.Name() {
			t.Errorf("%s is of chart %s while the reader keeps %s", address, got, site.Chart.Name())
		}
	}
	b.visit(h, row)
	if text := see[string](b, across); !strings.Contains(text, oldAcross) || strings.Contains(text, newAcross) {
		t.Errorf("the row says something else before the newer chart was taken:\n%.300s", text)
	}

	// "Later" is for this window, and imposes nothing.
	b.until("the offer again", offered)
	b.do("later", chromedp.Click(chromedp.CSS("[data-newer-later]")))
	b.visit(h, base+"chart/")
	b.promised("the worker to be looked at", `new Promise((done) => setTimeout(() => done(true), 2500))`)
	if see[bool](b, `document.querySelector(".newer") !== null`) {
		t.Error("what was put off is offered again in the same window")
	}

	// The other window takes it, without a network: all of it is here already.
	h.down()
	other.visit(h, row)
	other.until("the offer in the other window", offered)
	other.do("use it", chromedp.Click(chromedp.CSS("[data-newer-use]")))
	other.until("the new figure", across+`.includes(`+quote(newAcross)+`)`)
	if got := other.chartShown(); got != newer.Chart.Name() {
		t.Errorf("after taking it the page is of chart %s", got)
	}
	// This page stays as it is, says so, and follows with its next step.
	b.until("the news", offered+`?.includes("taken in another window")`)
	if got := b.chartShown(); got != site.Chart.Name() {
		t.Errorf("the open page became chart %s by itself", got)
	}
	for _, address := range kinds(t) {
		b.visit(h, strings.TrimSuffix(base, "/")+address)
		if got := b.chartShown(); got != newer.Chart.Name() {
			t.Errorf("%s is of chart %s after %s was taken", address, got, newer.Chart.Name())
		}
	}
	// Nobody needs the old one any more.
	b.promised("the old copy to go", `caches.keys().then((names) => names.length === 1)`)
}

// The old copy stays as long as a page of it is open: what that page fetches late still
// comes, without a network.
func TestOldCopyServesOpenPages(t *testing.T) {
	newer := changed(t)
	h := newHost(t, build.Handler(site, base))
	b := openTab(t)
	b.visit(h, base)
	b.kept(len(keptFiles(site)))
	b.visit(h, base+"identify/")
	b.until("the form", ready)
	h.publish(build.Handler(newer, base))
	other := b.window()
	other.visit(h, base+"chart/")
	other.until("the offer", offered)
	h.down()
	other.do("use it", chromedp.Click(chromedp.CSS("[data-newer-use]")))
	b.until("the news", offered+`?.includes("taken in another window")`)
	old := see[string](b, `document.querySelector("[data-identify]").dataset.chart`)
	for _, f := range newer.Files {
		if base+f.Path == old {
			t.Fatalf("%s is the same in both charts", old)
		}
	}
	// The other window has been loaded anew, and has asked the worker to put things in order.
	other.until("the newer chart", `document.querySelector(".newer") === null && document.querySelector("main").innerText.length > 0`)
	other.promised("time to sweep", `new Promise((done) => setTimeout(() => done(true), 3000))`)
	if got := other.chartShown(); got != newer.Chart.Name() {
		t.Errorf("the other window shows chart %s", got)
	}
	b.promised("a file of the old chart", `fetch(`+quote(old)+`).then((r) => r.ok, () => false)`)
}

// A kept page is damaged and another is lost. With a network both are mended; without
// one the reader is told, and never sees damaged bytes; and when the host has a newer
// chart by then, its page is not put among the old ones.
func TestDamagedCopy(t *testing.T) {
	newer := changed(t)
	spoil := func(b *tab) {
		b.promised("the damage", fmt.Sprintf(`(async () => {
			const cache = await caches.open((await caches.keys())[0]);
			const of = (address) => location.origin + %q + address;
			const page = await (await cache.match(of("joint/1310/"))).text();
			await cache.put(of("joint/1310/"), new Response(page.replace("1.062", "1.262"), {headers: {"content-type": "text/html"}}));
			return (await cache.delete(of("joint/%s/"))) && page.includes("1.062");
		})()`, base, changedRow))
	}
	for _, tt := range []struct {
		name string
		then func(h *host)
		want [2]string
	}{
		{"the host is there", func(*host) {}, [2]string{"1310", changedRow}},
		{"the host is gone", (*host).down, [2]string{"This page is not at hand", "This page is not at hand"}},
		{"the host has a newer chart", func(h *host) { h.publish(build.Handler(newer, base)) },
			[2]string{"This page is not at hand", "This page is not at hand"}},
		{"the host answers with an error", func(h *host) {
			h.publish(http.HandlerFunc(func(w http.ResponseWriter, _ *http.Request) { http.Error(w, "down for a while", http.StatusBadGateway) }))
		}, [2]string{"This page is not at hand", "This page is not at hand"}},
	} {
		t.Run(tt.name, func(t *testing.T) {
			h := newHost(t, build.Handler(site, base))
			b := openTab(t)
			b.visit(h, base)
			b.kept(len(keptFiles(site)))
			spoil(b)
			tt.then(h)
			for n, id := range []string{"1310", changedRow} {
				b.visit(h, base+"joint/"+id+"/")
				if got := b.heading(); !strings.Contains(got, tt.want[n]) {
					t.Errorf("row %s is shown as %q, want %q", id, got, tt.want[n])
				}
				if strings.Contains(see[string](b, across), "1.262") {
					t.Error("a damaged figure is shown")
				}
			}
			b.visit(h, base+"joint/1350/")
			if got := b.heading(); !strings.Contains(got, "1350") {
				t.Errorf("a sound page is shown as %q", got)
			}
			if tt.want[0] == "1310" { // mended for good
				h.down()
				b.visit(h, base+"joint/1310/")
				if got := b.heading(); !strings.Contains(got, "1310") {
					t.Errorf("the mended page is shown as %q", got)
				}
			}
		})
	}
}

// Under serve with a folder to watch no page registers a worker, and one that an earlier
// visit left at the same address is taken away, so that what is rebuilt shows at once.
func TestNoWorkerUnderWatch(t *testing.T) {
	dir, src := t.TempDir(), build.Embedded()
	for name, folder := range map[string]fs.FS{"tables": src.Tables, "content": src.Content, "static": src.Static, "templates": src.Templates} {
		if err := os.CopyFS(filepath.Join(dir, name), folder); err != nil {
			t.Fatal(err)
		}
	}
	serve := func(opt build.ServeOptions) (address string, stop func()) {
		ctx, cancel := context.WithCancel(context.Background())
		ready, ended := make(chan string, 1), make(chan error, 1)
		opt.Ready = func(address string) { ready <- address }
		go func() { ended <- build.Serve(ctx, opt) }()
		return <-ready, func() {
			cancel()
			if err := <-ended; err != nil {
				t.Error(err)
			}
		}
	}
	address, stop := serve(build.ServeOptions{Sources: src, Addr: "127.0.0.1:0"})
	b := openTab(t)
	b.do("a visit", chromedp.Navigate(address))
	if see[bool](b, `document.querySelector("[data-live]") !== null`) {
		t.Error("a site that nobody edits has the script that waits for changes")
	}
	b.kept(len(keptFiles(site)))
	stop()

	again, stop := serve(build.ServeOptions{Sources: build.Folder(dir), Watch: dir, Addr: strings.Trim(strings.TrimPrefix(address, "http://"), "/")})
	defer stop()
	if again != address {
		t.Fatalf("served at %s, want %s again", again, address)
	}
	b.do("the edited site", chromedp.Navigate(again+"about/"))
	b.until("the live page", `document.querySelector("[data-live]")`)
	b.promised("the worker to go", `(async () => (await navigator.serviceWorker.getRegistrations()).length === 0 && (await caches.keys()).length === 0)()`)
	if see[bool](b, `document.querySelector("[data-worker]") !== null`) {
		t.Error("a page under watch registers a worker")
	}
}
