package catalogue

import (
	"math"
	"strconv"
	"strings"

	"capspan/tables"
)

// printing is how a length is written: decimals of a unit, or parts of an inch.
type printing struct {
	unit     tables.Unit
	decimals int
	parts    int // 8, 64: fractions of an inch; 0 for decimals
}

const mmPerInch = 25.4 // exactly, since 1959

func figureOf(q tables.Quantity) figure {
	p := printing{unit: q.Unit}
	if _, bottom, fraction := strings.Cut(q.Text, "/"); fraction {
		p.parts, _ = strconv.Atoi(bottom) // the tables let no other through
	} else if _, part, pointed := strings.Cut(q.Text, "."); pointed {
		p.decimals = len(part)
	}
	return figure{p, q.Float()}
}

// step is what the last written digit counts, in mm.
func (p printing) step() float64 {
	if p.parts > 0 {
		return mmPerInch / float64(p.parts)
	}
	return p.scale() * math.Pow10(-p.decimals)
}

func (p printing) scale() float64 {
	if p.unit == tables.Inch {
		return mmPerInch
	}
	return 1
}

// write prints a length and says how long, in mm, what is printed is.
func (p printing) write(mm float64) (text string, shown float64) {
	if p.parts > 0 {
		return p.fraction(mm)
	}
	text = strconv.FormatFloat(max(mm/p.scale(), math.Pow10(-p.decimals)), 'f', p.decimals, 64)
	value, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic("internal error: " + err.Error()) // FormatFloat wrote it
	}
	return text, value * p.scale()
}

// fraction writes 55/64 and 1 3/16, in lowest terms. A whole inch would be no fraction, so
// one part more is written.
func (p printing) fraction(mm float64) (text string, shown float64) {
	n := max(1, int(math.Round(mm/p.step())))
	if n%p.parts == 0 {
		n++
	}
	whole, top, bottom := n/p.parts, n%p.parts, p.parts
	for top%2 == 0 {
		top, bottom = top/2, bottom/2
	}
	text = strconv.Itoa(top) + "/" + strconv.Itoa(bottom)
	if whole > 0 {
		text = strconv.Itoa(whole) + " " + text
	}
	return text, float64(n) * p.step()
}
