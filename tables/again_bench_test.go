package tables_test

import (
	"bytes"
	"testing"
	"testing/fstest"

	"capspan/build/synth/catalogue"
	"capspan/tables"
)

// BenchmarkLoadAgain is what a reload costs when one figure of one row has changed: the chart,
// and its name.
func BenchmarkLoadAgain(b *testing.B) {
	files, err := catalogue.Make(catalogue.Options{Rows: 10_000, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		b.Fatal(err)
	}
	const name = "joints-metric.yaml"
	figure := []byte("across: {is: ")
	at := bytes.LastIndex(files[name], figure) + len(figure)
	at += bytes.IndexByte(files[name][at:], ',')
	folders := []fstest.MapFS{files.FS().(fstest.MapFS), files.FS().(fstest.MapFS)}
	longer := append(bytes.Clone(files[name][:at]), '0')
	folders[1][name] = &fstest.MapFile{Data: append(longer, files[name][at:]...)}
	var r tables.Reader
	b.ReportAllocs()
	for n := 0; b.Loop(); n++ {
		set, problems := r.Load(folders[n%2])
		if len(problems) > 0 {
			b.Fatal(problems[0])
		}
		set.Version()
	}
}
