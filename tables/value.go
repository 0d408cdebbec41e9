package tables

import (
	"strings"

	"capspan/build/diag"
	"go.yaml.in/yaml/v4"
)

// readValue reads one cell: {is: 3.219, faces: over-caps, basis: common-practice}.
func (l *loader) readValue(r *reader, n *node, path string, c Column, joint bool) Value {
	across := joint && c.ID == acrossColumn
	known, whole := r.cellKeys(c, across)
	if n.Kind == yaml.ScalarNode && n.Tag != "!!null" && n.Value != "" {
		r.fail(n, path, "wrong-shape", numbered("%q where a value in braces is expected", n.Value), "write {is: "+n.Value+", basis: ...}")
		return Value{State: Unknown, Pos: r.pos(n)}
	}
	got, ok := r.fields(n, path, whole, func(key string) string {
		switch key {
		case "faces", "faces-basis":
			return "only across has faces"
		case "measured":
			return "only lengths are measured"
		}
		return ""
	})
	if !ok || !r.inline(n, path) {
		return Value{State: Unknown, Pos: r.pos(n)}
	}
	v := l.readFigure(r, n, path, c, across, got)
	v = l.readFaces(r, n, path, across, got, v)
	defer r.forget(got)
	v.Braces = r.pos(n)
	if f, there := got["measured"]; there {
		v.Measured = l.readMeasured(r, f.value, path, c, joint)
	}
	r.measuredWell(n, path, c, got, v)
	if others, there := got["others"]; there {
		for _, item := range r.items(others.value, path+".others", false) {
			got, ok := r.fields(item, path+".others", known, nil)
			if !ok {
				continue
			}
			other := l.readFigure(r, item, path+".others", c, across, got)
			if other.State != Given {
				r.fail(item, path+".others", "wrong-shape", "among others stand figures only", "leave it out")
				continue
			}
			other.Faces = v.Faces
			if f, there := got["faces"]; there {
				other.Faces, _ = word(r, f.value, path+".others", "unknown-faces", "faces", faces)
			}
			r.measuredWell(item, path+".others", c, got, other)
			r.forget(got)
			v.Others = append(v.Others, other)
		}
	}
	return v
}

func keysFor(c Column, across bool) []string {
	keys := []string{"is"}
	if len(unitsOf(c.Kind)) > 0 {
		keys = append(keys, "unit")
	}
	if across {
		keys = append(keys, "faces", "faces-basis")
	}
	return append(keys, "basis", "source", "at")
}

// readFigure reads what a value is and why it is believed.
func (l *loader) readFigure(r *reader, n *node, path string, c Column, across bool, got map[string]field) Value {
	v := Value{Pos: r.pos(n), State: Unknown}
	if !r.need(n, path, got, "is") {
		return v
	}
	is := got["is"].value
	v.Pos = r.pos(is)
	unit := c.Unit
	if f, there := got["unit"]; there {
		unit, _ = word(r, f.value, path, "unknown-unit", "unit", unitsOf(c.Kind))
	}
	switch c.Kind {
	case Holds:
		hold, ok := word(r, is, path, "unknown-hold", "hold", holds)
		if v.Text = string(hold); ok && hold != UnknownHold {
			v.State = Given
		}
	case Text:
		v.Text, v.State = r.absence(is, path)
	default:
		if v.Text, v.State = r.absence(is, path); v.State == Given {
			if from, to, ok := r.figure(is, v.Text, path, c, unit); ok {
				v.Quantity, v.To, v.Text = from, to, ""
				r.plausible(is, path, from, c)
				if v.IsRange() {
					r.plausible(is, path, to, c)
				}
			} else {
				v.State = Unknown
			}
		}
	}
	given := is.Value != "unknown" && is.Value != "none"
	e := l.evidence(r, n, path, got, given)
	v.Basis, v.Sources, v.At = e.basis, e.sources, e.at
	return v
}

// absence reads a text or one of the two words for its absence.
func (r *reader) absence(n *node, path string) (string, State) {
	text, ok := r.text(n, path)
	switch {
	case !ok || text == "unknown":
		return text, Unknown
	case text == "none":
		return text, None
	}
	return text, Given
}

// number reads the text of a numeric column.
func (r *reader) number(n *node, text, path string, kind Kind, unit Unit) (Quantity, bool) {
	q, err := ParseQuantity(text, unit)
	if err != nil {
		hints := numberHints(text)
		if _, err := ParseQuantity(text, Inch); err == nil && kind == Length {
			hints = []string{"write unit: in beside it"}
		}
		r.fail(n, path, "bad-number", err.Error(), hints...)
		return q, false
	}
	if kind == Count && q.top%q.bottom != 0 {
		r.fail(n, path, "bad-number", numbered("%q is not a whole number", text))
		return q, false
	}
	return q, true
}

func (r *reader) plausible(n *node, path string, q Quantity, c Column) {
	if q.Unit == "" && len(unitsOf(c.Kind)) > 0 {
		return // its unit was refused already
	}
	if q.Cmp(c.Least) < 0 || q.Cmp(c.Greatest) > 0 {
		bounds := c.Least.Text + ".." + c.Greatest.String()
		r.fail(n, path, "implausible", numbered("%s is outside %s", q, bounds), rangeHints(q, c)...)
	}
}

// readFaces reads between which faces an across is measured.
func (l *loader) readFaces(r *reader, n *node, path string, across bool, got map[string]field, v Value) Value {
	if !across {
		return v
	}
	f, there := got["faces"]
	switch {
	case !there && v.State == Given:
		r.fail(n, path, "missing-faces", "the distance across does not say between which faces", "add faces: "+joined(faces))
	case there && v.State == None:
		r.fail(f.key, path, "wrong-faces", "a distance that does not exist has no faces", "leave faces out")
	case there:
		v.Faces, _ = word(r, f.value, path, "unknown-faces", "faces", faces)
	case v.State == Unknown:
		v.Faces = UnknownFaces
	}
	if f, there := got["faces-basis"]; there {
		v.FacesBasis, _ = word(r, f.value, path, "unknown-basis", "basis", bases)
	}
	return v
}

// evidence is why a value, or a conversion joint, is believed.
type evidence struct {
	basis   Basis
	sources []*Source
	at      string
}

// evidence reads basis, source and at. A given value must have a basis, a published
// one a source, and a source stands only beside what rests on it.
func (l *loader) evidence(r *reader, n *node, path string, got map[string]field, given bool) evidence {
	var e evidence
	basis, hasBasis := got["basis"]
	source, hasSource := got["source"]
	at, hasAt := got["at"]
	if hasBasis {
		e.basis, _ = word(r, basis.value, path, "unknown-basis", "basis", bases)
	} else if given {
		r.fail(n, path, "missing-basis", "the value does not say why it is believed", "add basis: "+joined(bases))
	}
	if hasSource {
		for _, item := range r.items(source.value, path, false) {
			if s := l.source(r, item, path); s != nil {
				e.sources = append(e.sources, s)
			}
		}
	}
	if hasAt {
		e.at, _ = r.text(at.value, path)
	}
	switch {
	case e.basis == Published && !hasSource:
		r.fail(basis.value, path, "missing-source", "a published value names no source", "add source: [...] with an id of tables/sources.yaml, or choose a weaker basis")
	case hasSource && (e.basis == Memory || e.basis == CommonPractice):
		r.fail(source.key, path, "senseless-source", numbered("a source beside the basis %q", e.basis), "say published when the source prints the value, or leave the source out")
	case hasSource && !hasBasis:
		r.fail(source.key, path, "senseless-source", "a source without a basis", "say basis: published when the source prints the value")
	case hasAt && !hasSource:
		r.fail(at.key, path, "senseless-source", "a place without a source", "name the source it is in")
	}
	return e
}

// source finds a registered source by the id written.
func (l *loader) source(r *reader, n *node, path string) *Source {
	id, ok := r.text(n, path)
	if !ok {
		return nil
	}
	if s, there := l.sources[id]; there {
		return s
	}
	var known []string
	for _, s := range l.set.Sources {
		known = append(known, s.ID)
	}
	p := r.fail(n, path, "unknown-source", numbered("the source %q is not in the registry", id))
	if p.Hints = diag.Nearest(id, known); p.Hints != nil {
		near := l.sources[strings.Split(p.Hints[0], `"`)[1]]
		p.Notes = []diag.Note{{Text: numbered("%q is defined at", near.ID), Pos: near.Pos}}
	} else {
		p.Hints = []string{"add it to " + folder + registryFile}
	}
	return nil
}

func (r *reader) failAt(pos diag.Pos, path, rule, fact string, hints ...string) *diag.Problem {
	return r.fail(&yaml.Node{Line: pos.Line, Column: pos.Col}, path, rule, fact, hints...)
}

// joined lists words as an alternative.
func joined[W ~string](words []W) string {
	list := make([]string, len(words))
	for i, w := range words {
		list[i] = string(w)
	}
	return strings.Join(list, " or ")
}
