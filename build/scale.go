package build

import (
	"math"
	"strconv"

	"capspan/tables"
	"capspan/templates"
)

// A chart of more than largeRows rows of joints is a large one. It is cut into pieces for
// whoever identifies in it (core.go), and its kits are too many for a page each: those that
// are written with the same figures share the page of their size.
const largeRows = 2000

// jointRows counts the rows that are identified by their ends, of a sample those of the
// whole chart: it is made as that is.
func jointRows(set *tables.Set) int {
	n := 0
	for _, table := range set.Whole().Tables {
		if table.Joint() {
			n += len(table.Rows)
		}
	}
	return n
}

// large reports whether the chart of the site is a large one.
func (s *site) large() bool { return jointRows(s.set.Whole()) > largeRows }

// ofWholeChart reports whether a page is about the whole chart, or asks all of it: it may
// change with any row. Every other page of a large chart holds neither the chart's version
// nor the name of a file that changes with any row, so that one edited row changes few pages.
func ofWholeChart(body any) bool {
	switch body.(type) {
	case *templates.Chart, *templates.Changes, *templates.Identify, *templates.Part, *templates.Calculation, *templates.Card,
		*templates.Order, *templates.Shaft, *templates.EmbedFrame, *templates.NotKept, *templates.Correct:
		return true
	}
	return false
}

// sizeKey is the name of the page that a joint shares with those written with the same
// figures: "outside-clip-27.0x81.8", and for unlike ends both, with "--" between. It follows
// from the row alone, so that it stays whatever is added round it. Lengths are in tenths of
// a millimetre; "u" stands for one that is unknown or is none. static/matcher/size-key.ts
// makes the same names.
func sizeKey(row *tables.Row) string {
	b := make([]byte, 0, 64)
	for i := range row.Ends {
		end := &row.Ends[i]
		if i > 0 {
			b = append(b, "--"...)
		}
		b = append(append(b, holdKind(end.Hold)...), '-')
		b = appendTenths(b, &end.Cap)
		b = appendTenths(append(b, 'x'), &end.Across)
	}
	return string(b)
}

func tenths(v tables.Value) string { return string(appendTenths(nil, &v)) }

func appendTenths(b []byte, v *tables.Value) []byte {
	if v.State != tables.Given {
		return append(b, 'u')
	}
	tens := float64(v.Quantity.Float() * 10) // rounded by itself, as a script does it
	return strconv.AppendFloat(b, math.Floor(tens+0.5)/10, 'f', 1, 64)
}

func sizeAddress(key string) string { return "/size/" + key + "/" }
