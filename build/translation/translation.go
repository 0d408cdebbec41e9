// Package translation holds a language of the site to the English it was made of.
//
// A language is one folder of content/: pages, sentences of scripts (under the names that
// [static.Said] gives them), words of the interface, words of the tables. [Check] finds
// the pages and scripts that are missing, and those whose English has changed since, part
// by part; every problem names the English line. What a file was made of is kept in
// made-of.yaml, which [Settle] writes. [LoadTables] reads the words of the tables;
// package templates/words those of the interface. [Start] begins a new language.
package translation

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"path"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
	"capspan/content"
	"capspan/static"
)

// Sources are the folders that hold what a reader is told.
type Sources struct{ Content, Static, Templates fs.FS }

// Languages are the folders of languages that are there, by name.
func Languages(fsys fs.FS) []string {
	var list []string
	entries, _ := fs.ReadDir(fsys, ".") // a folder that cannot be read has none; loading its pages says so
	for _, e := range entries {
		if e.IsDir() && content.LanguageFolder(e.Name()) {
			list = append(list, e.Name())
		}
	}
	return list
}

// file is one to translate.
type file struct {
	english string // from the project's root
	name    string // in the folder of the language
	fsys    fs.FS  // the English file lies here
	at      string // and is called so there
	parts   func(source string) []part
}

// text is the English one.
func (f file) text() (string, error) {
	text, err := read(f.fsys, f.at)
	return string(text), err
}

// biggest is the most a file may hold, in bytes: the longest is a thirtieth of it.
const biggest = 1 << 20

// read reads no more of a file than shows that it is too big.
func read(fsys fs.FS, name string) ([]byte, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	text, err := io.ReadAll(io.LimitReader(file, biggest+1))
	if err == nil && len(text) > biggest {
		err = fmt.Errorf("more than %d bytes", biggest)
	}
	return text, err
}

// part of a file: what is held to its translation by itself.
type part struct {
	name string // a heading, or the path to an entry: "words.slips"; for messages
	key  string // of an entry: the path its like is found under in another file; empty for a page
	text string // as written
	line int
}

// files are all pages and scripts there are to translate, by their names.
func (s Sources) files() ([]file, error) {
	var list []file
	err := content.Walk(s.Content, content.English, func(name string) error {
		list = append(list, file{english: "content/" + name, name: name, fsys: s.Content, at: name, parts: pageParts})
		return nil
	})
	for _, folder := range []string{"words/" + static.English, "matcher", "driveline"} {
		entries, wrong := fs.ReadDir(s.Static, folder)
		if wrong != nil && !errors.Is(wrong, fs.ErrNotExist) {
			err = errors.Join(err, wrong)
		}
		for _, e := range entries {
			at := path.Join(folder, e.Name())
			if said := static.Said(at); said != "" {
				list = append(list, file{english: "static/" + at, name: said, fsys: s.Static, at: at, parts: scriptParts})
			}
		}
	}
	slices.SortFunc(list, func(a, b file) int { return strings.Compare(a.name, b.name) })
	return list, err
}

// unreadable is the problem of a folder or file that the disk does not give.
func unreadable(name string, err error) diag.Problem {
	return diag.Problem{Pos: diag.Pos{File: name}, Rule: "unreadable", Fact: err.Error()}
}

// broken is the problem of a file that is no YAML.
func broken(name string, err error) diag.Problem {
	pos := diag.Pos{File: name, Line: 1, Col: 1}
	var at *yaml.LoadError
	if errors.As(err, &at) {
		pos.Line, pos.Col = at.Mark.Line, max(at.Mark.Column, 1)
		err = errors.New(at.Message)
	}
	return diag.Problem{Pos: pos, Rule: "bad-yaml", Fact: strings.TrimPrefix(err.Error(), "yaml: ")}
}
