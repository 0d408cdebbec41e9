package tables

import (
	"io/fs"
	"runtime"
	"strings"
)

// readTables reads the tables, several at a time, and joins them in the order of their
// names: what is told of a folder does not depend on the number of cores. Behind the table
// that makes the chart too long none is looked at.
func (l *loader) readTables(fsys fs.FS, names []string) {
	stop := make(chan struct{})
	defer close(stop)
	at, rows := 0, 0
	for part := range l.parts(fsys, names, stop) {
		name := names[at]
		at++
		l.list.Add(part.list...)
		part.reader.list = &l.list // what rows say of others is judged later
		if part.table == nil {
			continue
		}
		l.links = append(l.links, part.links...)
		l.readers[part.table] = part.reader
		l.set.Tables = append(l.set.Tables, part.table)
		if rows += len(part.table.Rows); rows > l.lim.rows {
			part.reader.fail(part.root, strings.TrimSuffix(name, ".yaml"), "too-many-rows",
				numbered("the chart has %d rows with this table; at most %d are read", rows, l.lim.rows))
			return
		}
	}
}

// part is a table being read beside others: it has the sources in common with them, and a
// list of problems of its own.
type part struct {
	loader
	reader *reader
	root   *node
	table  *Table  // nil for a file that could not be read
	places *places // of the rows; nil for a table that is read whole each time
}

// parts gives the tables in their order while others are read, not many more than there
// are cores, so that a folder of any size takes little room.
func (l *loader) parts(fsys fs.FS, names []string, stop <-chan struct{}) <-chan *part {
	blank := *l // what is told and joined meanwhile is not theirs
	blank.list, blank.links = nil, nil
	ready := make(chan chan *part, runtime.GOMAXPROCS(0))
	out := make(chan *part)
	go func() {
		defer close(ready)
		for _, name := range names {
			one := make(chan *part, 1)
			select {
			case ready <- one:
			case <-stop:
				return
			}
			go func() { one <- blank.readPart(fsys, name) }()
		}
	}()
	go func() {
		defer close(out)
		for one := range ready {
			select {
			case out <- <-one:
			case <-stop:
				return
			}
		}
	}()
	return out
}

func (l *loader) readPart(fsys fs.FS, name string) *part {
	if l.again != nil {
		return l.again.part(l, fsys, name)
	}
	if p := l.kept.take(name); p != nil {
		return p
	}
	p := l.readWhole(fsys, name)
	l.kept.keep(name, p)
	return p
}

// readWhole reads a file from its beginning to its end.
func (l *loader) readWhole(fsys fs.FS, name string) *part {
	p := &part{loader: *l}
	if p.reader = p.read(fsys, name); p.reader.source != nil {
		p.readTableFile(strings.TrimSuffix(name, ".yaml"))
	}
	return p
}

// readTableFile reads the table row by row, or as a whole where only the YAML library knows
// what is written there.
func (p *part) readTableFile(name string) {
	before := *p.reader
	if !p.quickTable(name) {
		*p.reader = before
		p.list, p.links, p.table = nil, nil, nil
		if p.root = p.reader.parseWhole(p.reader.source); p.root != nil {
			p.table = p.readTable(p.reader, p.root, name)
		}
	}
	if p.root != nil {
		p.root = &node{Line: p.root.Line, Column: p.root.Column} // for the place of a problem with the table
	}
}
