//go:build browser

package browser

import "testing"

// WCAG 2.2 AA on every kind of page and in every state of those that a script changes:
// by axe-core in all media, at every zoom, under a thumb, and by keyboard alone.
// One walk for all of it, because to bring a page into its state takes longest; two tabs,
// because most machines have two cores.
func TestForEveryone(t *testing.T) {
	known := &focusKnown{sorts: map[string][]string{}}
	var halves [2][]scene // one and one, for like scenes stand together
	for n, s := range scenes(t) {
		halves[n%2] = append(halves[n%2], s)
	}
	for n, half := range halves {
		t.Run([]string{"one half", "the other"}[n], func(t *testing.T) {
			t.Parallel()
			b := openTab(t)
			for _, s := range half {
				t.Run(s.name, func(t *testing.T) {
					b.t = t
					b.show(s)
					b.accessible()
					b.zooms()
					b.touchable()
					b.still()
					b.focusShows(known)
					b.keyboard()
				})
			}
		})
	}
}
