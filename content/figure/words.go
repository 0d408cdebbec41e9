package figure

import (
	"slices"
	"strings"
	"unicode"
)

// The holds and faces of the chart, as this package must tell them apart. They are
// plain words here, because the drawings know nothing of the tables.
const (
	outsideClip = "outside-clip"
	insideClip  = "inside-clip"
	plate       = "plate"
	strap       = "strap"
	wing        = "wing"
	injected    = "injected"
	staked      = "staked"

	overCaps    = "over-caps"
	grooveInner = "groove-inner"
	grooveOuter = "groove-outer"
	underPlates = "under-plates"
	holeCentres = "hole-centres"
	wingOuter   = "wing-outer"
	unknown     = "unknown" // what stands for any other word
)

var (
	holds = []string{outsideClip, insideClip, plate, strap, wing, injected, staked}
	faces = []string{overCaps, grooveInner, grooveOuter, underPlates, holeCentres, wingOuter}
)

// Words is the language that drawings speak. All drawings are made of one, but for
// [HoldIcon], which says nothing.
type Words struct {
	// Say says the words of a key, such as "figure.not-to-scale"; values come after their
	// names. It knows all keys that [Spoken] lists.
	Say func(key string, named ...any) string
	// Decimal is the sign of a decimal fraction; empty means a point. The digits of a row
	// come with theirs.
	Decimal string
}

// Room begins the keys of all words.
const Room = "figure."

// Spoken lists all that drawings say: after a key, which is without its room, come the
// names of the values it is given.
func Spoken() []string {
	list := slices.Clone(spoken)
	for _, hold := range append(slices.Clone(holds), unknown) {
		list = append(list, "hold-"+hold, "hold-"+hold+"-seen")
	}
	for _, f := range append(slices.Clone(faces), unknown) {
		list = append(list, "faces-"+f)
	}
	return list
}

var spoken = []string{
	"both-ends is", "level-end is", "upright-end is", "end hold seen cap across faces", "end-wing hold seen across faces",
	"in-both figure converted", "not-known", "not-to-scale", "cap-not-known", "no-round-cap",
	"joint-title name", "joint-to-scale ends", "joint-schematic ends",
	"life-title name", "life-about ends truth", "life-quarter", "life-quarter-about", "life-in-all across",
	"life-cap figure", "life-across figure", "life-no-cap", "life-no-across",
	"true-both", "true-cap", "true-across", "true-figures",
	"ruler-title", "ruler-about", "ruler-mm", "ruler-in",
	"measure-title faces", "measure-about hold seen faces", "jaws-title faces", "jaws-about hold faces how",
	"jaws-over-caps", "jaws-groove-inner", "jaws-groove-outer", "jaws-under-plates", "jaws-hole-centres", "jaws-wing-outer",
	"section-title hold", "section-about seen parts", "section-scale",
	"part-trunnion", "part-seal", "part-rollers", "part-cap", "part-ear", "part-half-bore", "part-ring", "part-clip", "part-plate",
	"part-bolt", "part-strap", "part-tab", "part-plastic", "part-peened", "part-wing", "part-hole",
	"full-round-title", "half-round-title", "inside-clip-title", "plate-title", "yoke-about title figures", "yoke-cut", "yoke-ear",
	"yoke-bore", "yoke-half-bore", "yoke-over", "yoke-inside", "yoke-machined", "yoke-grooves", "yoke-tabs",
	"wing-title", "wing-about figures", "wing-holes", "wing-key", "wing-centres", "wing-outer",
	"reads reading", "button-on", "button-zero", "button-unit", "digital-title reading", "digital-about reading",
	"dial-title reading", "dial-about bar hand turn reading", "dial-bar bar", "dial-hand line hand", "dial-turn turn", "dial-slider",
	"micrometer-title reading", "micrometer-about sleeve line thimble reading range", "micrometer-sleeve sleeve",
	"micrometer-thimble line thimble", "micrometer-range from to", "micrometer-for range",
	"vernier-title reading", "vernier-about line main step reading", "vernier-past main", "vernier-past-about main",
	"vernier-at main", "vernier-at-about main", "vernier-line line", "vernier-enlarged",
}

// language is what a canvas speaks.
type language Words

func (l language) say(key string, named ...any) string { return l.Say(Room+key, named...) }

// faces names the faces, as they stand under a drawing.
func (l language) faces(f string) string { return l.say("faces-" + oneOf(faces, f)) }

// hold names the picture of a hold, and seen says what one can see of it.
func (l language) hold(hold string) string { return l.say("hold-" + oneOf(holds, hold)) }
func (l language) seen(hold string) string { return l.say("hold-" + oneOf(holds, hold) + "-seen") }

func oneOf(list []string, word string) string {
	if slices.Contains(list, word) {
		return word
	}
	return unknown
}

// figure is the figure of a dimension, or the word for its absence.
func (l language) figure(d Dimension) string {
	if d.Text == "" {
		return l.say("not-known")
	}
	return d.Text
}

// local writes a number, which has a point, with the sign of the language.
func (l language) local(number string) string {
	if l.Decimal == "" {
		return number
	}
	return strings.Replace(number, ".", l.Decimal, 1)
}

// capital begins a sentence.
func capital(words string) string {
	letters := []rune(words)
	if len(letters) > 0 {
		letters[0] = unicode.ToUpper(letters[0])
	}
	return string(letters)
}
