package main

import (
	"regexp"
	"strings"

	"capspan/build"
	"capspan/templates/words"
)

// languageFlag chooses the language of an answer. Flags, JSON and what --quiet prints are
// the same in all.
type languageFlag struct {
	Language string `default:"en" placeholder:"LANG" help:"The language of the answer, such as es; en unless given. JSON keeps its numbers and ids."`
}

// speaking gives the sources as their scripts speak the language, and the command's words.
// Without words the problems have been printed.
func (f languageFlag) speaking(t *terminal, src build.Sources) (build.Sources, *words.Catalogue, error) {
	spoken, unknown := src.In(f.Language)
	if unknown.Blocked() {
		return src, nil, misuse("--language: %s\n    hint: %s", unknown[0].Fact, unknown[0].Hints[0])
	}
	catalogue, problems := words.Load(src.Templates, src.Content, f.Language)
	if problems.Blocked() {
		return src, nil, printed(t, problems)
	}
	return spoken, catalogue, nil
}

// word says words of the command; values come after their names.
func (p *printer) word(key string, named ...any) string { return p.words.Say("command."+key, named...) }

// basis says why a figure is believed. Calculations know one basis more than the chart.
func (p *printer) basis(basis string) string {
	if basis == "derived" {
		return p.word("derived")
	}
	return p.words.Say("basis." + basis)
}

// decimals finds the points between the digits of a number.
var decimals = regexp.MustCompile(`(\d)\.(\d)`)

// number writes figures that come with a decimal point as the language does.
func (p *printer) number(text string) string {
	mark := p.words.Say("site.decimal")
	if mark == "." {
		return text
	}
	return decimals.ReplaceAllString(text, "${1}"+strings.ReplaceAll(mark, "$", "$$")+"${2}")
}
