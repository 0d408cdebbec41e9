package main

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"

	"github.com/andybalholm/brotli"

	"capspan/build"
	"capspan/static/matcher"
	"capspan/tables"
)

// asked are the questions: a caliper's readings of that many rows chosen by chance.
const asked = 60

// takeReach puts them to the scripts that pages load: which bytes of the chart each has to
// fetch, packed as a host sends them, and how long V8 takes for the answer once they are
// there. Of both it tells the middle one.
func takeReach(c *catalogueFolder, figures map[string]figure) error {
	set, problems := tables.Load(build.Folder(c.root).Tables)
	if problems.Blocked() {
		return fmt.Errorf("%s", problems.Summary())
	}
	first, pieces, err := build.ChartPieces(set)
	if err != nil {
		return err
	}
	answers, err := inV8(c.root+"-v8", first, pieces, questions(set))
	if err != nil {
		return err
	}
	packed := map[string]int{}
	content := map[string][]byte{}
	for _, p := range pieces {
		content[p.Name] = p.Bytes
	}
	size := func(text []byte) int {
		var b bytes.Buffer
		w := brotli.NewWriterLevel(&b, brotli.BestCompression)
		w.Write(text)
		w.Close()
		return b.Len()
	}
	directory := size(first)
	var weights, fetched, took []float64
	for _, a := range answers {
		weight := directory
		for _, name := range a.Pieces {
			if packed[name] == 0 {
				packed[name] = size(content[name])
			}
			weight += packed[name]
		}
		weights, took = append(weights, float64(weight)), append(took, a.Milliseconds)
		fetched = append(fetched, float64(len(a.Pieces)))
	}
	figures["bytes of an identification"] = kilobytes(middle(weights))
	figures["of them the first file"] = kilobytes(float64(directory))
	figures["files it fetches beside that"] = count(int(middle(fetched)))
	figures["its time in V8"] = milliseconds(middle(took))
	return nil
}

func middle(list []float64) float64 {
	slices.Sort(list)
	return list[len(list)/2]
}

// questions are readings as a careful caliper gives them, of plain joints.
func questions(set *tables.Set) []matcher.Query {
	var plain []*tables.Row
	for _, t := range set.Tables {
		for _, row := range t.Rows {
			if len(row.Ends) == 1 && row.Ends[0].Cap.State == tables.Given && row.Ends[0].Across.State == tables.Given && row.Ends[0].Hold.State == tables.Given {
				plain = append(plain, row)
			}
		}
	}
	random := rand.New(rand.NewPCG(1, 9))
	off := func(q tables.Quantity, by float64) []string {
		return []string{strconv.FormatFloat(q.Float()+random.NormFloat64()*by, 'f', 2, 64) + " mm"}
	}
	var list []matcher.Query
	for range asked {
		end := plain[random.IntN(len(plain))].Ends[0]
		list = append(list, matcher.Query{Ends: []matcher.QueryEnd{{Hold: end.Hold.Text, Faces: string(end.Across.Faces),
			Cap: off(end.Cap.Quantity, 0.03), Across: off(end.Across.Quantity, 0.1)}}})
	}
	return list
}
