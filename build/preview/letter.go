package preview

import (
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// face is a font, parsed when the first letter is wanted.
type face func() *sfnt.Font

var (
	regular = parsed(goregular.TTF)
	bold    = parsed(gobold.TTF)
)

func parsed(ttf []byte) face {
	return sync.OnceValue(func() *sfnt.Font {
		f, err := sfnt.Parse(ttf)
		if err != nil {
			panic("internal error: " + err.Error()) // a font of the program's own
		}
		return f
	})
}

// grid is the size letters are taken at, in font units a pixel could not tell apart, and
// scaled from: outlines are not hinted.
const grid = 1024

// glyph finds a letter's place in the font; the diameter sign, which the fonts do not
// have, is drawn as the letter that looks like it.
func glyph(f *sfnt.Font, buf *sfnt.Buffer, letter rune) sfnt.GlyphIndex {
	if letter == '⌀' {
		letter = 'Ø'
	}
	index, err := f.GlyphIndex(buf, letter)
	if err != nil {
		return 0 // the fonts' own sign for a letter they lack
	}
	return index
}

// measure is the width of words at a size, in pixels.
func measure(of face, words string, size float64) float64 {
	var buf sfnt.Buffer
	f, width := of(), fixed.Int26_6(0)
	for _, letter := range words {
		advance, err := f.GlyphAdvance(&buf, glyph(f, &buf, letter), fixed.I(grid), font.HintingNone)
		if err == nil {
			width += advance
		}
	}
	return float64(width) / 64 / grid * size
}

// write draws words with their foot's left end at a place.
func (s *sheet) write(of face, words string, at point, size float64, ink int) {
	s.letter(of, words, at, size, "start", false, ink)
}

// letter draws words; turned ones read from the right, bottom to top.
func (s *sheet) letter(of face, words string, at point, size float64, anchor string, turned bool, ink int) {
	var buf sfnt.Buffer
	f, along := of(), 0.0
	switch anchor {
	case "middle":
		along = -measure(of, words, size) / 2
	case "end":
		along = -measure(of, words, size)
	}
	scale := size / grid / 64
	for _, letter := range words {
		index := glyph(f, &buf, letter)
		place := func(p fixed.Point26_6) point {
			x, y := along+float64(p.X)*scale, float64(p.Y)*scale
			if turned {
				x, y = y, -x
			}
			return point{at.x + x, at.y + y}
		}
		segments, err := f.LoadGlyph(&buf, index, fixed.I(grid), nil)
		if err == nil {
			s.shade(outline(segments, place), ink)
		}
		if advance, err := f.GlyphAdvance(&buf, index, fixed.I(grid), font.HintingNone); err == nil {
			along += float64(advance) * scale
		}
	}
}

// outline breaks a letter's curves into lines.
func outline(segments sfnt.Segments, place func(fixed.Point26_6) point) [][]point {
	const steps = 6
	var shapes [][]point
	for _, seg := range segments {
		if seg.Op == sfnt.SegmentOpMoveTo {
			shapes = append(shapes, []point{place(seg.Args[0])})
			continue
		}
		shape := &shapes[len(shapes)-1]
		from := (*shape)[len(*shape)-1]
		a, b, c := place(seg.Args[0]), place(seg.Args[1]), place(seg.Args[2])
		switch seg.Op {
		case sfnt.SegmentOpLineTo:
			*shape = append(*shape, a)
		case sfnt.SegmentOpQuadTo:
			for i := 1; i <= steps; i++ {
				t := float64(i) / steps
				u := 1 - t
				*shape = append(*shape, point{u*u*from.x + 2*u*t*a.x + t*t*b.x, u*u*from.y + 2*u*t*a.y + t*t*b.y})
			}
		case sfnt.SegmentOpCubeTo:
			for i := 1; i <= steps; i++ {
				t := float64(i) / steps
				u := 1 - t
				*shape = append(*shape, point{u*u*u*from.x + 3*u*u*t*a.x + 3*u*t*t*b.x + t*t*t*c.x,
					u*u*u*from.y + 3*u*u*t*a.y + 3*u*t*t*b.y + t*t*t*c.y})
			}
		}
	}
	return shapes
}

// broken sets words in lines of at most a width. A word longer than that is cut in
// pieces: a name may not run out of the picture.
func broken(of face, words string, size, width float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(words) {
		for _, piece := range pieces(of, word, size, width) {
			longer := strings.TrimSpace(line + " " + piece)
			if line != "" && measure(of, longer, size) > width {
				lines = append(lines, line)
				longer = piece
			}
			line = longer
		}
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// pieces cuts a word where it would pass the width.
func pieces(of face, word string, size, width float64) []string {
	var list []string
	piece := ""
	for _, letter := range word {
		if piece != "" && measure(of, piece+string(letter), size) > width {
			list = append(list, piece)
			piece = ""
		}
		piece += string(letter)
	}
	return append(list, piece)
}
