package translation

import (
	"bytes"
	"io/fs"
	"strings"

	"capspan/build/diag"
	"capspan/tables"
)

// TableTexts are the texts of the tables that a reader is shown as words, each with its
// line: what another language has to translate. The words of a column of texts may be names
// and need not be. Names of documents, ids and places in a source are what they are.
func TableTexts(fsys fs.FS, set *tables.Set) []Text {
	t := tableReader{fsys: fsys, lines: map[string][][]byte{}}
	for _, table := range set.Tables {
		t.add(table.Pos, table.ID+".title", table.Title)
		t.add(table.Pos, table.ID+".about", table.About)
		for _, caution := range table.Cautions {
			t.add(table.Pos, table.ID+".cautions", caution)
		}
		for _, c := range table.Columns {
			t.add(c.Pos, table.ID+"."+c.ID, c.Label)
		}
		for _, row := range table.Rows {
			t.add(row.Pos, row.Ref(), row.Note)
			for _, c := range table.Columns {
				if v := row.Values[c.ID]; c.Kind == tables.Text && v.Text != "" {
					t.list = append(t.list, Text{Says: v.Text, Path: row.Ref() + "." + c.ID, Pos: v.Pos, Name: !c.InWords(v)})
				}
			}
		}
	}
	for _, source := range set.Sources {
		t.add(source.Pos, "sources/"+source.ID, source.Trust)
	}
	for _, gone := range set.Retired {
		t.add(gone.Pos, "retired/"+gone.ID, gone.Why)
	}
	for _, release := range set.History {
		t.add(release.Pos, "history/"+release.Chart, release.Why)
		for _, change := range release.Changes {
			t.add(release.Pos, "history/"+release.Chart+"."+change.Of, change.Why)
		}
	}
	return t.list
}

// tableReader gathers texts and finds their lines.
type tableReader struct {
	fsys  fs.FS
	lines map[string][][]byte // of a file, from the project's root
	list  []Text
}

// add takes a text of the thing that stands at the place, unless it is empty. Its own line
// is the first from there on that holds how it begins; the thing's where none does.
func (t *tableReader) add(at diag.Pos, path, says string) {
	if says == "" {
		return
	}
	lines, read := t.lines[at.File]
	if !read {
		source, _ := fs.ReadFile(t.fsys, strings.TrimPrefix(at.File, "tables/")) // it was read before
		lines = bytes.Split(source, []byte("\n"))
		t.lines[at.File] = lines
	}
	begins := []byte(says[:min(len(says), 24)])
	for n := max(at.Line, 1); n <= len(lines); n++ {
		if bytes.Contains(lines[n-1], begins) {
			at = diag.Pos{File: at.File, Line: n}
			break
		}
	}
	t.list = append(t.list, Text{Says: says, Path: path, Pos: at})
}
