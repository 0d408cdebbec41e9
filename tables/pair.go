package tables

import (
	"bytes"
	"io/fs"
	"slices"
	"sync"

	"capspan/build/diag"
)

// LoadPair reads two issues of the chart, as [Load] does each of them. A table whose file
// is the same in both, beside the same registry of sources, is read once: of a large chart
// of which somebody changes a row, that is nearly all.
func LoadPair(older, newer fs.FS) (sets [2]*Set, problems [2]diag.List) {
	first, names := begin(older, shipped)
	first.kept = &kept{folder: newer, parts: map[string]*part{}}
	first.readTables(older, names)
	second, names := begin(newer, shipped)
	if a, b := source(older, registryFile), source(newer, registryFile); a != nil && bytes.Equal(a, b) {
		second.sources, second.set.Sources = first.sources, first.set.Sources // rows of both name the very same
		second.kept = &kept{parts: first.kept.parts}
	}
	first.kept = nil
	var group sync.WaitGroup
	group.Go(func() { sets[0], problems[0] = first.finish() })
	second.readTables(newer, names)
	sets[1], problems[1] = second.finish()
	group.Wait()
	return sets, problems
}

// source is a file's text, nil when it cannot be read.
func source(folder fs.FS, name string) []byte {
	text, err := readLimited(folder, name, shipped.bytes)
	if err != nil {
		return nil
	}
	return text
}

// kept are tables of one folder as they are in another too, before their rows know of each
// other.
type kept struct {
	folder fs.FS // the other one; nil when nothing more is kept
	mutex  sync.Mutex
	parts  map[string]*part
}

// take gives a table that was kept, once.
func (k *kept) take(name string) *part {
	if k == nil {
		return nil
	}
	k.mutex.Lock()
	defer k.mutex.Unlock()
	p := k.parts[name]
	delete(k.parts, name)
	return p
}

// keep puts a copy of a table aside when the other folder has the same file.
func (k *kept) keep(name string, p *part) {
	if k == nil || k.folder == nil || p.table == nil || !bytes.Equal(p.table.source, source(k.folder, name)) {
		return
	}
	k.mutex.Lock()
	defer k.mutex.Unlock()
	k.parts[name] = p.copy()
}

// copy is the same table with rows of its own. What no resolving touches is shared.
func (p *part) copy() *part {
	out, table, reader := *p, *p.table, *p.reader
	out.list, out.table, out.reader = slices.Clone(p.list), &table, &reader
	rows := make([]Row, len(table.Rows))
	table.Rows = make([]*Row, len(rows))
	for n, row := range p.table.Rows {
		rows[n] = *row
		rows[n].Table, table.Rows[n] = &table, &rows[n]
	}
	return &out
}
