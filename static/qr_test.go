package static

import (
	"encoding/json"
	"image"
	"image/color"
	"image/draw"
	"strings"
	"testing"

	"github.com/dop251/goja"
	goqr "github.com/piglig/go-qr"
)

// symbol mirrors the type of parts/qr/encode.ts.
type symbol struct {
	Version int
	Level   string
	Modules [][]bool
}

// mustEncoder runs the encoder of the send page as it is bundled for the browser.
func mustEncoder(t *testing.T) func(text, level string) *symbol {
	t.Helper()
	bundle, problems := Assets{}.build(FS, entry{name: "qr.js", source: "parts/qr/encode.ts", global: "QR"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	vm := goja.New()
	if _, err := vm.RunString(string(bundle)); err != nil {
		t.Fatal(err)
	}
	return func(text, level string) *symbol {
		t.Helper()
		if err := vm.Set("a", []string{text, level}); err != nil {
			t.Fatal(err)
		}
		v, err := vm.RunString("JSON.stringify(QR.encode(a[0], a[1] || undefined))")
		if err != nil {
			t.Fatal(err)
		}
		var s *symbol
		if err := json.Unmarshal([]byte(v.String()), &s); err != nil {
			t.Fatal(err)
		}
		return s
	}
}

// picture draws a symbol as a camera would see it, with the quiet zone of four modules
// (ISO/IEC 18004:2015, 6.3.8).
func (s symbol) picture() image.Image {
	const quiet, size = 4, 4
	side := (len(s.Modules) + 2*quiet) * size
	img := image.NewGray(image.Rect(0, 0, side, side))
	draw.Draw(img, img.Bounds(), image.White, image.Point{}, draw.Src)
	for r, row := range s.Modules {
		for c, dark := range row {
			if dark {
				at := image.Rect((c+quiet)*size, (r+quiet)*size, (c+quiet+1)*size, (r+quiet+1)*size)
				draw.Draw(img, at, image.NewUniform(color.Black), image.Point{}, draw.Src)
			}
		}
	}
	return img
}

// link has exactly n bytes and looks like one of ours, with a character of more bytes than one.
func link(n int) string {
	text := "https://chart.example.org/measure/card/#check=1k.1x2y3z&take=cap,across&say="
	if n < len(text) {
		return text[:n]
	}
	return text + strings.Repeat("which-cap%3F-\u00e9", n)[:n-len(text)]
}

// A decoder of somebody else's reads back what the send page shows, from one byte to the
// longest link.
func TestQRDecodes(t *testing.T) {
	encode := mustEncoder(t)
	for level, lengths := range map[string][]int{
		"L": {1, 2, 13, 30, 77, 120, 199, 400}, "M": {1, 2, 13, 30, 77, 120, 199, 400}, "": {600, 1273, 1999},
	} {
		for _, n := range lengths {
			text := strings.ToValidUTF8(link(n), "x")
			s := encode(text, level)
			if s == nil {
				t.Fatalf("%d bytes at level %s: no symbol", n, level)
			}
			if got, want := len(s.Modules), 17+4*s.Version; got != want {
				t.Errorf("version %d has %d modules a side, want %d", s.Version, got, want)
			}
			got, err := goqr.Decode(s.picture())
			if err != nil || got != text {
				t.Errorf("%d bytes at level %s, version %d: read %.40q, %v; want %.40q", n, level, s.Version, got, err, text)
			}
		}
	}
}

// Capacity in byte mode, from ISO/IEC 18004:2015, table 7.
func TestQRCapacity(t *testing.T) {
	encode := mustEncoder(t)
	for _, c := range []struct {
		version int
		level   string
		most    int
	}{
		{1, "L", 17}, {1, "M", 14}, {2, "L", 32}, {3, "M", 42}, {6, "L", 134}, {7, "L", 154}, {9, "L", 230}, {10, "L", 271}, {10, "M", 213},
		{14, "L", 458}, {25, "L", 1273}, {40, "L", 2953},
	} {
		text := strings.Repeat("k", c.most)
		s := encode(text, c.level)
		if s == nil || s.Version != c.version {
			t.Fatalf("%d bytes at level %s: %+.20v, want version %d", c.most, c.level, s, c.version)
		}
		if got, err := goqr.Decode(s.picture()); err != nil || got != text {
			t.Errorf("the fullest symbol of version %d-%s is not read: %v", c.version, c.level, err)
		}
		if next := encode(text+"k", c.level); next != nil && next.Version == c.version {
			t.Errorf("version %d-%s holds %d bytes, the standard says %d", c.version, c.level, c.most+1, c.most)
		}
	}
	if s := encode(strings.Repeat("k", 2954), ""); s != nil {
		t.Errorf("2954 bytes gave version %d, no symbol holds them", s.Version)
	}
}
