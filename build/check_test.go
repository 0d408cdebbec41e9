package build

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"
	"testing/fstest"

	"capspan/build/diag"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"

	"github.com/google/go-cmp/cmp"
)

// checkFinds wants of a check the very list that a build has.
func checkFinds(t *testing.T, src Sources, built diag.List) {
	t.Helper()
	if got, want := printed(Check(src)), printed(built); got != want {
		t.Errorf("a check says\n%s\nand a build\n%s", got, want)
	}
}

func printed(list diag.List) string {
	var b strings.Builder
	if err := list.Print(&b); err != nil {
		panic(err)
	}
	return b.String()
}

// What a check takes for granted: the program's own scripts and sheets have nothing wrong
// with them, in no language, and its names of them are those of the bundle.
func TestShippedScriptsAreInOrder(t *testing.T) {
	src := Embedded()
	for _, language := range []string{"en", "es"} {
		spoken, problems := src.In(language)
		if problems.Blocked() {
			t.Fatal(problems)
		}
		var made scripts // in the end of a chart in pieces, which has all
		for _, pieced := range []bool{false, true} {
			made = (*Memory)(nil).bundled(src, language, pieced)
			if found := slices.Concat(made.problems[:]...); len(found) > 0 {
				t.Errorf("%s: %v", language, found)
			}
		}
		if _, found := static.Driveline(spoken.Static); len(found) > 0 {
			t.Errorf("%s: %v", language, found)
		}
		named, err := static.Unbundled(src.Static)
		if err != nil || len(named.Files) != len(made.assets.Files) {
			t.Errorf("%s: %d names and %d files, %v", language, len(named.Files), len(made.assets.Files), err)
		}
	}
}

// A folder is only taken for the program's own when it is, in all that can be bundled.
func TestOtherScriptsAreBundled(t *testing.T) {
	shipped := mapped(t, static.FS)
	for name, change := range map[string]func(fstest.MapFS){
		"the same":                  func(fstest.MapFS) {},
		"a test beside them":        func(f fstest.MapFS) { f["matcher/x_test.go"] = &fstest.MapFile{Data: []byte("package x")} },
		"another core":              func(f fstest.MapFS) { f["matcher/agree.ts"] = &fstest.MapFile{Data: []byte("x")} },
		"a part that is not there":  func(f fstest.MapFS) { delete(f, "parts/send/send.ts") },
		"an icon more":              func(f fstest.MapFS) { f["icons/more.svg"] = &fstest.MapFile{Data: []byte("<svg/>")} },
		"a file an import may find": func(f fstest.MapFS) { f["matcher/agree"] = &fstest.MapFile{Data: []byte("x")} },
	} {
		folder := fstest.MapFS{}
		for file, data := range shipped {
			folder[file] = data
		}
		change(folder)
		own := name == "the same" || name == "a test beside them"
		if got := static.Shipped(folder, Embedded().Content, static.FS, Embedded().Content, "en"); got != own {
			t.Errorf("%s: taken for the program's own: %t", name, got)
		}
	}
}

// spoilLines changes some lines of some files by chance, as a slip of the hand or a bad
// merge does.
func spoilLines(random *rand.Rand, folder fstest.MapFS, endings ...string) string {
	var names []string
	for name := range folder {
		if slices.ContainsFunc(endings, func(e string) bool { return strings.HasSuffix(name, e) }) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	var told strings.Builder
	for range 1 + random.IntN(3) {
		name := names[random.IntN(len(names))]
		lines := strings.SplitAfter(string(folder[name].Data), "\n")
		at := random.IntN(len(lines))
		fmt.Fprintf(&told, "%s:%d: %q\n", name, at+1, lines[at])
		lines[at] = spoilt(random, lines[at])
		folder[name] = &fstest.MapFile{Data: []byte(strings.Join(lines, ""))}
	}
	return told.String()
}

func spoilt(random *rand.Rand, line string) string {
	switch random.IntN(8) {
	case 0:
		return ""
	case 1:
		return line + line
	case 2:
		return strings.ReplaceAll(line, "(/", "(/x")
	case 3:
		return strings.Replace(line, "is: ", "is: 9", 1)
	case 4:
		return "\t" + line
	case 5:
		return strings.Replace(line, "}}", ".Nope}}", 1)
	case 6:
		return strings.Replace(line, "memory", "rumour", 1) + "[it](/joint/1310x/) {row 1310x}\n"
	}
	half := len(line) / 2
	return line[:half] + line[min(half+1, len(line)):]
}

// Whatever is spoilt, by chance and anywhere, a check says the same as a build.
func TestCheckFindsWhatABuildFinds(t *testing.T) {
	shipped := inEnglish()
	memory := NewMemory() // scripts and answers, where they did not change
	random := rand.New(rand.NewPCG(9, 5))
	found := 0
	for n := range 20 {
		src := shipped
		var what string
		switch folder := n % 5; folder {
		case 0, 1:
			files := mapped(t, src.Tables)
			what, src.Tables = spoilLines(random, files, ".yaml"), files
		case 2:
			files := mapped(t, src.Content)
			what, src.Content = spoilLines(random, files, ".md", "site.yaml"), files
		case 3:
			files := mapped(t, src.Templates)
			what, src.Templates = spoilLines(random, files, ".html", ".yaml"), files
		case 4:
			files := mapped(t, src.Tables)
			pages := mapped(t, src.Content)
			what = spoilLines(random, files, "joints-inch.yaml") + " " + spoilLines(random, pages, ".md")
			src.Tables, src.Content = files, pages
		}
		_, problems := Site(src, Options{Memory: memory})
		if len(problems) > 0 {
			found++
		}
		if got, want := printed(Check(src)), printed(problems); got != want {
			t.Errorf("%s\na check says\n%s\nand a build\n%s", what, got, want)
		}
	}
	if found < 10 {
		t.Errorf("only %d of the changes were a problem: too few to prove anything", found)
	}
}

// manyJoints is an invented catalogue large enough to be made in another way than the
// shipped chart, with a guide that names no row of that.
var manyJoints = sync.OnceValues(func() (Sources, error) {
	made, err := madeRows()
	if err != nil {
		return Sources{}, err
	}
	return withRows(Embedded(), made)
})

// With many rows most of them have no page made; what is wrong with one is found all the
// same.
func TestCheckOfManyRows(t *testing.T) {
	shipped, err := manyJoints()
	if err != nil {
		t.Fatal(err)
	}
	set, problems := tables.Load(shipped.Tables)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	var joints []*tables.Row
	for _, table := range set.Tables {
		if table.Joint() {
			joints = append(joints, table.Rows...)
		}
	}
	row := joints[len(joints)/2]
	kept, groups := map[string]bool{}, map[string]bool{} // sizes and groups that a check makes
	languages, _ := load(shipped, Options{check: true})
	for _, r := range jointsOf(sampled(shipped, languages)[0].set) {
		kept[sizeKey(r)] = true
		for _, group := range groupsOf(r) {
			groups[groupAddress(r.Table, group)] = true
		}
	}
	var left, leftGroup string
	for _, r := range joints {
		if !kept[sizeKey(r)] {
			left = sizePaperAddress(sizeKey(r))
		}
		if group := groupAddress(r.Table, groupsOf(r)[0]); !groups[group] {
			leftGroup = group
		}
	}
	if left == "" || leftGroup == "" {
		t.Fatalf("a check makes every size or group: %q, %q", left, leftGroup)
	}
	head := "---\ntitle: T\nabout: A.\n---\n\n"
	memory := NewMemory()
	for _, c := range []struct {
		name, file, text string
		want             string // a rule; "" for no problem
	}{
		{"a link to a row", "extra.md", "See [it](" + (&site{inputs: inputs{set: set}}).placeOf(row) + ").", ""},
		{"a link to no row", "extra.md", "See [it](" + strings.Replace((&site{inputs: inputs{set: set}}).placeOf(row), "/", "/x", 1) + ").", "broken-link"},
		{"a link to a sheet that a check does not make", "extra.md", "See [it](" + left + ").", ""},
		{"a link to a group that a check does not make", "extra.md", "See [it](" + leftGroup + ").", ""},
		{"a page at the address of a row", strings.Trim(pagePath(set, row), "/") + ".md", "Mine.", "address-taken"},
	} {
		t.Run(c.name, func(t *testing.T) {
			src := shipped
			pages := mapped(t, src.Content)
			pages[c.file] = &fstest.MapFile{Data: []byte(head + c.text + "\n")}
			src.Content = pages
			_, problems := Site(src, Options{Memory: memory})
			if has := slices.ContainsFunc(problems, func(p diag.Problem) bool { return p.Rule == c.want }); has != (c.want != "") {
				t.Errorf("a build says\n%s, want %s", printed(problems), c.want)
			}
			checkFinds(t, src, problems)
		})
	}
}

// A frame that is not the program's own may fail for one row alone.
func TestCheckTriesOtherFramesOnEveryRow(t *testing.T) {
	src := inEnglish()
	frames := mapped(t, src.Templates)
	joint := frames["joint.html"]
	frames["joint.html"] = &fstest.MapFile{Data: slices.Concat([]byte(`{{if eq .Body.ID "1310"}}{{.Body.Nope}}{{end}}`), joint.Data)}
	src.Templates = frames
	problems := Check(src)
	if len(problems) != 1 || problems[0].Rule != "bad-template" || problems[0].Path != "/joint/1310/" {
		t.Errorf("got %v", problems)
	}
}

// pagePath is where the page of a row stands, without the place on it.
func pagePath(set *tables.Set, row *tables.Row) string {
	path, _, _ := strings.Cut((&site{inputs: inputs{set: set}}).placeOf(row), "#")
	return path
}

// Of a large chart a check makes the pages of a small part of the rows, and of each kind one.
func TestCheckTakesOneRowOfEachKind(t *testing.T) {
	src, err := manyJoints()
	if err != nil {
		t.Fatal(err)
	}
	languages, problems := load(src, Options{check: true})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	some := sampled(src, languages)
	if some == nil {
		t.Fatal("every row is looked at")
	}
	all, taken := jointsOf(languages[0].set), jointsOf(some[0].set)
	if len(taken) == 0 || len(taken) > len(all)/4 {
		t.Errorf("%d of %d rows are looked at", len(taken), len(all))
	}
	kinds := map[string]bool{}
	for _, row := range taken {
		kinds[fmt.Sprint(row.Table.Columns[0].ID, len(row.Table.Columns), row.Basis, len(row.Ends), len(row.Twins) > 0, row.Ends[0].Hold.Hold(), row.Ends[0].Cap.State)] = true
	}
	for _, row := range all {
		if kind := fmt.Sprint(row.Table.Columns[0].ID, len(row.Table.Columns), row.Basis, len(row.Ends), len(row.Twins) > 0, row.Ends[0].Hold.Hold(), row.Ends[0].Cap.State); !kinds[kind] {
			t.Errorf("no row is looked at that is like %s: %s", row.Ref(), kind)
			kinds[kind] = true
		}
	}
	if jointRows(some[0].set) != len(all) {
		t.Error("the sample is not made as the whole chart is")
	}
}

func jointsOf(set *tables.Set) []*tables.Row {
	var list []*tables.Row
	for _, table := range set.Tables {
		if table.Joint() {
			list = append(list, table.Rows...)
		}
	}
	return list
}

// A figure that nobody knows, or that there is none of, is no hindrance to a chart in pieces,
// which answers as the whole.
func TestPiecesOfUnknownFigures(t *testing.T) {
	shipped, err := manyJoints()
	if err != nil {
		t.Fatal(err)
	}
	set, _ := tables.Load(shipped.Tables)
	var alone *tables.Row // that no other row depends on
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if alone == nil && len(row.Ends) == 1 && len(row.Twins) == 0 && row.Ends[0].Cap.State == tables.Given && len(set.Conversions(row)) == 0 {
				alone = row
			}
		}
	}
	if alone == nil {
		t.Fatal("no row stands alone")
	}
	for _, word := range []string{"{is: unknown}", "{is: none}"} {
		src := shipped
		files := mapped(t, src.Tables)
		name := alone.Table.ID + ".yaml"
		lines := strings.Split(string(files[name].Data), "\n")
		lines[alone.Ends[0].Across.Pos.Line-1] = "    across: " + word
		files[name] = &fstest.MapFile{Data: []byte(strings.Join(lines, "\n"))}
		src.Tables = files
		if problems := Check(src); len(problems) > 0 {
			t.Fatalf("%s: %v", word, problems)
		}
		set, _ := tables.Load(files)
		chart := Chart(set)
		core, problems := coreFor(src.Static, len(chart.Rows))
		if problems.Blocked() {
			t.Fatal(problems)
		}
		whole, err := matcher.New(core, chart)
		if err != nil {
			t.Fatal(err)
		}
		pieces, err := newMatcher(core, chart)
		if err != nil {
			t.Fatal(err)
		}
		cap := alone.Ends[0].Cap.Quantity.String()
		for _, across := range [][]string{nil, {"61.3 mm"}} {
			q := matcher.Query{Ends: []matcher.QueryEnd{{Hold: alone.Ends[0].Hold.Text, Faces: string(alone.Ends[0].Across.Faces), Cap: []string{cap}, Across: across}}}
			want, err1 := whole.Identify(q)
			got, err2 := pieces.Identify(q)
			got.At = nil // a chart in pieces says that besides
			if diff := cmp.Diff(want, got); diff != "" || err1 != nil || err2 != nil {
				t.Errorf("%s, %v: %v, %v (-whole +pieces)\n%s", word, across, err1, err2, diff)
			}
		}
	}
}
