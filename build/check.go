package build

import (
	"bytes"
	"io/fs"
	"strings"

	"capspan/build/diag"
	"capspan/content"
	"capspan/static"
	"capspan/tables"
)

// Check reports every problem in tables, pages, scripts and links. Of a small chart the
// site is made, and thrown away. A large one is spared what can show no problem: see
// [checkLarge].
func Check(src Sources) diag.List {
	if large(src.Tables) {
		return checkLarge(src)
	}
	_, problems := Site(src, Options{})
	return problems
}

// largeTables is how many bytes of tables make a chart large: some two thousand rows.
const largeTables = 1 << 19

func large(folder fs.FS) bool {
	names, _ := fs.Glob(folder, "*.yaml") // what cannot be listed is told when it is loaded
	total := int64(0)
	for _, name := range names {
		if info, err := fs.Stat(folder, name); err == nil {
			total += info.Size()
		}
	}
	return total > largeTables
}

// checkLarge reads the tables, the guide and all else as a build does, and follows every
// link. It leaves out what a build only writes, and of the rows' pages, which are alike,
// it makes one of each shape ([shapes]). Scripts that are the program's own, byte for
// byte, are not bundled once more.
func checkLarge(src Sources) diag.List {
	in, problems := load(src, Options{sparing: true})
	if problems.Blocked() {
		return problems
	}
	s := &site{inputs: in, version: tables.Version{Hash: "unnamed"}, base: "/"} // no problem names the chart
	s.only = s.shapes()
	s.bundle()
	problems.Add(s.renderPages()...)
	if problems.Blocked() {
		return problems
	}
	problems.Add(s.takenRest()...)
	s.nameData()
	problems.Add(s.addSchemas(src.Static)...)
	problems.Add(s.addWebManifest()...)
	s.nameRest()
	problems.Add(s.checkLinks()...)
	problems.Sort()
	return problems
}

// known adds a file without its content, for links to lead to.
func (s *site) known(path string) { s.add(path, nil, Pages) }

// unmade finds the row whose page or paper sheet has that address, when it was not made.
func (s *site) unmade(address string) *tables.Row {
	id, joint := strings.CutPrefix(address, "/joint/")
	if s.only == nil || !joint {
		return nil
	}
	id, _, _ = strings.Cut(id, "/")
	row := s.set.Find(id)
	if row == nil || s.only[row] || !row.Table.Joint() || address != rowAddress(row.ID) && address != paperAddress(row.ID) {
		return nil
	}
	return row
}

// takenRest finds the pages that want the address of a row's page that was not made.
func (s *site) takenRest() diag.List {
	var problems diag.List
	for address, pos := range s.places {
		if row := s.unmade(address); row != nil {
			problems.Add(addressTaken(address, pos, row.Pos))
		}
	}
	return problems
}

// nameData makes the files of the open data known.
func (s *site) nameData() {
	for _, t := range s.set.Tables {
		s.known(dataFolder + t.ID + ".csv")
		s.known(dataFolder + t.ID + ".json")
	}
	s.known(dataFolder + wholeName)
	s.known(dataFolder + packageName)
}

// nameRest makes known what else a build writes at addresses that stay, and the pages of
// calculations whose scripts were spared.
func (s *site) nameRest() {
	for _, name := range []string{recordName, workerName} {
		s.known(name)
	}
	if s.keeper.Web != "" {
		for _, name := range []string{feedName, sitemapName, robotsName, openSearchName} {
			s.known(name)
		}
	}
	if !s.spared {
		return
	}
	for _, name := range static.Calculations {
		s.known(pageFile(calculationAddress(name)))
	}
}

// pictured are the rows of a table that its page lists and that have pages made.
func (s *site) pictured(t *tables.Table) []*tables.Row {
	if s.only == nil || !t.Joint() {
		return t.Rows
	}
	var rows []*tables.Row
	for _, row := range t.Rows {
		if s.only[row] {
			rows = append(rows, row)
		}
	}
	return rows
}

// shapes picks the rows whose pages are made: the first that has all that it has in a
// table with its columns, those of the history, and those that the guide leads to.
func (s *site) shapes() map[*tables.Row]bool {
	only := map[*tables.Row]bool{}
	seen := map[string]bool{}
	for _, t := range s.set.Tables {
		if !t.Joint() {
			continue
		}
		var columns strings.Builder
		for _, c := range t.Columns {
			columns.WriteString(c.ID + " " + string(c.Kind) + "\x00")
		}
		for _, row := range t.Rows {
			if key := shapeOf(row); !seen[columns.String()+key] {
				seen[columns.String()+key], only[row] = true, true
			}
		}
	}
	add := func(id string) {
		if row := s.set.Find(id); row != nil {
			only[row] = true
		}
	}
	for _, r := range s.set.Retired {
		for _, id := range r.To {
			add(id)
		}
	}
	for _, r := range s.set.History {
		for _, c := range r.Changes {
			add(c.RowID())
		}
	}
	for _, p := range s.pages {
		for _, link := range p.Links {
			address, _, inside := resolve("/"+p.Slug+"/", link.Href)
			if id, is := strings.CutPrefix(address, "/joint/"); inside && is {
				id, _, _ = strings.Cut(id, "/")
				add(id)
			}
		}
	}
	return only
}

// shapeOf says what a row has, but not what it is: rows of one shape go through the same
// lines of the templates.
func shapeOf(row *tables.Row) string {
	key := make([]byte, 0, 64)
	flag := func(all ...bool) {
		bits := byte(0)
		for _, is := range all {
			bits <<= 1
			if is {
				bits |= 1
			}
		}
		key = append(key, bits)
	}
	flag(len(row.Ends) == 2, len(row.Also) > 0, row.Note != "", len(row.Twins) > 0, len(row.Sources) > 0, row.At != "")
	key = append(key, row.Basis...)
	for i := range row.Table.Columns {
		v := row.Values[row.Table.Columns[i].ID]
		flag(len(v.Sources) > 0, v.At != "", len(v.Others) > 0, v.Measured != nil, v.IsRange(), v.FacesBasis != "")
		key = append(key, byte(v.State))
		key = append(key, v.Basis...)
		key = append(key, v.Quantity.Unit...)
		if v.Quantity.IsZero() && v.State == tables.Given {
			key = append(key, v.Text...) // a hold
		}
		key = append(key, v.Faces...)
	}
	for i := range row.Ends {
		key = append(key, row.Ends[i].Hold.Text...)
		key = append(key, row.Ends[i].Across.Faces...)
	}
	return string(key)
}

// ownScripts reports that a folder has all that the program's own has, byte for byte, and
// no icon or schema more.
func ownScripts(folder fs.FS) bool {
	if folder == static.FS {
		return true
	}
	same := true
	err := fs.WalkDir(static.FS, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if name == "icons" || name == "schemas" {
				mine, _ := fs.ReadDir(static.FS, name)
				there, err := fs.ReadDir(folder, name)
				same = same && err == nil && len(mine) == len(there)
			}
			return nil
		}
		mine, err := fs.ReadFile(static.FS, name)
		if err != nil {
			return err
		}
		there, err := fs.ReadFile(folder, name)
		if same = same && err == nil && bytes.Equal(mine, there); !same {
			return fs.SkipAll
		}
		return nil
	})
	return same && err == nil
}

// scripted reports that a page of the guide leads to a place on a page that scripts make:
// they cannot be spared then.
func scripted(pages []*content.Page) bool {
	for _, p := range pages {
		for _, link := range p.Links {
			address, fragment, inside := resolve("/"+p.Slug+"/", link.Href)
			made := strings.HasPrefix(address, drivelineAddress) || address == "/about/method/"
			if inside && fragment != "" && made {
				return true
			}
		}
	}
	return false
}
