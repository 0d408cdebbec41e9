package build

import (
	"net"
	"net/http"
	"net/netip"
	"net/url"
	"strings"
	"time"
)

// limits are how long one reader may keep a connection busy.
type limits struct {
	header, read, write, idle time.Duration
	headerBytes               int
}

// usual are the limits of [Serve]. The write limit is lifted for the live address,
// which stays open.
var usual = limits{header: 5 * time.Second, read: 10 * time.Second, write: 30 * time.Second, idle: time.Minute, headerBytes: 16 << 10}

func (l limits) server(h http.Handler) *http.Server {
	return &http.Server{
		Handler:           h,
		ReadHeaderTimeout: l.header,
		ReadTimeout:       l.read,
		WriteTimeout:      l.write,
		IdleTimeout:       l.idle,
		MaxHeaderBytes:    l.headerBytes,
	}
}

// knownHost answers only those who ask for this machine by a name that cannot be made
// to mean another: an IP address, localhost, or the host Serve was told to listen on.
//
// Otherwise a page of a stranger, whose name is first looked up as the stranger's
// machine and then as 127.0.0.1 (DNS rebinding), could read in the keeper's browser
// what is served to the keeper alone. Nor may such a page ask for the finder's files, which
// any page may read once they are published.
func knownHost(next http.Handler, listens string) http.Handler {
	named, _, err := net.SplitHostPort(listens)
	if err != nil {
		named = ""
	}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		ours := func(host string) bool {
			_, notIP := netip.ParseAddr(host)
			return notIP == nil || host == "localhost" || strings.HasSuffix(host, ".localhost") || host != "" && host == strings.ToLower(named)
		}
		origin := r.Header.Get("Origin")
		if ours(hostOnly(r.Host)) && (origin == "" || ours(originHost(origin))) {
			next.ServeHTTP(w, r)
			return
		}
		http.Error(w, "this program does not answer under that name; use the address it printed", http.StatusMisdirectedRequest)
	})
}

// originHost is the host of an Origin field (RFC 6454, 7); empty for one that names none.
func originHost(field string) string {
	u, err := url.Parse(field)
	if err != nil {
		return ""
	}
	return hostOnly(u.Host)
}

// hostOnly is the host of a Host field (RFC 9110, 7.2) in lower case, without its port,
// without the brackets of an IPv6 address and without the dot at the end.
func hostOnly(field string) string {
	host := field
	if h, _, err := net.SplitHostPort(field); err == nil {
		host = h
	}
	if inner, ok := strings.CutPrefix(host, "["); ok {
		host = strings.TrimSuffix(inner, "]")
	}
	return strings.ToLower(strings.TrimSuffix(host, "."))
}
