package static

import (
	"fmt"
	"slices"
	"strings"

	"github.com/evanw/esbuild/pkg/api"
)

// assetScheme begins an import that is not bundled in, but fetched late by its name:
//
//	import { asset as sheet } from "asset:search.css";
//
// gives the name the bundle has among the assets and the sum a browser holds it to. What
// is imported stands before what imports it in the list of entries.
const assetScheme = "asset:"

// late makes those imports.
func (a Assets) late(b api.PluginBuild) {
	b.OnResolve(api.OnResolveOptions{Filter: "^" + assetScheme}, func(args api.OnResolveArgs) (api.OnResolveResult, error) {
		name := strings.TrimPrefix(args.Path, assetScheme)
		if !a.pieced && slices.ContainsFunc(entries, func(e entry) bool { return e.name == name && e.pieced }) {
			return api.OnResolveResult{Path: name, Namespace: "no asset"}, nil // asked for by what inPieces leaves out
		}
		if a.names[name] == "" {
			return api.OnResolveResult{}, fmt.Errorf("no asset %q is bundled before this", name)
		}
		return api.OnResolveResult{Path: name, Namespace: "asset"}, nil
	})
	b.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: "no asset"}, func(api.OnLoadArgs) (api.OnLoadResult, error) {
		text := `export const asset = {file: "", integrity: ""};`
		return api.OnLoadResult{Contents: &text, Loader: api.LoaderJS}, nil
	})
	b.OnLoad(api.OnLoadOptions{Filter: ".*", Namespace: "asset"}, func(args api.OnLoadArgs) (api.OnLoadResult, error) {
		path := a.names[args.Path]
		for _, f := range a.Files {
			if f.Path == path {
				text := fmt.Sprintf("export const asset = {file: %q, integrity: %q};", strings.TrimPrefix(path, "assets/"), f.Integrity())
				return api.OnLoadResult{Contents: &text, Loader: api.LoaderJS}, nil
			}
		}
		return api.OnLoadResult{}, fmt.Errorf("no asset %q", args.Path)
	})
}
