package main

import (
	"bytes"
	"embed"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"sync"

	"github.com/dop251/goja"

	"capspan/static"
	"capspan/static/matcher"
)

//go:embed *.ts
var sources embed.FS

// column is what simulate.ts says of one of its columns.
type column struct {
	ID    string  `json:"id"`
	Says  string  `json:"says"`
	Slip  bool    `json:"slip"`
	Least float64 `json:"least"` // share in which the slip should be called by its name; 0: no figure was set
}

// tally counts by name, as simulate.ts does.
type tally map[string]float64

// result is what one process hands back.
type result struct {
	Tally tally    `json:"tally"`
	Shown []string `json:"shown"`
}

// job is one process's share of a column.
type job struct {
	Column string `json:"column"`
	Seed   uint64 `json:"seed"`
	From   int    `json:"from"`
	To     int    `json:"to"`
	Show   int    `json:"show"`
}

// bench is the core and the simulation, bundled, in a folder of their own.
type bench struct {
	folder    string
	core      []byte
	simulator []byte
	columns   []column
	statement []string
	bins      []float64
}

// launcher is run by node: it loads the two bundles and the chart and does one job.
const launcher = `const fs = require("fs");
const [, , folder, chart, job] = process.argv;
const read = (name) => fs.readFileSync(folder + "/" + name, "utf8");
const load = (name, exported) => new Function(read(name) + ";return " + exported + ";")();
const core = load("core.js", "` + static.CoreName + `");
const truth = load("truth.js", "` + simulatorName + `");
const found = truth.run(core.identify, JSON.parse(read(chart)), JSON.parse(job));
process.stdout.write(JSON.stringify(found));
`

const simulatorName = "CapspanTruth"

// load bundles the core and the simulation, and asks the simulation for its columns.
func (b *bench) load() error {
	core, problems := static.Core(static.FS)
	simulator, more := static.Script(sources, "simulate.ts", simulatorName)
	if problems.Add(more...); problems.Blocked() {
		return fmt.Errorf("bundle: %v", problems)
	}
	b.core, b.simulator = core, simulator
	return b.describe()
}

// newBench is a bench with its files where node finds them.
func newBench() (*bench, error) {
	b := &bench{}
	err := b.load()
	if err != nil {
		return nil, err
	}
	if b.folder, err = os.MkdirTemp("", "truth-"); err != nil {
		return nil, err
	}
	for name, text := range map[string][]byte{"core.js": b.core, "truth.js": b.simulator, "launch.js": []byte(launcher)} {
		if err := os.WriteFile(filepath.Join(b.folder, name), text, 0o600); err != nil {
			return nil, err
		}
	}
	return b, nil
}

func (b *bench) close() { _ = os.RemoveAll(b.folder) }

// describe asks the bundle for its columns and its error model.
func (b *bench) describe() error {
	vm := goja.New()
	if _, err := vm.RunScript("truth.js", string(b.simulator)); err != nil {
		return fmt.Errorf("load the simulation: %w", err)
	}
	v, err := vm.RunString(`JSON.stringify({
		columns: ` + simulatorName + `.columns.map(c => ({id: c.id, says: c.says, slip: !!c.slip, least: c.slip ? c.slip.least : 0})),
		statement: ` + simulatorName + `.statement, bins: ` + simulatorName + `.bins})`)
	if err != nil {
		return fmt.Errorf("ask the simulation for its columns: %w", err)
	}
	var said struct {
		Columns   []column
		Statement []string
		Bins      []float64
	}
	if err := json.Unmarshal([]byte(v.String()), &said); err != nil {
		return err
	}
	b.columns, b.statement, b.bins = said.Columns, said.Statement, said.Bins
	return nil
}

// run simulates n sets of a column in so many node processes.
func (b *bench) run(chart matcher.Chart, c column, n int, seed uint64, show, processes int) (result, error) {
	text, err := json.Marshal(chart)
	if err != nil {
		return result{}, err
	}
	if err := os.WriteFile(filepath.Join(b.folder, "chart.json"), text, 0o600); err != nil {
		return result{}, err
	}
	parts := make([]result, processes)
	fails := make([]error, processes)
	var group sync.WaitGroup
	for i := range processes {
		group.Go(func() {
			j := job{Column: c.ID, Seed: seed, From: n * i / processes, To: n * (i + 1) / processes, Show: show}
			fails[i] = b.node("chart.json", j, &parts[i])
		})
	}
	group.Wait()
	whole := result{Tally: tally{}}
	for i, part := range parts {
		if fails[i] != nil {
			return result{}, fmt.Errorf("column %s: %w", c.ID, fails[i])
		}
		for name, count := range part.Tally {
			if name != "rows" {
				count += whole.Tally[name]
			}
			whole.Tally[name] = count
		}
		whole.Shown = append(whole.Shown, part.Shown...)
	}
	return whole, nil
}

func (b *bench) node(chart string, j job, out *result) error {
	text, err := json.Marshal(j)
	if err != nil {
		return err
	}
	cmd := exec.Command("node", filepath.Join(b.folder, "launch.js"), b.folder, chart, string(text))
	var stderr bytes.Buffer
	cmd.Stderr = &stderr
	bytes, err := cmd.Output()
	if err != nil {
		return fmt.Errorf("node: %w\n%s", err, stderr.String())
	}
	return json.Unmarshal(bytes, out)
}
