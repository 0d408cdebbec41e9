package main

import (
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"capspan/build"
	"capspan/build/synth/catalogue"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// As build has them: up to so many rows a chart is held whole, and a piece has so many.
const (
	wholeRows = 2000
	pieceRows = 450
)

// measurer is run by node: it asks questions of a chart and says what they took. The bytes
// of a question are those of the directory and of all files it touches, each packed by
// itself; of a chart that is held whole they are those of the chart.
const measurer = `const fs = require("fs"), vm = require("vm"), zlib = require("zlib");
const [, , folder, count] = process.argv;
const read = (name) => fs.readFileSync(folder + "/" + name, "utf8");
for (const name of ["core.js", "truth.js"]) vm.runInThisContext(read(name));
const packed = (text) => zlib.brotliCompressSync(text, { params: { [zlib.constants.BROTLI_PARAM_QUALITY]: 11 } }).length;
const used = () => { for (let i = 0; i < 4; i++) gc(); const m = process.memoryUsage(); return m.heapUsed + m.external; };
const at = (list, share) => [...list].sort((a, b) => a - b)[Math.min(list.length - 1, Math.floor(share * list.length))];
const questions = CapspanTruth.questions(JSON.parse(read("chart.json")), { column: "listed", seed: 1, from: 0, to: +count });
const out = {};
let ask;
if (fs.existsSync(folder + "/directory.json")) {
  const P = CapspanPieces, directory = read("directory.json"), pieces = JSON.parse(read("pieces.json"));
  const first = packed(directory), sizes = [], bytes = [], files = [];
  for (const q of questions) {
    const chart = P.open(JSON.parse(directory));
    let [sum, fetched] = [0, 0];
    for (let answer = P.ask(chart, q); Array.isArray(answer); answer = P.ask(chart, q))
      for (const n of answer) {
        const text = pieces[P.nameOf(chart, n)];
        sum += sizes[n] ??= packed(text);
        P.add(chart, n, JSON.parse(text));
        fetched++;
      }
    bytes.push(first + sum);
    files.push(fetched);
  }
  const before = used();
  globalThis.chart = P.open(JSON.parse(directory));
  const add = (n) => P.add(chart, n, JSON.parse(pieces[P.nameOf(chart, n)]));
  const many = chart.files.pieces;
  for (let n = 0; n < chart.files.parts; n++) add(2 * many + n);
  for (let n = 0; n < 2 * many; n++) add(n);
  out["added-MB"] = (used() - before) / 1e6;
  ask = (q) => P.ask(chart, q);
  for (const q of questions) ask(q);
  out["asked-MB"] = (used() - before) / 1e6;
  Object.assign(out, { "directory-B": first, "B-median": at(bytes, 0.5), "B-p95": at(bytes, 0.95), pieces: many, "files-median": at(files, 0.5) });
} else {
  const before = used();
  globalThis.chart = JSON.parse(read("chart.json"));
  ask = (q) => CapspanCore.identify(chart, q);
  for (const q of questions) ask(q);
  out["asked-MB"] = (used() - before) / 1e6;
  out["B-median"] = out["B-p95"] = packed(read("chart.json"));
}
const took = questions.map(() => Infinity); // the best of some: other processes are none of ours
for (let run = 0; run < 5; run++)
  questions.forEach((q, n) => { const start = process.hrtime.bigint(); ask(q); took[n] = Math.min(took[n], Number(process.hrtime.bigint() - start) / 1e6); });
Object.assign(out, { "ms-median": at(took, 0.5), "ms-p95": at(took, 0.95) });
process.stdout.write(JSON.stringify(out));
`

// BenchmarkLarge tells what identifying takes in charts of three sizes: bytes, memory and
// milliseconds in V8, over the questions of the column "listed". It needs node.
func BenchmarkLarge(b *testing.B) {
	for _, rows := range []int{1_000, 10_000, 100_000} {
		b.Run(fmt.Sprint(rows), func(b *testing.B) {
			folder := b.TempDir()
			prepareLarge(b, folder, rows)
			for b.Loop() {
				cmd := exec.Command("node", "--expose-gc", "--max-old-space-size=4000", filepath.Join(folder, "measure.js"), folder, "200")
				cmd.Stderr = os.Stderr
				text, err := cmd.Output()
				if err != nil {
					b.Fatal(err)
				}
				var said map[string]float64
				if err := json.Unmarshal(text, &said); err != nil {
					b.Fatal(err)
				}
				for what, n := range said {
					b.ReportMetric(n, what)
				}
			}
		})
	}
}

// prepareLarge puts a chart, in pieces when it is large, and the core where node finds them.
func prepareLarge(b *testing.B, folder string, rows int) {
	b.Helper()
	files, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		b.Fatal(err)
	}
	set, problems := tables.Load(files.FS())
	core, more := static.Pieced(static.FS)
	problems.Add(more...)
	simulator, more := static.Script(sources, "simulate.ts", simulatorName)
	problems.Add(more...)
	if problems.Blocked() {
		b.Fatal(problems)
	}
	put := func(name string, text []byte) {
		if err := os.WriteFile(filepath.Join(folder, name), text, 0o600); err != nil {
			b.Fatal(err)
		}
	}
	asJSON := func(x any) []byte {
		text, err := json.Marshal(x)
		if err != nil {
			b.Fatal(err)
		}
		return text
	}
	chart := build.Chart(set)
	put("core.js", core)
	put("truth.js", simulator)
	put("measure.js", []byte(measurer))
	put("chart.json", asJSON(chart))
	if rows <= wholeRows {
		return
	}
	pieces := map[string]string{}
	directory, err := matcher.Split(chart, pieceRows, func(p matcher.Piece) (string, error) {
		text := asJSON(p)
		sum := sha256.Sum256(text)
		name := hex.EncodeToString(sum[:16])
		pieces[name] = string(text)
		return name, nil
	})
	if err != nil {
		b.Fatal(err)
	}
	put("directory.json", asJSON(directory))
	put("pieces.json", asJSON(pieces))
}
