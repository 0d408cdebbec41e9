package figure

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// The cap of a 1310 joint, 1.062 in, on every instrument.
var readings = map[string]Reading{
	"digital-mm": {"digital", 26.97, "mm", 0}, "digital-in": {"digital", 26.97, "in", 0.001},
	"dial-mm": {"dial", 26.97, "mm", 0}, "dial-in": {"dial", 26.97, "in", 0},
	"vernier-mm": {"vernier", 26.97, "mm", 0}, "vernier-0.05": {"vernier", 26.97, "mm", 0.05}, "vernier-in": {"vernier", 26.97, "in", 0},
	"micrometer-mm": {"micrometer", 26.97, "mm", 0}, "micrometer-in": {"micrometer", 26.97, "in", 0},
	"dial-0.01": {"dial", 0.4, "mm", 0.01}, "vernier-zero": {"vernier", 0, "mm", 0}, "micrometer-full": {"micrometer", 25, "mm", 0},
	"vernier-long": {"vernier", 299.98, "mm", 0}, "digital-long": {"digital", 300, "in", 0.0005},
}

// Whatever an instrument is made to show, its lines, hand or dark bars alone give the
// value back: a reader who knows the instrument reads what was asked for, rounded to
// its step. 20 and 25 divisions, 0.5 mm and 0.025 in to a turn are those of DIN 862,
// DIN 863 and the inch instruments of the trade.
func TestInstrumentsReadBack(t *testing.T) {
	for _, g := range graduations {
		t.Run(fmt.Sprintf("%s-%v-%s", g.kind, g.step, g.unit), func(t *testing.T) {
			last := int(math.Round(g.most / g.step))
			sweep := []int{0, 1, g.lines - 1, g.lines, g.lines + 1, last / 4, last - 1, last}
			for n := 7; n < last; n += last/97 + 3 { // every remainder turns up
				sweep = append(sweep, n)
			}
			for _, n := range sweep {
				want := float64(n) * g.step
				r := Reading{g.kind, g.millimetres(want), g.unit, g.step}
				if err := r.Check(); err != nil {
					t.Fatal(err)
				}
				drawn := mustRead(t, string(english.Instrument("p", r)))
				got := readInstrument(t, g, drawn)
				if math.Abs(got-want) > g.step/100 {
					t.Errorf("asked for %s, the drawing shows %.4f", g.words(n), got)
				}
				if !drawn.says(shows(r)) || !strings.Contains(drawn.desc, shows(r)) {
					t.Errorf("neither words nor description say %s", shows(r))
				}
				keepsApart(t, g.words(n), drawn)
			}
		})
	}
}

// What cannot be shown is refused with the reason, and drawn as the nearest that can.
func TestInstrumentRefuses(t *testing.T) {
	tests := []struct {
		r           Reading
		want, shows string
	}{
		{Reading{"digital", 26.97, "mm", 0}, "", "26.97 mm"},
		{Reading{"yardstick", 26.97, "mm", 0}, `instrument "yardstick" is none of digital, dial, vernier, micrometer`, "26.97 mm"},
		{Reading{"dial", 25.4, "ft", 0}, `unit "ft" is neither mm nor in`, "25.40 mm"},
		{Reading{"vernier", 26.97, "mm", 0.03}, "no vernier is drawn with a step of 0.03 mm", "26.98 mm"},
		{Reading{"micrometer", -1, "mm", 0}, `-1 mm is outside the range of instrument "micrometer", 0 to 100 mm`, "0.00 mm"},
		{Reading{"vernier", 1000, "in", 0}, `1000 mm is outside the range of instrument "vernier", 0 to 304.8 mm`, "12.000 in"},
		{Reading{"digital", math.NaN(), "mm", 0}, `NaN mm is outside the range of instrument "digital", 0 to 300 mm`, "0.00 mm"},
		{Reading{"vernier", 26.97, "mm", 0.05}, "", "26.95 mm"},
	}
	for _, test := range tests {
		got := ""
		if err := test.r.Check(); err != nil {
			got = err.Error()
		}
		if got != test.want {
			t.Errorf("%v: got %q, want %q", test.r, got, test.want)
		}
		if got := shows(test.r); got != test.shows {
			t.Errorf("%v: shows %s, want %s", test.r, got, test.shows)
		}
		if drawn := mustRead(t, string(english.Instrument("p", test.r))); !drawn.says(test.shows) {
			t.Errorf("%v: the drawing does not say %s", test.r, test.shows)
		}
	}
}

// Any reading gives a well-formed drawing that tells its own reading.
func TestAnyReading(t *testing.T) {
	rapid.Check(t, func(r *rapid.T) {
		reading := Reading{
			Kind: rapid.SampledFrom([]string{"digital", "dial", "vernier", "micrometer", "", "rule"}).Draw(r, "kind"),
			MM:   rapid.Float64().Draw(r, "mm"),
			Unit: rapid.SampledFrom([]string{"mm", "in", ""}).Draw(r, "unit"),
			Step: rapid.SampledFrom([]float64{0, 0.0005, 0.001, 0.01, 0.02, 0.05, -1}).Draw(r, "step"),
		}
		drawn := mustRead(t, string(english.Instrument("p", reading)))
		if !drawn.says(shows(reading)) {
			r.Fatalf("%v: the drawing does not say %s", reading, shows(reading))
		}
	})
}

// shows is the figure the drawn instrument shows: the length rounded to its step.
func shows(r Reading) string {
	g := r.graduation()
	return g.words(g.steps(r.MM))
}
