package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"

	"capspan/build"
	"capspan/static"
	"capspan/static/matcher"
)

// launcher is run by node. Each question begins with nothing but the directory, as a reader
// does, and is timed when it is asked again with its pieces there. A small chart is whole.
const launcher = `const fs = require("fs");
const [, , folder] = process.argv;
const read = (name) => fs.readFileSync(folder + "/" + name, "utf8");
const globals = new Function(read("core.js") + ";return {core:` + static.CoreName + `,pieces:` + static.PiecesName + `};")();
const first = read("first.json");
const split = read("split") === "1";
const answers = JSON.parse(read("questions.json")).map((question) => {
  const pieces = [];
  const chart = split ? globals.pieces.open(JSON.parse(first)) : JSON.parse(first);
  const ask = split ? () => globals.pieces.ask(chart, question) : () => globals.core.identify(chart, question);
  for (let answer = ask(); Array.isArray(answer); answer = ask()) {
    if (answer.length === 0) throw new Error("the core asks for nothing");
    for (const n of answer) {
      const name = globals.pieces.nameOf(chart, n);
      pieces.push(name);
      globals.pieces.add(chart, n, JSON.parse(read("piece-" + name + ".json")));
    }
  }
  let least = Infinity;
  for (let n = 0; n < 5; n++) {
    const from = performance.now();
    ask();
    least = Math.min(least, performance.now() - from);
  }
  return { pieces, milliseconds: least };
});
process.stdout.write(JSON.stringify(answers));
`

// answered is what one question took.
type answered struct {
	Pieces       []string `json:"pieces"` // the files that were fetched, by name
	Milliseconds float64  `json:"milliseconds"`
}

// inV8 puts questions to the scripts that pages load, in node.
func inV8(folder string, first []byte, pieces []build.ChartPiece, list []matcher.Query) ([]answered, error) {
	core, problems := static.Pieced(static.FS)
	if problems.Blocked() {
		return nil, fmt.Errorf("bundle the core: %v", problems)
	}
	questions, err := json.Marshal(list)
	if err != nil {
		return nil, err
	}
	split := "0"
	if len(pieces) > 0 {
		split = "1"
	}
	files := map[string][]byte{"core.js": core, "first.json": first, "questions.json": questions, "launcher.js": []byte(launcher), "split": []byte(split)}
	for _, p := range pieces {
		files["piece-"+p.Name+".json"] = p.Bytes
	}
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return nil, err
	}
	for name, text := range files {
		if err := os.WriteFile(filepath.Join(folder, name), text, 0o644); err != nil {
			return nil, err
		}
	}
	s, err := run("node", filepath.Join(folder, "launcher.js"), folder)
	if err != nil {
		return nil, err
	}
	var answers []answered
	if err := json.Unmarshal([]byte(s.out), &answers); err != nil {
		return nil, fmt.Errorf("read what node said: %w", err)
	}
	if len(answers) != len(list) {
		return nil, fmt.Errorf("%d questions have %d answers", len(list), len(answers))
	}
	return answers, nil
}
