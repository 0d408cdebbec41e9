package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"capspan/build"
	"capspan/build/diag"
	"capspan/tables"
)

// ownSchemas writes what editors check a keeper's folder by, or says what is not as it
// should be.
func (v *schemaVerb) ownSchemas(t *terminal) error {
	changed, err := writeSchemas(v.Root, build.OwnFolder(v.Root), v.Check)
	var blocked *blockedError
	if errors.As(err, &blocked) {
		return printed(t, blocked.problems)
	}
	if err != nil {
		return err
	}
	if !v.Check || len(changed) == 0 {
		return nil
	}
	for _, name := range changed {
		if _, err := fmt.Fprintln(t.out, name); err != nil {
			return err
		}
	}
	return problemsFound
}

// blockedError are problems of the sources that keep something from being written.
type blockedError struct{ problems diag.List }

func (e *blockedError) Error() string { return e.problems.Summary() }

// writeSchemas writes the schema of overlays and of tables into a keeper's folder, each where
// its folder is, and names those that were not up to date. With check nothing is written.
func writeSchemas(dir string, src build.Sources, check bool) (changed []string, err error) {
	set, overlay, problems := src.Set()
	if problems.Blocked() {
		return nil, &blockedError{problems}
	}
	top, err := os.OpenRoot(dir)
	if err != nil {
		return nil, fmt.Errorf("open the folder: %w", err)
	}
	defer top.Close()
	for _, schema := range []struct {
		folder string
		text   []byte
	}{{"overlay", tables.OverlaySchema(set, overlay)}, {"tables", tables.Schema(set)}} {
		root, err := top.OpenRoot(schema.folder)
		if errors.Is(err, fs.ErrNotExist) {
			continue
		}
		if err != nil {
			return changed, fmt.Errorf("open the folder %s: %w", schema.folder, err)
		}
		have, err := root.ReadFile(schemaName)
		missing := errors.Is(err, fs.ErrNotExist)
		switch {
		case err != nil && !missing:
			err = fmt.Errorf("read the schema: %w", err)
		case err == nil && bytes.Equal(have, schema.text):
		default:
			changed, err = append(changed, filepath.Join(schema.folder, schemaName)), nil
			switch {
			case check:
			case missing:
				err = root.WriteFile(schemaName, schema.text, 0o644)
			default:
				err = replaceFile(root, schemaName, schema.text)
			}
		}
		if err = errors.Join(err, root.Close()); err != nil {
			return changed, err
		}
	}
	return changed, nil
}
