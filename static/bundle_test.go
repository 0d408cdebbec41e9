package static

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io/fs"
	"os"
	"regexp"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/google/go-cmp/cmp"
)

// small is a whole set of sources, one or two lines each.
func small() fstest.MapFS {
	file := func(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }
	return fstest.MapFS{
		"matcher/index.ts":           file("import { twice } from \"./twice\";\nexport const four: number = twice(2);\n"),
		"matcher/twice.ts":           file("/* a comment */ export function twice(x: number): number { return x * 2; }\n"),
		"parts/identify/identify.ts": file("declare const CapspanCore: typeof import(\"../../matcher/index\");\ndocument.title = String(CapspanCore.four);\n"),
		"parts/table/table.ts":       file("document.title = \"table\";\n"),
		"parts/sheet.css":            file("@import \"./page/page.css\";\n.a { background: url(../icons/mark.svg) }\n"),
		"parts/page/page.css":        file(".page { margin: 0px }\n"),
		"icons/mark.svg":             file("<svg xmlns=\"http://www.w3.org/2000/svg\"/>\n"),
	}
}

func TestBundle(t *testing.T) {
	fsys := small()
	assets, problems := Bundle(fsys)
	for _, p := range problems {
		if !strings.HasPrefix(p.Rule, "missing-part") {
			t.Errorf("problem: %v", p)
		}
	}
	hashed := regexp.MustCompile(`^assets/[a-z]+\.([0-9a-f]{8})\.(js|css|svg)$`)
	for _, f := range assets.Files {
		m := hashed.FindStringSubmatch(f.Path)
		sum := sha256.Sum256(f.Bytes)
		if m == nil || m[1] != hex.EncodeToString(sum[:4]) {
			t.Errorf("%s does not carry the hash of its bytes, %x", f.Path, sum[:4])
		}
		if bytes.Contains(f.Bytes, []byte("a comment")) || bytes.Contains(f.Bytes, []byte("twice.ts")) {
			t.Errorf("%s carries comments or paths of its sources:\n%s", f.Path, f.Bytes)
		}
	}
	if core := string(assets.Bytes("matcher.js")); !strings.HasPrefix(core, "var CapspanCore=") {
		t.Errorf("matcher.js does not define the global: %s", core)
	}
	sheet, icon := string(assets.Bytes("sheet.css")), assets.Path("mark.svg")
	if !strings.Contains(sheet, ".page{") || !strings.Contains(sheet, strings.TrimPrefix(icon, "assets/")) {
		t.Errorf("the sheet lacks its import or the icon %s: %s", icon, sheet)
	}
	if diff := cmp.Diff(string(fsys["icons/mark.svg"].Data), string(assets.Bytes("mark.svg"))); diff != "" {
		t.Errorf("the icon was changed:\n%s", diff)
	}
}

// Two bundles of the same sources are the same bytes, wherever the sources lie.
func TestBundleIsDeterministic(t *testing.T) {
	dir := t.TempDir()
	if err := os.CopyFS(dir, small()); err != nil {
		t.Fatal(err)
	}
	want, _ := Bundle(small())
	for _, fsys := range []fs.FS{small(), os.DirFS(dir)} {
		got, _ := Bundle(fsys)
		if diff := cmp.Diff(want.Files, got.Files); diff != "" {
			t.Error(diff)
		}
	}
}

func TestBundleProblems(t *testing.T) {
	for _, c := range []struct {
		name, file, text string
		want             string // the problem's first line
		kept             string // an asset that is still there
	}{
		{"a slip in the core", "matcher/twice.ts", "// é\nexport const twice = (x: number) => ;\n",
			`static/matcher/twice.ts:2:37: Unexpected ";" [bundle]`, "sheet.css"},
		{"a column counted in characters", "matcher/twice.ts", "export const é = ;\n",
			`static/matcher/twice.ts:1:18: Unexpected ";" [bundle]`, "table.js"},
		{"a file that is not there", "parts/table/table.ts", "import \"./sort\";\n",
			`static/parts/table/table.ts:1:8: no file "static/parts/table/sort" [bundle]`, "matcher.js"},
		{"a package", "parts/table/table.ts", "import \"react\";\n",
			`static/parts/table/table.ts:1:8: import "react" is not relative: the site has no packages [bundle]`, "matcher.js"},
		{"an icon that is not there", "parts/sheet.css", "a { background: url(../icons/no.svg) }\n",
			`static/parts/sheet.css:1:17: url "../icons/no.svg" is no file of static/icons [bundle]`, "matcher.js"},
	} {
		t.Run(c.name, func(t *testing.T) {
			fsys := small()
			fsys[c.file] = &fstest.MapFile{Data: []byte(c.text)}
			assets, problems := Bundle(fsys)
			var got []string
			for _, p := range problems {
				first, _, _ := strings.Cut(p.String(), "\n")
				got = append(got, first)
			}
			if !strings.Contains(strings.Join(got, "\n"), c.want) {
				t.Errorf("got\n%s\nwant\n%s", strings.Join(got, "\n"), c.want)
			}
			if assets.Path(c.kept) == "" {
				t.Errorf("%s was lost with it", c.kept)
			}
		})
	}
}

func TestMissingPart(t *testing.T) {
	fsys := small()
	delete(fsys, "parts/table/table.ts")
	assets, problems := Bundle(fsys)
	if problems.Blocked() || !strings.Contains(fmt.Sprint(problems), "table.js") {
		t.Errorf("got %v, want a warning that names table.js", problems)
	}
	if assets.Path("table.js") != "" || assets.Path("matcher.js") == "" {
		t.Errorf("got %+v", assets.names)
	}
}

// The shipped sources bundle without a word, and the core leaves the browser alone.
func TestShippedSources(t *testing.T) {
	assets, problems := Bundle(FS)
	if len(problems) > 0 {
		t.Errorf("problems: %v", problems)
	}
	pieced, problems := BundlePieced(FS)
	if len(problems) > 0 {
		t.Errorf("problems in pieces: %v", problems)
	}
	for _, e := range entries {
		if there := len(assets.Bytes(e.name)) > 0; there == e.pieced || len(pieced.Bytes(e.name)) == 0 {
			t.Errorf("%s is among the scripts of a chart held whole: %v, in pieces %d bytes", e.name, there, len(pieced.Bytes(e.name)))
		}
	}
	core, problems := Core(FS)
	if len(problems) > 0 || !bytes.Equal(core, assets.Core()) {
		t.Errorf("the core alone differs from matcher.js: %v", problems)
	}
	for _, word := range []string{"document.", "window.", "Intl.", "toLocale", "Date.now", "new Date", "Math.random", "fetch("} {
		if bytes.Contains(core, []byte(word)) {
			t.Errorf("the core uses %s", word)
		}
	}
}
