// Package publish puts a built site where readers find it: into a folder, or into a
// bucket of any store that speaks the S3 protocol.
//
// [To] reads the target, [Target.Publish] does the work. A folder is brought up to date by
// [build.Write]. A bucket knows no rename and no lock, so this is how it goes there:
//
//  1. One listing tells what lies in the bucket, and the record (record.go), which lies
//     there too, what of it is ours and with which fields it was put.
//  2. Objects that are not ours, in a bucket without a record or where the site needs
//     the place, end the work before it begins; so does nothing to do.
//  3. The record is widened: whatever is to be written is known as ours from then on.
//  4. Objects are put, turn by turn: assets, data, pages, the service worker, files for
//     the keeper. A page never comes before what it loads, the worker not before the
//     files of its list. Each object arrives whole or not at all.
//  5. A second listing must show what was put. It tells of another publish at the same time.
//  6. What the site no longer has is removed, if it is ours; then the record is narrowed.
//
// Cut off anywhere, readers have whole pages and the next run ends the job.
package publish

import (
	"context"
	"fmt"
	"runtime"
	"strings"
	"sync"

	"capspan/build"
)

// Options say how to publish.
type Options struct {
	DryRun bool // tell what would be done and write nothing
	Force  bool // write beside and over what somebody else put there
	Plain  bool // into a bucket: no object packed
	Jobs   int  // requests at a time; 0 is eight
	// Progress, when not nil, is told how many of all changes are done. It is called by
	// one goroutine at a time.
	Progress func(done, all int)
}

// Report says what was done, or with DryRun what would be.
type Report struct {
	Written int      `json:"written"`
	Removed int      `json:"removed"`
	Same    int      `json:"same"`
	Bytes   int64    `json:"bytes"` // sent, packed as they are
	Changes []Change `json:"changes"`
}

// Change is one file, in the order of the work.
type Change struct {
	Do   string `json:"do"` // put or remove
	Path string `json:"path"`
}

// Target is where a site is published.
type Target interface {
	Publish(context.Context, build.Output, Options) (Report, error)
	// String is the target as it may be shown to anybody.
	String() string
}

// To reads a target: s3://bucket/prefix?endpoint=https://host&region=name, or a folder.
func To(target string) (Target, error) {
	scheme, _, remote := strings.Cut(target, "://")
	switch {
	case remote && scheme == "s3":
		return newBucket(target)
	case remote:
		return nil, fmt.Errorf("%q:// is no kind of target; name a folder, or s3://bucket", scheme)
	}
	return folder(target), nil
}

// ForeignError is the refusal to write where somebody else's files are.
type ForeignError struct {
	Target string
	Files  []string
}

func (e *ForeignError) Error() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s holds files that no publish of ours put there; nothing was written:", e.Target)
	const most = 20
	for n, name := range e.Files {
		if n == most {
			fmt.Fprintf(&b, "\n    and %d more", len(e.Files)-most)
			break
		}
		fmt.Fprintf(&b, "\n    %q", name)
	}
	b.WriteString("\n    hint: name another place, or give --force to write over those of the site's own names and beside the others")
	return b.String()
}

// each calls do for all numbers below n, some at a time, until one fails or the work is
// called off. The first fault is returned.
func each(ctx context.Context, jobs, n int, do func(context.Context, int) error) error {
	ctx, stop := context.WithCancelCause(ctx)
	defer stop(nil)
	queue := make(chan int)
	var group sync.WaitGroup
	for range min(jobs, n) {
		group.Go(func() {
			for i := range queue {
				if ctx.Err() == nil {
					if err := do(ctx, i); err != nil {
						stop(err)
					}
				}
			}
		})
	}
	for i := range n {
		queue <- i
	}
	close(queue)
	group.Wait()
	return context.Cause(ctx)
}

// cores is how many objects are packed at a time.
func cores() int { return runtime.GOMAXPROCS(0) }
