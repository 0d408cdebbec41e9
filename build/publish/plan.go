package publish

import (
	"maps"
	"slices"

	"capspan/build"
)

// plan is what is to be done in a bucket.
type plan struct {
	put     []object // by their turn
	remove  []string // by their turn, backwards
	same    int
	foreign []string
	before  record // while it is done
	after   record
	rested  bool // nothing is to be done
}

// makePlan compares the site with the listing (entity tags by path) and the record of the
// last publish. Known is whether there is one.
func makePlan(site []object, listing map[string]string, last record, known bool) plan {
	p := plan{before: record{Files: maps.Clone(last.Files)}, after: record{Whole: true, Files: map[string]entry{}}}
	if p.before.Files == nil {
		p.before.Files = map[string]entry{}
	}
	for _, o := range site {
		tag, there := listing[o.path]
		had, ours := last.Files[o.path]
		if there && ours && had.same(o.entry) && had.listed() == tag {
			p.same++
			p.after.Files[o.path] = had
			continue
		}
		if there && !ours && tag != o.entry.MD5 {
			p.foreign = append(p.foreign, o.path)
		}
		p.put = append(p.put, o)
		p.after.Files[o.path] = o.entry
		// Should the work be cut off, the next run goes by the sum whether this one was
		// put. Where the sum will not change, the sum cannot tell, and it is put again.
		p.before.Files[o.path] = o.entry
		if there && tag == o.entry.MD5 {
			p.before.Files[o.path] = entry{}
		}
	}
	for _, name := range slices.Sorted(maps.Keys(last.Files)) {
		_, there := listing[name]
		_, wanted := p.after.Files[name]
		switch {
		case !there || wanted:
		case build.Stays(name):
			p.after.Files[name] = last.Files[name]
		default:
			p.remove = append(p.remove, name)
		}
	}
	if !known {
		p.foreign = slices.DeleteFunc(slices.Sorted(maps.Keys(listing)), func(name string) bool {
			wanted, found := p.after.Files[name]
			return found && listing[name] == wanted.MD5
		})
	}
	slices.SortStableFunc(p.put, func(a, b object) int { return a.turn - b.turn })
	slices.SortStableFunc(p.remove, func(a, b string) int { return turn(b) - turn(a) })
	p.rested = len(p.put) == 0 && len(p.remove) == 0 && last.Whole && maps.Equal(last.Files, p.after.Files)
	return p
}

// report tells the plan as if it were done.
func (p plan) report() Report {
	r := Report{Written: len(p.put), Removed: len(p.remove), Same: p.same, Changes: []Change{}}
	for _, o := range p.put {
		r.Changes = append(r.Changes, Change{"put", o.path})
		r.Bytes += int64(len(o.bytes))
	}
	for _, name := range p.remove {
		r.Changes = append(r.Changes, Change{"remove", name})
	}
	return r
}
