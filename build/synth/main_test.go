package main

import (
	"io"
	"path/filepath"
	"testing"

	"capspan/build"
)

// What is written is a whole working folder, and nothing in it is a problem.
func TestCommandWritesAFolder(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "made")
	args := []string{"-rows", "200", "-makers", "3", "-out", dir}
	if err := command(args, io.Discard); err != nil {
		t.Fatal(err)
	}
	for _, p := range build.Check(build.Folder(dir)) {
		t.Error(p)
	}
	if err := command(args, io.Discard); err == nil {
		t.Error("a folder that is there is written over")
	}
	if err := command([]string{"-rows", "5"}, io.Discard); err == nil {
		t.Error("no folder is named and something is written")
	}
}
