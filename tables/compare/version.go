package compare

import (
	"cmp"
	"fmt"
	"strconv"
	"strings"

	"capspan/build/diag"
	"capspan/tables"
)

// steps works out what each table's version had to do. A new table may begin where it likes.
func (d *Diff) steps() {
	needs := map[string]Bump{}
	for _, c := range d.Changes {
		if c.Table != "" {
			needs[c.Table] = max(needs[c.Table], c.Bump)
		}
	}
	for _, t := range d.newer.Tables {
		before := tableOf(d.older, t.ID)
		s := Step{Table: t.ID, New: t.Version.Number, Needs: needs[t.ID], Enough: true, position: t}
		if before != nil {
			s.Old = before.Version.Number
			s.AtLeast = raise(s.Old, s.Needs)
			s.Enough = compareNumbers(s.New, s.AtLeast) >= 0 && t.Version.Date >= before.Version.Date
		}
		if s.Needs > NoBump || s.Old != s.New || before.Version.Date != t.Version.Date {
			d.Steps = append(d.Steps, s)
		}
	}
	for _, t := range d.older.Tables {
		if tableOf(d.newer, t.ID) == nil {
			d.Steps = append(d.Steps, Step{Table: t.ID, Old: t.Version.Number, Needs: Major, Enough: true})
		}
	}
}

// numbers of a version; the loader has seen to its form.
func numbers(version string) [3]int {
	var n [3]int
	for i, part := range strings.SplitN(version, ".", 3) {
		n[i], _ = strconv.Atoi(part)
	}
	return n
}

func compareNumbers(a, b string) int {
	x, y := numbers(a), numbers(b)
	return cmp.Or(cmp.Compare(x[0], y[0]), cmp.Compare(x[1], y[1]), cmp.Compare(x[2], y[2]))
}

// raise is the lowest version after a step of that kind.
func raise(version string, by Bump) string {
	n := numbers(version)
	switch by {
	case Major:
		n = [3]int{n[0] + 1, 0, 0}
	case Minor:
		n = [3]int{n[0], n[1] + 1, 0}
	case Patch:
		n[2]++
	}
	return fmt.Sprintf("%d.%d.%d", n[0], n[1], n[2])
}

// Problems are what a change may not do: leave a version too low, turn a date back, or
// take an id away without saying where it went.
func (d *Diff) Problems() diag.List {
	var list diag.List
	for _, s := range d.Steps {
		if s.Old == "" || s.New == "" {
			continue
		}
		before := tableOf(d.older, s.Table)
		pos := func(key string) diag.Pos {
			if key == "date" {
				return s.position.Version.DatePos
			}
			return s.position.Version.NumberPos
		}
		if compareNumbers(s.New, s.AtLeast) < 0 {
			fact := fmt.Sprintf("the version %q is too low: what changed since %s needs %s (%s)", s.New, s.Old, s.AtLeast, s.Needs)
			if s.Needs == NoBump {
				fact = fmt.Sprintf("the version went back from %q to %q", s.Old, s.New)
			}
			list.Add(diag.Problem{Pos: pos("version"), Path: s.Table + ".version", Rule: "version-too-low", Fact: fact,
				Hints: []string{"write version: " + s.AtLeast + ", and the day of the change as date"}})
		}
		if now := s.position.Version.Date; now < before.Version.Date {
			list.Add(diag.Problem{Pos: pos("date"), Path: s.Table + ".date", Rule: "date-too-early",
				Fact: fmt.Sprintf("the date went back from %s to %s", before.Version.Date, now)})
		}
	}
	for _, t := range d.older.Tables {
		for _, row := range t.Rows {
			if d.newer.Find(row.ID) != nil || retired(d.newer, row.ID) {
				continue
			}
			p := diag.Problem{Pos: diag.Pos{File: "tables/retired.yaml"}, Path: row.Ref(), Rule: "gone-without-a-word",
				Fact:  fmt.Sprintf("the row %q is gone and the list of retired ids does not say where it went", row.ID),
				Hints: []string{fmt.Sprintf("add {id: %s, to: [...], why: ...}; leave out to when nothing takes its place", row.ID)}}
			if to := d.renamed[row.ID]; to != "" {
				p.Hints = []string{fmt.Sprintf("%q says just the same: add {id: %s, to: [%s], why: ...}", to, row.ID, to)}
			}
			list.Add(p)
		}
	}
	for _, r := range d.older.Retired {
		if d.newer.Find(r.ID) == nil && !retired(d.newer, r.ID) {
			list.Add(diag.Problem{Pos: diag.Pos{File: "tables/retired.yaml"}, Path: "retired/" + r.ID, Rule: "gone-without-a-word",
				Fact:  fmt.Sprintf("the retired id %q is no longer in the list, and its address would lead nowhere", r.ID),
				Hints: []string{"put its entry back"}})
		}
	}
	list.Sort()
	return list
}

func retired(set *tables.Set, id string) bool {
	for _, r := range set.Retired {
		if strings.EqualFold(r.ID, id) {
			return true
		}
	}
	return false
}
