package build

import (
	"cmp"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"capspan/build/diag"
	"capspan/content"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// Site builds the whole site into memory. When the list is [diag.List.Blocked], the
// output is empty and whatever was built before should stay as it is.
func Site(src Sources, opt Options) (Output, diag.List) {
	in, problems := load(src, opt)
	if problems.Blocked() {
		return Output{}, problems
	}
	s := &site{inputs: in, version: in.set.Version(), base: basePath(opt.Base), live: opt.Live, memory: opt.Memory}
	s.bundle()
	if opt.Previews {
		s.addPreviews()
	}
	problems.Add(s.renderPages()...)
	if problems.Blocked() {
		return Output{}, problems // links into pages that could not be made would only add noise
	}
	problems.Add(s.exportData()...)
	problems.Add(s.addSchemas(src.Static)...)
	s.addFound()
	s.addFeed()
	s.addRecord()
	problems.Add(s.addWebManifest()...)
	s.addWorker()
	problems.Add(s.checkLinks()...)
	problems.Sort()
	if problems.Blocked() {
		return Output{}, problems
	}
	if opt.Compress {
		s.compress()
	}
	if opt.Live == "" {
		s.addHostFiles()
	}
	slices.SortFunc(s.files, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	return Output{Files: s.files, Chart: s.version, Base: s.base, Redirects: s.redirects(), Stale: in.core != nil && in.core.stale}, problems
}

// Matcher returns the identification core with the chart of the sources in it.
func Matcher(src Sources) (*matcher.Matcher, diag.List) {
	set, problems := tables.Load(src.Tables)
	core, more := static.Core(src.Static)
	problems.Add(more...)
	if problems.Blocked() {
		return nil, problems
	}
	m, err := matcher.New(core, Chart(set))
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "static/matcher/index.ts"}, Fact: err.Error(), Rule: "core-fails"})
		return nil, problems
	}
	return m, problems
}

// inputs are the sources, read.
type inputs struct {
	set       *tables.Set
	pages     []*content.Page
	assets    static.Assets
	method    []matcher.Assumption
	driveline calculated // nothing while tables or scripts have problems
	words     *catalogue.Catalogue
	frames    *templates.Set
	keeper    templates.Keeper
	tables    fs.FS // where the set was loaded from
	// measured is what readers' measurements come to.
	measured map[*tables.Measurements]matcher.MeasuredAnswer
	core     *exampleCore // nil while tables or scripts have problems
	spared   bool         // the scripts are the program's own and were not bundled

	contributing tables.Contributing
}

// load reads all folders, so that one run reports the problems of each. Pages come
// last, because they ask the chart and the core; when those have problems of their own,
// the pages are checked without them.
func load(src Sources, opt Options) (inputs, diag.List) {
	in := inputs{tables: src.Tables, spared: opt.sparing && ownScripts(src.Static)}
	var found [6]diag.List
	language := cmp.Or(opt.Language, catalogue.English)
	var group sync.WaitGroup
	group.Go(func() { in.set, found[0] = tables.Load(src.Tables) })
	group.Go(func() {
		if in.spared {
			return
		}
		made := opt.Memory.bundled(src.Static, language)
		in.assets, in.method, found[1], found[4] = made.assets, made.method, made.problems[0], made.problems[1]
	})
	group.Go(func() {
		in.words, found[2] = catalogue.Load(src.Templates, language)
		frames, err := templates.New(src.Templates, in.words)
		if err != nil {
			found[2].Add(diag.Problem{Pos: diag.Pos{File: "templates"}, Fact: err.Error(), Rule: "bad-template"})
		}
		in.frames = frames
		if frames != nil {
			found[2].Add(in.words.Check(append(frames.Uses(), said()...))...)
		}
	})
	group.Go(func() { in.keeper, found[3] = loadKeeper(src.Content) })
	var scripts []byte
	group.Go(func() {
		if !in.spared {
			scripts, found[5] = static.Driveline(src.Static)
		}
	})
	group.Wait()
	problems := slices.Concat(found[:]...)
	options := content.Options{Base: basePath(opt.Base)}
	var worked calculated
	var failed error
	if !problems.Blocked() {
		in.contributing = tables.Contribute(in.set)
		problems.Add(in.reckon(src.Static)...)
		if core, set := in.assets.Core(), in.set; !in.spared {
			group.Go(func() { worked, failed = calculate(core, scripts, set) })
		}
		asked := &site{inputs: in, base: options.Base}
		in.core = &exampleCore{site: asked, static: src.Static, remembered: opt.Memory, hasty: opt.Hasty}
		options.Chart = asked.resolver(in.core)
		options.Table, options.Code = in.word("guide.table"), in.word("guide.code")
	}
	pages, wrong := content.Load(src.Content, options)
	if in.spared && scripted(pages) {
		opt.sparing = false
		return load(src, opt)
	}
	in.pages = pages
	problems.Add(wrong...)
	group.Wait()
	in.driveline = worked
	if failed != nil {
		problems.Add(drivelineProblem(failed))
	}
	problems.Sort()
	return in, problems
}

// site is a build under way.
type site struct {
	inputs
	version  tables.Version
	base     string
	live     string
	memory   *Memory
	only     map[*tables.Row]bool // the joints whose pages are made; nil: of all
	chart    string               // path of the matcher's chart
	drawings string               // path of the drawings the identify page fetches
	index    string               // path of what the search looks in
	parts    map[string]string    // paths of the tables that parts are identified in, by plain name
	slips    string               // path of the chart in words that the enquiry slip fetches
	az       *templates.AZ
	files    []File
	places   map[string]diag.Pos           // page addresses with the file each was made from
	shown    []sitemapEntry                // pages for search engines
	previews map[string]*templates.Picture // by row; under "" what every other page shows
}

// add appends a file of the site.
func (s *site) add(path string, content []byte, stage Stage) {
	s.files = append(s.files, File{Path: path, Bytes: content, Stage: stage})
}

// at puts the base in front of a rooted address.
func (s *site) at(address string) string {
	return s.base + strings.TrimPrefix(address, "/")
}

// basePath gives a base both its slashes: "sub", "/sub" and "/sub/" are the same.
func basePath(base string) string {
	clean := path.Clean("/" + base)
	if clean == "/" {
		return "/"
	}
	return clean + "/"
}
