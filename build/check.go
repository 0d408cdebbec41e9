package build

import (
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"capspan/build/diag"
	"capspan/content"
	"capspan/static"
	"capspan/static/driveline"
	"capspan/tables"
	"capspan/templates"
)

// Check finds what a build finds, and leaves out what cannot be at fault:
//
//   - Scripts and sheets that are the program's own, byte by byte, are not bundled: that they
//     are in order is known (check_test.go). Where a page asks the core, that is bundled.
//   - With frames that are the program's own, of all rows that are written alike (shapeOf)
//     one has its pages made. With others every row has: a frame may look at anything.
//     The pieces of a large chart that go with them are made of those rows alone.
//
// Tables, words, translations and the guide are read as for a build. A link that leads to no
// page, and might lead to one of a row that was left out, has all of them made after all.

// Check reports every problem in tables, pages, scripts and links.
func Check(src Sources) diag.List {
	languages, problems := load(src, Options{check: true})
	if problems.Blocked() {
		return problems
	}
	opt := Options{Memory: blank()}
	if some := sampled(src, languages); some != nil {
		if _, found := opt.build(src, some, slices.Clone(problems), nil); !doubtful(languages, found) {
			return found
		}
	}
	_, problems = opt.build(src, languages, problems, nil)
	return problems
}

// unbundled are the scripts and sheets of a language by name, where a check need not look
// at more.
func (opt Options) unbundled(src Sources, language string) (static.Assets, bool) {
	if !opt.check || !static.Shipped(src.Static, src.Content, static.FS, content.FS, language) {
		return static.Assets{}, false
	}
	assets, err := static.Unbundled(src.Static)
	return assets, err == nil
}

// script is one of the scripts, bundled now if it was not before.
func (in *inputs) script(name string) []byte {
	if in.unbundled == nil {
		return in.assets.Bytes(name)
	}
	bytes, _ := static.One(in.unbundled, name) // it is the program's own
	return bytes
}

// blank is a memory of pictures nobody looks at.
func blank() *Memory {
	m := NewMemory()
	m.blank = true
	return m
}

// calculationsByName are the calculations by name alone: where their pages stand.
func calculationsByName() calculated {
	var c calculated
	for _, name := range static.Calculations {
		c.described = append(c.described, driveline.Described{Name: name, Title: name, About: name})
	}
	return c
}

// sampled is what was read with one row of each kind; nil when every row has to be looked at.
func sampled(src Sources, languages []inputs) []inputs {
	if !sameFrames(src.Templates) {
		return nil
	}
	first := &languages[0]
	for _, in := range languages {
		for _, p := range in.pages {
			if ofRows(p.Slug) {
				return nil // it may want the address of any row
			}
		}
	}
	keep := firstOfShapes(first, linkedTo(languages))
	out := slices.Clone(languages)
	for n := range out {
		in := &out[n]
		spoken := in.set != in.english
		in.english = in.english.Sample(func(row *tables.Row) bool { return keep[row.Ref()] })
		if in.set = in.english; spoken {
			in.set = languages[n].set.Sample(func(row *tables.Row) bool { return keep[row.Ref()] })
		}
		if in.cut != nil { // its pieces are those of the rows that are left
			in.cut = sync.OnceValues(func() (*chartPieces, error) { return cutPieces(Chart(in.set), nil) })
		}
	}
	return out
}

// firstOfShapes are the rows that are looked at, by their names: the first of each shape, the
// first of each table, those that are linked to, and all that are no joints.
func firstOfShapes(in *inputs, linked map[string]bool) map[string]bool {
	type first struct {
		row    *tables.Row
		shape  string
		always bool
	}
	all := in.english.Tables
	firsts := make([][]first, len(all)) // of each table by itself
	onAllCores(len(all), func(i int) {
		t, shape, seen := all[i], shapesOf(in, all[i]), map[string]bool{}
		for n, row := range t.Rows {
			name := shape.of(row)
			always := n == 0 || !t.Joint() || linked[row.ID]
			if !seen[string(name)] || always {
				one := first{row, string(name), always}
				seen[one.shape] = true
				firsts[i] = append(firsts[i], one)
			}
		}
	})
	seen, keep := map[string]bool{}, map[string]bool{}
	for _, one := range slices.Concat(firsts...) {
		if !seen[one.shape] || one.always {
			seen[one.shape], keep[one.row.Ref()] = true, true
		}
	}
	return keep
}

// ofRows reports an address below those that are made of rows.
func ofRows(slug string) bool {
	for _, folder := range []string{"joint", "size", "chart"} {
		if slug == folder || strings.HasPrefix(slug, folder+"/") {
			return true
		}
	}
	return false
}

// doubtful reports a broken link that all rows might mend, or give a better hint for: it
// leads where their pages are, or its last word has figures in it as theirs have.
func doubtful(languages []inputs, found diag.List) bool {
	broken := map[diag.Pos]bool{}
	for _, p := range found {
		if p.Rule == "broken-link" || p.Rule == "broken-fragment" {
			broken[p.Pos] = true
		}
	}
	for _, in := range languages {
		for _, p := range in.pages {
			for _, link := range p.Links {
				if !broken[link.Pos] {
					continue
				}
				address, _, _ := resolve("/"+p.Slug+"/", link.Href)
				if ofRows(strings.Trim(address, "/")) || strings.ContainsAny(path.Base(address), "0123456789") {
					return true
				}
			}
		}
	}
	return false
}

// linkedTo are the words that stand in the links of pages: an id among them may be that of
// a row that is linked to.
func linkedTo(languages []inputs) map[string]bool {
	words := map[string]bool{}
	for _, in := range languages {
		for _, p := range in.pages {
			for _, link := range p.Links {
				for _, word := range strings.FieldsFunc(link.Href, func(r rune) bool { return r == '/' || r == '#' }) {
					words[word] = true
				}
			}
		}
	}
	return words
}

// shapes tells the rows of a table apart by what a frame of ours can see of them besides
// the words and figures themselves.
type shapes struct {
	in      *inputs
	columns []tables.Column
	begin   string // the columns, by name and kind
	b       []byte
}

func shapesOf(in *inputs, t *tables.Table) *shapes {
	s := &shapes{in: in, columns: t.Columns}
	for _, c := range t.Columns {
		s.begin += c.ID + ":" + string(c.Kind) + " "
	}
	return s
}

// of names a shape: which figures are given, ranges, measured or printed otherwise, on what
// they rest, how the ends are held, and what else is said of the row.
// The bytes last until the next is named.
func (s *shapes) of(row *tables.Row) []byte {
	b := append(s.b[:0], s.begin...)
	for _, c := range s.columns {
		v, there := row.Values[c.ID]
		if !there {
			b = append(b, '-')
			continue
		}
		b = append(b, byte('0'+v.State), yes(v.IsRange()), yes(len(v.Others) > 0), yes(v.Measured != nil), yes(v.FacesBasis != ""),
			yes(len(v.Sources) > 0), yes(v.At != ""))
	}
	b = append(b, ' ', byte('0'+len(row.Ends)))
	for i := range row.Ends {
		end := &row.Ends[i]
		b = append(b, ' ')
		b = append(b, end.Hold.Text...)
		b = append(b, '/')
		b = append(b, end.Across.Faces...)
		b = append(b, byte('0'+end.Cap.State), byte('0'+end.Across.State), yes(end.Like != nil))
	}
	b = append(b, ' ')
	b = append(b, row.Basis...)
	b = append(b, yes(len(row.Also) > 0), yes(row.Note != ""), yes(len(row.Twins) > 0), yes(len(row.Sources) > 0), yes(row.At != ""),
		yes(s.in.own != nil && len(s.in.own.overlay.Of(row)) > 0))
	s.b = b
	return b
}

func yes(is bool) byte {
	if is {
		return '1'
	}
	return '0'
}

// sameFrames reports whether the frames and their words are the program's own.
func sameFrames(fsys fs.FS) bool {
	if fsys == fs.FS(templates.FS) {
		return true
	}
	more, err := fs.Glob(fsys, "*.html")
	if err != nil {
		return false
	}
	for _, name := range more {
		if _, err := fs.Stat(templates.FS, name); err != nil {
			return false
		}
	}
	return fs.WalkDir(templates.FS, ".", func(name string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		ours, err := fs.ReadFile(templates.FS, name)
		if err != nil {
			return err
		}
		given, err := fs.ReadFile(fsys, name)
		if err == nil && string(given) != string(ours) {
			err = fs.ErrInvalid
		}
		return err
	}) == nil
}
