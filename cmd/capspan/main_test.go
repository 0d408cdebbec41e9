package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path"
	"path/filepath"
	"regexp"
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
//	bracketed DIR LANG          make a language there, with the English words in brackets
func TestStories(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata",
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"exits": exits, "shipped": shipped, "replace": replace, "bracketed": bracketed,
		},
		Setup: func(env *testscript.Env) error { // a script has few variables; memory for time is not of what it tries
			env.Setenv("GOGC", os.Getenv("GOGC"))
			return nil
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

// phrase is one line of a file of words that has just been begun, plain or in forms.
var phrase = regexp.MustCompile(`\{of: "(?:one (.*) other )?(.*)", is: (?:""|\{one: "", other: ""\})\}`)

func bracketed(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 2 {
		ts.Fatalf("usage: bracketed DIR LANG")
	}
	dir, language := ts.MkAbs(args[0]), args[1]
	files, problems := build.StartLanguage(build.Folder(dir), language)
	if problems.Blocked() {
		ts.Fatalf("%v", problems)
	}
	for name, begun := range files {
		said := string(begun)
		if path.Ext(name) == ".yaml" {
			said = phrase.ReplaceAllStringFunc(said, func(line string) string {
				found := phrase.FindStringSubmatch(line)
				if found[1] != "" {
					return fmt.Sprintf(`{of: "one %s other %s", is: {one: "[%s]", other: "[%s]"}}`, found[1], found[2], found[1], found[2])
				}
				return fmt.Sprintf(`{of: "%s", is: "[%s]"}`, found[2], found[2])
			})
		} else {
			said += "\n"
		}
		file := filepath.Join(dir, "content", name)
		ts.Check(os.MkdirAll(filepath.Dir(file), 0o755))
		ts.Check(os.WriteFile(file, []byte(said), 0o644))
	}
}
