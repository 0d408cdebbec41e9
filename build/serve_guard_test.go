package build

import (
	"bytes"
	"context"
	"errors"
	"fmt"
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

// A page whose name was bent to this machine must read nothing (DNS rebinding): the
// browser still sends that page's name in the Host field.
func TestServeKnowsItsNames(t *testing.T) {
	address, _ := serving(t, ServeOptions{Sources: inEnglish(), Addr: "127.0.0.1:0"})
	_, port, _ := net.SplitHostPort(strings.TrimSuffix(strings.TrimPrefix(address, "http://"), "/"))
	for host, want := range map[string]int{
		"127.0.0.1:" + port: 200, "localhost:" + port: 200, "LOCALHOST": 200, "localhost.": 200, "joints.localhost:" + port: 200,
		"[::1]:" + port: 200, "192.0.2.7:8080": 200,
		"evil.example": 421, "evil.example:" + port: 421, "127.0.0.1.evil.example": 421, "localhost.evil.example:" + port: 421,
		"notlocalhost": 421, "[::1].evil.example": 421, "127.1": 421, "0x7f000001": 421,
	} {
		q, err := http.NewRequest("GET", address, nil)
		if err != nil {
			t.Fatal(err)
		}
		q.Host = host
		r, err := http.DefaultClient.Do(q)
		if err != nil {
			t.Fatal(err)
		}
		body, err := io.ReadAll(r.Body)
		r.Body.Close()
		if err != nil {
			t.Fatal(err)
		}
		if r.StatusCode != want || want != 200 && strings.Contains(string(body), "Capspan") {
			t.Errorf("Host %q: status %d, want %d:\n%.100s", host, r.StatusCode, want, body)
		}
	}
}

func TestKnownHostOfTheAddress(t *testing.T) {
	yes := http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {})
	for _, test := range []struct {
		listens, host string
		want          int
	}{
		{"Bench.example:8080", "bench.example:8080", 200},
		{"bench.example:8080", "other.example:8080", 421},
		{"0.0.0.0:8080", "bench.example:8080", 421},
		{":8080", "", 421}, // HTTP/1.0; no browser
		{"", "127.0.0.1", 200},
	} {
		q, w := httptest.NewRequest("GET", "/", nil), httptest.NewRecorder()
		q.Host = test.host
		knownHost(yes, test.listens).ServeHTTP(w, q)
		if w.Code != test.want {
			t.Errorf("listens on %q, asked as %q: status %d, want %d", test.listens, test.host, w.Code, test.want)
		}
	}
}

// A page of a stranger reads nothing, not even what any page may read of a published site.
func TestServeToStrangers(t *testing.T) {
	h := knownHost(Handler(output("embed/chart.json={}"), "/"), "127.0.0.1:8080")
	for origin, want := range map[string]int{"": 200, "http://127.0.0.1:9000": 200, "http://localhost:9000": 200, "http://[::1]:9000": 200,
		"https://stranger.example": 421, "null": 421, "https://127.0.0.1.stranger.example": 421, "%zz": 421} {
		q, w := httptest.NewRequest("GET", "/embed/chart.json", nil), httptest.NewRecorder()
		q.Host = "127.0.0.1:8080"
		if origin != "" {
			q.Header.Set("Origin", origin)
		}
		h.ServeHTTP(w, q)
		if w.Code != want {
			t.Errorf("from a page of %q: status %d, want %d", origin, w.Code, want)
		}
	}
}

// Nothing but this machine reaches it unless somebody says so.
func TestServeListensOnLoopback(t *testing.T) {
	l, err := listen(t.Context(), "")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	if ip := l.Addr().(*net.TCPAddr).IP; !ip.IsLoopback() {
		t.Errorf("listens on %v", ip)
	}
}

// Readers that dawdle, or send heads without end, are let go.
func TestServeLimits(t *testing.T) {
	if usual.header <= 0 || usual.read <= 0 || usual.write <= 0 || usual.idle <= 0 || usual.headerBytes <= 0 {
		t.Fatalf("a limit of Serve is missing: %+v", usual)
	}
	short := limits{header: 100 * time.Millisecond, read: 200 * time.Millisecond, write: time.Second, idle: 100 * time.Millisecond, headerBytes: 4 << 10}
	web := httptest.NewUnstartedServer(nil)
	web.Config = short.server(Handler(output("index.html=home"), "/"))
	web.Start()
	defer web.Close()
	for _, test := range []struct{ name, sends, want string }{
		{"half a head", "GET / HTTP/1.1\r\nHost: x\r\n", ""},
		{"nothing at all", "", ""},
		{"a body that does not come", "POST / HTTP/1.1\r\nHost: x\r\nContent-Length: 100\r\n\r\nhalf", "405"},
		{"idle after an answer", "GET / HTTP/1.1\r\nHost: x\r\n\r\n", "home"},
		{"a long head", "GET / HTTP/1.1\r\nHost: x\r\nX: " + strings.Repeat("x", 20<<10) + "\r\n\r\n", "431"},
	} {
		t.Run(test.name, func(t *testing.T) {
			c, err := net.Dial("tcp", web.Listener.Addr().String())
			if err != nil {
				t.Fatal(err)
			}
			defer c.Close()
			io.WriteString(c, test.sends) // may be cut off
			c.SetReadDeadline(time.Now().Add(20 * time.Second))
			said, err := io.ReadAll(c) // until the server hangs up
			if errors.Is(err, os.ErrDeadlineExceeded) {
				t.Fatalf("still connected; it said %.80q", said)
			}
			if !strings.Contains(string(said), test.want) {
				t.Errorf("it said %.80q, want %s", said, test.want)
			}
		})
	}
}

// RFC 9110, 14: parts of a page, and what is no part of it.
func TestHandlerRange(t *testing.T) {
	h := Handler(output("index.html=0123456789"), "/")
	for _, test := range []struct {
		fields map[string]string
		status int
		body   string
		part   string
	}{
		{map[string]string{"Range": "bytes=2-4"}, 206, "234", "bytes 2-4/10"},
		{map[string]string{"Range": "bytes=7-"}, 206, "789", "bytes 7-9/10"},
		{map[string]string{"Range": "bytes=-3"}, 206, "789", "bytes 7-9/10"},
		{map[string]string{"Range": "bytes=20-"}, 416, "", "bytes */10"},
		{map[string]string{"Range": "bytes=2-4", "If-Range": `"another"`}, 200, "0123456789", ""},
	} {
		q, w := httptest.NewRequest("GET", "/", nil), httptest.NewRecorder()
		for name, value := range test.fields {
			q.Header.Set(name, value)
		}
		h.ServeHTTP(w, q)
		if w.Code != test.status || test.body != "" && w.Body.String() != test.body || w.Header().Get("Content-Range") != test.part {
			t.Errorf("%v: status %d, part %q, body %q; want %d, %q, %q", test.fields, w.Code, w.Header().Get("Content-Range"), w.Body, test.status, test.part, test.body)
		}
	}
}

// Serve answers as the hosts do that read what the build writes for them.
func TestHandlerLikeAHost(t *testing.T) {
	out := output("index.html=home", "404.html=none", "joint/old/index.html=moved", "joint/new/index.html=new")
	out.Files = append(out.Files, File{Path: "_headers", Stage: Hosting}, File{Path: "hosting/nginx.conf", Stage: Hosting})
	out.Redirects = []Redirect{{From: "/sub/joint/old/", To: "/sub/joint/new/"}}
	h := Handler(out, "/sub/")
	for _, test := range []struct {
		path, to string
		status   int
	}{
		{"/sub/", "", 200}, {"/sub/nowhere", "", 404}, {"/sub/_headers", "", 404}, {"/sub/hosting/nginx.conf", "", 404},
		{"/sub/joint/old/", "/sub/joint/new/", 302}, {"/sub/joint/old", "/sub/joint/old/", 302},
	} {
		w := httptest.NewRecorder()
		h.ServeHTTP(w, httptest.NewRequest("GET", test.path, nil))
		if w.Code != test.status || w.Header().Get("Location") != test.to {
			t.Errorf("%s: status %d to %q, want %d to %q", test.path, w.Code, w.Header().Get("Location"), test.status, test.to)
		}
		for _, want := range headers {
			if got := w.Header().Get(want.name); got != want.value {
				t.Errorf("%s: %s is %q, want %q", test.path, want.name, got, want.value)
			}
		}
	}
}

// A table is saved in place, in small pieces and without a pause, while serve reads it
// and a reader looks on. Every answer is a whole page, and in the end the last text is up.
func TestServeWhileATableIsWritten(t *testing.T) {
	dir := workingFolder(t)
	address, builds := serving(t, ServeOptions{Sources: Folder(dir), Watch: dir, Addr: "127.0.0.1:0"})
	soon(t, "first build", builds)
	table := filepath.Join(dir, "tables", "joints-inch.yaml")
	text, err := os.ReadFile(table)
	if err != nil {
		t.Fatal(err)
	}
	title := func(n int) []byte {
		return bytes.Replace(text, []byte("\ntitle: "), fmt.Appendf(nil, "\ntitle: Text %d of ", n), 1)
	}
	if bytes.Equal(title(1), text) {
		t.Fatal("the table has no title to change")
	}
	writing, stop := context.WithCancel(t.Context())
	looked := make(chan error, 1)
	go func() {
		seen := 0
		for writing.Err() == nil {
			for _, page := range []string{"chart/joints-inch/", "joint/1310/", ""} {
				r, err := http.Get(address + page)
				if err != nil {
					looked <- err
					return
				}
				body, err := io.ReadAll(r.Body)
				r.Body.Close()
				seen++
				if err != nil || !strings.HasSuffix(string(body), "</html>\n") || !strings.Contains(string(body), "<h1") {
					looked <- fmt.Errorf("%s: status %d, error %v, and no whole page:\n%.300s", page, r.StatusCode, err, body)
					return
				}
			}
		}
		if seen < 10 {
			looked <- fmt.Errorf("only %d looks", seen)
		}
		looked <- nil
	}()
	const last = 30
	for n := 1; n <= last; n++ {
		f, err := os.Create(table) // empties it
		if err != nil {
			t.Fatal(err)
		}
		for rest := title(n); len(rest) > 0; {
			piece := min(len(rest), len(text)/9)
			if _, err := f.Write(rest[:piece]); err != nil {
				t.Fatal(err)
			}
			rest = rest[piece:]
			time.Sleep(10 * time.Millisecond) // shorter than the pause a build waits for
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
	}
	stop()
	if err := <-looked; err != nil {
		t.Error(err)
	}
	for during := 0; ; during++ {
		soon(t, "build of the last text", builds)
		status, page := fetch(t, address+"chart/joints-inch/")
		if status == 200 && strings.Contains(page, fmt.Sprintf("Text %d of ", last)) {
			t.Logf("%d builds ended before the one of the last text", during)
			return
		}
	}
}
