//go:build browser

package browser

import (
	"bytes"
	"encoding/xml"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"golang.org/x/net/html"

	"capspan/build"
	"capspan/build/press"
	"capspan/tables"
)

// readPDF is a printed book as poppler reads it, which knows nothing of how we do.
type readPDF struct {
	Pages []struct {
		Number int     `xml:"number,attr"`
		High   float64 `xml:"height,attr"`
		Wide   float64 `xml:"width,attr"`
		Texts  []struct {
			Top   float64 `xml:"top,attr"`
			Left  float64 `xml:"left,attr"`
			Wide  float64 `xml:"width,attr"`
			High  float64 `xml:"height,attr"`
			Inner string  `xml:",innerxml"`
		} `xml:"text"`
	} `xml:"page"`
	Outline outline `xml:"outline"`
}

type outline struct {
	Items []struct {
		Page  int    `xml:"page,attr"`
		Title string `xml:",chardata"`
	} `xml:"item"`
	Deeper []outline `xml:"outline"`
}

// flat lists a bookmark by its title with its page.
func (o outline) flat(into map[string][]int) {
	for _, item := range o.Items {
		title := strings.TrimSpace(item.Title)
		into[title] = append(into[title], item.Page)
	}
	for _, deeper := range o.Deeper {
		deeper.flat(into)
	}
}

func poppler(t *testing.T, pdf []byte) readPDF {
	t.Helper()
	file := filepath.Join(t.TempDir(), "book.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	said, err := exec.Command("pdftohtml", "-xml", "-i", "-stdout", "-zoom", "1", file).Output()
	if err != nil {
		t.Fatalf("pdftohtml: %v; build/test.sh installs poppler-utils", err)
	}
	var doc readPDF
	d := xml.NewDecoder(bytes.NewReader(said))
	d.Strict = false // bold and italic may overlap in it
	if err := d.Decode(&doc); err != nil {
		t.Fatalf("what pdftohtml says: %v", err)
	}
	return doc
}

var markup = regexp.MustCompile(`<[^>]*>`)

// textOf is what a piece of the page says.
func textOf(inner string) string {
	return strings.TrimSpace(html.UnescapeString(markup.ReplaceAllString(inner, "")))
}

// The printed book, read by poppler: its bookmarks lead where we say, the contents name the
// same pages, each page bears its number, and nothing runs over an edge.
func TestBook(t *testing.T) {
	made, problems := build.Book(build.Embedded(), build.BookOptions{})
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	chromium, err := press.Find()
	if err != nil {
		t.Fatal(err)
	}
	printed, err := press.Print(t.Context(), chromium, made.HTML, time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d pages, %d bytes, laid out %d times", printed.Count, len(printed.PDF), printed.Times)
	doc := poppler(t, printed.PDF)
	if len(doc.Pages) != printed.Count {
		t.Fatalf("we count %d pages, poppler %d", printed.Count, len(doc.Pages))
	}
	bookmarks := map[string][]int{}
	doc.Outline.flat(bookmarks)
	checkPlaces(t, doc, made.HTML(printed.Pages), bookmarks)
	checkRows(t, doc, bookmarks, printed.Pages)
	for _, p := range doc.Pages {
		if p.Wide != 594 || p.High != 841 { // A4 in points, cut to whole ones
			t.Errorf("page %d is %v x %v points", p.Number, p.Wide, p.High)
		}
		number := 0
		for _, text := range p.Texts {
			if text.Left < 40 || text.Left+text.Wide > p.Wide-40 || text.Top < 40 || text.Top+text.High > p.High-20 {
				t.Errorf("page %d: %q runs over the edge at %v, %v", p.Number, textOf(text.Inner), text.Left, text.Top)
			}
			if n, err := strconv.Atoi(textOf(text.Inner)); err == nil && text.Top > p.High-60 && text.Left > p.Wide/2 {
				number = n
			}
		}
		if want := p.Number; number != want && want > 1 {
			t.Errorf("page %d bears the number %d", want, number)
		}
		if len(p.Texts) < 6 {
			t.Errorf("page %d is all but empty: %d pieces of text", p.Number, len(p.Texts))
		}
	}
}

// checkPlaces holds the contents, as they are printed, to the bookmarks.
func checkPlaces(t *testing.T, doc readPDF, book []byte, bookmarks map[string][]int) {
	t.Helper()
	root, err := html.Parse(bytes.NewReader(book))
	if err != nil {
		t.Fatal(err)
	}
	entries := 0
	for e := range root.Descendants() {
		if e.Data != "a" || e.Parent.Data != "li" || !insideContents(e) {
			continue
		}
		entries++
		title := e.FirstChild.Data
		number := printedBeside(doc, title)
		if !slices.Contains(bookmarks[title], number) {
			t.Errorf("the contents print page %d for %q, and its bookmark leads to %v", number, title, bookmarks[title])
		}
	}
	if entries < 40 {
		t.Errorf("the contents have only %d entries", entries)
	}
}

func insideContents(e *html.Node) bool {
	for up := e.Parent; up != nil; up = up.Parent {
		if up.Data == "nav" {
			return true
		}
	}
	return false
}

// printedBeside is the number that stands on the line of a title on the second page, the
// next to its right.
func printedBeside(doc readPDF, title string) int {
	for _, text := range doc.Pages[1].Texts {
		if textOf(text.Inner) != title {
			continue
		}
		number, nearest := 0, math.Inf(1)
		for _, other := range doc.Pages[1].Texts {
			n, err := strconv.Atoi(textOf(other.Inner))
			if away := other.Left - text.Left; err == nil && away > 0 && away < nearest && math.Abs(other.Top-text.Top) <= 2 {
				number, nearest = n, away
			}
		}
		return number
	}
	return 0
}

// checkRows finds every row of the chart on the page where it is said to be; a joint has a
// bookmark of its own.
func checkRows(t *testing.T, doc readPDF, bookmarks map[string][]int, pages map[string]int) {
	t.Helper()
	set, problems := tables.Load(tables.FS)
	if problems.Blocked() {
		t.Fatal(problems)
	}
	for _, table := range set.Tables {
		for _, row := range table.Rows {
			page := pages["row-"+row.ID]
			if page == 0 {
				t.Errorf("row %s stands on no page", row.ID)
				continue
			}
			var all strings.Builder
			for _, text := range doc.Pages[page-1].Texts {
				all.WriteString(textOf(text.Inner))
			}
			if !strings.Contains(all.String(), row.ID) {
				t.Errorf("row %s is not on page %d", row.ID, page)
			}
			if table.Joint() && !slices.Contains(bookmarks[row.ID], page) {
				t.Errorf("row %s on page %d has bookmarks to %v", row.ID, page, bookmarks[row.ID])
			}
		}
	}
}
