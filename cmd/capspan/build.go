package main

import (
	"fmt"
	"time"

	"capspan/build"
	"capspan/build/diag"
)

type buildVerb struct {
	rootFlag
	Out   string `default:"dist" placeholder:"DIR" help:"The folder to write to (${default}). A new or empty one, or one that capspan wrote."`
	Base  string `default:"/" placeholder:"PATH" help:"The path the site will live under (${default})."`
	JSON  bool   `name:"json" help:"Print what was done as JSON."`
	Quiet bool   `short:"q" help:"Print problems only."`
}

// Help is shown below the one-line help.
func (buildVerb) Help() string {
	return `Reads the current folder when it holds tables/, else the files in the program.
Only files that changed are written. A problem leaves the folder as it was.

Examples:
  capspan build                        into dist/
  capspan build --out /srv/www/joints
  capspan build --base /joints/        for https://example.org/joints/`
}

// Run makes the site.
func (v *buildVerb) Run(t *terminal) error {
	src, _, err := v.sources(true)
	if err != nil {
		return err
	}
	start := time.Now()
	progress := newProgress(t, v.Quiet || v.JSON)
	progress.say("building")
	out, problems := build.Site(src, build.Options{Base: v.Base})
	if problems.Blocked() {
		progress.clear()
		if v.JSON {
			err = printJSON(t.out, reportOf(problems))
		} else {
			err = printProblems(t, problems, v.Out)
		}
		if err != nil {
			return err
		}
		return problemsFound
	}
	progress.say(fmt.Sprintf("writing %d files", len(out.Files)))
	report, err := build.Write(v.Out, out)
	progress.clear()
	if err != nil {
		return err
	}
	if v.JSON {
		return printJSON(t.out, struct {
			Chart string       `json:"chart"`
			Out   string       `json:"out"`
			Files build.Report `json:"files"`
			problemReport
		}{out.Chart.Name(), v.Out, report, reportOf(problems)})
	}
	if err := problems.Print(t.err); err != nil {
		return err
	}
	if v.Quiet {
		return nil
	}
	_, err = fmt.Fprintf(t.out, "%s: %d files written (%d kB), %d removed, %d unchanged; chart %s; %d ms\n",
		v.Out, report.Written, (report.Bytes+999)/1000, report.Removed, report.Same,
		out.Chart.Name(), time.Since(start).Milliseconds())
	return err
}

func printProblems(t *terminal, problems diag.List, out string) error {
	if err := problems.Print(t.err); err != nil {
		return err
	}
	_, err := fmt.Fprintf(t.err, "%s; %s is as it was\n", problems.Summary(), out)
	return err
}

// progress is one line on a terminal that is written over and taken away at the end.
type progress struct {
	t   *terminal
	off bool
}

func newProgress(t *terminal, off bool) progress { return progress{t: t, off: off || !t.live} }

func (p progress) say(text string) {
	if !p.off {
		fmt.Fprintf(p.t.err, "\r\x1b[K%s ...", text)
	}
}

func (p progress) clear() {
	if !p.off {
		fmt.Fprint(p.t.err, "\r\x1b[K")
	}
}
