package driveline

import (
	"encoding/json"
	"fmt"
	"html/template"
	"maps"
	"regexp"
	"slices"
	"strings"
)

// Element is a piece of a result as plain data, the same that the browser makes nodes of.
type Element struct {
	Tag        string            `json:"tag"`
	Attributes map[string]string `json:"attributes,omitempty"`
	Children   []Child           `json:"children,omitempty"`
}

// Child is an element or a text.
type Child struct {
	Element *Element
	Text    string
}

// UnmarshalJSON reads a string as a text and an object as an element.
func (c *Child) UnmarshalJSON(text []byte) error {
	if len(text) > 0 && text[0] == '"' {
		return json.Unmarshal(text, &c.Text)
	}
	c.Element = &Element{}
	return json.Unmarshal(text, c.Element)
}

// MarshalJSON writes it as it was read.
func (c Child) MarshalJSON() ([]byte, error) {
	if c.Element != nil {
		return json.Marshal(c.Element)
	}
	return json.Marshal(c.Text)
}

// names of tags and attributes that an element may have: no script, no handler, no style.
var (
	tagName       = regexp.MustCompile(`^(a|caption|circle|dd|details|div|dl|dt|figcaption|figure|g|h3|li|line|p|path|polyline|section|span|strong|summary|svg|table|tbody|td|text|th|thead|tr|ul)$`)
	attributeName = regexp.MustCompile(`^(aria-label|class|cx|cy|d|fill|height|href|id|points|r|role|scope|tabindex|text-anchor|viewBox|width|x|x1|x2|y|y1|y2)$`)
)

// HTML is the element as markup; texts and values are escaped.
func (e *Element) HTML() (template.HTML, error) {
	var b strings.Builder
	err := e.write(&b)
	return template.HTML(b.String()), err
}

func (e *Element) write(b *strings.Builder) error {
	if !tagName.MatchString(e.Tag) {
		return fmt.Errorf("internal error: a result has an element %q", e.Tag)
	}
	b.WriteString("<" + e.Tag)
	for _, name := range slices.Sorted(maps.Keys(e.Attributes)) {
		if !attributeName.MatchString(name) {
			return fmt.Errorf("internal error: a result has an attribute %q", name)
		}
		b.WriteString(" " + name + `="`)
		template.HTMLEscape(b, []byte(e.Attributes[name]))
		b.WriteString(`"`)
	}
	b.WriteString(">")
	for _, c := range e.Children {
		if c.Element == nil {
			template.HTMLEscape(b, []byte(c.Text))
		} else if err := c.Element.write(b); err != nil {
			return err
		}
	}
	b.WriteString("</" + e.Tag + ">")
	return nil
}
