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
var licenceFile = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|patents)([.-].*)?$`)

// licences is the text that goes with the program: our own by name, and those of everything
// that is compiled into it, as it asks for.
func (r *release) licences(ctx context.Context, t target) ([]byte, error) {
	said, err := output(ctx, r.root, t.env(), "go", "list", "-deps",
		"-f", `{{with .Module}}{{if not .Main}}{{.Path}} {{.Version}}{{"\t"}}{{.Dir}}{{end}}{{end}}`, "./cmd/capspan")
	if err != nil {
		return nil, err
	}
	goroot, err := output(ctx, r.root, t.env(), "go", "env", "GOROOT", "GOVERSION")
	if err != nil {
		return nil, err
	}
	root, version, _ := strings.Cut(strings.TrimSpace(string(goroot)), "\n")
	modules := append(strings.Split(strings.TrimSpace(string(said)), "\n"), "The Go standard library, "+version+"\t"+root)
	slices.Sort(modules)
	var text bytes.Buffer
	text.WriteString(ours)
	for _, line := range slices.Compact(modules) {
		name, dir, found := strings.Cut(line, "\t")
		if !found {
			continue // a package of our own or of the standard library
		}
		entries, err := os.ReadDir(dir)
		if err != nil {
			return nil, err
		}
		has := false
		for _, entry := range entries {
			if !entry.Type().IsRegular() || !licenceFile.MatchString(entry.Name()) {
				continue
			}
			content, err := os.ReadFile(filepath.Join(dir, entry.Name()))
			if err != nil {
				return nil, err
			}
			fmt.Fprintf(&text, "\n%s\n%s, %s\n\n%s\n", strings.Repeat("=", 72), name, entry.Name(), bytes.TrimSpace(content))
			has = true
		}
		if !has {
			return nil, fmt.Errorf("%s: no licence is in %s", name, dir)
		}
	}
	return text.Bytes(), nil
}
