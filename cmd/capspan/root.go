package main

import (
	"cmp"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"runtime/debug"

	"github.com/alecthomas/kong"

	"capspan/build"
	"capspan/build/diag"
	"capspan/tables"
)

// rootFlag chooses between the files of a folder and those in the program.
type rootFlag struct {
	Root string `placeholder:"DIR" help:"A folder of one's own with site.yaml, laid over the files in the program; or a working folder with tables/, content/, static/ and templates/ instead of them."`
}

// sources returns the folders to read, and the working folder they lie in: "" for the
// files in the program. With here, the current folder counts when it is one of the two.
func (f rootFlag) sources(here bool) (build.Sources, string, error) {
	dir := f.Root
	switch {
	case dir == "" && here && (holdsSite(".") || holdsTables(".")):
		dir = "."
	case dir == "":
		return build.Embedded(), "", nil
	}
	switch {
	case holdsSite(dir):
		return build.OwnFolder(dir), dir, nil
	case holdsTables(dir):
		return build.Folder(dir), dir, nil
	}
	return build.Sources{}, "", misuse("--root %q holds neither site.yaml nor a folder named tables\n    hint: name the folder above it, or make one with capspan start", dir)
}

// holdsSite tells a keeper's own folder, which has site.yaml at its top, from a working
// folder, which has it in content.
func holdsSite(dir string) bool {
	info, err := os.Stat(filepath.Join(dir, "site.yaml"))
	return err == nil && !info.IsDir()
}

func holdsTables(dir string) bool {
	info, err := os.Stat(filepath.Join(dir, "tables"))
	return err == nil && info.IsDir()
}

// openTables opens the tables of a working folder, to write there.
func openTables(dir string) (*os.Root, error) {
	if !holdsTables(dir) {
		return nil, misuse("%q holds no folder named tables\n    hint: name the folder above it with --root", dir)
	}
	root, err := os.OpenRoot(filepath.Join(dir, "tables"))
	if err != nil {
		return nil, fmt.Errorf("open the tables: %w", err)
	}
	return root, nil
}

// problemReport is how a machine reads problems.
type problemReport struct {
	Problems diag.List `json:"problems"`
	Errors   int       `json:"errors"`
	Warnings int       `json:"warnings"`
}

func reportOf(problems diag.List) problemReport {
	if problems == nil {
		problems = diag.List{} // [] rather than null
	}
	return problemReport{Problems: problems, Errors: problems.Count(diag.Error), Warnings: problems.Count(diag.Warning)}
}

func printJSON(w io.Writer, v any) error {
	e := json.NewEncoder(w)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	return e.Encode(v)
}

// sparingly has the collector run only when so many hundredths of what is held have come on
// top: a chart that is loaded is kept until the verb ends, so that it finds little.
func sparingly(percent int) { debug.SetGCPercent(percent) }

// upTo has the collector wait until the program takes so many bytes, until back is called: a verb
// that is done in two seconds holds nearly all it makes. A chart that needs more has it, and
// the collector runs.
func upTo(bytes int64) (back func()) {
	percent, most := debug.SetGCPercent(-1), debug.SetMemoryLimit(bytes)
	return func() {
		debug.SetGCPercent(percent)
		debug.SetMemoryLimit(most)
	}
}

// version is put in by build/release; empty in any other build, where Go knows a version or none.
var version string

// versionFlag prints and ends, whatever else is on the line.
type versionFlag bool

// BeforeReset is called by kong when the flag is there.
func (versionFlag) BeforeReset(app *kong.Kong) error {
	program := cmp.Or(version, "(devel)")
	if info, ok := debug.ReadBuildInfo(); ok && version == "" && info.Main.Version != "" {
		program = info.Main.Version
	}
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		return fmt.Errorf("the chart in the program: %s", problems.Summary())
	}
	fmt.Fprintf(app.Stdout, "capspan %s, chart %s\n", program, set.Version().Name())
	app.Exit(0)
	return nil
}
