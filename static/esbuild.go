package static

import (
	"fmt"
	"io/fs"
	"path"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/evanw/esbuild/pkg/api"

	"capspan/build/diag"
)

// namespace marks paths that live in the fs.FS, so that esbuild never looks at the disk.
const namespace = "static"

func (a Assets) build(fsys fs.FS, e entry) ([]byte, diag.List) {
	result := api.Build(api.BuildOptions{
		EntryPoints:       []string{e.source},
		Outfile:           "/" + e.name, // never written: Write is false
		AbsWorkingDir:     "/",
		Bundle:            true,
		Write:             false,
		Format:            api.FormatIIFE,
		GlobalName:        e.global,
		Target:            api.ES2020,
		Platform:          api.PlatformBrowser,
		Charset:           api.CharsetUTF8,
		Define:            map[string]string{inPieces: strconv.FormatBool(a.pieced)},
		MinifyWhitespace:  true,
		MinifyIdentifiers: true,
		MinifySyntax:      true,
		LegalComments:     api.LegalCommentsNone,
		LogLevel:          api.LogLevelSilent,
		TsconfigRaw:       `{"compilerOptions":{"target":"es2020","useDefineForClassFields":false}}`,
		Plugins:           []api.Plugin{a.reader(fsys)},
	})
	var problems diag.List
	for _, m := range result.Errors {
		problems.Add(problem(fsys, m, diag.Error))
	}
	for _, m := range result.Warnings {
		problems.Add(problem(fsys, m, diag.Warning))
	}
	if len(result.OutputFiles) != 1 {
		if !problems.Blocked() {
			problems.Add(diag.Problem{
				Pos:  diag.Pos{File: "static/" + e.source},
				Fact: fmt.Sprintf("gives %d files, want 1", len(result.OutputFiles)), Rule: "bundle",
			})
		}
		return nil, problems
	}
	return result.OutputFiles[0].Contents, problems
}

// loaders by extension; anything else is refused by name.
var loaders = map[string]api.Loader{".ts": api.LoaderTS, ".css": api.LoaderCSS, ".json": api.LoaderJSON}

// reader makes esbuild read fsys and nothing else.
func (a Assets) reader(fsys fs.FS) api.Plugin {
	return api.Plugin{Name: namespace, Setup: func(b api.PluginBuild) {
		a.late(b)
		a.speak(b, fsys)
		b.OnResolve(api.OnResolveOptions{Filter: `.*`}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
			if args.Kind == api.ResolveCSSURLToken {
				return a.icon(args)
			}
			target := args.Path
			if args.Kind != api.ResolveEntryPoint {
				if !strings.HasPrefix(target, "./") && !strings.HasPrefix(target, "../") {
					return api.OnResolveResult{}, fmt.Errorf("import %q is not relative: the site has no packages", target)
				}
				target = path.Join(path.Dir(args.Importer), target)
			}
			for _, p := range []string{target, target + ".ts"} {
				if info, err := fs.Stat(fsys, p); err == nil && !info.IsDir() {
					return api.OnResolveResult{Path: p, Namespace: namespace}, nil
				}
			}
			return api.OnResolveResult{}, fmt.Errorf("no file %q", "static/"+target)
		})
		b.OnLoad(api.OnLoadOptions{Filter: `.*`, Namespace: namespace}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
			loader, ok := loaders[path.Ext(args.Path)]
			if !ok {
				return api.OnLoadResult{}, fmt.Errorf("no loader for %q", "static/"+args.Path)
			}
			bytes, err := fs.ReadFile(fsys, args.Path)
			if err != nil {
				return api.OnLoadResult{}, err
			}
			text := string(bytes)
			return api.OnLoadResult{Contents: &text, Loader: loader}, nil
		})
	}}
}

// icon points a style sheet's url(icons/...) at the hashed file, which lies in the
// same folder as the bundled sheet.
func (a Assets) icon(args api.OnResolveArgs) (api.OnResolveResult, error) {
	if strings.HasPrefix(args.Path, "data:") || strings.HasPrefix(args.Path, "#") {
		return api.OnResolveResult{Path: args.Path, External: true}, nil
	}
	at := a.names[path.Base(args.Path)]
	if at == "" || path.Dir(path.Join(path.Dir(args.Importer), args.Path)) != "icons" {
		return api.OnResolveResult{}, fmt.Errorf("url %q is no file of static/icons", args.Path)
	}
	return api.OnResolveResult{Path: "./" + path.Base(at), External: true}, nil
}

// problem converts esbuild's message: its file carries our namespace, its column is
// 0-based and counts bytes.
func problem(fsys fs.FS, m api.Message, level diag.Level) diag.Problem {
	p := diag.Problem{Pos: diag.Pos{File: "static"}, Fact: m.Text, Rule: "bundle", Level: level}
	if m.Location != nil {
		p.Pos = position(fsys, *m.Location)
	}
	for _, n := range m.Notes {
		note := diag.Note{Text: n.Text, Pos: diag.Pos{File: "static"}}
		if n.Location != nil {
			note.Pos = position(fsys, *n.Location)
		}
		p.Notes = append(p.Notes, note)
	}
	return p
}

func position(fsys fs.FS, l api.Location) diag.Pos {
	bytes := min(l.Column, len(l.LineText))
	return diag.Pos{
		File: fileOf(fsys, strings.TrimPrefix(l.File, namespace+":")),
		Line: l.Line,
		Col:  utf8.RuneCountInString(l.LineText[:bytes]) + 1,
	}
}
