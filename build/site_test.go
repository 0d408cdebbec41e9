package build

import (
	"bytes"
	"io/fs"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"

	"capspan/build/diag"
	"capspan/tables"
	catalogue "capspan/templates/words"
)

// inEnglish are the shipped sources as a site in English alone, which takes half the time.
// The languages have tests of their own.
func inEnglish() Sources {
	src := Embedded()
	text, err := fs.ReadFile(src.Content, keeperFile)
	if err != nil {
		panic(err)
	}
	alone := regexp.MustCompile(`(?m)^languages:.*$`).ReplaceAll(text, nil)
	src.Content = layers{fstest.MapFS{keeperFile: {Data: alone}}, src.Content}
	return src
}

// testMemory is what the builds of these tests have worked out: a build with a memory has
// the same bytes as one without ([TestMemory]). A benchmark has none.
var testMemory = NewMemory()

func siteOf(t testing.TB, src Sources, opt Options) (Output, diag.List) {
	if _, bench := t.(*testing.B); !bench && opt.Memory == nil {
		opt.Memory = testMemory
	}
	return Site(src, opt)
}

// mustSite builds the shipped site in English, which is what tests know the words of;
// languages_test.go looks at the others.
func mustSite(t testing.TB, opt Options) Output {
	t.Helper()
	opt.Language = catalogue.English
	out, problems := siteOf(t, inEnglish(), opt)
	if problems.Blocked() {
		t.Fatalf("the shipped site has problems:\n%v", problems)
	}
	return out
}

func TestSite(t *testing.T) {
	out := mustSite(t, Options{})
	files := contents(out)

	t.Run("every row has a page, every table a page and its data", func(t *testing.T) {
		set, _ := tables.Load(tables.FS)
		for _, table := range set.Tables {
			want := []string{"chart/" + table.ID + "/index.html", "data/" + table.ID + ".csv", "data/" + table.ID + ".json"}
			for _, row := range table.Rows {
				if !table.Joint() {
					line := `<tr id="row-` + row.ID + `" `
					if page := files["chart/"+table.ID+"/index.html"]; !strings.Contains(string(page), line) {
						t.Errorf("%s has no line in its table", row.Ref())
					}
					continue
				}
				want = append(want, "joint/"+row.ID+"/index.html", "joint/"+row.ID+"/paper/index.html")
			}
			for _, path := range want {
				if len(files[path]) == 0 {
					t.Errorf("%s is missing", path)
				}
			}
		}
	})

	t.Run("two builds give equal bytes", func(t *testing.T) {
		if diff := cmp.Diff(files, contents(mustSite(t, Options{})), wholeFiles); diff != "" {
			t.Errorf("second build differs:\n%s", diff)
		}
	})

	t.Run("assets are named by content and come before pages", func(t *testing.T) {
		for _, f := range out.Files {
			if got, want := f.Stage == Assets, strings.HasPrefix(f.Path, "assets/"); got != want {
				t.Errorf("%s: written among the assets: %v, lies among them: %v", f.Path, got, want)
			}
		}
	})

	t.Run("the chart's version stands on every page", func(t *testing.T) {
		for _, name := range sheets(files) {
			if !bytes.Contains(files[name], []byte(out.Chart.Name())) {
				t.Errorf("%s does not name the chart's version", name)
			}
		}
	})
}

// mapped is a folder as a map, whose files can be changed.
func mapped(t testing.TB, dir fs.FS) fstest.MapFS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(dir, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		data, err := fs.ReadFile(dir, path)
		files[path] = &fstest.MapFile{Data: data}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// spoiled returns the embedded sources with some content files replaced or added.
func spoiled(t *testing.T, files map[string]string) Sources {
	t.Helper()
	src := inEnglish()
	all := mapped(t, src.Content)
	for path, text := range files {
		all[path] = &fstest.MapFile{Data: []byte(text)}
	}
	src.Content = all
	return src
}

func TestLinksOfContributors(t *testing.T) {
	head := "---\ntitle: T\nabout: A.\n"
	for _, test := range []struct {
		name  string
		files map[string]string
		want  []string
	}{
		{"broken link", map[string]string{"extra.md": head + "---\n\nSee [this](/no-such-page/).\n"},
			[]string{`content/extra.md:6:5: /extra/: link "/no-such-page/" leads to no page [broken-link]`}},
		{"near address", map[string]string{"extra.md": head + "---\n\nSee [this](/tables/joints-inch/).\n"},
			[]string{`content/extra.md:6:5: /extra/: link "/tables/joints-inch/" leads to no page [broken-link]` + "\n    hint: did you mean /chart/joints-inch/?"}},
		{"broken fragment", map[string]string{"extra.md": head + "---\n\nSee [this](/about/#nothing-here).\n"},
			[]string{`content/extra.md:6:5: /extra/: link "/about/#nothing-here": the page has no place named "nothing-here" [broken-fragment]`}},
		{"broken next", map[string]string{"extra.md": head + "next: [no-such-page]\n---\n\nText.\n"},
			[]string{`content/extra.md:4:8: /extra/: link "/no-such-page/" leads to no page [broken-link]`}},
		{"address taken", map[string]string{"chart.md": head + "---\n\nText.\n"},
			[]string{"content/chart.md: /chart/: two pages want the address /chart/ [address-taken]\n    note: first used by tables"}},
		{"two offenders, sorted", map[string]string{"extra.md": head + "---\n\n[b](/b/)\n\n[a](/a/)\n"},
			[]string{`content/extra.md:6:1: /extra/: link "/b/" leads to no page [broken-link]`,
				`content/extra.md:8:1: /extra/: link "/a/" leads to no page [broken-link]`}},
		{"identify keeps its fragment", map[string]string{"extra.md": head + "---\n\n[a](/identify/#hold=plate)\n"}, nil},
		{"links out are left alone", map[string]string{"extra.md": head + "---\n\n[a](https://example.org/x)\n"}, nil},
	} {
		t.Run(test.name, func(t *testing.T) {
			src := spoiled(t, test.files)
			out, problems := siteOf(t, src, Options{})
			checkFinds(t, src, problems)
			var got []string
			for _, p := range problems {
				got = append(got, p.String())
			}
			if diff := cmp.Diff(test.want, got); diff != "" {
				t.Errorf("problems (-want +got):\n%s", diff)
			}
			if len(test.want) > 0 && len(out.Files) > 0 {
				t.Error("a site with problems must not be handed on")
			}
		})
	}
}

func TestMissingPage(t *testing.T) {
	src := spoiled(t, nil)
	delete(src.Content.(fstest.MapFS), "by-hand.md")
	_, problems := siteOf(t, src, Options{})
	checkFinds(t, src, problems)
	if len(problems) != 1 || problems[0].Rule != "missing-page" {
		t.Errorf("got %v, want one missing-page", problems)
	}
}

func TestBasePath(t *testing.T) {
	for given, want := range map[string]string{"": "/", "/": "/", "sub": "/sub/", "/sub": "/sub/", "/a/b/": "/a/b/", "/a/../b/": "/b/"} {
		if got := basePath(given); got != want {
			t.Errorf("basePath(%q) = %q, want %q", given, got, want)
		}
	}
}

// The page offers faces by the tables' rule, the core judges queries by its own. What
// the page offers, the core must take, and both must think of the same faces first.
func TestFacesOfHolds(t *testing.T) {
	m, problems := NewIdentifier(inEnglish(), "")
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for _, hold := range holdStrip {
		got, err := m.FacesFor(string(hold))
		if err != nil {
			t.Fatal(err)
		}
		offered := facesToOffer(hold)
		if got[0] != string(offered[0]) {
			t.Errorf("%s: the page offers %s first, the core %s", hold, offered[0], got[0])
		}
		for _, f := range offered {
			if !slices.Contains(got, string(f)) {
				t.Errorf("%s: the page offers %s, the core takes %v", hold, f, got)
			}
		}
	}
}

// wholeFiles compares files at once: byte by byte, as go-cmp does by itself, two sites take
// half a minute.
var wholeFiles = cmp.Comparer(bytes.Equal)

func contents(out Output) map[string][]byte {
	files := map[string][]byte{}
	for _, f := range out.Files {
		files[f.Path] = f.Bytes
	}
	return files
}

// What serve remembers must not change a byte, and an answer is forgotten with its chart.
func TestMemory(t *testing.T) {
	memory := NewMemory()
	first := contents(mustSite(t, Options{Memory: memory}))
	known := len(memory.answers)
	if known == 0 || len(memory.pictures) != len(iconPictures) || len(memory.scripts["en"].assets.Files) == 0 {
		t.Fatalf("remembered: %d answers, %d pictures, %d files", known, len(memory.pictures), len(memory.scripts["en"].assets.Files))
	}
	if diff := cmp.Diff(first, contents(mustSite(t, Options{Memory: memory})), wholeFiles); diff != "" {
		t.Errorf("a build with a memory differs:\n%s", diff)
	}
	if len(memory.answers) != known {
		t.Errorf("the same site asked %d new questions", len(memory.answers)-known)
	}
	mustSite(t, Options{Base: "/sub/", Memory: memory})
	if len(memory.answers) != 2*known {
		t.Errorf("%d answers after a build under another base, want %d", len(memory.answers), 2*known)
	}
	src := inEnglish()
	src.Tables = moveAcross(t, "1350", "3.630")
	plain, _ := Site(src, Options{})
	out, _ := Site(src, Options{Memory: memory})
	if diff := cmp.Diff(contents(plain), contents(out), wholeFiles); diff != "" || out.Stale {
		t.Errorf("a build with the memory of another chart differs:\n%.2000s", diff)
	}
	bolts := changedTables(t)
	bolts["fasteners.yaml"] = &fstest.MapFile{Data: bytes.ReplaceAll(bolts["fasteners.yaml"].Data, []byte("is: 38-48,"), []byte("is: 39-48,"))}
	src.Tables = bolts
	plain, _ = Site(src, Options{})
	out, _ = Site(src, Options{Memory: memory})
	if diff := cmp.Diff(contents(plain), contents(out), wholeFiles); diff != "" {
		t.Errorf("a build with the memory of other bolts differs:\n%.2000s", diff)
	}
	src.Static = fstest.MapFS{}
	if made := memory.bundled(src, "en", false); len(made.assets.Files) != 0 {
		t.Error("scripts that are gone are remembered")
	}
}

// A hasty build changes the row's page at once; only pages with examples keep the answer
// of the chart they name, until the whole build.
func TestHastyBuild(t *testing.T) {
	memory := NewMemory()
	first := mustSite(t, Options{Memory: memory, Live: "/_live"})
	src := inEnglish()
	src.Tables = moveAcross(t, "1350", "3.630")
	hasty, problems := Site(src, Options{Memory: memory, Live: "/_live", Hasty: true})
	if problems.Blocked() || !hasty.Stale {
		t.Fatalf("stale %t, %v", hasty.Stale, problems)
	}
	whole, _ := Site(src, Options{Memory: memory, Live: "/_live"})
	if whole.Stale {
		t.Error("the whole build is stale")
	}
	was, is := contents(hasty), contents(whole)
	if !strings.Contains(string(was["joint/1350/index.html"]), "3.630 in") {
		t.Error("the row's page has its old figure")
	}
	differ := 0
	for _, name := range htmlPages(is) {
		if string(was[name]) == string(is[name]) {
			continue
		}
		differ++
		if !strings.Contains(string(was[name]), "Worked out when this page was made, with chart "+first.Chart.Name()) {
			t.Errorf("%s differs, and does not say which chart its answer is of", name)
		}
	}
	if differ == 0 {
		t.Error("no example changed: the test looks at nothing")
	}
	if again, _ := Site(src, Options{Memory: memory, Live: "/_live", Hasty: true}); again.Stale {
		t.Error("answers of this very chart are stale")
	}
}
