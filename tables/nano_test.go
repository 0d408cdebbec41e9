package tables

import (
	"fmt"
	"math/big"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// written draws a number as somebody may write it, of any size that is read.
func written(t *rapid.T) (string, Unit) {
	unit := rapid.SampledFrom([]Unit{Inch, Millimetre, PoundFoot, NewtonMetre, NoUnit}).Draw(t, "unit")
	if unit == Inch && rapid.Bool().Draw(t, "fraction") {
		bottom := 1 << rapid.IntRange(1, 7).Draw(t, "bottom")
		text := fmt.Sprintf("%d/%d", rapid.IntRange(1, bottom-1).Draw(t, "top"), bottom)
		if whole := rapid.IntRange(0, 999_999).Draw(t, "whole"); whole > 0 {
			text = fmt.Sprintf("%d %s", whole, text)
		}
		return text, unit
	}
	text := fmt.Sprint(rapid.Int64Range(0, 999_999_999_999).Draw(t, "digits") / pow10(rapid.IntRange(0, 11).Draw(t, "short")))
	if part := rapid.StringMatching(`|\.[0-9]{1,10}`).Draw(t, "part"); len(text)+len(part) <= mostDigits {
		text += part
	}
	return text, unit
}

func pow10(n int) int64 {
	out := int64(1)
	for range n {
		out *= 10
	}
	return out
}

// fractionOf is the number and half of its last digit, in SI, from the text alone and by
// the fractions of the standard library.
func fractionOf(text string, unit Unit) (value, half *big.Rat) {
	value, step := new(big.Rat), big.NewRat(1, 1)
	for _, part := range strings.Fields(text) {
		r, _ := new(big.Rat).SetString(part)
		value.Add(value, r)
		if _, bottom, is := strings.Cut(part, "/"); is {
			d, _ := new(big.Rat).SetString(bottom)
			step.Inv(d)
		} else if _, digits, is := strings.Cut(part, "."); is {
			step.Inv(new(big.Rat).SetInt64(pow10(len(digits))))
		}
	}
	factor := map[Unit]string{Inch: "25.4", PoundFoot: "1.3558179483314004", Millimetre: "1", NewtonMetre: "1", NoUnit: "1"}[unit]
	si, _ := new(big.Rat).SetString(factor)
	return value.Mul(value, si), step.Mul(step, si).Quo(step, big.NewRat(2, 1))
}

// What whole numbers of billionths say of a number, and of two, is what fractions say.
func TestWholeNumbersAgreeWithFractions(t *testing.T) {
	whole, fractions := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		text, unit := written(t)
		other, otherUnit := written(t)
		if rapid.Bool().Draw(t, "near") {
			other, otherUnit = text, rapid.SampledFrom([]Unit{unit, Millimetre}).Draw(t, "unit of the near one")
			if strings.Contains(text, "/") {
				otherUnit = Inch
			}
		}
		q, err := ParseQuantity(text, unit)
		r, err2 := ParseQuantity(other, otherUnit)
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		if q.nano.exact() {
			whole++
		} else {
			fractions++
		}
		value, half := fractionOf(text, unit)
		second, secondHalf := fractionOf(other, otherUnit)
		same := func(what, got string, want *big.Rat) {
			if r, ok := new(big.Rat).SetString(got); !ok || r.Cmp(want) != 0 || strings.Contains(got, ".") && strings.HasSuffix(got, "0") {
				t.Fatalf("%s %s: %s = %s, want %s", text, unit, what, got, want.FloatString(20))
			}
		}
		same("MM", q.MM(), value)
		same("HalfStepMM", q.HalfStepMM(), half)
		if nearest, _ := value.Float64(); q.Float() != nearest {
			t.Fatalf("%s %s: Float = %v, want %v", text, unit, q.Float(), nearest)
		}
		if got, want := q.Cmp(r), value.Cmp(second); got != want {
			t.Fatalf("%s %s against %s %s: %d, want %d", text, unit, other, otherUnit, got, want)
		}
		d := new(big.Rat).Sub(value, second)
		d.Abs(d)
		for _, apart := range []nano{capApart, acrossApart} {
			limit := big.NewRat(int64(apart), nanos)
			for _, printed := range []bool{false, true} {
				want := d.Cmp(limit) <= 0 || printed && d.Cmp(new(big.Rat).Add(half, secondHalf)) <= 0
				if got := figureAgrees(&Value{Quantity: q}, &Value{Quantity: r}, apart, printed); got != want {
					t.Fatalf("%s %s and %s %s agree within %d, printed %t: %t", text, unit, other, otherUnit, apart, printed, got)
				}
			}
		}
		for _, by := range []ratio{mmRatio, inchRatio} {
			for digits := range 5 {
				own := new(big.Rat).Mul(big.NewRat(q.top, q.bottom), big.NewRat(by.over, by.under))
				if got, want := q.round(by, digits), own.FloatString(digits); got != want {
					t.Fatalf("%s times %d/%d to %d digits: %s, want %s", text, by.over, by.under, digits, got, want)
				}
			}
		}
	})
	if whole == 0 || fractions == 0 {
		t.Errorf("%d numbers were whole, %d fractions: both ways are to be tried", whole, fractions)
	}
}

// Every length of the chart is a whole number, so that no comparison of its joints is slow.
func TestLengthsOfTheChartAreWhole(t *testing.T) {
	for row := range shippedSet(t).rows() {
		for id, v := range row.Values {
			q := v.Quantity
			if !q.IsZero() && q.Unit != PoundFoot && (!q.nano.exact() || !q.halfNano().exact()) {
				t.Errorf("%s.%s: %s is no whole number of billionths", row.Ref(), id, q)
			}
		}
	}
}
