package words

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"maps"
	"path"
	"slices"
	"strings"

	"capspan/build/diag"
)

// biggestOwn is in bytes: every phrase there is, twice over.
const biggestOwn = 128 << 10

// Replace puts a keeper's own phrases in the place of shipped ones: <lang>/*.yaml of the
// folder words, each phrase under the key it has in templates/words and with the same
// values. A file of comments says nothing yet. [Catalogue.Check] holds them to where they
// are said, as all others.
func (c *Catalogue) Replace(fsys fs.FS) diag.List {
	r := &reader{lang: English, tag: c.tag, phrases: map[string]*Phrase{}, sources: map[string]string{}, of: map[string]of{}}
	folder := c.Language
	names, err := fs.ReadDir(fsys, folder)
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		r.file = "words/" + folder
		r.fail(nil, "", "unreadable", "the folder cannot be read: "+err.Error())
	}
	for _, entry := range names {
		if path.Ext(entry.Name()) != ".yaml" {
			continue
		}
		name := path.Join(folder, entry.Name())
		r.file, r.part = "words/"+name, strings.TrimSuffix(entry.Name(), ".yaml")
		src, err := readOwn(fsys, name)
		switch {
		case err != nil:
			r.fail(nil, "", "unreadable", "the file cannot be read: "+err.Error())
		case len(src) > biggestOwn:
			r.fail(nil, "", "file-size", fmt.Sprintf("the file is larger than %d bytes", biggestOwn))
		case !silent(src):
			r.document(src)
		}
	}
	for _, key := range slices.Sorted(maps.Keys(r.phrases)) {
		own, shipped := r.phrases[key], c.phrases[key]
		if shipped == nil {
			r.problems.Add(diag.Problem{Pos: own.Pos, Path: key, Rule: "unknown-words", Fact: fmt.Sprintf("no words are called %q", key),
				Hints: diag.Nearest(key, slices.Sorted(maps.Keys(c.phrases)))})
			continue
		}
		if got, want := own.names(), shipped.names(); !slices.Equal(got, want) {
			r.problems.Add(diag.Problem{Pos: own.Pos, Path: key, Rule: "other-values",
				Fact:  fmt.Sprintf("has the values %q, and the words it replaces have %q", got, want),
				Notes: []diag.Note{{Text: "the shipped words are at", Pos: shipped.Pos}}})
			continue
		}
		c.phrases[key] = own
	}
	r.problems.Sort()
	return r.problems
}

// readOwn reads no more of a file than shows that it is too large.
func readOwn(fsys fs.FS, name string) ([]byte, error) {
	file, err := fsys.Open(name)
	if err != nil {
		return nil, err
	}
	defer file.Close()
	return io.ReadAll(io.LimitReader(file, biggestOwn+1))
}

// silent reports a file of nothing but comments.
func silent(src []byte) bool {
	for line := range strings.Lines(string(src)) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			return false
		}
	}
	return true
}
