package build

import (
	"strings"

	"capspan/build/diag"
	"capspan/content/figure"
	"capspan/static/matcher"
	"capspan/tables"
	catalogue "capspan/templates/words"
)

// word says words of the catalogue; values come after their names.
func (in *inputs) word(key string, named ...any) string { return in.words.Say(key, named...) }

// drawn is what drawings say.
func (in *inputs) drawn() figure.Words {
	return figure.Words{Say: in.words.Say, Decimal: in.word("site.decimal")}
}

// basisWord is what the pages call a basis.
func (in *inputs) basisWord(b tables.Basis) string {
	if b == "" {
		return ""
	}
	return in.word("basis." + string(b))
}

// holdWord and facesWord say the design's words as a reader would.
func (in *inputs) holdWord(h tables.Hold) string   { return in.word("hold." + string(h)) }
func (in *inputs) facesWord(f tables.Faces) string { return in.word("faces." + string(f)) }

// spoken are the words that this package puts on pages itself, part by part; after a key
// come the names of the values it is given. A test finds the calls and holds them to this.
var spoken = map[string]string{
	"site":      "app-name, app-about, chart-name, search-about, language, decimal",
	"book":      "title, foot chart date, page n, guide, chart, sizes, sizes-about, names, names-about, no-longer id why",
	"home":      "sheet, link, caliper, caliper-note, no-readings, no-readings-note, name, name-note",
	"identify":  "title, sheet, about",
	"part":      "title, sheet, about, one title, one-about title, exact, outside, outside-below below, inside, circle",
	"send":      "title, sheet, about",
	"card":      "title, sheet, about",
	"chart":     "title, sheet, about, newest, stays version",
	"sources":   "title, about",
	"changes":   "title, about",
	"method":    "title, sheet, about",
	"search":    "title, about, passing",
	"a-z":       "title, about, also name, in page, begin beginning, begin-about, beginning beginning, count n",
	"embed":     "title, about",
	"notkept":   "title, sheet, about",
	"correct":   "title, sheet, about, value, value-of column row, row, row-of row",
	"moved":     "title id, sheet, about",
	"size":      "about figures, kits n, and-more names n",
	"group":     "caps n, millimetres n, no-cap, span least greatest from to, title table caps, about table caps, of-hold hold n",
	"table":     "row, basis, as format, method, by-row basis",
	"cell":      "not-known, none, elsewhere figure, faces-basis faces basis, measured figure converted, measured-agrees, measured-apart, measured-differs",
	"order":     "title, sheet, about",
	"shaft":     "title, sheet, about",
	"driveline": "title, sheet, about, sources-title, sources-about, source-kind",
	"row": "figures cap across hold, two-ends first other, no-cap, " +
		"formerly id why, basis-published, basis-measured, basis-common-practice, basis-memory",
	"joint":   "title id figures, about id figures, both-ends, one-end, other-end, caption, caption-two",
	"paper":   "title id, sheet id, about id, level-end, upright-end, true-wing, true-both, true-cap, true-across, true-none",
	"hold":    "not-sure, not-known",
	"own":     "counter name, counter-unnamed, from name, from-unnamed",
	"guide":   "table, code, why, next, not-used readings why, worked-out chart, worked-out-then, open-readings, left, more-left n",
	"apart":   "digital-caliper off twice, steel-rule off twice, tape off twice, sizes all n, no-sizes all, from, more n",
	"preview": "basis basis, confirm, alt, which, measure, row-alt id figures",
	// Said by cmd/capspan, where a test holds the calls to it.
	"command": "verdict verdict, identified, possible, between, not-in-chart, measure-again, the-size, possible-size, sizes-left, rows, near, " +
		"same-figures, conversions, slip, see page, ways, way joint, way-yoke joint end rows, measured, in-chart, difference, within, inside by, outside by, " +
		"cap, across, clip, of-end end quantity, readings, from result readings, set-aside result readings, times n reading, next, caution, since, chart version, " +
		"flag-reading flag at, needed inputs, unchecked, before-work, example command, usual range, preset value, optional, derived, " +
		"met-within, met-above, met-below, met-not-known",
}

// said is every use of the catalogue by this package.
func said() []catalogue.Use {
	var uses []catalogue.Use
	add := func(key string, names ...string) {
		uses = append(uses, catalogue.Use{Key: key, Names: names, Pos: diag.Pos{File: "build/words.go"}})
	}
	for part, list := range spoken {
		for _, one := range strings.Split(list, ", ") {
			names := strings.Fields(one)
			add(part+"."+names[0], names[1:]...)
		}
	}
	for _, one := range figure.Spoken() {
		names := strings.Fields(one)
		add(figure.Room+names[0], names[1:]...)
	}
	for _, h := range holdStrip {
		add("hold." + string(h))
		add("hold." + string(h) + "-see")
		add("hold." + string(h) + "-yoke")
		for _, f := range facesToOffer(h) {
			add("faces." + string(f))
			add("faces." + string(f) + "-how")
		}
	}
	for h := range yokes {
		add("yoke." + string(h))
		add("yoke." + string(h) + "-how")
	}
	for _, b := range []tables.Basis{tables.Published, tables.Measured, tables.CommonPractice, tables.Memory, "judgement"} {
		add("basis." + string(b))
	}
	for _, v := range []matcher.Verdict{matcher.Identified, matcher.Possible, matcher.Between, matcher.NotInChart, matcher.MeasureAgain} {
		add("verdict." + string(v))
	}
	for _, b := range evidence {
		add("book.why-" + b)
	}
	for _, tool := range tools {
		add("tool." + tool)
	}
	for _, kind := range tables.Words().Kinds {
		add("source-kind." + kind)
		add("sources.kind-" + kind)
	}
	for _, f := range tables.Words().Faces {
		add("faces." + string(f))
	}
	for _, condition := range conditions {
		add("tool.on-" + condition)
	}
	return uses
}
