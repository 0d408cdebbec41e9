package tables

import (
	"bytes"
	"errors"
	"strings"

	"capspan/build/diag"
	"go.yaml.in/yaml/v4"
)

// parse gives the mapping a file consists of, or nil.
func (r *reader) parse(src []byte) *node {
	if root, ok := quickParse(src); ok && tooDeep(root, r.lim.depth) == nil {
		return root
	}
	return r.parseWhole(src)
}

// parseWhole has the YAML library read a file, whatever is in it.
func (r *reader) parseWhole(src []byte) *node {
	text := r.clean(src)
	var docs []node
	err := yaml.Load(text, &docs, yaml.WithAllDocuments())
	var broken *yaml.LoadError
	switch {
	case errors.As(err, &broken):
		r.list.Add(diag.Problem{Pos: diag.Pos{File: r.file, Line: broken.Mark.Line, Col: broken.Mark.Column},
			Rule: "bad-yaml", Fact: strings.TrimPrefix(broken.Message, "yaml: ")})
		return nil
	case err != nil:
		r.list.Add(diag.Problem{Pos: diag.Pos{File: r.file}, Rule: "bad-yaml", Fact: strings.TrimPrefix(err.Error(), "yaml: ")})
		return nil
	case len(docs) == 0:
		r.list.Add(diag.Problem{Pos: diag.Pos{File: r.file}, Rule: "bad-yaml", Fact: "the file is empty"})
		return nil
	case len(docs) > 1:
		r.fail(&docs[1], "", "bad-yaml", "a second document starts here", "one file is one table; remove the line ---")
		return nil
	}
	root := &docs[0]
	if root.Kind == yaml.DocumentNode {
		root = root.Content[0]
	}
	r.wholeLines(root, text)
	if deep := tooDeep(root, r.lim.depth); deep != nil {
		r.fail(deep, "", "depth", numbered("nested deeper than %d", r.lim.depth))
		return nil
	}
	return root
}

// wholeLines refuses lines on which nothing starts: the rest of a text or of a value
// in braces from the line above, a dash alone, a document marker. With one value on
// one line, comparing lines compares values, and Format can move them.
func (r *reader) wholeLines(root *node, text []byte) {
	starts := make([]bool, bytes.Count(text, []byte("\n"))+2)
	var mark func(n *node)
	mark = func(n *node) {
		if n.Line < len(starts) {
			starts[n.Line] = true
		}
		for _, c := range n.Content {
			mark(c)
		}
	}
	mark(root)
	number := 0
	for row := range bytes.Lines(text) {
		number++
		if starts[number] {
			continue
		}
		line := string(row)
		body := strings.TrimSpace(line)
		if body == "" || body[0] == '#' {
			continue
		}
		at := &node{Line: number, Column: strings.Index(line, body) + 1}
		switch {
		case strings.HasPrefix(line, "---"), strings.HasPrefix(line, "..."), line[0] == '%':
			r.fail(at, "", "bad-yaml", numbered("the document marker %q", body), "one file is one table; leave it out")
		default:
			r.fail(at, "", "one-line", "the line is a piece of the value above it", "write each value on one line")
		}
	}
}

// tooDeep finds the first node below the allowed depth.
func tooDeep(n *node, left int) *node {
	if left == 0 && len(n.Content) > 0 {
		return n
	}
	for _, c := range n.Content {
		if deep := tooDeep(c, left-1); deep != nil {
			return deep
		}
	}
	return nil
}
