package diag

import "strings"

// Nearest is the hint for a misspelt name: given only when exactly one of the known
// names is a near typo, or a longer form of it.
func Nearest(name string, known []string) []string {
	var typo, longer []string
	low := strings.ToLower(name)
	for _, k := range known {
		switch d := distance(low, strings.ToLower(k)); {
		case len(name)+len(k) > 4 && (d <= 1 || (d == 2 && len(k) > 5)):
			typo = append(typo, k)
		case len(name) > 2 && strings.HasPrefix(strings.ToLower(k), low):
			longer = append(longer, k)
		}
	}
	switch {
	case len(typo) == 1:
		return []string{"did you mean \"" + typo[0] + "\"?"}
	case len(typo) == 0 && len(longer) == 1:
		return []string{"did you mean \"" + longer[0] + "\"?"}
	}
	return nil
}

// distance counts the letters to insert, delete, replace or swap with a neighbour
// (optimal string alignment) to turn a into b; anything above 2 is 3.
func distance(a, b string) int {
	if d := len(a) - len(b); d < -2 || d > 2 {
		return 3
	}
	var before []int
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		next := make([]int, len(b)+1)
		next[0] = i
		for j := 1; j <= len(b); j++ {
			replace := row[j-1]
			if a[i-1] != b[j-1] {
				replace++
			}
			next[j] = min(replace, row[j]+1, next[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				next[j] = min(next[j], before[j-2]+1)
			}
		}
		before, row = row, next
	}
	return min(row[len(b)], 3)
}
