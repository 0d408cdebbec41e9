package build

import (
	"bytes"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// kind is a kind of file as servers want it: the character set apart.
type kind struct{ ending, media, charset string } // the ending without its dot

func kinds() []kind {
	var list []kind
	for _, ending := range slices.Sorted(maps.Keys(types)) {
		media, charset, _ := strings.Cut(types[ending], "; charset=")
		list = append(list, kind{ending[1:], media, charset})
	}
	return list
}

// nginxFile is to be included in a server block. It names no folder of the machine, so
// that the next build may write it again.
//
// nginx drops all inherited add_header lines where a location has one of its own; so
// they stand in each location, whole.
func nginxFile(base string, to []Redirect, folders []string) []byte {
	var b bytes.Buffer
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	fields := func(indent string, p area) {
		for _, h := range slices.Concat(headers, p.fields) {
			line(`%sadd_header %s "%s" always;`, indent, h.name, h.value)
		}
	}
	line("# Written by capspan build, and again by the next one: change nothing here. In your server block:")
	line("#     set $capspan /srv/www/joints;    # the folder that was built")
	line("#     include /srv/www/joints/hosting/nginx.conf;")
	for _, r := range to {
		line(`location = "%s" { return 301 "%s"; }`, r.From, r.To)
		line(`location = "%s" { return 301 "%s"; }`, strings.TrimSuffix(r.From, "/"), r.To)
	}
	line("absolute_redirect off;    # right behind a proxy too")
	if base == "/" {
		line("location / {")
		line("    root $capspan;")
	} else {
		line(`location = "%s" { return 301 "%s"; }`, strings.TrimSuffix(base, "/"), base)
		line(`location "%s" {`, base)
		line("    alias $capspan/;")
	}
	line("    index index.html;")
	line("    error_page 403 404 =404 %s404.html;", base)
	line("    types {")
	var text []string
	for _, k := range kinds() {
		line("        %s %s;", k.media, k.ending)
		if k.charset != "" && k.media != "text/html" { // nginx has text/html by itself, and complains of two
			text = append(text, k.media)
		}
	}
	line("    }")
	line("    default_type application/octet-stream;")
	line("    charset utf-8;")
	line("    charset_types %s;", strings.Join(text, " "))
	line("    # Files packed by capspan build --compress are sent as they are. For .br files load nginx's brotli")
	line("    # module (Debian: libnginx-mod-http-brotli-static) and put brotli_static on; into your server block.")
	line("    gzip_static on;")
	line("    gzip_vary on;")
	for _, p := range areasOf(folders) {
		if p.folder == "" {
			fields("    ", p)
			continue
		}
		line(`    location "%s%s" {`, base, p.folder)
		fields("        ", p)
		if p.language != "" {
			line("        error_page 403 404 =404 %s%s404.html;", base, p.language)
		}
		line("    }")
	}
	line("    # For whoever puts the site up, not for its readers.")
	line(`    location ~ "^%s(_headers|_redirects|hosting/.*|(.*/)?\..*)$" { return 404; }`, strings.ReplaceAll(base, ".", `\.`))
	line("}")
	return b.Bytes()
}

// caddyFile is to be imported into a site block that names its root.
func caddyFile(base string, to []Redirect, folders []string) []byte {
	var b bytes.Buffer
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	line("# Written by capspan build, and again by the next one: change nothing here. In your site block:")
	line("#     root * /srv/www/joints    # the folder that was built")
	line("#     import /srv/www/joints/hosting/Caddyfile")
	for _, r := range to {
		line("redir %s %s 301", r.From, r.To)
		line("redir %s %s 301", strings.TrimSuffix(r.From, "/"), r.To)
	}
	line("header {")
	for _, h := range headers {
		line(`	%s "%s"`, h.name, h.value)
	}
	line("}")
	areas := areasOf(folders)
	for n, p := range areas {
		line("@capspan_%s {", p.name)
		if p.folder != "" {
			line("	path %s%s*", base, p.folder)
		}
		for _, before := range areas[:n] { // each address lies in one area
			line("	not path %s%s*", base, before.folder)
		}
		line("}")
		line("header @capspan_%s {", p.name)
		for _, h := range p.fields {
			line(`	%s "%s"`, h.name, h.value)
		}
		line("}")
	}
	for _, k := range kinds() {
		line("@capspan_%s path *.%s", k.ending, k.ending)
		line(`header @capspan_%s Content-Type "%s"`, k.ending, types["."+k.ending])
	}
	if base == "/" {
		line("handle {")
	} else {
		line("redir %s %s 301", strings.TrimSuffix(base, "/"), base)
		line("handle_path %s* {", base)
	}
	line("	# For whoever puts the site up, not for its readers.")
	line("	@capspan_ours path /_headers /_redirects /hosting /hosting/* /.* */.*")
	line("	error @capspan_ours 404")
	line("	file_server {")
	line("		precompressed br gzip")
	line("	}")
	line("}")
	line("handle_errors {")
	line(`	header Content-Type "%s"`, types[".html"])
	for n, folder := range folders {
		line("	@capspan_language%d path %s%s*", n+1, base, folder)
		line("	rewrite @capspan_language%d /%s404.html", n+1, folder)
	}
	if len(folders) == 0 {
		line("	rewrite * /404.html")
	} else {
		line("	@capspan_language not path %s%s*", base, strings.Join(folders, "* "+base))
		line("	rewrite @capspan_language /404.html")
	}
	line("	file_server")
	line("}")
	return b.Bytes()
}
