package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path"

	"capspan/build/diag"
	"capspan/tables"
)

type fmtVerb struct {
	Root  string `default:"." placeholder:"DIR" help:"The working folder, with tables/ in it (the current one unless given)."`
	Check bool   `help:"Change nothing: name the files that are not in order, and exit with 1 if there are any."`
	Quiet bool   `short:"q" help:"Do not name the files."`
}

// Help is shown below the one-line help.
func (fmtVerb) Help() string {
	return `Sets order and spacing of the YAML tables, never a value or a comment, and names
the files it changed.

Examples:
  capspan fmt
  capspan fmt --check                  as a shared build does`
}

// Run rewrites the tables that are not in order, each by rename, so that an editor or a
// server never sees half a file.
func (v *fmtVerb) Run(t *terminal) error {
	if holdsSite(v.Root) && !holdsTables(v.Root) {
		return nil // a folder of one's own without tables of its own
	}
	root, err := openTables(v.Root)
	if err != nil {
		return err
	}
	defer root.Close()
	names, err := fs.Glob(root.FS(), "*.yaml")
	if err != nil {
		return fmt.Errorf("list the tables: %w", err)
	}
	var problems diag.List
	unordered := 0
	for _, name := range names {
		text, err := root.ReadFile(name)
		if err != nil {
			return fmt.Errorf("read a table: %w", err)
		}
		ordered, found := tables.Format("tables/"+name, text)
		problems.Add(found...)
		if found.Blocked() || bytes.Equal(text, ordered) {
			continue
		}
		unordered++
		if !v.Check {
			if err := replaceFile(root, name, ordered); err != nil {
				return err
			}
		}
		if !v.Quiet {
			if _, err := fmt.Fprintf(t.out, "tables/%s\n", name); err != nil {
				return err
			}
		}
	}
	problems.Sort()
	if err := problems.Print(t.err); err != nil {
		return err
	}
	if problems.Blocked() || v.Check && unordered > 0 {
		return problemsFound
	}
	return nil
}

// replaceFile writes beside the file and renames over it, keeping its permissions. One that
// is not there is made.
func replaceFile(root *os.Root, name string, text []byte) error {
	mode := fs.FileMode(0o644)
	info, err := root.Stat(name)
	switch {
	case err == nil:
		mode = info.Mode().Perm()
	case !errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("rewrite %s: %w", name, err)
	}
	scratch := path.Join(path.Dir(name), ".capspan-new-"+path.Base(name))
	if err := root.WriteFile(scratch, text, mode); err != nil {
		return errors.Join(fmt.Errorf("rewrite %s: %w", name, err), root.Remove(scratch))
	}
	if err := root.Rename(scratch, name); err != nil {
		return errors.Join(fmt.Errorf("rewrite %s: %w", name, err), root.Remove(scratch))
	}
	return nil
}
