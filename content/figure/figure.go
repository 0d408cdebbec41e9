// Package figure makes the drawings of the chart and the guide: SVG text computed
// from numbers, the same bytes for the same numbers.
//
// A row of the chart: [Joint] is the cross and its four caps in plan, to the scale of
// one row and dimensioned in both units. [LifeSize] is the same at one to one, to lay
// the joint on the paper, and [Ruler] the check ruler beside it.
//
// What to look at: [Hold] is the small picture of how an end is held, for a strip of
// choices; [Section] cuts one end open and names its parts; [Yoke] and [WingCap] show
// what to measure on a bare yoke and on wing bearings, with letters for figures.
//
// How to measure: [Faces] shows between which faces to measure, [Jaws] the caliper on
// them, and [Instrument] the face of an instrument that shows a given [Reading]. Every
// face is computed from the value; the tests read the value back from the lines.
//
// All follow the drawing office: bold outlines and thin centre lines long-short-long
// (ISO 128), cut faces hatched at 45 degrees and thin ones black, leaders that end in a
// dot, extension lines, arrowheads and the figure above its line (ISO 129). The
// chart's own figure stands above the line, the converted one in brackets below it.
//
// Lengths from the chart are scaled exactly. What the chart does not hold (how long a
// cap is, how thick a ring) is drawn in a habitual proportion to the cap, and never
// carries a figure. When the cap or the across is missing, the whole drawing is
// schematic and says "not to scale". The drawings of the guide carry no figure of a part.
//
// # Classes
//
// Colour and weight come from the style sheet through these classes; the attributes
// on the svg element are the fallback without one (ink in the text's own colour).
// No meaning hangs on a colour: what is red is also named in words.
//
//	drawing        the svg element; it has width and height, so a sheet should say
//	               max-width:100%;height:auto
//	drawing--icon  beside drawing on the pictures of [Hold]
//	drawing--true  beside drawing on [LifeSize] and [Ruler], whose unit is the
//	               millimetre; a sheet must leave their width alone
//	b   bold outline of a part; may be filled with the sheet's colour
//	l   medium outline: edges inside a part, neighbouring parts
//	h   thin line: dimension, extension and leader lines, hatching
//	c   thin centre line, long-short-long
//	k   solid: clips, bolts, arrowheads
//	m   red pencil line: a face to measure from, and the dimension between the faces
//	mt  red pencil fill: its arrowheads, and words about the faces
//	s   secondary text: converted figures and notes
//
// Elements that stand for a quantity carry data-part (the outline of a "cap", its
// "diameter", the "across", the marked "faces", the "hand" of a dial, ...)
// and data-end (0 the level end, 1 the upright one), for scripts
// and for the tests that read a drawing back.
package figure

// JointDrawing is one row's cross as [Joint] draws it.
type JointDrawing struct {
	Name string // the row's name, for the title
	// Ends is one end for a plain joint, whose figures are written once, or the level
	// and the upright end of a conversion joint.
	Ends []End
}

// End is one pair of opposite caps.
type End struct {
	Hold        string // a hold of the chart, such as "outside-clip"; anything else is drawn without a clip
	Faces       string // faces of the chart, such as "over-caps"
	Cap, Across Dimension
}

// Dimension is a length and how the chart writes it: its own digits with their unit
// ("1.062 in") and the converted ones ("26.97 mm"). The zero Dimension is a figure the
// chart does not have.
type Dimension struct {
	MM              float64
	Text, Converted string
}

// known reports whether there is a length to draw to scale.
func (d Dimension) known() bool { return d.MM > 0 }
