//go:build browser

package browser

import (
	"net/http"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/build"
)

// A host that sends readers of two listed addresses elsewhere, as some do with names
// that end in .html: neither is kept, the rest is, and online the host has its way.
func TestRedirectIsNotKept(t *testing.T) {
	whole := build.Handler(site, base)
	h := newHost(t, http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case base + "about/sources/":
			http.Redirect(w, r, base+"about/", http.StatusFound)
		case base + "not-kept.html":
			http.Redirect(w, r, base+"not-kept", http.StatusMovedPermanently)
		default:
			whole.ServeHTTP(w, r)
		}
	}))
	b := openTab(t)
	b.visit(h, base)
	b.kept(len(keptFiles(site)) - 2)
	b.promised("neither to be kept", `(async () => {
		const cache = await caches.open((await caches.keys())[0]);
		const kept = (await cache.keys()).map(({url}) => url);
		return kept.length > 300 && !kept.some((url) => url.endsWith("about/sources/") || url.includes("not-kept"));
	})()`)
	b.visit(h, base+"about/sources/")
	if at := see[string](b, "location.pathname"); at != base+"about/" {
		t.Errorf("the host sent the reader to %sabout/, the page is %s", base, at)
	}
	h.down()
	b.visit(h, base+"joint/1310/")
	if got := b.heading(); !strings.Contains(got, "1310") {
		t.Errorf("without a network the row is shown as %q", got)
	}
}

// A retired row leads to the row that took its place, without a network as on a host
// that can redirect.
func TestRetiredRowOffline(t *testing.T) {
	src := build.Embedded()
	tables := mapped(t, src.Tables)
	tables["retired.yaml"] = &fstest.MapFile{Data: []byte("retired:\n  - {id: old-1310, to: [\"1310\"], why: renamed}\n")}
	src.Tables = tables
	out, problems := siteOf(src, build.Options{Base: base, Language: "en"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	if len(out.Redirects) != 1 {
		t.Fatalf("redirects: %v", out.Redirects)
	}
	h := newHost(t, build.Handler(out, base))
	b := openTab(t)
	b.visit(h, base)
	b.kept(len(keptFiles(out)) - 1) // not the page that the host never shows
	h.down()
	for _, address := range []string{"joint/old-1310/", "joint/old-1310"} {
		b.visit(h, base+address)
		if at := see[string](b, "location.pathname"); at != base+"joint/1310/" {
			t.Errorf("%s led to %s, want the row that took its place", address, at)
		}
	}
}
