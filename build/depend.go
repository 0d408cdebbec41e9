package build

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"hash"
	"io/fs"
	"slices"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
)

// What the pages of rows depend on. A large chart has so many that a build with a memory
// makes anew only those of which something has changed. What a page depends on is noted
// while it is filled, by a copy of the site that sees what is looked at:
//
//	rows        whose figures, twins, sources or words are shown: by the text they are read from
//	questions   to the whole chart, such as what is near: by the rows of the answer
//	the rest    templates, words, scripts, sources, history, the heads of tables and what
//	            every page shares: by one sum, without which nothing is taken from before
//
// A page is taken from before only when all of it is unchanged. depend_test.go compares
// builds with a memory with builds without, over edits made by chance.

// rowDraft is a page that shows rows, still to be filled. Its site notes what is seen.
type rowDraft struct {
	address string
	rows    []*tables.Row // those it is about
	beside  []string      // what else it is about
	fill    func(*site) (templates.Page, diag.Pos)
}

// questions are what a page may ask of the whole chart about a row.
var questions = map[string]func(*site, *tables.Row) []*tables.Row{
	"same figures": func(s *site, row *tables.Row) []*tables.Row { return s.set.SameFigures(row) },
	"conversions":  func(s *site, row *tables.Row) []*tables.Row { return s.set.Conversions(row) },
	"size":         func(s *site, row *tables.Row) []*tables.Row { return s.sizes().of[row].rows },
	"near sizes":   (*site).nearSizes,
}

// seen is what a page was found to depend on.
type seen struct {
	rows  map[*tables.Row]bool
	asked map[asked][]*tables.Row
}

// asked is a question, and the row it is about.
type asked struct {
	question string
	row      *tables.Row
}

// seeing is the site for the filling of one page.
func (s *site) seeing() *site {
	one := *s
	one.seen = &seen{map[*tables.Row]bool{}, map[asked][]*tables.Row{}}
	return &one
}

// see notes that a page shows something of a row.
func (s *site) see(row *tables.Row) {
	if s.seen != nil {
		s.seen.rows[row] = true
	}
}

// ask puts a question to the chart, and notes what the answer was.
func (s *site) ask(question string, row *tables.Row) []*tables.Row {
	rows := questions[question](s, row)
	if s.seen != nil {
		s.seen.asked[asked{question, row}] = rows
	}
	return rows
}

// pageMemory is what a build knows of the pages of rows for the next one.
type pageMemory struct {
	rest  sum
	pages map[string]remembered // by address
}

type sum = [sha256.Size]byte

// remembered is a page with all that it depends on; rows of a chart that is gone are named.
type remembered struct {
	about  []string
	beside []string
	rows   map[string]sum
	asked  map[askedThen][]string
	file   File
	shown  sitemapEntry
}

type askedThen struct{ question, row string }

func (s *site) remember(d rowDraft, with *seen, p rendered) remembered {
	r := remembered{about: refs(d.rows), beside: d.beside, rows: map[string]sum{}, asked: map[askedThen][]string{}, file: p.file, shown: p.shown}
	for _, row := range d.rows {
		r.rows[row.Ref()] = s.prints[row]
	}
	for row := range with.rows {
		r.rows[row.Ref()] = s.prints[row]
	}
	for a, rows := range with.asked {
		r.asked[askedThen{a.question, a.row.Ref()}] = refs(rows)
	}
	return r
}

// unchanged reports whether a page would be made the same again.
func (s *site) unchanged(r remembered, d rowDraft) bool {
	if !slices.Equal(r.about, refs(d.rows)) || !slices.Equal(r.beside, d.beside) {
		return false
	}
	for ref, was := range r.rows {
		if row := s.set.Find(ref); row == nil || s.prints[row] != was {
			return false
		}
	}
	for a, was := range r.asked {
		row := s.set.Find(a.row)
		if row == nil || !slices.Equal(refs(questions[a.question](s, row)), was) {
			return false
		}
	}
	return true
}

func refs(rows []*tables.Row) []string {
	list := make([]string, len(rows))
	for n, row := range rows {
		list[n] = row.Ref()
	}
	return list
}

// printRows sums up each row: the lines it is read from, the rows it is twin to or like,
// and what those are.
func (s *site) printRows() {
	s.prints = map[*tables.Row]sum{}
	var print func(row *tables.Row) sum
	texts := map[*tables.Row][]byte{}
	for _, t := range s.set.Tables {
		for n, text := range t.RowTexts() {
			texts[t.Rows[n]] = text
		}
	}
	print = func(row *tables.Row) sum {
		if made, done := s.prints[row]; done {
			return made
		}
		all := sha256.New()
		fmt.Fprintf(all, "%s\n%s\n%q\n", row.Ref(), texts[row], refs(row.Twins))
		for _, end := range row.Ends {
			if end.Like != nil && end.Like != row {
				like := print(end.Like)
				all.Write(like[:])
			}
		}
		made := sum(all.Sum(nil))
		s.prints[row] = made
		return made
	}
	for _, t := range s.set.Tables {
		for _, row := range t.Rows {
			print(row)
		}
	}
}

// rest is the sum of all that pages of rows show besides rows.
func (s *site) rest(shared templates.Site) sum {
	all := sha256.New()
	language := s.words.Language
	folders := []fs.FS{s.sources.Templates}
	if own, err := fs.Sub(s.sources.Content, language); err == nil {
		folders = append(folders, own)
	}
	if s.sources.Own != nil {
		folders = append(folders, s.sources.Own)
	}
	files := s.memory.sumOf(folders...)
	all.Write(files[:])
	for _, name := range []string{"sources.yaml", "own-sources.yaml", "retired.yaml", "history.yaml"} {
		text, _ := fs.ReadFile(s.sources.layered().Tables, name) // one that is not there says nothing
		fmt.Fprintf(all, "%q %x\n", name, sha256.Sum256(text))
	}
	put(all, shared, s.keeper, s.others, s.folder, language)
	for _, t := range s.set.Tables {
		put(all, t.ID, t.Title, t.About, t.Version.Number, t.Version.Date, t.Unit, t.Cautions)
		all.Write(t.Head())
		for _, c := range t.Columns {
			put(all, c.ID, c.Label, c.Kind, c.Unit, c.Range, c.Method, c.Match)
		}
	}
	return sum(all.Sum(nil))
}

func put(into hash.Hash, values ...any) {
	for _, v := range values {
		if err := json.NewEncoder(into).Encode(v); err != nil {
			panic("internal error: " + err.Error()) // strings, numbers and lists of them
		}
	}
}
