package build

import (
	"bytes"
	"io/fs"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
)

// rewritten is a catalogue in which a file of the tables is another one.
func rewritten(t *testing.T, src Sources, file string, how func(string) string) Sources {
	t.Helper()
	files := maps.Clone(src.Tables.(fstest.MapFS))
	text := string(files[file].Data)
	made := how(text)
	if made == text {
		t.Fatalf("%s is not changed", file)
	}
	files[file] = &fstest.MapFile{Data: []byte(made)}
	src.Tables = files
	return src
}

// titleOf is the title of a source.
var titleOf = regexp.MustCompile(`(\n    title: "?)([A-Z])`)

func tableNames(t *testing.T, folder fs.FS) []string {
	t.Helper()
	names, err := fs.Glob(folder, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	return names
}

// seriesOf is for which joints a table of fasteners has a thread.
var seriesOf = regexp.MustCompile(`(\n    series: *\{is: )1610`)

// firstIn is the id of the first row of a table.
func firstIn(src Sources, file string) string {
	return rowID.FindStringSubmatch(strings.Split(string(src.Tables.(fstest.MapFS)[file].Data), rowStart)[1])[1]
}

// withConversion is a catalogue with one more joint of unlike ends.
func withConversion(t *testing.T, src Sources) Sources {
	t.Helper()
	ends := "new-c\n    ends: [{like: " + firstIn(src, "joints-metric.yaml") + "}, {like: " + firstIn(src, "joints-inch.yaml") + "}]\n    basis: common-practice\n"
	return rewritten(t, src, "joints-conversion.yaml", func(text string) string { return strings.TrimRight(text, "\n") + rowStart + ends })
}

// longer makes of a row one that is so many millimetres longer.
func longer(t *testing.T, by float64) func(row string) string {
	return func(row string) string {
		across := acrossOf.FindStringSubmatchIndex(row)
		mm, err := strconv.ParseFloat(row[across[2]:across[3]], 64)
		if err != nil {
			t.Fatal(err)
		}
		return row[:across[2]] + strconv.FormatFloat(mm+by, 'f', 1, 64) + row[across[3]:]
	}
}

// nearTwin makes of a row one that is a tenth of a millimetre longer, and calls that a twin.
func nearTwin(t *testing.T, id string) func(row string) string {
	return func(row string) string {
		return strings.TrimRight(longer(t, 0.1)(row), "\n") + "\n    twins: [" + id + "]\n"
	}
}

// keyOfText is the key of the size of a row, given as its file has it.
func keyOfText(t *testing.T, row string) string {
	return sizeKey(manySet(t).Find(rowID.FindStringSubmatch(row)[1]))
}

// inRow changes the n-th row of a text.
func inRow(n int, how func(string) string) func(string) string {
	return func(text string) string {
		rows := strings.Split(text, rowStart)
		rows[n] = how(rows[n])
		return strings.Join(slices.DeleteFunc(rows, func(row string) bool { return row == "" }), rowStart)
	}
}

// What is told of rows one by one, in drawers, pieces and lists, is after any edit what a
// build without a memory makes of it; and so it is when the edit is taken back.
func TestRowsAgain(t *testing.T) {
	src := manySources(t)
	metric := func(how func(string) string) func(*testing.T) Sources {
		return func(t *testing.T) Sources { return rewritten(t, src, "joints-metric.yaml", how) }
	}
	bare := src // without twins, so that a figure may be any
	for _, file := range tableNames(t, src.Tables) {
		if strings.HasPrefix(file, "joints-") {
			bare = rewritten(t, bare, file, func(text string) string { return twinsOf.ReplaceAllString(text, "") + "\n" })
		}
	}
	const ofUnits = "the unit of a table"
	for name, edit := range map[string]func(*testing.T) Sources{
		ofUnits: func(t *testing.T) Sources {
			return rewritten(t, bare, "joints-metric.yaml", func(text string) string { return strings.ReplaceAll(text, "unit: mm", "unit: in") })
		},
		"a figure":              func(t *testing.T) Sources { made, _ := edited(t, src, "joints-metric.yaml"); return made },
		"another name":          func(t *testing.T) Sources { return withName(t, src, "joints-metric.yaml") },
		"a row more":            func(t *testing.T) Sources { return withRow(t, src, "joints-metric.yaml", nil) },
		"a row of another size": func(t *testing.T) Sources { return withRow(t, src, "joints-metric.yaml", newGroup(t)) },
		"a note": metric(inRow(40, func(row string) string {
			return strings.TrimRight(noteOf.ReplaceAllString(row, ""), "\n") + "\n    note: \"invented, and edited\"\n"
		})),
		"two rows of a size change places": metric(func(text string) string {
			rows := strings.Split(text, rowStart)
			for n := range rows {
				if n > 0 && keyOfText(t, rows[n]) == keyOfText(t, rows[n+1]) {
					rows[n], rows[n+1] = rows[n+1], rows[n]
					return strings.Join(rows, rowStart)
				}
			}
			return text
		}),
		"a line between rows":     metric(func(text string) string { return strings.Replace(text, rowStart, "\n  # another line"+rowStart, 20) }),
		"a line at the end":       metric(func(text string) string { return text + "# another line\n" }),
		"the head":                metric(func(text string) string { return strings.Replace(text, `label: "Cap"`, `label: "Cup"`, 1) }),
		"a conversion joint more": func(t *testing.T) Sources { return withConversion(t, src) },
		"a twin that only it calls so": func(t *testing.T) Sources {
			return withRow(t, src, "joints-metric.yaml", nearTwin(t, firstIn(src, "joints-metric.yaml")))
		},
		"no twins of conversion joints": func(t *testing.T) Sources {
			return rewritten(t, src, "joints-conversion.yaml", func(text string) string { return twinsOf.ReplaceAllString(text, "") })
		},
		"a thread of a row": func(t *testing.T) Sources {
			return rewritten(t, src, "fasteners.yaml", func(text string) string {
				return seriesOf.ReplaceAllString(text, "${1}"+firstIn(src, "joints-metric.yaml"))
			})
		},
		"a source": func(t *testing.T) Sources {
			return rewritten(t, src, "sources.yaml", func(text string) string { return titleOf.ReplaceAllString(text, "${1}Edited $2") })
		},
		"nothing but words": func(t *testing.T) Sources {
			made := src
			text, err := fs.ReadFile(src.Templates, "words/en/basis.yaml")
			if err != nil {
				t.Fatal(err)
			}
			made.Templates = layers{fstest.MapFS{"words/en/basis.yaml": {Data: bytes.Replace(text, []byte("common practice"), []byte("common use"), 1)}}, src.Templates}
			return made
		},
	} {
		t.Run(name, func(t *testing.T) {
			memory, before := NewMemory(), src
			if name == ofUnits {
				before = bare
			}
			for n, src := range []Sources{before, edit(t), before} {
				got, problems := rowsOnly(src, memory)
				want, others := rowsOnly(src, nil)
				if problems.Blocked() || others.Blocked() {
					t.Fatal(problems, others)
				}
				have, files := contents(Output{Files: got.files}), contents(Output{Files: want.files})
				for path, content := range files {
					if !bytes.Equal(have[path], content) {
						t.Errorf("build %d: %s is not as without a memory", n, path)
					}
				}
				if len(have) != len(files) || len(files) < 50 {
					t.Errorf("build %d: %d files, without a memory %d", n, len(have), len(files))
				}
			}
		})
	}
}
