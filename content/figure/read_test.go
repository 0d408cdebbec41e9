package figure

import (
	"encoding/xml"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// drawing is an SVG read back by its coordinates, as a reader's browser would.
type drawing struct {
	attr          map[string]string
	width, height float64
	title, desc   string
	elements      []element
	texts         []label
}

type element struct {
	name string
	attr map[string]string
}

type label struct {
	box
	words, class string
}

type box struct{ left, top, right, bottom float64 }

func (b box) width() float64   { return b.right - b.left }
func (b box) height() float64  { return b.bottom - b.top }
func (b box) longest() float64 { return max(b.width(), b.height()) }
func (b box) centre() point    { return point{(b.left + b.right) / 2, (b.top + b.bottom) / 2} }
func (b box) join(c box) box {
	return box{min(b.left, c.left), min(b.top, c.top), max(b.right, c.right), max(b.bottom, c.bottom)}
}
func (b box) touches(c box) bool {
	return b.left < c.right && c.left < b.right && b.top < c.bottom && c.top < b.bottom
}
func (b box) holds(c box) bool {
	return b.left <= c.left && c.right <= b.right && b.top <= c.top && c.bottom <= b.bottom
}

// mustRead parses the SVG strictly and fails on anything that is not well-formed.
func mustRead(t *testing.T, svg string) drawing {
	t.Helper()
	var d drawing
	decoder := xml.NewDecoder(strings.NewReader(svg))
	var open []element
	var words strings.Builder
	size := textSize
	for {
		token, err := decoder.Token()
		if err != nil {
			if err.Error() == "EOF" {
				break
			}
			t.Fatalf("not well-formed: %v\n%s", err, svg)
		}
		switch token := token.(type) {
		case xml.StartElement:
			e := element{token.Name.Local, map[string]string{}}
			for _, a := range token.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			if e.attr["font-size"] != "" {
				size = number(t, e.attr["font-size"])
			}
			open = append(open, e)
			d.elements = append(d.elements, e)
			words.Reset()
		case xml.CharData:
			words.Write(token)
		case xml.EndElement:
			e := open[len(open)-1]
			open = open[:len(open)-1]
			switch e.name {
			case "svg":
				d.attr = e.attr
				d.width, d.height = number(t, strings.TrimSuffix(e.attr["width"], "mm")), number(t, strings.TrimSuffix(e.attr["height"], "mm"))
			case "title":
				d.title = words.String()
			case "desc":
				d.desc = words.String()
			case "text":
				d.texts = append(d.texts, readLabel(t, e, size, words.String()))
			}
		}
	}
	return d
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	f, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// readLabel works out the room words take from their anchor and turn.
func readLabel(t *testing.T, e element, size float64, words string) label {
	t.Helper()
	x, y, w := number(t, e.attr["x"]), number(t, e.attr["y"]), textWidth(words)*size/textSize
	up, down := 0.75*size, 0.22*size
	left := x
	switch e.attr["text-anchor"] {
	case "middle":
		left = x - w/2
	case "end":
		left = x - w
	}
	b := box{left, y - up, left + w, y + down}
	if e.attr["transform"] != "" { // turned to read from the right, about its own foot
		b = box{x - up, y - w/2, x + down, y + w/2}
	}
	return label{b, words, e.attr["class"]}
}

// parts are the elements that stand for a quantity of an end.
func (d drawing) parts(part string, end int) []element {
	var found []element
	for _, e := range d.elements {
		if e.attr["data-part"] == part && e.attr["data-end"] == strconv.Itoa(end) {
			found = append(found, e)
		}
	}
	return found
}

// named are the elements that stand for a part, of any end.
func (d drawing) named(part string) []element {
	var found []element
	for _, e := range d.elements {
		if e.attr["data-part"] == part {
			found = append(found, e)
		}
	}
	return found
}

// strokes are the separate lines of a path.
func (e element) strokes() [][2]point {
	var lines [][2]point
	all := pair.FindAllStringSubmatch(e.attr["d"], -1)
	for i := 0; i+1 < len(all); i += 2 {
		var l [2]point
		for j := range l {
			l[j].x, _ = strconv.ParseFloat(all[i+j][1], 64)
			l[j].y, _ = strconv.ParseFloat(all[i+j][2], 64)
		}
		lines = append(lines, l)
	}
	return lines
}

// solid are the boxes of everything bold: the cross, the caps and plates.
func (d drawing) solid() []box {
	var boxes []box
	for _, e := range d.elements {
		if e.attr["class"] == "b" && e.name == "path" {
			boxes = append(boxes, e.box())
		}
	}
	return boxes
}

func (d drawing) says(words string) bool {
	for _, l := range d.texts {
		if strings.Contains(l.words, words) {
			return true
		}
	}
	return false
}

var pair = regexp.MustCompile(`[ML](-?[0-9.]+) (-?[0-9.]+)`)

// box is the extent of the straight lines of a path; arcs end where lines begin.
func (e element) box() box {
	b := box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
	for _, m := range pair.FindAllStringSubmatch(e.attr["d"], -1) {
		x, _ := strconv.ParseFloat(m[1], 64)
		y, _ := strconv.ParseFloat(m[2], 64)
		b = b.join(box{x, y, x, y})
	}
	return b
}
