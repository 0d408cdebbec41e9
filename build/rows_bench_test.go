package build

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"capspan/build/synth/catalogue"
	"capspan/tables"
	"capspan/templates"
)

// BenchmarkRows tells what a large chart's rows cost a reader, packed by brotli: a question to
// the search by a name or the beginning of one, a correction of one row, and a slip with a row
// chosen by its name. Directories are in it, and the index of pages and words is not.
//
//	go test -run '^$' -bench Rows -benchtime 1x ./build
func BenchmarkRows(b *testing.B) {
	for _, rows := range []int{10_000, 100_000} {
		b.Run(fmt.Sprint(rows), func(b *testing.B) {
			for b.Loop() {
				benchRows(b, rows)
			}
		})
	}
}

func benchRows(b *testing.B, count int) {
	src := inEnglish()
	made, err := catalogue.Make(catalogue.Options{Rows: count, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		b.Fatal(err)
	}
	src.Tables = made.FS()
	s, problems := rowsOnly(src, nil)
	if problems.Blocked() {
		b.Fatal(problems)
	}
	files := contents(Output{Files: s.files})
	p := newPage(b, files, map[string]string{"parts/search/rows.ts": "Rows", "parts/correct/rows.ts": "Facts", "parts/order/slips.ts": "Slips"})
	packed := map[string]int{}
	weigh := func() float64 {
		sum := 0
		for _, file := range p.asked {
			if packed[file] == 0 {
				packed[file] = len(packBrotli(files[file], 11))
			}
			sum += packed[file]
		}
		p.asked = nil
		return float64(sum)
	}
	tell := func(what string, bytes []float64) {
		slices.Sort(bytes)
		b.ReportMetric(bytes[len(bytes)/2], what+"-median-B")
		b.ReportMetric(bytes[len(bytes)-1], what+"-most-B")
	}
	random := rand.New(rand.NewPCG(1, 2))
	all := slices.Collect(s.joints())
	var search, beginning, correct, slip []float64
	for range 60 {
		row := all[random.IntN(len(all))]
		name := row.ID
		if len(row.Also) > 0 && random.IntN(2) == 0 {
			name = row.Also[0]
		}
		var none any
		find := `Rows.rowFinder(await (await fetch("/sub/search/index.json")).json(), []).find(a[0])`
		p.mustAsk(&none, find, name)
		search = append(search, weigh())
		p.mustAsk(&none, find, name[:1+random.IntN(len(name))])
		beginning = append(beginning, weigh())
		if len(row.Values) > 0 {
			p.mustAsk(&none, `{ const rows = Facts.open("/sub/contribute/correct/index.json"); await rows.sources(); return rows.table(a[0], a[1]); }`, row.Table.ID, row.ID)
			correct = append(correct, weigh())
		}
		p.mustAsk(&none, `{ const slips = await Slips.openSlips("/sub/order/slips.json"); await slips.fetch(await slips.named(a[0])); return 0; }`, name)
		slip = append(slip, weigh())
	}
	tell("name", search)
	tell("beginning", beginning)
	tell("correction", correct)
	tell("slip", slip)
	var pages, heaviest int
	for _, d := range s.drafted {
		pages++
		var page strings.Builder
		d.page.Site = templates.Site{Base: s.base, Root: s.root, Policy: Policy}
		if err := s.frames.Render(&page, d.page); err != nil {
			b.Fatal(err)
		}
		heaviest = max(heaviest, len(packBrotli([]byte(page.String()), 5)))
	}
	b.ReportMetric(float64(pages), "name-pages")
	b.ReportMetric(float64(heaviest), "name-page-most-B")
	for _, file := range []string{searchDirectory, factsDirectory, slipDirectory} {
		b.ReportMetric(float64(len(packBrotli(files[file], 11))), strings.ReplaceAll(file, "/", "-")+"-B")
	}
	b.ReportMetric(float64(len(files)), "files")
}
