// Package preview draws what the preview of a link shows: one row's own drawing with
// its name beside it, as a PNG.
//
// A preview cannot show SVG. So [Draw] reads the very SVG that stands on the row's page,
// as package figure made it, and inks it again: the numbers cannot differ. It knows the
// elements and classes that package figure names and no others; anything else is an
// error, so that a new kind of line is not left out unseen.
//
// The picture has 16 colours: the sheet, and three inks in five strengths for smooth
// edges. Letters are the Go fonts, drawn as outlines. Equal input gives equal bytes.
package preview

import (
	"bytes"
	"fmt"
	"image"
	"image/png"

	"golang.org/x/image/vector"
)

// Width and Height are the size most previews are cut for, in pixels.
const Width, Height = 1200, 630

// margin is kept free at the edges, in pixels.
const margin = 48

// Words stand beside the drawing; lines that are too long are broken.
type Words struct {
	Name  string   // large
	Lines []string // what else is to be known, a paragraph each
	Foot  string   // small, at the foot
}

// Draw makes the picture from an SVG of package figure.
func Draw(svg string, words Words) ([]byte, error) {
	d, err := read(svg)
	if err != nil {
		return nil, fmt.Errorf("preview of %q: %w", words.Name, err)
	}
	s := newSheet()
	s.border()
	scale := d.scale()
	at := placing{scale: scale, x: margin, y: (Height - d.height*scale) / 2}
	for _, e := range d.elements {
		s.ink(e, at)
	}
	s.column(words, at.x+d.width*scale+margin/2)
	var b bytes.Buffer
	packer := png.Encoder{CompressionLevel: png.BestSpeed}
	if err := packer.Encode(&b, s.Paletted); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// scale makes the drawing as large as its part of the picture takes.
func (d drawing) scale() float64 {
	return min((Height-2*margin)/d.height, 0.55*Width/d.width)
}

// column writes the words between x and the right margin, as many as there is room for.
func (s *sheet) column(words Words, x float64) {
	const last = Height - 2*margin
	width := Width - margin - x
	y := float64(margin)
	size := 96.0
	for size > 40 && measure(bold, words.Name, size) > width {
		size -= 4
	}
	for _, line := range broken(bold, words.Name, size, width) {
		if y += size; y <= last {
			s.write(bold, line, point{x, y}, size, inkLine)
		}
	}
	y += 24
	for _, paragraph := range words.Lines {
		for _, line := range broken(regular, paragraph, 34, width) {
			if y += 44; y <= last {
				s.write(regular, line, point{x, y}, 34, inkLine)
			}
		}
		y += 12
	}
	s.write(regular, words.Foot, point{x, Height - margin}, 28, inkPencil)
}

// border is the frame round a drawing sheet, side by side: each is a thin strip, and the
// whole would be all of the picture.
func (s *sheet) border() {
	const in = 16.0
	corners := []point{{in, in}, {Width - in, in}, {Width - in, Height - in}, {in, Height - in}, {in, in}}
	for i := range 4 {
		s.stroke([][]point{corners[i : i+2]}, 2, inkLine)
	}
}

// sheet is the picture under way, with room to work in.
type sheet struct {
	*image.Paletted
	rasterizer vector.Rasterizer
	mask       []uint8
}

func newSheet() *sheet {
	return &sheet{Paletted: image.NewPaletted(image.Rect(0, 0, Width, Height), colours()), mask: make([]uint8, tile*tile)}
}
