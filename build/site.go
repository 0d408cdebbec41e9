package build

import (
	"cmp"
	"html/template"
	"io/fs"
	"path"
	"slices"
	"strings"
	"sync"

	"capspan/build/diag"
	"capspan/build/translation"
	"capspan/content"
	"capspan/static"
	"capspan/static/matcher"
	"capspan/tables"
	"capspan/templates"
	catalogue "capspan/templates/words"
)

// Site builds the whole site, every language of it. When the list is [diag.List.Blocked],
// the output is empty and whatever was built before should stay as it is: all problems are
// known before anything is written.
func Site(src Sources, opt Options) (Output, diag.List) {
	languages, problems := load(src, opt)
	if problems.Blocked() {
		return Output{}, problems
	}
	var room *spool
	if opt.Spool != "" {
		room = &spool{dir: opt.Spool, after: spoolAfter}
	}
	out, problems := opt.build(src, languages, problems, room)
	if problems.Blocked() {
		room.close()
		return Output{}, problems
	}
	out.spool = room
	return out, problems
}

// build makes the site of what was read, with the problems found in that.
func (opt Options) build(src Sources, languages []inputs, problems diag.List, room *spool) (Output, diag.List) {
	sites := make([]*site, len(languages))
	for n, in := range languages {
		sites[n] = newSite(in, opt)
		sites[n].spool = room
		sites[n].again = sites[n].rememberedRows()
		problems.Add(sites[n].bundle()...)
		sites[n].addOwn()
		problems.Add(sites[n].addEmbed()...)
		if opt.Previews {
			sites[n].addPreviews()
		}
	}
	open := sites[0].beside((*site).exportData)
	defer open() // nobody may be at work on a site that is given up
	count := &counter{tell: opt.Progress}
	for _, s := range sites {
		s.many, s.progress, s.has = s.manyDrafts(), count, map[string]bool{}
		count.all.Add(int64(len(s.many)))
		for _, d := range s.many {
			s.has[d.address] = true
		}
	}
	for _, s := range sites {
		problems.Add(s.renderMany(sites)...)
	}
	for _, s := range sites {
		problems.Add(s.fillPages()...)
	}
	if problems.Blocked() {
		return Output{}, problems // links into pages that could not be made would only add noise
	}
	link(sites)
	for _, s := range sites {
		s.addSearch() // every page of a small chart names the index, which is made from all of them
		problems.Add(s.renderPages()...)
	}
	if problems.Blocked() {
		return Output{}, problems
	}
	first := sites[0]
	problems.Add(open()...)
	problems.Add(first.addSchemas(src.Static)...)
	for _, s := range sites {
		s.share(first)
		s.addFound()
		s.addFeed()
		s.addRecord()
		problems.Add(s.addWebManifest()...)
		s.addWorker()
		problems.Add(s.checkLinks()...)
	}
	first.addSitemap(sites)
	out, more := together(sites)
	problems.Add(more...)
	problems = saidOnce(problems)
	if problems.Blocked() {
		return Output{}, problems
	}
	if opt.Compress {
		out.compress(room)
	}
	if opt.Live == "" {
		out.addHostFiles()
	}
	slices.SortFunc(out.Files, func(a, b File) int { return cmp.Compare(a.Path, b.Path) })
	return out, problems
}

// inputs are the sources, read, as one language of the site wants them.
type inputs struct {
	english   *tables.Set // the chart as it is written
	set       *tables.Set // the same in the language of the site
	pages     []*content.Page
	assets    static.Assets
	method    []matcher.Assumption
	driveline calculated // nothing before pages are filled
	// calculating gives the same as soon as it is worked out; nil while tables or scripts have problems.
	calculating func() (calculated, error)
	sources     Sources // as they were given
	words       *catalogue.Catalogue
	// tableWords are those of the tables; nil in English.
	tableWords *translation.Tables
	frames     *templates.Set
	keeper     templates.Keeper
	own        *own  // nil without a keeper's own folder
	tables     fs.FS // where the set was loaded from
	// measured is what readers' measurements come to.
	measured map[*tables.Measurements]matcher.MeasuredAnswer
	core     *exampleCore // nil while tables or scripts have problems
	// unbundled is where scripts are taken from when one is needed, of a check that had no
	// need to bundle them; nil when all were bundled.
	unbundled fs.FS
	cut       func() (*chartPieces, error) // a large chart in pieces; nil for one that is held whole
	folder    string                       // where the language's pages lie below the root: "", or "es/"
	others    map[string]string            // the folders of the other languages

	contributing tables.Contributing
}

// load reads all folders, so that one run reports the problems of each, and gives them
// language by language.
func load(src Sources, opt Options) ([]inputs, diag.List) {
	shipped := src
	src = src.layered()
	keeper, counter, problems := loadOwn(shipped)
	var set *tables.Set
	var overlay *tables.Overlay
	var found diag.List
	var group sync.WaitGroup
	loaded := make(chan struct{})
	group.Go(func() {
		defer close(loaded)
		set, overlay, found = opt.Memory.set(shipped)
	})
	pieced := func() bool { // the scripts of a large chart are others
		<-loaded
		return cutOnce(set) != nil
	}
	languages := languagesOf(keeper, opt)
	for _, language := range languages {
		if _, unknown := src.In(language); unknown.Blocked() {
			group.Wait()
			return nil, append(problems, unknown...)
		}
	}
	all := make([]inputs, len(languages))
	read := make([]languageParts, len(languages))
	for n, language := range languages {
		group.Go(func() { read[n] = readLanguage(src, language, opt, pieced) })
	}
	group.Wait()
	problems.Add(found...)
	problems.Add(takenIDs(set)...)
	cut := opt.Memory.cutOnce(set)
	for n, language := range languages {
		all[n] = read[n].inputs
		all[n].cut = cut
		all[n].set, all[n].english, all[n].tables, all[n].keeper = set, set, src.Tables, keeper
		all[n].sources = shipped
		if counter != nil {
			all[n].own = &own{logo: counter.logo, colours: counter.colours, overlay: overlay}
		}
		all[n].others = map[string]string{}
		for m, other := range languages {
			if m != n {
				all[n].others[other] = folderOf(m, other)
			}
		}
		all[n].folder = folderOf(n, language)
		problems.Add(read[n].problems...)
		problems.Add(all[n].translated(shipped, language)...)
	}
	opt.ease(problems)
	sound := !problems.Blocked()
	for n := range all {
		problems.Add(all[n].readPages(shipped, opt, read[n].scripts, sound, n == 0)...)
	}
	return all, saidOnce(problems)
}

// folderOf is where the n-th language stands below the root.
func folderOf(n int, language string) string {
	if n == 0 {
		return ""
	}
	return language + "/"
}

// languageParts is what of a language is read before tables and pages are known.
type languageParts struct {
	inputs
	scripts  []byte // of the driveline calculations
	problems diag.List
}

// readLanguage reads the words, frames and scripts of one language; pieced tells whether they
// are those of a chart in pieces, once that is known.
func readLanguage(src Sources, language string, opt Options, pieced func() bool) languageParts {
	p := languageParts{}
	spoken, _ := src.In(language) // an unknown one has been refused
	var found [2]diag.List
	var group sync.WaitGroup
	group.Go(func() {
		said := opt.Memory.spokenIn(src, language)
		p.words, p.frames, found[1] = said.words, said.frames, said.problems
	})
	if assets, known := opt.unbundled(src, language); known {
		p.assets, p.unbundled = assets, spoken.Static
	} else {
		group.Go(func() {
			made := opt.Memory.bundled(src, language, pieced())
			p.assets, p.method, p.scripts = made.assets, made.method, made.driveline
			found[0] = slices.Concat(made.problems[:]...)
		})
	}
	group.Wait()
	p.problems = slices.Concat(found[:]...)
	return p
}

// readPages reads the pages of the language. They come last, because they ask the chart
// and the core; when those have problems of their own, they are checked without them. The
// first language leaves what measurements come to with the tables too.
func (in *inputs) readPages(src Sources, opt Options, scripts []byte, sound, first bool) diag.List {
	var problems diag.List
	options := content.Options{Base: basePath(opt.Base) + in.folder, Language: in.words.Language,
		Root: basePath(opt.Base), Shared: []string{"/" + dataFolder, "/" + schemaFolder}}
	if sound {
		in.contributing = tables.Contribute(in.english)
		problems.Add(in.reckon(first)...)
		core, set, cut := in.assets.Core(), in.set, in.cut
		in.calculating = atOnce(func() (calculated, error) {
			if in.unbundled != nil {
				return calculationsByName(), nil
			}
			return opt.Memory.calculate(in.words.Language, core, scripts, set, cut, opt.Hasty)
		})
		asked := newSite(*in, opt)
		in.core = &exampleCore{site: asked, remembered: opt.Memory, hasty: opt.Hasty}
		options.Chart = asked.resolver(in.core)
		options.Table, options.Code = in.word("guide.table"), in.word("guide.code")
		options.Drawings = in.drawn()
	}
	pages, wrong := content.Load(src.layered().Content, options)
	in.pages = pages
	src.inOwnFolder(pages, wrong)
	problems.Add(wrong...)
	opt.ease(problems)
	return problems
}

// atOnce begins a work beside everything else, and gives what it comes to.
func atOnce[T any](work func() (T, error)) func() (T, error) {
	var made T
	var err error
	done := make(chan struct{})
	go func() {
		defer close(done)
		made, err = work()
	}()
	return func() (T, error) {
		<-done
		return made, err
	}
}

// beside begins a work that needs nothing but the sources, beside everything else. Its files
// are the site's once somebody has asked what was wrong with it.
func (s *site) beside(work func(*site) diag.List) func() diag.List {
	own := *s
	own.files = nil
	begun := atOnce(func() (diag.List, error) { return work(&own), nil })
	return sync.OnceValue(func() diag.List {
		problems, _ := begun()
		s.files = append(s.files, own.files...)
		return problems
	})
}

// site is one language of a build under way.
type site struct {
	inputs
	version  tables.Version
	root     string // where the whole site lives
	base     string // where the pages of this language live: the root, or a folder below it
	live     string
	memory   *Memory
	apart    []string                         // folders of other languages below this one
	drafted  []drafted                        // pages, filled
	seen     *seen                            // what a page depends on, while one of a large chart is filled
	again    *rowsAgain                       // of a build with a memory: what the one before made of rows
	spool    *spool                           // nil: all stays in memory
	many     []rowDraft                       // pages of a large chart that are filled, rendered and let go one by one
	has      map[string]bool                  // their addresses
	progress *counter                         // of the pages of all languages
	ruler    func() template.HTML             // of every paper sheet, drawn once
	chart    string                           // path of the matcher's chart
	drawings string                           // path of the drawings the identify page fetches
	index    string                           // path of what the search looks in
	parts    map[string]string                // paths of the tables that parts are identified in, by plain name
	slips    string                           // path of the chart in words that the enquiry slip fetches
	embed    struct{ path, integrity string } // of the finder for other pages, under the name made of its bytes
	az       *templates.AZ
	byName   []namedRow                    // the joints of a large chart
	names    []templates.Link              // to the pages that list them
	files    []File                        // all that a reader of this language may ask for
	places   map[string]diag.Pos           // page addresses with the file each was made from
	shown    []sitemapEntry                // pages for search engines
	previews map[string]*templates.Picture // by row; under "" what every other page shows
	sizes    func() sizeIndex              // of a large chart
	groups   func() map[*tables.Table][]sizeGroup
}

func newSite(in inputs, opt Options) *site {
	root := basePath(opt.Base)
	s := &site{inputs: in, progress: &counter{}, places: map[string]diag.Pos{}, root: root, base: root + in.folder, live: opt.Live, memory: opt.Memory}
	s.ruler = sync.OnceValue(func() template.HTML { return s.drawn().Ruler("ruler") })
	s.sizes = sync.OnceValue(func() sizeIndex { return newSizeIndex(in.set, s.keyOf) })
	s.groups = sync.OnceValue(s.groupsOfTables)
	if !opt.check { // to name a large chart takes long
		s.version = in.set.Version()
	}
	if s.large() { // a name that stays: every page has it, and it is made of all pages
		s.index = s.folder + searchDirectory
	}
	return s
}

// add appends a file of this language; its path is below the language's folder.
func (s *site) add(path string, content []byte, stage Stage) {
	s.addRoot(s.folder+path, content, stage)
}

// addRoot appends a file that belongs to no language.
func (s *site) addRoot(path string, content []byte, stage Stage) {
	s.files = append(s.files, s.spool.keep(path, content, stage))
}

// at puts the language's base in front of a rooted address.
func (s *site) at(address string) string {
	return s.base + strings.TrimPrefix(address, "/")
}

// atRoot is the address of a file that belongs to no language.
func (s *site) atRoot(address string) string {
	return s.root + strings.TrimPrefix(address, "/")
}

// basePath gives a base both its slashes: "sub", "/sub" and "/sub/" are the same.
func basePath(base string) string {
	clean := path.Clean("/" + base)
	if clean == "/" {
		return "/"
	}
	return clean + "/"
}
