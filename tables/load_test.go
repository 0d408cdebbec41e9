package tables

import (
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
