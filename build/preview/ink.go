package preview

import (
	"image"
	"image/color"
	"image/draw"
	"math"
)

// inks, in the order of the palette.
const (
	inkLine = iota
	inkPencil
	inkMark
)

// strengths is how many steps lie between the sheet and an ink; with three inks and the
// sheet they fill the 16 colours that four bits a pixel can hold.
const strengths = 5

// colours are those of the style sheet by day: sheet, line, pencil, mark.
func colours() color.Palette {
	paper := color.RGBA{0xff, 0xfd, 0xf7, 0xff}
	palette := color.Palette{paper}
	for _, ink := range []color.RGBA{{0x13, 0x20, 0x3a, 0xff}, {0x55, 0x5d, 0x6b, 0xff}, {0xa3, 0x34, 0x1f, 0xff}} {
		for n := 1; n <= strengths; n++ {
			mix := func(from, to uint8) uint8 { return uint8((int(from)*(strengths-n) + int(to)*n) / strengths) }
			palette = append(palette, color.RGBA{mix(paper.R, ink.R), mix(paper.G, ink.G), mix(paper.B, ink.B), 0xff})
		}
	}
	return palette
}

// look is how a class of package figure is drawn; weights are the style sheet's.
type look struct {
	filled bool // with the sheet's colour, to cover what lies behind
	solid  bool
	weight float64
	broken bool // a centre line, long-short-long
	ink    int
}

var looks = map[string]look{
	"b":  {filled: true, weight: 2.5, ink: inkLine},
	"l":  {weight: 1.5, ink: inkLine},
	"h":  {weight: 1, ink: inkPencil},
	"c":  {weight: 1, broken: true, ink: inkPencil},
	"k":  {solid: true, ink: inkLine},
	"m":  {weight: 2, ink: inkMark},
	"mt": {solid: true, ink: inkMark},
	"s":  {ink: inkPencil}, // words only
	"":   {ink: inkLine},   // words only
}

// placing puts a drawing's units on the picture.
type placing struct{ scale, x, y float64 }

func (p placing) put(q point) point { return point{p.x + q.x*p.scale, p.y + q.y*p.scale} }

// ink draws one element.
func (s *sheet) ink(e element, at placing) {
	l := looks[e.class]
	if e.words != "" {
		face := bold
		if e.class == "s" {
			face = regular
		}
		s.letter(face, e.words, at.put(e.at), e.size*at.scale, e.anchor, e.turned, l.ink)
		return
	}
	lines := make([][]point, len(e.lines))
	for i, line := range e.lines {
		for _, p := range line {
			lines[i] = append(lines[i], at.put(p))
		}
	}
	if l.filled {
		s.cover(lines)
	}
	if l.solid {
		s.shade(lines, l.ink)
	}
	if l.broken {
		lines = dashed(lines, at.scale)
	}
	if l.weight > 0 {
		s.stroke(lines, l.weight*at.scale, l.ink)
	}
}

// stroke draws lines of a width, with round ends and corners. Every piece turns the same
// way round: the rasterizer adds areas up, and opposite ones would cancel each other.
func (s *sheet) stroke(lines [][]point, width float64, ink int) {
	var pieces [][]point
	r := width / 2
	for _, line := range lines {
		for i, p := range line {
			if i > 0 {
				q := line[i-1]
				length := math.Hypot(p.x-q.x, p.y-q.y)
				if length == 0 {
					continue
				}
				nx, ny := (p.y-q.y)/length*r, (q.x-p.x)/length*r
				pieces = append(pieces, []point{{q.x + nx, q.y + ny}, {p.x + nx, p.y + ny}, {p.x - nx, p.y - ny}, {q.x - nx, q.y - ny}})
			}
			if i > 0 && i < len(line)-1 || len(line) > 2 {
				pieces = append(pieces, round(p, r, 0, 2*math.Pi))
			}
		}
	}
	s.shade(pieces, ink)
}

// dashed breaks lines as the style sheet breaks centre lines.
func dashed(lines [][]point, scale float64) [][]point {
	pattern := [4]float64{14 * scale, 4 * scale, 3 * scale, 4 * scale}
	var dashes [][]point
	for _, line := range lines {
		for i := 1; i < len(line); i++ {
			from, to := line[i-1], line[i]
			length := math.Hypot(to.x-from.x, to.y-from.y)
			on := func(d float64) point {
				return point{from.x + (to.x-from.x)*d/length, from.y + (to.y-from.y)*d/length}
			}
			n := 0
			for d := 0.0; d < length; n++ {
				end := min(d+pattern[n%4], length)
				if n%2 == 0 {
					dashes = append(dashes, []point{on(d), on(end)})
				}
				d = end
			}
		}
	}
	return dashes
}

// shade inks the inside of the shapes; where two inks meet, the stronger stays.
func (s *sheet) shade(shapes [][]point, ink int) {
	s.inside(shapes, func(at int, covered uint8) {
		strength := (int(covered)*strengths + 127) / 255
		if strength == 0 {
			return
		}
		if old := int(s.Pix[at]); old == 0 || (old-1)%strengths+1 <= strength {
			s.Pix[at] = uint8(1 + ink*strengths + strength - 1)
		}
	})
}

// cover lays the sheet's colour over what is there.
func (s *sheet) cover(shapes [][]point) {
	s.inside(shapes, func(at int, covered uint8) {
		if covered > 127 {
			s.Pix[at] = 0
		}
	})
}

// inside calls do for every pixel that the shapes touch. Only the part of the picture
// round them is looked at: most are small.
func (s *sheet) inside(shapes [][]point, do func(at int, covered uint8)) {
	if len(shapes) == 0 { // a space
		return
	}
	low, high := point{Width, Height}, point{0, 0}
	for _, shape := range shapes {
		for _, p := range shape {
			low = point{min(low.x, p.x), min(low.y, p.y)}
			high = point{max(high.x, p.x), max(high.y, p.y)}
		}
	}
	box := image.Rect(int(low.x)-1, int(low.y)-1, int(high.x)+2, int(high.y)+2).Intersect(s.Rect)
	if box.Empty() {
		return
	}
	for y := box.Min.Y; y < box.Max.Y; y += tile {
		for x := box.Min.X; x < box.Max.X; x += tile {
			s.insideTile(shapes, image.Rect(x, y, x+tile, y+tile).Intersect(box), do)
		}
	}
}

// tile is the largest piece that the rasterizer works out in whole numbers. Above it
// takes floats, whose last digits differ from machine to machine.
const tile = 512

func (s *sheet) insideTile(shapes [][]point, box image.Rectangle, do func(at int, covered uint8)) {
	r := &s.rasterizer
	r.Reset(box.Dx(), box.Dy())
	r.DrawOp = draw.Src
	snap := func(f float64) float32 { return float32(math.Round(f*64) / 64) } // for the same reason
	for _, shape := range shapes {
		for i, p := range shape {
			x, y := snap(p.x-float64(box.Min.X)), snap(p.y-float64(box.Min.Y))
			if i == 0 {
				r.MoveTo(x, y)
			} else {
				r.LineTo(x, y)
			}
		}
		r.ClosePath()
	}
	mask := &image.Alpha{Pix: s.mask[:box.Dx()*box.Dy()], Stride: box.Dx(), Rect: image.Rect(0, 0, box.Dx(), box.Dy())}
	r.Draw(mask, mask.Rect, image.Opaque, image.Point{})
	for y := range box.Dy() {
		for x := range box.Dx() {
			if covered := mask.Pix[y*mask.Stride+x]; covered > 0 {
				do(s.PixOffset(box.Min.X+x, box.Min.Y+y), covered)
			}
		}
	}
}
