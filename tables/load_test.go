package tables

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/build/diag"
)

func loadFiles(files map[string]string) (*Set, diag.List) {
	fsys := fstest.MapFS{}
	for name, text := range files {
		fsys[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return Load(fsys)
}

func mustLoad(t testing.TB, files map[string]string) *Set {
	t.Helper()
	set, list := loadFiles(files)
	if len(list) > 0 {
		t.Fatal(printedAll(list))
	}
	return set
}

func printedAll(list diag.List) string {
	var lines []string
	for _, p := range list {
		lines = append(lines, p.String())
	}
	return strings.Join(lines, "\n")
}

// The stated limits are the ones that are kept.
func TestLimits(t *testing.T) {
	base := jointHead + joint("a", "strap", "30", "92", "")
	fill := func(n int) string { return base + "#" + strings.Repeat("x", n-len(base)-2) + "\n" }
	if _, list := loadFiles(map[string]string{"x.yaml": fill(1 << 20)}); len(list) > 0 {
		t.Errorf("a file of 1 MiB: %s", printedAll(list))
	}
	if _, list := loadFiles(map[string]string{"x.yaml": fill(1<<20 + 1)}); len(list) != 1 || list[0].Rule != "file-size" {
		t.Errorf("a file of 1 MiB and a byte: %s", printedAll(list))
	}
}

// A folder that is not there is a problem like any other, not a panic.
func TestLoadOfNoFolder(t *testing.T) {
	_, list := Load(os.DirFS(filepath.Join(t.TempDir(), "nowhere")))
	if len(list) != 1 || list[0].Rule != "unreadable" {
		t.Errorf("got %s", printedAll(list))
	}
}

// A file of nothing but copies of one joint is answered soon, with a bounded list.
func TestManyCopies(t *testing.T) {
	var b strings.Builder
	b.WriteString(jointHead)
	const copies = 2000
	for i := range copies {
		b.WriteString(joint(fmt.Sprintf("r%d", i), "strap", "30", "92", ""))
	}
	_, list := loadFiles(map[string]string{"x.yaml": b.String()})
	if len(list) == 0 || len(list) > copies*mostUnnamed {
		t.Errorf("%d warnings about %d copies", len(list), copies)
	}
}

// Whatever a stranger sends, Load answers with problems.
func FuzzLoad(f *testing.F) {
	for _, src := range shippedFiles(f) {
		f.Add(src)
	}
	f.Add([]byte(untidy))
	registry, conversion := shippedFiles(f)[registryFile], shippedFiles(f)["joints-conversion.yaml"]
	f.Fuzz(func(t *testing.T, src []byte) {
		set, list := Load(fstest.MapFS{
			"x.yaml":                 {Data: src},
			"joints-conversion.yaml": {Data: conversion},
			registryFile:             {Data: registry},
		})
		for row := range set.rows() {
			set.SameFigures(row)
			set.Near(row, 3)
			set.Conversions(row)
		}
		if list.Blocked() {
			return
		}
		if set.Version().Hash == "" {
			t.Error("a chart without a name")
		}
	})
}
