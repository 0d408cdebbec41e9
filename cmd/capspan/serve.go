package main

import (
	"context"
	"fmt"

	"capspan/build"
)

type serveVerb struct {
	rootFlag
	Addr  string `default:"127.0.0.1:8080" placeholder:"HOST:PORT" help:"Where to listen (${default}); the next free port when that one is taken."`
	Base  string `default:"/" placeholder:"PATH" help:"The path the site lives under (${default})."`
	Quiet bool   `short:"q" help:"Print the address and problems only."`
}

// Help is shown below the one-line help.
func (serveVerb) Help() string {
	return `Reads the current folder when it holds site.yaml (a folder of one's own, see
capspan start) or tables/, else the files in the program.
With a folder, saving a table, page, script or template builds the site again and
open pages load it. While there are problems the last good site stays up.

Examples:
  capspan serve                        then open the address it prints
  capspan serve --root ~/our-chart
  capspan serve --addr 0.0.0.0:8080    for a phone on the same network; on the phone
                                       use this machine's IP address, names are refused`
}

// Run serves until the program is interrupted.
func (v *serveVerb) Run(ctx context.Context, t *terminal) error {
	src, dir, err := v.sources(true)
	if err != nil {
		return err
	}
	if err := build.CheckBase(v.Base); err != nil {
		return misuse("%v", err)
	}
	first := true
	return build.Serve(ctx, build.ServeOptions{
		Sources: src, Watch: dir, Addr: v.Addr, Base: v.Base,
		Ready: func(address string) {
			fmt.Fprintf(t.out, "the site is at %s\n", address)
			if dir != "" && !v.Quiet {
				fmt.Fprintf(t.out, "watching %s; Ctrl-C ends\n", dir)
			}
		},
		Built: func(b build.Built) {
			b.Problems.Print(t.err)
			switch {
			case b.Kept && first:
				fmt.Fprintf(t.err, "%s; there is no site yet\n", b.Problems.Summary())
			case b.Kept:
				fmt.Fprintf(t.err, "%s; the last good site stays up\n", b.Problems.Summary())
			case v.Quiet:
			case b.Changed:
				fmt.Fprintf(t.out, "built %d pages and data files in %d ms\n", b.Pages, b.Took.Milliseconds())
			default:
				fmt.Fprintf(t.out, "nothing changed in the site\n")
			}
			first = first && b.Kept
		},
	})
}
