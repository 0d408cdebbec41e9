package figure

import (
	"html/template"
	"strings"
)

// The sheet of a bare yoke: on the left a section through both ears, on the right one
// ear from the side.
const (
	yokeWidth = 340.0
	yokeLeft  = 20.0  // outer face of the left ear
	yokeRight = 200.0 // and of the right one
	earThick  = 34.0
	yokeBore  = 27.0  // radius
	earHalf   = 48.0  // of the ear, seen from the side
	yokeDeep  = 104.0 // from the axis to where the hub is broken off
	earCentre = 284.0
	tabThick  = 7.0
	tabHigh   = 14.0

	grooveAt    = 6.0 // from the ear's outer face to the wall the clip presses on
	grooveWidth = 7.0
	grooveDepth = 5.0
)

// bareYoke is a yoke on its sheet; axis is the height of its bores' axis.
type bareYoke struct {
	*canvas
	axis float64
}

// named is a dimension without a figure: its letter on the drawing, the key of the words
// below that say what it is.
type named struct{ letter, key string }

// letter is the style of a lettered dimension, whose line carries the letter as its part.
func letter(l string) style { return style{"m", "mt", "mt", l} }

// yokeFigures are what to measure on a bare yoke.
func yokeFigures(kind string) []named {
	switch kind {
	case "half-round":
		return []named{{"A", "yoke-half-bore"}, {"B", "yoke-tabs"}, {"C", "yoke-inside"}}
	case "inside-clip":
		return []named{{"A", "yoke-bore"}, {"B", "yoke-machined"}, {"C", "yoke-over"}}
	case "plate":
		return []named{{"A", "yoke-bore"}, {"B", "yoke-over"}, {"C", "yoke-inside"}}
	}
	return []named{{"A", "yoke-bore"}, {"B", "yoke-over"},
		{"C", "yoke-grooves"}, {"D", "yoke-inside"}}
}

// Yoke draws a bare yoke with the lengths to measure on it, lettered and named in words,
// without figures. Kind is "full-round" (bores with clip grooves), "inside-clip" (bores
// between machined inner faces), "plate" (plain bores under bolted plates) or
// "half-round" (half bores with tabs); any other word is drawn as full-round.
func (w Words) Yoke(prefix, kind string) template.HTML {
	y := &bareYoke{canvas: &canvas{language: language(w)}}
	figures := yokeFigures(kind)
	title, between := "", "" // between is the letter of the inner faces
	switch kind {
	case "half-round":
		title, between = y.say("half-round-title"), "C"
		y.axis = 66
		y.halfYoke()
		y.over("B", yokeLeft+tabThick, -44, yokeBore-tabHigh)
		y.bore(-44)
	case "inside-clip":
		title, between = y.say("inside-clip-title"), "B"
		y.axis = 94
		y.fullYoke(false)
		y.over("C", yokeLeft, -74, -earHalf)
		y.bore(-74)
	case "plate":
		title, between = y.say("plate-title"), "C"
		y.axis = 94
		y.fullYoke(false)
		y.over("B", yokeLeft, -74, -earHalf)
		y.bore(-74)
	default:
		title, between = y.say("full-round-title"), "D"
		y.axis = 122
		y.fullYoke(true)
		y.over("B", yokeLeft, -102, -earHalf)
		y.over("C", yokeLeft+grooveAt, -74, -yokeBore-grooveDepth)
		y.bore(-74)
	}
	y.over(between, yokeLeft+earThick, 40, 40)
	y.line(tag{class: "c"}, point{yokeLeft - 12, y.axis}, point{yokeRight + 12, y.axis})
	y.line(tag{class: "c"}, point{earCentre - earHalf - 6, y.axis}, point{earCentre + earHalf + 6, y.axis})
	top := -earHalf - 6
	if kind == "half-round" {
		top = -12 // nothing stands above the half bore
	}
	y.line(tag{class: "c"}, point{earCentre, y.axis + top}, point{earCentre, y.axis + yokeDeep - 10})
	foot := y.axis + yokeDeep
	y.text("s", "middle", point{(yokeLeft + yokeRight) / 2, foot + 20}, y.say("yoke-cut"))
	y.text("s", "middle", point{earCentre, foot + 20}, y.say("yoke-ear"))
	foot, said := y.legend(foot+44, figures)
	desc := y.say("yoke-about", "title", title, "figures", said)
	return y.svg(sheet{prefix, "drawing", title, desc, yokeWidth, foot, ""})
}

// over dimensions a pair of like faces, of which the left one stands at an x. The line and
// the part's edge stand below the axis by so much.
func (y *bareYoke) over(l string, left, line, edge float64) {
	y.level(letter(l), 0, left, yokeLeft+yokeRight-left, y.axis+line, y.axis+edge, Dimension{Text: l})
}

// bore dimensions the bore on the ear seen from the side.
func (y *bareYoke) bore(line float64) {
	y.level(letter("A"), 1, earCentre-yokeBore, earCentre+yokeBore, y.axis+line, y.axis, Dimension{Text: "A"})
}

// legend writes what the letters stand for and returns the end of the sheet and the
// same in a sentence.
func (c *canvas) legend(foot float64, figures []named) (end float64, said string) {
	var all []string
	for _, f := range figures {
		words := c.say(f.key)
		c.text("mt", "start", point{4, foot}, f.letter+" "+words)
		all = append(all, f.letter+": "+words)
		foot += lineSpace + 2
	}
	return foot - 6, strings.Join(all, "; ") + "."
}

// lowerYoke draws the cut below the bores: both ears, the base and the hub, broken off.
// edge is the left ear's upper edge from its outer to its inner face.
func (y *bareYoke) lowerYoke(edge ...point) {
	outline := edge
	mirror := func(p point) point { return point{yokeLeft + yokeRight - p.x, p.y} }
	inner := yokeLeft + earThick
	outline = append(outline, point{inner, y.axis + 56}, point{inner + 10, y.axis + 66})
	half := []point{{yokeLeft, y.axis + 76}, {78, y.axis + 92}, {78, y.axis + yokeDeep}}
	n := len(outline)
	for i := n - 1; i >= 0; i-- {
		outline = append(outline, mirror(outline[i]))
	}
	for _, p := range half {
		outline = append(outline, mirror(p))
	}
	for i := len(half) - 1; i >= 0; i-- {
		outline = append(outline, half[i])
	}
	y.cut("ear", rising, outline...)
}

// fullYoke draws an ear right round each bore, with a clip groove in it or without.
func (y *bareYoke) fullYoke(grooved bool) {
	outer, inner := yokeLeft, yokeLeft+earThick
	bore := func(side float64) []point { // along one side of the bore, from outside in
		edge := y.axis + side*yokeBore
		line := []point{{outer, edge}}
		if grooved {
			from, to, deep := outer+grooveAt, outer+grooveAt+grooveWidth, edge+side*grooveDepth
			line = append(line, point{from, edge}, point{from, deep}, point{to, deep}, point{to, edge})
		}
		return append(line, point{inner, edge})
	}
	upper := append([]point{{outer, y.axis - earHalf}}, bore(-1)...)
	upper = append(upper, point{inner, y.axis - earHalf})
	mirrored := make([]point, len(upper))
	for i, p := range upper {
		mirrored[i] = point{yokeLeft + yokeRight - p.x, p.y}
	}
	y.cut("ear", rising, upper...)
	y.cut("ear", rising, mirrored...)
	y.lowerYoke(bore(1)...)
	var behind [][2]point // edges of the bore behind the cut
	for _, x := range []float64{outer, inner, yokeRight - earThick, yokeRight} {
		behind = append(behind, [2]point{{x, y.axis - yokeBore}, {x, y.axis + yokeBore}})
	}
	y.strokes(tag{class: "l"}, behind...)

	left, right := num(earCentre-earHalf), num(earCentre+earHalf)
	y.curve(tag{class: "b"}, "M"+left+" "+num(y.axis+yokeDeep-18)+"L"+left+" "+num(y.axis)+"A"+num(earHalf)+" "+num(earHalf)+" 0 0 1 "+
		right+" "+num(y.axis)+"L"+right+" "+num(y.axis+yokeDeep-18))
	y.circle(tag{class: "b", part: "bore"}, point{earCentre, y.axis}, yokeBore)
	if grooved {
		y.circle(tag{class: "l"}, point{earCentre, y.axis}, yokeBore+grooveDepth)
	}
}

// halfYoke draws ears that are open above, with a tab at the outer end of each half bore.
func (y *bareYoke) halfYoke() {
	outer, inner := yokeLeft, yokeLeft+earThick
	edge := y.axis + yokeBore
	for _, x := range []float64{outer, yokeRight - earThick} { // the half bore's edge behind the cut
		y.box(tag{class: "l"}, x, y.axis, x+earThick, edge)
	}
	y.lowerYoke(point{outer, edge - tabHigh}, point{outer + tabThick, edge - tabHigh}, point{outer + tabThick, edge}, point{inner, edge})
	at := func(dx, dy float64) string { return num(earCentre+dx) + " " + num(y.axis+dy) }
	y.curve(tag{class: "b", part: "bore"}, "M"+at(-earHalf, 86)+"L"+at(-earHalf, 0)+"L"+at(-yokeBore, 0)+
		"A"+num(yokeBore)+" "+num(yokeBore)+" 0 0 0 "+at(yokeBore, 0)+"L"+at(earHalf, 0)+"L"+at(earHalf, 86))
	y.box(tag{class: "l", part: "tab"}, earCentre-9, edge-tabHigh, earCentre+9, edge-1)
	for _, side := range []float64{-1, 1} { // threads of the strap's bolts
		x := earCentre + side*(yokeBore+earHalf)/2
		y.strokes(tag{class: "h"}, [2]point{{x - 4, y.axis}, {x - 4, y.axis + 34}}, [2]point{{x + 4, y.axis}, {x + 4, y.axis + 34}},
			[2]point{{x - 4, y.axis + 34}, {x + 4, y.axis + 34}})
	}
}
