package translation

import (
	"errors"
	"fmt"
	"io/fs"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
)

// Text is an English text of the tables: what it says, whose it is, and where it stands.
type Text struct {
	Says, Path string
	Pos        diag.Pos
	// Name is set of one that may be a name, such as 3/8-24, and need not be translated.
	Name bool
}

// Tables are the words of the tables in a language, by the English ones.
type Tables struct{ is map[string]string }

// Say gives the words for an English text; the text itself where there are none, as in
// English.
func (t *Tables) Say(english string) string {
	if t == nil || t.is[english] == "" {
		return english
	}
	return t.is[english]
}

// tablesName is the file of a language that holds them: a list of {of: ..., is: ...}.
const tablesName = "tables.yaml"

// LoadTables reads <language>/tables.yaml of the folder content and holds it to the texts.
// One without words is a warning at its own line, since a correction of the chart must not
// wait for a translator; words of a text that is no longer there are one at theirs.
func LoadTables(fsys fs.FS, language string, texts []Text) (*Tables, diag.List) {
	r := &tablesReader{file: "content/" + language + "/" + tablesName, is: map[string]string{}, at: map[string]diag.Pos{}}
	source, err := read(fsys, language+"/"+tablesName)
	if errors.Is(err, fs.ErrNotExist) {
		return &Tables{}, diag.List{{Pos: diag.Pos{File: r.file}, Rule: "missing-translation", Level: diag.Warning, Fact: "is not there: the tables speak English",
			Hints: []string{fmt.Sprintf("capspan translate %s --start makes it", language)}}}
	}
	if err != nil {
		r.problems.Add(unreadable(r.file, err))
	}
	r.read(source)
	wanted := map[string]bool{}
	for _, text := range texts {
		told := wanted[text.Says]
		wanted[text.Says] = true
		if _, there := r.at[text.Says]; !there && !told && !text.Name {
			r.problems.Add(diag.Problem{Pos: text.Pos, Path: text.Path, Rule: "missing-translation", Level: diag.Warning,
				Fact:  fmt.Sprintf("%q has no words in %q", text.Says, language),
				Hints: []string{fmt.Sprintf("add a line {of: \"the English words\", is: \"yours\"} to %s", r.file)}})
		}
	}
	for english, at := range r.at {
		if !wanted[english] {
			r.problems.Add(diag.Problem{Pos: at, Rule: "unused-translation", Level: diag.Warning,
				Fact: fmt.Sprintf("nothing in the tables says %q", english), Hints: []string{"the English has changed, or is gone"}})
		}
	}
	r.problems.Sort()
	return &Tables{r.is}, r.problems
}

type tablesReader struct {
	file     string
	is       map[string]string
	at       map[string]diag.Pos // of the entry for an English text
	problems diag.List
}

func (r *tablesReader) place(n *yaml.Node) diag.Pos {
	return diag.Pos{File: r.file, Line: n.Line, Col: n.Column}
}

func (r *tablesReader) fail(n *yaml.Node, fact string) {
	r.problems.Add(diag.Problem{Pos: r.place(n), Rule: "bad-translation", Fact: fact,
		Hints: []string{`write one a line: - {of: "the English words", is: "yours"}`}})
}

func (r *tablesReader) read(source []byte) {
	var root yaml.Node
	if err := yaml.Unmarshal(source, &root); err != nil {
		r.problems.Add(broken(r.file, err))
		return
	}
	if root.Kind != yaml.DocumentNode || root.Content[0].Tag == "!!null" {
		return // nothing, or comments only
	}
	list := root.Content[0]
	if list.Kind != yaml.SequenceNode {
		r.fail(list, "the file holds no list")
		return
	}
	for _, n := range list.Content {
		r.entry(n)
	}
}

func (r *tablesReader) entry(n *yaml.Node) {
	of, is := "", ""
	if n.Kind == yaml.MappingNode {
		for i := 0; i+1 < len(n.Content); i += 2 {
			key, value := n.Content[i], n.Content[i+1]
			switch {
			case value.Kind != yaml.ScalarNode || value.Tag == "!!null":
			case key.Value == "of":
				of = value.Value
			case key.Value == "is":
				is = value.Value
			}
			if key.Value != "of" && key.Value != "is" {
				r.fail(key, fmt.Sprintf("unknown key %q", key.Value))
			}
		}
	}
	switch first, again := r.at[of]; {
	case of == "":
		r.fail(n, "an entry says what it is of, and what it is")
	case again:
		r.problems.Add(diag.Problem{Pos: r.place(n), Rule: "duplicate-key", Fact: fmt.Sprintf("%q is translated twice", of),
			Notes: []diag.Note{{Text: "first at", Pos: first}}})
	default:
		r.at[of], r.is[of] = r.place(n), is
		if strings.TrimSpace(is) == "" {
			r.problems.Add(diag.Problem{Pos: r.place(n), Rule: "missing-translation", Level: diag.Warning, Fact: fmt.Sprintf("nothing is said for %q", of)})
		}
	}
}
