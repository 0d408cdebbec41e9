package main

import (
	"fmt"

	"capspan/build"
)

type checkVerb struct {
	rootFlag
	JSON  bool `name:"json" help:"Print the problems as JSON."`
	Quiet bool `short:"q" help:"Print errors and warnings only, not the closing line."`
}

// Help is shown below the one-line help.
func (checkVerb) Help() string {
	return `Reads the current folder when it holds site.yaml (a folder of one's own, see
capspan start) or tables/, else the files in the program.
Each problem is one line, file:line:column first, with hints below it. Warnings
block nothing; with an error the exit status is 1.

Examples:
  capspan check
  capspan check --root ~/our-chart --json`
}

// Run prints every problem.
func (v *checkVerb) Run(t *terminal) error {
	src, _, err := v.sources(true)
	if err != nil {
		return err
	}
	defer upTo(2 << 30)() // 100,000 rows take 0.7 GB, of which the collector finds a twentieth
	problems := build.Check(src)
	if v.JSON {
		err = printJSON(t.out, reportOf(problems))
	} else if err = problems.Print(t.out); err == nil && !v.Quiet {
		_, err = fmt.Fprintln(t.out, problems.Summary())
	}
	if err != nil {
		return err
	}
	if problems.Blocked() {
		return problemsFound
	}
	return nil
}
