package figure

import (
	"math"
	"sort"
	"strconv"
	"strings"
	"testing"
)

// readInstrument reads an instrument as its owner would, from the drawn lines alone.
func readInstrument(t *testing.T, g graduation, d drawing) float64 {
	switch g.kind {
	case "digital":
		return readDigital(t, d)
	case "dial":
		return readDial(t, g, d)
	case "vernier":
		return readVernier(t, g, d)
	}
	return readMicrometer(t, g, d)
}

// readDigital sorts the dark bars into digits by their place and each digit by which of
// its seven bars are dark.
func readDigital(t *testing.T, d drawing) float64 {
	// A bar's place in its digit: column left, middle, right and row from the top.
	names := map[[2]int]string{{1, 0}: "top", {2, 1}: "upper right", {2, 3}: "lower right", {1, 4}: "bottom", {0, 3}: "lower left", {0, 1}: "upper left", {1, 2}: "middle"}
	digits := map[string]string{
		"bottom, lower left, lower right, top, upper left, upper right":         "0",
		"lower right, upper right":                                              "1",
		"bottom, lower left, middle, top, upper right":                          "2",
		"bottom, lower right, middle, top, upper right":                         "3",
		"lower right, middle, upper left, upper right":                          "4",
		"bottom, lower right, middle, top, upper left":                          "5",
		"bottom, lower left, lower right, middle, top, upper left":              "6",
		"lower right, top, upper right":                                         "7",
		"bottom, lower left, lower right, middle, top, upper left, upper right": "8",
		"bottom, lower right, middle, top, upper left, upper right":             "9",
	}
	cells := map[int][]string{}
	rightmost := 274.0
	for _, e := range d.named("segment") {
		b := e.box()
		at := b.centre()
		cell := int(math.Floor((rightmost - at.x) / digitPitch))
		left := rightmost - float64(cell)*digitPitch - digitWide
		column := int(math.Round((at.x - left) / digitWide * 2))
		row := int(math.Round((at.y - 31) / digitHigh * 4))
		if (b.width() > b.height()) != (column == 1) {
			t.Fatalf("a bar at %v lies the wrong way", at)
		}
		cells[cell] = append(cells[cell], names[[2]int{column, row}])
	}
	point := d.named("point")[0].box().centre()
	figure := ""
	for cell := len(cells) - 1; cell >= 0; cell-- {
		bars := cells[cell]
		sort.Strings(bars)
		digit, ok := digits[strings.Join(bars, ", ")]
		if !ok {
			t.Fatalf("no digit has the bars %v", bars)
		}
		if figure != "" && !strings.Contains(figure, ".") && point.x < rightmost-float64(cell)*digitPitch-digitWide {
			figure += "."
		}
		figure += digit
	}
	value, err := strconv.ParseFloat(figure, 64)
	if err != nil {
		t.Fatal(err)
	}
	return value
}

// readDial takes the fine part from the angle of the hand, and the turns from where the
// slider's edge stands past the last line of the bar and how that line is numbered.
func readDial(t *testing.T, g graduation, d drawing) float64 {
	pivot := d.named("pivot")[0]
	px, py := number(t, pivot.attr["cx"]), number(t, pivot.attr["cy"])
	tip := d.named("hand")[0].strokes()[0][0]
	turn := math.Atan2(tip.x-px, py-tip.y) / (2 * math.Pi)
	steps := math.Mod(math.Round(turn*float64(g.lines))+float64(g.lines), float64(g.lines))
	lines := marksOf(d, "bar")
	edge := d.named("slider")[0].box().left
	if past := (edge - lines[len(lines)-1]); len(lines) > 1 {
		// the edge's own place agrees with the hand
		pitch := lines[1] - lines[0]
		if math.Abs(past/pitch-steps/float64(g.lines)) > 0.01 {
			t.Errorf("the slider's edge is %.3f of a line past the last, the hand says %.3f", past/pitch, steps/float64(g.lines))
		}
	}
	return scaleAt(t, g, d, lines, lines[len(lines)-1], barLine-24) + steps*g.step
}

// readVernier finds the sliding line nearest to a main line, and the main line the
// sliding zero has passed.
func readVernier(t *testing.T, g graduation, d drawing) float64 {
	main, sliding := marksOf(d, "main"), marksOf(d, "sliding")
	if len(sliding) != g.lines+1 {
		t.Fatalf("%d lines on the sliding scale, want %d", len(sliding), g.lines+1)
	}
	off := func(x float64) float64 {
		nearest := math.Inf(1)
		for _, m := range main {
			nearest = min(nearest, math.Abs(m-x))
		}
		return nearest
	}
	best := 0
	for k, x := range sliding {
		if off(x) < off(sliding[best])-0.02 { // the last line agrees whenever the zero does
			best = k
		}
	}
	if got := d.named("meets")[0].box().left; math.Abs(got-sliding[best]) > 0.011 {
		t.Errorf("the red line is at %v, line %d at %v", got, best, sliding[best])
	}
	passed := main[0]
	for _, m := range main {
		if m <= sliding[0]+0.02 {
			passed = m
		}
	}
	// The detail agrees: its red line has its number below.
	centre := d.named("detail-meets")[0].box().left
	if !d.labelled(centre, detailLine+39, strconv.Itoa(best)) {
		t.Errorf("the enlarged line at %v is not numbered %d", centre, best)
	}
	return scaleAt(t, g, d, main, passed, vernierLine-30) + float64(best)*g.step
}

// readMicrometer takes the fine part from the thimble's line on the long line, found
// from a numbered line, and the rest from the sleeve.
func readMicrometer(t *testing.T, g graduation, d drawing) float64 {
	edge := d.named("thimble")[0].box().left
	var onLine float64 // number of the line on the long line
	found := false
	for _, l := range d.texts {
		n, err := strconv.Atoi(l.words)
		if err != nil || l.left < edge {
			continue
		}
		turn := math.Asin((sleeveLine-(l.bottom-0.22*textSize-4.5))/(sleeveHalf+6)) / (2 * math.Pi)
		from := math.Mod(float64(n)-turn*float64(g.lines)+float64(2*g.lines), float64(g.lines))
		from = math.Mod(math.Round(from), float64(g.lines))
		if found && from != onLine {
			t.Errorf("the thimble's numbers disagree: %v and %v", onLine, from)
		}
		onLine, found = from, true
	}
	meets := false
	for _, e := range d.named("thimble-line") {
		for _, l := range e.strokes() {
			meets = meets || l[0].y == sleeveLine && l[0].x == edge
		}
	}
	if !found || !meets {
		t.Fatalf("no line of the thimble meets the long line (%v) or none is numbered (%v)", meets, found)
	}
	lines := marksOf(d, "sleeve")
	base := 0.0 // the range is written under the drawing
	for _, l := range d.texts {
		if after, ok := strings.CutPrefix(l.words, "micrometer for "); ok {
			base = number(t, strings.Fields(after)[0])
		}
	}
	return base + float64(len(lines)-1)*g.line() + onLine*g.step
}

// marksOf are the places of the lines of a scale, from left to right.
func marksOf(d drawing, part string) []float64 {
	var at []float64
	for _, e := range d.named(part) {
		for _, l := range e.strokes() {
			at = append(at, l[0].x)
		}
	}
	sort.Float64s(at)
	return at
}

// scaleAt is the value of a line on a main scale: the numbered lines on the sheet are
// found by their labels, and the lines between counted. The sheet may show no whole
// inch; then the words under the drawing tell which one it is, as a reader would look
// along the bar.
func scaleAt(t *testing.T, g graduation, d drawing, lines []float64, at, foot float64) float64 {
	t.Helper()
	index := func(x float64) int {
		nearest := 0
		for i := range lines {
			if math.Abs(lines[i]-x) < math.Abs(lines[nearest]-x) {
				nearest = i
			}
		}
		return nearest
	}
	var values []float64
	for _, l := range d.texts {
		if math.Abs(l.bottom-0.22*textSize-foot) > 0.01 {
			continue
		}
		x := l.centre().x
		away := float64(index(at)-index(x)) * g.line()
		switch n, err := strconv.Atoi(strings.TrimSuffix(l.words, inchSign)); {
		case err != nil:
			continue
		case g.unit == "mm" || strings.HasSuffix(l.words, inchSign):
			values = append(values, float64(n)+away)
		default: // tenths: the whole inches are not on the label
			values = append(values, math.NaN(), float64(n)/10+away)
		}
	}
	said := d.whole(t)
	for i := 0; i < len(values); i++ {
		v, tenths := values[i], false
		if math.IsNaN(v) {
			i++
			v, tenths = values[i], true
		}
		off := math.Abs(said - v)
		if tenths {
			off = math.Abs(math.Remainder(said-v, 1))
		}
		if off > 1e-6 {
			t.Errorf("the scale's labels say %v, the words %v", v, said)
		}
	}
	return said
}

// whole is what the words call the last line passed on the main scale.
func (d drawing) whole(t *testing.T) float64 {
	t.Helper()
	for _, l := range d.texts {
		for _, lead := range []string{"zero line: past ", "zero line: at ", "bar: last line passed "} {
			if after, ok := strings.CutPrefix(l.words, lead); ok {
				return number(t, strings.Fields(after)[0])
			}
		}
	}
	t.Fatal("no words say which line was passed")
	return 0
}

// labelled reports whether words stand centred at a place.
func (d drawing) labelled(x, foot float64, words string) bool {
	for _, l := range d.texts {
		if l.words == words && math.Abs(l.centre().x-x) < 0.02 && math.Abs(l.bottom-0.22*textSize-foot) < 0.01 {
			return true
		}
	}
	return false
}
