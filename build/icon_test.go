package build

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"math"
	"os"
	"strings"
	"testing"
)

func drawIcon(t *testing.T, source string, size int, masked bool) image.Image {
	t.Helper()
	i, err := readIcon([]byte(source))
	if err != nil {
		t.Fatal(err)
	}
	picture, err := png.Decode(bytes.NewReader(i.png(size, masked)))
	if err != nil {
		t.Fatal(err)
	}
	if got := picture.Bounds(); got != image.Rect(0, 0, size, size) {
		t.Fatalf("the picture is %v", got)
	}
	return picture
}

func ownIcon(t *testing.T) string {
	t.Helper()
	source, err := os.ReadFile("../static/icons/icon.svg")
	if err != nil {
		t.Fatal(err)
	}
	return string(source)
}

// The expected points are worked out by hand from the path data of icon.svg: the left
// cap is a box from 2 11 to 8 21 with a line of 2.5, so its line covers 0.75 to 3.25.
func TestIconDrawn(t *testing.T) {
	ink, ground := color.RGBA{0x13, 0x20, 0x3a, 255}, paperColour()
	const size = 512 // 16 pixels for each unit
	picture := drawIcon(t, ownIcon(t), size, false)
	for _, tt := range []struct {
		what string
		x, y float64
		want color.RGBA
	}{
		{"left line of the left cap", 2, 16.9, ink},
		{"its outer edge", 0.8, 14, ink},
		{"beyond its outer edge", 0.7, 14, ground},
		{"the miter of its corner", 0.9, 9.9, ink},
		{"beyond the corner", 0.7, 9.6, ground},
		{"inside the left cap", 5.5, 13, ground},
		{"top line of the upper cap", 16.7, 2, ink},
		{"the body, upper left", 13, 10, ink},
		{"the middle, on both centre lines' gaps or dashes", 16, 13.5, ink},
		{"a corner of the picture", 0.5, 0.5, ground},
	} {
		got := color.RGBAModel.Convert(picture.At(int(tt.x*size/32), int(tt.y*size/32)))
		if got != tt.want {
			t.Errorf("%s, %g %g: got %v, want %v", tt.what, tt.x, tt.y, got, tt.want)
		}
	}
	// Half covered pixels are half dark: at 32 pixels the edge at 0.75 leaves a quarter.
	small := color.RGBAModel.Convert(drawIcon(t, ownIcon(t), 32, false).At(0, 14)).(color.RGBA)
	if want := float64(ground.R) - float64(ground.R-ink.R)/4; math.Abs(float64(small.R)-want) > 2 {
		t.Errorf("a pixel covered by a quarter has red %d, want %.0f", small.R, want)
	}
}

// What a device may cut away holds no ink: all of it lies in the circle round the middle
// with 2/5 of the side (W3C Web Application Manifest, "icon masks and safe zone").
func TestIconSafeZone(t *testing.T) {
	const size = 512
	picture, ground := drawIcon(t, ownIcon(t), size, true), paperColour()
	farthest, inked := 0.0, 0
	for y := range size {
		for x := range size {
			if color.RGBAModel.Convert(picture.At(x, y)) != ground {
				inked++
				farthest = max(farthest, math.Hypot(float64(x)+0.5-size/2, float64(y)+0.5-size/2))
			}
		}
	}
	if farthest > 0.4*size || inked == 0 {
		t.Errorf("ink up to %.1f px from the middle, at most %.1f are kept; %d pixels", farthest, 0.4*size, inked)
	}
}

// The manifest's colour is the paper of the style sheet.
func TestPaperIsOfTheStyle(t *testing.T) {
	style, err := os.ReadFile("../static/parts/page/tokens.css")
	if err != nil {
		t.Fatal(err)
	}
	for _, colour := range paper {
		if !strings.Contains(string(style), "--paper: "+colour+";") {
			t.Errorf("the style sheet has no paper of %s", colour)
		}
	}
}

// What is not understood is refused, never drawn wrong.
func TestIconRefused(t *testing.T) {
	const good = `<svg viewBox="0 0 32 32" stroke="#13203a"><path d="M2 2h6v4H2z"/></svg>`
	if _, err := readIcon([]byte(good)); err != nil {
		t.Fatalf("the good one is refused: %v", err)
	}
	for what, spoiled := range map[string]string{
		"no XML":              "icon",
		"another element":     strings.Replace(good, "<path", `<circle r="2"/><path`, 1),
		"an oblong":           strings.Replace(good, "0 0 32 32", "0 0 32 16", 1),
		"a box that is moved": strings.Replace(good, "0 0 32 32", "1 0 32 32", 1),
		"a named colour":      strings.Replace(good, "#13203a", "navy", 1),
		"a curve":             strings.Replace(good, "v4", "c1 1 2 2 3 3", 1),
		"a slanting end":      strings.Replace(good, "v4H2z", "v4z", 1),
		"a missing number":    strings.Replace(good, "h6", "h", 1),
		"a width of nothing":  strings.Replace(good, "<path", `<path stroke-width="0"`, 1),
		"endless dashes":      strings.Replace(good, "<path", `<path stroke-dasharray="x"`, 1),
		"no lines":            strings.Replace(good, "M2 2h6v4H2z", "M2 2", 1),
	} {
		if i, err := readIcon([]byte(spoiled)); err == nil {
			t.Errorf("%s is drawn as %v", what, i.bars)
		}
	}
}
