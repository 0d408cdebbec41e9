package tables

import (
	"encoding/json"
	"io"
	"runtime"
	"slices"
	"strings"
)

// What the chart's hash is made of is its JSON, without version, date and what was reckoned.
// The rows of a large chart are written here by hand, in the very bytes that encoding/json
// writes (canonical_test.go), because that takes several times as long; all else is left to
// it.

// writeCanonical writes what the chart says.
func (s *Set) writeCanonical(w io.Writer) error {
	io.WriteString(w, `{"tables":[`)
	for n, rows := range s.canonicalTables() {
		head, tail := tableHead(s.Tables[n])
		if n > 0 {
			head = "," + head
		}
		io.WriteString(w, head)
		w.Write(<-rows)
		io.WriteString(w, tail)
	}
	rest := chartJSON{Sources: []sourceJSON{}, Retired: []retiredJSON{}}
	rest.besides(s)
	text, err := json.Marshal(rest)
	if err != nil {
		return err
	}
	_, after, _ := strings.Cut(string(text), `"tables":null`)
	_, err = io.WriteString(w, "]"+after+"\n")
	return err
}

// canonicalTables writes the rows of all tables, several tables at a time and not many more
// than there are cores; each is ready when it can be received.
func (s *Set) canonicalTables() []<-chan []byte {
	ready := make([]<-chan []byte, len(s.Tables))
	turn := make(chan struct{}, runtime.GOMAXPROCS(0))
	for n, t := range s.Tables {
		one := make(chan []byte)
		ready[n] = one
		go func() {
			turn <- struct{}{}
			rows := canonicalRows(t)
			<-turn
			one <- rows
		}()
	}
	return ready
}

// tableHead is what stands before and behind the rows of a table.
func tableHead(t *Table) (before, behind string) {
	text, err := json.Marshal(headOf(t))
	if err != nil {
		panic("internal error: " + err.Error()) // strings and lists only
	}
	before, found := strings.CutSuffix(string(text), "]}")
	if !found {
		panic("internal error: the rows are not last")
	}
	return before, "]}"
}

func canonicalRows(t *Table) []byte {
	columns := columnIDs(t)
	slices.Sort(columns)
	b := make([]byte, 0, 2*len(t.source)+1024)
	for n, row := range t.Rows {
		if n > 0 {
			b = append(b, ',')
		}
		b = appendRow(b, row, columns)
	}
	return b
}

// appendRow writes a row as encoding/json does a [rowJSON]; the columns are sorted.
func appendRow(b []byte, row *Row, columns []string) []byte {
	b = appendString(append(b, `{"id":`...), row.ID)
	b = appendStrings(b, `,"also":[`, row.Also)
	if len(row.Values) > 0 {
		b = append(b, `,"values":`...)
		open := byte('{')
		for _, id := range columns {
			if v, there := row.Values[id]; there {
				b = appendString(append(b, open), id)
				b = appendValue(append(b, ':'), &v)
				open = ','
			}
		}
		b = append(b, '}')
	}
	open := `,"ends":[`
	for i := range row.Ends {
		end := &row.Ends[i]
		if end.Like == nil {
			continue
		}
		b = appendString(append(append(b, open...), `{"like":`...), end.Like.Ref())
		b = appendValue(append(b, `,"hold":`...), &end.Hold)
		b = appendValue(append(b, `,"cap":`...), &end.Cap)
		b = append(appendValue(append(b, `,"across":`...), &end.Across), '}')
		open = ","
	}
	if open == "," {
		b = append(b, ']')
	}
	b = appendString(append(b, `,"basis":`...), string(row.Basis))
	b = appendSources(b, row.Sources)
	b = appendSaid(b, `,"at":`, row.At)
	open = `,"twins":[`
	for _, twin := range row.Twins {
		b = appendString(append(b, open...), twin.ID)
		open = ","
	}
	if open == "," {
		b = append(b, ']')
	}
	return append(appendSaid(b, `,"note":`, row.Note), '}')
}

// appendValue writes a cell as encoding/json does a [valueJSON].
func appendValue(b []byte, v *Value) []byte {
	b = appendString(append(b, `{"is":`...), v.Word())
	b = appendFigure(b, v.Quantity)
	if v.IsRange() {
		b = appendString(append(b, `,"to":{"is":`...), v.To.Text)
		b = append(appendFigure(b, v.To), '}')
	}
	b = appendSaid(b, `,"faces":`, string(v.Faces))
	b = appendSaid(b, `,"facesBasis":`, string(v.FacesBasis))
	b = appendSaid(b, `,"basis":`, string(v.Basis))
	b = appendSources(b, v.Sources)
	b = appendSaid(b, `,"at":`, v.At)
	open := `,"others":[`
	for i := range v.Others {
		b = appendValue(append(b, open...), &v.Others[i])
		open = ","
	}
	if open == "," {
		b = append(b, ']')
	}
	if v.Measured != nil {
		b = appendMeasured(b, v.Measured)
	}
	return append(b, '}')
}

// appendMeasured writes what was measured; it is seldom, and left to encoding/json.
func appendMeasured(b []byte, m *Measurements) []byte {
	var doc struct {
		Measured []measurementJSON `json:"measured,omitempty"`
	}
	doc.Measured = measurementsOf(m)
	text, err := json.Marshal(doc)
	if err != nil {
		panic("internal error: " + err.Error()) // strings and lists only
	}
	if len(doc.Measured) == 0 {
		return b
	}
	return append(append(b, ','), text[1:len(text)-1]...)
}

func appendFigure(b []byte, q Quantity) []byte {
	b = appendSaid(b, `,"unit":`, string(q.Unit))
	switch q.Unit {
	case Inch, Millimetre:
		b = appendSaid(b, `,"mm":`, q.decimalIn(Millimetre))
		b = appendSaid(b, `,"in":`, q.decimalIn(Inch))
	case PoundFoot, NewtonMetre:
		b = appendSaid(b, `,"nm":`, q.decimalIn(NewtonMetre))
		b = appendSaid(b, `,"lbfft":`, q.decimalIn(PoundFoot))
	}
	return b
}

func appendSources(b []byte, sources []*Source) []byte {
	open := `,"sources":[`
	for _, source := range sources {
		b = appendString(append(b, open...), source.ID)
		open = ","
	}
	if open == "," {
		b = append(b, ']')
	}
	return b
}

func appendStrings(b []byte, open string, texts []string) []byte {
	if len(texts) == 0 {
		return b
	}
	for _, text := range texts {
		b = appendString(append(b, open...), text)
		open = ","
	}
	return append(b, ']')
}

// appendSaid writes a key that is left out where nothing is said.
func appendSaid(b []byte, key, text string) []byte {
	if text == "" {
		return b
	}
	return appendString(append(b, key...), text)
}

// appendString writes a text; one with a character that is escaped is left to encoding/json.
func appendString(b []byte, text string) []byte {
	for i := range len(text) {
		if c := text[i]; c < ' ' || c > '~' || c == '"' || c == '\\' || c == '<' || c == '>' || c == '&' {
			escaped, err := json.Marshal(text)
			if err != nil {
				panic("internal error: " + err.Error()) // a text
			}
			return append(b, escaped...)
		}
	}
	b = append(append(b, '"'), text...)
	return append(b, '"')
}
