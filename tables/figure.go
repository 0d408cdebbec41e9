package tables

import (
	"regexp"
	"slices"
	"strings"
)

// A figure is what a cell of a measured column says: one number, or, where the column's
// declaration has range: true, two that somebody printed with a hyphen between them
// (26-35). A range is one value: it was printed as one and is believed for one reason.

// unitsOf are the units a kind of column may be written in; none for counts and words.
func unitsOf(k Kind) []Unit {
	switch k {
	case Length:
		return []Unit{Inch, Millimetre}
	case Torque:
		return []Unit{PoundFoot, NewtonMetre}
	}
	return nil
}

// UnitsOf lists the units a kind of column may be written in; none for counts and words.
func UnitsOf(k Kind) []Unit { return slices.Clone(unitsOf(k)) }

// numeric kinds have a least and a greatest plausible value.
func (k Kind) numeric() bool { return k == Length || k == Torque || k == Count || k == Number }

// rangeShape is two decimals; fractions have a slash and dates two hyphens.
var rangeShape = regexp.MustCompile(`^[0-9.]+-[0-9.]+$`)

// figure reads a number, or a range where the column allows one.
func (r *reader) figure(n *node, text, path string, c Column, unit Unit) (from, to Quantity, ok bool) {
	least, greatest, _ := strings.Cut(text, "-")
	if !rangeShape.MatchString(text) {
		from, ok = r.number(n, text, path, c.Kind, unit)
		return from, Quantity{}, ok
	}
	if !c.Range {
		r.fail(n, path, "bad-number", numbered("%q is a range, and this column holds single numbers", text), "write range: true in the column's declaration if its sources print ranges")
		return Quantity{}, Quantity{}, false
	}
	if from, ok = r.number(n, least, path, c.Kind, unit); !ok {
		return from, to, false
	}
	if to, ok = r.number(n, greatest, path, c.Kind, unit); !ok {
		return from, to, false
	}
	if from.Cmp(to) >= 0 {
		r.fail(n, path, "bad-number", numbered("the range %q does not rise", text), "write the smaller number first, or one number alone")
		return from, to, false
	}
	return from, to, true
}

// IsRange reports whether the value is a range: from Quantity to To.
func (v Value) IsRange() bool { return !v.To.IsZero() }

// Word is what the cell says, without unit: the digits as written, the text, or one
// of the words unknown and none.
func (v Value) Word() string {
	switch {
	case v.IsRange():
		return v.Quantity.Text + "-" + v.To.Text
	case !v.Quantity.IsZero():
		return v.Quantity.Text
	case v.State == Unknown:
		return "unknown"
	case v.State == None:
		return "none"
	}
	return v.Text
}

// Figure is the value as written, with its unit: "26-35 lbf.ft", "1 3/16 in"; empty when
// it is no number.
func (v Value) Figure() string {
	if !v.IsRange() {
		return v.Quantity.String()
	}
	from := v.Quantity
	from.Text = v.Word()
	return from.String()
}

// Converted is the value in the other unit, rounded as [Quantity.Converted] does; empty
// for what has no unit.
func (v Value) Converted() string {
	other := otherUnit[v.Quantity.Unit]
	if !v.IsRange() || other == NoUnit {
		return v.Quantity.Converted()
	}
	return v.Quantity.In(other) + "-" + v.To.Converted()
}
