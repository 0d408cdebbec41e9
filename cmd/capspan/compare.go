package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"runtime/debug"
	"strings"

	"capspan/build"
	"capspan/build/diag"
	"capspan/tables"
	"capspan/tables/compare"
)

type compareVerb struct {
	rootFlag
	Base     string `arg:"" name:"base" help:"What to compare with: a folder that holds tables/, or a revision of git."`
	Markdown bool   `help:"Print Markdown, as for a comment on a change."`
	JSON     bool   `name:"json" help:"Print everything as JSON."`
	Record   bool   `help:"Write what changed into tables/history.yaml, as at a release; needs --why."`
	Why      string `placeholder:"TEXT" help:"With --record: why, in one or two sentences."`
	Every    bool   `help:"Ask every query for the effect, also those far from the change. Takes a while."`
}

// Help is shown below the one-line help.
func (compareVerb) Help() string {
	return `Tells what changed in meaning since BASE: rows, figures in both units, why they are
believed, the versions the tables now need, and what it does to verdicts and sizes.
Reads the current folder when it holds tables/. A revision is read out of git's
store; the work tree is not touched. A version that is too low exits with 1.

Examples:
  capspan compare main
  capspan compare HEAD~3 --markdown
  capspan compare ../last-release --json
  capspan compare v3 --record --why 'two readers measured the 1350'`
}

// compareReport is how a machine reads a comparison.
type compareReport struct {
	*build.Comparison
	Base problemReport `json:"base"` // problems of each side
	Here problemReport `json:"here"`
}

// Run prints the difference, and what is wrong with either side.
func (v *compareVerb) Run(ctx context.Context, t *terminal) error {
	if v.Markdown && v.JSON {
		return misuse("--markdown and --json at once\n    hint: choose one")
	}
	if v.Record != (strings.TrimSpace(v.Why) != "") {
		return misuse("--record and --why go together\n    hint: --record --why 'two readers measured the 1350'")
	}
	src, dir, err := v.sources(true)
	if err == nil && v.Record && dir == "" {
		err = misuse("--record writes into a working folder\n    hint: name it with --root")
	}
	if err != nil {
		return err
	}
	if src.Own != nil {
		return misuse("%q is a keeper's own folder, and the chart is in the program\n    hint: capspan check --root %s says what a newer chart means for it", dir, dir)
	}
	// What the core throws away while it answers would pile up. At 100,000 rows the limit spares a
	// sixth of the memory and costs next to nothing; it is none to what a chart may need.
	sparingly(400)
	debug.SetMemoryLimit(1500 << 20)
	older, err := baseTables(ctx, dir, v.Base)
	if err != nil {
		return err
	}
	c, problems, err := build.Compare(older, src, v.Every)
	if err != nil {
		return err
	}
	switch {
	case v.JSON:
		err = printJSON(t.out, compareReport{c, reportOf(problems[0]), reportOf(problems[1])})
	case c != nil && v.Markdown:
		err = c.WriteMarkdown(t.out)
	case c != nil:
		err = c.WriteText(t.out)
	}
	if err != nil {
		return err
	}
	if !v.JSON {
		if err := v.sides(t, problems, c == nil); err != nil {
			return err
		}
	}
	if problems[0].Blocked() || problems[1].Blocked() {
		return problemsFound
	}
	if v.Record {
		return v.record(t, c, dir)
	}
	return nil
}

// record puts the change in front of the history. It is written only when it reads back.
func (v *compareVerb) record(t *terminal, c *build.Comparison, dir string) error {
	release := c.Release(v.Why)
	if len(release.Changes) == 0 {
		_, err := fmt.Fprintln(t.err, "nothing changed that could be recorded")
		return err
	}
	root, err := openTables(dir)
	if err != nil {
		return err
	}
	defer root.Close()
	const name = "history.yaml"
	before, err := root.ReadFile(name)
	if errors.Is(err, fs.ErrNotExist) {
		err = root.WriteFile(name, nil, 0o644)
	}
	if err != nil {
		return fmt.Errorf("read the history: %w", err)
	}
	after, err := tables.Record(before, release)
	if err != nil {
		return err
	}
	if problems := tables.CheckHistory(after); problems.Blocked() {
		if err := problems.Print(t.err); err != nil {
			return err
		}
		return problemsFound
	}
	if err := replaceFile(root, name, after); err != nil {
		return err
	}
	_, err = fmt.Fprintf(t.err, "tables/%s: recorded %s\n", name, release.Chart)
	return err
}

// sides prints the problems of each side; when one could not be read, both are named.
// In Markdown they are part of the comment.
func (v *compareVerb) sides(t *terminal, problems [2]diag.List, unread bool) error {
	var b strings.Builder
	for n, name := range []string{v.Base, "here"} {
		head := name + ": " + problems[n].Summary()
		switch {
		case !unread && len(problems[n]) == 0:
		case v.Markdown:
			fmt.Fprintf(&b, "\n### %s\n\n", compare.Escape(head))
		case unread:
			fmt.Fprintln(&b, head)
		}
		for _, p := range problems[n] {
			if v.Markdown {
				fmt.Fprintf(&b, "- %s\n", compare.Escape(p.String()))
			} else {
				fmt.Fprintln(&b, p)
			}
		}
	}
	to := t.err
	if v.Markdown {
		to = t.out
	}
	_, err := io.WriteString(to, b.String())
	return err
}
