// Command release makes what is put on a shelf: archives with the program for every system,
// the chart and guide as a book to print, and a list of SHA-256 sums. build/release.sh calls it.
//
// Equal sources and an equal Go make equal bytes: paths, times, owners and the order of files
// are fixed, and the program for this machine is built twice to see it. The book is printed by
// Chromium, twice too, and equal for an equal Chromium and equal fonts.
//
// Exit status: 0 done, 1 something is wrong, 2 misuse.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"syscall"

	"capspan/build"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	r, err := parse(os.Args[1:], os.Stderr)
	switch {
	case errors.Is(err, flag.ErrHelp):
		return
	case err != nil:
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(2)
	}
	if err := r.run(ctx); err != nil {
		fmt.Fprintln(os.Stderr, "release:", err)
		os.Exit(1)
	}
}

// release is one run.
type release struct {
	root, out string
	version   string // "" until git was asked
	targets   []target
	papers    []string // of the books; none for no book
	language  string
	again     bool // make the book and this machine's program twice, and compare
	say       func(format string, args ...any)

	made []string // names of the files in out
}

// target is a system to build for, in Go's words.
type target struct{ system, machine string }

func (t target) String() string { return t.system + "/" + t.machine }

var everywhere = "linux/amd64,linux/arm64,darwin/amd64,darwin/arm64,windows/amd64,windows/arm64"

// versionForm keeps a version fit for the name of a file.
var versionForm = regexp.MustCompile(`^[A-Za-z0-9][A-Za-z0-9._+-]*$`)

// parse reads the flags.
func parse(args []string, help io.Writer) (*release, error) {
	r := &release{say: func(format string, args ...any) { fmt.Printf(format+"\n", args...) }}
	flags := flag.NewFlagSet("release", flag.ContinueOnError)
	flags.SetOutput(help)
	flags.StringVar(&r.root, "root", ".", "the working folder of the project")
	flags.StringVar(&r.out, "out", "", "a new or empty folder to write to (release/<version>)")
	flags.StringVar(&r.version, "version", "", "the program's version (what git describe says)")
	targets := flags.String("targets", everywhere, "systems to build for, or none")
	papers := flags.String("paper", "a4", "papers to make the book for: "+strings.Join(build.BookSheets, ", ")+", or none")
	flags.StringVar(&r.language, "language", "", "the language of the book (English)")
	flags.BoolVar(&r.again, "again", true, "make book and this machine's program a second time, the program in another folder from nothing, and compare")
	if err := flags.Parse(args); err != nil {
		return nil, err
	}
	if flags.NArg() > 0 {
		return nil, fmt.Errorf("%q is not a flag", flags.Arg(0))
	}
	if r.version != "" && !versionForm.MatchString(r.version) {
		return nil, fmt.Errorf("-version %q: letters, digits, points, plus and hyphens only", r.version)
	}
	for _, name := range listOf(*targets) {
		system, machine, _ := strings.Cut(name, "/")
		if !slices.Contains(strings.Split(everywhere, ","), name) {
			return nil, fmt.Errorf("-targets: %q is none of %s", name, everywhere)
		}
		r.targets = append(r.targets, target{system, machine})
	}
	r.papers = listOf(*papers)
	for _, paper := range r.papers {
		if !slices.Contains(build.BookSheets, paper) {
			return nil, fmt.Errorf("-paper: %q is none of %s", paper, strings.Join(build.BookSheets, ", "))
		}
	}
	if len(r.targets)+len(r.papers) == 0 {
		return nil, errors.New("neither -targets nor -paper asks for anything")
	}
	return r, nil
}

// listOf takes a list with commas apart; "none" is an empty one.
func listOf(text string) []string {
	if text == "none" {
		return nil
	}
	list := strings.Split(text, ",")
	slices.Sort(list)
	return slices.Compact(list)
}

// run makes everything. The folder is filled file by file and ends with the sums.
func (r *release) run(ctx context.Context) error {
	chart, date, err := r.chart()
	if err != nil {
		return err
	}
	if r.version == "" {
		if r.version, err = r.described(ctx); err != nil {
			return err
		}
	}
	if r.out == "" {
		r.out = filepath.Join(r.root, "release", r.version)
	}
	if err := emptyFolder(r.out); err != nil {
		return err
	}
	r.say("capspan %s, chart %s, dated %s, into %s", r.version, chart, date.Format("2006-01-02"), r.out)
	if err := r.archives(ctx, chart, date); err != nil {
		return err
	}
	for _, paper := range r.papers {
		if err := r.book(ctx, paper, date); err != nil {
			return err
		}
	}
	return r.sums()
}
