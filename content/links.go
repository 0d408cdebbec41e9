package content

import (
	"cmp"
	"fmt"
	"strings"
	"unicode"

	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/renderer"
	"github.com/yuin/goldmark/util"
)

// allowedLinks is the hint for a link that is refused.
const allowedLinks = "allowed are http, https, mailto, tel, a path in the site and a place in the page"

// refused says why an address may not be linked to; it is empty for one that may. A
// browser drops control characters and blanks at the ends, and tabs and line ends
// anywhere, before it looks for the scheme, and takes "\\" for "/" (URL Standard, 4.4):
// so none of them may stand in an address at all.
func refused(href string) string {
	if strings.HasPrefix(strings.TrimSpace(href), "//") || strings.ContainsFunc(href, func(r rune) bool { return r == '\\' || unicode.IsControl(r) }) {
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

// based puts in front of an address what the site puts there.
func (o Options) based(href string) string {
	for _, folder := range o.Shared {
		if strings.HasPrefix(href, folder) {
			return based(cmp.Or(o.Root, o.Base), href)
		}
	}
	return based(o.Base, href)
}

// autoAddress is where a link such as <https://example.org/> goes.
func autoAddress(n *ast.AutoLink, source []byte) string {
	href := string(n.URL(source))
	if n.AutoLinkType == ast.AutoLinkEmail && !strings.HasPrefix(strings.ToLower(href), "mailto:") {
		return "mailto:" + href
	}
	return href
}

// autoLinks writes links such as <https://example.org/>, whose address cannot be
// changed in the tree: a refused one becomes its own text.
type autoLinks struct{}

func (autoLinks) RegisterFuncs(r renderer.NodeRendererFuncRegisterer) {
	r.Register(ast.KindAutoLink, func(w util.BufWriter, source []byte, node ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		n := node.(*ast.AutoLink)
		href, label := autoAddress(n, source), util.EscapeHTML(n.Label(source))
		if refused(href) != "" {
			_, _ = w.Write(label)
			return ast.WalkContinue, nil
		}
		_, _ = fmt.Fprintf(w, `<a href="%s">%s</a>`, util.EscapeHTML(util.URLEscape([]byte(href), false)), label)
		return ast.WalkContinue, nil
	})
}
