package content

import (
	"errors"
	"fmt"
	"strings"

	"go.yaml.in/yaml/v4"

	"capspan/build/diag"
)

// head reads the lines between "---" and "---" at the top of the file into the page
// and returns the offset at which the body begins.
func (d *document) head(page *Page) int {
	yamlStart, yamlEnd, body, ok := d.split()
	if !ok {
		return body
	}
	var root yaml.Node
	if err := yaml.Unmarshal(d.source[yamlStart:yamlEnd], &root); err != nil {
		pos, fact := d.yamlProblem(err)
		d.problemAt(pos, "broken-head", fact)
		return body
	}
	keys := &root
	if root.Kind == yaml.DocumentNode && len(root.Content) == 1 {
		keys = root.Content[0]
	}
	if keys.Kind != yaml.MappingNode {
		d.problem(yamlStart, "broken-head", "the head holds no keys", `write "title: ..." between the two lines of dashes`)
		return body
	}
	if !d.keys(page, keys) {
		d.problem(0, "missing-title", "the head has no title", `add a line such as "title: Cap diameter"`)
	}
	return body
}

// split finds the head. Without one the whole file is body, which is a problem.
func (d *document) split() (start, end, body int, ok bool) {
	if string(d.lineAt(0)) != "---" {
		d.problem(0, "missing-title", "the page has no head", `start the file with "---", "title: ...", "---"`)
		return 0, 0, 0, false
	}
	for _, offset := range d.lines[1:] {
		if string(d.lineAt(offset)) == "---" {
			body = min(offset+len("---"), len(d.source))
			return d.lines[1], offset, body, true
		}
	}
	d.problem(0, "broken-head", `the head that starts here has no closing "---"`)
	return 0, 0, len(d.source), false
}

// keys reads the mapping, key by key, so that one wrong key hides no other. It reports
// whether there is a title, good or bad.
func (d *document) keys(page *Page, keys *yaml.Node) (titled bool) {
	seen := map[string]diag.Pos{}
	for i := 0; i+1 < len(keys.Content); i += 2 {
		key, value := keys.Content[i], keys.Content[i+1]
		pos := d.nodePlace(key)
		if first, again := seen[key.Value]; again {
			d.problems.Add(diag.Problem{Pos: pos, Path: d.slug, Fact: fmt.Sprintf("key %q is given twice", key.Value),
				Rule: "duplicate-key", Notes: []diag.Note{{Text: "first given at", Pos: first}}})
			continue
		}
		seen[key.Value] = pos
		switch key.Value {
		case "title":
			page.Title = d.sentence(key, value)
		case "about":
			page.About = d.sentence(key, value)
		case "next":
			page.Next = d.next(page, value)
		default:
			d.problemAt(pos, "unknown-key", fmt.Sprintf("unknown key %q in the head", key.Value), "the keys are title, about and next")
		}
	}
	_, titled = seen["title"]
	return titled
}

// sentence reads a value that must be text.
func (d *document) sentence(key, value *yaml.Node) string {
	if value.Kind != yaml.ScalarNode || strings.TrimSpace(value.Value) == "" || value.Tag == "!!null" {
		d.problemAt(d.nodePlace(value), "broken-head", fmt.Sprintf("%q must be text", key.Value))
		return ""
	}
	return value.Value
}

// next reads the list of pages to go to next. An entry is a link like any other.
func (d *document) next(page *Page, list *yaml.Node) []string {
	if list.Kind != yaml.SequenceNode {
		d.problemAt(d.nodePlace(list), "broken-head", `"next" must be a list`, `write "next: [measure/cap]"`)
		return nil
	}
	var next []string
	for _, entry := range list.Content {
		pos := d.nodePlace(entry)
		if entry.Kind != yaml.ScalarNode || entry.Value == "" {
			d.problemAt(pos, "broken-head", `an entry of "next" must be the slug or address of a page`)
			continue
		}
		href := address(entry.Value)
		if fact := refused(href); fact != "" {
			d.problemAt(pos, "forbidden-link", fact, allowedLinks)
			continue
		}
		next = append(next, entry.Value)
		page.Links = append(page.Links, Link{Href: href, Pos: pos})
	}
	return next
}

// address turns an entry of next into a link: a slug such as measure/cap lives at
// /measure/cap/.
func address(entry string) string {
	if strings.ContainsAny(entry, ":#") || strings.HasPrefix(entry, "/") || strings.HasPrefix(entry, ".") {
		return entry
	}
	return "/" + strings.Trim(entry, "/") + "/"
}

// nodePlace is where a node stands in the file: the head begins on its second line.
func (d *document) nodePlace(n *yaml.Node) diag.Pos {
	return diag.Pos{File: d.file, Line: n.Line + 1, Col: n.Column}
}

// yamlProblem takes the place and the fact out of what the YAML library says.
func (d *document) yamlProblem(err error) (diag.Pos, string) {
	pos := diag.Pos{File: d.file, Line: 2, Col: 1}
	var at *yaml.LoadError
	if !errors.As(err, &at) {
		return pos, err.Error()
	}
	if at.Mark.Line > 0 {
		pos.Line, pos.Col = at.Mark.Line+1, max(at.Mark.Column, 1)
	}
	return pos, at.Message
}
