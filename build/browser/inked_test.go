//go:build browser

package browser

import (
	"bytes"
	"os/exec"
	"regexp"
	"slices"
	"strconv"
	"testing"
)

const (
	inch     = 25.4
	printDPI = 300
)

// inked is what stands on a printed page: a dot for each 1/300 in, true where there is
// more ink than paper.
type inked struct {
	wide, high int
	dots       []bool
}

// raster has poppler draw a PDF of one page as a PGM (netpbm's P5).
func raster(t testing.TB, pdf []byte) inked {
	t.Helper()
	draw := exec.Command("pdftoppm", "-r", strconv.Itoa(printDPI), "-gray", "-singlefile", "-")
	draw.Stdin = bytes.NewReader(pdf)
	pgm, err := draw.Output()
	if err != nil {
		t.Fatalf("pdftoppm: %v; build/test.sh installs poppler-utils", err)
	}
	head := regexp.MustCompile(`^P5\s+(\d+)\s+(\d+)\s+255\s`).FindSubmatch(pgm)
	if head == nil {
		t.Fatalf("pdftoppm gave no PGM: %.20q", pgm)
	}
	wide, _ := strconv.Atoi(string(head[1]))
	high, _ := strconv.Atoi(string(head[2]))
	grey := pgm[len(head[0]):]
	if len(grey) != wide*high {
		t.Fatalf("the PGM has %d dots, want %d", len(grey), wide*high)
	}
	i := inked{wide: wide, high: high, dots: make([]bool, len(grey))}
	for n, g := range grey {
		i.dots[n] = g < 128
	}
	return i
}

// middles are those of the upright strokes on the paper, from its left edge, in mm.
func (i inked) middles() []float64 {
	var found []float64
	for _, r := range runs(i.wide, func(x int) bool { return i.inks(x, x+1, 0, i.high) }) {
		found = append(found, dotsInMM(float64(r[0]+r[1])/2))
	}
	return found
}

// lengths are those of the level bars on the paper, from the top down, in mm.
func (i inked) lengths() []float64 {
	var found []float64
	for _, band := range runs(i.high, func(y int) bool { return i.inks(0, i.wide, y, y+1) }) {
		columns := runs(i.wide, func(x int) bool { return i.inks(x, x+1, band[0], band[1]) })
		found = append(found, dotsInMM(float64(columns[len(columns)-1][1]-columns[0][0])))
	}
	return found
}

// inks reports whether there is ink in a field of dots.
func (i inked) inks(left, right, top, bottom int) bool {
	for y := top; y < bottom; y++ {
		if slices.Contains(i.dots[y*i.wide+left:y*i.wide+right], true) {
			return true
		}
	}
	return false
}

// runs are the stretches of 0 to n for which a thing holds.
func runs(n int, holds func(int) bool) [][2]int {
	var found [][2]int
	within := false
	for k := range n {
		here := holds(k)
		if here && !within {
			found = append(found, [2]int{k, k})
		}
		if here {
			found[len(found)-1][1] = k + 1
		}
		within = here
	}
	return found
}

func dotsInMM(dots float64) float64 { return dots / printDPI * inch }
