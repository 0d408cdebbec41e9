package main

import (
	"archive/zip"
	"bytes"
	"context"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"capspan/build"
)

// largestArchive is far more than a chart at its limits.
const largestArchive = 256 << 20

// baseTables returns the tables of BASE: a folder when there is one of that name that
// holds tables/, else a revision of the repository that dir is in.
func baseTables(ctx context.Context, dir, base string) (fs.FS, error) {
	if info, err := os.Stat(base); err == nil && info.IsDir() {
		if !holdsTables(base) {
			return nil, misuse("the folder %q holds no folder named tables\n    hint: name the folder above it", base)
		}
		return build.Folder(base).Tables, nil
	}
	return revisionTables(ctx, dir, base)
}

// revisionTables reads the tables of a revision out of git's own store, as an archive in
// memory: neither the work tree nor the index is touched.
func revisionTables(ctx context.Context, dir, base string) (fs.FS, error) {
	if dir == "" {
		dir = "."
	}
	commit, err := git(ctx, dir, "rev-parse", "--verify", "--quiet", "--end-of-options", base+"^{commit}")
	if err != nil {
		return nil, misuse("%q is neither a folder nor a revision of git here\n    hint: name a folder with tables/ in it, or a branch, tag or commit", base)
	}
	prefix, err := git(ctx, dir, "rev-parse", "--show-prefix")
	if err != nil {
		return nil, err
	}
	tree := strings.TrimSpace(string(commit)) + ":" + strings.TrimRight(string(prefix), "\r\n") + "tables"
	if kind, err := git(ctx, dir, "cat-file", "-t", tree); err != nil || strings.TrimSpace(string(kind)) != "tree" {
		return nil, misuse("the revision %q holds no folder named tables here", base)
	}
	top, err := git(ctx, dir, "rev-parse", "--show-toplevel") // below it, archive would keep to its own folder
	if err != nil {
		return nil, err
	}
	archive, err := git(ctx, strings.TrimRight(string(top), "\r\n"), "archive", "--format=zip", "-0", tree) // unpacked at once, so nothing is packed
	if err != nil {
		return nil, err
	}
	files, err := zip.NewReader(bytes.NewReader(archive), int64(len(archive)))
	if err != nil {
		return nil, fmt.Errorf("read the revision %q: %w", base, err)
	}
	return files, nil
}

// git runs a command that only reads.
func git(ctx context.Context, dir string, args ...string) ([]byte, error) {
	cmd := exec.CommandContext(ctx, "git", args...)
	cmd.Dir = filepath.Clean(dir)
	cmd.Env = append(os.Environ(), "GIT_OPTIONAL_LOCKS=0", "LC_ALL=C")
	var out, wrong bytes.Buffer
	cmd.Stdout, cmd.Stderr = &limited{to: &out, left: largestArchive}, &wrong
	err := cmd.Run()
	if errors.Is(err, exec.ErrNotFound) {
		return nil, misuse("git is not installed here\n    hint: compare with a folder, or install git")
	}
	if err != nil {
		return nil, fmt.Errorf("git %s: %w: %s", args[0], err, strings.TrimSpace(wrong.String()))
	}
	return out.Bytes(), nil
}

// limited refuses more than it may hold.
type limited struct {
	to   *bytes.Buffer
	left int
}

func (l *limited) Write(p []byte) (int, error) {
	if len(p) > l.left {
		return 0, errors.New("the archive is larger than a chart can be")
	}
	l.left -= len(p)
	return l.to.Write(p)
}
