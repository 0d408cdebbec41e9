package content

import (
	"fmt"
	"strings"
)

// allowedLinks is the hint for a link that is refused.
const allowedLinks = "allowed are http, https, mailto, tel, a path in the site and a place in the page"

// refused says why an address may not be linked to; it is empty for one that may.
func refused(href string) string {
	if strings.HasPrefix(href, "//") || strings.ContainsAny(href, "\\\x00\t\r\n") {
		return fmt.Sprintf("link to %q leaves the site without saying how", href)
	}
	scheme, ok := schemeOf(href)
	if !ok {
		return ""
	}
	switch scheme {
	case "http", "https", "mailto", "tel":
		return ""
	}
	return fmt.Sprintf("link to %q has the scheme %q", href, scheme)
}

// schemeOf finds what stands before the first colon, in lower case. A colon after a
// slash, "?" or "#" belongs to the path (RFC 3986, 4.2).
func schemeOf(href string) (string, bool) {
	i := strings.IndexAny(href, ":/?#")
	if i < 0 || href[i] != ':' {
		return "", false
	}
	return strings.ToLower(strings.TrimSpace(href[:i])), true
}

// based puts the site's base in front of an address that starts at its root.
func based(base, href string) string {
	if base == "" || base == "/" || !strings.HasPrefix(href, "/") {
		return href
	}
	return strings.TrimSuffix(base, "/") + href
}
