package tables

import (
	"math/big"
	"strings"
	"testing"
)

func mustQuantity(t testing.TB, text string, unit Unit) Quantity {
	t.Helper()
	q, err := ParseQuantity(text, unit)
	if err != nil {
		t.Fatal(err)
	}
	return q
}

// The inch is exactly 25.4 mm (international yard and pound agreement, 1959), so every
// value in the mm column is exact arithmetic.
func TestQuantity(t *testing.T) {
	tests := []struct {
		text, mm, half, decimal, converted string
		unit                               Unit
	}{
		{"1", "25.4", "12.7", "1", "25.4 mm", Inch},
		{"0.938", "23.8252", "0.0127", "0.938", "23.83 mm", Inch},
		{"1.188", "30.1752", "0.0127", "1.188", "30.18 mm", Inch},
		{"1.1875", "30.1625", "0.00127", "1.1875", "30.163 mm", Inch},
		{"1 3/16", "30.1625", "0.79375", "1.1875", "30.16 mm", Inch},
		{"55/64", "21.828125", "0.1984375", "0.859375", "21.83 mm", Inch},
		{"1/128", "0.1984375", "0.09921875", "0.0078125", "0.20 mm", Inch},
		{"7.000", "177.8", "0.0127", "7.000", "177.80 mm", Inch},
		{"28", "28", "0.5", "28", "1.102 in", Millimetre},
		{"28.5", "28.5", "0.05", "28.5", "1.122 in", Millimetre},
		{"28.50", "28.5", "0.005", "28.50", "1.1220 in", Millimetre},
		{"37.617", "37.617", "0.0005", "37.617", "1.4810 in", Millimetre},
		{"25.4", "25.4", "0.05", "25.4", "1.000 in", Millimetre},
		{"0.127", "0.127", "0.0005", "0.127", "0.0050 in", Millimetre},
		{"8", "8", "0.5", "8", "", NoUnit},
	}
	for _, tt := range tests {
		t.Run(tt.text+string(tt.unit), func(t *testing.T) {
			q := mustQuantity(t, tt.text, tt.unit)
			for _, c := range []struct{ what, got, want string }{
				{"Text", q.Text, tt.text}, {"MM", q.MM(), tt.mm}, {"HalfStepMM", q.HalfStepMM(), tt.half},
				{"Decimal", q.Decimal(), tt.decimal}, {"Converted", q.Converted(), tt.converted},
				{"In its own unit", q.In(tt.unit), tt.text},
				{"String", q.String(), strings.TrimSpace(tt.text + " " + string(tt.unit))},
			} {
				if c.got != c.want {
					t.Errorf("%s = %q, want %q", c.what, c.got, c.want)
				}
			}
		})
	}
}

func TestQuantityRefuses(t *testing.T) {
	for _, text := range []string{"", " ", "1 ", "01", "1.", ".5", "-1", "+1", "1e3", "1_0", "0x1", "1,5", "1/0", "0/4", "4/4", "5/4",
		"1/3", "1/256", "0 1/2", "1  1/2", "1-1/2", "01/2", "1 1/2 ", "inf", "NaN", "１", "1234567890123", "1/02"} {
		if q, err := ParseQuantity(text, Inch); err == nil {
			t.Errorf("ParseQuantity(%q) = %v, want an error", text, q)
		}
	}
	if _, err := ParseQuantity("1 3/16", Millimetre); err == nil {
		t.Error("a fraction of a millimetre is accepted")
	}
	if _, err := ParseQuantity("1", "cm"); err == nil {
		t.Error("centimetres are accepted")
	}
}

// ISO 286 has a step "over 18 up to 30 mm" and one "over 30 up to 50": a 30.0 mm and a
// 30.2 mm cap differ in tolerance, and 1 3/16 in belongs to the larger.
func TestQuantityCmpAtAnISO286Step(t *testing.T) {
	step := mustQuantity(t, "30", Millimetre)
	tests := []struct {
		text string
		unit Unit
		want int
	}{
		{"30.0", Millimetre, 0}, {"30.2", Millimetre, 1}, {"1.188", Inch, 1}, {"1 3/16", Inch, 1}, {"29.999", Millimetre, -1}, {"1 1/8", Inch, -1},
	}
	for _, tt := range tests {
		if got := mustQuantity(t, tt.text, tt.unit).Cmp(step); got != tt.want {
			t.Errorf("%s %s against 30 mm = %d, want %d", tt.text, tt.unit, got, tt.want)
		}
	}
	if got := mustQuantity(t, "1.1875", Inch).Cmp(mustQuantity(t, "1 3/16", Inch)); got != 0 {
		t.Errorf("1.1875 against 1 3/16 = %d, want 0", got)
	}
}

// Text to value to the same text, and the exact millimetres are those of arithmetic
// done here from the text alone.
func FuzzQuantity(f *testing.F) {
	for _, text := range []string{"1.062", "28.50", "1 3/16", "55/64", "0", "012", "1e3", "2 13/32"} {
		f.Add(text, true)
		f.Add(text, false)
	}
	f.Fuzz(func(t *testing.T, text string, inch bool) {
		unit := Millimetre
		if inch {
			unit = Inch
		}
		q, err := ParseQuantity(text, unit)
		if err != nil {
			return
		}
		if q.Text != text {
			t.Fatalf("%q became %q", text, q.Text)
		}
		again, err := ParseQuantity(q.Text, unit)
		if err != nil || !again.Equal(q) || again.Cmp(q) != 0 {
			t.Fatalf("%q read twice: %v %v", text, again, err)
		}
		want := new(big.Rat)
		for _, part := range strings.Fields(text) {
			r, ok := new(big.Rat).SetString(part)
			if !ok {
				t.Fatalf("%q is accepted", text)
			}
			want.Add(want, r)
		}
		if inch {
			want.Mul(want, big.NewRat(127, 5))
		}
		if got, _ := new(big.Rat).SetString(q.MM()); got.Cmp(want) != 0 {
			t.Errorf("%q %s = %s mm, want %s", text, unit, q.MM(), want)
		}
		// What is shown converted differs from the exact value by half of its last digit at most.
		shown, _ := new(big.Rat).SetString(strings.Fields(q.Converted())[0])
		limit := big.NewRat(5, 100) // of a millimetre; inches are shown to a thousandth at least
		exact := want
		if !inch {
			exact, limit = new(big.Rat).Quo(want, big.NewRat(127, 5)), big.NewRat(5, 10000)
		}
		if d := new(big.Rat).Sub(shown, exact); d.Abs(d).Cmp(limit) > 0 {
			t.Errorf("%s is shown as %s", q, q.Converted())
		}
	})
}
