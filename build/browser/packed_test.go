//go:build browser

package browser

import (
	"bytes"
	"net/http"
	"net/http/httptest"
	"strings"
	"sync"
	"testing"

	"github.com/andybalholm/brotli"

	"capspan/build"
)

// packing sends the site as a host does that packs on its way: text by brotli to whoever
// takes it, and assets to be kept for ever.
type packing struct {
	plain http.Handler

	mu   sync.Mutex
	kept map[string][]byte // what was packed, by address: a second reader waits for no packing
}

// packedHost serves the site at an origin of its own.
func packedHost(t testing.TB) string {
	t.Helper()
	server := httptest.NewServer(&packing{plain: build.Handler(site, base), kept: map[string][]byte{}})
	t.Cleanup(server.Close)
	return server.URL
}

func (p *packing) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	answer := httptest.NewRecorder()
	p.plain.ServeHTTP(answer, r)
	head := w.Header()
	for name, values := range answer.Header() {
		head[name] = values
	}
	if strings.HasPrefix(r.URL.Path, base+"assets/") {
		head.Set("Cache-Control", "public, max-age=31536000, immutable")
	}
	body := answer.Body.Bytes()
	kind := head.Get("Content-Type")
	text := strings.HasPrefix(kind, "text/") || strings.Contains(kind, "json") || strings.Contains(kind, "xml")
	if text && answer.Code == http.StatusOK && strings.Contains(r.Header.Get("Accept-Encoding"), "br") {
		body = p.pack(r.URL.Path, body)
		head.Set("Content-Encoding", "br")
		head.Set("Vary", "Accept-Encoding")
		head.Del("Content-Length")
	}
	w.WriteHeader(answer.Code)
	w.Write(body) // a reader who left misses nothing
}

func (p *packing) pack(address string, body []byte) []byte {
	p.mu.Lock()
	defer p.mu.Unlock()
	if kept, ok := p.kept[address]; ok {
		return kept
	}
	var b bytes.Buffer
	packer := brotli.NewWriterLevel(&b, 9) // as on the way; what --compress writes is smaller
	packer.Write(body)                     // a buffer takes everything
	packer.Close()
	p.kept[address] = b.Bytes()
	return b.Bytes()
}
