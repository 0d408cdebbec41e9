package preview

import (
	"encoding/xml"
	"errors"
	"fmt"
	"io"
	"math"
	"strconv"
	"strings"
)

// point is a place, y downwards.
type point struct{ x, y float64 }

// drawing is an SVG that was read.
type drawing struct {
	width, height float64
	elements      []element
}

// element is lines to fill or stroke, or words.
type element struct {
	class  string
	lines  [][]point // curves are already broken into short lines
	words  string
	at     point
	anchor string
	turned bool // reads from the right, bottom to top
	size   float64
}

// read takes an SVG of package figure apart.
func read(svg string) (drawing, error) {
	var d drawing
	dec := xml.NewDecoder(strings.NewReader(svg))
	size := 0.0
	for {
		token, err := dec.Token()
		if errors.Is(err, io.EOF) {
			return d, nil
		}
		if err != nil {
			return d, err
		}
		start, ok := token.(xml.StartElement)
		if !ok {
			continue
		}
		a := attributes{values: map[string]string{}}
		for _, at := range start.Attr {
			a.values[at.Name.Local] = at.Value
		}
		e := element{class: a.values["class"], size: size}
		switch start.Name.Local {
		case "svg":
			d.width, d.height = a.number("width"), a.number("height")
			if a.err == nil && (d.width <= 0 || d.height <= 0) {
				a.err = errors.New("it has no size")
			}
		case "title", "desc":
			a.err = dec.Skip()
		case "g":
			size = a.number("font-size")
		case "path":
			e.lines, a.err = path(a.values["d"])
			d.elements = append(d.elements, e)
		case "circle":
			centre, r := point{a.number("cx"), a.number("cy")}, a.number("r")
			e.lines = [][]point{round(centre, r, 0, 2*math.Pi)}
			d.elements = append(d.elements, e)
		case "text":
			e.at, e.anchor = point{a.number("x"), a.number("y")}, a.values["text-anchor"]
			turn := a.values["transform"]
			e.turned = strings.HasPrefix(turn, "rotate(-90 ")
			if turn != "" && !e.turned && a.err == nil {
				a.err = fmt.Errorf("unknown transform %q", turn)
			}
			if a.err == nil {
				a.err = dec.DecodeElement(&e.words, &start)
			}
			d.elements = append(d.elements, e)
		default:
			a.err = fmt.Errorf("unknown element <%s>", start.Name.Local)
		}
		if a.err != nil {
			return d, fmt.Errorf("<%s>: %w", start.Name.Local, a.err)
		}
		if _, known := looks[e.class]; !known && len(d.elements) > 0 {
			return d, fmt.Errorf("<%s>: unknown class %q", start.Name.Local, e.class)
		}
	}
}

// attributes reads numbers and keeps the first error.
type attributes struct {
	values map[string]string
	err    error
}

func (a *attributes) number(name string) float64 {
	f, err := strconv.ParseFloat(a.values[name], 64)
	if err != nil && a.err == nil {
		a.err = fmt.Errorf("%s is %q", name, a.values[name])
	}
	return f
}

// path reads the commands M, L, A and Z, which are all that package figure writes.
func path(data string) ([][]point, error) {
	for _, letter := range "MLAZ" {
		data = strings.ReplaceAll(data, string(letter), " "+string(letter)+" ")
	}
	fields := strings.Fields(data)
	var lines [][]point
	for len(fields) > 0 {
		command := fields[0]
		count, known := map[string]int{"M": 2, "L": 2, "A": 7, "Z": 0}[command]
		if !known || len(fields) <= count || len(lines) == 0 && command != "M" {
			return nil, fmt.Errorf("cannot read the path at %q", strings.Join(fields, " "))
		}
		var n [7]float64
		for i := range count {
			f, err := strconv.ParseFloat(fields[1+i], 64)
			if err != nil {
				return nil, fmt.Errorf("cannot read the path at %q", fields[1+i])
			}
			n[i] = f
		}
		fields = fields[1+count:]
		if command == "M" {
			lines = append(lines, []point{{n[0], n[1]}})
			continue
		}
		line := &lines[len(lines)-1]
		switch command {
		case "L":
			*line = append(*line, point{n[0], n[1]})
		case "Z":
			*line = append(*line, (*line)[0])
		case "A":
			if n[0] != n[1] {
				return nil, errors.New("an arc that is not of a circle")
			}
			*line = append(*line, arc((*line)[len(*line)-1], point{n[5], n[6]}, n[0], n[3] != 0, n[4] != 0)...)
		}
	}
	return lines, nil
}

// arc goes from one point to another on a circle (SVG 2, B.2.4).
func arc(from, to point, r float64, large, clockwise bool) []point {
	dx, dy := (from.x-to.x)/2, (from.y-to.y)/2
	half := math.Hypot(dx, dy)
	if half == 0 || r == 0 {
		return []point{to}
	}
	r = max(r, half)
	height := math.Sqrt(r*r-half*half) / half
	if large == clockwise {
		height = -height
	}
	centre := point{(from.x+to.x)/2 + height*dy, (from.y+to.y)/2 - height*dx}
	start := math.Atan2(from.y-centre.y, from.x-centre.x)
	turn := math.Atan2(to.y-centre.y, to.x-centre.x) - start
	switch {
	case clockwise && turn < 0:
		turn += 2 * math.Pi
	case !clockwise && turn > 0:
		turn -= 2 * math.Pi
	}
	return round(centre, r, start, turn)[1:]
}

// round is part of a circle in lines too short to be told from it.
func round(centre point, r, start, turn float64) []point {
	n := max(4, int(math.Ceil(math.Abs(turn)*4*math.Sqrt(r))))
	points := make([]point, n+1)
	for i := range points {
		sin, cos := math.Sincos(start + turn*float64(i)/float64(n))
		points[i] = point{centre.x + r*cos, centre.y + r*sin}
	}
	return points
}
