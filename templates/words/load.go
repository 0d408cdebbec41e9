package words

import (
	"errors"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"

	"go.yaml.in/yaml/v4"
	"golang.org/x/text/language"

	"capspan/build/diag"
)

// Load reads words/en/*.yaml of the folder templates and, for another language, also
// <lang>/words/*.yaml of the folder content. There every phrase must be, and must translate
// the English one of today.
func Load(templates, content fs.FS, lang string) (*Catalogue, diag.List) {
	english, problems := read(templates, "templates/", "words/"+English, English)
	if lang == English {
		problems.Sort()
		return english.catalogue(), problems
	}
	other, more := read(content, "content/", lang+"/words", lang)
	problems.Add(more...)
	problems.Add(other.against(english)...)
	problems.Sort()
	return other.catalogue(), problems
}

// reader walks the files of one language and gathers problems.
type reader struct {
	lang     string
	tag      language.Tag
	file     string // being read, from the project's root
	part     string // first part of its keys
	phrases  map[string]*Phrase
	sources  map[string]string // what each phrase says, as written
	of       map[string]of     // the English text a phrase translates
	parts    map[string]bool   // parts of the site whose file is there
	problems diag.List
}

type of struct {
	source string
	at     diag.Pos
}

func (r *reader) catalogue() *Catalogue {
	return &Catalogue{Language: r.lang, tag: r.tag, phrases: r.phrases}
}

// read reads one language: a folder of fsys, which lies at the root given.
func read(fsys fs.FS, root, folder, lang string) (*reader, diag.List) {
	r := &reader{lang: lang, phrases: map[string]*Phrase{}, sources: map[string]string{}, of: map[string]of{}, parts: map[string]bool{}}
	tag, err := language.Parse(lang)
	if err != nil {
		r.problems.Add(diag.Problem{Pos: diag.Pos{File: root + folder}, Rule: "bad-language",
			Fact: fmt.Sprintf("%q is the name of no language", lang), Hints: []string{"write it as in the attribute lang: en, es, pt-BR"}})
		return r, r.problems
	}
	r.tag = tag
	files, err := fs.Glob(fsys, folder+"/*.yaml")
	if err == nil && len(files) == 0 && lang == English { // the files another language lacks are told one by one
		err = errors.New("no file of words is there")
	}
	if err != nil {
		r.problems.Add(diag.Problem{Pos: diag.Pos{File: root + folder}, Rule: "no-words", Fact: err.Error()})
	}
	for _, file := range files {
		r.file, r.part = root+file, strings.TrimSuffix(path.Base(file), ".yaml")
		r.parts[r.part] = true
		src, err := fs.ReadFile(fsys, file)
		if err != nil {
			r.fail(nil, "", "unreadable", "the file cannot be read: "+err.Error())
			continue
		}
		r.document(src)
	}
	return r, r.problems
}

func (r *reader) at(n *yaml.Node) diag.Pos {
	if n == nil {
		return diag.Pos{File: r.file}
	}
	return diag.Pos{File: r.file, Line: n.Line, Col: n.Column}
}

func (r *reader) fail(n *yaml.Node, key, rule, fact string, hints ...string) {
	r.problems.Add(diag.Problem{Pos: r.at(n), Path: key, Rule: rule, Fact: fact, Hints: hints})
}

func (r *reader) document(src []byte) {
	var root yaml.Node
	if err := yaml.Unmarshal(src, &root); err != nil {
		at := &yaml.Node{Line: 1, Column: 1}
		var broken *yaml.LoadError
		if errors.As(err, &broken) {
			at.Line, at.Column = broken.Mark.Line, max(broken.Mark.Column, 1)
			err = errors.New(broken.Message)
		}
		r.fail(at, "", "bad-yaml", strings.TrimPrefix(err.Error(), "yaml: "))
		return
	}
	if root.Kind != yaml.DocumentNode || len(root.Content) != 1 || root.Content[0].Kind != yaml.MappingNode {
		r.fail(nil, "", "no-words", "the file holds no phrases", `write one a line: key: "words"`)
		return
	}
	r.each(root.Content[0], "", func(name, value *yaml.Node) {
		key := r.part + "." + name.Value
		if !keyForm.MatchString(name.Value) {
			r.fail(name, key, "bad-key", fmt.Sprintf("the key %q is not lower-case words with dashes", name.Value))
			return
		}
		if r.lang != English {
			r.translation(key, name, value)
			return
		}
		r.phrase(key, name, value)
	})
}

var keyForm = regexp.MustCompile(`^[a-z0-9]+(-[a-z0-9]+)*$`)

// each goes through a mapping; a key that is given twice counts once.
func (r *reader) each(mapping *yaml.Node, key string, visit func(name, value *yaml.Node)) {
	first := map[string]*yaml.Node{}
	for i := 0; i+1 < len(mapping.Content); i += 2 {
		name, value := mapping.Content[i], mapping.Content[i+1]
		if before := first[name.Value]; before != nil {
			r.problems.Add(diag.Problem{Pos: r.at(name), Path: key, Rule: "duplicate-key", Fact: fmt.Sprintf("the key %q is given twice", name.Value),
				Notes: []diag.Note{{Text: "first given at", Pos: r.at(before)}}})
			continue
		}
		first[name.Value] = name
		visit(name, value)
	}
}

// translation takes a phrase of another language apart: the English it was made of, and
// what it says.
func (r *reader) translation(key string, name, value *yaml.Node) {
	var is *yaml.Node
	if value.Kind == yaml.MappingNode {
		r.each(value, key, func(n, v *yaml.Node) {
			switch n.Value {
			case "of":
				r.of[key] = of{said(v), r.at(v)}
			case "is":
				is = v
			default:
				r.fail(n, key, "unknown-key", fmt.Sprintf("unknown key %q", n.Value), "the keys are of and is")
			}
		})
	}
	if is == nil || r.of[key].source == "" {
		r.fail(value, key, "bad-translation", "a translation says what it is of, and what it is", `write {of: "the English words", is: "yours"}`)
		return
	}
	r.phrase(key, name, is)
}

// phrase reads one text, or one for each plural form.
func (r *reader) phrase(key string, name, value *yaml.Node) {
	p := &Phrase{Pos: r.at(name), forms: map[string]Text{}}
	switch value.Kind {
	case yaml.ScalarNode:
		r.form(p, key, "", value)
	case yaml.MappingNode:
		r.each(value, key, func(n, v *yaml.Node) {
			if _, known := categories[n.Value]; !known {
				r.fail(n, key, "plural-form", fmt.Sprintf("%q is no plural form", n.Value), "CLDR has zero, one, two, few, many and other")
				return
			}
			r.form(p, key, n.Value, v)
		})
		if p.forms["other"] == nil {
			r.fail(value, key, "plural-form", `the form "other" is missing`)
			return
		}
	default:
		r.fail(value, key, "bad-words", "a phrase is text, or plural forms of it", `write key: "words", or key: {one: "...", other: "..."}`)
		return
	}
	r.phrases[key], r.sources[key] = p, said(value)
}

func (r *reader) form(p *Phrase, key, category string, value *yaml.Node) {
	p.forms[category] = Text{}
	source := value.Value
	switch {
	case value.Kind != yaml.ScalarNode:
		r.fail(value, key, "bad-words", "a phrase is text")
	case strings.TrimSpace(source) == "" || value.Tag == "!!null":
		r.fail(value, key, "empty-value", "nothing is said")
	case strings.ContainsAny(source, "\n\r\t"):
		r.fail(value, key, "bad-words", "a phrase is one line", "fold a long one with >-")
	default:
		text, err := parse(source)
		if err != nil {
			r.fail(value, key, "bad-words", err.Error())
			return
		}
		if category != "" && text.prose() {
			r.fail(value, key, "bad-words", "a plural form has no links and no ** in it")
			return
		}
		p.forms[category] = text
	}
}

// said is a value as written: the text, or the forms one after the other.
func said(n *yaml.Node) string {
	if n.Kind == yaml.ScalarNode {
		return n.Value
	}
	parts := make([]string, 0, len(n.Content))
	for _, c := range n.Content {
		parts = append(parts, c.Value)
	}
	return strings.Join(parts, " ")
}

// against holds a translation to the English of today.
func (r *reader) against(english *reader) diag.List {
	var problems diag.List
	for part := range english.parts {
		if !r.parts[part] {
			problems.Add(diag.Problem{Pos: diag.Pos{File: "templates/words/" + English + "/" + part + ".yaml", Line: 1, Col: 1}, Rule: "missing-translation",
				Fact: fmt.Sprintf("is not in %q", r.lang), Hints: []string{fmt.Sprintf("make content/%s/words/%s.yaml", r.lang, part)}})
		}
	}
	for key, phrase := range english.phrases {
		part, _, _ := strings.Cut(key, ".")
		if !r.parts[part] {
			continue
		}
		mine := r.phrases[key]
		if mine == nil {
			problems.Add(diag.Problem{Pos: phrase.Pos, Path: key, Rule: "missing-translation",
				Fact: fmt.Sprintf("has no words in %q", r.lang), Hints: []string{fmt.Sprintf("add it to content/%s/words/%s.yaml", r.lang, part)}})
			continue
		}
		if made := r.of[key]; made.source != english.sources[key] {
			problems.Add(diag.Problem{Pos: phrase.Pos, Path: key, Rule: "stale-translation",
				Fact:  fmt.Sprintf("now says %q, and its translation was made of %q", english.sources[key], made.source),
				Hints: []string{"put the words right, then what they are of"},
				Notes: []diag.Note{{Text: "translated at", Pos: made.at}}})
		}
		if got, want := mine.names(), phrase.names(); !slices.Equal(got, want) {
			problems.Add(diag.Problem{Pos: mine.Pos, Path: key, Rule: "other-values",
				Fact:  fmt.Sprintf("has the values %q, and the English words have %q", got, want),
				Notes: []diag.Note{{Text: "in English at", Pos: phrase.Pos}}})
		}
	}
	for key, phrase := range r.phrases {
		if english.phrases[key] == nil {
			problems.Add(diag.Problem{Pos: phrase.Pos, Path: key, Rule: "unused-words", Fact: "is no phrase of the English words"})
		}
	}
	return problems
}
