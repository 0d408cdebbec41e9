package tables

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"
)

// The rows of a chart are written as JSON here by hand, in the very bytes that encoding/json
// writes of a [rowJSON] (row_json_test.go), because that takes several times as long. There are
// two forms: that of the open data, indented and with what measurements come to, and that of
// which the chart's hash is made, on one line and without.

// rowWriter appends rows of one table to a text.
type rowWriter struct {
	b        []byte
	columns  []string // sorted, as encoding/json does the keys of a map
	indented bool
	depth    int // of what is written next, when indented
}

func newRowWriter(t *Table, indented bool, depth int) *rowWriter {
	columns := columnIDs(t)
	slices.Sort(columns)
	return &rowWriter{columns: columns, indented: indented, depth: depth}
}

const indents = "                                                                "

// line begins a new one when indented.
func (w *rowWriter) line() {
	if !w.indented {
		return
	}
	w.b = append(w.b, '\n')
	w.b = append(w.b, indents[:2*w.depth]...)
}

// next goes to the next entry of a mapping or list.
func (w *rowWriter) next(first bool) {
	if !first {
		w.b = append(w.b, ',')
	}
	w.line()
}

func (w *rowWriter) open(bracket byte) {
	w.b = append(w.b, bracket)
	w.depth++
}

func (w *rowWriter) close(bracket byte) {
	w.depth--
	w.line()
	w.b = append(w.b, bracket)
}

// key writes a key of a mapping with its colon; it is given in quotes.
func (w *rowWriter) key(quoted string) {
	w.next(w.b[len(w.b)-1] == '{')
	w.b = append(append(w.b, quoted...), ':')
	if w.indented {
		w.b = append(w.b, ' ')
	}
}

// row writes a row.
func (w *rowWriter) row(row *Row) {
	w.open('{')
	w.key(`"id"`)
	w.text(row.ID)
	w.texts(`"also"`, row.Also)
	if len(row.Values) > 0 {
		w.values(row)
	}
	w.ends(row.Ends)
	w.key(`"basis"`)
	w.text(string(row.Basis))
	w.sources(row.Sources)
	w.said(`"at"`, row.At)
	if len(row.Twins) > 0 {
		w.key(`"twins"`)
		w.open('[')
		for i, twin := range row.Twins {
			w.next(i == 0)
			w.text(twin.ID)
		}
		w.close(']')
	}
	w.said(`"note"`, row.Note)
	w.close('}')
}

func (w *rowWriter) values(row *Row) {
	w.key(`"values"`)
	w.open('{')
	for _, id := range w.columns {
		v, there := row.Values[id]
		if !there {
			continue
		}
		w.next(w.b[len(w.b)-1] == '{')
		w.text(id)
		w.b = append(w.b, ':')
		if w.indented {
			w.b = append(w.b, ' ')
		}
		w.value(&v)
	}
	if w.b[len(w.b)-1] == '{' { // none is of a column
		w.depth--
		w.b = append(w.b, '}')
		return
	}
	w.close('}')
}

// ends writes those of a conversion joint.
func (w *rowWriter) ends(ends []End) {
	written := 0
	for i := range ends {
		end := &ends[i]
		if end.Like == nil {
			continue
		}
		if written == 0 {
			w.key(`"ends"`)
			w.open('[')
		}
		w.next(written == 0)
		written++
		w.open('{')
		w.key(`"like"`)
		w.text(end.Like.Ref())
		w.key(`"hold"`)
		w.value(&end.Hold)
		w.key(`"cap"`)
		w.value(&end.Cap)
		w.key(`"across"`)
		w.value(&end.Across)
		w.close('}')
	}
	if written > 0 {
		w.close(']')
	}
}

// value writes a cell as encoding/json does a [valueJSON].
func (w *rowWriter) value(v *Value) {
	w.open('{')
	w.key(`"is"`)
	w.text(v.Word())
	w.figure(v.Quantity)
	if v.IsRange() {
		w.key(`"to"`)
		w.quantity(v.To)
	}
	w.said(`"faces"`, string(v.Faces))
	w.said(`"facesBasis"`, string(v.FacesBasis))
	w.said(`"basis"`, string(v.Basis))
	w.sources(v.Sources)
	w.said(`"at"`, v.At)
	if len(v.Others) > 0 {
		w.key(`"others"`)
		w.open('[')
		for i := range v.Others {
			w.next(i == 0)
			w.value(&v.Others[i])
		}
		w.close(']')
	}
	if v.Measured != nil {
		w.measured(v.Measured)
	}
	w.close('}')
}

// measured writes what was measured, and in the open data what it comes to.
func (w *rowWriter) measured(m *Measurements) {
	if len(m.List) > 0 {
		w.key(`"measured"`)
		w.open('[')
		for i := range m.List {
			w.next(i == 0)
			w.measurement(&m.List[i])
		}
		w.close(']')
	}
	c := m.Combined
	if c == nil || !w.indented {
		return
	}
	w.key(`"combined"`)
	w.open('{')
	w.key(`"mm"`)
	w.text(c.MM)
	w.key(`"uncertaintyMm"`)
	w.text(c.Uncertainty)
	w.key(`"measurements"`)
	w.b = strconv.AppendInt(w.b, int64(c.Count), 10)
	w.key(`"readings"`)
	w.b = strconv.AppendInt(w.b, int64(c.Readings), 10)
	w.said(`"birge"`, c.Birge)
	w.key(`"consistent"`)
	w.b = strconv.AppendBool(w.b, c.Consistent)
	w.said(`"agrees"`, c.Agrees)
	w.close('}')
}

func (w *rowWriter) measurement(m *Measurement) {
	w.open('{')
	w.key(`"readings"`)
	if len(m.Readings) == 0 {
		w.b = append(w.b, "null"...)
	} else {
		w.open('[')
		for i, q := range m.Readings {
			w.next(i == 0)
			w.quantity(q)
		}
		w.close(']')
	}
	w.key(`"tool"`)
	w.text(m.Tool)
	w.said(`"condition"`, m.Condition)
	w.said(`"faces"`, string(m.Faces))
	w.said(`"on"`, m.On)
	w.said(`"by"`, m.By)
	w.close('}')
}

// quantity writes a number that stands for itself.
func (w *rowWriter) quantity(q Quantity) {
	w.open('{')
	w.key(`"is"`)
	w.text(q.Text)
	w.figure(q)
	w.close('}')
}

// figure writes a number in both units of its kind.
func (w *rowWriter) figure(q Quantity) {
	w.said(`"unit"`, string(q.Unit))
	switch q.Unit {
	case Inch, Millimetre:
		w.said(`"mm"`, q.decimalIn(Millimetre))
		w.said(`"in"`, q.decimalIn(Inch))
	case PoundFoot, NewtonMetre:
		w.said(`"nm"`, q.decimalIn(NewtonMetre))
		w.said(`"lbfft"`, q.decimalIn(PoundFoot))
	}
}

func (w *rowWriter) sources(sources []*Source) {
	if len(sources) == 0 {
		return
	}
	w.key(`"sources"`)
	w.open('[')
	for i, source := range sources {
		w.next(i == 0)
		w.text(source.ID)
	}
	w.close(']')
}

func (w *rowWriter) texts(quoted string, texts []string) {
	if len(texts) == 0 {
		return
	}
	w.key(quoted)
	w.open('[')
	for i, text := range texts {
		w.next(i == 0)
		w.text(text)
	}
	w.close(']')
}

// said writes a key that is left out where nothing is said.
func (w *rowWriter) said(quoted, text string) {
	if text != "" {
		w.key(quoted)
		w.text(text)
	}
}

// text writes one; one with a character that is escaped, or may be, is left to encoding/json.
func (w *rowWriter) text(text string) {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' {
			w.escaped(text)
			return
		}
	}
	w.b = append(append(append(w.b, '"'), text...), '"')
}

func (w *rowWriter) escaped(text string) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(!w.indented)
	if err := e.Encode(text); err != nil {
		panic("internal error: " + err.Error()) // a text
	}
	w.b = append(w.b, strings.TrimSuffix(b.String(), "\n")...)
}
