package tables

import (
	"math/big"
	"math/bits"
	"strconv"
	"strings"
)

// A chart of a hundred thousand rows is compared, printed and named by its figures some
// million times. Nearly all of them are whole numbers of a billionth of a millimetre, and
// whole numbers are exact at a hundredth of the cost of fractions. What is no such number
// (a torque in pound-force feet, a length of kilometres) is reckoned as a fraction, and
// both ways give the same answers: nano_test.go holds them to it.

// nano is a number in billionths, exactly; negative where it is none.
type nano int64

const (
	nanos          = 1_000_000_000
	noNano    nano = -1
	manyOfAll      = 1 << 53 // a float holds whole numbers up to it
)

func (n nano) exact() bool { return n >= 0 }

// nanoOf is top over bottom of a unit, in SI.
func nanoOf(top, bottom int64, unit Unit) nano {
	switch unit {
	case Inch: // 25.4 mm are 127/5
		return divide(top, 127*nanos, 5*bottom)
	case PoundFoot:
		return noNano
	}
	return divide(top, nanos, bottom)
}

// halfNano is half of the last written digit, or of one part of the fraction.
func (q Quantity) halfNano() nano { return nanoOf(1, 2*q.bottom, q.Unit) }

// divide is a times b over c where that is a whole number, and not too great.
func divide(a, b, c int64) nano {
	hi, lo := bits.Mul64(uint64(a), uint64(b))
	if hi >= uint64(c) {
		return noNano
	}
	whole, rest := bits.Div64(hi, lo, uint64(c))
	if rest != 0 || whole >= manyOfAll {
		return noNano
	}
	return nano(whole)
}

// decimal writes the number without trailing zeros.
func (n nano) decimal() string {
	text := strconv.FormatInt(int64(n/nanos), 10)
	if rest := n % nanos; rest != 0 {
		digits := strconv.FormatInt(int64(nanos+rest), 10)[1:]
		text += "." + strings.TrimRight(digits, "0")
	}
	return text
}

// ratio is what a number is multiplied by to be in another unit.
type ratio struct{ over, under int64 }

var (
	mmRatio   = ratio{127, 5} // of inches
	inchRatio = ratio{5, 127} // of millimetres
)

// round is the number in another unit, to so many digits, half away from zero.
func (q Quantity) round(by ratio, digits int) string {
	scale := int64(1)
	for range digits {
		scale *= 10
	}
	// The rounded number is floor((2 a + b) / 2 b) of a over b.
	hi, a := bits.Mul64(uint64(q.top), uint64(2*by.over*scale))
	b := uint64(q.bottom) * uint64(by.under) // below 1e11 times 127
	a, carry := bits.Add64(a, b, 0)
	if hi+carry >= 2*b {
		return new(big.Rat).Mul(q.value(), big.NewRat(by.over, by.under)).FloatString(digits)
	}
	whole, _ := bits.Div64(hi+carry, a, 2*b)
	text := strconv.FormatUint(whole/uint64(scale), 10)
	if digits > 0 {
		text += "." + strconv.FormatUint(uint64(scale)+whole%uint64(scale), 10)[1:]
	}
	return text
}
