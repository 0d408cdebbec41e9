package tables

import (
	"math/big"
	"regexp"
	"strings"
)

// numberShapes are the ways a number goes wrong, and what to write instead.
var numberShapes = []struct {
	shape *regexp.Regexp
	hint  string
}{
	{regexp.MustCompile(`^[0-9]+,[0-9]+$`), "write the decimal point as a point"},
	{regexp.MustCompile(`^[0-9 ]+-[0-9]+/[0-9]+$`), "write a mixed fraction with one space: 1 3/16"},
	{regexp.MustCompile(`(?i)[0-9.] *(mm|in|inch|")$`), "write the number alone; the unit is the table's, or unit: mm beside it"},
	{regexp.MustCompile(`^0[xXoObB]`), "write it in plain decimal digits"},
	{regexp.MustCompile(`^0[0-9]`), "leave the leading zero out; to YAML it means octal"},
	{regexp.MustCompile(`^[0-9.]+[eE][+-]?[0-9]+$`), "write it without an exponent"},
	{regexp.MustCompile(`^[0-9_.]*_[0-9_.]*$`), "leave the underscores out"},
	{regexp.MustCompile(`(?i)^[+-]?\.(inf|nan)$`), "write unknown when the figure is not known"},
	{regexp.MustCompile(`^[0-9]{4}[-.][0-9]{1,2}[-.][0-9]{1,2}$`), "this reads as a date"},
	{regexp.MustCompile(`^\.[0-9]+$`), "write the zero before the point"},
	{regexp.MustCompile(`^[0-9]+\.$`), "leave the point out, or write the digits behind it"},
	{regexp.MustCompile(`^[+-]`), "write it without a sign"},
	{regexp.MustCompile(`/`), "a fraction is of an inch, proper, over 2, 4, 8, 16, 32, 64 or 128"},
}

func numberHints(text string) []string {
	for _, s := range numberShapes {
		if s.shape.MatchString(text) {
			return []string{s.hint}
		}
	}
	return nil
}

// rangeHints guesses what went wrong with a number outside its column: the point in
// the wrong place, or the other unit.
func rangeHints(q Quantity, c Column) []string {
	var hints []string
	fits := func(r *big.Rat, unit Unit) bool {
		si := toSI(r, unit)
		return si.Cmp(c.Least.si()) >= 0 && si.Cmp(c.Greatest.si()) <= 0
	}
	other := otherUnit[q.Unit]
	if c.Kind == Length && other != NoUnit && fits(q.value(), other) && writtenAs(q, other) {
		meant := newQuantity(q.Text, other, q.top, q.bottom)
		unit := []string{meant.String() + " would be " + meant.Converted() + "; was it meant in " + string(other) + "? then write unit: " + string(other) + " beside it"}
		if q.decimals() != 2 {
			return unit
		}
		hints = unit
	}
	for _, factor := range [][2]int64{{1, 10}, {10, 1}, {1, 100}, {100, 1}, {1, 1000}, {1000, 1}} {
		moved := new(big.Rat).Mul(q.value(), big.NewRat(factor[0], factor[1]))
		if !strings.Contains(q.Text, "/") && c.Kind == Length && fits(moved, q.Unit) {
			return append([]string{"the digits look shifted; " + exact(moved) + " would fit"}, hints...)
		}
	}
	return hints
}

// writtenAs reports whether the digits could be of that unit: the trade writes inches
// to a thousandth or in fractions and millimetres to a tenth; with two decimals it
// may be either.
func writtenAs(q Quantity, unit Unit) bool {
	if unit == Inch {
		return q.decimals() >= 2 || strings.Contains(q.Text, "/")
	}
	return q.decimals() <= 2 && !strings.Contains(q.Text, "/")
}
