package main

import (
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"testing"

	"capspan/build"
	"capspan/build/diag"
	"capspan/build/synth/catalogue"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
)

// Of a chart in pieces only those are fetched that a question touches, and the answer is that of the whole chart.
func TestPiecesChangeNoAnswer(t *testing.T) {
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for _, c := range []struct {
		name       string
		chart      matcher.Chart
		each, most int  // rows a piece
		inParts    bool // whether the directory is
	}{
		{"shipped", build.Chart(set), 2, 12, false},
		{"dense", denseChart(300, 3), 1, 20, false},
		{"larger", denseChart(2000, 7), 1, 24, true},
		{"catalogue", catalogueChart(t, 2100), 1, 120, false},
	} {
		t.Run(c.name, func(t *testing.T) {
			t.Parallel()
			whole := core(t, static.FS, c.chart)
			verdicts, slips, parted := map[matcher.Verdict]int{}, 0, 0
			made, directory := inPieces(t, c.chart, c.most)
			if inParts := strings.Contains(string(directory), `"pieces":[`); inParts != c.inParts {
				t.Errorf("the directory is in parts: %v, want %v", inParts, c.inParts)
			}
			atHand := fromPieces(t, matcher.NewAtHand, directory, shelf{made, map[string]bool{}})
			var pieced *matcher.Matcher
			var files shelf
			for n, q := range questions(t, c.chart, c.each) {
				if n%8 == 0 { // forget what was fetched
					files = shelf{made, map[string]bool{}}
					pieced = fromPieces(t, matcher.NewPieced, directory, files)
				}
				want := sameAnswer(t, q, whole, pieced)
				if n%4 == 0 {
					sameAnswer(t, q, whole, atHand)
				}
				verdicts[want.Verdict]++
				slips += len(want.Slips)
				if len(files.fetched) < len(files.pieces) {
					parted++
				}
			}
			if len(verdicts) < 5 || slips == 0 || parted == 0 {
				t.Errorf("the questions reach the verdicts %v, %d slips, and %d of them left pieces out", verdicts, slips, parted)
			}
		})
	}
}

// catalogueChart is a made-up catalogue: kits of one size that are written alike, and some vague figures.
func catalogueChart(t *testing.T, rows int) matcher.Chart {
	t.Helper()
	files, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	set, problems := tables.Load(files.FS())
	if problems.Blocked() {
		t.Fatal(problems)
	}
	return build.Chart(set)
}

// shelf holds the pieces of a chart, and notes which were fetched.
type shelf struct {
	pieces  map[string][]byte
	fetched map[string]bool
}

func (s shelf) fetch(name string) ([]byte, error) {
	s.fetched[name] = true
	text, there := s.pieces[name]
	if !there {
		return nil, fmt.Errorf("no piece %s", name)
	}
	return text, nil
}

// inPieces cuts a chart: its pieces by name, and the directory.
func inPieces(t *testing.T, chart matcher.Chart, most int) (map[string][]byte, []byte) {
	t.Helper()
	pieces := map[string][]byte{}
	directory, err := matcher.Split(chart, most, func(p matcher.Piece) (string, error) {
		name := fmt.Sprintf("piece-%d", len(pieces))
		text, err := json.Marshal(p)
		pieces[name] = text
		return name, err
	})
	if err != nil {
		t.Fatal(err)
	}
	return pieces, []byte(mustJSON(t, directory))
}

// inScripts are the scripts of the core of a chart in pieces.
var inScripts = sync.OnceValues(func() ([]byte, diag.List) { return static.Pieced(static.FS) })

// fromPieces is the core over pieces that come when they are asked for, or lie at hand.
func fromPieces(t *testing.T, made func(bundle, directory []byte, fetch matcher.Fetch) (*matcher.Matcher, error), directory []byte, files shelf) *matcher.Matcher {
	t.Helper()
	bundle, problems := inScripts()
	if problems.Blocked() {
		t.Fatal(problems)
	}
	m, err := made(bundle, directory, files.fetch)
	if err != nil {
		t.Fatal(err)
	}
	return m
}
