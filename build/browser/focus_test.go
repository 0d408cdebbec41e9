//go:build browser

package browser

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"slices"
	"strings"
	"sync"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// nextSort gives the keyboard to the first stop of a sort that was not looked at yet, and
// says which; empty when there is none. What was looked at is in the argument.
const nextSort = `((known, fine) => {
	const sort = e => [e.tagName, e.type ?? "", fine && e.getAttribute("class")].join(" ");
	const e = ` + keyboardStops + `.find(e => !known.includes(sort(e)));
	if (!e) return {Sort: "", Name: "", Clip: [0, 0, 0, 0], Edge: 0};
	e.focus();
	e.scrollIntoView({block: "nearest"});
	const unseen = e.matches("input") && getComputedStyle(e).opacity === "0"; // its label stands for it
	const shown = (unseen && e.closest("label")) || e.querySelector(":scope > .hood__touch") || e;
	const r = shown.getBoundingClientRect();
	const left = Math.max(0, r.left - 8), top = Math.max(0, r.top - 8);
	const high = Math.min(innerHeight, r.bottom + 8) - top;
	return {Sort: sort(e), Name: ` + describe + `(e), Clip: [left + scrollX, top + scrollY, Math.min(innerWidth, r.right + 8) - left, high],
		Edge: r.height > innerHeight ? 2 * high : 2 * (r.width + r.height)}; // of what is higher than the window, its sides
})`

// focusKnown are the sorts of stops that were looked at, by medium. Tabs share it.
type focusKnown struct {
	mu    sync.Mutex
	sorts map[string][]string
}

func (k *focusKnown) of(m medium) []string {
	k.mu.Lock()
	defer k.mu.Unlock()
	return slices.Clone(k.sorts[m.name])
}

func (k *focusKnown) add(m medium, sort string) {
	k.mu.Lock()
	defer k.mu.Unlock()
	k.sorts[m.name] = append(k.sorts[m.name], sort)
}

// focusStop is a stop with the keyboard on it.
type focusStop struct {
	Sort, Name string
	Clip       [4]float64 // x, y, width, height
	Edge       float64    // its circumference
}

// focusShows looks whether what has the keyboard looks different, by as much as WCAG 2.4.13 asks (its level AAA,
// the one that says how much): as many pixels as a line of two around it, each with a
// contrast of 3 between having it and not. One stop of each sort there is; in other
// colours, where only the colours can fail, one of each element.
func (b *tab) focusShows(known *focusKnown) {
	b.t.Helper()
	b.do("a high window", chromedp.EmulateViewport(1000, 1600))
	for _, m := range mediums[:3] {
		b.lookThrough(m)
		for {
			stop := see[focusStop](b, nextSort+fmt.Sprintf("(%s, %t)", quoteAll(known.of(m)), m.name == "light"))
			if stop.Sort == "" {
				break
			}
			known.add(m, stop.Sort)
			with := b.picture(stop.Clip)
			b.do("take it away", chromedp.Evaluate[chromedp.Void](`document.activeElement.blur()`))
			without := b.picture(stop.Clip)
			if changed := contrasting(with, without); changed < 2*stop.Edge {
				b.t.Errorf("%s: %s: %.0f pixels show that it has the keyboard, want %.0f", m.name, stop.Name, changed, 2*stop.Edge)
			}
		}
	}
	b.lookThrough(medium{})
}

// picture is a part of the page as it is shown.
func (b *tab) picture(clip [4]float64) image.Image {
	b.t.Helper()
	shot, err := chromedp.Call(b.ctx, page.CaptureScreenshot, page.CaptureScreenshotParams{
		Clip: &page.Viewport{X: clip[0], Y: clip[1], Width: clip[2], Height: clip[3], Scale: 1}})
	if err != nil {
		b.t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(shot.Data))
	if err != nil {
		b.t.Fatal(err)
	}
	return picture
}

// contrasting counts the pixels that differ by a contrast of 3 or more.
func contrasting(a, b image.Image) float64 {
	count := 0.0
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			one, two := luminance(a.At(x, y)), luminance(b.At(x, y))
			if (max(one, two)+0.05)/(min(one, two)+0.05) >= 3 {
				count++
			}
		}
	}
	return count
}

// luminance is the relative luminance of WCAG 2.2.
func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	linear := func(v uint32) float64 {
		s := float64(v) / 0xffff
		if s <= 0.04045 {
			return s / 12.92
		}
		return math.Pow((s+0.055)/1.055, 2.4)
	}
	return 0.2126*linear(r) + 0.7152*linear(g) + 0.0722*linear(b)
}

// Black on white has the contrast WCAG gives it, 21, and grey #767676 on white 4.54.
func TestLuminance(t *testing.T) {
	white := luminance(color.White)
	for _, c := range []struct {
		colour color.Color
		want   float64
	}{{color.Black, 21}, {color.Gray{Y: 0x76}, 4.54}} {
		if got := (white + 0.05) / (luminance(c.colour) + 0.05); math.Abs(got-c.want) > 0.005 {
			t.Errorf("contrast of %v on white is %.3f, want %v", c.colour, got, c.want)
		}
	}
}

// quoteAll writes texts as JavaScript reads a list of them.
func quoteAll(texts []string) string {
	quoted := make([]string, len(texts))
	for n, text := range texts {
		quoted[n] = quote(text)
	}
	return "[" + strings.Join(quoted, ", ") + "]"
}
