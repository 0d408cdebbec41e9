//go:build browser

package browser

import (
	"bytes"
	"math"
	"os/exec"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"capspan/tables"
)

// paperSize is a sheet in millimetres.
type paperSize struct {
	name       string
	wide, high float64
}

// A4 by ISO 216; Letter by ANSI/ASME Y14.1, 8.5 by 11 in.
var papers = []paperSize{{"A4", 210, 297}, {"Letter", 215.9, 279.4}}

// tolerance in mm on paper; a dot at 300 dpi is 0.085 mm.
const tolerance = 0.3

// sheets are one of every kind of drawing a row can have.
var sheets = []string{
	"1310",            // clip outside
	"7260",            // clip inside, between the groove faces
	"1355",            // strap
	"1610",            // plate, drawn as a quarter
	"15x39",           // the smallest; hold and faces not known
	"2c",              // wing
	"7260-to-1310",    // two unlike ends
	"1410-to-1480",    // the tallest sheet with two ends
	"74x217",          // wider than the paper
	"83x231.4",        // the largest
	"1480-to-1550",    // two unlike ends, drawn as a quarter
	"1810-half-round", // strap, drawn as a quarter
}

// print returns the PDF of the page in the tab, at 100 %.
func (b *tab) print(paper paperSize) []byte {
	b.t.Helper()
	printed, err := chromedp.Call(b.ctx, page.PrintToPDF, page.PrintToPDFParams{
		PaperWidth: paper.wide / inch, PaperHeight: paper.high / inch})
	if err != nil {
		b.t.Fatalf("print on %s: %v", paper.name, err)
	}
	return printed.Data
}

var pageCount = regexp.MustCompile(`(?m)^Pages:\s+(\d+)$`)

// pages counts the pages of a PDF.
func pages(t testing.TB, pdf []byte) int {
	t.Helper()
	count := exec.Command("pdfinfo", "-")
	count.Stdin = bytes.NewReader(pdf)
	said, err := count.Output()
	found := pageCount.FindSubmatch(said)
	if err != nil || found == nil {
		t.Fatalf("pdfinfo: %v, %s; build/test.sh installs poppler-utils", err, said)
	}
	n, err := strconv.Atoi(string(found[1]))
	if err != nil {
		t.Fatal(err)
	}
	return n
}

// Every sheet of the chart is one page. Letter is the lower paper, so it tells; A4,
// where lines are shorter, is tried by the test below.
func TestSheetsAreOnePage(t *testing.T) {
	b := openTab(t)
	all := 0
	for _, address := range addresses() {
		if !strings.HasSuffix(address, "/paper/") {
			continue
		}
		all++
		b.open(address)
		if got := pages(t, b.print(papers[1])); got != 1 {
			t.Errorf("%s on %s: %d pages, want 1", address, papers[1].name, got)
		}
	}
	if all < 100 {
		t.Errorf("%d sheets, want one for each of more than a hundred rows", all)
	}
	b.calm("the sheets")
}

// alone prints the page of the tab with only the elements of the selector visible,
// each where it stands, and looks at the paper.
func (b *tab) alone(selector string, paper paperSize) inked {
	b.t.Helper()
	see[bool](b, `(() => {
		const only = new CSSStyleSheet();
		only.replaceSync("* {visibility: hidden !important; border-color: transparent !important} " + `+quote(selector)+` + " {visibility: visible !important}");
		document.adoptedStyleSheets = [only];
		return true;
	})()`)
	pdf := b.print(paper)
	see[bool](b, `(document.adoptedStyleSheets = [], true)`)
	return raster(b.t, pdf)
}

func near(t testing.TB, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > tolerance {
		t.Errorf("%s: %.2f mm on paper, want %.2f mm", what, got, want)
	}
}

// What is printed is as long as it says: the bars of the ruler, the distance between the
// faces of the row, and its caps.
func TestSheetsAreTrue(t *testing.T) {
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	b := openTab(t)
	for _, id := range sheets {
		row := set.Find(id)
		if row == nil {
			t.Fatalf("the chart has no row %s", id)
		}
		b.open("/joint/" + id + "/paper/")
		quarter := see[bool](b, `document.querySelector(".paper__drawing [data-part=symmetry]") !== null`)
		for _, paper := range papers {
			where := id + " on " + paper.name
			if got := pages(t, b.print(paper)); got != 1 {
				t.Errorf("%s: %d pages, want 1", where, got)
			}
			bars := b.alone(`[data-part="bar-mm"], [data-part="bar-in"]`, paper).lengths()
			if len(bars) != 2 {
				t.Fatalf("%s: %d bars on the paper: %v", where, len(bars), bars)
			}
			near(t, where+", the bar", bars[0], 100)
			near(t, where+", the bar in inches", bars[1], 4*inch)
			across := millimetres(t, row.Ends[0].Across)
			if quarter {
				b.checkHalf(where, paper, across)
				continue
			}
			b.checkAcross(where, paper, across)
			if upright := row.Ends[len(row.Ends)-1]; upright.Cap.State == tables.Given {
				b.checkCaps(where, paper, millimetres(t, upright.Cap))
			}
		}
	}
	b.calm("the sheets")
}

// millimetres is a figure of the chart.
func millimetres(t *testing.T, v tables.Value) float64 {
	t.Helper()
	mm, err := strconv.ParseFloat(v.Quantity.MM(), 64)
	if err != nil {
		t.Fatal(err)
	}
	return mm
}

const levelFaces = `.paper__drawing [data-part="faces"][data-end="0"]`

// checkAcross measures between the marked faces of the level end.
func (b *tab) checkAcross(where string, paper paperSize, across float64) {
	b.t.Helper()
	marks := b.alone(levelFaces, paper).middles()
	if len(marks) != 2 {
		b.t.Errorf("%s: %d faces marked on the paper: %v", where, len(marks), marks)
		return
	}
	near(b.t, where+", across", marks[1]-marks[0], across)
}

// checkHalf measures a quarter from the upright centre line to the one face on it.
func (b *tab) checkHalf(where string, paper paperSize, across float64) {
	b.t.Helper()
	see[bool](b, `([...document.querySelectorAll(".paper__drawing path.c")].find(e => e.getBBox().width === 0).id = "middle", true)`)
	marks, middle := b.alone(levelFaces, paper).middles(), b.alone("#middle", paper).middles()
	if len(marks) != 1 || len(middle) != 1 {
		b.t.Errorf("%s: faces at %v and the centre line at %v, want one of each", where, marks, middle)
		return
	}
	near(b.t, where+", half the across", marks[0]-middle[0], across/2)
}

// checkCaps measures the two upright caps. The diameter goes to the middle of the
// outline, which is 0.5 mm thick (figure.css).
func (b *tab) checkCaps(where string, paper paperSize, diameter float64) {
	b.t.Helper()
	caps := b.alone(`.paper__drawing [data-part="cap"][data-end="1"]`, paper).lengths()
	if len(caps) != 2 {
		b.t.Errorf("%s: %d upright caps on the paper: %v", where, len(caps), caps)
		return
	}
	for _, got := range caps {
		near(b.t, where+", cap", got-0.5, diameter)
	}
}
