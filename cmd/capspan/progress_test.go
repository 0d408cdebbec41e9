package main

import (
	"bytes"
	"strings"
	"testing"
	"time"
)

func TestProgressLine(t *testing.T) {
	now := time.Now()
	p := &progress{text: "building"}
	if got, want := p.line(now), "building ..."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	p.pages(0, 4000)
	p.pages(1000, 4000)
	p.pages(999, 4000) // of another core, told later
	p.since = now.Add(-2 * time.Second)
	if got, want := p.line(now), "building: 1000 of 4000 pages, 500 a second, 6 s left"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
	p.say("writing 4100 files")
	if got, want := p.line(now), "writing 4100 files ..."; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}

// On a terminal the line is there while the work lasts, and gone at its end; elsewhere, and
// for what takes no longer than a moment, there is none.
func TestProgressShows(t *testing.T) {
	for _, test := range []struct {
		name     string
		live     bool
		quiet    bool
		patience time.Duration
		shows    bool
	}{
		{"a terminal", true, false, time.Millisecond, true},
		{"a terminal, quiet", true, true, time.Millisecond, false},
		{"no terminal", false, false, time.Millisecond, false},
		{"a short work", true, false, time.Hour, false},
	} {
		t.Run(test.name, func(t *testing.T) {
			var err bytes.Buffer
			p := newProgress(&terminal{err: &err, live: test.live}, test.quiet)
			if p.stop != nil {
				p.clear()
				p.begin(test.patience, time.Millisecond)
			}
			p.say("building")
			time.Sleep(20 * time.Millisecond)
			p.clear()
			p.clear()
			if got := strings.Contains(err.String(), "building ..."); got != test.shows {
				t.Errorf("shown: %v, want %v: %q", got, test.shows, err.String())
			}
			if test.shows && !strings.HasSuffix(err.String(), "\r\x1b[K") {
				t.Errorf("the line stays: %q", err.String())
			}
			if !test.shows && err.Len() > 0 {
				t.Errorf("something is left: %q", err.String())
			}
		})
	}
}
