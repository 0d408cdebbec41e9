package press

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"time"
)

// Two prints of one book differ in two things, and both are made alike here by marks of the
// same length, so that nothing in the file moves: the time of day, and the names of table
// heads for a screen reader, which Chromium counts from whatever it has met before.

var (
	printedOn = regexp.MustCompile(`/(CreationDate|ModDate) \(D:\d{14}\+00'00'\)`)
	nodeName  = regexp.MustCompile(`\(node\d{8}\)`)
)

// alike puts a date in the place of the clock's, and counts the names from one. Their order
// stays, because the table of them is sorted (ISO 32000-1, 7.9.6).
func alike(pdf []byte, date time.Time) ([]byte, error) {
	if n := len(printedOn.FindAll(pdf, -1)); n != 2 {
		return nil, fmt.Errorf("the printed book has %d dates where two are known", n)
	}
	pdf = printedOn.ReplaceAll(pdf, []byte("/$1 (D:"+date.UTC().Format("20060102150405")+"+00'00')"))
	names := nodeName.FindAll(pdf, -1)
	slices.SortFunc(names, bytes.Compare)
	names = slices.CompactFunc(names, bytes.Equal)
	rank := map[string]int{}
	for i, name := range names {
		rank[string(name)] = i + 1
	}
	return nodeName.ReplaceAllFunc(pdf, func(name []byte) []byte {
		return fmt.Appendf(nil, "(node%08d)", rank[string(name)])
	}), nil
}
