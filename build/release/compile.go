package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"time"
)

// archives builds, looks at, packs and tries the program for each target.
func (r *release) archives(ctx context.Context, chart string, date time.Time) error {
	if len(r.targets) == 0 {
		return nil
	}
	readme, err := os.ReadFile(filepath.Join(r.root, "README.md"))
	if err != nil {
		return err
	}
	for _, t := range r.targets {
		start := time.Now()
		program, err := compile(ctx, r.root, r.version, t, "")
		if err != nil {
			return err
		}
		if err := checkHeader(program, t); err != nil {
			return fmt.Errorf("%s: %w", t, err)
		}
		licences, err := r.licences(ctx, t)
		if err != nil {
			return err
		}
		name := fmt.Sprintf("capspan-%s-%s-%s", r.version, t.system, t.machine)
		files := []file{{"README.md", readme, false}, {"LICENCES.txt", licences, false}, {t.program(), program, true}}
		packed, suffix, err := pack(t, name, files, date)
		if err != nil {
			return err
		}
		if err := r.write(name+suffix, packed); err != nil {
			return err
		}
		how, err := try(ctx, t, filepath.Join(r.out, name+suffix), name, fmt.Sprintf("capspan %s, chart %s\n", r.version, chart))
		if err != nil {
			return fmt.Errorf("%s%s: %w", name, suffix, err)
		}
		r.say("%s%s: %.1f MB, built and packed in %.0f s; %s", name, suffix, float64(len(packed))/1e6, time.Since(start).Seconds(), how)
		if r.again && t == here() {
			if err := r.compare(ctx, t, program); err != nil {
				return err
			}
		}
	}
	return nil
}

func here() target { return target{runtime.GOOS, runtime.GOARCH} }

// program is the name of the program on that system.
func (t target) program() string {
	if t.system == "windows" {
		return "capspan.exe"
	}
	return "capspan"
}

// compile builds the program for a target. Nothing of this machine goes in: no path, no
// time, no state of the repository, no C. With cache "" Go uses its own.
func compile(ctx context.Context, root, version string, t target, cache string) ([]byte, error) {
	folder, err := os.MkdirTemp("", "capspan-release-")
	if err != nil {
		return nil, err
	}
	defer os.RemoveAll(folder)
	program := filepath.Join(folder, t.program())
	env := t.env()
	if cache != "" {
		env = append(env, "GOCACHE="+cache)
	}
	if _, err := output(ctx, root, env, "go", "build", "-trimpath", "-buildvcs=false",
		"-ldflags", "-s -w -buildid= -X main.version="+version, "-o", program, "./cmd/capspan"); err != nil {
		return nil, err
	}
	return os.ReadFile(program)
}

// env is what go is told of a target; whatever the caller has set besides does not count.
func (t target) env() []string {
	return []string{"GOOS=" + t.system, "GOARCH=" + t.machine, "CGO_ENABLED=0", "GOFLAGS=-mod=readonly", "GOWORK=off",
		"GOEXPERIMENT=", "GOAMD64=v1", "GOARM64=v8.0"}
}

// compare builds the program once more, in a copy of the sources elsewhere and with an
// empty cache, and wants the same bytes.
func (r *release) compare(ctx context.Context, t target, program []byte) error {
	start := time.Now()
	folder, err := os.MkdirTemp("", "capspan-again-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(folder)
	for _, part := range []string{"cmd", "content", "tables", "templates", "static", "build"} {
		if err := copyFolder(filepath.Join(folder, "src", part), filepath.Join(r.root, part)); err != nil {
			return err
		}
	}
	for _, name := range []string{"go.mod", "go.sum"} {
		content, err := os.ReadFile(filepath.Join(r.root, name))
		if err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(folder, "src", name), content, 0o644); err != nil {
			return err
		}
	}
	second, err := compile(ctx, filepath.Join(folder, "src"), r.version, t, filepath.Join(folder, "cache"))
	if err != nil {
		return err
	}
	if !bytes.Equal(program, second) {
		return fmt.Errorf("%s: built twice, and the bytes differ: %x and %x", t, sha256.Sum256(program), sha256.Sum256(second))
	}
	r.say("%s: built again in another folder with an empty cache in %.0f s, and the bytes are the same", t, time.Since(start).Seconds())
	return nil
}

// copyFolder copies a folder, but for what npm installed.
func copyFolder(to, from string) error {
	return filepath.WalkDir(from, func(path string, entry os.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.Name() == "npm" && entry.IsDir() {
			return filepath.SkipDir
		}
		rel, err := filepath.Rel(from, path)
		if err != nil {
			return err
		}
		target := filepath.Join(to, rel)
		switch {
		case entry.IsDir():
			return os.MkdirAll(target, 0o755)
		case !entry.Type().IsRegular():
			return nil
		}
		content, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		return os.WriteFile(target, content, 0o644)
	})
}
