package build

import (
	"crypto/sha256"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"os"
	"slices"
	"strings"
)

// Read returns the site that [Write] put into a folder, whole: every file is as the list
// of sums says. The open data of earlier versions, which stays in the folder, is part of
// it. Chart, base and redirects of the output are not known from a folder and are empty.
func Read(dir string) (Output, error) {
	root, err := os.OpenRoot(dir)
	if errors.Is(err, fs.ErrNotExist) {
		return Output{}, fmt.Errorf("there is no folder %q; capspan build --out %s makes it", dir, dir)
	}
	if err != nil {
		return Output{}, fmt.Errorf("open the site: %w", err)
	}
	defer root.Close()
	ours, err := readManifest(root)
	if err != nil {
		return Output{}, err
	}
	list, err := root.ReadFile(sumsName)
	if len(ours) == 0 || errors.Is(err, fs.ErrNotExist) {
		return Output{}, fmt.Errorf("%q holds no whole site of ours; capspan build --out %s makes one", dir, dir)
	}
	if err != nil {
		return Output{}, fmt.Errorf("read the site: %w", err)
	}
	sums := map[string]string{}
	for line := range strings.Lines(string(list)) {
		sum, name, found := strings.Cut(strings.TrimSuffix(line, "\n"), "  ")
		if !found || !ours[name] {
			return Output{}, damaged(dir, sumsName)
		}
		sums[name] = sum
	}
	var out Output
	for _, name := range slices.Sorted(maps.Keys(ours)) {
		sum, listed := sums[name]
		if !listed && !Stays(name) && name != sumsName {
			continue // of a build that was cut off before it could remove it
		}
		data, err := root.ReadFile(name)
		if err != nil && !errors.Is(err, fs.ErrNotExist) {
			return Output{}, fmt.Errorf("read the site: %w", err)
		}
		if err != nil || listed && sum != fmt.Sprintf("%x", sha256.Sum256(data)) {
			return Output{}, damaged(dir, name)
		}
		out.Files = append(out.Files, File{Path: name, Bytes: data, Stage: StageOf(name)})
	}
	return out, checkPaths(out.Files)
}

func damaged(dir, name string) error {
	return fmt.Errorf("%q is no whole site: %s is not as %s says (a build was cut off, or somebody changed it); build again", dir, name, sumsName)
}

// Stays reports whether a file's address was promised for ever: open data of one version.
func Stays(name string) bool { return ofVersion.MatchString(name) }

// StageOf tells the stage of a file that was written before.
func StageOf(name string) Stage {
	switch {
	case strings.HasPrefix(name, "assets/"):
		return Assets
	case name == "_headers", name == "_redirects", name == sumsName, strings.HasPrefix(name, "hosting/"):
		return Hosting
	}
	return Pages
}
