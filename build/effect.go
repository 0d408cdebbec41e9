package build

import (
	"errors"
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"capspan/build/diag"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
	"capspan/tables/compare"
)

// Comparison is what a change of the chart means and does.
type Comparison struct {
	*compare.Diff
	Shifts   compare.Shifts  `json:"shifts"`
	Queries  int             `json:"queries"` // that there are: each row's own figures, and seeded readings about them
	Near     int             `json:"near"`    // of them, near enough to a changed row to be answered otherwise
	Asked    int             `json:"asked"`   // of those
	Verdicts []VerdictChange `json:"verdicts"`
}

// VerdictChange is a query that both charts answer differently: a link that carries
// such readings means something else than when it was sent.
type VerdictChange struct {
	Of      string        `json:"of"`   // the row it was made from
	Asks    string        `json:"asks"` // the readings, in words
	Address string        `json:"address"`
	Query   matcher.Query `json:"query"`
	Old     Concluded     `json:"old"`
	New     Concluded     `json:"new"`
}

// Concluded is an answer in short; rows have the names of today.
type Concluded struct {
	Verdict matcher.Verdict `json:"verdict"`
	Rows    []string        `json:"rows"`
}

// Compare tells the difference between two folders of tables, and its effect, which the
// core of the newer sources works out for both. What does not load is told side by
// side, by the name of each.
// With every, all queries are asked, also those no change can reach.
func Compare(older fs.FS, newer Sources, every bool) (*Comparison, [2]diag.List, error) {
	sets, problems := tables.LoadPair(older, newer.Tables)
	was, is := sets[0], sets[1]
	if problems[0].Blocked() || problems[1].Blocked() {
		return nil, problems, nil
	}
	var charts [2]matcher.Chart
	var core coreParts
	var wrong diag.List
	var group sync.WaitGroup // what is told and what is asked know nothing of each other yet
	group.Go(func() { charts[0] = Chart(was) })
	group.Go(func() { charts[1] = Chart(is) })
	group.Go(func() {
		core.first, core.late, wrong = static.Parts(newer.Static, max(jointRows(was), jointRows(is)) > largeRows)
	})
	d := compare.Sets(was, is)
	err := d.Formatting(older, newer.Tables)
	c := &Comparison{Diff: d, Shifts: d.Shifts(), Verdicts: []VerdictChange{}}
	group.Wait()
	if err != nil {
		return nil, problems, err
	}
	problems = [2]diag.List{nil, d.Problems()}
	asked := c.choose(charts[0], charts[1], every)
	if len(asked) == 0 {
		return c, problems, nil
	}
	if wrong.Blocked() {
		problems[1].Add(wrong...)
		return c, problems, nil
	}
	return c, problems, c.ask(core, charts, asked)
}

// coreParts are the scripts of the core, as pages load them one after the other.
type coreParts struct{ first, late []byte }

// ask puts the queries to both charts at once, one machine each.
func (c *Comparison) ask(core coreParts, charts [2]matcher.Chart, asked []putQuery) error {
	var machines [2]*matcher.Matcher
	var answers [2][]Concluded
	var failed [2]error
	var group sync.WaitGroup
	for n, chart := range charts {
		called := func(id string) string { return id }
		if n == 0 {
			called = c.NowCalled
		}
		group.Go(func() {
			if machines[n], failed[n] = newMatcher(core.first, chart); failed[n] == nil {
				answers[n], failed[n] = core.concludedBy(machines[n], asked, called)
			}
		})
	}
	group.Wait()
	if err := errors.Join(failed[:]...); err != nil {
		return fmt.Errorf("work out the effect: %w", err)
	}
	for i, q := range asked {
		was, is := answers[0][i], answers[1][i]
		if was.Verdict == is.Verdict && slices.Equal(was.Rows, is.Rows) {
			continue
		}
		address, err := machines[1].Address(q.query)
		if err != nil {
			return fmt.Errorf("work out the effect: %w", err)
		}
		c.Verdicts = append(c.Verdicts, VerdictChange{q.of, asks(q.query), "/identify/#" + address, q.query, was, is})
	}
	return nil
}

// concludedBy puts the queries to a machine that knows the first part of the core. That names
// the sizes that are left; the late part says more of them, and only where there is none does
// it change the verdict, by a slip. So it is learnt when all those are answered, and asked the
// others.
func (core coreParts) concludedBy(m *matcher.Matcher, asked []putQuery, called func(string) string) ([]Concluded, error) {
	answers := make([]Concluded, len(asked))
	again := make([]int, 0, len(asked))
	ask := func(i int) error {
		a, err := m.Identify(asked[i].query)
		if answers[i] = concluded(a, called); len(a.Sizes) == 0 {
			again = append(again, i)
		}
		return err
	}
	for i := range asked {
		if err := ask(i); err != nil {
			return nil, err
		}
	}
	if len(again) == 0 {
		return answers, nil
	}
	if err := m.Learn(core.late); err != nil {
		return nil, err
	}
	for _, i := range again[:len(again):len(again)] {
		if err := ask(i); err != nil {
			return nil, err
		}
	}
	return answers, nil
}

func concluded(a matcher.Answer, called func(string) string) Concluded {
	out := Concluded{Verdict: a.Verdict, Rows: []string{}}
	for _, size := range a.Sizes {
		for _, ref := range size.Rows {
			out.Rows = append(out.Rows, called(rowOf(ref)))
		}
	}
	slices.Sort(out.Rows)
	out.Rows = slices.Compact(out.Rows) // a joint of two like ends agrees either way round
	return out
}

// asks is a query in words: "outside-clip, cap 1.062 in, across 3.219 in".
func asks(q matcher.Query) string {
	var ends []string
	for _, end := range q.Ends {
		words := []string{end.Hold}
		if len(end.Cap) > 0 {
			words = append(words, "cap "+end.Cap[0])
		}
		if len(end.Across) > 0 {
			words = append(words, "across "+end.Across[0])
		}
		ends = append(ends, strings.Join(words, ", "))
	}
	return strings.Join(ends, "; and ")
}
