package build

import (
	"bytes"
	"cmp"
	"net/url"
	"path"
	"slices"
	"strings"

	"golang.org/x/net/html"
)

// Budgets are what a first visit may weigh in packed bytes, by kind of page: with little
// signal every kilobyte is felt. Kinds that are not here have no budget.
var Budgets = map[string]int{"home": 20_000, "identify": 45_000, "row": 25_000, "guide": 30_000, "calculation": 44_000, "embed": 40_000}

// OwnBudget is what a keeper's own folder may add to each of them: name, logo, colours and
// overlay.
const OwnBudget = 8_000

// LanguageBudget is what a language other than English may add to each of them, in hundredths:
// other languages say the same in more letters. In Spanish /driveline/angles/ weighs 7 % more than in English, measured.
const LanguageBudget = 7

// Weight is what one page weighs.
type Weight struct {
	Kind    string `json:"kind"` // home, identify, row, paper, table, guide, calculation, embed, other
	Address string `json:"address"`
	Bytes   int    `json:"bytes"`            // of the page alone, as it is
	Packed  int    `json:"packed"`           // of the page alone, by brotli
	Visit   int    `json:"visit"`            // packed, with all it loads when nothing is in the cache
	Budget  int    `json:"budget,omitempty"` // for Visit; 0: none
	Over    bool   `json:"over,omitempty"`
}

// Kinds that are not pages.
const embedKind = "embed" // the finder in another page, to the first verdict

// Weigh packs as --compress does, and tells of every page what it weighs, the kinds with
// a budget first and in each the heaviest first. A visit is the page and what its markup
// makes a browser load at once: style sheet, scripts, icon, pictures and the chart. What a
// script fetches later, when it is used, is not in it. Of the finder in another page it is
// the script, the core and the chart.
func Weigh(out Output) []Weight {
	files := map[string]File{}
	var names []string
	for _, f := range out.Files {
		files[f.Path] = f
		if strings.HasSuffix(f.Path, ".html") || f.Stage == Assets {
			names = append(names, f.Path)
		}
	}
	if _, there := files[embedScript]; there {
		names = append(names, embedScript, embedChart)
	}
	packed := packedSizes(files, names)
	var list []Weight
	for _, name := range names {
		f := files[name]
		if f.Stage == Assets || name == embedChart {
			continue
		}
		w := Weight{Kind: kindOf(out.plain(name)), Address: out.Base + strings.TrimSuffix(name, "index.html"),
			Bytes: int(f.Size()), Packed: packed[name]}
		w.Visit = w.Packed
		for _, part := range loads(f.mustRead(), out.Base) {
			w.Visit += packed[part]
		}
		if w.Kind == embedKind {
			w.Visit += packed[embedChart] + packed[coreOf(files)]
		}
		w.Budget = Budgets[w.Kind]
		if out.plain(name) != name {
			w.Budget += w.Budget * LanguageBudget / 100
		}
		if w.Budget > 0 && out.Own {
			w.Budget += OwnBudget
		}
		w.Over = w.Budget > 0 && w.Visit > w.Budget
		list = append(list, w)
	}
	slices.SortFunc(list, func(a, b Weight) int {
		return cmp.Or(slices.Index(kindOrder, a.Kind)-slices.Index(kindOrder, b.Kind), b.Visit-a.Visit, cmp.Compare(a.Address, b.Address))
	})
	return list
}

// Found reports whether the site tells search engines where it is: only its keeper
// knows that.
func (out Output) Found() bool {
	return slices.ContainsFunc(out.Files, func(f File) bool { return f.Path == sitemapName })
}

var kindOrder = []string{"home", "identify", "row", "guide", "calculation", embedKind, "table", "paper", "other"}

// plain is a name without the folder of its language.
func (out Output) plain(name string) string {
	for _, language := range out.Languages {
		if rest, inside := strings.CutPrefix(name, language.Folder); inside && language.Folder != "" {
			return rest
		}
	}
	return name
}

// kindOf is the kind of the page in a file.
func kindOf(name string) string {
	parts := strings.Split(name, "/")
	switch {
	case name == "index.html":
		return "home"
	case name == "identify/index.html":
		return "identify"
	case name == embedScript:
		return embedKind
	case parts[0] == "joint" && len(parts) == 3:
		return "row"
	case parts[0] == "joint":
		return "paper"
	case parts[0] == "measure" && name != "measure/card/index.html": // the card is a tool that lies there
		return "guide"
	case parts[0] == "driveline" && len(parts) == 3 && parts[1] != "sources" && parts[1] != joiningEnds: // that one loads the core and the chart
		return "calculation"
	case parts[0] == "chart" && len(parts) == 3:
		return "table"
	}
	return "other"
}

// coreOf is the script of the core that the finder's fetches.
func coreOf(files map[string]File) string {
	for name := range files {
		if strings.HasPrefix(name, embedCore+".") && strings.HasSuffix(name, ".js") {
			return name
		}
	}
	return ""
}

// loads are the assets a page makes the browser ask for, each once.
func loads(page []byte, base string) []string {
	var parts []string
	take := func(address string) {
		u, err := url.Parse(address)
		if err != nil || u.Host != "" {
			return
		}
		if name, inside := strings.CutPrefix(u.Path, base); inside && path.Dir(name) == "assets" && !slices.Contains(parts, name) {
			parts = append(parts, name)
		}
	}
	z := html.NewTokenizer(bytes.NewReader(page))
	for {
		switch z.Next() {
		case html.ErrorToken:
			return parts
		case html.StartTagToken, html.SelfClosingTagToken:
			token := z.Token()
			for _, a := range token.Attr {
				if a.Key == "src" || a.Key == "data-chart" || a.Key == "href" && token.Data == "link" {
					take(a.Val)
				}
			}
		}
	}
}

// packedSizes packs on all cores: it is most of the work.
func packedSizes(files map[string]File, names []string) map[string]int {
	sizes := make([]int, len(names))
	onAllCores(len(names), func(n int) { sizes[n] = len(packBrotli(files[names[n]].mustRead(), brotliLevel)) })
	byName := make(map[string]int, len(names))
	for n, name := range names {
		byName[name] = sizes[n]
	}
	return byName
}
