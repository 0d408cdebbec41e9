// Package words owns the words of the pages that are not data, guide or verdict: one
// folder for each language, one file for each part of the site. The English ones are here,
// those of another language in content/<language>/words.
//
//	templates/words/en/joint.yaml
//	    basis-memory: "The figures are recalled from memory."
//	    also: "Also called {names}."
//
// is said as "joint.basis-memory" and "joint.also". [Load] reads a language and reports
// every fault with its place; [Catalogue.Check] holds it against the [Use] that templates
// and code make of it, so that no phrase is missing, left over, or waits for a value that
// nobody gives; [Catalogue.Say] says one.
//
// A phrase is text, never markup. These stand for something:
//
//	{name}          a value, by the name it is given under
//	[words](name)   a link to the address given under the name (in prose only)
//	**words**       words that matter (in prose only)
//
// A phrase that depends on a number {n} has a form for each plural category of its
// language, as CLDR names them: in English one and other.
//
// In every language but English a phrase is written beside the English one it translates;
// when that has changed, or is new, the problem names the English line:
//
//	also: {of: "Also called {names}.", is: "También {names}."}
package words

import (
	"fmt"
	"strings"

	"golang.org/x/text/feature/plural"
	"golang.org/x/text/language"

	"capspan/build/diag"
)

// English is the language that every other one is held against.
const English = "en"

// Catalogue is the words of one language. Nothing changes it, so it may be used from
// several goroutines.
type Catalogue struct {
	Language string // as in the attribute lang
	tag      language.Tag
	phrases  map[string]*Phrase
}

// Phrase is one entry: one text, or one for each plural form.
type Phrase struct {
	Pos   diag.Pos        // of its key
	forms map[string]Text // by plural category; under "" the text of a phrase that has no number
}

// Counted reports whether the phrase depends on a number.
func (p *Phrase) Counted() bool { return p.forms[""] == nil }

// Text returns the only text of a phrase that has no number.
func (p *Phrase) Text() Text { return p.forms[""] }

// Find returns the phrase of a key, nil when there is none.
func (c *Catalogue) Find(key string) *Phrase { return c.phrases[key] }

// Say puts values, each after its name, into the words of a key. A number under the name
// "n" chooses the plural form. Asking for what is not there is a fault of the program,
// since Check has been asked before.
func (c *Catalogue) Say(key string, named ...any) string {
	phrase := c.phrases[key]
	if phrase == nil {
		panic("internal error: no words " + key)
	}
	return phrase.say(c, named)
}

func (p *Phrase) say(c *Catalogue, named []any) string {
	text := p.forms[""]
	if text == nil {
		text = p.forms[c.category(value(named, "n"))]
	}
	if text == nil {
		text = p.forms["other"]
	}
	if len(text) == 1 && text[0].Name == "" {
		return text[0].Words
	}
	var b strings.Builder
	for _, piece := range text {
		if piece.Name == "" {
			b.WriteString(piece.Words)
			continue
		}
		fmt.Fprint(&b, value(named, piece.Name))
	}
	return b.String()
}

func value(named []any, name string) any {
	for i := 0; i+1 < len(named); i += 2 {
		if named[i] == name {
			return named[i+1]
		}
	}
	panic("internal error: no value is given for {" + name + "}")
}

// categories are CLDR's, by the name a file gives them.
var categories = map[string]plural.Form{"zero": plural.Zero, "one": plural.One, "two": plural.Two,
	"few": plural.Few, "many": plural.Many, "other": plural.Other}

func (c *Catalogue) category(n any) string {
	count, whole := n.(int)
	if !whole {
		panic(fmt.Sprintf("internal error: {n} is %v, no whole number", n))
	}
	form := plural.Cardinal.MatchPlural(c.tag, count, 0, 0, 0, 0)
	for name, f := range categories {
		if f == form {
			return name
		}
	}
	return "other"
}
