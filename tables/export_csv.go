package tables

import (
	"encoding/csv"
	"slices"
	"strings"
)

// CSV writes one table, one line a row. Each column of the chart becomes several:
// the digits and unit as the chart has them, exact millimetres, inches (rounded when
// converted), and the evidence. A torque has newton metres and pound-force feet instead;
// a column of ranges has the upper ends in columns of their own. A table of joints has a second set for the other end
// of a conversion joint, and "like" columns that name the rows its ends are like;
// both are empty for a joint with like ends. Lists are joined by "; ".
//
// Sheet programs run a cell that begins with = + - or @; such text gets an apostrophe
// in front.
func (e *Exports) CSV(t *Table) []byte {
	before := e.of(t)
	if same := before.csv.same(t.Rows); same != nil {
		before.csv = same
		return same.text
	}
	lines := newCSVLines(t)
	if !slices.Equal(before.fields, lines.fields) {
		before.csv = nil // the lines have other columns
	}
	lines.b = make([]byte, 0, before.csv.size(len(t.source)))
	lines.head()
	b, made := before.csv.write(lines.b, t.Rows, 0, lines.row)
	made.text = b
	before.fields, before.csv = lines.fields, made
	return b
}

// csvLines appends the lines of a table to a text.
type csvLines struct {
	b      []byte
	out    *csv.Writer
	table  *Table
	fields []csvField
	ends   int
	parts  [][]string
}

func newCSVLines(t *Table) *csvLines {
	l := &csvLines{table: t, ends: endsOf(t), parts: allParts(t)}
	l.fields = csvFields(t, l.ends, l.parts)
	l.out = csv.NewWriter(l)
	l.out.UseCRLF = true // RFC 4180, 2
	return l
}

// Write implements [io.Writer].
func (l *csvLines) Write(p []byte) (int, error) {
	l.b = append(l.b, p...)
	return len(p), nil
}

func (l *csvLines) write(record []string) {
	if err := l.out.Write(record); err != nil {
		panic("internal error: " + err.Error()) // the separator is a comma
	}
	l.out.Flush()
}

func (l *csvLines) head() {
	var names []string
	for _, field := range l.fields {
		names = append(names, field.Name)
	}
	l.write(names)
}

// row appends that of one row.
func (l *csvLines) row(b []byte, r *Row) []byte {
	l.b = b
	record := []string{r.ID, strings.Join(r.Also, "; ")}
	for n := range l.ends {
		record = append(record, endCells(l.table, r, n, l.parts, l.ends > 1)...)
	}
	record = append(record, string(r.Basis), strings.Join(sourceIDs(r.Sources), "; "), r.At, strings.Join(ids(r.Twins), "; "), r.Note)
	for i, cell := range record {
		record[i] = inert(cell)
	}
	l.write(record)
	return l.b
}

// csvField is one column of the CSV.
type csvField struct {
	Name   string
	Number bool   // a decimal or nothing
	Label  string // the chart's column; empty for a row's own
}

// csvFields lists the columns of a table's CSV; parts are those of each column of the table.
func csvFields(t *Table, ends int, parts [][]string) []csvField {
	fields := []csvField{{Name: "id"}, {Name: "also"}}
	for n := range ends {
		suffix := endSuffix(n)
		if ends > 1 {
			fields = append(fields, csvField{Name: "like" + suffix})
		}
		for i, c := range t.Columns {
			if n > 0 && !jointColumn(c) {
				continue
			}
			for _, part := range parts[i] {
				_, number := numberPart(Value{}, part)
				fields = append(fields, csvField{c.ID + part + suffix, number, c.Label})
			}
		}
	}
	for _, own := range []string{"basis", "sources", "at", "twins", "note"} {
		fields = append(fields, csvField{Name: own})
	}
	return fields
}

// endsOf is 2 when the table has a conversion joint.
func endsOf(t *Table) int {
	for _, r := range t.Rows {
		if len(r.Ends) == 2 {
			return 2
		}
	}
	return 1
}

func endSuffix(n int) string {
	if n == 1 {
		return "_2"
	}
	return ""
}

// jointColumn reports the columns that are read from an end.
func jointColumn(c Column) bool {
	return c.ID == holdColumn || c.ID == capColumn || c.ID == acrossColumn
}

// parts are the columns one column of the chart becomes.
func parts(c Column) []string {
	out := []string{""}
	if units := unitParts[c.Kind]; units != nil {
		out = append(append(out, "_unit"), units...)
		if c.Range {
			for _, unit := range units {
				out = append(out, unit+"_to")
			}
		}
	} else if c.Range {
		out = append(out, "_from", "_to")
	}
	if c.ID == acrossColumn && c.Kind == Length {
		out = append(out, "_faces", "_faces_basis")
	}
	return append(out, "_basis", "_sources", "_at", "_others")
}

// unitParts are the columns of a figure in each of its units.
var unitParts = map[Kind][]string{Length: {"_mm", "_in"}, Torque: {"_nm", "_lbfft"}}

// partUnits is what the figures of a part are in.
var partUnits = map[string]Unit{
	"_mm": Millimetre, "_in": Inch, "_nm": NewtonMetre, "_lbfft": PoundFoot, "_from": NoUnit, "": NoUnit}

// numberPart is a figure in one unit, or nothing where there is none; ok is false for a
// part that is not a number.
func numberPart(v Value, part string) (cell string, ok bool) {
	if reckoned, is := measuredPart(v, part); is {
		return reckoned, true
	}
	q := v.Quantity
	name, upper := strings.CutSuffix(part, "_to")
	if upper {
		q = v.To
	}
	unit, known := partUnits[name]
	if !known || part == "" {
		return "", false
	}
	if q.IsZero() {
		return "", true
	}
	return q.decimalIn(unit), true
}

// endCells are the cells of one end of a row; parts are those of each column of the table.
func endCells(t *Table, r *Row, n int, parts [][]string, likes bool) []string {
	var cells []string
	var end End
	if n < len(r.Ends) {
		end = r.Ends[n]
	}
	if likes {
		like := ""
		if end.Like != nil {
			like = end.Like.ID
		}
		cells = append(cells, like)
	}
	fromEnd := map[string]Value{holdColumn: end.Hold, capColumn: end.Cap, acrossColumn: end.Across}
	for i, c := range t.Columns {
		v, there := r.Values[c.ID], n == 0
		if jointColumn(c) && t.Joint() {
			v, there = fromEnd[c.ID], n < len(r.Ends)
		}
		if !there && (n > 0 && !jointColumn(c)) {
			continue
		}
		for _, part := range parts[i] {
			cell := ""
			if there {
				cell = cellPart(v, part)
			}
			cells = append(cells, cell)
		}
	}
	return cells
}

func cellPart(v Value, part string) string {
	if number, ok := numberPart(v, part); ok {
		return number
	}
	switch part {
	case "":
		return v.Word()
	case "_unit":
		return string(v.Quantity.Unit)
	case "_faces":
		return string(v.Faces)
	case "_faces_basis":
		return string(v.FacesBasis)
	case "_basis":
		return string(v.Basis)
	case "_sources":
		return strings.Join(sourceIDs(v.Sources), "; ")
	case "_at":
		return v.At
	case "_measured":
		return v.Measured.Words()
	case "_others":
		var others []string
		for _, o := range v.Others {
			others = append(others, otherWords(o))
		}
		return strings.Join(others, "; ")
	}
	return ""
}

// otherWords is one more figure and why it is believed: "55/64 in (published: agri-list)".
func otherWords(v Value) string {
	text := v.Word()
	if !v.Quantity.IsZero() {
		text = v.Figure()
	}
	why := string(v.Basis)
	if len(v.Sources) > 0 {
		why += ": " + strings.Join(sourceIDs(v.Sources), ", ")
	}
	return text + " (" + why + ")"
}

// inert keeps a sheet program from running a contributor's text.
func inert(cell string) string {
	if cell != "" && strings.ContainsRune("=+-@", rune(cell[0])) {
		return "'" + cell
	}
	return cell
}
