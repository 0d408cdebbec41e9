package publish

import (
	"context"
	"errors"
	"strings"
	"testing"
	"time"
)

// Every change of the bucket on the way from one edition to the next leaves whole pages;
// cut off before or after any request, the next run ends the job and leaves nothing over.
func TestCutOffAnywhere(t *testing.T) {
	one, two := site("1", "a", "b", "gone"), site("2", "a", "b", "new")
	plain := Options{Plain: true, Jobs: 3}
	for _, first := range []bool{true, false} { // into an empty bucket, over an edition
		requests := 0
		for cut := 1; cut == 1 || cut <= requests; cut++ {
			for _, done := range []bool{false, true} {
				s := newStore(t)
				if !first {
					s.publish(one, plain)
				}
				s.log = nil
				ctx, stop := context.WithCancel(context.Background())
				s.before = func(n int, _ string) int {
					if n == cut && !done {
						stop()
						return 500
					}
					if n > cut {
						return 500 // what was under way when the line broke
					}
					return 0
				}
				s.after = func(n int, what string) {
					if err := faults(s.holds(), one, two); err != nil {
						t.Errorf("cut %d, after %s: %v", cut, what, err)
					}
					if n == cut {
						stop()
					}
				}
				_, err := s.target("").Publish(ctx, two, plain)
				stop()
				if err == nil && !(done && cut == requests) && ctx.Err() == nil {
					t.Errorf("cut at %d of %d: no error", cut, requests)
				}
				if err != nil && strings.Contains(err.Error(), secret) {
					t.Errorf("the secret is shown: %v", err)
				}
				s.hangUp()
				s.before = nil
				s.publish(two, plain)
				equal(t, texts(two), s.holds())
				if cut == 1 {
					// How many requests a whole run takes.
					whole := newStore(t)
					if !first {
						whole.publish(one, plain)
					}
					whole.publish(two, plain)
					requests = len(whole.log)
				}
				report := s.publish(two, plain)
				if report.Written+report.Removed > 0 || len(s.log) != 2 {
					t.Errorf("cut at %d: the run after is not at rest: %+v, %q", cut, report, s.log)
				}
			}
		}
		if requests < 12 {
			t.Errorf("a whole run took %d requests only", requests)
		}
	}
}

// Another publish at the same time is noticed by whoever ends second; a run alone then
// ends right.
func TestTwoAtOnce(t *testing.T) {
	patience = 10 * time.Millisecond
	t.Cleanup(func() { patience = 500 * time.Millisecond })
	s := newStore(t)
	plain := Options{Plain: true}
	s.publish(site("1", "a", "b"), plain)
	other, entered := s.target(""), false
	s.log = nil
	s.after = func(_ int, what string) {
		if what != "PUT a/index.html" || entered {
			return
		}
		entered = true
		s.mutex.Unlock()
		if _, err := other.Publish(context.Background(), site("3", "a", "c"), plain); err != nil {
			t.Error(err)
		}
		s.mutex.Lock()
	}
	_, err := s.target("").Publish(context.Background(), site("2", "a", "b"), plain)
	if !errors.Is(err, errOther) || !entered {
		t.Errorf("got %v", err)
	}
	if err := faults(s.holds()); err != nil {
		t.Error(err)
	}
	s.publish(site("2", "a", "b"), plain)
	if err := faults(s.holds(), site("2", "a", "b")); err != nil {
		t.Error(err)
	}
	for name, text := range texts(site("2", "a", "b")) {
		if s.holds()[name] != text {
			t.Errorf("%s is not of the last publish", name)
		}
	}
}

// A store that is busy is asked again.
func TestBusy(t *testing.T) {
	s := newStore(t)
	busy := map[string]int{}
	s.before = func(n int, what string) int {
		if busy[what]++; busy[what] == 1 && strings.HasSuffix(what, ".html") {
			return 503
		}
		return 0
	}
	s.publish(site("1", "a", "b"), Options{Plain: true})
	equal(t, texts(site("1", "a", "b")), s.holds())
	if busy["PUT a/index.html"] != 2 {
		t.Errorf("got %v", busy)
	}
}
