package build

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"github.com/andybalholm/brotli"
	"github.com/google/go-cmp/cmp"

	"capspan/tables"
)

// retiredRows are the shipped tables with rows of each fate; the chart itself has none yet.
func retiredRows(t *testing.T) Sources {
	t.Helper()
	src := inEnglish()
	all := fstest.MapFS{"retired.yaml": {Data: []byte(`retired:
- {id: old-1310, to: ["1310"], why: it was renamed}
- {id: old-pair, to: ["1310", "1330"], why: it was split}
- {id: old-gone, why: nobody made it}
`)}}
	names, err := fs.Glob(src.Tables, "*.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for _, name := range names {
		if all[name] == nil {
			data, err := fs.ReadFile(src.Tables, name)
			if err != nil {
				t.Fatal(err)
			}
			all[name] = &fstest.MapFile{Data: data}
		}
	}
	src.Tables = all
	return src
}

func TestHostFiles(t *testing.T) {
	out, problems := siteOf(t, retiredRows(t), Options{Base: "/sub"})
	if problems.Blocked() {
		t.Fatal(problems)
	}
	files := contents(out)
	if diff := cmp.Diff([]Redirect{{"/sub/joint/old-1310/", "/sub/joint/1310/"}}, out.Redirects); diff != "" {
		t.Errorf("redirects (-want +got):\n%s", diff)
	}
	if _, want, _ := strings.Cut(string(files["_redirects"]), "\n"); want != "/sub/joint/old-1310/ /sub/joint/1310/ 301\n/sub/joint/old-1310 /sub/joint/1310/ 301\n" {
		t.Errorf("_redirects:\n%s", want)
	}
	for _, gone := range []string{"old-1310", "old-pair", "old-gone"} {
		if files["joint/"+gone+"/index.html"] == nil {
			t.Errorf("%s has no page for hosts that read no redirects", gone)
		}
	}
	for _, name := range []string{"_headers", "_redirects", "hosting/nginx.conf", "hosting/Caddyfile", "SHA256SUMS.txt"} {
		if len(files[name]) == 0 {
			t.Errorf("%s is missing", name)
		}
	}
	live := contents(mustSite(t, Options{Live: "/_live"}))
	if live["_headers"] != nil || live[sumsName] != nil {
		t.Error("serve is given files for hosts")
	}
}

// matches reports whether a pattern of _headers takes an address: * is anything at its end.
func matches(pattern, address string) bool {
	if before, star := strings.CutSuffix(pattern, "*"); star {
		return strings.HasPrefix(address, before)
	}
	return pattern == address
}

// Every address of the site is told how long it keeps, once, and each field stands in
// one rule only of those that match it.
func TestHeadersFile(t *testing.T) {
	out := mustSite(t, Options{Base: "/sub/"})
	rules := map[string]map[string]string{}
	pattern := ""
	for line := range strings.Lines(string(contents(out)["_headers"])) {
		line = strings.TrimSuffix(line, "\n")
		switch field, inRule := strings.CutPrefix(line, "  "); {
		case strings.HasPrefix(line, "#"):
		case inRule:
			name, value, _ := strings.Cut(field, ": ")
			rules[pattern][name] = value
		default:
			pattern = line
			rules[pattern] = map[string]string{}
		}
	}
	for _, f := range out.Files {
		if f.Stage == Hosting {
			continue
		}
		got := map[string][]string{}
		for pattern, fields := range rules {
			if matches(pattern, "/sub/"+strings.TrimSuffix(f.Path, "index.html")) {
				for name, value := range fields {
					got[name] = append(got[name], value)
				}
			}
		}
		policy := Policy + "; frame-ancestors 'none'"
		want := map[string][]string{"Cache-Control": {cacheAndAsk}}
		switch {
		case f.Stage == Assets:
			want["Cache-Control"] = []string{cacheForEver}
			fallthrough
		case f.Path == "embed/capspan.js", f.Path == "embed/chart.json":
			want["Access-Control-Allow-Origin"] = []string{"*"}
			want["Cross-Origin-Resource-Policy"] = []string{"cross-origin"}
		case f.Path == "embed/frame/index.html":
			policy = Policy + "; frame-ancestors *"
			want["Cross-Origin-Resource-Policy"] = []string{"cross-origin"}
			want["Cross-Origin-Embedder-Policy"] = []string{"require-corp"}
		}
		want["Content-Security-Policy"] = []string{policy}
		for _, h := range headers {
			want[h.name] = []string{h.value}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("%s (-want +got):\n%s", f.Path, diff)
		}
	}
}

var metaPolicy = regexp.MustCompile(`http-equiv="Content-Security-Policy" content="([^"]*)"`)

// A browser obeys both the page's policy and the header's; were they to differ, a page
// would work on one host and not on another.
func TestPolicyOfPages(t *testing.T) {
	for name, page := range contents(mustSite(t, Options{})) {
		if !strings.HasSuffix(name, ".html") {
			continue
		}
		found := metaPolicy.FindSubmatch(page)
		if found == nil || strings.ReplaceAll(string(found[1]), "&#39;", "'") != Policy {
			t.Errorf("%s: its policy is %q, the hosts' %q", name, found, Policy)
		}
	}
}

// What was packed before leaves nothing behind: equal input gives equal bytes.
func TestPackedAlike(t *testing.T) {
	texts := [][]byte{{}, []byte("a cap"), bytes.Repeat([]byte("a cap of 1.062 in, "), 4000)}
	for _, f := range mustSite(t, Options{}).Files {
		if packable(f) && len(f.Bytes) < 4000 && len(texts) < 12 {
			texts = append(texts, f.Bytes)
		}
	}
	for _, level := range []int{5, brotliLevel} {
		for n := range 3 * len(texts) {
			text := texts[n*7%len(texts)]
			var fresh bytes.Buffer
			w := brotli.NewWriterLevel(&fresh, level)
			w.Write(text)
			w.Close()
			if got := packBrotli(text, level); !bytes.Equal(got, fresh.Bytes()) {
				t.Errorf("level %d: %.20q is packed into %d bytes, and by itself into %d others", level, text, len(got), fresh.Len())
			}
		}
	}
}

func TestPack(t *testing.T) {
	text := []byte(strings.Repeat("a cap of 1.062 in and another of 1.188 in. ", 40))
	for _, f := range []File{
		{Path: "joint/1310/index.html", Bytes: text, Stage: Pages},
		{Path: "assets/a.1.svg", Bytes: text, Stage: Assets},
	} {
		packed := pack(f, brotliLevel, nil)
		if len(packed) != 2 || !packable(f) {
			t.Fatalf("%s: %d packed files, want 2", f.Path, len(packed))
		}
		for _, p := range packed {
			var r io.Reader = brotli.NewReader(bytes.NewReader(p.Bytes))
			if p.Path == f.Path+".gz" {
				z, err := gzip.NewReader(bytes.NewReader(p.Bytes))
				if err != nil {
					t.Fatal(err)
				}
				if !z.ModTime.IsZero() || z.Name != "" {
					t.Errorf("%s carries a date or a name: %+v", p.Path, z.Header)
				}
				r = z
			} else if p.Path != f.Path+".br" {
				t.Errorf("packed as %s", p.Path)
			}
			got, err := io.ReadAll(r)
			if err != nil || !bytes.Equal(got, f.Bytes) || p.Stage != f.Stage {
				t.Errorf("%s: stage %d, error %v, unpacks to %d bytes, want %d", p.Path, p.Stage, err, len(got), len(f.Bytes))
			}
		}
	}
	for _, f := range []File{{Path: "a.png", Bytes: text}, {Path: "_headers", Bytes: text, Stage: Hosting}} {
		if packable(f) {
			t.Errorf("%s would be packed", f.Path)
		}
	}
	if packed := pack(File{Path: "a.txt", Bytes: []byte("x")}, brotliLevel, nil); len(packed) != 0 {
		t.Errorf("one byte is packed into %d", len(packed[0].Bytes))
	}
}

// BenchmarkCompress tells what a level costs and gives, over all texts of the site, on
// one core.
func BenchmarkCompress(b *testing.B) {
	var texts []File
	for _, f := range mustSite(b, Options{}).Files {
		if packable(f) {
			texts = append(texts, f)
		}
	}
	for _, level := range []int{5, 9, 10, 11} {
		b.Run(fmt.Sprintf("brotli-%d", level), func(b *testing.B) {
			for b.Loop() {
				raw, packed := 0, 0
				for _, f := range texts {
					raw, packed = raw+len(f.Bytes), packed+len(packBrotli(f.Bytes, level))
				}
				b.ReportMetric(float64(raw), "raw-bytes")
				b.ReportMetric(float64(packed), "packed-bytes")
			}
		})
	}
	b.Run("gzip", func(b *testing.B) {
		for b.Loop() {
			packed := 0
			for _, f := range texts {
				packed += len(packGzip(f.Bytes))
			}
			b.ReportMetric(float64(packed), "packed-bytes")
		}
	})
}

func TestCheckBase(t *testing.T) {
	for base, good := range map[string]bool{"": true, "/": true, "/joints/": true, "a/b.c_d~e-f": true,
		"/our joints/": false, `/a";b/`: false, "/$x/": false, "/é/": false, "/a\n/": false, "/%2e/": false, "/*/": false} {
		if err := CheckBase(base); (err == nil) != good {
			t.Errorf("%q: got %v", base, err)
		}
	}
}

// Ids go into the redirect files and the snippets as they are.
func TestIDsNeedNoEscaping(t *testing.T) {
	set, _ := tables.Load(tables.FS)
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			if !baseForm.MatchString(row.ID) {
				t.Errorf("%s: the id would have to be written differently in an address", row.ID)
			}
		}
	}
}

// Equal input gives equal bytes on any day and machine: what makes the site asks neither
// for the time nor for anything else of its surroundings. The program's own test builds
// in two of them and compares.
func TestBuildAsksNothingOfTheMachine(t *testing.T) {
	banned := []string{"time.Now", "time.Since", "time.Local", "os.Getwd", "os.Hostname", "os.Getenv", "os.LookupEnv", "os.Environ", "os.Getpid", "os.UserHomeDir"}
	// Of serve: timeouts, and how long a build took; of kept: which chart was asked last; of write_known: whether a
	// file is so new that it must be read once more; the others build no site.
	mayAsk := regexp.MustCompile(`^build/((serve|watch|kept|write_known)|(publish|release|growth)/)`)
	looked := 0
	for _, top := range []string{"build", "content", "static", "tables", "templates"} {
		err := filepath.WalkDir(filepath.Join("..", top), func(name string, d fs.DirEntry, err error) error {
			if err != nil {
				return err
			}
			if d.Name() == "node_modules" {
				return fs.SkipDir
			}
			name = strings.TrimPrefix(filepath.ToSlash(name), "../")
			if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") || mayAsk.MatchString(name) {
				return nil
			}
			looked++
			file, err := parser.ParseFile(token.NewFileSet(), filepath.Join("..", name), nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if s, ok := n.(*ast.SelectorExpr); ok {
					if x, ok := s.X.(*ast.Ident); ok && slices.Contains(banned, x.Name+"."+s.Sel.Name) {
						t.Errorf("%s asks for %s.%s", name, x.Name, s.Sel.Name)
					}
				}
				return true
			})
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if looked < 60 {
		t.Errorf("only %d files were looked at", looked)
	}
}

func TestSumsFile(t *testing.T) {
	got := string(sumsFile([]File{{Path: "a", Bytes: []byte("abc")}}))
	// FIPS 180-4, example of SHA-256 for "abc".
	if want := "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad  a\n"; got != want {
		t.Errorf("got %q, want %q", got, want)
	}
}
