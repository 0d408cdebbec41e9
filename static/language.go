package static

import (
	"cmp"
	"fmt"
	"io/fs"
	"path"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// English is the language of the sources as they stand in this folder.
const English = "en"

// In is this folder as it speaks in a language: where a file holds sentences, the one of
// content/<language>/ stands in its place, under the English one's name, so that its
// imports are found where the English ones are.
//
//	words/en/card.ts          content/es/scripts/card.ts
//	matcher/speech-next.ts    content/es/matcher/speech-next.ts
//	driveline/page-angles.ts  content/es/driveline/page-angles.ts
//
// A file that the language lacks is the English one; package translation reports it. The
// folder speaks English by itself, and so it does for "".
func In(fsys, content fs.FS, language string) fs.FS {
	if cmp.Or(language, English) == English {
		return fsys
	}
	return speaking{fsys, content, language}
}

// speaking is the folder with the sentences of another language in it.
type speaking struct {
	english, content fs.FS
	language         string
}

// Open implements [fs.FS].
func (s speaking) Open(name string) (fs.File, error) {
	if place := s.place(name); place != "" {
		if file, err := s.content.Open(place); err == nil {
			return file, nil
		}
	}
	return s.english.Open(name)
}

// place is where in the folder content the sentences of a file are, if it holds any.
func (s speaking) place(name string) string {
	if said := Said(name); said != "" {
		return s.language + "/" + said
	}
	return ""
}

// Said is where in the folder of another language the sentences of a source stand; it is
// empty for a source that says nothing to readers.
func Said(source string) string {
	folder, file := path.Split(source)
	if path.Ext(file) != ".ts" {
		return ""
	}
	speech := strings.HasPrefix(file, "speech")
	switch {
	case folder == "words/"+English+"/":
		return "scripts/" + file
	case folder == "matcher/" && speech, folder == "driveline/" && (speech || strings.HasPrefix(file, "page-")):
		return source
	}
	return ""
}

// fileOf names a file of the folder from the project's root.
func fileOf(fsys fs.FS, name string) string {
	if s, other := fsys.(speaking); other {
		if place := s.place(name); place != "" {
			if _, err := fs.Stat(s.content, place); err == nil {
				return "content/" + place
			}
		}
	}
	return "static/" + name
}

// wordsScheme begins an import of the words a part says by itself:
//
//	import { words } from "words:card";
//
// gives those of words/en/card.ts. The type check reads them there (paths in
// static/parts/tsconfig.json).
const wordsScheme = "words:"

// speak makes those imports.
func (a Assets) speak(b api.PluginBuild, fsys fs.FS) {
	b.OnResolve(api.OnResolveOptions{Filter: "^" + wordsScheme}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
		file := "words/" + English + "/" + strings.TrimPrefix(args.Path, wordsScheme) + ".ts"
		if !fs.ValidPath(file) {
			return api.OnResolveResult{}, fmt.Errorf("%q is the name of no part", args.Path)
		}
		if info, err := fs.Stat(fsys, file); err != nil || info.IsDir() {
			return api.OnResolveResult{}, fmt.Errorf("no file %q", "static/"+file)
		}
		return api.OnResolveResult{Path: file, Namespace: namespace}, nil
	})
}
