// Package static owns what the browser loads: TypeScript, CSS and icons, and the
// bundling of them with esbuild. [Bundle] turns the sources into files named by
// their content; the build writes them and the templates link to them by their
// plain names.
//
// The bundle of the identification core, matcher.js, is also what package matcher
// runs inside the Go program: the very same bytes. So it is with the driveline calculations
// and package driveline.
package static

import (
	"crypto/sha512"
	"embed"
	"encoding/base64"
	"slices"
)

// FS holds the sources. Bundle never uses it by itself: the caller passes it.
//
//go:embed matcher/*.ts driveline/*.ts order/*.ts shaft/*.ts worker/*.ts schemas parts words icons
var FS embed.FS

// File is one output file: a slash-separated path under the site's root, such as
// "assets/matcher.3f9a1c2d.js".
type File struct {
	Path  string
	Bytes []byte
}

// Integrity is the file's SHA-384 as the integrity attribute of a script or a style
// sheet wants it (Subresource Integrity, W3C, 3.5).
func (f File) Integrity() string {
	sum := sha512.Sum384(f.Bytes)
	return "sha384-" + base64.StdEncoding.EncodeToString(sum[:])
}

// Assets is a bundled set.
type Assets struct {
	Files  []File            // sorted by path
	names  map[string]string // "matcher.js" to its path
	pieced bool              // made by BundlePieced
}

// Path returns where the asset of that plain name ("sheet.css", "matcher.js",
// "identify.js", "icon.svg") is written; it is empty for a name that is not there.
func (a Assets) Path(name string) string { return a.names[name] }

// Core is the identification core as the program runs it: the very scripts the browser
// loads, one behind the other, with the script of pieces where the chart is in pieces.
func (a Assets) Core() []byte {
	var all []byte
	for _, name := range append(slices.Clone(coreNames), PiecesScript) {
		all = append(all, a.Bytes(name)...)
	}
	return all
}

// Bytes returns the content of the asset of that plain name, nil for a name that is
// not there.
func (a Assets) Bytes(name string) []byte {
	path := a.names[name]
	for _, f := range a.Files {
		if f.Path == path {
			return f.Bytes
		}
	}
	return nil
}
