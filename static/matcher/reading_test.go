package matcher

import (
	"math"
	"strings"
	"testing"
)

type parsed struct {
	OK       bool
	MM, Step float64
	Unit     string
	Text     string
	Says     string
}

func TestParseReading(t *testing.T) {
	m := mustCore(t)
	for _, c := range []struct {
		input, unit string
		mm, step    float64 // by the inch of 25.4 mm
		text        string
	}{
		{"1.187 in", "", 1.187 * 25.4, 0.0254, "1.187 in"},
		{"27,00 mm", "", 27, 0.01, "27.00 mm"},
		{"27.00", "mm", 27, 0.01, "27.00 mm"},
		{"1.062", "in", 1.062 * 25.4, 0.0254, "1.062 in"},
		{"1.062\"", "", 1.062 * 25.4, 0.0254, "1.062 in"},
		{"1.062″", "mm", 1.062 * 25.4, 0.0254, "1.062 in"},
		{"1.062”", "", 1.062 * 25.4, 0.0254, "1.062 in"},
		{"1.5 Inches", "", 38.1, 2.54, "1.5 in"},
		{"30MM", "", 30, 1, "30 mm"},
		{".938 in", "", 0.938 * 25.4, 0.0254, "0.938 in"},
		{"27. mm", "", 27, 1, "27 mm"},
		{"\u00a027.0\u202fmm ", "", 27, 0.1, "27.0 mm"},
		{"1 1/16", "mm", 1.0625 * 25.4, 25.4 / 32, "1 1/16 in"},
		{"1-1/16", "", 1.0625 * 25.4, 25.4 / 32, "1 1/16 in"},
		{"3-7/32\"", "", 3.21875 * 25.4, 25.4 / 32, "3 7/32 in"},
		{"3 – 7⁄32 in", "", 3.21875 * 25.4, 25.4 / 32, "3 7/32 in"},
		{"17/32", "", 17. / 32 * 25.4, 25.4 / 32, "17/32 in"},
		{"17/16", "", 17. / 16 * 25.4, 25.4 / 32, "17/16 in"},
		{"55/64 in", "", 55. / 64 * 25.4, 25.4 / 64, "55/64 in"},
		{"1½", "", 38.1, 25.4 / 32, "1 1/2 in"},
		{"2 ⅛ in", "", 2.125 * 25.4, 25.4 / 32, "2 1/8 in"},
	} {
		var got parsed
		m.run(t, &got, "core.parseReading(a[0], a[1] || undefined)", c.input, c.unit)
		if !got.OK || math.Abs(got.MM-c.mm) > 1e-12*c.mm || math.Abs(got.Step-c.step) > 1e-12 || got.Text != c.text {
			t.Errorf("%q with unit %q: got %+v, want %v mm in steps of %v, written %q", c.input, c.unit, got, c.mm, c.step, c.text)
		}
	}
}

// Each refusal says what is wrong in its own words.
func TestRefuseReading(t *testing.T) {
	m := mustCore(t)
	for _, c := range []struct{ input, want string }{
		{"", "nothing here"},
		{"  \u00a0", "nothing here"},
		{"abc", "no number"},
		{"mm", "no number"},
		{"1.062", "millimetres or inches"},
		{"1.06 1.07 in", "two numbers"},
		{"27 x 82 mm", "two numbers"},
		{"1.062-1.063 in", "two numbers"},
		{"-1.062 in", "sign"},
		{"+1.062 in", "sign"},
		{"0 mm", "more than zero"},
		{"0.000 in", "more than zero"},
		{"0/8", "more than zero"},
		{"1,062.5 mm", "two ways"},
		{"1.062,5 mm", "two ways"},
		{"1.062.5 mm", "two ways"},
		{"1/0 in", "0 below"},
		{"1 17/16", "less than one"},
		{"1 1/3", "not by 3"},
		{"1.5/16", "not both"},
		{"1 1/16 mm", "for inches"},
		{"2.7 cm", "1 cm is 10 mm"},
		{"0.3 ft", "1 foot is 12 in"},
		{"1062 thou", "1.062 in"},
		{"27 furlong", "“furlong”"},
		{"2.7e1 mm", "exponent"},
		{strings.Repeat("1", 25), "24 characters"},
		{"1/2/4 in", "not one number"},
	} {
		var got parsed
		m.run(t, &got, "core.parseReading(a[0])", c.input)
		if got.OK || !strings.Contains(got.Says, c.want) {
			t.Errorf("%q: got %+v, want a refusal with %q", c.input, got, c.want)
		}
	}
}

// Whatever is typed, parsing gives a positive length or a sentence, and what it
// understood reads the same when it is read again.
func FuzzParseReading(f *testing.F) {
	m := mustCore(f)
	for _, s := range []string{"1.187 in", "27,00 mm", "1 1/16", "3-7/32\"", "½", "1/0", "1e9 mm", "\xff", "𝟙 mm", "((((", "99999999999999999999999", "0x10 mm"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, input string) {
		input = strings.ToValidUTF8(input, "\ufffd") // as text reaches the core
		var got parsed
		m.run(t, &got, "core.parseReading(a[0], 'mm')", input)
		if !got.OK {
			if got.Says == "" {
				t.Errorf("%q is refused without a word", input)
			}
			return
		}
		if !(got.MM > 0) || math.IsInf(got.MM, 0) || !(got.Step > 0) {
			t.Errorf("%q: got %+v", input, got)
		}
		if len(got.Text) <= 24 {
			var again parsed
			m.run(t, &again, "core.parseReading(a[0])", got.Text)
			if again != got {
				t.Errorf("%q: got %+v, then %+v", input, got, again)
			}
		}
	})
}
