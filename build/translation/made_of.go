package translation

import (
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
)

// madeOfName is the file of a language that says what its pages and scripts were made of:
// for each the sums of the English parts, in order.
const madeOfName = "made-of.yaml"

const madeOfHead = `# Written by capspan translate %s --settle. Of every English page and script this folder translates: the sum of
# each part it was made of, in order.
`

// sums of parts: enough hex digits of the SHA-256 that two parts of one file do not share them.
func sums(parts []part) []string {
	list := make([]string, len(parts))
	for i, p := range parts {
		sum := sha256.Sum256([]byte(p.text))
		list[i] = hex.EncodeToString(sum[:4])
	}
	return list
}

// readMadeOf reads the sums of each file. A file that is not there knows nothing.
func readMadeOf(fsys fs.FS, language string) (map[string][]string, diag.List) {
	name := language + "/" + madeOfName
	source, err := read(fsys, name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if err != nil {
		return nil, diag.List{unreadable("content/"+name, err)}
	}
	var root map[string]yaml.Node
	if err := yaml.Unmarshal(source, &root); err != nil {
		p := broken("content/"+name, err)
		p.Hints = []string{fmt.Sprintf("the file is written by capspan translate %s --settle", language)}
		return nil, diag.List{p}
	}
	made := map[string][]string{}
	for file, n := range root {
		made[file] = strings.Fields(n.Value)
	}
	return made, nil
}

// writtenMadeOf is the file, sorted, one line for each file.
func writtenMadeOf(language string, made map[string][]string) []byte {
	var b strings.Builder
	fmt.Fprintf(&b, madeOfHead, language)
	for _, name := range slices.Sorted(maps.Keys(made)) {
		fmt.Fprintf(&b, "%s: %s\n", name, strings.Join(made[name], " "))
	}
	return []byte(b.String())
}
