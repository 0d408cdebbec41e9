package build

import (
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"pgregory.net/rapid"

	"capspan/tables"
	catalog "capspan/templates/words"
)

// editsTried is how many series of edits are tried: each is two edits, and an edit two builds
// of 2,100 rows. So a failure is not made smaller for long either.
var editsTried = map[string]string{"rapid.checks": "4", "rapid.shrinktime": "20s"}

// A build with a memory has the bytes of one without, whatever was edited in between.
func TestAfterAnyEdits(t *testing.T) {
	for name, value := range editsTried {
		before := flag.Lookup(name).Value.String()
		defer flag.Set(name, before)
		if err := flag.Set(name, value); err != nil {
			t.Fatal(err)
		}
	}
	src := manySources(t)
	primed := mustBuilt(t).memory
	if len(primed.pages[catalog.English].pages) < manyRowsMade/6 {
		t.Fatalf("%d pages are remembered", len(primed.pages[catalog.English].pages))
	}
	compared := 0
	rapid.Check(t, func(t *rapid.T) {
		e := newEditing(src)
		memory := primed.copy()
		for _, of := range [][]string{{"figure", "hold", "new row", "row gone"}, slices.Sorted(maps.Keys(edits))} {
			name := rapid.SampledFrom(of).Draw(t, "edit")
			edits[name](e, t)
			opt := Options{Language: catalog.English, Memory: memory}
			got, problems := Site(e.sources(), opt)
			opt.Memory = primed.withoutRows()
			want, others := Site(e.sources(), opt)
			if problems.Blocked() != others.Blocked() {
				t.Fatalf("%s: %v\nwithout a memory: %v", name, problems, others)
			}
			if !problems.Blocked() {
				compared++
			} else {
				e = newEditing(src) // whoever made the mistake takes it back
			}
			have := contents(got)
			for _, f := range want.Files {
				if !bytes.Equal(have[f.Path], f.Bytes) {
					t.Errorf("%s: %s is not as a build without a memory makes it", name, f.Path)
				}
			}
			if len(got.Files) != len(want.Files) {
				t.Errorf("%s: %d files, without a memory %d", name, len(got.Files), len(want.Files))
			}
		}
	})
	if compared < 4 {
		t.Errorf("only %d of the edited catalogues can be built", compared)
	}
}

// copy is another memory that knows the same. What it knows is never changed, only replaced.
func (m *Memory) copy() *Memory {
	out := NewMemory()
	maps.Copy(out.answers, m.answers)
	maps.Copy(out.scripts, m.scripts)
	maps.Copy(out.pictures, m.pictures)
	maps.Copy(out.pages, m.pages)
	maps.Copy(out.worked, m.worked)
	maps.Copy(out.made, m.made)
	out.again = m.again
	return out
}

// withoutRows is another memory that knows nothing of rows and their pages.
func (m *Memory) withoutRows() *Memory {
	out := m.copy()
	out.pages, out.made, out.again = map[string]pageMemory{}, map[string]map[string]any{}, nil
	return out
}

// The same of a site in two languages, each with names of its own length in its lists: a row
// gets another name. The rows stand beside the shipped ones, which the guide names, and far
// from them.
func TestAgainInTwoLanguages(t *testing.T) {
	made, err := makeRows(6 * manyRowsMade)
	if err != nil {
		t.Fatal(err)
	}
	src, both := Embedded(), fstest.MapFS{}
	for _, name := range tableNames(t, src.Tables) {
		text, err := fs.ReadFile(src.Tables, name)
		if err != nil {
			t.Fatal(err)
		}
		both[name] = &fstest.MapFile{Data: text}
	}
	const file = "made-metric.yaml"
	text := twinsOf.ReplaceAllString(string(made["joints-metric.yaml"]), "")
	text = strings.Replace(capIs.ReplaceAllString(text, "${1}4$2"), "table: joints-metric", "table: made-metric", 1)
	rows := strings.Split(text, rowStart)
	both[file] = &fstest.MapFile{Data: []byte(strings.Join(rows[:largeRows+100], rowStart) + "\n")}
	both["sources.yaml"] = &fstest.MapFile{Data: made["sources.yaml"]}
	src.Tables = both
	memory := NewMemory()
	if out, problems := Site(src, Options{Memory: memory}); problems.Blocked() || len(out.Languages) < 2 {
		t.Fatal(out.Languages, problems)
	}
	rows[7] = strings.TrimRight(alsoOf.ReplaceAllString(rows[7], ""), "\n") + "\n    also: [invented-and-edited]\n"
	both = maps.Clone(both)
	both[file] = &fstest.MapFile{Data: []byte(strings.Join(rows[:largeRows+100], rowStart) + "\n")}
	src.Tables = both
	without := memory.withoutRows()
	got, problems := Site(src, Options{Memory: memory})
	want, others := Site(src, Options{Memory: without})
	if problems.Blocked() || others.Blocked() {
		t.Fatal(problems, others)
	}
	have := contents(got)
	for _, f := range want.Files {
		if !bytes.Equal(have[f.Path], f.Bytes) {
			t.Errorf("%s is not as a build without a memory makes it", f.Path)
		}
	}
	if len(got.Files) != len(want.Files) {
		t.Errorf("%d files, without a memory %d", len(got.Files), len(want.Files))
	}
}

// Pages that show what they showed are rendered in another frame all the same.
func TestFramesAgain(t *testing.T) {
	src := manySources(t)
	text, err := fs.ReadFile(src.Templates, "text.html")
	if err != nil {
		t.Fatal(err)
	}
	src.Templates = layers{fstest.MapFS{"text.html": {Data: bytes.Replace(text, []byte("{{.Body.HTML}}"), []byte("{{.Body.HTML}}<hr>"), 1)}}, src.Templates}
	memory := mustBuilt(t).memory
	have := contents(buildOf(t, src, Options{Memory: memory.copy()}))
	for _, f := range buildOf(t, src, Options{Memory: memory.withoutRows()}).Files {
		if !bytes.Equal(have[f.Path], f.Bytes) {
			t.Errorf("%s is not as a build without a memory makes it", f.Path)
		}
	}
	if !bytes.Contains(have["measure/cap/index.html"], []byte("<hr>")) {
		t.Error("the frame is not another")
	}
}

// capIs is a cap of some ten millimetres.
var capIs = regexp.MustCompile(`(\n    cap: *\{is: )([0-9]{2}\.)`)

// editing is the sources while they are edited.
type editing struct {
	src                        Sources
	tables, content, templates fstest.MapFS
	made                       int
}

func newEditing(src Sources) *editing {
	e := &editing{src: src, tables: maps.Clone(src.Tables.(fstest.MapFS)), content: fstest.MapFS{}, templates: fstest.MapFS{}}
	return e
}

func (e *editing) sources() Sources {
	src := e.src
	src.Tables, src.Content, src.Templates = e.tables, layers{e.content, src.Content}, layers{e.templates, src.Templates}
	return src
}

// change writes over one file of a folder.
func change(folder fs.FS, into fstest.MapFS, t *rapid.T, name string, how func(string) string) {
	text, err := fs.ReadFile(folder, name)
	if err != nil {
		t.Fatal(err)
	}
	into[name] = &fstest.MapFile{Data: []byte(how(string(text)))}
}

const rowStart = "\n  - id: "

// row changes one row of a table of joints; how is given its text from the id on.
func (e *editing) row(t *rapid.T, how func(string) string) {
	var joints []string
	for name := range e.tables {
		if strings.HasPrefix(name, "joints-") {
			joints = append(joints, name)
		}
	}
	slices.Sort(joints)
	name := rapid.SampledFrom(joints).Draw(t, "table")
	change(e.tables, e.tables, t, name, func(text string) string {
		rows := strings.Split(text, rowStart)
		n := rapid.IntRange(1, len(rows)-1).Draw(t, "row")
		rows[n] = how(rows[n])
		rows = slices.DeleteFunc(rows, func(row string) bool { return row == "" })
		return strings.Join(rows, rowStart)
	})
}

var (
	lengthOf = regexp.MustCompile(`(cap|across):( *)\{is: ([0-9]+)(\.?[0-9]*)`)
	heldBy   = regexp.MustCompile(`hold:( *)\{is: [a-z-]+`)
	noteOf   = regexp.MustCompile(`\n    note: .*`)
	twinsOf  = regexp.MustCompile(`\n    twins: \[[^\]]*\]`)
	rowID    = regexp.MustCompile(`^"?([^"\s]+)`)
	listItem = `(\[|, )"?%s"?(, |\])`
)

// edits are what somebody may do, by name.
var edits = map[string]func(*editing, *rapid.T){
	"figure": func(e *editing, t *rapid.T) {
		by := rapid.IntRange(1, 3).Draw(t, "digit")
		e.row(t, func(row string) string { // longer by less than a caliper shows, or twins would be none
			return lengthOf.ReplaceAllStringFunc(row, func(found string) string {
				if !strings.Contains(found, ".") {
					found += ".0"
				}
				return fmt.Sprintf("%s%d", found, by)
			})
		})
	},
	"new row": func(e *editing, t *rapid.T) {
		e.made++
		id := fmt.Sprintf("new-%d", e.made)
		e.row(t, func(row string) string {
			copied := twinsOf.ReplaceAllString(rowID.ReplaceAllString(row, id), "")
			return row + rowStart + copied
		})
	},
	"row gone": func(e *editing, t *rapid.T) {
		id := ""
		e.row(t, func(row string) string { id = rowID.FindStringSubmatch(row)[1]; return "" })
		item := regexp.MustCompile(fmt.Sprintf(listItem, regexp.QuoteMeta(id)))
		for name := range e.tables {
			change(e.tables, e.tables, t, name, func(text string) string {
				return item.ReplaceAllStringFunc(text, func(found string) string {
					switch {
					case strings.HasPrefix(found, "[") && strings.HasSuffix(found, "]"):
						return "[]"
					case strings.HasPrefix(found, "["):
						return "["
					case strings.HasSuffix(found, "]"):
						return "]"
					}
					return ", "
				})
			})
		}
	},
	"note": func(e *editing, t *rapid.T) {
		e.row(t, func(row string) string {
			return strings.TrimRight(noteOf.ReplaceAllString(row, ""), "\n") + "\n    note: \"invented, and edited\"\n"
		})
	},
	"hold": func(e *editing, t *rapid.T) {
		hold := rapid.SampledFrom([]tables.Hold{tables.OutsideClip, tables.InsideClip, tables.Plate, tables.Injected, tables.Staked, tables.UnknownHold}).Draw(t, "hold")
		e.row(t, func(row string) string { return heldBy.ReplaceAllString(row, "hold:$1{is: "+string(hold)) })
	},
	"twins gone": func(e *editing, t *rapid.T) {
		e.row(t, func(row string) string { return twinsOf.ReplaceAllString(row, "") })
	},
	"guide": func(e *editing, t *rapid.T) {
		change(e.sources().Content, e.content, t, "measure/cap.md", func(text string) string { return text + "\nOne more sentence.\n" })
	},
	"words": func(e *editing, t *rapid.T) {
		change(e.sources().Templates, e.templates, t, "words/en/joint.yaml", func(text string) string {
			return strings.Replace(text, "enquiry: \"Write", "enquiry: \"Do write", 1)
		})
	},
	"template": func(e *editing, t *rapid.T) {
		change(e.sources().Templates, e.templates, t, "paper.html", func(text string) string { return text + "<hr>\n" })
	},
	"source": func(e *editing, t *rapid.T) {
		change(e.tables, e.tables, t, "sources.yaml", func(text string) string {
			return strings.Replace(text, "    title: ", "    title: Edited ", 1)
		})
	},
	"head": func(e *editing, t *rapid.T) {
		change(e.tables, e.tables, t, "joints-metric.yaml", func(text string) string { return strings.Replace(text, `label: "Cap"`, `label: "Cup"`, 1) })
	},
}
