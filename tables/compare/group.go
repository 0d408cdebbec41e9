package compare

import (
	"bytes"
	"fmt"
	"io/fs"
	"strings"
)

// Group is changes that say the same of several rows or cells of one table.
type Group struct {
	Change          // of the first
	Paths  []string // row.column of each, in the chart's order
}

// Groups puts equal changes together, in the order of the first of each.
func (d *Diff) Groups() []Group {
	var out []Group
	at := map[string]int{}
	for _, c := range d.Changes {
		name := strings.TrimLeft(strings.TrimPrefix(c.Path(), c.Table), "/.")
		key := fmt.Sprintf("%s %s %t %t %q %q %q %q", c.Kind, c.Table, c.Row == "", c.Column == "", c.Parts, c.To, c.Why, c.Calls)
		if n, there := at[key]; there && c.Row != "" {
			out[n].Paths = append(out[n].Paths, name)
			continue
		}
		at[key] = len(out)
		out = append(out, Group{c, []string{name}})
	}
	return out
}

// Formatting finds the files that differ in their bytes and in nothing they say. The two
// folders are those the sets were loaded from; files that only one of them has are
// told by what they hold.
func (d *Diff) Formatting(older, newer fs.FS) error {
	names, err := fs.Glob(newer, "*.yaml")
	if err != nil {
		return fmt.Errorf("list the tables: %w", err)
	}
	for _, name := range names {
		id := strings.TrimSuffix(name, ".yaml")
		if was, is := tableOf(d.older, id), tableOf(d.newer, id); was != nil && is != nil && is.WrittenAs(was) {
			continue
		}
		before, err := fs.ReadFile(older, name)
		if err != nil {
			continue // it is new, and its rows are told
		}
		now, err := fs.ReadFile(newer, name)
		if err != nil {
			return fmt.Errorf("read a table: %w", err)
		}
		if !bytes.Equal(before, now) && !d.says(id) {
			d.Form = append(d.Form, "tables/"+name)
		}
	}
	return nil
}

// says reports whether something that the file says changed.
func (d *Diff) says(file string) bool {
	for _, s := range d.Steps {
		if s.Table == file {
			return true
		}
	}
	for _, c := range d.Changes {
		mine := c.Table == file || c.Table == "" && (c.Row == file || strings.HasPrefix(c.Row, file+"/"))
		if mine || file == "retired" && (c.Kind == Renamed || c.Kind == Retired) && c.Row != "" {
			return true
		}
	}
	return file == "history" // what was recorded is no part of the chart
}
