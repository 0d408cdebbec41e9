package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"time"

	"capspan/build"
	"capspan/build/diag"
	"capspan/tables"
)

// chart names the chart of the working folder, and the date that everything gets: that of
// SOURCE_DATE_EPOCH (reproducible-builds.org) or else the chart's.
func (r *release) chart() (string, time.Time, error) {
	set, problems := tables.Load(build.Folder(r.root).Tables)
	if problems.Blocked() {
		return "", time.Time{}, problemsOf("the chart", problems)
	}
	version := set.Version()
	if epoch := os.Getenv("SOURCE_DATE_EPOCH"); epoch != "" {
		seconds, err := strconv.ParseInt(epoch, 10, 64)
		if err != nil || seconds < 0 {
			return "", time.Time{}, fmt.Errorf("SOURCE_DATE_EPOCH is %q, and not a number of seconds", epoch)
		}
		return version.Name(), time.Unix(seconds, 0).UTC(), nil
	}
	date, err := time.Parse(time.DateOnly, version.Date)
	return version.Name(), date, err
}

func problemsOf(what string, problems diag.List) error {
	var text bytes.Buffer
	if err := problems.Print(&text); err != nil {
		return err
	}
	return fmt.Errorf("%s has problems:\n%s", what, text.String())
}

// described is the version that git tells: the tag, or how far behind one the commit is.
func (r *release) described(ctx context.Context) (string, error) {
	said, err := output(ctx, r.root, nil, "git", "describe", "--tags", "--always", "--dirty=-changed")
	if err != nil {
		return "", fmt.Errorf("%w\n    hint: without git, give -version", err)
	}
	version := strings.TrimSpace(string(said))
	if !versionForm.MatchString(version) {
		return "", fmt.Errorf("git describe says %q, which cannot name a file\n    hint: give -version", version)
	}
	return version, nil
}

// emptyFolder makes the folder, or sees that nothing is in it.
func emptyFolder(dir string) error {
	entries, err := os.ReadDir(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return os.MkdirAll(dir, 0o755)
	case err != nil:
		return err
	case len(entries) > 0:
		return fmt.Errorf("%s is not empty\n    hint: move it away, or name another folder with -out", dir)
	}
	return nil
}

// output runs a command in a folder and returns what it printed. env is put over this
// process's own.
func output(ctx context.Context, dir string, env []string, name string, args ...string) ([]byte, error) {
	command := exec.CommandContext(ctx, name, args...)
	command.Dir, command.Env = dir, append(os.Environ(), env...)
	var out, complaints bytes.Buffer
	command.Stdout, command.Stderr = &out, &complaints
	if err := command.Run(); err != nil {
		return nil, fmt.Errorf("%s %s: %w\n%s", name, strings.Join(args, " "), err, strings.TrimSpace(complaints.String()))
	}
	return out.Bytes(), nil
}

// write puts a finished file into the folder.
func (r *release) write(name string, content []byte) error {
	if err := os.WriteFile(filepath.Join(r.out, name), content, 0o644); err != nil {
		return err
	}
	r.made = append(r.made, name)
	return nil
}
