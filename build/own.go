package build

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/content"
	"capspan/tables"
	"capspan/templates"
)

// A keeper's own folder holds what is the keeper's and nothing of ours, so that a newer
// program brings a newer chart under it:
//
//	site.yaml             name, contact, units, logo, colours
//	logo.svg or logo.png
//	overlay/*.yaml        part numbers, stock, prices and notes on rows of the chart
//	tables/*.yaml         tables beside ours
//	pages/*.md            pages beside ours
//	words/<lang>/*.yaml   other words for what pages say
//
// All but site.yaml may be left out. Ours stays as it is: whatever would take the place of
// a shipped table or page is a problem that names both.

// ownEntries are the names of that folder.
var ownEntries = []string{keeperFile, "logo.svg", "logo.png", "overlay", "tables", "pages", "words"}

// own is a keeper's folder, read.
type own struct {
	logo    logo
	colours palette
	overlay *tables.Overlay
	style   string // path of the sheet with the keeper's colours
	data    string // path of what pages fetch of the overlay; empty without one
}

// OwnFolder returns the shipped folders with a keeper's own folder over them.
func OwnFolder(dir string) Sources {
	src := Embedded()
	src.Own = closedFolder(dir)
	return src
}

// part is a folder of the keeper's folder.
func (src Sources) part(name string) fs.FS {
	sub, err := fs.Sub(src.Own, name)
	if err != nil {
		panic("internal error: " + err.Error()) // the names are ours
	}
	return sub
}

// layered puts the keeper's tables and pages beside the shipped ones. Without a keeper's
// folder it changes nothing.
func (src Sources) layered() Sources {
	if src.Own == nil {
		return src
	}
	src.Tables = layers{src.Tables, src.part("tables")}
	src.Content = layers{src.Content, src.part("pages")}
	return src
}

// Set loads the chart of the sources with the keeper's own tables and overlay, if any.
func (src Sources) Set() (*tables.Set, *tables.Overlay, diag.List) {
	return src.setBy(tables.Load)
}

// setBy is the same with the loader given.
func (src Sources) setBy(load func(fs.FS) (*tables.Set, diag.List)) (*tables.Set, *tables.Overlay, diag.List) {
	set, problems := load(src.layered().Tables)
	if src.Own == nil {
		return set, nil, problems
	}
	overlay, more := tables.LoadOverlay(src.part("overlay"), set)
	problems.Add(more...)
	problems.Sort()
	return set, overlay, problems
}

// loadOwn reads who keeps the site, and the rest of the keeper's folder but for overlay,
// tables, pages and words; nil when there is none.
func loadOwn(src Sources) (templates.Keeper, *own, diag.List) {
	if src.Own == nil {
		keeper, problems := loadKeeper(src.Content)
		return keeper, nil, problems
	}
	o := &own{}
	k := keeperReader{file: keeperFile, folder: src.Content, more: ownKeys}
	k.load(src.Own)
	problems := k.problems
	problems.Add(o.readLogo(src.Own, k.values["logo"])...)
	problems.Add(o.readColours(src.Static, k.values["colours"])...)
	problems.Add(src.conflicts()...)
	problems.Sort()
	return k.keeper, o, problems
}

// conflicts are files that would take the place of ours, and names of the folder that
// nobody reads because they are misspelt.
func (src Sources) conflicts() diag.List {
	var problems diag.List
	look := func(ours fs.FS, own, shipped, ending, rule, hint string) {
		err := fs.WalkDir(src.part(own), ".", func(name string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || path.Ext(name) != ending {
				return err
			}
			if _, err := fs.Stat(ours, name); err == nil {
				problems.Add(diag.Problem{Pos: diag.Pos{File: own + "/" + name, Line: 1, Col: 1}, Rule: rule,
					Fact:  fmt.Sprintf("the program ships a file of the name %q", name),
					Hints: []string{hint}, Notes: []diag.Note{{Text: "the shipped one is", Pos: diag.Pos{File: shipped + "/" + name, Line: 1, Col: 1}}}})
			}
			return nil
		})
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			problems.Add(diag.Problem{Pos: diag.Pos{File: own}, Rule: "unreadable", Fact: "the folder cannot be read: " + err.Error()})
		}
	}
	look(src.Tables, "tables", "tables", ".yaml", "table-shipped",
		"give your table a name of its own; sources of your own go into tables/own-sources.yaml, and what you add to our rows into overlay/")
	look(src.Content, "pages", "content", ".md", "page-shipped", "give your page an address of its own")
	entries, err := fs.ReadDir(src.Own, ".")
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "."}, Rule: "unreadable", Fact: "the folder cannot be read: " + err.Error()})
	}
	for _, e := range entries {
		if slices.Contains(ownEntries, e.Name()) || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		if hints := diag.Nearest(e.Name(), ownEntries); hints != nil {
			problems.Add(diag.Problem{Pos: diag.Pos{File: e.Name()}, Rule: "unread", Level: diag.Warning,
				Fact: fmt.Sprintf("nobody reads %q", e.Name()), Hints: hints})
		}
	}
	return problems
}

// inOwnFolder gives what was read as content/… of the keeper's pages the places where they
// stand.
func (src Sources) inOwnFolder(pages []*content.Page, problems diag.List) {
	if src.Own == nil {
		return
	}
	move := func(pos *diag.Pos) {
		name, found := strings.CutPrefix(pos.File, "content/")
		if !found {
			return
		}
		if _, err := fs.Stat(src.Content, name); err == nil {
			return // one of ours
		}
		pos.File = "pages/" + name
	}
	for _, p := range pages {
		move(&p.Pos)
		for i := range p.Links {
			move(&p.Links[i].Pos)
		}
	}
	for i := range problems {
		move(&problems[i].Pos)
		for j := range problems[i].Notes {
			move(&problems[i].Notes[j].Pos)
		}
	}
}

// layers are two folders as one: what both have is the first one's.
type layers struct{ ours, own fs.FS }

// Open implements [fs.FS].
func (l layers) Open(name string) (fs.File, error) {
	file, err := l.ours.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return l.own.Open(name)
	}
	return file, err
}

// ReadDir implements [fs.ReadDirFS]; what is the keeper's alone comes last.
func (l layers) ReadDir(name string) ([]fs.DirEntry, error) {
	all, err := fs.ReadDir(l.ours, name)
	more, failed := fs.ReadDir(l.own, name)
	missing := errors.Is(failed, fs.ErrNotExist)
	switch {
	case errors.Is(err, fs.ErrNotExist) && !missing:
		return more, failed
	case err != nil || missing:
		return all, err
	case failed != nil:
		return nil, failed
	}
	for _, e := range more {
		if !slices.ContainsFunc(all, func(o fs.DirEntry) bool { return o.Name() == e.Name() }) {
			all = append(all, e)
		}
	}
	return all, nil
}
