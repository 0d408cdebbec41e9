package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"capspan/build"
)

// takeRebuild makes the site again after a row was changed where it lies, with what was worked
// out before in memory, as serve does. The version of its table is raised with the issue, not
// with every row: that would be another page for each row of the table.
func takeRebuild(c *catalogueFolder, figures map[string]figure) error {
	name := filepath.Join("tables", edit)
	before, err := os.ReadFile(filepath.Join(c.root, name))
	if err != nil {
		return err
	}
	after, err := os.ReadFile(filepath.Join(c.edited, name))
	if err != nil {
		return err
	}
	after = bytes.Replace(after, []byte(nextIssue), []byte(issue), 1)
	out := c.root + "-again"
	defer os.RemoveAll(out)
	opt := build.Options{Memory: build.NewMemory(), Hasty: true}
	var took time.Duration
	var report build.Report
	for _, text := range [][]byte{before, after, before, after, before, after, before} { // the first builds of a process are slower
		if err := os.WriteFile(filepath.Join(c.root, name), text, 0o644); err != nil {
			return err
		}
		start := time.Now()
		site, problems := build.Site(build.Folder(c.root), opt)
		if problems.Blocked() {
			return fmt.Errorf("%s", problems.Summary())
		}
		if report, err = opt.Memory.Write(out, site); err != nil {
			return err
		}
		took = time.Since(start)
	}
	figures["one row edited: rebuild"] = seconds(took)
	figures["files it writes"] = count(report.Written)
	return nil
}
