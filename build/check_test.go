package build

import (
	"bytes"
	"io/fs"
	"strings"
	"testing"
	"testing/fstest"

	"capspan/build/diag"
)

// edited is a folder in memory with some of its files replaced.
func edited(t *testing.T, folder fs.FS, files map[string]string) fs.FS {
	t.Helper()
	out := fstest.MapFS{}
	err := fs.WalkDir(folder, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		text, err := fs.ReadFile(folder, name)
		out[name] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range files {
		out[name] = &fstest.MapFile{Data: []byte(text)}
	}
	return out
}

func fileOf(t *testing.T, folder fs.FS, name string) string {
	t.Helper()
	text, err := fs.ReadFile(folder, name)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

const pageHead = "---\ntitle: Tried\nabout: Tried.\n---\n"

// Of a large chart, check makes a page of each shape of row; it finds what making every
// page of the site finds, and tells it in the same words.
func TestCheckOfALargeChartFindsWhatABuildFinds(t *testing.T) {
	src := invented(t, 200)
	conversion := fileOf(t, src.Tables, "joints-conversion.yaml")
	id := func(after string) string {
		_, rest, _ := strings.Cut(after, "  - id: ")
		name, _, _ := strings.Cut(rest, "\n")
		return name
	}
	last := id(conversion[strings.LastIndex(conversion, "  - id: "):])
	links := pageHead + "[there](/joint/" + last + "/) [paper](/joint/" + last + "/paper/) [none](/joint/none/) [place](/joint/" + last + "/#no-such-place)\n" +
		"[near](/chart/" + last + "/) [csv](/data/joints-metric.csv) [no csv](/data/none.csv) [shaft](/driveline/shaft/)\n"
	guide := func(name, text string) Sources {
		changed := src
		changed.Content = edited(t, src.Content, map[string]string{name: text})
		return changed
	}
	table := func(name, from, to string) Sources {
		changed := src
		changed.Tables = edited(t, src.Tables, map[string]string{name: strings.Replace(fileOf(t, src.Tables, name), from, to, 1)})
		return changed
	}
	frame := src
	frame.Templates = edited(t, src.Templates, map[string]string{"paper.html": fileOf(t, src.Templates, "paper.html") + `{{index .Body.Row 7}}`})
	script := src
	script.Static = edited(t, src.Static, map[string]string{"matcher/index.ts": "export const = 1"})
	for name, tt := range map[string]struct {
		src  Sources
		want []string
	}{
		"nothing":                            {src, nil},
		"links":                              {guide("measure/tried.md", links), []string{"broken-link", "broken-fragment"}},
		"a place made by scripts":            {guide("measure/tried.md", pageHead+"[a](/driveline/shaft/#none) [b](/about/method/#none)\n"), []string{"broken-fragment"}},
		"an address of a row":                {guide("joint/"+last+".md", pageHead), []string{"address-taken"}},
		"a page that is missing":             {table("joints-metric.yaml", "method: cap}", "method: none}"), []string{"broken-link"}},
		"a row that is broken":               {table("joints-wing.yaml", "basis: ", "bases: "), []string{"unknown-key", "missing-basis"}},
		"a frame that fails for some":        {frame, []string{"bad-template"}},
		"a script that is not the program's": {script, []string{"bundle"}},
	} {
		t.Run(name, func(t *testing.T) {
			got := checkLarge(tt.src)
			_, built := Site(tt.src, Options{})
			if name == "a frame that fails for some" { // it fails on every sheet, and is told of some
				built = onlyOf(built, got)
			}
			if text, want := printed(t, got), printed(t, built); text != want {
				t.Errorf("check tells\n%s\na build\n%s", text, want)
			}
			for _, rule := range tt.want {
				if !strings.Contains(printed(t, got), "["+rule+"]") {
					t.Errorf("no problem of rule %q in\n%s", rule, printed(t, got))
				}
			}
			if tt.want == nil && len(got) > 0 {
				t.Error(printed(t, got))
			}
		})
	}
}

// onlyOf are the problems of a list at the places of another.
func onlyOf(list, places diag.List) diag.List {
	var out diag.List
	for _, p := range list {
		for _, q := range places {
			if p.Pos == q.Pos {
				out.Add(p)
				break
			}
		}
	}
	return out
}

func printed(t *testing.T, list diag.List) string {
	t.Helper()
	var b bytes.Buffer
	if err := list.Print(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// A chart of some thousand rows is a large one; the shipped chart is not.
func TestLarge(t *testing.T) {
	if large(Embedded().Tables) || !large(invented(t, 2400).Tables) {
		t.Error("the shipped chart is large, or one of 2,400 rows is not")
	}
	if problems := Check(invented(t, 2400)); len(problems) > 0 {
		t.Error(printed(t, problems))
	}
}
