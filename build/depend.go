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
//	rows        whose figures, twins, sources or words are shown: by their editions (again.go)
//	questions   to the whole chart, such as what is near: by the rows of the answer
//	beside      what else it is about: in words or as a sum
//	the rest    templates, words, scripts, sources, history, the heads of tables and what
//	            every page shares: by one sum, without which nothing is taken from before
//
// A page is taken from before only when all of it is unchanged. depend_test.go compares
// builds with a memory with builds without, over edits made by chance.

// rowDraft is a page that shows rows, still to be filled. Its site notes what is seen.
type rowDraft struct {
	address string
	from    diag.Pos      // what it is made from
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
	chart *chartThen
	pages map[string]remembered // by address
}

type sum = [sha256.Size]byte

// remembered is a page with all that it depends on.
type remembered struct {
	about  []int // editions of rows
	beside []string
	rows   []int // editions
	asked  []answered
	file   File
	shown  sitemapEntry
}

// answered is a question with the rows of the answer.
type answered struct {
	question string
	of       int // edition of the row it is about
	names    []rowName
	reach    float64 // how far off in breadth a row may be to matter to the answer, mm
}

func (s *site) remember(d rowDraft, with *seen, p rendered) remembered {
	r := remembered{about: s.editions(d.rows), beside: d.beside, file: p.file, shown: p.shown}
	for row := range with.rows {
		r.rows = append(r.rows, s.again.editionOf(row))
	}
	for a, rows := range with.asked {
		r.asked = append(r.asked, answered{a.question, s.again.editionOf(a.row), namesOf(rows), answerReach(a, rows)})
	}
	return r
}

func (s *site) editions(rows []*tables.Row) []int {
	list := make([]int, len(rows))
	for n, row := range rows {
		list[n] = s.again.editionOf(row)
	}
	return list
}

func namesOf(rows []*tables.Row) []rowName {
	list := make([]rowName, len(rows))
	for n, row := range rows {
		list[n] = nameOf(row)
	}
	return list
}

// answerReach is how far off rows may be that matter to an answer.
func answerReach(a asked, rows []*tables.Row) float64 {
	switch a.question {
	case "near sizes":
		return tables.Reach(a.row, rows, nearRows)
	case "same figures":
		return tables.Reach(a.row, nil, 0)
	}
	return -1
}

// unchanged reports whether a page of a memory would be made the same again.
func (s *site) unchanged(in pageMemory, r remembered, d rowDraft) bool {
	if len(r.about) != len(d.rows) || !slices.Equal(r.beside, d.beside) {
		return false
	}
	for n, row := range d.rows {
		if s.again.editionOf(row) != r.about[n] {
			return false
		}
	}
	for _, edition := range r.rows {
		if s.again.at[edition] < 0 {
			return false
		}
	}
	for _, a := range r.asked {
		at := s.again.at[a.of]
		if at < 0 {
			return false
		}
		if in.chart == s.again.then && s.again.stands(a.question, at, a.reach) {
			continue
		}
		if !slices.EqualFunc(questions[a.question](s, s.again.list[at]), a.names, isNamed) {
			return false
		}
	}
	return true
}

// ground is the sum of all that is made of, besides rows, before pages are known.
func (s *site) ground() sum {
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
	put(all, s.keeper, s.root, s.others, s.folder, language)
	for _, t := range s.set.Tables {
		put(all, t.ID, t.Title, t.About, t.Version.Number, t.Version.Date, t.Unit, t.Cautions)
		all.Write(t.Head())
		for _, c := range t.Columns {
			put(all, c.ID, c.Label, c.Kind, c.Unit, c.Range, c.Method, c.Match)
		}
	}
	return sum(all.Sum(nil))
}

// rest is the sum of all that pages of rows show besides rows.
func (s *site) rest(shared templates.Site) sum {
	all := sha256.New()
	put(all, s.again.ground, shared)
	return sum(all.Sum(nil))
}

func put(into hash.Hash, values ...any) {
	for _, v := range values {
		if err := json.NewEncoder(into).Encode(v); err != nil {
			panic("internal error: " + err.Error()) // strings, numbers and lists of them
		}
	}
}
