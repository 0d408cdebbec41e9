// Package build makes the site: it loads the tables, pages, scripts and frames,
// checks them together, renders every page and writes the difference.
//
// [Site] is the recipe and touches no disk: folders come in as [Sources], files go
// out as an [Output]. [Write] puts an output into a folder so that at any moment
// every page there is complete; [Serve] does both again whenever a source changes.
// [Check] is the first half of the recipe: every problem, and nothing built.
package build

import (
	"io/fs"

	"capspan/content"
	"capspan/static"
	"capspan/tables"
	"capspan/templates"
)

// Sources are the four folders a site is made from.
type Sources struct {
	Tables, Content, Static, Templates fs.FS

	Own fs.FS // a keeper's own folder, laid over them (own.go); nil for none

	language string // that Static speaks (translated.go); "" means English
}

// Embedded returns the folders the program carries in itself.
func Embedded() Sources {
	return Sources{Tables: tables.FS, Content: content.FS, Static: static.FS, Templates: templates.FS}
}

// Options say how the site is addressed.
type Options struct {
	Base string // the path the site lives under, with both slashes; "" means "/"
	Live string // under serve: the address a page listens to for changes
	// Language makes the site in one language alone, a folder of content or English; ""
	// means those that content/site.yaml names.
	Language string
	// Compress adds a packed .br and .gz beside every file of text.
	Compress bool
	// Previews draws what previews of links show, one picture for each row, when the
	// keeper has said where the site is published.
	Previews bool
	// Spool is the folder the site will be written to: what is too much for memory waits
	// there, without a name, until [Output.Close]. Empty: all stays in memory.
	Spool string
	// Progress, when not nil, is told how many pages are rendered, of how many; from several
	// goroutines, so that a smaller number may come later.
	Progress func(made, all int)
	// Memory, when not nil, keeps what takes long from one build to the next.
	Memory *Memory
	// Hasty lets the examples of guide and calculations keep the answers of an earlier
	// chart when the memory has them: a page is up sooner, and a second build follows.
	Hasty bool

	check bool // of [Check]: files are not wanted, only what is wrong with them
}

// Stage orders the writing: a page must find its assets from its first moment.
type Stage int

const (
	Assets  Stage = iota // named by content, never changed once written
	Pages                // pages and data, at addresses that stay
	Hosting              // for whoever puts the site up; no reader asks for it
)

// File is one file of the site, at a slash-separated path.
type File struct {
	Path  string
	Bytes []byte // nil of a file in the spool; [File.Read] has them of every file
	Stage Stage

	facts *facts // nil of a file made by hand
}

// Language is one of those a site is made in.
type Language struct {
	Name   string // as in the attribute lang
	Folder string // below the base, with its slash; empty for the first
}

// Output is a whole site in memory, sorted by path.
type Output struct {
	Files     []File
	Chart     tables.Version
	Base      string     // with both slashes
	Languages []Language // the first one first
	Redirects []Redirect // addresses that lead elsewhere on a host that can do it
	Own       bool       // a keeper's own folder lies over it
	Stale     bool       // an example has the answer of an earlier chart; only of a hasty build

	spool *spool
}

// Close gives back what the output holds beyond memory; its files cannot be read any more.
func (out Output) Close() { out.spool.close() }
