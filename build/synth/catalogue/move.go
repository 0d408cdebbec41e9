package catalogue

import (
	"fmt"
	"math"
	"slices"
	"strconv"

	"capspan/tables"
)

// size is an invented size: the figures that its rows print, each in its own way.
type size struct {
	pattern *pattern
	// moved is by how much the pattern's lengths grew, for those that are neither cap nor across.
	moved       float64
	cap, across float64 // mm; 0 where the pattern has none
	hold        string  // of the leading row
	kits        []string
}

// row is a line of a maker's catalogue.
type row struct {
	id    string
	table string
	text  func(b *writer) // writes its own lines
	kits  *[]string       // of its size, its own among them
}

// mostTries to find room for a size; each looks a little further away.
const mostTries = 4000

// plain makes one size and the kits of those who list it.
func (m *maker) plain(n int) error {
	p := &m.patterns.sizes[m.random.IntN(len(m.patterns.sizes))]
	s, ok := m.place(p)
	if !ok {
		return fmt.Errorf("no room is left for so many sizes: %d are placed; let more makers list each", len(m.sizes))
	}
	m.sizes = append(m.sizes, s)
	placed := &m.sizes[len(m.sizes)-1]
	kits := &placed.kits
	for _, who := range m.who() {
		from := &p.rows[m.random.IntN(len(p.rows))]
		id := "s" + strconv.Itoa(n) + "-" + letter(who)
		*kits = append(*kits, id)
		m.rows = append(m.rows, row{id, from.table, func(b *writer) { b.plain(id, from, s, who, *kits) }, kits})
	}
	return nil
}

// place moves a pattern's figures until no other size is near.
func (m *maker) place(p *pattern) (size, bool) {
	lead := &p.rows[p.lead]
	cap, across := lead.cell(capColumn), lead.cell(acrossColumn)
	for try := range mostTries {
		wide := 1 + float64(try)/100
		s := size{pattern: p, moved: math.Exp(m.random.NormFloat64() * m.patterns.wideCap * wide), hold: lead.cell(holdColumn).word}
		if cap.given() {
			s.cap = m.movedCap(cap.shown, s.moved, try)
			s.moved = s.cap / cap.shown.mm
		}
		if across.given() {
			ratio := 1.0
			if cap.given() {
				ratio = math.Exp(m.random.NormFloat64() * m.patterns.wideRatio * wide)
			}
			_, s.across = across.shown.print.write(across.shown.mm * s.moved * ratio)
		}
		if m.likely(p, s) && m.takes(s) {
			return s, true
		}
	}
	return size{}, false
}

// fromStock tries are made with caps that the chart has, which many joints share; after
// those the cap is one of its own.
const fromStock = 40

// movedCap is the cap of the chart some places further in its list, or one moved freely.
func (m *maker) movedCap(f figure, moved float64, try int) float64 {
	if stock := m.patterns.stock[f.print]; try < fromStock {
		at, _ := slices.BinarySearch(stock, f.mm)
		near := float64(len(stock)) * m.patterns.wideCap / 2
		at += int(math.Round(m.random.NormFloat64() * near))
		return stock[min(max(at, 0), len(stock)-1)]
	}
	_, shown := f.print.write(f.mm * moved)
	return shown
}

// The lengths of joints that are made up, in mm, and what an across may be of its cap:
// wider than the chart, for where thousands of sizes are to have room.
const (
	leastCap, greatestCap       = 6, 250
	leastAcross, greatestAcross = 15, 900
	leastRatio, greatestRatio   = 1.2, 7
)

func (m *maker) likely(p *pattern, s size) bool {
	ratio := s.across / s.cap // infinite or no number where a figure is missing
	switch {
	case s.cap > 0 && (s.cap < leastCap || s.cap > greatestCap):
		return false
	case s.across > 0 && (s.across < leastAcross || s.across > greatestAcross):
		return false
	}
	return s.cap == 0 || s.across == 0 || ratio > leastRatio && ratio < greatestRatio
}

// takes puts a size where it is to be, if that is free for every way it can be printed.
func (m *maker) takes(s size) bool {
	var all []taken
	for n := range s.pattern.rows {
		r := &s.pattern.rows[n]
		t := taken{hold: r.cell(holdColumn).word, faces: r.cell(acrossColumn).faces}
		if c := r.cell(capColumn); c.given() {
			_, t.cap = c.shown.print.write(s.cap)
		}
		if c := r.cell(acrossColumn); c.given() {
			_, t.across = c.shown.print.write(s.across)
		}
		if !m.room.free(t) {
			return false
		}
		all = append(all, t)
	}
	for _, t := range all {
		m.room.take(t)
	}
	return true
}

// mostMakers have a letter each.
const mostMakers = 26

func letter(maker int) string { return string(rune('a' + maker)) }

func sourceOf(maker int) string { return "invented-" + letter(maker) }

// unitOf is what is written beside a figure that is not in its column's unit.
func unitOf(p printing, column tables.Unit) string {
	if p.unit == column {
		return ""
	}
	return string(p.unit)
}
