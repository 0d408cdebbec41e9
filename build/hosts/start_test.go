//go:build hosts

package hosts

import (
	"bytes"
	"fmt"
	"net"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
	"time"

	"capspan/build"
	"capspan/build/pseudo"
)

// published is a site in a folder, as a keeper would have it.
type published struct {
	out  build.Output
	dir  string
	base string
}

// retired are rows of each fate; the shipped chart has none yet.
const retired = `retired:
- {id: old-1310, to: ["1310"], why: it was renamed}
- {id: old-pair, to: ["1310", "1330"], why: it was split}
- {id: old-gone, why: nobody made it}
`

// packedAt are the sites of these tests by base, each built once: to pack one takes long, and
// nobody writes to it. What the builds have in common they find in worked.
var (
	packedAt = map[string]build.Output{}
	worked   = build.NewMemory()
)

// publish builds a site with all it can have, packed files and the pictures of previews
// included, and writes it where servers can read it.
func publish(t testing.TB, base string) published {
	t.Helper()
	out, made := packedAt[base]
	if !made {
		out = packed(t, base)
		packedAt[base] = out
	}
	// Not below t.TempDir, which only its owner may enter: servers run as somebody else.
	dir, err := os.MkdirTemp("", "capspan-hosts-")
	must(t, err)
	t.Cleanup(func() { os.RemoveAll(dir) })
	must(t, os.Chmod(dir, 0o755))
	if _, err := build.Write(dir+"/site", out); err != nil {
		t.Fatal(err)
	}
	return published{out: out, dir: dir, base: base}
}

func packed(t testing.TB, base string) build.Output {
	t.Helper()
	sources, src := t.TempDir(), build.Embedded()
	must(t, os.CopyFS(sources+"/tables", src.Tables))
	must(t, os.WriteFile(sources+"/tables/retired.yaml", []byte(retired), 0o644))
	pages, err := pseudo.Folder(src.Content, "web: https://joints.example") // a second language, of words made up
	must(t, err)
	must(t, os.CopyFS(sources+"/content", pages))
	src.Tables, src.Content = build.Folder(sources).Tables, build.Folder(sources).Content
	out, problems := build.Site(src, build.Options{Base: base, Compress: true, Previews: true, Memory: worked})
	if problems.Blocked() {
		t.Fatalf("the site has problems:\n%v", problems)
	}
	return out
}

func must(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

// nginxConf is the least nginx needs around the server block that hosting.md shows.
const nginxConf = `daemon off;
worker_processes 2;
pid %[1]s/nginx.pid;
error_log %[1]s/error.log warn;
include /etc/nginx/modules-enabled/*.conf;
events { worker_connections 1024; }
http {
    access_log off;
    sendfile on;
    client_body_temp_path %[1]s/body;
    proxy_temp_path %[1]s/proxy;
    fastcgi_temp_path %[1]s/fastcgi;
    uwsgi_temp_path %[1]s/uwsgi;
    scgi_temp_path %[1]s/scgi;
    server {
        listen 127.0.0.1:%[2]d backlog=511;
        set $capspan %[1]s/site;
        brotli_static on;
        include %[1]s/site/hosting/nginx.conf;
    }
    %[3]s
}
`

// nginx serves the site with the snippet and returns the address of the server. More goes
// beside the server block.
func (p published) nginx(t testing.TB, more string) string {
	t.Helper()
	port := freePort(t)
	conf := filepath.Join(p.dir, "nginx.conf")
	must(t, os.WriteFile(conf, fmt.Appendf(nil, nginxConf, p.dir, port, more), 0o644))
	return start(t, port, "nginx", "-c", conf)
}

// caddy serves the site with its snippet.
func (p published) caddy(t testing.TB) string {
	t.Helper()
	port := freePort(t)
	conf := filepath.Join(p.dir, "Caddyfile")
	must(t, os.WriteFile(conf, fmt.Appendf(nil, `{
	admin off
	auto_https off
}
http://127.0.0.1:%[2]d {
	root * %[1]s/site
	import %[1]s/site/hosting/Caddyfile
}
`, p.dir, port), 0o644))
	return start(t, port, "caddy", "run", "--config", conf, "--adapter", "caddyfile")
}

func freePort(t testing.TB) int {
	t.Helper()
	l, err := net.Listen("tcp", "127.0.0.1:0")
	must(t, err)
	defer l.Close()
	return l.Addr().(*net.TCPAddr).Port
}

// start runs a server until the test ends and waits until it answers. It ends as its
// service would end it: by SIGTERM.
func start(t testing.TB, port int, program string, args ...string) string {
	t.Helper()
	path, err := exec.LookPath(program)
	if err != nil && program == "nginx" {
		path, err = exec.LookPath("/usr/sbin/nginx") // not on everybody's path
	}
	if err != nil {
		t.Fatalf("%s is not installed: %v", program, err)
	}
	var said bytes.Buffer
	server := exec.Command(path, args...)
	server.Stdout, server.Stderr = &said, &said
	server.Env = append(os.Environ(), "HOME="+t.TempDir())
	must(t, server.Start())
	ended := make(chan error, 1)
	go func() { ended <- server.Wait() }()
	t.Cleanup(func() {
		server.Process.Signal(syscall.SIGTERM)
		<-ended
		if t.Failed() {
			t.Logf("%s said:\n%s", program, strings.TrimSpace(said.String()))
		}
	})
	address := fmt.Sprintf("127.0.0.1:%d", port)
	for range 600 {
		if c, err := net.Dial("tcp", address); err == nil {
			c.Close()
			return address
		}
		select {
		case err := <-ended:
			ended <- err
			t.Fatalf("%s ended at once: %v\n%s", program, err, said.String())
		case <-time.After(50 * time.Millisecond):
		}
	}
	t.Fatalf("%s does not answer", program)
	return ""
}
