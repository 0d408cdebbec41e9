package build

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"capspan/build/diag"
	"capspan/build/translation"
	"capspan/static"
	"capspan/tables"
	catalogue "capspan/templates/words"
)

// In returns the sources as their scripts speak in a language. One that has no folder in
// content is a problem that names those there are.
func (src Sources) In(language string) (Sources, diag.List) {
	language = cmp.Or(language, catalogue.English)
	known := append([]string{catalogue.English}, translation.Languages(src.Content)...)
	if !slices.Contains(known, language) {
		return src, diag.List{{Pos: diag.Pos{File: "content"}, Rule: "bad-language", Fact: fmt.Sprintf("there is no language %q", language),
			Hints: []string{"there are " + strings.Join(known, ", ")}}}
	}
	src.Static, src.language = static.In(src.Static, src.Content, language), language
	return src, nil
}

// spoken is the chart of the sources in their language: what an answer names of it.
func (src Sources) spoken() (*tables.Set, diag.List) {
	set, _, problems := src.Set()
	if problems.Blocked() || cmp.Or(src.language, catalogue.English) == catalogue.English {
		return set, problems
	}
	words, found := translation.LoadTables(src.Content, src.language, translation.TableTexts(src.Tables, set))
	problems.Add(found...)
	return set.Spoken(words.Say), problems
}

// Translation is what a language lacks, and what in it is older than its English: words of
// the interface, pages, sentences of scripts and words of the tables.
func Translation(src Sources, language string) diag.List {
	set, problems := tables.Load(src.Tables)
	_, wrong := catalogue.Load(src.Templates, src.Content, language)
	problems.Add(wrong...)
	in := inputs{set: set}
	problems.Add(in.translated(src, language)...)
	problems.Sort()
	return problems
}

// translated holds pages, scripts and words of the tables to the English; the catalogue
// does so for its own words.
func (in *inputs) translated(src Sources, language string) diag.List {
	if language == catalogue.English {
		return nil
	}
	problems := translation.Check(src.translation(), language)
	if in.set != nil {
		var found diag.List
		in.tableWords, found = translation.LoadTables(src.Content, language, translation.TableTexts(src.Tables, in.set))
		problems.Add(found...)
	}
	if in.tableWords != nil && in.frames != nil {
		in.speakTables(in.tableWords.Say)
	}
	return problems
}

// Settle records that files of a language, or all of it, say what the English does today.
// It returns the file to write, by its name in the folder content, and what was settled.
func Settle(src Sources, language string, files []string) (name string, madeOf []byte, settled []string, problems diag.List) {
	madeOf, settled, problems = translation.Settle(src.translation(), language, files)
	return translation.MadeOfName(language), madeOf, settled, problems
}

// StartLanguage makes what a language lacks, each file by its name in the folder content.
func StartLanguage(src Sources, language string) (map[string][]byte, diag.List) {
	set, problems := tables.Load(src.Tables)
	if problems.Blocked() {
		return nil, problems
	}
	files, err := translation.Start(src.translation(), language, translation.TableTexts(src.Tables, set))
	if err != nil {
		problems.Add(diag.Problem{Pos: diag.Pos{File: "content/" + language}, Rule: "unreadable", Fact: err.Error()})
	}
	return files, problems
}

func (src Sources) translation() translation.Sources {
	return translation.Sources{Content: src.Content, Static: src.Static, Templates: src.Templates}
}

// ease makes warnings of what a translation is behind, for somebody who writes the English
// and looks at it under serve.
func (opt Options) ease(problems diag.List) {
	for i, p := range problems {
		if opt.Live != "" && slices.Contains([]string{"stale-translation", "unsettled-translation", "other-headings", "translation-differs", "translation-loses", "translation-adds"}, p.Rule) {
			problems[i].Level = diag.Warning
		}
	}
}
