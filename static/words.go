package static

import (
	"cmp"
	"fmt"
	"io/fs"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// English is the language of the scripts' words where none is named.
const English = "en"

// wordsScheme begins an import of the words a part says by itself:
//
//	import { words } from "words:card";
//
// gives those of static/words/<language>/card.ts. The type check reads the English ones
// (paths in static/parts/tsconfig.json), so a word that another language lacks, or that
// takes other values, is found there.
const wordsScheme = "words:"

// speak makes those imports, in the language of the bundle.
func (a Assets) speak(b api.PluginBuild, fsys fs.FS) {
	b.OnResolve(api.OnResolveOptions{Filter: "^" + wordsScheme}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
		file := "words/" + cmp.Or(a.language, English) + "/" + strings.TrimPrefix(args.Path, wordsScheme) + ".ts"
		if !fs.ValidPath(file) {
			return api.OnResolveResult{}, fmt.Errorf("%q is the name of no part", args.Path)
		}
		if info, err := fs.Stat(fsys, file); err != nil || info.IsDir() {
			return api.OnResolveResult{}, fmt.Errorf("no file %q", "static/"+file)
		}
		return api.OnResolveResult{Path: file, Namespace: namespace}, nil
	})
}
