package tables

import (
	"bytes"
	"io/fs"
	"strings"
	"sync"
	"sync/atomic"

	"capspan/build/diag"
)

// Reader loads a folder again and again, as [Load] does each time. Beside the same registry
// of sources, a table whose file is as it was is not read anew, of another only the rows whose
// lines are others (again_table.go), and only those are joined to the chart (again_connect.go).
// One load at a time.
type Reader struct {
	registry []byte
	sources  map[string]*Source
	list     []*Source
	mu       sync.Mutex       // of the parts: several are read at a time
	parts    map[string]*part // as they were read, before their rows knew of each other
	readings atomic.Uint64    // how many rows were read
	before   *Set             // the last of which nothing was wrong between the rows
	memory   setMemory
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
	l.again, l.set.memory = r, &r.memory
	l.readTables(fsys, names)
	r.forget(names)
	return l.finish()
}

// forget lets go of tables that are no longer there.
func (r *Reader) forget(names []string) {
	there := map[string]bool{}
	for _, name := range names {
		there[name] = true
	}
	for name := range r.parts {
		if !there[name] {
			delete(r.parts, name)
		}
	}
	r.memory.forget(there)
}

// part reads a table, and what it can of it from before. What it gives is the load's own.
func (r *Reader) part(l *loader, fsys fs.FS, name string) *part {
	r.mu.Lock()
	before := r.parts[name]
	r.mu.Unlock()
	var p *part
	if before != nil {
		if text := source(fsys, name); text != nil && bytes.Equal(text, before.table.source) {
			return before.copy()
		} else if text != nil {
			p = before.edited(l, text)
		}
	}
	if p == nil {
		p = l.readWhole(fsys, name)
	}
	if p.table == nil {
		return p
	}
	r.number(p)
	p.loader = loader{list: p.list, links: p.links, lim: p.lim} // nothing of this load is held
	if p.places = placesOf(p); p.places != nil || before == nil || before.places == nil {
		r.mu.Lock()
		r.parts[name] = p
		r.mu.Unlock()
	} // else the one before the mistake is the better one to go on from
	return p.copy()
}

// number gives the rows that were read now their numbers.
func (r *Reader) number(p *part) {
	for _, row := range p.table.Rows {
		if row.reading == 0 {
			row.reading = r.readings.Add(1)
			for _, v := range row.Values {
				row.measured = row.measured || v.Measured != nil
			}
		}
		row.Table = nil // it is told by the copies
	}
}

// Reading is the number under which a [Reader] read the row, 0 when none did. Rows of one
// number were read from the same lines, below the same head and beside the same registry: they
// say the same, but for what other rows make of them: twins, and the ends of a conversion joint.
func (r *Row) Reading() uint64 { return r.reading }

// places are where the rows stand in the file of a table that can be read row by row.
type places struct {
	indent string // of a row's first line, with the dash
	starts []lineAt
}

// lineAt is the beginning of a line.
type lineAt struct{ at, line int }

// placesOf finds them; nil when something is wrong with the table, or the rows are not what
// stands last in it, each from one line to the next.
func placesOf(p *part) *places {
	first, rows := p.reader.first, p.table.Rows
	if len(p.list) > 0 || len(rows) == 0 || first.Col < 3 {
		return nil
	}
	lines := lineStarts(p.table.source)
	out := &places{indent: strings.Repeat(" ", first.Col-3) + "- "}
	out.find(p.table.source, lineAt{lines[first.Line-1], first.Line})
	if len(out.starts) != len(rows) {
		return nil
	}
	for n, row := range rows {
		last := len(lines)
		if n+1 < len(rows) {
			last = out.starts[n+1].line - 1
		}
		if row.Pos.Line < out.starts[n].line || row.Pos.Line > last {
			return nil
		}
	}
	return out
}

// find lists where rows begin, from a place on, which is to be the first of them.
func (p *places) find(text []byte, from lineAt) {
	for at := from; at.at < len(text); at.line++ {
		if bytes.HasPrefix(text[at.at:], []byte(p.indent)) {
			p.starts = append(p.starts, at)
		} else if len(p.starts) == 0 {
			return
		}
		end := bytes.IndexByte(text[at.at:], '\n')
		if end < 0 {
			return
		}
		at.at += end + 1
	}
}

// text is what stands from the beginning of a row to that of the next.
func (p *places) text(of []byte, n int) []byte {
	if n+1 < len(p.starts) {
		return of[p.starts[n].at:p.starts[n+1].at]
	}
	return of[p.starts[n].at:]
}
