package publish

import (
	"context"
	"crypto/md5"
	"encoding/hex"
	"path"
	"strings"

	"capspan/build"
)

// object is a file of the site as it lies in a bucket.
type object struct {
	path  string
	bytes []byte // packed, when the encoding says so
	turn  int
	entry entry
}

// objects makes the objects of a site. The packed files beside others (.br, .gz) are for
// servers that choose between them; a bucket cannot, and gets one form of each file.
func objects(files []build.File, plain bool) []object {
	named := map[string]bool{}
	for _, f := range files {
		named[f.Path] = true
	}
	var list []object
	for _, f := range files {
		ending := path.Ext(f.Path)
		if (ending == ".br" || ending == ".gz") && named[strings.TrimSuffix(f.Path, ending)] {
			continue
		}
		list = append(list, object{path: f.Path, bytes: f.Bytes, turn: turn(f.Path)})
	}
	// No fault can come of it, and nobody waits long enough to call it off.
	_ = each(context.Background(), cores(), len(list), func(_ context.Context, n int) error {
		o := &list[n]
		o.entry.Type, o.entry.Caching = build.Fields(o.path)
		if !plain && forBrowsers(o.path) {
			if packed, smaller := build.Gzip(build.File{Path: o.path, Bytes: o.bytes}); smaller {
				o.bytes, o.entry.Encoding = packed, "gzip"
			}
		}
		sum := md5.Sum(o.bytes) // what a store calls the entity tag of an object put in one piece
		o.entry.MD5 = hex.EncodeToString(sum[:])
		return nil
	})
	return list
}

// forBrowsers reports whether a file is asked for by browsers alone: pages and what they
// load. Every browser unpacks gzip. Open data, schemas, feeds and lists are read by
// programs too, of which many take what they are sent as it is.
func forBrowsers(name string) bool {
	if strings.HasPrefix(name, "data/") || strings.HasPrefix(name, "schema/") {
		return false
	}
	switch path.Ext(name) {
	case ".html", ".css", ".js", ".json", ".svg", ".webmanifest":
		return true
	}
	return false
}

// turn is when a file may be seen: what pages load comes first, then data, pages, the
// service worker, whose list names all of them, and last what is for the keeper. What
// goes, goes the other way round.
func turn(name string) int {
	switch stage := build.StageOf(name); {
	case stage == build.Assets:
		return 0
	case stage == build.Hosting:
		return 4
	case name == "worker.js":
		return 3
	case path.Ext(name) == ".html":
		return 2
	}
	return 1
}
