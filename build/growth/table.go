package main

import (
	"errors"
	"fmt"
	"os"
	"strconv"
	"strings"
	"time"
)

// figure is a value and how it is printed.
type figure struct {
	value float64
	text  string
}

func seconds(d time.Duration) figure {
	s := d.Seconds()
	digits := 1
	if s < 1 {
		digits = 2
	}
	return figure{s, strconv.FormatFloat(s, 'f', digits, 64) + " s"}
}

func milliseconds(ms float64) figure { return figure{ms, strconv.FormatFloat(ms, 'f', 2, 64) + " ms"} }

func megabytes(bytes int64) figure {
	return figure{float64(bytes), grouped(int((bytes+500_000)/1_000_000)) + " MB"}
}

func kilobytes(bytes float64) figure {
	return figure{bytes, strconv.FormatFloat(bytes/1000, 'f', 1, 64) + " kB"}
}

func count(n int) figure     { return figure{float64(n), grouped(n)} }
func ratio(r float64) figure { return figure{r, strconv.FormatFloat(r, 'f', 2, 64)} }

// grouped writes a whole number with a comma at each thousand.
func grouped(n int) string {
	text := strconv.Itoa(n)
	for at := len(text) - 3; at > 0; at -= 3 {
		text = text[:at] + "," + text[at:]
	}
	return text
}

// column is what was measured of one chart.
type column struct {
	rows    int
	figures map[string]figure
}

// lines are the figures in the order of the table.
var lines = []string{"full build", "its memory at most", "its files", "their bytes", "build over plain loop", "check", "compare one changed row",
	"one row edited: rebuild", "files it writes", "capspan identify, the first time", "capspan identify, again",
	"bytes of an identification", "of them the first file", "files it fetches beside that", "its time in V8"}

// table is the whole of it in Markdown; a figure that was not taken has a dash.
func table(all []column, machine string) string {
	var b strings.Builder
	b.WriteString("| rows |")
	for _, c := range all {
		b.WriteString(" " + grouped(c.rows) + " |")
	}
	b.WriteString("\n|---|" + strings.Repeat("---:|", len(all)) + "\n")
	for _, name := range lines {
		row := "| " + name + " |"
		taken := false
		for _, c := range all {
			text := "–"
			if f, there := c.figures[name]; there {
				text, taken = f.text, true
			}
			row += " " + text + " |"
		}
		if taken {
			b.WriteString(row + "\n")
		}
	}
	fmt.Fprintf(&b, "\nMeasured on %s, on %s.\n", time.Now().Format(time.DateOnly), machine)
	return b.String()
}

// The table stands between these lines.
const (
	target = "DEVELOPERS.md"
	begin  = "<!-- begin: go run ./build/growth -write -->\n"
	end    = "<!-- end -->\n"
)

// between puts a text between the two lines.
func between(page, text string) (string, error) {
	before, rest, found := strings.Cut(page, begin)
	_, after, closed := strings.Cut(rest, end)
	if !found || !closed {
		return "", errors.New(target + " has no place for the table: " + strings.TrimSpace(begin) + " and " + strings.TrimSpace(end))
	}
	return before + begin + text + end + after, nil
}

// place writes table and picture.
func place(text string, all []column) error {
	page, err := os.ReadFile(target)
	if err != nil {
		return err
	}
	written, err := between(string(page), text)
	if err != nil {
		return err
	}
	drawing, err := plot(all)
	if err != nil {
		return err
	}
	if err := os.WriteFile(picture, []byte(drawing), 0o644); err != nil {
		return err
	}
	return os.WriteFile(target, []byte(written), 0o644)
}
