package words

import (
	"fmt"
	"maps"
	"slices"

	"capspan/build/diag"
)

// Use is one place that says a phrase.
type Use struct {
	Key   string
	Names []string // what it gives, by name
	Prose bool     // links and ** may stand in it
	Pos   diag.Pos // as far as it is known
}

// names are those that the fullest form waits for.
func (p *Phrase) names() []string {
	if p.Counted() {
		return p.forms["other"].names()
	}
	return p.forms[""].names()
}

// Check holds the catalogue against all uses there are of it.
func (c *Catalogue) Check(uses []Use) diag.List {
	var problems diag.List
	used := map[string]bool{}
	for _, use := range uses {
		phrase := c.phrases[use.Key]
		if phrase == nil {
			problems.Add(diag.Problem{Pos: use.Pos, Path: use.Key, Rule: "unknown-words",
				Fact:  fmt.Sprintf("no words are called %q", use.Key),
				Hints: diag.Nearest(use.Key, slices.Sorted(maps.Keys(c.phrases)))})
			continue
		}
		used[use.Key] = true
		problems.Add(phrase.held(use)...)
	}
	for key, phrase := range c.phrases {
		if !used[key] {
			problems.Add(diag.Problem{Pos: phrase.Pos, Path: key, Rule: "unused-words", Fact: "nobody says it"})
		}
	}
	problems.Sort()
	return slices.CompactFunc(problems, func(a, b diag.Problem) bool { return a.String() == b.String() })
}

// held reports where a phrase and its use differ: it may wait for no more than it is
// given, and may leave nothing out but the number.
func (p *Phrase) held(use Use) diag.List {
	var problems diag.List
	fail := func(rule, fact string) {
		problems.Add(diag.Problem{Pos: p.Pos, Path: use.Key, Rule: rule, Fact: fact, Notes: []diag.Note{{Text: "said at", Pos: use.Pos}}})
	}
	if p.Counted() && !slices.Contains(use.Names, "n") {
		fail("unknown-placeholder", "the plural forms wait for {n}, which is not given")
	}
	for _, text := range p.forms {
		if text.prose() && !use.Prose {
			fail("marks-not-here", "links and ** cannot be shown where it is said")
		}
		for _, name := range text.names() {
			if !slices.Contains(use.Names, name) {
				fail("unknown-placeholder", fmt.Sprintf("{%s} is not given", name))
			}
		}
	}
	given := p.names()
	for _, name := range use.Names {
		if !slices.Contains(given, name) && !(name == "n" && p.Counted()) {
			fail("placeholder-left-out", fmt.Sprintf("{%s} is given and not said", name))
		}
	}
	return problems
}
