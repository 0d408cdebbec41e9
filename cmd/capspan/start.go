package main

import (
	"embed"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"capspan/build"
)

// example is the folder that start writes: an invented school workshop.
//
//go:embed all:example
var example embed.FS

type startVerb struct {
	Dir   string `arg:"" name:"dir" help:"The folder to make: a new or an empty one."`
	Quiet bool   `short:"q" help:"Do not say what was written."`
}

// Help is shown below the one-line help.
func (startVerb) Help() string {
	return `Makes a folder for a counter of one's own: name, contact, logo and colours, part
numbers and stock on rows of the chart, a table and a page. It is an invented
example with comments, and builds as it is. The chart stays in the program.

Examples:
  capspan start our-counter
  capspan serve --root our-counter     shows it, and again whenever a file changes`
}

// Run writes the example. A folder that holds something is left as it is.
func (v *startVerb) Run(t *terminal) error {
	entries, err := os.ReadDir(v.Dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
	case err != nil:
		return fmt.Errorf("start: %w", err)
	case len(entries) > 0:
		return misuse("%q is not empty: it holds %s\n    hint: name a new folder", v.Dir, listed(entries))
	}
	files, err := fs.Sub(example, "example")
	if err != nil {
		return fmt.Errorf("start: %w", err)
	}
	if err := os.CopyFS(v.Dir, files); err != nil {
		return fmt.Errorf("start: %w", err)
	}
	if _, err := writeSchemas(v.Dir, build.OwnFolder(v.Dir), false); err != nil {
		return err
	}
	if v.Quiet {
		return nil
	}
	err = fs.WalkDir(files, ".", func(name string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() {
			_, err = fmt.Fprintln(t.out, filepath.Join(v.Dir, filepath.FromSlash(name)))
		}
		return err
	})
	if err != nil {
		return err
	}
	_, err = fmt.Fprintf(t.out, "an invented example is in %s; next:\n  capspan serve --root %s\n", v.Dir, v.Dir)
	return err
}

// listed names what a folder holds, as far as a line goes.
func listed(entries []os.DirEntry) string {
	var names []string
	for _, e := range entries {
		if len(names) == 5 {
			return strings.Join(names, ", ") + fmt.Sprintf(" and %d more", len(entries)-5)
		}
		names = append(names, e.Name())
	}
	return strings.Join(names, ", ")
}
