package tables

import (
	"bytes"
	"io/fs"

	"capspan/build/diag"
)

// Reader loads a folder again and again, as [Load] does each time; a table whose file is as
// it was, beside the same registry of sources, is not read anew. One load at a time.
type Reader struct {
	registry []byte
	sources  map[string]*Source
	list     []*Source
	parts    map[string]*part // as they were read, before their rows knew of each other
}

// Load is [Load].
func (r *Reader) Load(fsys fs.FS) (*Set, diag.List) {
	l, names := begin(fsys, shipped)
	registry := bytes.Join([][]byte{source(fsys, registryFile), source(fsys, ownSources)}, []byte{0})
	if r.parts != nil && bytes.Equal(registry, r.registry) {
		l.sources, l.set.Sources = r.sources, r.list // rows that were read before name the very same
	} else {
		r.registry, r.sources, r.list, r.parts = registry, l.sources, l.set.Sources, map[string]*part{}
	}
	l.kept = &kept{folder: fsys, again: true, parts: r.parts}
	l.readTables(fsys, names)
	return l.finish()
}
