//go:build browser

package browser

import (
	"fmt"
	"image/color"
	"testing"
)

// Every ink of static/parts/page/tokens.css on every ground it is written on, by day and by
// night: 4.5 for words, 3 for lines and for what shows the keyboard (WCAG 2.2, 1.4.3 and
// 1.4.11). It stands for the words in drawings too, where axe cannot tell the ground.
func TestInksOnGrounds(t *testing.T) {
	b := openTab(t)
	b.open("/")
	for _, m := range mediums[:2] {
		b.lookThrough(m)
		for _, pair := range []struct {
			inks, grounds []string
			least         float64
		}{
			{[]string{"--ink", "--pencil", "--mark", "--good"}, []string{"--paper", "--sheet", "--wash"}, 4.5},
			{[]string{"--on-ink"}, []string{"--ink"}, 4.5},
			{[]string{"--line", "--focus"}, []string{"--paper", "--sheet", "--wash"}, 3},
		} {
			for _, ink := range pair.inks {
				for _, ground := range pair.grounds {
					one, two := luminance(b.token(ink)), luminance(b.token(ground))
					if got := (max(one, two) + 0.05) / (min(one, two) + 0.05); got < pair.least {
						t.Errorf("%s: %s on %s has a contrast of %.2f, want %v", m.name, ink, ground, got, pair.least)
					}
				}
			}
		}
	}
}

// token is the colour of a token in the medium the tab looks through.
func (b *tab) token(name string) color.Color {
	b.t.Helper()
	written := see[string](b, `getComputedStyle(document.documentElement).getPropertyValue("`+name+`").trim()`)
	c := color.RGBA{A: 255}
	if n, err := fmt.Sscanf(written, "#%02x%02x%02x", &c.R, &c.G, &c.B); n != 3 {
		b.t.Fatalf("%s is %q, which is no colour: %v", name, written, err)
	}
	return c
}
