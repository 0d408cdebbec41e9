package build

import (
	"bufio"
	"context"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

func TestHandler(t *testing.T) {
	out := output("index.html=home", "chart/index.html=chart", "404.html=nothing here", "assets/a.css=c", "data/x.csv=1,2", "odd.bin=?")
	tests := []struct {
		name, method, path string
		head               map[string]string
		status             int
		kind, body, to     string
	}{
		{name: "front page", path: "/sub/", status: 200, kind: "text/html; charset=utf-8", body: "home"},
		{name: "page", path: "/sub/chart/", status: 200, kind: "text/html; charset=utf-8", body: "chart"},
		{name: "page without its slash", path: "/sub/chart", status: 302, to: "/sub/chart/"},
		{name: "style", path: "/sub/assets/a.css", status: 200, kind: "text/css; charset=utf-8", body: "c"},
		{name: "data", path: "/sub/data/x.csv", status: 200, kind: "text/csv; charset=utf-8", body: "1,2"},
		{name: "unknown kind", path: "/sub/odd.bin", status: 200, kind: "application/octet-stream", body: "?"},
		{name: "root leads to the base", path: "/", status: 302, to: "/sub/"},
		{name: "base without its slash", path: "/sub", status: 302, to: "/sub/"},
		{name: "no listing", path: "/sub/assets/", status: 404, kind: "text/html; charset=utf-8", body: "nothing here"},
		{name: "nowhere", path: "/sub/joint/9999/", status: 404, kind: "text/html; charset=utf-8", body: "nothing here"},
		{name: "beside the base", path: "/submarine/", status: 404, kind: "text/html; charset=utf-8", body: "nothing here"},
		{name: "upwards", path: "/sub/../../etc/passwd", status: 404},
		{name: "upwards, hidden", path: "/sub/%2e%2e/%2e%2e/etc/passwd", status: 404},
		{name: "backslashes", path: `/sub/..%5c..%5cetc`, status: 404},
		{name: "another machine", path: "/sub//example.org/chart", status: 404},
		{name: "live without a watch", path: "/sub/_live", status: 404},
		{name: "head", method: "HEAD", path: "/sub/", status: 200, kind: "text/html; charset=utf-8"},
		{name: "post", method: "POST", path: "/sub/", status: 405},
	}
	h := Handler(out, "/sub/")
	for _, test := range tests {
		t.Run(test.name, func(t *testing.T) {
			method := test.method
			if method == "" {
				method = "GET"
			}
			r := httptest.NewRecorder()
			h.ServeHTTP(r, httptest.NewRequest(method, test.path, nil))
			if r.Code != test.status {
				t.Errorf("status %d, want %d", r.Code, test.status)
			}
			if got := r.Header().Get("Location"); got != test.to {
				t.Errorf("leads to %q, want %q", got, test.to)
			}
			if got := r.Header().Get("Content-Type"); test.kind != "" && got != test.kind {
				t.Errorf("kind %q, want %q", got, test.kind)
			}
			if got := r.Body.String(); test.body != "" && got != test.body {
				t.Errorf("body %q, want %q", got, test.body)
			}
		})
	}
}

// A reader who has the page already is told so, until its bytes change (RFC 9110, 13.1.2).
func TestHandlerETag(t *testing.T) {
	ask := func(text, tag string) *httptest.ResponseRecorder {
		r, q := httptest.NewRecorder(), httptest.NewRequest("GET", "/", nil)
		if tag != "" {
			q.Header.Set("If-None-Match", tag)
		}
		Handler(output("index.html="+text), "/").ServeHTTP(r, q)
		return r
	}
	tag := ask("one", "").Header().Get("ETag")
	if tag == "" {
		t.Fatal("no ETag")
	}
	if got := ask("one", tag).Code; got != http.StatusNotModified {
		t.Errorf("same page: status %d, want 304", got)
	}
	if got := ask("two", tag).Code; got != http.StatusOK {
		t.Errorf("other page: status %d, want 200", got)
	}
}

// workingFolder copies the shipped sources to where they can be changed.
func workingFolder(t *testing.T) string {
	t.Helper()
	dir, src := t.TempDir(), inEnglish()
	must := func(err error) {
		if err != nil {
			t.Fatal(err)
		}
	}
	must(os.CopyFS(filepath.Join(dir, "tables"), src.Tables))
	must(os.CopyFS(filepath.Join(dir, "content"), src.Content))
	must(os.CopyFS(filepath.Join(dir, "static"), src.Static))
	must(os.CopyFS(filepath.Join(dir, "templates"), src.Templates))
	return dir
}

// serving runs Serve until the test ends and returns the address.
func serving(t *testing.T, opt ServeOptions) (address string, builds <-chan Built) {
	t.Helper()
	ready, built, ended := make(chan string, 1), make(chan Built, 100), make(chan error, 1)
	opt.Ready = func(a string) { ready <- a }
	opt.Built = func(b Built) { built <- b }
	ctx, stop := context.WithCancel(context.Background())
	go func() { ended <- Serve(ctx, opt) }()
	t.Cleanup(func() {
		stop()
		if err := <-ended; err != nil {
			t.Errorf("Serve ended with %v", err)
		}
	})
	select {
	case address = <-ready:
	case err := <-ended:
		ended <- nil
		t.Fatalf("Serve ended at once: %v", err)
	}
	return address, built
}

func fetch(t *testing.T, address string) (int, string) {
	t.Helper()
	r, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Body.Close()
	body, err := io.ReadAll(r.Body)
	if err != nil {
		t.Fatal(err)
	}
	return r.StatusCode, string(body)
}

// events reads Server-Sent Events from the live address.
func events(t *testing.T, address string) <-chan event {
	t.Helper()
	return eventsOf(t, address+liveName)
}

func eventsOf(t *testing.T, live string) <-chan event {
	t.Helper()
	r, err := http.Get(live)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { r.Body.Close() })
	if got := r.Header.Get("Content-Type"); got != "text/event-stream" {
		t.Fatalf("live address: kind %q", got)
	}
	out := make(chan event, 100)
	go func() {
		defer close(out)
		var e event
		for lines := bufio.NewScanner(r.Body); lines.Scan(); {
			field, text, _ := strings.Cut(lines.Text(), ": ")
			switch {
			case lines.Text() == "":
				out <- e
				e = event{}
			case field == "event":
				e.name = text
			case field == "data":
				e.data += text + "\n"
			}
		}
	}()
	return out
}

// soon receives, or fails the test when nothing comes.
func soon[T any](t *testing.T, what string, c <-chan T) T {
	t.Helper()
	select {
	case v := <-c:
		return v
	case <-time.After(10 * time.Second):
		t.Fatalf("no %s within 10 s", what)
		panic("unreachable")
	}
}

func replaceIn(t *testing.T, name, old, new string) {
	t.Helper()
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(string(data), old) {
		t.Fatalf("%s does not hold %q", name, old)
	}
	// As most editors save: another file, renamed over the old one.
	scratch := name + "~"
	if err := os.WriteFile(scratch, []byte(strings.Replace(string(data), old, new, 1)), 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Rename(scratch, name); err != nil {
		t.Fatal(err)
	}
}

// The keeper's story: a page is open, a table is spoiled, the page stays; the table is
// mended, the page is told; a new page in a new folder is seen too.
func TestServeFollowsChanges(t *testing.T) {
	dir := workingFolder(t)
	address, builds := serving(t, ServeOptions{Sources: Folder(dir), Watch: dir, Addr: "127.0.0.1:0", Base: "/sub/"})
	if b := soon(t, "first build", builds); b.Kept || !b.Changed || b.Pages == 0 {
		t.Fatalf("first build: %+v\n%v", b, b.Problems)
	}
	status, home := fetch(t, address)
	if status != 200 || !strings.Contains(home, `data-live="/sub/`+liveName) {
		t.Fatalf("front page: status %d, and it does not name the live address:\n%.600s", status, home)
	}
	told := events(t, address)
	first := soon(t, "first event", told)
	if first.name != "site" || strings.TrimSpace(first.data) == "" {
		t.Fatalf("first event: %+v", first)
	}

	table := filepath.Join(dir, "tables", "joints-inch.yaml")
	replaceIn(t, table, "rows:", "rows: spoiled\nrows:")
	if b := soon(t, "build with a problem", builds); !b.Kept {
		t.Errorf("a spoiled table: %+v", b)
	}
	if e := soon(t, "event with a problem", told); e.name != "problems" || !strings.Contains(e.data, "tables/joints-inch.yaml:") {
		t.Errorf("a spoiled table: event %+v", e)
	}
	if status, now := fetch(t, address); status != 200 || now != home {
		t.Errorf("a spoiled table: status %d, the front page changed: %v", status, now != home)
	}

	replaceIn(t, table, "rows: spoiled\n", "")
	if b := soon(t, "mended build", builds); b.Kept || b.Changed {
		t.Errorf("mended, and as it was at first: %+v", b)
	}
	if e := soon(t, "event of the mended site", told); e != first {
		t.Errorf("mended, and as it was at first: event %+v, want %+v", e, first)
	}

	page := filepath.Join(dir, "content", "measure", "deeper")
	if err := os.Mkdir(page, 0o755); err != nil {
		t.Fatal(err)
	}
	soon(t, "build after a new folder", builds)
	replaceIn(t, filepath.Join(dir, "content", "about.md"), "\n---\n", "\n---\n\nA new paragraph.\n")
	if b := soon(t, "build after a changed page", builds); b.Kept || !b.Changed {
		t.Errorf("a changed page: %+v", b)
	}
	if e := soon(t, "event of the changed site", told); e.name != "site" || e == first {
		t.Errorf("a changed page: event %+v", e)
	}
	if _, about := fetch(t, address+"about/"); !strings.Contains(about, "A new paragraph.") {
		t.Error("the changed page is not up")
	}
}

// A page knows the edition it is of from its own answer, and is told the one that is up,
// also when it comes late: a page that did not change is not told to load again.
func TestEditions(t *testing.T) {
	dir := workingFolder(t)
	address, builds := serving(t, ServeOptions{Sources: Folder(dir), Watch: dir, Addr: "127.0.0.1:0", Base: "/sub/"})
	soon(t, "first build", builds)
	own := func(page string) string {
		t.Helper()
		r, err := http.Get(address + page)
		if err != nil {
			t.Fatal(err)
		}
		defer r.Body.Close()
		edition, found := strings.CutPrefix(r.Header.Get("Server-Timing"), `edition;desc="`)
		if !found || len(edition) < 9 {
			t.Fatalf("%s says %q of its edition", page, r.Header.Get("Server-Timing"))
		}
		return strings.TrimSuffix(edition, `"`)
	}
	told := func(page string) string {
		t.Helper()
		return strings.TrimSpace(soon(t, "event", eventsOf(t, address+liveName+"?page=/sub/"+page)).data)
	}
	about, row := own("about/"), own("joint/1310/")
	if told("about/") != about || told("joint/1310/") != row || about == row {
		t.Errorf("own %s and %s, told %s and %s", about, row, told("about/"), told("joint/1310/"))
	}
	replaceIn(t, filepath.Join(dir, "content", "about.md"), "\n---\n", "\n---\n\nA new paragraph.\n")
	soon(t, "build after a changed page", builds)
	if told("about/") == about || told("about/") != own("about/") {
		t.Error("the changed page is not told of")
	}
	if told("joint/1310/") != row {
		t.Error("a page that did not change is told of another edition")
	}
}

func TestServeTakesNextFreePort(t *testing.T) {
	taken, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer taken.Close()
	l, err := listen(t.Context(), taken.Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	before, after := taken.Addr().(*net.TCPAddr).Port, l.Addr().(*net.TCPAddr).Port
	if after <= before || after >= before+portsTried {
		t.Errorf("port %d, want one soon after %d", after, before)
	}
	for _, addr := range []string{"8080", "127.0.0.1:http", "127.0.0.1:99999"} {
		if l, err := listen(t.Context(), addr); err == nil {
			l.Close()
			t.Errorf("%q was taken for an address", addr)
		}
	}
}

// With nothing good to show yet the problems are the page, and mending brings the site.
func TestServeStartsWithProblems(t *testing.T) {
	dir := workingFolder(t)
	table := filepath.Join(dir, "tables", "joints-inch.yaml")
	replaceIn(t, table, "rows:", "rows: spoiled\nrows:")
	address, builds := serving(t, ServeOptions{Sources: Folder(dir), Watch: dir, Addr: "127.0.0.1:0"})
	soon(t, "first build", builds)
	if status, text := fetch(t, address); status != 503 || !strings.Contains(text, "tables/joints-inch.yaml:") {
		t.Errorf("status %d, want 503 with the problem:\n%s", status, text)
	}
	replaceIn(t, table, "rows: spoiled\n", "")
	if b := soon(t, "mended build", builds); b.Kept || !b.Changed {
		t.Errorf("mended: %+v", b)
	}
	if status, _ := fetch(t, address); status != 200 {
		t.Errorf("mended: status %d", status)
	}
}
