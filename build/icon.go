package build

import (
	"bytes"
	"encoding/xml"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// Some devices want the icon as a picture. It is drawn from the numbers of
// static/icons/icon.svg, which is made of lines along the axes: no other part of SVG is
// understood here, and what is not is an error rather than a wrong picture.

// icon is a drawing of bars in a square.
type icon struct {
	side float64 // of the viewBox
	ink  color.RGBA
	bars []bar
}

// bar is a line with its width, in the units of the viewBox.
type bar struct{ left, top, right, bottom float64 }

func readIcon(source []byte) (icon, error) {
	var doc struct {
		ViewBox string `xml:"viewBox,attr"`
		Stroke  string `xml:"stroke,attr"`
		Paths   []struct {
			D      string `xml:"d,attr"`
			Width  string `xml:"stroke-width,attr"`
			Dashes string `xml:"stroke-dasharray,attr"`
		} `xml:"path"`
		Others []struct{ XMLName xml.Name } `xml:",any"`
	}
	if err := xml.Unmarshal(source, &doc); err != nil {
		return icon{}, err
	}
	for _, o := range doc.Others {
		if n := o.XMLName.Local; n != "title" && n != "style" {
			return icon{}, fmt.Errorf("<%s> is none of the elements understood here", n)
		}
	}
	var i icon
	box, err := numbers(doc.ViewBox)
	if err != nil || len(box) != 4 || box[0] != 0 || box[1] != 0 || box[2] != box[3] || box[2] <= 0 {
		return icon{}, fmt.Errorf("viewBox %q is no square from 0 0", doc.ViewBox)
	}
	i.side = box[2]
	if _, err := fmt.Sscanf(doc.Stroke, "#%02x%02x%02x", &i.ink.R, &i.ink.G, &i.ink.B); err != nil {
		return icon{}, fmt.Errorf("stroke %q is no colour like #13203a", doc.Stroke)
	}
	i.ink.A = 255
	for _, p := range doc.Paths {
		width := 1.0
		if p.Width != "" {
			if width, err = strconv.ParseFloat(p.Width, 64); err != nil || width <= 0 {
				return icon{}, fmt.Errorf("stroke-width %q is no width", p.Width)
			}
		}
		dashes, err := numbers(p.Dashes)
		if err != nil {
			return icon{}, err
		}
		if err := i.path(p.D, width, dashes); err != nil {
			return icon{}, err
		}
	}
	if len(i.bars) == 0 {
		return icon{}, errors.New("it has no lines")
	}
	return i, nil
}

func numbers(list string) ([]float64, error) {
	var values []float64
	for _, text := range strings.FieldsFunc(list, func(r rune) bool { return r == ' ' || r == ',' }) {
		v, err := strconv.ParseFloat(text, 64)
		if err != nil || v < 0 || math.IsInf(v, 0) || v > 1e6 {
			return nil, fmt.Errorf("%q is no number of an icon", text)
		}
		values = append(values, v)
	}
	return values, nil
}

var pathStep = regexp.MustCompile(`^\s*([MmHhVvZz])\s*((?:-?[0-9.]+[\s,]*)*)`)

// path adds the lines of path data that has the commands M, H, V, z and their relatives
// (SVG 2, 9.3). A corner is a miter, which for a right angle is both lines lengthened by
// half their width; dashed lines have butt ends.
func (i *icon) path(data string, width float64, dashes []float64) error {
	var x, y, startX, startY float64
	for rest := data; strings.TrimSpace(rest) != ""; {
		step := pathStep.FindStringSubmatch(rest)
		if step == nil {
			return fmt.Errorf("path data %q is none of M, h, v and z", rest)
		}
		rest = rest[len(step[0]):]
		var values []float64
		for _, text := range strings.FieldsFunc(step[2], func(r rune) bool { return r == ' ' || r == ',' || r == '\n' }) {
			v, err := strconv.ParseFloat(text, 64)
			if err != nil {
				return fmt.Errorf("path data holds %q", text)
			}
			values = append(values, v)
		}
		want := map[string]int{"M": 2, "H": 1, "V": 1, "Z": 0}[strings.ToUpper(step[1])]
		if len(values) != want {
			return fmt.Errorf("%s in path data has %d numbers, want %d", step[1], len(values), want)
		}
		toX, toY := x, y
		switch step[1] {
		case "M":
			toX, toY = values[0], values[1]
		case "m":
			toX, toY = x+values[0], y+values[1]
		case "H":
			toX = values[0]
		case "h":
			toX = x + values[0]
		case "V":
			toY = values[0]
		case "v":
			toY = y + values[0]
		default: // z
			toX, toY = startX, startY
			if toX != x && toY != y {
				return errors.New("a path is closed aslant")
			}
		}
		if strings.EqualFold(step[1], "M") {
			startX, startY = toX, toY
		} else {
			i.line(x, y, toX, toY, width, dashes)
		}
		x, y = toX, toY
	}
	return nil
}

// line adds one line along an axis.
func (i *icon) line(x1, y1, x2, y2, width float64, dashes []float64) {
	half := width / 2
	length := math.Abs(x2-x1) + math.Abs(y2-y1)
	add := func(from, to, beyond float64) {
		alongX, alongY := (x2-x1)/length, (y2-y1)/length
		ax, ay := x1+alongX*from, y1+alongY*from
		bx, by := x1+alongX*to, y1+alongY*to
		overX, overY := half, beyond
		if y1 == y2 {
			overX, overY = beyond, half
		}
		i.bars = append(i.bars, bar{min(ax, bx) - overX, min(ay, by) - overY, max(ax, bx) + overX, max(ay, by) + overY})
	}
	var round float64
	for _, d := range dashes {
		round += d
	}
	switch {
	case length == 0:
	case round <= 0:
		add(0, length, half)
	default:
		for at, n := 0.0, 0; at < length; n++ {
			d := dashes[n%len(dashes)]
			if n%2 == 0 {
				add(at, min(at+d, length), 0)
			}
			at += d
		}
	}
}

// maskedPart is how much of its size the drawing takes where a device cuts the picture:
// all of it then lies in the middle circle of 2/5 of the side, which is never cut off
// (Web Application Manifest, "icon masks and safe zone").
const maskedPart = 0.75

// fine is into how many rows and columns a pixel is divided where an edge runs through it.
const fine = 4

// png draws the icon in ink on paper.
func (i icon) png(size int, masked bool) []byte {
	part := 1.0
	if masked {
		part = maskedPart
	}
	scale := float64(size) * part / i.side
	shift := float64(size) * (1 - part) / 2
	// One bit for each part of a pixel, so that lines that meet do not darken twice.
	inked := make([]uint16, size*size)
	edge := func(v float64) int {
		return min(max(int(math.Round((v*scale+shift)*fine)), 0), size*fine)
	}
	for _, b := range i.bars {
		for y := edge(b.top); y < edge(b.bottom); y++ {
			for x := edge(b.left); x < edge(b.right); x++ {
				inked[y/fine*size+x/fine] |= 1 << (y%fine*fine + x%fine)
			}
		}
	}
	ground := paperColour()
	shades := make(color.Palette, fine*fine+1)
	for n := range shades {
		mix := func(from, to uint8) uint8 {
			return uint8(int(from) + (int(to)-int(from))*n/(fine*fine))
		}
		shades[n] = color.RGBA{mix(ground.R, i.ink.R), mix(ground.G, i.ink.G), mix(ground.B, i.ink.B), 255}
	}
	picture := image.NewPaletted(image.Rect(0, 0, size, size), shades)
	for n, bits := range inked {
		var count uint8
		for ; bits != 0; bits &= bits - 1 {
			count++
		}
		picture.Pix[n] = count
	}
	var out bytes.Buffer
	encoder := png.Encoder{CompressionLevel: png.BestCompression}
	if err := encoder.Encode(&out, picture); err != nil {
		panic("internal error: " + err.Error()) // a buffer takes everything
	}
	return out.Bytes()
}

// paperColour is the paper by day.
func paperColour() color.RGBA {
	var c color.RGBA
	if _, err := fmt.Sscanf(paper[0], "#%02x%02x%02x", &c.R, &c.G, &c.B); err != nil {
		panic("internal error: " + err.Error()) // a constant
	}
	c.A = 255
	return c
}
