package main

import (
	"context"
	"fmt"
	"io"
	"strings"

	"capspan/build"
	"capspan/build/diag"
	"capspan/tables/compare"
)

type compareVerb struct {
	rootFlag
	Base     string `arg:"" name:"base" help:"What to compare with: a folder that holds tables/, or a revision of git."`
	Markdown bool   `help:"Print Markdown, as for a comment on a change."`
	JSON     bool   `name:"json" help:"Print everything as JSON."`
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
  capspan compare ../last-release --json`
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
	src, dir, err := v.sources(true)
	if err != nil {
		return err
	}
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
	return nil
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
