package catalogue

import (
	"bytes"
	"fmt"
	"io/fs"
	"slices"
	"strconv"
	"strings"

	"capspan/tables"
)

// What one file holds at most: the tables refuse one of more than 1 MiB, and a page of
// more rows is no use to anybody.
const (
	mostRows  = 5000
	mostBytes = 1_000_000
)

const registry = "sources.yaml"

// invented stands on top of every file that is made up.
const invented = "# Invented to measure with, and made by build/synth: no figure here is any part's. Do not use it.\n"

// writer writes the rows of one table.
type writer struct {
	bytes.Buffer
	wide int // of the longest column, with its colon
}

// copied are the tables of other parts than joints and the registry, as the chart has them.
func copied(chart fs.FS, set *tables.Set) (Files, error) {
	files := Files{}
	names := []string{registry}
	for _, t := range set.Tables {
		if !t.Joint() {
			names = append(names, t.ID+".yaml")
		}
	}
	for _, name := range names {
		data, err := fs.ReadFile(chart, name)
		if err != nil {
			return nil, fmt.Errorf("copy a table of the chart: %w", err)
		}
		text := "# Of the shipped chart, and not invented; only the tables of joints beside it are.\n"
		if name == registry {
			text = "# Sources of the shipped chart, and after them invented ones, whose titles say so.\n"
		}
		files[name] = append([]byte(text), data...)
	}
	return files, nil
}

// registryOf lists the invented makers.
func registryOf(makers int) []byte {
	var b bytes.Buffer
	for n := range makers {
		fmt.Fprintf(&b, "\n  - id: %s\n    kind: catalogue\n    title: Invented catalogue %s\n    publisher: nobody\n"+
			"    trust: \"invented to measure with: there is no such maker, and no figure is any part's\"\n", sourceOf(n), strings.ToUpper(letter(n)))
	}
	return b.Bytes()
}

// writeTables writes the rows, each into a table of the kind it follows.
func writeTables(set *tables.Set, rows []row) Files {
	files := Files{}
	for _, t := range set.Tables {
		var mine []row
		for _, r := range rows {
			if r.table == t.ID {
				mine = append(mine, r)
			}
		}
		if !t.Joint() || len(mine) == 0 {
			continue
		}
		for part := 1; len(mine) > 0; part++ {
			id := t.ID
			if part > 1 {
				id += "-" + strconv.Itoa(part)
			}
			b := &writer{wide: widest(t)}
			b.head(t, id, part)
			n := 0
			for ; n < len(mine) && n < mostRows && b.Len() < mostBytes; n++ {
				if n > 0 {
					b.WriteByte('\n')
				}
				mine[n].text(b)
			}
			mine = mine[n:]
			files[id+".yaml"] = b.Bytes()
		}
	}
	return files
}

func widest(t *tables.Table) int {
	most := 0
	for _, c := range t.Columns {
		most = max(most, len(c.ID)+1)
	}
	return most
}

// head declares what the chart's table declares, with room for more sizes.
func (b *writer) head(t *tables.Table, id string, part int) {
	b.WriteString("# yaml-language-server: $schema=schema.json\n" + invented)
	fmt.Fprintf(b, "\ntable: %s\ntitle: \"Invented: %s %d\"\nabout: Invented to measure with; no row is a part that exists.\n", id, t.Title, part)
	fmt.Fprintf(b, "version: %s\ndate: %s\nunit: %s\ncolumns:\n", t.Version.Number, t.Version.Date, t.Unit)
	for _, c := range t.Columns {
		b.key("  ", c.ID)
		fmt.Fprintf(b, "{label: %q, kind: %s", c.Label, c.Kind)
		if c.Kind == tables.Length {
			p := printing{unit: c.Unit, decimals: 1}
			least, _ := p.write(1)
			greatest, _ := p.write(1.1 * greatestAcross)
			fmt.Fprintf(b, ", unit: %s, least: %s, greatest: %s", c.Unit, least, greatest)
		}
		if c.Method != "" {
			fmt.Fprintf(b, ", method: %s", c.Method)
		}
		b.WriteString("}\n")
	}
	b.WriteString("rows:\n")
}

// key writes a key and puts what follows under the other values.
func (b *writer) key(indent, id string) {
	fmt.Fprintf(b, "%s%-*s ", indent, b.wide, id+":")
}

// plain writes a kit of a size as the row of the pattern has it.
func (b *writer) plain(id string, from *rowPattern, s size, who int, kits []string) {
	b.name(id, from.also)
	for n := range from.cells {
		c := &from.cells[n]
		b.key("    ", c.column)
		b.WriteString("{is: ")
		mm := c.shown.mm * s.moved
		switch {
		case !c.given():
			b.WriteString(c.word)
		case c.column == capColumn:
			mm = s.cap
		case c.column == acrossColumn:
			mm = s.across
		}
		if c.given() {
			b.length(mm, c.shown.print, c.unit)
		}
		b.option("faces", string(c.faces), c.given())
		b.option("faces-basis", string(c.facesBasis), true)
		b.believed(c.believed, who)
		b.others(c, mm, who)
		b.WriteString("}\n")
	}
	b.rest(id, kits, from.note)
}

// others writes the figures that disagree, by as much as in the chart.
func (b *writer) others(c *cell, mm float64, who int) {
	for n, o := range c.others {
		if n == 0 {
			b.WriteString(", others: [")
		} else {
			b.WriteString(", ")
		}
		b.WriteString("{is: ")
		b.length(mm+o.by, o.print, c.unit)
		if o.faces != c.faces {
			b.option("faces", string(o.faces), true)
		}
		b.believed(o.believed, who)
		b.WriteString("}")
	}
	if len(c.others) > 0 {
		b.WriteString("]")
	}
}

// joined writes a kit of a conversion joint.
func (b *writer) joined(id string, c *conversion, likes [2]string, who int, kits []string) {
	b.name(id, c.also)
	fmt.Fprintf(b, "    ends: [{like: %s}, {like: %s}]\n    basis: %s\n", likes[0], likes[1], c.basis)
	if c.source {
		fmt.Fprintf(b, "    source: [%s]\n", sourceOf(who))
	}
	if c.at {
		b.WriteString("    at: an invented page\n")
	}
	b.rest(id, kits, c.note)
}

func (b *writer) name(id string, also int) {
	fmt.Fprintf(b, "  - id: %s\n", id)
	if also == 0 {
		return
	}
	names := make([]string, also)
	for n := range names {
		names[n] = "also-" + id + "-" + strconv.Itoa(n+1)
	}
	fmt.Fprintf(b, "    also: [%s]\n", strings.Join(names, ", "))
}

func (b *writer) rest(id string, kits []string, note bool) {
	if twins := without(kits, id); len(twins) > 0 {
		fmt.Fprintf(b, "    twins: [%s]\n", strings.Join(slices.Sorted(slices.Values(twins)), ", "))
	}
	if note {
		b.WriteString("    note: \"invented, and noted to be as long as a note is\"\n")
	}
}

func (b *writer) length(mm float64, p printing, column tables.Unit) {
	text, _ := p.write(mm)
	b.WriteString(text)
	b.option("unit", unitOf(p, column), true)
}

func (b *writer) option(key, value string, wanted bool) {
	if value != "" && wanted {
		b.WriteString(", " + key + ": " + value)
	}
}

func (b *writer) believed(v believed, who int) {
	b.option("basis", string(v.basis), true)
	if v.source {
		b.option("source", "["+sourceOf(who)+"]", true)
	}
	if v.at {
		b.option("at", "an invented page", true)
	}
}
