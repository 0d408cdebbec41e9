package static

import (
	"cmp"
	"crypto/sha256"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"capspan/build/diag"
)

// entry is one file the browser is given.
type entry struct {
	name   string // plain name, "matcher.js"
	source string // where it starts, "matcher/index.ts"
	global string // the global name of its exports; empty for a script that only acts
	pieced bool   // only of a chart in pieces
}

// CoreName is the global the browser and package matcher find the core under.
const CoreName = "CapspanCore"

// PartsName is the global under which identifying in tables without joints is found, in
// the browser and by package matcher.
const PartsName = "CapspanParts"

// PiecesName is the global under which a chart in pieces is found, and PiecesScript what
// leaves it behind.
const (
	PiecesName   = "CapspanPieces"
	PiecesScript = "pieces.js"
)

// inPieces is what sources ask before they do something for a chart in pieces alone. It is
// put in as true or false, so the scripts of a chart that is held whole have none of it.
const inPieces = "capspanInPieces"

// LiveName is the script that reloads a page under serve; a published site is
// written without it.
const LiveName = "live.js"

// The service worker, and what stands in its place where there shall be none. They are
// no assets: package build writes one of them, with the list of the site's files, at an
// address that stays.
const (
	WorkerName = "worker.js"
	RetireName = "retire.js"
)

// FrameName is the script of what stands round every page.
const FrameName = "frame.js"

// The finder for other people's pages: its small script, and the form and the sheet that
// package build puts behind the core. They are no assets as they are (build/embed.go).
const (
	EmbedName       = "embed.js"
	EmbedFormName   = "embed-form.js"
	EmbedSheetName  = "embed.css"
	EmbedFormGlobal = "CapspanForm"
)

// The globals the browser and package driveline find the frame of the calculations under,
// and package driveline alone what the build asks of them.
const (
	DrivelineName      = "CapspanDriveline"
	DrivelinePagesName = "CapspanDrivelinePages"
)

// Calculations are the names of the driveline calculations, in the order in which a reader
// meets them. Each is a script of its own that adds itself to the frame, driveline.js, so
// that a page loads one of them.
var Calculations = []string{"angles", "speed", "torque", "life", "ends", "length", "clips", "fasteners", "balance"}

// CalculationScript is the plain name of a calculation's script.
func CalculationScript(name string) string { return "driveline-" + name + ".js" }

func calculationEntries() []entry {
	list := []entry{{name: "driveline.js", source: "driveline/frame.ts", global: DrivelineName}}
	for _, name := range Calculations {
		list = append(list, entry{name: CalculationScript(name), source: "driveline/calculation-" + name + ".ts"})
	}
	return list
}

var entries = slices.Concat(calculationEntries(), []entry{
	{name: "matcher.js", source: "matcher/index.ts", global: CoreName},
	{name: "matcher-late.js", source: "matcher/late.ts"},
	{name: PiecesScript, source: "matcher/pieces.ts", global: PiecesName, pieced: true},
	{name: "parts.js", source: "matcher/parts.ts", global: PartsName},
	{name: "measured.js", source: "matcher/measured.ts", global: "CapspanMeasured"},
	{name: "neighbourhood.css", source: "parts/neighbourhood/neighbourhood.css"},
	{name: "verdict-late.js", source: "parts/identify/verdict-late.ts", global: "CapspanVerdictLate"},
	{name: "since.js", source: "parts/since/since.ts", global: "CapspanSince"},
	{name: "identify.js", source: "parts/identify/identify.ts"},
	{name: "part.js", source: "parts/part/part.ts"},
	{name: "table.js", source: "parts/table/table.ts"},
	{name: "groups.js", source: "parts/table/groups.ts", pieced: true},
	{name: "large.css", source: "parts/large/large.css", pieced: true},
	{name: "lifesize.js", source: "parts/lifesize/lifesize.ts"},
	{name: "send.js", source: "parts/send/send.ts"},
	{name: "correct-rows.js", source: "parts/correct/rows.ts", global: "CapspanFacts", pieced: true},
	{name: "correct.js", source: "parts/correct/correct.ts"},
	{name: "keep.js", source: "parts/shaft/keep-calculation.ts", global: "CapspanKeep"},
	{name: "calculation.js", source: "parts/driveline/driveline.ts"},
	{name: "card.js", source: "parts/card/card.ts"},
	{name: "order.js", source: "parts/order/order.ts"},
	{name: "shaft.js", source: "parts/shaft/shaft.ts"},
	{name: "newer.js", source: "parts/offline/newer.ts", global: "CapspanNewer"},
	{name: "newer.css", source: "parts/offline/newer.css"},
	{name: EmbedName, source: "parts/embed/finder.ts"},
	{name: EmbedFormName, source: "parts/embed/form.ts", global: EmbedFormGlobal},
	{name: EmbedSheetName, source: "parts/embed/embed.css"},
	{name: "embed-frame.js", source: "parts/embed/frame.ts"},
	{name: WorkerName, source: "worker/worker.ts"},
	{name: RetireName, source: "worker/retire.ts"},
	{name: LiveName, source: "parts/live/live.ts"},
	{name: "search.css", source: "parts/search/search.css"},
	{name: "search-rows.js", source: "parts/search/rows.ts", global: "CapspanSearchRows", pieced: true},
	{name: "search.js", source: "parts/search/search.ts"},
	{name: FrameName, source: "parts/frame/frame.ts"},
	{name: "own.js", source: "parts/own/own.ts"},
	{name: "own.css", source: "parts/own/own.css"},
	{name: "sheet.css", source: "parts/sheet.css"},
	{name: "more.css", source: "parts/more.css"},
})

// Bundle builds every entry and takes every file of icons/ as it is. Output names
// carry the first 8 hex digits of the SHA-256 of their bytes, so an asset may be
// cached for ever. Equal sources give equal bytes. The scripts speak English; those of
// [In] speak its language.
//
// An entry whose source is not there is a warning and is left out: a chart of one's
// own may do without a part, and one part must not take the others down.
func Bundle(fsys fs.FS) (Assets, diag.List) { return bundle(fsys, false) }

// BundlePieced is [Bundle] for a chart in pieces.
func BundlePieced(fsys fs.FS) (Assets, diag.List) { return bundle(fsys, true) }

func bundle(fsys fs.FS, pieced bool) (Assets, diag.List) {
	assets := Assets{names: map[string]string{}, pieced: pieced}
	var problems diag.List

	// Icons first: style sheets point at their hashed names.
	if err := assets.addIcons(fsys); err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "static/icons"}, Fact: fmt.Sprintf("cannot be read: %q", err), Rule: "icons"})
	}
	for _, e := range entries {
		if e.pieced && !pieced {
			continue
		}
		if _, err := fs.Stat(fsys, e.source); errors.Is(err, fs.ErrNotExist) {
			problems.Add(diag.Problem{
				Pos:   diag.Pos{File: "static/" + e.source},
				Fact:  fmt.Sprintf("is not there, so the site has no %q", e.name),
				Rule:  "missing-part",
				Level: diag.Warning,
			})
			continue
		}
		bytes, found := assets.build(fsys, e)
		problems.Add(found...)
		if !found.Blocked() {
			assets.add(e.name, e.name, bytes)
		}
	}
	slices.SortFunc(assets.Files, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	problems.Sort()
	return assets, problems
}

// coreNames are the scripts of the identification core, in the order they are loaded.
var coreNames = []string{"matcher.js", "matcher-late.js"}

// Core bundles the identification core alone, for callers that need no site.
func Core(fsys fs.FS) ([]byte, diag.List) { return together(fsys, coreNames, false) }

// Pieced is [Core] with what reads a chart in pieces behind it.
func Pieced(fsys fs.FS) ([]byte, diag.List) {
	return together(fsys, append(slices.Clone(coreNames), PiecesScript), true)
}

// Parts bundles the core as pages load it: what answers first, with what reads a chart in
// pieces behind it when that is wanted, and the part that it learns late.
func Parts(fsys fs.FS, pieced bool) (first, late []byte, problems diag.List) {
	names := []string{coreNames[0]}
	if pieced {
		names = append(names, PiecesScript)
	}
	first, problems = together(fsys, names, pieced)
	late, found := together(fsys, coreNames[1:], pieced)
	problems.Add(found...)
	return first, late, problems
}

// Driveline bundles the driveline calculations, the very scripts that pages load, and
// behind them what only the build asks of them (driveline/pages.ts).
func Driveline(fsys fs.FS) ([]byte, diag.List) { return calculations(fsys, false) }

// DrivelinePieced is [Driveline] for a chart in pieces.
func DrivelinePieced(fsys fs.FS) ([]byte, diag.List) { return calculations(fsys, true) }

func calculations(fsys fs.FS, pieced bool) ([]byte, diag.List) {
	var names []string
	for _, e := range calculationEntries() {
		names = append(names, e.name)
	}
	all, problems := together(fsys, names, pieced)
	pages, found := Script(fsys, "driveline/pages.ts", DrivelinePagesName)
	problems.Add(found...)
	return append(all, pages...), problems
}

// One bundles one entry alone, as it is among the assets.
func One(fsys fs.FS, name string) ([]byte, diag.List) { return together(fsys, []string{name}, false) }

// together bundles entries, one behind the other.
func together(fsys fs.FS, names []string, pieced bool) ([]byte, diag.List) {
	var all []byte
	var problems diag.List
	for _, e := range entries {
		if slices.Contains(names, e.name) {
			bytes, found := Assets{pieced: pieced}.build(fsys, e)
			all = append(all, bytes...)
			problems.Add(found...)
		}
	}
	return all, problems
}

// Script bundles one source alone, with its exports under a global name, for callers
// that run it themselves.
func Script(fsys fs.FS, source, global string) ([]byte, diag.List) {
	return Assets{}.build(fsys, entry{name: "script.js", source: source, global: global})
}

// PiecedScript is [Script] for a chart in pieces.
func PiecedScript(fsys fs.FS, source, global string) ([]byte, diag.List) {
	return Assets{pieced: true}.build(fsys, entry{name: "script.js", source: source, global: global})
}

func (a *Assets) addIcons(fsys fs.FS) error {
	files, err := fs.ReadDir(fsys, "icons")
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return err
	}
	for _, f := range files {
		if f.IsDir() || strings.HasPrefix(f.Name(), ".") {
			continue
		}
		bytes, err := fs.ReadFile(fsys, "icons/"+f.Name())
		if err != nil {
			return err
		}
		a.add(f.Name(), f.Name(), bytes)
	}
	return nil
}

// add files bytes under a name made from their content.
func (a *Assets) add(name, base string, bytes []byte) {
	sum := sha256.Sum256(bytes)
	ext := path.Ext(base)
	p := "assets/" + strings.TrimSuffix(base, ext) + "." + hex.EncodeToString(sum[:4]) + ext
	a.Files = append(a.Files, File{Path: p, Bytes: bytes})
	a.names[name] = p
}
