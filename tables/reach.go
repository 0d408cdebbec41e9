package tables

import "math"

// Breadth is the sum of a joint's distances across, mm. Joints with as many ends are at
// least as far from each other as their breadths are.
func Breadth(row *Row) float64 { return breadth(row) }

// Reach tells how far off in breadth another joint may be, mm, to matter to what is near a
// row: to [Set.SameFigures], and to [Set.NearOthers], which gave these of n.
func Reach(row *Row, near []*Row, n int) float64 {
	reach := float64(len(row.Ends)) * float64(acrossApart) / nanos
	if len(near) < n {
		return math.Inf(1)
	}
	for _, other := range near {
		reach = max(reach, away(row, other))
	}
	return reach + rounding
}
