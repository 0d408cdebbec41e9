package figure

import (
	"testing"
)

// Each jaw touches its face with a straight edge, from the outside for faces that look
// outwards and from the inside for faces that look at the cross. The inner face of a
// groove is the one nearer to the cross, so it looks outwards.
func TestJawsTouchTheirFaces(t *testing.T) {
	tests := []struct {
		hold, faces string
		outwards    bool
	}{
		{outsideClip, overCaps, false},
		{strap, overCaps, false},
		{insideClip, grooveInner, false},
		{insideClip, grooveOuter, true},
		{plate, underPlates, true},
		{wing, wingOuter, false},
		{wing, holeCentres, true},
	}
	for _, test := range tests {
		name := test.hold + " " + test.faces
		drawn := mustRead(t, string(english.Jaws("p", test.hold, test.faces)))
		faces := drawn.parts("faces", 0)
		for i, side := range []float64{-1, 1} {
			face := faces[i].box().left
			if test.faces == holeCentres { // the jaw touches the far edge of the hole
				face += side * number(t, drawn.named("hole")[0].attr["r"])
			}
			jaw := drawn.parts("jaw", i)[0].box()
			got := jaw.left // the edge that touches, when the jaw lies to the right of its face
			if (side < 0) != test.outwards {
				got = jaw.right
			}
			exact(t, name, got, face)
			if jaw.top > faces[i].box().bottom {
				t.Errorf("%s: the jaw begins at %v, below the face", name, jaw.top)
			}
		}
		keepsApart(t, name, drawn)
	}
}

// Any hold with any faces, also the odd pairs a query may hold, keeps its words apart.
func TestJawsWordsKeepApart(t *testing.T) {
	for _, hold := range allHolds {
		for _, faces := range allFaces {
			keepsApart(t, hold+" "+faces, mustRead(t, string(english.Jaws("p", hold, faces))))
		}
	}
}
