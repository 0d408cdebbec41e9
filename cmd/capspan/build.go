package main

import (
	"fmt"
	"os"
	"runtime/debug"
	"time"

	"capspan/build"
	"capspan/build/diag"
)

type buildVerb struct {
	rootFlag
	Out      string `default:"dist" placeholder:"DIR" help:"The folder to write to (${default}). A new or empty one, or one that capspan wrote."`
	Base     string `default:"/" placeholder:"PATH" help:"The path the site will live under (${default})."`
	Compress bool   `help:"Also write a packed .br and .gz beside every file of text, for servers that send them."`
	Report   bool   `help:"Also list every page with its bytes, its first visit and its budget."`
	JSON     bool   `name:"json" help:"Print what was done as JSON."`
	Quiet    bool   `short:"q" help:"Print problems only."`
}

// Help is shown below the one-line help.
func (buildVerb) Help() string {
	return `Reads the current folder when it holds site.yaml (a folder of one's own, see
capspan start) or tables/, else the files in the program.
Only files that changed are written. A problem leaves the folder as it was.

Examples:
  capspan build                        into dist/
  capspan build --out /srv/www/joints
  capspan build --base /joints/        for https://example.org/joints/
  capspan build --compress             for a server that sends packed files
  capspan build --report               which page is too heavy?`
}

// Run makes the site.
func (v *buildVerb) Run(t *terminal) error {
	src, _, err := v.sources(true)
	if err != nil {
		return err
	}
	if err := build.CheckBase(v.Base); err != nil {
		return misuse("%v", err)
	}
	start := time.Now()
	keepSmall()
	progress := newProgress(t, v.Quiet || v.JSON)
	progress.say("building")
	out, problems := build.Site(src, build.Options{Base: v.Base, Compress: v.Compress, Previews: true, Spool: v.Out,
		Progress: progress.pages})
	defer out.Close()
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
	var weights []build.Weight
	if v.Report {
		weights = build.Weigh(out)
	}
	if v.JSON {
		return printJSON(t.out, struct {
			Chart string         `json:"chart"`
			Out   string         `json:"out"`
			Files build.Report   `json:"files"`
			Pages []build.Weight `json:"pages,omitempty"` // with --report
			problemReport
		}{out.Chart.Name(), v.Out, report, weights, reportOf(problems)})
	}
	if err := problems.Print(t.err); err != nil {
		return err
	}
	if v.Report {
		if err := printWeights(t.out, weights, out.Found()); err != nil {
			return err
		}
	}
	if v.Quiet {
		return nil
	}
	_, err = fmt.Fprintf(t.out, "%s: %d files written (%d kB), %d removed, %d unchanged; chart %s; %d ms\n",
		v.Out, report.Written, (report.Bytes+999)/1000, report.Removed, report.Same,
		out.Chart.Name(), time.Since(start).Milliseconds())
	return err
}

// roomFor is what a build tries to do with, in bytes. A hundred thousand rows have 0.65 GB of
// what is in use; garbage is only let grow beside it as far as this.
const roomFor = 900 << 20

// keepSmall has garbage collected in time, unless somebody has said how much room there is.
// Below that room it is collected half as often as it would be: what a build holds grows page
// by page, and looking through it each time is a tenth of the whole work. A large chart comes
// to the end of the room, and is collected as before.
func keepSmall() {
	if os.Getenv("GOMEMLIMIT") == "" {
		debug.SetMemoryLimit(roomFor)
		sparingly(200)
	}
}

func printProblems(t *terminal, problems diag.List, out string) error {
	if err := problems.Print(t.err); err != nil {
		return err
	}
	_, err := fmt.Fprintf(t.err, "%s; %s is as it was\n", problems.Summary(), out)
	return err
}
