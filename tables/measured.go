package tables

import (
	"math/big"
	"slices"
	"strings"

	"capspan/build/diag"
	"go.yaml.in/yaml/v4"
)

// What readers measured stands beside what is printed and never replaces it:
//
//	cap: {is: 1.062, basis: common-practice, measured: [{readings: [1.061 in, 1.0615 in], tool: micrometer}]}
//
// Only lengths are measured; each item is the work of one person on one part with one
// instrument. What the readings are worth is not reckoned here but by the core.

// Measurement is what one person read of one part.
type Measurement struct {
	Readings  []Quantity
	Tool      string // a word of tools
	Condition string // a word of conditions; empty where no condition is asked for
	Faces     Faces  // of an across: between which it was taken, by default those of the value
	On        string // the day, YYYY-MM-DD; may be empty
	By        string // a name for whoever measured; may be empty
	Pos       diag.Pos
}

// Measurements are those of one value. Values share it, so that whoever reckons what they
// are worth says it once.
type Measurements struct {
	List []Measurement
	// Combined is what they come to together. Load leaves it empty, because the core reckons
	// it; it is no part of what the chart says, and the chart's hash does not depend on it.
	Combined *Combined
}

// Combined are measurements between the same faces as the value's, put together.
type Combined struct {
	MM          string   // the weighted mean
	Uncertainty string   // expanded, about 95 %, in mm
	Count       int      // of measurements that were used
	Readings    int      // in all of them
	Birge       string   // the ratio of Birge; empty for one measurement
	Consistent  bool     // they agree among themselves
	Agrees      string   // yes or no, with the value as printed; empty where it has none to agree with
	Says        []string // the same in sentences
}

// measurementKeys are in the order in which Format writes them.
var measurementKeys = []string{"readings", "tool", "condition", "faces", "on", "by"}

// The words of measuring are those of the identification core; a test of package build
// holds the lists to it.
var (
	tools      = []string{"digital-caliper", "dial-caliper", "vernier-caliper", "vernier-caliper-coarse", "micrometer", "steel-rule", "tape"}
	conditions = []string{"new", "used", "worn", "rusted"}
)

// measuredKeys are the keys of a measurement of that column.
func measuredKeys(c Column, joint bool) []string {
	return slices.DeleteFunc(slices.Clone(measurementKeys), func(key string) bool {
		return key == "condition" && !worn(c, joint) || key == "faces" && !(joint && c.ID == acrossColumn)
	})
}

// worn reports the columns of which it is known how wear and rust change a reading.
func worn(c Column, joint bool) bool {
	return joint && (c.ID == capColumn || c.ID == acrossColumn)
}

// readMeasured reads the measurements beside a value.
func (l *loader) readMeasured(r *reader, n *node, path string, c Column, joint bool) *Measurements {
	path += ".measured"
	var out Measurements
	for _, item := range r.items(n, path, false) {
		known := measuredKeys(c, joint)
		got, ok := r.fields(item, path, known, func(key string) string {
			if slices.Contains(measurementKeys, key) {
				return "a measurement of this column has only: " + strings.Join(known, ", ")
			}
			return ""
		})
		if !ok || !r.need(item, path, got, "readings", "tool") {
			continue
		}
		m := Measurement{Pos: r.pos(item)}
		for _, reading := range r.items(got["readings"].value, path, false) {
			if q, ok := r.reading(reading, path, c); ok {
				m.Readings = append(m.Readings, q)
			}
		}
		m.Tool, _ = word(r, got["tool"].value, path, "unknown-tool", "instrument", tools)
		if f, there := got["condition"]; there {
			m.Condition, _ = word(r, f.value, path, "unknown-condition", "condition", conditions)
		}
		if f, there := got["faces"]; there {
			m.Faces, _ = word(r, f.value, path, "unknown-faces", "faces", faces)
		}
		m.On = r.shaped(got, "on", path, "bad-date", "a day such as 2026-11-25", isDay)
		if f, there := got["by"]; there {
			m.By, _ = r.id(f.value, path)
		}
		out.List = append(out.List, m)
	}
	if len(out.List) == 0 {
		return nil
	}
	return &out
}

// reading reads one reading: a length with its unit, such as 1.061 in.
func (r *reader) reading(n *node, path string, c Column) (Quantity, bool) {
	text, ok := r.text(n, path)
	if !ok {
		return Quantity{}, false
	}
	for _, unit := range unitsOf(Length) {
		number, has := strings.CutSuffix(text, " "+string(unit))
		if !has {
			continue
		}
		q, ok := r.number(n, number, path, Length, unit)
		if ok {
			r.plausible(n, path, q, c)
		}
		return q, ok
	}
	r.fail(n, path, "missing-unit", numbered("the reading %q does not end in a unit", text), "write it as 1.061 in or 26.95 mm")
	return Quantity{}, false
}

// measuredWell checks what only a measured value can do wrong: to have no readings, or to
// say what none of them says. A measurement found in a source needs no readings here.
func (r *reader) measuredWell(n *node, path string, c Column, got map[string]field, v Value) {
	if c.Kind != Length || v.State != Given || v.Basis != Measured {
		return
	}
	if v.Measured == nil {
		_, readings := got["measured"]
		_, sourced := got["source"]
		if !readings && !sourced {
			r.fail(got["basis"].value, path, "missing-readings", "a measured value has neither readings nor a source",
				"add measured: [{readings: [...], tool: ...}], or the source that tells of the measuring")
		}
		return
	}
	if v.IsRange() {
		return
	}
	least, greatest, any := v.Measured.span(v.Faces)
	if !any {
		return
	}
	below, above := new(big.Rat).Sub(least.si(), v.Quantity.si()), new(big.Rat).Sub(v.Quantity.si(), greatest.si())
	if below.Cmp(measuredSlack) > 0 || above.Cmp(measuredSlack) > 0 {
		r.fail(&yaml.Node{Line: v.Pos.Line, Column: v.Pos.Col}, path, "not-as-measured",
			numbered("%s is called measured, and the readings lie between %s and %s", v.Quantity, least, greatest),
			"write a value within 0.3 mm of the readings, or say why else it is believed")
	}
}

// measuredSlack, in mm, is how far a measured value may lie outside its readings: as far as
// wear or rust shift them, which the core puts right.
var measuredSlack = big.NewRat(3, 10)

// span is the least and the greatest reading between those faces.
func (m *Measurements) span(f Faces) (least, greatest Quantity, any bool) {
	for _, one := range m.List {
		if one.Faces != "" && one.Faces != f {
			continue
		}
		for _, q := range one.Readings {
			if !any || q.Cmp(least) < 0 {
				least = q
			}
			if !any || q.Cmp(greatest) > 0 {
				greatest = q
			}
			any = true
		}
	}
	return least, greatest, any
}

// Words are the measurement as one line: "1.061 in, 1.062 in by micrometer, used, 2026-11-25".
func (m Measurement) Words() string {
	readings := make([]string, len(m.Readings))
	for i, q := range m.Readings {
		readings[i] = q.String()
	}
	words := strings.Join(readings, ", ") + " by " + m.Tool
	from := ""
	if m.By != "" {
		from = "from " + m.By // its own word: a name may be any of the others
	}
	for _, w := range []string{m.Condition, string(m.Faces), m.On, from} {
		if w != "" {
			words += ", " + w
		}
	}
	return words
}

// Words are all measurements of a value, in their order; empty for none.
func (m *Measurements) Words() string {
	if m == nil {
		return ""
	}
	all := make([]string, len(m.List))
	for i, one := range m.List {
		all[i] = one.Words()
	}
	return strings.Join(all, "; ")
}
