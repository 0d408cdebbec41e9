// Command capspan checks, builds and serves the chart, and identifies a joint from
// readings. It only reads flags, calls package build and prints: each verb is a struct
// in a file of its own, whose fields are the flags and whose Run does the work.
//
// Exit status: 0 done, 1 problems found in the sources, 2 misuse or machine trouble.
// Results go to standard output, everything else to standard error.
package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"syscall"

	"github.com/alecthomas/kong"
)

const about = "Names a driveline joint from caliper readings, and makes the site that does the same."

// command is the whole command line.
type command struct {
	Build     buildVerb     `cmd:"" help:"Make the site in a folder."`
	Publish   publishVerb   `cmd:"" help:"Put a built site into a folder or a bucket."`
	Serve     serveVerb     `cmd:"" help:"Show the site on this machine, and again whenever a file changes."`
	Check     checkVerb     `cmd:"" help:"Find every problem in tables, pages and links."`
	Identify  identifyVerb  `cmd:"" help:"Name a joint from readings."`
	Driveline drivelineVerb `cmd:"" help:"Work out angles, speed, torque, life, fit, length or what joins two ends of a shaft."`
	Fmt       fmtVerb       `cmd:"" help:"Put the tables' lines in order and their spacing right."`
	Compare   compareVerb   `cmd:"" help:"Tell what changed in the tables, and what it does."`
	Schema    schemaVerb    `cmd:"" help:"Write the schema by which editors check the tables."`
	Translate translateVerb `cmd:"" help:"Tell what another language lacks, and what in it is older than its English."`
	Start     startVerb     `cmd:"" help:"Make a folder for a counter of one's own."`
	Version   versionFlag   `help:"Say which program and which chart this is."`
}

// terminal is what a verb reads from and prints to.
type terminal struct {
	in       io.Reader
	out, err io.Writer
	live     bool // somebody watches err: progress is welcome
}

// exitError ends the program with a status; an empty text has been printed already.
type exitError struct {
	status int
	text   string
}

func (e *exitError) Error() string { return e.text }

// problemsFound ends with status 1; the problems are on the screen.
var problemsFound = &exitError{status: 1}

// misuse ends with status 2 and says what to do instead.
func misuse(format string, args ...any) error {
	return &exitError{status: 2, text: fmt.Sprintf(format, args...)}
}

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	info, err := os.Stderr.Stat()
	t := &terminal{
		in: os.Stdin, out: os.Stdout, err: os.Stderr,
		live: err == nil && info.Mode()&os.ModeCharDevice != 0,
	}
	status := run(ctx, os.Args[1:], t)
	stop()
	os.Exit(status)
}

// run is the program without the process around it.
func run(ctx context.Context, args []string, t *terminal) int {
	if len(args) == 0 {
		args = []string{"--help"}
	}
	var c command
	done := false // kong has printed help or the version
	parser, err := kong.New(&c,
		kong.Name("capspan"),
		kong.Description(about),
		kong.Writers(t.out, t.err),
		kong.Exit(func(int) { done = true }),
		kong.ConfigureHelp(kong.HelpOptions{Compact: true, NoExpandSubcommands: true, WrapUpperBound: 80}),
		kong.Bind(t),
		kong.BindTo(ctx, (*context.Context)(nil)),
	)
	if err != nil {
		panic("internal error: " + err.Error()) // the structs above are wrong
	}
	parser.Model.HelpFlag.Help = "Show this help."
	chosen, err := parser.Parse(args)
	if done {
		return 0
	}
	if err != nil {
		fmt.Fprintf(t.err, "capspan: %v\n    hint: capspan %s--help shows what can be given\n", err, verbOf(parser, args))
		return 2
	}
	err = chosen.Run()
	var exit *exitError
	switch {
	case err == nil:
		return 0
	case errors.As(err, &exit):
		if exit.text != "" {
			fmt.Fprintf(t.err, "capspan: %s\n", exit.text)
		}
		return exit.status
	}
	fmt.Fprintf(t.err, "capspan: %v\n", err)
	return 2
}

// verbOf returns the verb of the arguments and a space, or nothing.
func verbOf(parser *kong.Kong, args []string) string {
	for _, verb := range parser.Model.Children {
		if args[0] == verb.Name {
			return verb.Name + " "
		}
	}
	return ""
}
