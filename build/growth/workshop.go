package main

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"

	"capspan/build"
	"capspan/build/synth/catalogue"
	"capspan/tables"
)

// workshop is where things are made.
type workshop struct {
	folder  string
	program string // the capspan of this working copy
}

func (w *workshop) compile() error {
	w.program = filepath.Join(w.folder, "capspan")
	_, err := run("go", "build", "-o", w.program, "./cmd/capspan")
	return err
}

// catalogueFolder is a working folder with an invented chart.
type catalogueFolder struct {
	rows    int
	program string
	root    string // as it was made
	edited  string // the same with one row changed, and the version of its table
}

// catalogue makes one; that of equal rows is always the same.
func (w *workshop) catalogue(rows int) (*catalogueFolder, error) {
	shipped := build.Embedded()
	made, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, shipped.Tables)
	if err != nil {
		return nil, err
	}
	guide, err := catalogue.Guide(shipped.Content)
	if err != nil {
		return nil, err
	}
	changed, err := oneRowChanged(made)
	if err != nil {
		return nil, err
	}
	name := strconv.Itoa(rows)
	c := &catalogueFolder{rows: rows, program: w.program, root: filepath.Join(w.folder, name), edited: filepath.Join(w.folder, name+"-edited")}
	for dir, files := range map[string]catalogue.Files{c.root: made, c.edited: changed} {
		for part, from := range map[string]fs.FS{"tables": files.FS(), "content": guide.FS(), "static": shipped.Static, "templates": shipped.Templates} {
			if err := os.CopyFS(filepath.Join(dir, part), from); err != nil {
				return nil, fmt.Errorf("write %s: %w", part, err)
			}
		}
	}
	return c, nil
}

// edit is the table in which a row is changed.
const edit = "joints-metric.yaml"

var (
	wholeAcross = regexp.MustCompile(`(?m)^(    across: +\{is: [0-9]+)(,)`)
)

// The line of the first issue's version, and that of the next.
const (
	issue     = "version: 1.0.0\n"
	nextIssue = "version: 1.1.0\n"
)

// oneRowChanged moves a distance across by a tenth of a millimetre: the first, from the
// middle of its table on, that leaves a chart without problems.
func oneRowChanged(made catalogue.Files) (catalogue.Files, error) {
	text := strings.Replace(string(made[edit]), issue, nextIssue, 1)
	places := wholeAcross.FindAllStringSubmatchIndex(text, -1)
	for _, at := range places[len(places)/2:] {
		changed := catalogue.Files{}
		for name, data := range made {
			changed[name] = data
		}
		changed[edit] = []byte(text[:at[3]] + ".1" + text[at[3]:])
		if _, problems := tables.Load(changed.FS()); len(problems) == 0 {
			return changed, nil
		}
	}
	return nil, fmt.Errorf("no row of %s can be changed", edit)
}
