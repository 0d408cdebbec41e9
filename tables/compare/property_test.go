package compare

import (
	"bytes"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/tables"
)

func shippedFiles(t testing.TB) fstest.MapFS {
	t.Helper()
	names, err := fs.Glob(tables.FS, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	out := fstest.MapFS{}
	for _, name := range names {
		text, err := fs.ReadFile(tables.FS, name)
		if err != nil {
			t.Fatal(err)
		}
		out[name] = &fstest.MapFile{Data: text}
	}
	return out
}

// edits are what a contributor does to one line. Some change a meaning, some nothing.
var edits = []struct {
	was *regexp.Regexp
	is  string
}{
	{regexp.MustCompile(`(is: [0-9.]*)[0-8]([,}])`), "${1}9$2"},
	{regexp.MustCompile(`(is: [0-9]+\.[0-9]+)([,}])`), "${1}0$2"},
	{regexp.MustCompile(`(is: [0-9.]+-[0-9.]*)[0-8]([,}])`), "${1}9$2"}, // the upper end of a range
	{regexp.MustCompile(`basis: memory`), "basis: common-practice"},
	{regexp.MustCompile(`basis: common-practice`), "basis: memory"},
	{regexp.MustCompile(`is: outside-clip`), "is: unknown"},
	{regexp.MustCompile(`faces: over-caps`), "faces: unknown"},
	{regexp.MustCompile(`(cap: +\{is: [0-9.]+, basis: [a-z-]+)\}`), "${1}, measured: [{readings: [1.1 in], tool: tape}]}"},
	{regexp.MustCompile(`note: .*`), "note: another"},
	{regexp.MustCompile(`also: \[`), "also: [other, "},
	{regexp.MustCompile(`title: (.*)`), "title: The $1"},
	{regexp.MustCompile(`greatest: 12`), "greatest: 12.0"},
	{regexp.MustCompile(`Keep every guard`), "Keep each guard"}, // a caution
	{regexp.MustCompile(`(length, )(least: 0.2)`), "${1}range: true, $2"},
	{regexp.MustCompile(`match: inside`), "match: outside"},
	{regexp.MustCompile(`below: 1/64`), "below: 1/32"},
	{regexp.MustCompile(`\{is:`), "{ is:"},
	{regexp.MustCompile(`^$`), "# a word"},
}

// A diff is empty exactly when both charts have the same hash, and what changed can be
// told one way as well as the other.
func TestEmptyIsSameHash(t *testing.T) {
	files := shippedFiles(t)
	base := mustLoad(t, files)
	random := rand.New(rand.NewPCG(6, 1))
	changed, same := 0, 0
	for _, e := range edits {
		for range 6 {
			edited, where := edit(files, e.was, e.is, random)
			if edited == nil {
				t.Errorf("nothing fits %s", e.was)
				break
			}
			set, problems := tables.Load(edited)
			if problems.Blocked() {
				continue
			}
			there, back := Sets(base, set), Sets(set, base)
			alike := base.Version().Hash == set.Version().Hash
			if there.Empty() != alike || back.Empty() != alike {
				t.Errorf("%s: same hash %t, empty %t and %t", where, alike, there.Empty(), back.Empty())
			}
			if alike {
				same++
			} else {
				changed++
			}
			for i, c := range there.Changes {
				if i < len(back.Changes) && c.Kind == Changed && len(c.Parts) > 0 && c.Parts[0].Old != back.Changes[i].Parts[0].New {
					t.Errorf("%s: %v there, %v back", where, c.Parts[0], back.Changes[i].Parts[0])
				}
			}
		}
	}
	if changed < 20 || same < 6 {
		t.Errorf("%d edits changed something and %d nothing: too few to prove anything", changed, same)
	}
}

// edit changes one line that fits, chosen by chance; it is nil when none fits.
func edit(files fstest.MapFS, was *regexp.Regexp, is string, random *rand.Rand) (fstest.MapFS, string) {
	type place struct {
		file string
		line int
	}
	var places []place
	names, _ := fs.Glob(files, "*.yaml")
	for _, name := range names {
		for n, line := range strings.Split(string(files[name].Data), "\n") {
			if was.MatchString(line) && !strings.HasPrefix(line, "#") {
				places = append(places, place{name, n})
			}
		}
	}
	if len(places) == 0 {
		return nil, ""
	}
	at := places[random.IntN(len(places))]
	lines := strings.Split(string(files[at.file].Data), "\n")
	lines[at.line] = was.ReplaceAllString(lines[at.line], is)
	out := fstest.MapFS{}
	for name, f := range files {
		out[name] = f
	}
	out[at.file] = &fstest.MapFile{Data: []byte(strings.Join(lines, "\n"))}
	return out, fmt.Sprintf("%s:%d: %s", at.file, at.line+1, lines[at.line])
}

func TestSameChart(t *testing.T) {
	d := Sets(mustLoad(t, tables.FS), mustLoad(t, tables.FS))
	var b bytes.Buffer
	if err := d.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	if !d.Empty() || len(d.Steps) > 0 || len(d.Problems()) > 0 || !strings.Contains(b.String(), "no meaning changed") {
		t.Errorf("the chart differs from itself: %s", &b)
	}
}
