package build

import (
	"crypto/sha256"
	"encoding/json"
	"fmt"
	"maps"
	"net/url"
	"path"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/static"
	"capspan/templates"
)

// The service worker keeps the whole site on the reader's device (static/worker). It
// is told exactly what the site is: the address of each file with the sum of its bytes.
// The list stands in the script itself, so that another list is another script, which
// is how a browser learns of a new edition.
//
// It is kept in two parts. What a job needs without knowing the row yet comes first,
// before the worker begins its work: home, identify with its core, chart and drawings,
// the guide, the tables, every script and style. Then, while nothing else is to do, the
// pages of rows, their paper sheets, the tables to download and what corrections need.
// BenchmarkKept tells how many bytes each part is.
//
// Of a large chart a device keeps the first part alone: the pages of its sizes, groups and
// names, the drawers and the tables to download are too much for a phone, and who wants the
// chart without a network keeps its pieces by choice (static/parts/pieces).

// manyFolders are below the language's folder, each with how many folders deep it is kept of a
// large chart: what lies deeper is too much.
var manyFolders = map[string]int{"size/": 0, "chart/": 1, "a-z/": 0}

const (
	workerName  = "worker.js" // at the language's base: a worker may only serve what lies below it
	notKeptName = "not-kept.html"
)

// workerSite is what the worker is told; static/worker/site.ts reads it.
type workerSite struct {
	Edition string            `json:"edition"`
	Chart   string            `json:"chart"`
	First   []string          `json:"first"` // "sum address", the address below the root
	Rest    []string          `json:"rest"`
	Moved   map[string]string `json:"moved"`

	// Of a site in several languages; addresses are below the root of all of them.
	Root  string   `json:"root,omitempty"`  // where it is from the worker's own folder: "../"
	Apart []string `json:"apart,omitempty"` // folders below the worker's that other workers keep, or none
}

// workerAddress is where pages find the worker; empty where there is none: under serve
// with a folder to watch a rebuilt page must show at once, and a chart of one's own may
// do without the part.
func (s *site) workerAddress() string {
	if s.live != "" || s.assets.Bytes(static.WorkerName) == nil {
		return ""
	}
	return s.at(workerName)
}

// addWorker writes the worker. It comes after all files that are to be kept and before
// those for the host. While the site is watched, what stands there takes away a worker
// that an earlier visit left.
func (s *site) addWorker() {
	if s.live != "" {
		if script := s.assets.Bytes(static.RetireName); script != nil {
			s.add(workerName, script, Pages)
		}
		return
	}
	script := s.assets.Bytes(static.WorkerName)
	if script == nil {
		return
	}
	list, err := json.Marshal(s.keptList())
	if err != nil {
		panic("internal error: " + err.Error()) // strings only
	}
	s.add(workerName, slices.Concat([]byte("const capspanSite="), list, []byte(";\n"), script), Pages)
}

// keptList sorts the files of the site into what is kept first and what later.
func (s *site) keptList() workerSite {
	list := workerSite{Chart: s.version.Name(), Moved: map[string]string{}, Root: strings.Repeat("../", strings.Count(s.folder, "/")), Apart: s.apart}
	if s.large() {
		for _, folder := range slices.Sorted(maps.Keys(manyFolders)) { // their pages are there, though this worker has none
			list.Apart = append(slices.Clip(list.Apart), s.folder+folder)
		}
	}
	for _, r := range s.redirects() {
		list.Moved[strings.TrimPrefix(r.From, s.root)] = strings.TrimPrefix(r.To, s.root)
	}
	var files []File
	for _, f := range s.files {
		if !s.isKept(f) || s.isOneOfMany(f.Path) {
			continue
		}
		if _, moved := list.Moved[keptAddress(f.Path)]; !moved { // what a host redirects is never kept
			files = append(files, f)
		}
	}
	slices.SortFunc(files, func(a, b File) int {
		if d := s.turn(a.Path) - s.turn(b.Path); d != 0 {
			return d
		}
		return strings.Compare(a.Path, b.Path)
	})
	whole := sha256.New()
	for _, f := range files {
		sum := f.sum()
		line := fmt.Sprintf("%x %s", sum[:6], keptAddress(f.Path))
		fmt.Fprintln(whole, line)
		if s.turn(f.Path) == 0 {
			list.First = append(list.First, line)
		} else {
			list.Rest = append(list.Rest, line)
		}
	}
	list.Edition = fmt.Sprintf("%x", whole.Sum(nil)[:6])
	return list
}

// isKept reports whether a reader's browser ever asks for the file.
func (s *site) isKept(f File) bool {
	switch {
	case f.Stage == Hosting, s.isEmbed(f.Path), strings.HasPrefix(f.Path, pieceFolder), ofVersion.MatchString(f.Path), isSitemap(f.Path), f.Path == robotsName, f.Path == s.folder+openSearchName:
		return false
	case path.Ext(f.Path) == ".png":
		return f.Stage == Assets && !strings.HasPrefix(f.Path, previewFolder) // the icons; no page of ours shows a preview
	}
	return true
}

// isOneOfMany reports whether a file is what a large chart has too much of for a phone.
func (s *site) isOneOfMany(name string) bool {
	if !s.large() {
		return false
	}
	name = strings.TrimPrefix(name, s.folder)
	for folder, deep := range manyFolders {
		if below, in := strings.CutPrefix(name, folder); in && strings.Count(below, "/") > deep {
			return true
		}
	}
	return s.turn(name) == 3 && !strings.HasPrefix(name, "contribute/") && !strings.HasPrefix(name, schemaFolder)
}

// turn is when a file is kept: 0 is first.
func (s *site) turn(name string) int {
	name = strings.TrimPrefix(name, s.folder)
	switch kindOf(name) {
	case "row":
		return 1
	case "paper":
		return 2
	}
	if strings.HasPrefix(name, dataFolder) || strings.HasPrefix(name, "contribute/") || strings.HasPrefix(name, correctFolder) ||
		strings.HasPrefix(name, schemaFolder) || strings.HasPrefix(name, searchFolder) || strings.HasPrefix(name, slipFolder) {
		return 3
	}
	return 0
}

// keptAddress is the address below the root a file is asked for by.
func keptAddress(name string) string {
	if dir, index := strings.CutSuffix(name, "index.html"); index {
		name = dir
	}
	return (&url.URL{Path: name}).EscapedPath()
}

// notKept is what the worker shows for a page it cannot give.
func (s *site) notKept() (templates.Page, diag.Pos) {
	return templates.Page{
		Address: "/" + notKeptName, Title: s.word("notkept.title"), Sheet: s.word("notkept.sheet"),
		About: s.word("notkept.about"), Body: &templates.NotKept{},
	}, diag.Pos{File: "templates/notkept.html"}
}
