package publish

import (
	"cmp"
	"context"
	"errors"
	"sync"
	"time"
)

// work is a plan for a bucket, under way.
type work struct {
	b    *bucket
	plan plan
	opt  Options

	all   int // changes
	mutex sync.Mutex
	done  int
}

func (w *work) run(ctx context.Context) error {
	mark, err := w.writeRecord(ctx, w.plan.before)
	if err != nil {
		return err
	}
	put, remove := w.plan.put, w.plan.remove
	tags := make([]string, len(put)) // as the store answers
	putTurn := func(n int) int { return put[n].turn }
	err = w.each(ctx, len(put), putTurn, func(ctx context.Context, n int) (err error) {
		tags[n], err = w.b.put(ctx, put[n])
		return err
	})
	if err != nil {
		return err
	}
	for n, o := range put {
		if tags[n] != o.entry.MD5 {
			o.entry.ETag = tags[n] // the store encrypts, and lists another sum
		}
		w.plan.after.Files[o.path] = o.entry
	}
	if err := w.look(ctx, mark); err != nil {
		return err
	}
	removeTurn := func(n int) int { return turn(remove[n]) }
	err = w.each(ctx, len(remove), removeTurn, func(ctx context.Context, n int) error {
		return w.b.remove(ctx, remove[n])
	})
	if err != nil {
		return err
	}
	_, err = w.writeRecord(ctx, w.plan.after)
	return err
}

// each does all changes, those of one turn some at a time, and counts them.
func (w *work) each(ctx context.Context, all int, turn func(int) int, do func(context.Context, int) error) error {
	for first, next := 0, 0; first < all; first = next {
		for next < all && turn(next) == turn(first) {
			next++
		}
		err := each(ctx, cmp.Or(w.opt.Jobs, 8), next-first, func(ctx context.Context, n int) error {
			if err := do(ctx, first+n); err != nil {
				return err
			}
			w.mutex.Lock()
			defer w.mutex.Unlock()
			w.done++
			if w.opt.Progress != nil {
				w.opt.Progress(w.done, w.all)
			}
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// writeRecord returns the entity tag of the record.
func (w *work) writeRecord(ctx context.Context, r record) (string, error) {
	return w.b.put(ctx, object{
		path: recordName, bytes: r.text(),
		entry: entry{Type: "application/json", Caching: "no-cache"},
	})
}

// patience is how long a listing that comes late is first waited for.
var patience = 500 * time.Millisecond

var errOther = errors.New("what the bucket lists is not what was put: another publish, or somebody else, writes there at the same time")

// look compares the listing with what was put. A store whose listing comes late is asked
// again a few times.
func (w *work) look(ctx context.Context, mark string) error {
	for wait := patience; ; wait *= 2 {
		listing, err := w.b.list(ctx)
		if err != nil {
			return w.b.explain(err, "list", "")
		}
		ok := listing[recordName] == mark
		for name, e := range w.plan.after.Files {
			ok = ok && listing[name] == e.listed()
		}
		if ok {
			return nil
		}
		if wait > 8*patience {
			return errOther
		}
		select {
		case <-time.After(wait):
		case <-ctx.Done():
			return ctx.Err()
		}
	}
}
