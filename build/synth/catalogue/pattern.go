package catalogue

import (
	"errors"
	"math"
	"slices"

	"capspan/tables"
)

// patterns are what the chart is taken apart into.
type patterns struct {
	sizes       []pattern // one for each row of a plain joint: a size of two rows stands twice
	conversions []conversion
	stock       map[printing][]float64 // caps in mm that the chart has in that printing, rising
	wideCap     float64                // how far the logarithms of caps are moved
	wideRatio   float64                // and those of across over cap
}

// pattern is a size of the chart: rows that a caliper cannot tell apart.
type pattern struct {
	rows []rowPattern
	lead int // the row printed most finely, whose figures the size has
}

// rowPattern is how a row says what it says.
type rowPattern struct {
	table string
	cells []cell
	also  int  // other names
	note  bool // it has one
}

// cell is a value but for its digits and its sources.
type cell struct {
	column     string
	unit       tables.Unit // of the column
	word       string      // what is no figure: a hold, a text, unknown, none
	shown      figure
	faces      tables.Faces
	facesBasis tables.Basis
	believed
	others []other
}

// other is a figure that disagrees with the leading one, by so many mm.
type other struct {
	by    float64
	print printing
	faces tables.Faces
	believed
}

// believed is why, but for which source.
type believed struct {
	basis  tables.Basis
	source bool
	at     bool
}

// figure is a length as it is printed.
type figure struct {
	print printing
	mm    float64
}

func (c *cell) given() bool { return c.shown.mm > 0 }

// learn takes the chart apart.
func learn(set *tables.Set) (patterns, error) {
	p := patterns{stock: map[printing][]float64{}}
	var caps, ratios []float64
	for _, size := range set.Sizes() {
		if len(size[0].Ends) == 2 {
			for _, row := range size {
				p.conversions = append(p.conversions, conversionOf(row))
			}
			continue
		}
		made := pattern{}
		for n, row := range size {
			made.rows = append(made.rows, rowPatternOf(row))
			if made.rows[n].finer(made.rows[made.lead]) {
				made.lead = n
			}
		}
		for _, row := range made.rows {
			p.sizes = append(p.sizes, made)
			cap, across := row.cell(capColumn), row.cell(acrossColumn)
			if cap.given() {
				p.stock[cap.shown.print] = append(p.stock[cap.shown.print], cap.shown.mm)
				caps = append(caps, math.Log(cap.shown.mm))
				if across.given() {
					ratios = append(ratios, math.Log(across.shown.mm/cap.shown.mm))
				}
			}
		}
	}
	if len(caps) < 2 || len(ratios) < 2 {
		return p, errors.New("the chart to follow has no joints whose cap and across are known")
	}
	for _, list := range p.stock {
		slices.Sort(list)
	}
	p.wideCap, p.wideRatio = bandwidth(caps), bandwidth(ratios)
	return p, nil
}

// bandwidth is Silverman's rule (1986, 3.4.2): 1.06 times the standard deviation, over
// the fifth root of how many there are.
func bandwidth(list []float64) float64 {
	sum, squares, n := 0.0, 0.0, float64(len(list))
	for _, x := range list {
		sum += x
	}
	for _, x := range list {
		squares += (x - sum/n) * (x - sum/n)
	}
	return 1.06 * math.Sqrt(squares/(n-1)) * math.Pow(n, -0.2)
}

// conversionShare is how much of the chart's joints are conversion joints.
func (p patterns) conversionShare() float64 {
	return float64(len(p.conversions)) / float64(len(p.conversions)+len(p.sizes))
}

// The columns of every table of joints.
const (
	holdColumn   = "hold"
	capColumn    = "cap"
	acrossColumn = "across"
)

func rowPatternOf(row *tables.Row) rowPattern {
	out := rowPattern{table: row.Table.ID, also: len(row.Also), note: row.Note != ""}
	for _, column := range row.Table.Columns {
		v, there := row.Values[column.ID]
		if !there {
			continue
		}
		c := cell{column: column.ID, unit: column.Unit, word: v.Word(), faces: v.Faces, facesBasis: v.FacesBasis, believed: believedOf(v)}
		if !v.Quantity.IsZero() {
			c.shown = figureOf(v.Quantity)
			for _, o := range v.Others {
				f := figureOf(o.Quantity)
				c.others = append(c.others, other{f.mm - c.shown.mm, f.print, o.Faces, believedOf(o)})
			}
		}
		out.cells = append(out.cells, c)
	}
	return out
}

func believedOf(v tables.Value) believed {
	return believed{basis: v.Basis, source: len(v.Sources) > 0, at: v.At != ""}
}

func (r *rowPattern) cell(column string) *cell {
	for n := range r.cells {
		if r.cells[n].column == column {
			return &r.cells[n]
		}
	}
	return &cell{}
}

// finer reports that a row's figures are printed in smaller steps.
func (r *rowPattern) finer(than rowPattern) bool {
	step := func(r *rowPattern) float64 {
		sum := 0.0
		for _, c := range r.cells {
			if c.given() {
				sum += c.shown.print.step()
			}
		}
		return sum
	}
	return step(r) < step(&than)
}
