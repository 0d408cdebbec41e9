package build

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"

	catalogue "capspan/templates/words"
)

// A page whose dependencies are unchanged would come out the same: of all pages of a large
// chart, before and after one figure of one row was edited, or one row came.
func TestPagesNoteWhatTheyShow(t *testing.T) {
	memory := NewMemory()
	before := loadedSite(t, manySources(t), memory)
	shared := before.steady(before.shared())
	known := map[string]remembered{}
	for _, d := range before.manyDrafts() {
		one := before.seeing()
		page, from := d.fill(one)
		known[d.address] = before.remember(d, one.seen, before.render(&page, from, shared))
	}
	changed, id := edited(t, manySources(t), "joints-metric.yaml")
	with := func(how func(string) string) Sources { return withRow(t, manySources(t), "joints-metric.yaml", how) }
	for _, src := range []Sources{changed, with(nil), with(newGroup(t)), with(longer(t, 0.6)), with(nearTwin(t, firstIn(manySources(t), "joints-metric.yaml"))),
		withName(t, manySources(t), "joints-metric.yaml"), withConversion(t, manySources(t))} {
		after := loadedSite(t, src, memory.copy())
		same, others := 0, 0
		for _, d := range after.manyDrafts() {
			was, is := known[d.address]
			if !is || !after.unchanged(pageMemory{chart: before.again.again.now}, was, d) {
				others++
				continue
			}
			same++
			page, from := d.fill(after)
			if now := after.render(&page, from, shared); now.file.sum() != was.file.sum() {
				t.Errorf("%s was edited: %s would be taken from before and has changed", id, d.address)
			}
		}
		if others == 0 || same < 10*others {
			t.Errorf("%s was edited: %d pages are taken from before, %d not", id, same, others)
		}
	}
}

// newGroup gives a row a cap that is in no group yet, behind the last of the metric table.
func newGroup(t *testing.T) func(row string) string {
	last := 0
	for _, table := range manySet(t).Tables {
		if table.ID == "joints-metric" {
			for _, row := range table.Rows {
				for _, group := range groupsOf(row) {
					if n, err := strconv.Atoi(group); err == nil {
						last = max(last, n)
					}
				}
			}
		}
	}
	cap := regexp.MustCompile(`(\n    cap: *\{is: )[0-9.]+`)
	return func(row string) string {
		made := cap.ReplaceAllString(row, fmt.Sprintf("${1}%d", last+1))
		if made == row {
			t.Fatalf("no cap in %q", row)
		}
		return made
	}
}

var alsoOf = regexp.MustCompile(`, also: \[[^\]]*\]|\n    also: .*`)

// withName is a catalogue in which a row that is not the first of its size has another name:
// the page of its size shows it, and that of its group is searched for it.
func withName(t *testing.T, src Sources, file string) Sources {
	t.Helper()
	first := map[string]bool{}
	files := maps.Clone(src.Tables.(fstest.MapFS))
	rows := strings.Split(string(files[file].Data), rowStart)
	for n, text := range rows[1:] {
		key := sizeKey(manySet(t).Find(rowID.FindStringSubmatch(text)[1]))
		if first[key] {
			rows[n+1] = strings.TrimRight(alsoOf.ReplaceAllString(text, ""), "\n") + "\n    also: [invented-and-edited]\n"
			files[file] = &fstest.MapFile{Data: []byte(strings.Join(rows, rowStart))}
			src.Tables = files
			return src
		}
		first[key] = true
	}
	t.Fatalf("every row of %s is the first of its size", file)
	return src
}

// withRow is a catalogue with the first row of a table a second time, under another name and
// changed in some way.
func withRow(t *testing.T, src Sources, file string, how func(string) string) Sources {
	t.Helper()
	files := maps.Clone(src.Tables.(fstest.MapFS))
	rows := strings.Split(string(files[file].Data), rowStart)
	copied := twinsOf.ReplaceAllString(rowID.ReplaceAllString(rows[1], "new-1"), "")
	if how != nil {
		copied = how(copied)
	}
	files[file] = &fstest.MapFile{Data: []byte(strings.Join(slices.Insert(rows, 2, copied), rowStart))}
	src.Tables = files
	return src
}

// loadedSite is a site whose pages of rows can be filled, beside what the memory has.
func loadedSite(t *testing.T, src Sources, memory *Memory) *site {
	t.Helper()
	all, problems := load(src, Options{Language: catalogue.English, Memory: memory})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	s := newSite(all[0], Options{Memory: memory})
	s.again = s.rememberedRows()
	s.bundle()
	return s
}
