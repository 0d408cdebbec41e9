package compare

import (
	"strings"

	"capspan/tables"
)

// figure is a value in both units, of a range both its ends.
func figure(v tables.Value) Said {
	if text := v.Figure(); text != "" {
		return Said{Text: text, Converted: v.Converted()}
	}
	return Said{Text: v.Word()}
}

// cell compares one cell. Its bump is that of its gravest part.
func cell(v, w tables.Value, was, is bool) Change {
	var p parts
	c := Change{Bump: Patch}
	one, two := figure(v), figure(w)
	if !was {
		one = Said{Text: "from the rows of its ends"}
	}
	if !is {
		two = Said{Text: "from the rows of its ends"}
	}
	if one != two {
		p = append(p, Part{What: "value", Old: one, New: two})
	}
	p.text("faces", string(v.Faces), string(w.Faces))
	p.text("faces-basis", string(v.FacesBasis), string(w.FacesBasis))
	p.text("basis", string(v.Basis), string(w.Basis))
	p.text("source", sources(v.Sources), sources(w.Sources))
	p.text("at", v.At, w.At)
	p.text("others", others(v), others(w))
	p.text("measured", v.Measured.Words(), w.Measured.Words())
	c.Parts = p
	if p.has("value", "faces", "others") {
		c.Bump = Minor
	}
	sourced := len(v.Sources) > 0 || len(w.Sources) > 0
	if p.has("value", "faces") && w.State == tables.Given && !p.has("source", "at", "measured") && (sourced || v.State == tables.Given) {
		c.Calls = append(c.Calls, SourceUnchanged)
	}
	founded := len(w.Sources) > 0 && p.has("source", "at") || w.Basis == tables.Measured && p.has("measured")
	if raised(v.Basis, w.Basis) && !founded ||
		raised(v.FacesBasis, w.FacesBasis) && len(w.Sources) == 0 {
		c.Calls = append(c.Calls, BasisUnsourced)
	}
	return c
}

// raised reports a basis that claims more than before; from nothing it claims what it is.
func raised(old, new tables.Basis) bool {
	return old != "" && new != "" && old.Weaker(new)
}

func sources(list []*tables.Source) string {
	ids := make([]string, len(list))
	for i, s := range list {
		ids[i] = s.ID
	}
	return strings.Join(ids, ", ")
}

// others tells what else is printed or said, each with its reason.
func others(v tables.Value) string {
	all := make([]string, len(v.Others))
	for i, o := range v.Others {
		all[i] = evidence(o)
	}
	return strings.Join(all, "; ")
}

// evidence is a value and all that stands beside it, in words.
func evidence(v tables.Value) string {
	words := []string{figure(v).Text}
	for _, w := range []string{string(v.Faces), string(v.FacesBasis), string(v.Basis), sources(v.Sources), v.At} {
		if w != "" {
			words = append(words, w)
		}
	}
	if v.Measured != nil {
		words = append(words, "measured "+v.Measured.Words())
	}
	if len(v.Others) > 0 {
		words = append(words, "else "+others(v))
	}
	return strings.Join(words, ", ")
}
