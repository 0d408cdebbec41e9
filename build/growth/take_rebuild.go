package main

import (
	"fmt"
	"os"
	"time"

	"capspan/build"
)

// takeRebuild makes the site again after a row was changed, with what was worked out before
// in memory, as serve does.
func takeRebuild(c *catalogueFolder, figures map[string]figure) error {
	out := c.root + "-again"
	defer os.RemoveAll(out)
	opt := build.Options{Memory: build.NewMemory(), Hasty: true}
	var took time.Duration
	var report build.Report
	for _, dir := range []string{c.root, c.edited, c.root, c.edited} { // the first builds of a process are slower
		start := time.Now()
		site, problems := build.Site(build.Folder(dir), opt)
		if problems.Blocked() {
			return fmt.Errorf("%s", problems.Summary())
		}
		var err error
		if report, err = opt.Memory.Write(out, site); err != nil {
			return err
		}
		took = time.Since(start)
	}
	figures["one row edited: rebuild"] = seconds(took)
	figures["files it writes"] = count(report.Written)
	return nil
}
