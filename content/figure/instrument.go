package figure

import (
	"fmt"
	"html/template"
	"math"
	"strconv"
)

// Reading is a length as an instrument shows it.
type Reading struct {
	Kind string  // "digital", "dial" or "vernier" caliper, or "micrometer"
	MM   float64 // in millimetres, whatever the unit of the instrument
	Unit string  // "mm" or "in": what the instrument is graduated in
	Step float64 // its smallest step, in Unit; 0 takes the usual one
}

// graduation is how one kind of instrument is divided. Lengths are in its unit.
type graduation struct {
	kind, unit string
	step       float64
	decimals   int
	lines      int     // steps to a turn of the hand or thimble, or to a line of the main scale
	most       float64 // the longest reading drawn
}

// The steps are those of DIN 862 (calipers: 0.01, 0.02 and 0.05 mm), DIN 863
// (micrometers: 0.01 mm) and ASME B89.1.14 (inch calipers: 0.001 and 0.0005 in). How
// far a dial turns for one round differs by maker; the drawing says which it shows.
// The first of a kind and unit is the usual one.
var graduations = []graduation{
	{"digital", "mm", 0.01, 2, 100, 300},
	{"digital", "in", 0.0005, 4, 2000, 12},
	{"digital", "in", 0.001, 3, 1000, 12},
	{"dial", "mm", 0.02, 2, 100, 300},
	{"dial", "mm", 0.01, 2, 100, 300},
	{"dial", "in", 0.001, 3, 100, 12},
	{"vernier", "mm", 0.02, 2, 50, 300},
	{"vernier", "mm", 0.05, 2, 20, 300},
	{"vernier", "in", 0.001, 3, 25, 12},
	{"micrometer", "mm", 0.01, 2, 50, 100},
	{"micrometer", "in", 0.001, 3, 25, 4},
}

// Check says what keeps a reading from being drawn as it is: an unknown kind or unit, a
// step no such instrument has, or a length outside its range.
func (r Reading) Check() error {
	kind, unit := false, false
	var found *graduation
	for i, g := range graduations {
		kind = kind || g.kind == r.Kind
		unit = unit || g.unit == r.Unit
		if g.kind == r.Kind && g.unit == r.Unit && (r.Step == 0 || r.Step == g.step) {
			found = &graduations[i]
			break
		}
	}
	switch {
	case !kind:
		return fmt.Errorf("instrument %q is none of digital, dial, vernier, micrometer", r.Kind)
	case !unit:
		return fmt.Errorf("unit %q is neither mm nor in", r.Unit)
	case found == nil:
		return fmt.Errorf("no %s is drawn with a step of %v %s", r.Kind, r.Step, r.Unit)
	}
	if most := found.millimetres(found.most); !(r.MM >= 0 && r.MM <= most) {
		return fmt.Errorf("%v mm is outside the range of instrument %q, 0 to %v mm", r.MM, r.Kind, num(most))
	}
	return nil
}

// graduation is how the reading's instrument is divided: the nearest there is when
// Check would refuse it.
func (r Reading) graduation() graduation {
	for _, fits := range []func(graduation) bool{
		func(g graduation) bool { return g.kind == r.Kind && g.unit == r.Unit && g.step == r.Step },
		func(g graduation) bool { return g.kind == r.Kind && g.unit == r.Unit },
		func(g graduation) bool { return g.kind == r.Kind },
	} {
		for _, g := range graduations {
			if fits(g) {
				return g
			}
		}
	}
	return graduations[0]
}

func (g graduation) millimetres(length float64) float64 {
	if g.unit == "in" {
		return length * MMPerInch
	}
	return length
}

// steps counts the steps of a length in millimetres, at least none and at most all.
func (g graduation) steps(mm float64) int {
	n := math.Round(mm / g.millimetres(g.step))
	if !(n >= 0) { // also not a number
		return 0
	}
	return int(min(n, math.Round(g.most/g.step)))
}

// words writes a number of steps as a figure with its unit, and a point.
func (g graduation) words(steps int) string {
	return strconv.FormatFloat(float64(steps)*g.step, 'f', g.decimals, 64) + " " + g.unit
}

// line is the length of a turn or of a main scale's division, in steps of the unit.
func (g graduation) line() float64 { return g.step * float64(g.lines) }

// short writes a length in the unit without needless zeros.
func (g graduation) short(length float64) string {
	return strconv.FormatFloat(math.Round(length*1e4)/1e4, 'f', -1, 64) + " " + g.unit
}

// instrumentWidth is the sheet of an instrument's face.
const instrumentWidth = 340.0

// Instrument draws the face of an instrument that shows a reading, computed from the
// value, with how to read it in words. What [Reading.Check] refuses is drawn as the
// nearest reading there is: no step or an odd one takes the usual step, a length
// outside the range the end of the range, an unknown kind the digital display.
func (w Words) Instrument(prefix string, r Reading) template.HTML {
	g := r.graduation()
	n := g.steps(r.MM)
	c := &canvas{language: language(w)}
	var s sheet
	switch g.kind {
	case "dial":
		s = c.dial(g, n)
	case "vernier":
		s = c.vernier(g, n)
	case "micrometer":
		s = c.micrometer(g, n)
	default:
		s = c.digital(g, n)
	}
	s.prefix, s.class, s.width = prefix, "drawing", instrumentWidth
	return c.svg(s)
}

// box draws an upright rectangle.
func (c *canvas) box(t tag, left, top, right, bottom float64) {
	c.poly(t, true, point{left, top}, point{right, top}, point{right, bottom}, point{left, bottom})
}
