// Package press prints a book with Chromium: it lays the document out, reads which page
// each place came to stand on, puts those numbers in, and prints again until they hold.
// It needs chromium-headless-shell or chromium on the machine, and no network.
package press

import (
	"context"
	"errors"
	"fmt"
	"maps"
	"os"
	"os/exec"
	"path/filepath"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

// Document gives a book's HTML with the page of each place in it; places that are not in
// the map have no number yet.
type Document func(pages map[string]int) []byte

// Printed is a book as PDF.
type Printed struct {
	PDF   []byte
	Pages map[string]int // by place: the page it stands on, the first being 1
	Count int            // how many pages there are
	Times int            // how often it was laid out until the numbers held
}

// mostTimes is how often a book is laid out at most: a number that grows a digit may push
// a line over, seldom twice.
const mostTimes = 6

// patience is for one layout of a whole book.
const patience = 3 * time.Minute

// Find returns where a Chromium is.
func Find() (string, error) {
	for _, name := range []string{"chromium-headless-shell", "chromium"} {
		if path, err := exec.LookPath(name); err == nil {
			return path, nil
		}
	}
	return "", errors.New("no Chromium here: install chromium-headless-shell, or leave the book out")
}

// Print prints the document on the paper that its own style names. The date written into
// the file is the one given, not that of the clock, so that equal books are equal bytes.
func Print(ctx context.Context, chromium string, document Document, date time.Time) (Printed, error) {
	folder, err := os.MkdirTemp("", "capspan-press-")
	if err != nil {
		return Printed{}, err
	}
	defer os.RemoveAll(folder)
	allocator, stop := chromedp.NewExecAllocator(ctx, append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.ExecPath(chromium),
		chromedp.UserDataDir(filepath.Join(folder, "profile")),
		chromedp.NoSandbox, // it does not start as root otherwise; it loads our own document only
		chromedp.DisableGPU,
		chromedp.Flag("disable-quic", true),
		chromedp.Flag("disable-component-update", true),
	)...)
	defer stop()
	browser, closeBrowser := chromedp.NewContext(allocator)
	defer closeBrowser()
	if err := chromedp.Do(browser); err != nil { // starts it
		return Printed{}, fmt.Errorf("start %s: %w", chromium, err)
	}
	file := filepath.Join(folder, "book.html")
	var pages map[string]int
	for times := 1; times <= mostTimes; times++ {
		if err := os.WriteFile(file, document(pages), 0o600); err != nil {
			return Printed{}, err
		}
		pdf, err := layOut(browser, file)
		if err != nil {
			return Printed{}, fmt.Errorf("print the book: %w", err)
		}
		found, count, err := places(pdf)
		if err != nil {
			return Printed{}, fmt.Errorf("read the printed book: %w", err)
		}
		if maps.Equal(found, pages) {
			pdf, err = alike(pdf, date)
			return Printed{PDF: pdf, Pages: pages, Count: count, Times: times}, err
		}
		pages = found
	}
	return Printed{}, fmt.Errorf("the numbers of the pages did not hold after %d layouts", mostTimes)
}

// layOut prints the file once, with bookmarks and the tags that a screen reader follows.
func layOut(browser context.Context, file string) ([]byte, error) {
	tab, closeTab := chromedp.NewContext(browser)
	defer closeTab()
	tab, cancel := context.WithTimeout(tab, patience)
	defer cancel()
	if err := chromedp.Do(tab, chromedp.Navigate("file://"+file)); err != nil {
		return nil, err
	}
	printed, err := chromedp.Call(tab, page.PrintToPDF, page.PrintToPDFParams{
		PreferCSSPageSize: new(true), PrintBackground: new(true), GenerateTaggedPDF: new(true), GenerateDocumentOutline: new(true)})
	if err != nil {
		return nil, err
	}
	return printed.Data, nil
}
