package main

import (
	"errors"
	"fmt"
	"math"
	"strings"
)

// picture is where the drawing stands.
const picture = "build/growth/growth.svg"

// The drawing: rows along the bottom, both axes by powers of ten, every curve as a multiple of
// its first figure, and the line of a cost that grows as the rows do.
const (
	wide, high       = 660, 400
	left, right      = 60, 620
	top, bottom      = 24, 340
	mostTimes        = 100.0
	curveTime        = "its time in V8"
	curveBytes       = "bytes of an identification"
	strokeTime       = `stroke="#0b5fa5"`
	strokeBytes      = `stroke="#a5480b" stroke-dasharray="7 4"`
	strokeProportion = `stroke="#777" stroke-dasharray="2 4"`
)

// plot draws how time and bytes of one identification grow with the chart.
func plot(all []column) (string, error) {
	if len(all) < 2 {
		return "", errors.New("the picture wants two charts or more")
	}
	least, most := float64(all[0].rows), float64(all[len(all)-1].rows)
	x := func(rows float64) float64 {
		return left + (right-left)*(math.Log10(rows)-math.Log10(least))/(math.Log10(most)-math.Log10(least))
	}
	y := func(times float64) float64 {
		return bottom - (bottom-top)*math.Log10(math.Min(math.Max(times, 1/1.5), mostTimes))/math.Log10(mostTimes)
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 %d %d" width="%d" height="%d" font-family="sans-serif" font-size="13">`+"\n", wide, high, wide, high)
	b.WriteString("<title>Growth of one identification with the rows of the chart</title>\n")
	fmt.Fprintf(&b, `<rect width="%d" height="%d" fill="#fff"/>`+"\n", wide, high)
	for _, times := range []float64{1, 3, 10, 30, 100} {
		fmt.Fprintf(&b, `<path d="M%d %.1fH%d" stroke="#ddd"/><text x="%d" y="%.1f" text-anchor="end">%g ×</text>`+"\n", left, y(times), right, left-8, y(times)+4, times)
	}
	for _, c := range all {
		at := x(float64(c.rows))
		fmt.Fprintf(&b, `<path d="M%.1f %dV%d" stroke="#ddd"/><text x="%.1f" y="%d" text-anchor="middle">%s</text>`+"\n", at, top, bottom, at, bottom+20, grouped(c.rows))
	}
	fmt.Fprintf(&b, `<text x="%d" y="%d" text-anchor="middle">rows of joints</text>`+"\n", (left+right)/2, bottom+40)
	fmt.Fprintf(&b, `<path d="M%.1f %.1fL%.1f %.1f" fill="none" %s/>`+"\n", x(least), y(1), x(least*math.Min(mostTimes, most/least)), y(math.Min(mostTimes, most/least)), strokeProportion)
	for _, curve := range []struct{ name, stroke string }{{curveTime, strokeTime}, {curveBytes, strokeBytes}} {
		var path strings.Builder
		for n, c := range all {
			f, there := c.figures[curve.name]
			first := all[0].figures[curve.name].value
			if !there || first == 0 {
				return "", fmt.Errorf("%q was not measured at %d rows", curve.name, c.rows)
			}
			fmt.Fprintf(&path, "%s%.1f %.1f", map[bool]string{true: "M", false: "L"}[n == 0], x(float64(c.rows)), y(f.value/first))
			fmt.Fprintf(&b, `<circle cx="%.1f" cy="%.1f" r="3.5" fill="#fff" %s stroke-width="1.5"/>`+"\n", x(float64(c.rows)), y(f.value/first), strings.Fields(curve.stroke)[0])
		}
		fmt.Fprintf(&b, `<path d="%s" fill="none" %s stroke-width="2"/>`+"\n", path.String(), curve.stroke)
	}
	for n, key := range []struct{ stroke, says string }{{strokeTime, "time in V8, once the pieces are there"}, {strokeBytes, "bytes fetched, packed by brotli"}, {strokeProportion, "as the rows"}} {
		at := top + 14 + n*20
		fmt.Fprintf(&b, `<path d="M%d %dh34" fill="none" %s stroke-width="2"/><text x="%d" y="%d">%s</text>`+"\n", left+14, at, key.stroke, left+56, at+4, key.says)
	}
	b.WriteString("</svg>\n")
	return b.String(), nil
}
