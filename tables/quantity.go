package tables

import (
	"cmp"
	"fmt"
	"math/big"
	"slices"
	"strconv"
	"strings"
)

// Unit is what a length or a torque is written in.
type Unit string

const (
	Inch        Unit = "in"
	Millimetre  Unit = "mm"
	PoundFoot   Unit = "lbf.ft"
	NewtonMetre Unit = "N.m"
	NoUnit      Unit = "" // counts and numbers
)

// Quantity is an exact number with the digits somebody wrote: a decimal (28.50), a
// fraction or a mixed fraction of an inch (1 3/16), and its unit. The zero Quantity
// is no number at all.
type Quantity struct {
	Text string // as written, without the unit
	Unit Unit
	// top over bottom is the number; one over bottom is what its last digit counts, or one
	// part of the fraction.
	top, bottom int64
	nano        nano    // in millimetres or newton metres; a count's own number
	near        float64 // the same, rounded: a chart compares every row with every other
}

// newQuantity works out what comparing and drawing ask for again and again.
func newQuantity(text string, unit Unit, top, bottom int64) Quantity {
	q := Quantity{Text: text, Unit: unit, top: top, bottom: bottom, nano: nanoOf(top, bottom, unit)}
	if q.nano.exact() {
		q.near = float64(q.nano) / nanos // both are whole and below 2^53: the quotient is the nearest float
	} else {
		q.near, _ = q.si().Float64()
	}
	return q
}

// The international inch is exactly 25.4 mm (since 1959). A pound-force is the pound,
// 0.45359237 kg, times the standard fall of 9.80665 m/s2 (NIST SP 811, appendix B.8),
// so that a pound-force foot is exactly 1.3558179483314004 N.m.
var (
	mmPerInch = big.NewRat(254, 10)
	nmPerLbft = new(big.Rat).Mul(
		new(big.Rat).Mul(big.NewRat(45359237, 1e8), big.NewRat(980665, 1e5)), big.NewRat(3048, 1e4))
)

// mostDigits keeps a number readable; no length or count of a joint needs more.
const mostDigits = 12

// finestFraction of an inch that is still written: 1/128.
const finestFraction = 128

// ParseQuantity reads a decimal without sign or exponent (0.938, 28.50), or an inch
// fraction in its one written form (1 3/16, 55/64). The digits are kept: the Text of
// the result is the text given.
func ParseQuantity(text string, unit Unit) (Quantity, error) {
	if unit != NoUnit && !slices.Contains(units, unit) {
		return Quantity{}, fmt.Errorf("%q is no unit", unit)
	}
	top, bottom, ok := parseDecimal(text)
	if !ok {
		top, bottom, ok = parseFraction(text)
		if ok && unit != Inch {
			return Quantity{}, fmt.Errorf("%q is a fraction, and only inches are written so", text)
		}
	}
	if !ok {
		return Quantity{}, fmt.Errorf("%q is not a number", text)
	}
	return newQuantity(text, unit, top, bottom), nil
}

// parseDecimal reads 0, 12, 0.50: no leading zero, no bare point.
func parseDecimal(text string) (top, bottom int64, ok bool) {
	whole, part, pointed := strings.Cut(text, ".")
	if len(text) > mostDigits || !plainWhole(whole) || (pointed && !digitsOnly(part)) {
		return 0, 0, false
	}
	bottom = 1
	for _, c := range []byte(whole) {
		top = top*10 + int64(c-'0')
	}
	for _, c := range []byte(part) {
		top, bottom = top*10+int64(c-'0'), bottom*10
	}
	return top, bottom, true
}

// parseFraction reads 55/64 and 1 3/16: proper, over a power of two up to 128, one
// space after the whole inches.
func parseFraction(text string) (top, bottom int64, ok bool) {
	whole, part, mixed := strings.Cut(text, " ")
	if !mixed {
		whole, part = "0", text
	} else if !plainWhole(whole) || whole == "0" || len(whole) > mostDigits/2 {
		return 0, 0, false
	}
	over, under, _ := strings.Cut(part, "/")
	if !plainWhole(over) || !plainWhole(under) || len(over) > 3 || len(under) > 3 {
		return 0, 0, false
	}
	w, _ := strconv.ParseInt(whole, 10, 64)
	n, _ := strconv.ParseInt(over, 10, 64)
	d, _ := strconv.ParseInt(under, 10, 64)
	if n < 1 || n >= d || d > finestFraction || d&(d-1) != 0 {
		return 0, 0, false
	}
	return w*d + n, d, true
}

func digitsOnly(s string) bool {
	for _, c := range []byte(s) {
		if c < '0' || c > '9' {
			return false
		}
	}
	return s != ""
}

// plainWhole refuses a leading zero: to YAML 012 is ten.
func plainWhole(s string) bool { return digitsOnly(s) && (len(s) == 1 || s[0] != '0') }

// IsZero reports whether q holds no number.
func (q Quantity) IsZero() bool { return q.bottom == 0 }

// String is the quantity as written, with its unit: "28.50 mm", "1 3/16 in", "6".
func (q Quantity) String() string {
	if q.Unit == NoUnit {
		return q.Text
	}
	return q.Text + " " + string(q.Unit)
}

// value is the exact number in the quantity's own unit.
func (q Quantity) value() *big.Rat { return big.NewRat(q.top, q.bottom) }

// si is the exact length in millimetres or torque in newton metres; a count is its own number.
func (q Quantity) si() *big.Rat { return toSI(q.value(), q.Unit) }

func (q Quantity) halfStep() *big.Rat {
	return toSI(new(big.Rat).Quo(big.NewRat(1, q.bottom), big.NewRat(2, 1)), q.Unit)
}

func toSI(r *big.Rat, unit Unit) *big.Rat {
	switch unit {
	case Inch:
		return new(big.Rat).Mul(r, mmPerInch)
	case PoundFoot:
		return new(big.Rat).Mul(r, nmPerLbft)
	}
	return r
}

// MM is the exact length in millimetres as a decimal: "30.1752" for 1.188 in. It
// always ends, because a fraction is over a power of two.
func (q Quantity) MM() string {
	if q.nano.exact() {
		return q.nano.decimal()
	}
	return exact(q.si())
}

// Float is the length in millimetres rounded to a float, for drawing and ranking:
// never for a page's text or a comparison. 0 for the zero Quantity.
func (q Quantity) Float() float64 { return q.near }

// HalfStepMM is half of the last written digit (of one part for a fraction) in
// millimetres, exactly: what rounding to the written digits can have hidden.
func (q Quantity) HalfStepMM() string {
	if half := q.halfNano(); half.exact() {
		return half.decimal()
	}
	return exact(q.halfStep())
}

// Decimal is the exact number in the quantity's own unit: "1.1875" for 1 3/16; a
// decimal keeps its digits.
func (q Quantity) Decimal() string {
	if strings.Contains(q.Text, "/") {
		return exact(q.value())
	}
	return q.Text
}

// exact writes a number that ends in decimal, without trailing zeros.
func exact(r *big.Rat) string {
	digits, ends := r.FloatPrec()
	if !ends {
		panic("internal error: a quantity has no finite decimal: " + r.String())
	}
	return r.FloatString(digits)
}

// In is the length in a unit for reading, without the unit: its own digits when it
// is written in that unit, else rounded to about what the written digits can bear,
// half away from zero. Inches to one decimal or none give one decimal of a
// millimetre, to two or three decimals (and fractions) two, finer ones three;
// millimetres give inches with two decimals more than were written, at least three
// and at most four. Pound-force feet keep their decimals in newton metres, newton
// metres get one more in pound-force feet.
func (q Quantity) In(unit Unit) string {
	switch {
	case q.Unit == unit || q.Unit == NoUnit:
		return q.Text
	case unit == Millimetre:
		digits := min(max(q.decimals()-1, 1), 3)
		if strings.Contains(q.Text, "/") || q.decimals() == 2 {
			digits = 2
		}
		return q.round(mmRatio, digits)
	case unit == NewtonMetre:
		return q.si().FloatString(q.decimals())
	case unit == PoundFoot:
		return new(big.Rat).Quo(q.value(), nmPerLbft).FloatString(q.decimals() + 1)
	}
	return q.round(inchRatio, min(max(q.decimals()+2, 3), 4))
}

func (q Quantity) decimals() int {
	_, part, _ := strings.Cut(q.Text, ".")
	return len(part)
}

// Converted is the length in the other unit, rounded as by [Quantity.In], with that
// unit: "30.18 mm"; empty for a count.
func (q Quantity) Converted() string {
	if other := otherUnit[q.Unit]; other != NoUnit {
		return q.In(other) + " " + string(other)
	}
	return ""
}

// otherUnit is what a reader of the other system wants.
var otherUnit = map[Unit]Unit{Inch: Millimetre, Millimetre: Inch, PoundFoot: NewtonMetre, NewtonMetre: PoundFoot}

// Cmp compares exact sizes across units: -1, 0 or 1.
func (q Quantity) Cmp(r Quantity) int {
	if q.nano.exact() && r.nano.exact() {
		return cmp.Compare(q.nano, r.nano)
	}
	return q.si().Cmp(r.si())
}

// Equal reports whether both are written alike; 28.50 and 28.5 are not.
func (q Quantity) Equal(r Quantity) bool { return q.Text == r.Text && q.Unit == r.Unit }
