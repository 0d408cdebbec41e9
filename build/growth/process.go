package main

import (
	"bytes"
	"fmt"
	"os/exec"
	"strings"
	"time"
)

// spent is what a process took.
type spent struct {
	took time.Duration // from its start to its end
	peak int64         // bytes of memory it held at most
	out  string
}

// run runs a program to its end; one that fails is an error with what it said.
func run(name string, args ...string) (spent, error) {
	cmd := exec.Command(name, args...)
	var out, wrong bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &wrong
	start := time.Now()
	err := cmd.Run()
	s := spent{took: time.Since(start), out: out.String()}
	if err != nil {
		said := strings.TrimSpace(wrong.String() + out.String())
		return s, fmt.Errorf("%s %s: %w\n%.2000s", name, strings.Join(args, " "), err, said)
	}
	s.peak = peakOf(cmd.ProcessState)
	return s, nil
}

// best is the quickest of three: what else the machine does only adds.
func best(name string, args ...string) (spent, error) {
	var least spent
	for n := range 3 {
		s, err := run(name, args...)
		if err != nil {
			return s, err
		}
		if n == 0 || s.took < least.took {
			least = s
		}
	}
	return least, nil
}
