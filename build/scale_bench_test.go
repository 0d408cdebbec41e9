package build

import (
	"fmt"
	"testing"

	"capspan/build/synth/catalogue"
)

// invented is the program's own sources with an invented catalogue in the place of the chart.
func invented(t testing.TB, rows int) Sources {
	src := Embedded()
	files, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, src.Tables)
	if err != nil {
		t.Fatal(err)
	}
	guide, err := catalogue.Guide(src.Content)
	if err != nil {
		t.Fatal(err)
	}
	src.Tables, src.Content = files.FS(), guide.FS()
	return src
}

// BenchmarkCheck is all of capspan check but starting the program: under 0.3 s is meant at
// 10,000 rows, and under 2.5 s at 100,000.
func BenchmarkCheck(b *testing.B) {
	for _, rows := range []int{1_000, 10_000, 100_000} {
		src := invented(b, rows)
		b.Run(fmt.Sprint(rows), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if problems := Check(src); len(problems) > 0 {
					b.Fatal(problems[0])
				}
			}
		})
	}
}
