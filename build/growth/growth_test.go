package main

import (
	"encoding/xml"
	"errors"
	"io"
	"os"
	"strings"
	"testing"
	"time"

	"capspan/build"
	"capspan/build/synth/catalogue"
	"capspan/tables"
)

func measured() []column {
	return []column{
		{1000, map[string]figure{"full build": seconds(1500 * time.Millisecond), "its files": count(1234), curveTime: milliseconds(1), curveBytes: kilobytes(7400)}},
		{100_000, map[string]figure{"full build": seconds(90 * time.Second), "build over plain loop": ratio(1.789), curveTime: milliseconds(2.5), curveBytes: kilobytes(21_000)}},
	}
}

func TestTable(t *testing.T) {
	got := table(measured(), "a machine")
	for _, line := range []string{
		"| rows | 1,000 | 100,000 |\n|---|---:|---:|\n| full build | 1.5 s | 90.0 s |\n| its files | 1,234 | – |\n| build over plain loop | – | 1.79 |\n",
		"| bytes of an identification | 7.4 kB | 21.0 kB |\n| its time in V8 | 1.00 ms | 2.50 ms |\n",
	} {
		if !strings.Contains(got, line) {
			t.Errorf("lacks\n%s\nin\n%s", line, got)
		}
	}
	if strings.Contains(got, "check") {
		t.Error("a line without any figure is there")
	}
}

// Every line of the table is a figure that something takes.
func TestLinesAreTaken(t *testing.T) {
	var sources strings.Builder
	for _, name := range []string{"build", "loop", "check", "compare", "rebuild", "identify", "reach"} {
		text, err := os.ReadFile("take_" + name + ".go")
		if err != nil {
			t.Fatal(err)
		}
		sources.Write(text)
	}
	for _, name := range lines {
		if !strings.Contains(sources.String(), `figures["`+name+`"] = `) {
			t.Errorf("nothing takes %q", name)
		}
	}
	if found := strings.Count(sources.String(), `figures["`); found != len(lines) {
		t.Errorf("%d figures are taken and %d are in the table", found, len(lines))
	}
}

// The place in the developers' page is there, and nothing round it is touched.
func TestPlace(t *testing.T) {
	got, err := between("before\n"+begin+"old\n"+end+"after\n", "new\n")
	if want := "before\n" + begin + "new\n" + end + "after\n"; err != nil || got != want {
		t.Errorf("%q, %v", got, err)
	}
	if _, err := between("no place", "new\n"); err == nil {
		t.Error("a page without a place is written")
	}
	page, err := os.ReadFile("../../" + target)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := between(string(page), "new\n"); err != nil {
		t.Error(err)
	}
}

func TestPlotIsDrawn(t *testing.T) {
	drawing, err := plot(measured())
	if err != nil {
		t.Fatal(err)
	}
	reader := xml.NewDecoder(strings.NewReader(drawing))
	circles := 0
	for {
		token, err := reader.Token()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			t.Fatal(err)
		}
		if start, is := token.(xml.StartElement); is && start.Name.Local == "circle" {
			circles++
		}
	}
	if circles != 4 {
		t.Errorf("%d points are drawn, want 4", circles)
	}
	if _, err := plot([]column{measured()[0], {10_000, nil}}); err == nil {
		t.Error("a curve without a figure is drawn")
	}
}

// What fails says so, with its words.
func TestRunTells(t *testing.T) {
	if _, err := run("go", "tool", "no-such-tool"); err == nil || !strings.Contains(err.Error(), "no-such-tool") {
		t.Errorf("got %v", err)
	}
	s, err := run("go", "version")
	if err != nil || !strings.HasPrefix(s.out, "go version") || s.took <= 0 || s.peak < 1<<20 {
		t.Errorf("%+v, %v", s, err)
	}
}

// The changed catalogue differs in one row, and both are without problems.
func TestOneRowIsChanged(t *testing.T) {
	made, err := catalogue.Make(catalogue.Options{Rows: 300, Seed: 1, Makers: catalogue.Makers}, tables.FS)
	if err != nil {
		t.Fatal(err)
	}
	changed, err := oneRowChanged(made)
	if err != nil {
		t.Fatal(err)
	}
	src := build.Embedded()
	src.Tables = changed.FS()
	c, problems, err := build.Compare(made.FS(), src, false)
	if err != nil || len(problems[0])+len(problems[1]) > 0 || len(c.Changes) != 1 {
		t.Errorf("%v, %v, %d changes", err, problems, len(c.Changes))
	}
}

// The questions are put in node, with a chart whole and in pieces.
func TestAnswersInNode(t *testing.T) {
	for _, rows := range []int{300, 2100} {
		made, err := catalogue.Make(catalogue.Options{Rows: rows, Seed: 1, Makers: catalogue.Makers}, tables.FS)
		if err != nil {
			t.Fatal(err)
		}
		set, problems := tables.Load(made.FS())
		if problems.Blocked() {
			t.Fatal(problems)
		}
		first, pieces, err := build.ChartPieces(set)
		if err != nil {
			t.Fatal(err)
		}
		answers, err := inV8(t.TempDir(), first, pieces, questions(set)[:5])
		if err != nil {
			t.Fatal(err)
		}
		for n, a := range answers {
			if (len(a.Pieces) > 0) != (len(pieces) > 0) || a.Milliseconds <= 0 {
				t.Errorf("%d rows, question %d: %+v of %d pieces", rows, n, a, len(pieces))
			}
		}
	}
}
