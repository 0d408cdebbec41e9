package tables

import (
	"bytes"
	"errors"
	"io"
	"io/fs"
	"slices"
	"strings"

	"capspan/build/diag"
)

// folder is where the files stand in the project; every problem's path starts with it.
const folder = "tables/"

const (
	registryFile = "sources.yaml"
	ownSources   = "own-sources.yaml" // of a keeper's own tables, beside the registry
	retiredFile  = "retired.yaml"
)

// besides the tables: each may be missing, and is then empty.
var besides = []string{registryFile, ownSources, retiredFile, historyFile}

// limits bound what a contributed file may cost. Tests lower them.
type limits struct {
	bytes int // of one file: about five thousand rows, more than a phone should load for one page
	depth int // of nesting: a value among others is at 7
	rows  int // of the whole chart: what loading and matching were measured with
	text  int // characters of one text: a note of a few sentences
}

var shipped = limits{bytes: 1 << 20, depth: 8, rows: 200_000, text: 400}

// Load reads every *.yaml at the root of fsys: the registry of sources, the retired
// ids, the history and the tables. It returns what could be read and every problem, sorted; the
// set is only to be published when nothing in the list blocks ([diag.List.Blocked]).
func Load(fsys fs.FS) (*Set, diag.List) { return load(fsys, shipped) }

func load(fsys fs.FS, lim limits) (*Set, diag.List) {
	l, names := begin(fsys, lim)
	l.readTables(fsys, names)
	return l.finish()
}

// begin reads what stands beside the tables, and lists those.
func begin(fsys fs.FS, lim limits) (*loader, []string) {
	l := &loader{set: &Set{}, lim: lim, folder: folder, sources: map[string]*Source{}, readers: map[*Table]*reader{}}
	names, err := tableFiles(fsys, &l.list)
	if err != nil {
		l.list.Add(diag.Problem{Pos: diag.Pos{File: folder}, Rule: "unreadable", Fact: cause(err)})
	}
	for _, name := range []string{registryFile, ownSources} {
		if r, root := l.open(fsys, name); root != nil {
			l.readRegistry(r, root)
		}
	}
	if r, root := l.open(fsys, retiredFile); root != nil {
		l.readRetired(r, root)
	}
	if r, root := l.open(fsys, historyFile); root != nil {
		l.readHistory(r, root)
	}
	return l, names
}

// finish resolves what the rows say of each other.
func (l *loader) finish() (*Set, diag.List) {
	told := len(l.list)
	if l.again == nil || !l.connectAgain(l.again.before) {
		l.connect()
	}
	if l.again != nil && len(l.list) == told {
		l.again.before = l.set
	}
	for i := range l.list {
		l.list[i].Level = levels[l.list[i].Rule]
	}
	l.list.Sort()
	return l.set, l.list
}

// tableFiles lists the tables in the order of their names.
func tableFiles(fsys fs.FS, list *diag.List) ([]string, error) {
	names, err := yamlFiles(fsys, folder, list)
	if err != nil {
		return nil, err
	}
	names = slices.DeleteFunc(names, func(name string) bool { return slices.Contains(besides, name) })
	if len(names) == 0 {
		list.Add(diag.Problem{Pos: diag.Pos{File: folder}, Rule: "no-tables", Fact: "no table is in the folder"})
	}
	return names, nil
}

// yamlFiles lists the files of a folder that are read, in the order the folder gives them: by
// name, and a keeper's own behind those of the chart, so that of two rows of one id the
// keeper's is told.
func yamlFiles(fsys fs.FS, folder string, list *diag.List) ([]string, error) {
	entries, err := fs.ReadDir(fsys, ".")
	if err != nil {
		return nil, err
	}
	var names []string
	for _, e := range entries {
		switch name := e.Name(); {
		case strings.HasSuffix(name, ".yaml"):
			names = append(names, name)
		case strings.HasSuffix(name, ".yml"):
			list.Add(diag.Problem{Pos: diag.Pos{File: folder + name}, Rule: "table-name",
				Fact: "the file's name ends in \".yml\" and is not read", Hints: []string{"let it end in .yaml"}})
		}
	}
	return names, nil
}

// loader holds what one Load gathers.
type loader struct {
	set     *Set
	lim     limits
	folder  string // where the files stand, as problems name it
	list    diag.List
	sources map[string]*Source // by id
	links   []*links           // what rows say of other rows, in their order; resolved by connect
	readers map[*Table]*reader // of the tables that were read
	named   [][]namedTwin      // of the twins that a row names, those that are there, each once, in the chart's order
	kept    *kept              // nil for a chart that is read alone
	again   *Reader            // nil for one that is read once
}

// open reads and parses one file.
func (l *loader) open(fsys fs.FS, name string) (*reader, *node) {
	r := l.read(fsys, name)
	if r.source == nil {
		return r, nil
	}
	return r, r.parse(r.source)
}

// read reads one file; its source is nil when there is none to parse.
func (l *loader) read(fsys fs.FS, name string) *reader {
	r := &reader{file: l.folder + name, lim: l.lim, list: &l.list}
	whole := diag.Pos{File: r.file}
	src, err := readLimited(fsys, name, l.lim.bytes)
	switch {
	case errors.Is(err, fs.ErrNotExist) && slices.Contains(besides, name):
	case errors.Is(err, errTooLarge):
		l.list.Add(diag.Problem{Pos: whole, Rule: "file-size",
			Fact: numbered("the file is larger than %d bytes", l.lim.bytes), Hints: []string{"split the table into two"}})
	case err != nil:
		l.list.Add(diag.Problem{Pos: whole, Rule: "unreadable", Fact: cause(err)})
	default:
		r.source = src
	}
	return r
}

var (
	errTooLarge = errors.New("file too large")
	errFolder   = errors.New("it is a folder")
)

// readLimited never holds more of a file than it may have. The size is asked first, to
// spare the reading, and not trusted: a device has none, and a file may grow.
func readLimited(fsys fs.FS, name string, most int) ([]byte, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	info, err := file.Stat()
	switch {
	case err != nil:
		return nil, err
	case info.IsDir():
		return nil, &fs.PathError{Op: "read", Path: name, Err: errFolder}
	case info.Size() > int64(most):
		return nil, errTooLarge
	}
	data := bytes.NewBuffer(make([]byte, 0, info.Size()+bytes.MinRead))
	_, err = data.ReadFrom(io.LimitReader(file, int64(most)+1))
	if err == nil && data.Len() > most {
		return nil, errTooLarge
	}
	return data.Bytes(), err // never nil of a file that was read, not even of an empty one
}

// cause is the reason of a disk error without the path, which the problem's place says.
func cause(err error) string {
	var path *fs.PathError
	if errors.As(err, &path) {
		return "the file cannot be read: " + path.Err.Error()
	}
	return "the file cannot be read: " + err.Error()
}
