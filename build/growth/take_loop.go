package main

import (
	"fmt"
	"regexp"
	"strconv"
)

var benchmarkLine = regexp.MustCompile(`(?m)^Benchmark(\w+)Many/(\d+)(?:-\d+)?\s+\d+\s+(\d+) ns/op`)

// takeLoop sets a full build beside the plain loop over the same pages, both benchmarks of
// package build in one run. Small charts are not among theirs.
func takeLoop(c *catalogueFolder, figures map[string]figure) error {
	if c.rows < 10_000 {
		return nil
	}
	s, err := run("go", "test", "./build", "-run", "^$", "-timeout", "1h", "-benchtime", "1x",
		"-bench", fmt.Sprintf("^Benchmark(Build|PlainLoop)Many$/^%d$", c.rows))
	if err != nil {
		return err
	}
	took := map[string]float64{}
	for _, found := range benchmarkLine.FindAllStringSubmatch(s.out, -1) {
		took[found[1]], _ = strconv.ParseFloat(found[3], 64)
	}
	if took["Build"] == 0 || took["PlainLoop"] == 0 {
		return fmt.Errorf("the benchmarks BuildMany and PlainLoopMany gave no figures:\n%.1000s", s.out)
	}
	figures["build over plain loop"] = ratio(took["Build"] / took["PlainLoop"])
	return nil
}
