package main

import (
	"errors"
	"os"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"capspan/build"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"capspan": main})
}

// TestStories runs the program as people do: one script for each verb. Beside the
// usual commands of testscript there are
//
//	exits STATUS PROGRAM ARGS   run it and want that exit status
//	shipped DIR                 put the shipped tables, pages, scripts and frames there
//	replace FILE OLD NEW        once, and it must be there
func TestStories(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "shipped": shipped, "replace": replace,
		},
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
	})
}

func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits STATUS PROGRAM ARGS")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	err = ts.Exec(args[1], args[2:]...)
	if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
		got = exit.ExitCode()
	} else {
		ts.Check(err)
	}
	if got != want {
		ts.Fatalf("exit status %d, want %d", got, want)
	}
}

func shipped(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: shipped DIR")
	}
	dir, src := ts.MkAbs(args[0]), build.Embedded()
	ts.Check(os.CopyFS(dir+"/tables", src.Tables))
	ts.Check(os.CopyFS(dir+"/content", src.Content))
	ts.Check(os.CopyFS(dir+"/static", src.Static))
	ts.Check(os.CopyFS(dir+"/templates", src.Templates))
}

func replace(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: replace FILE OLD NEW")
	}
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%s does not hold %q", args[0], args[1])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.Replace(text, args[1], args[2], 1)), 0o644))
}
