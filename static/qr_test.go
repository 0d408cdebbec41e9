package static

import (
	"encoding/json"
	"fmt"
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

// mustRun bundles a file as for the browser and runs it; its exports are in QR.
func mustRun(t *testing.T, source string) *goja.Runtime {
	t.Helper()
	bundle, problems := Assets{}.build(FS, entry{name: "qr.js", source: source, global: "QR"})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	vm := goja.New()
	if _, err := vm.RunString(string(bundle)); err != nil {
		t.Fatal(err)
	}
	return vm
}

// mustEncoder runs the encoder of the send page.
func mustEncoder(t *testing.T) func(text, level string) *symbol {
	t.Helper()
	vm := mustRun(t, "parts/qr/encode.ts")
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
		"L": {1, 2, 13, 30, 77, 120, 199, 400}, "M": {1, 2, 13, 30, 77, 120, 199, 400}, "": {600, 1999},
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

// Capacity in byte mode of versions 1 to 40, from ISO/IEC 18004:2015, table 7.
var published = map[string][]int{
	"L": {17, 32, 53, 78, 106, 134, 154, 192, 230, 271, 321, 367, 425, 458, 520, 586, 644, 718, 792, 858, 929, 1003, 1091, 1171, 1273,
		1367, 1465, 1528, 1628, 1732, 1840, 1952, 2068, 2188, 2303, 2431, 2563, 2699, 2809, 2953},
	"M": {14, 26, 42, 62, 84, 106, 122, 152, 180, 213, 251, 287, 331, 362, 412, 450, 504, 560, 624, 666, 711, 779, 857, 911, 997,
		1059, 1125, 1190, 1264, 1370, 1452, 1538, 1628, 1722, 1809, 1911, 1989, 2099, 2213, 2331},
}

func TestQRCapacity(t *testing.T) {
	vm := mustRun(t, "parts/qr/tables.ts")
	for level, want := range published {
		for i, most := range want {
			got, err := vm.RunString(fmt.Sprintf("QR.capacity(%d, %q)", i+1, level))
			if err != nil {
				t.Fatal(err)
			}
			if got.ToInteger() != int64(most) {
				t.Errorf("version %d-%s holds %d bytes, the standard says %d", i+1, level, got.ToInteger(), most)
			}
		}
	}
}

// The fullest symbol of a version is read back; one byte more takes the next version.
func TestQRFullest(t *testing.T) {
	encode := mustEncoder(t)
	for _, version := range []int{1, 6, 7, 9, 10, 14} {
		for level, capacity := range published {
			text := strings.Repeat("k", capacity[version-1])
			s := encode(text, level)
			if s == nil || s.Version != version || s.Level != level {
				t.Fatalf("%d bytes at level %s: %.40v, want version %d", len(text), level, s, version)
			}
			if got, err := goqr.Decode(s.picture()); err != nil || got != text {
				t.Errorf("the fullest symbol of version %d-%s is not read: %v", version, level, err)
			}
			if next := encode(text+"k", level); next == nil || next.Version != version+1 {
				t.Errorf("%d bytes at level %s: want version %d", len(text)+1, level, version+1)
			}
		}
	}
	if s := encode(strings.Repeat("k", published["L"][39]+1), ""); s != nil {
		t.Errorf("%d bytes gave version %d, no symbol holds them", published["L"][39]+1, s.Version)
	}
}
