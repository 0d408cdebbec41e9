package main

import (
	"fmt"
	"sync"
	"time"
)

// progress is one line on a terminal that is written over and taken away at the end. It
// shows only when the work takes longer than a moment, and never where nobody looks.
type progress struct {
	t    *terminal
	stop chan struct{} // nil: nothing is shown
	done sync.WaitGroup

	mu    sync.Mutex
	text  string
	made  int // pages
	all   int
	since time.Time // when the first page was begun
}

// Nobody reads a line that is there for less than patience, or changes more often than beat.
const (
	patience = time.Second
	beat     = 200 * time.Millisecond
)

// newProgress begins; off is for a verb that was told to be quiet.
func newProgress(t *terminal, off bool) *progress {
	p := &progress{t: t}
	if !off && t.live {
		p.begin(patience, beat)
	}
	return p
}

func (p *progress) begin(patience, beat time.Duration) {
	p.stop = make(chan struct{})
	p.done.Go(func() {
		next := time.NewTimer(patience)
		shown := false
		for {
			select {
			case <-next.C:
				fmt.Fprintf(p.t.err, "\r\x1b[K%s", p.line(time.Now()))
				shown = true
				next.Reset(beat)
			case <-p.stop:
				if shown {
					fmt.Fprint(p.t.err, "\r\x1b[K")
				}
				return
			}
		}
	})
}

// say tells what is done now.
func (p *progress) say(text string) {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.text, p.all = text, 0
}

// pages tells how many pages are made, of how many.
func (p *progress) pages(made, all int) {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.since.IsZero() {
		p.since = time.Now()
	}
	p.made, p.all = max(made, p.made), all
}

// line is what is shown: "building: 1200 of 4284 pages, 350 a second, 9 s left".
func (p *progress) line(now time.Time) string {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.all == 0 {
		return p.text + " ..."
	}
	line := fmt.Sprintf("%s: %d of %d pages", p.text, p.made, p.all)
	if spent := now.Sub(p.since).Seconds(); spent > 0 && p.made > 0 {
		rate := float64(p.made) / spent
		line += fmt.Sprintf(", %.0f a second, %.0f s left", rate, float64(p.all-p.made)/rate)
	}
	return line
}

// clear ends it.
func (p *progress) clear() {
	if p.stop != nil {
		close(p.stop)
		p.done.Wait()
		p.stop = nil
	}
}
