package content

import (
	"bytes"
	"sort"
	"unicode/utf8"

	"capspan/build/diag"
)

// document is a file on its way to a page: it turns byte offsets into places and
// gathers the problems.
type document struct {
	file, slug string
	source     []byte
	lines      []int // offset at which each line begins
	problems   diag.List
}

func newDocument(file, slug string, source []byte) *document {
	d := &document{file: file, slug: slug, source: source, lines: []int{0}}
	for i, b := range source {
		if b == '\n' {
			d.lines = append(d.lines, i+1)
		}
	}
	return d
}

// place turns an offset into a position; the column counts characters.
func (d *document) place(offset int) diag.Pos {
	offset = min(max(offset, 0), len(d.source))
	line := sort.SearchInts(d.lines, offset+1)
	return diag.Pos{File: d.file, Line: line, Col: utf8.RuneCount(d.source[d.lines[line-1]:offset]) + 1}
}

// problem adds a fact about the text at the offset.
func (d *document) problem(offset int, rule, fact string, hints ...string) {
	d.problemAt(d.place(offset), rule, fact, hints...)
}

func (d *document) problemAt(pos diag.Pos, rule, fact string, hints ...string) {
	d.problems.Add(diag.Problem{Pos: pos, Path: d.slug, Fact: fact, Rule: rule, Hints: hints})
}

// lineAt is the line that begins at the offset, without its end.
func (d *document) lineAt(offset int) []byte {
	line, _, _ := bytes.Cut(d.source[offset:], []byte("\n"))
	return bytes.TrimSuffix(line, []byte("\r"))
}
