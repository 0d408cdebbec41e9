// Command truth is the bench of truth: it simulates people measuring joints, puts their
// readings to the identification core and to the plain nearest-row rule, and prints how
// often each was right. It is a tool of this project and no part of the shipped command.
//
//	go run ./static/matcher/truth                   the whole bench, about a quarter of an hour
//	go run ./static/matcher/truth -n 2000           a quick look
//	go run ./static/matcher/truth -column rule -show 3
//
// In call order: [denseChart] makes the second chart, [newBench] bundles the core and the
// TypeScript beside this file (simulate.ts is its front door), [bench.run] shares the sets
// among node processes, [table.print] writes what they counted.
//
// The error model stands in given.ts, apart from the core's constants: a core must not be
// judged by its own assumptions. Equal flags print equal figures, whatever the machine.
package main

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"os"
	"runtime"
	"slices"
	"strings"

	"capspan/build"
	"capspan/static/matcher"
	"capspan/tables"
)

func main() {
	out := bufio.NewWriter(os.Stdout)
	err := command(os.Args[1:], out)
	if flushed := out.Flush(); err == nil {
		err = flushed
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "truth:", err)
		os.Exit(1)
	}
}

func command(args []string, out *bufio.Writer) error {
	flags := flag.NewFlagSet("truth", flag.ContinueOnError)
	n := flags.Int("n", 200_000, "sets of readings a column")
	seed := flags.Uint64("seed", 1, "start of the numbers that stand for chance")
	chart := flags.String("chart", "both", "shipped, dense or both")
	only := flags.String("column", "", "this column alone, or several with commas between")
	show := flags.Int("show", 0, "how many sets named outright and wrongly to print for each column")
	jobs := flags.Int("jobs", runtime.NumCPU(), "node processes at once")
	if err := flags.Parse(args); err != nil {
		return err
	}
	charts, err := named(*chart, *seed)
	if err != nil {
		return err
	}
	b, err := newBench()
	if err != nil {
		return err
	}
	defer b.close()
	b.head(out, *n, *seed)
	for _, c := range charts {
		t := table{title: c.title, dense: c.dense, rows: len(c.chart.Rows), bins: b.bins}
		for _, column := range b.columns {
			if *only != "" && !slices.Contains(strings.Split(*only, ","), column.ID) {
				continue
			}
			found, err := b.run(c.chart, column, *n, *seed, *show, *jobs)
			if err != nil {
				return err
			}
			t.columns = append(t.columns, counted{column, found})
		}
		t.print(out)
		if err := out.Flush(); err != nil {
			return err
		}
	}
	return nil
}

type titled struct {
	title string
	dense bool
	chart matcher.Chart
}

func named(which string, seed uint64) ([]titled, error) {
	var out []titled
	if which == "shipped" || which == "both" {
		set, problems := tables.Load(tables.FS)
		if problems.Blocked() {
			return nil, fmt.Errorf("the shipped tables have problems: run capspan check")
		}
		out = append(out, titled{"the shipped chart", false, build.Chart(set)})
	}
	if which == "dense" || which == "both" {
		out = append(out, titled{"a dense synthetic chart", true, denseChart(denseRows, seed)})
	}
	if len(out) == 0 {
		return nil, fmt.Errorf("no chart %q: say shipped, dense or both", which)
	}
	return out, nil
}

func (b *bench) head(w io.Writer, n int, seed uint64) {
	fmt.Fprintf(w, "Bench of truth: %d sets a column, seed %d.\n\nError model\n", n, seed)
	for _, line := range b.statement {
		fmt.Fprintf(w, "  %s\n", line)
	}
}
