package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"

	"capspan/tables"
)

const schemaName = "schema.json"

type schemaVerb struct {
	Root  string `default:"." placeholder:"DIR" help:"The working folder, with tables/ in it, or a folder of one's own (the current one unless given)."`
	Check bool   `help:"Change nothing: exit with 1 if the file is not what the tables declare."`
}

// Help is shown below the one-line help.
func (schemaVerb) Help() string {
	return `Writes tables/schema.json from the columns the tables declare. Editors that know
JSON Schema then complete keys and words in the tables and mark mistakes while you
type. Run it after a column, a table or a source was added. In a folder of one's
own it writes overlay/schema.json too, which completes the ids of the chart.

Examples:
  capspan schema
  capspan schema --check               as a shared build does`
}

// Run writes the schema when it has changed, by rename.
func (v *schemaVerb) Run(t *terminal) error {
	if holdsSite(v.Root) {
		return v.ownSchemas(t)
	}
	root, err := openTables(v.Root)
	if err != nil {
		return err
	}
	defer root.Close()
	set, problems := tables.Load(root.FS())
	if problems.Blocked() {
		if err := problems.Print(t.err); err != nil {
			return err
		}
		return problemsFound
	}
	schema := tables.Schema(set)
	have, err := root.ReadFile(schemaName)
	switch missing := errors.Is(err, fs.ErrNotExist); {
	case err != nil && !missing:
		return fmt.Errorf("read the schema: %w", err)
	case err == nil && bytes.Equal(have, schema):
		return nil
	case v.Check:
		if _, err := fmt.Fprintf(t.out, "tables/%s\n", schemaName); err != nil {
			return err
		}
		return problemsFound
	case missing:
		return root.WriteFile(schemaName, schema, 0o644)
	}
	return replaceFile(root, schemaName, schema)
}
