package tables_test

import (
	"fmt"
	"testing"

	"capspan/build/synth/catalogue"
	"capspan/tables"
)

// BenchmarkLoadMany is loading alone, of an invented chart that follows the shipped one;
// capspan check at 100,000 rows has 2.5 s for it and all the rest, on two cores.
func BenchmarkLoadMany(b *testing.B) {
	for _, rows := range []int{1_000, 10_000, 100_000} {
		files, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, tables.FS)
		if err != nil {
			b.Fatal(err)
		}
		folder := files.FS()
		b.Run(fmt.Sprint(rows), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, problems := tables.Load(folder); len(problems) > 0 {
					b.Fatal(problems[0])
				}
			}
		})
	}
}
