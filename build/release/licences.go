package main

import (
	"bytes"
	"context"
	"fmt"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// ours is what the README says, by the short names of SPDX.
const ours = `Capspan

The program's code is under the MIT licence (SPDX: MIT).
The chart's data and the guide's text, which are inside the program, are CC0-1.0 (SPDX: CC0-1.0).
The texts of both stand at https://spdx.org/licenses/.

The program is built with the following, each under the licence printed with it.
`

// licenceFile is how such files are called.
var licenceFile = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)([._-].*)?$`)

// licences is the text that goes with the program: our own by name, and those of everything
// that is compiled into it, as it asks for. A module has its licence at its top, and a
// package that came from elsewhere one of its own beside it.
func (r *release) licences(ctx context.Context, t target) ([]byte, error) {
	said, err := output(ctx, r.root, t.env(), "go", "list", "-deps",
		"-f", "{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}\t{{.Dir}}\t{{$.Dir}}{{end}}{{end}}", "./cmd/capspan")
	if err != nil {
		return nil, err
	}
	goroot, err := output(ctx, r.root, t.env(), "go", "env", "GOROOT", "GOVERSION")
	if err != nil {
		return nil, err
	}
	root, version, _ := strings.Cut(strings.TrimSpace(string(goroot)), "\n")
	packages := append(strings.Split(string(said), "\n"), "The Go standard library, "+version+"\t"+root+"\t"+root)
	slices.Sort(packages)
	text := bytes.NewBufferString(ours)
	taken := map[string]bool{}
	for _, line := range packages {
		part := strings.Split(line, "\t")
		if len(part) != 3 {
			continue // a package of our own or of the standard library
		}
		name, top := part[0], part[1]
		for dir := part[2]; ; dir = filepath.Dir(dir) {
			if err := addLicences(text, taken, name, top, dir); err != nil {
				return nil, err
			}
			if dir == top || len(dir) < len(top) {
				break
			}
		}
		if !taken[top] {
			return nil, fmt.Errorf("%s: no licence is in %s", name, top)
		}
	}
	return text.Bytes(), nil
}

// addLicences adds those that lie in a folder of a module, once.
func addLicences(text *bytes.Buffer, taken map[string]bool, name, top, dir string) error {
	if taken[dir] {
		return nil
	}
	entries, err := os.ReadDir(dir)
	if err != nil {
		return err
	}
	for _, entry := range entries {
		if !entry.Type().IsRegular() || !licenceFile.MatchString(entry.Name()) {
			continue
		}
		file := filepath.Join(dir, entry.Name())
		content, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		shown, err := filepath.Rel(top, file)
		if err != nil {
			return err
		}
		fmt.Fprintf(text, "\n%s\n%s, %s\n\n%s\n", strings.Repeat("=", 72), name, filepath.ToSlash(shown), bytes.TrimSpace(content))
		taken[dir] = true
	}
	return nil
}
