package build

import (
	"bytes"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/extension"

	"capspan/build/diag"
	"capspan/tables"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// BenchmarkBuild is the shipped site from sources to an empty folder; compare it with
// BenchmarkPlainLoop of the same run.
func BenchmarkBuild(b *testing.B) { fullBuild(b, inEnglish()) }

// BenchmarkBuildMany is the same of invented catalogues; compare it with
// BenchmarkPlainLoopMany of the same run and the same rows.
func BenchmarkBuildMany(b *testing.B) { atSizes(b, fullBuild) }

// BenchmarkPlainLoopMany is the plain loop over their pages.
func BenchmarkPlainLoopMany(b *testing.B) { atSizes(b, plainLoop) }

func atSizes(b *testing.B, of func(*testing.B, Sources)) {
	for _, rows := range []int{10_000, 100_000} {
		b.Run(strconv.Itoa(rows), func(b *testing.B) {
			src, err := makeMany(rows)
			if err != nil {
				b.Fatal(err)
			}
			of(b, src)
		})
	}
}

func fullBuild(b *testing.B, src Sources) {
	for b.Loop() {
		dir := filepath.Join(b.TempDir(), "site")
		out := buildOf(b, src, Options{Spool: dir})
		if _, err := Write(dir, out); err != nil {
			b.Fatal(err)
		}
		b.ReportMetric(float64(len(out.Files)), "files")
		out.Close()
	}
}

// BenchmarkPlainLoop does only what nobody can leave out: convert the same Markdown,
// execute the same templates on ready views, write the same bytes. One loop, one core.
func BenchmarkPlainLoop(b *testing.B) { plainLoop(b, inEnglish()) }

func plainLoop(b *testing.B, src Sources) {
	all, problems := load(src, Options{Language: catalogue.English})
	if problems.Blocked() {
		b.Fatal(problems)
	}
	s := newSite(all[0], Options{})
	s.bundle()
	var err error
	if s.driveline, err = s.calculating(); err != nil {
		b.Fatal(err)
	}
	drafts, problems := s.drafts()
	if problems.Blocked() {
		b.Fatal(problems)
	}
	for _, d := range s.manyDrafts() {
		drafts = append(drafts, func() (templates.Page, diag.Pos) { return d.fill(s) })
	}
	shared := s.shared()
	views := make([]templates.Page, len(drafts))
	for n, draft := range drafts {
		views[n], _ = draft()
		views[n].Site = shared
	}
	out := buildOf(b, src, Options{})
	sources := markdown(b, src.Content)
	for b.Loop() {
		dir := b.TempDir()
		md := goldmark.New(goldmark.WithExtensions(extension.GFM))
		var scratch bytes.Buffer
		for _, text := range sources {
			scratch.Reset()
			if err := md.Convert(text, &scratch); err != nil {
				b.Fatal(err)
			}
		}
		frames, err := templates.New(templates.FS, s.words)
		if err != nil {
			b.Fatal(err)
		}
		for _, page := range views {
			scratch.Reset()
			if err := frames.Render(&scratch, page); err != nil {
				b.Fatal(err)
			}
		}
		for _, f := range out.Files {
			name := filepath.Join(dir, filepath.FromSlash(f.Path))
			if err := os.MkdirAll(filepath.Dir(name), 0o755); err != nil {
				b.Fatal(err)
			}
			if err := os.WriteFile(name, f.Bytes, 0o644); err != nil {
				b.Fatal(err)
			}
		}
	}
}

// BenchmarkRebuild is what serve does when one file has changed: everything in
// memory again, and only what differs on disk.
func BenchmarkRebuild(b *testing.B) {
	dir := filepath.Join(b.TempDir(), "site")
	for b.Loop() {
		if _, err := Write(dir, mustSite(b, Options{})); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkSite leaves the disk out.
func BenchmarkSite(b *testing.B) {
	for b.Loop() {
		mustSite(b, Options{})
	}
}

// BenchmarkLoadTables is the work of capspan check on the shipped tables alone.
func BenchmarkLoadTables(b *testing.B) {
	for b.Loop() {
		if _, problems := tables.Load(tables.FS); problems.Blocked() {
			b.Fatal(problems)
		}
	}
}

func markdown(b *testing.B, from fs.FS) [][]byte {
	var sources [][]byte
	err := fs.WalkDir(from, ".", func(path string, _ fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".md") {
			return err
		}
		text, err := fs.ReadFile(from, path)
		sources = append(sources, text)
		return err
	})
	if err != nil {
		b.Fatal(err)
	}
	return sources
}

// BenchmarkDrawings makes every drawing that goes with a row: in plan and life size.
func BenchmarkDrawings(b *testing.B) {
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		b.Fatal(problems)
	}
	for b.Loop() {
		for _, table := range set.Tables {
			for _, row := range table.Rows {
				if len(row.Ends) > 0 {
					english.drawn().Joint("a", english.drawing(row))
					english.drawn().LifeSize("b", english.drawing(row))
				}
			}
		}
	}
}

// BenchmarkServeRebuild is the work between a change of a row under serve and the new page:
// the whole site in memory, but for what is remembered; and then that of the examples.
func BenchmarkServeRebuild(b *testing.B) {
	for _, hasty := range []bool{true, false} {
		b.Run(map[bool]string{true: "hasty", false: "whole"}[hasty], func(b *testing.B) {
			memory := NewMemory()
			mustSite(b, Options{Memory: memory})
			for n := 0; b.Loop(); n++ {
				src := inEnglish()
				src.Tables = moveAcross(b, "1310", fmt.Sprintf("3.219%02d", 1+n%99))
				if _, problems := Site(src, Options{Memory: memory, Hasty: hasty}); problems.Blocked() {
					b.Fatal(problems)
				}
			}
		})
	}
}

// BenchmarkServeRebuildMany is the same of an invented catalogue: one figure of one row, and
// what differs on disk.
func BenchmarkServeRebuildMany(b *testing.B) {
	src, err := makeMany(10_000)
	if err != nil {
		b.Fatal(err)
	}
	memory, dir := NewMemory(), filepath.Join(b.TempDir(), "site")
	other, _ := edited(b, src, "joints-metric.yaml")
	opt := Options{Memory: memory, Hasty: true}
	build := func(src Sources) {
		if _, err := memory.Write(dir, buildOf(b, src, opt)); err != nil {
			b.Fatal(err)
		}
	}
	build(src)
	for n := 0; b.Loop(); n++ {
		build([]Sources{other, src}[n%2])
	}
}
