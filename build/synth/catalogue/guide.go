package catalogue

import (
	"fmt"
	"io/fs"
	"regexp"
	"strings"
)

var (
	namedRow = regexp.MustCompile(`\{row ([^}]*)\}`)
	asked    = regexp.MustCompile(`^:: (answer|table|apart) `)
	drawn    = regexp.MustCompile(`^:{3,} figure joint `)
	closed   = regexp.MustCompile(`^:{3,}$`)
)

// Guide is a folder of the guide without what it says of single rows, which no other chart
// has: names of rows stay as words, and what asks the chart is left out. The keeper's
// details say that the chart is invented.
func Guide(guide fs.FS) (Files, error) {
	files := Files{}
	err := fs.WalkDir(guide, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || !strings.HasSuffix(name, ".md") {
			return err
		}
		text, err := fs.ReadFile(guide, name)
		files[name] = []byte(withoutRows(string(text)))
		return err
	})
	if err != nil {
		return nil, fmt.Errorf("copy the guide: %w", err)
	}
	files["site.yaml"] = []byte("demo: true\nname: An invented catalogue, to measure with\n")
	return files, nil
}

func withoutRows(text string) string {
	var out []string
	inside := false
	for line := range strings.SplitSeq(text, "\n") {
		switch {
		case inside:
			inside = !closed.MatchString(line)
		case drawn.MatchString(line):
			inside = true
		case !asked.MatchString(line):
			out = append(out, namedRow.ReplaceAllString(line, "$1"))
		}
	}
	return strings.Join(out, "\n")
}
