//go:build hosts

package hosts

import (
	"fmt"
	"os"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// connections are kept open and busy at once.
const connections = 200

// TestLoad sends many readers at once to nginx for two seconds: nobody may be refused.
func TestLoad(t *testing.T) {
	p := publish(t, "/sub/path/")
	address := p.nginx(t, "")
	if rate := wrk(t, 2, "http://"+address+"/sub/path/joint/1310/", "br"); rate < 100 {
		t.Errorf("%.0f requests a second", rate)
	}
}

// BenchmarkLoad sends them for 20 seconds to a page with its packed form and headers, and
// as long to a bare file of the bytes that are sent, from an nginx that knows nothing of
// the site. ns/op means nothing here.
//
//	go test -tags hosts -run '^$' -bench Load -benchtime 1x ./build/hosts/
func BenchmarkLoad(b *testing.B) {
	p := publish(b, "/")
	sizes := map[string]int{}
	for _, f := range p.out.Files {
		sizes[f.Path] = len(f.Bytes)
	}
	port := freePort(b)
	must(b, os.MkdirAll(p.dir+"/bare", 0o755))
	address := p.nginx(b, fmt.Sprintf("server { listen 127.0.0.1:%d backlog=511; root %s/bare; }", port, p.dir))
	for _, page := range []struct{ name, address, file, encoding string }{
		{"home", "/", "index.html", "identity"},
		{"row", "/joint/1310/", "joint/1310/index.html", "identity"},
		{"row-br", "/joint/1310/", "joint/1310/index.html.br", "br"},
	} {
		must(b, os.WriteFile(p.dir+"/bare/"+page.name, []byte(strings.Repeat("x", sizes[page.file])), 0o644))
		b.Run(page.name, func(b *testing.B) {
			for b.Loop() {
				site := wrk(b, 20, "http://"+address+page.address, page.encoding)
				bare := wrk(b, 20, fmt.Sprintf("http://127.0.0.1:%d/%s", port, page.name), page.encoding)
				b.ReportMetric(site, "site-req/s")
				b.ReportMetric(bare, "bare-req/s")
				b.ReportMetric(float64(sizes[page.file]), "bytes")
			}
		})
	}
}

var requestsPerSecond = regexp.MustCompile(`Requests/sec: +([0-9.]+)`)

// wrk returns the requests a second; one error of any kind fails the test.
func wrk(t testing.TB, seconds int, address, encoding string) float64 {
	t.Helper()
	path, err := exec.LookPath("wrk")
	if err != nil {
		t.Fatalf("wrk is not installed: %v", err)
	}
	said, err := exec.Command(path, "-t2", fmt.Sprintf("-c%d", connections), fmt.Sprintf("-d%ds", seconds),
		"-H", "Accept-Encoding: "+encoding, address).CombinedOutput()
	if err != nil {
		t.Fatalf("wrk: %v\n%s", err, said)
	}
	for _, bad := range []string{"Socket errors", "Non-2xx"} {
		if strings.Contains(string(said), bad) {
			t.Errorf("wrk on %s:\n%s", address, said)
		}
	}
	found := requestsPerSecond.FindSubmatch(said)
	if found == nil {
		t.Fatalf("wrk gave no rate:\n%s", said)
	}
	rate, err := strconv.ParseFloat(string(found[1]), 64)
	must(t, err)
	return rate
}
